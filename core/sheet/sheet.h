// The test sheet: everything that is computed before the pump is started.
//
// make_sheet() takes a boiler's description, the rules at hand and what the user
// says of this test, and returns sections of figures in the order of use, each
// figure with its working, beside notes and the usual cautions. A sheet without
// a rule says what is missing and still gives every figure that needs none.
//
// Pressures of the rule are meant at the reference level (the top of the steam
// drum unless the description says otherwise); every other level reads
//
//   p(z) = p_ref + rho g (z_ref - z)
//
// Sources and derivations: docs/methods/sheet.md.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "boiler/boiler.h"
#include "rules/circumstances.h"
#include "rules/own_pressure.h"
#include "rules/rule.h"
#include "units/quantity.h"
#include "working/section.h"

namespace steamworthy::sheet {

/// What the user says of this test. All of it may be left out.
struct Request {
  std::optional<std::string> rule_id;
  std::optional<rules::Work> work;
  std::optional<rules::OwnPressure> own_pressure;  ///< instead of the rule's; needs a reason
  std::string authority;                           ///< who ordered or agreed to the test, by name
  std::optional<units::GaugePressure> picked;      ///< inside a rule's interval
  std::optional<units::GaugePressure> stated_ceiling;
  std::map<rules::Trait, bool> traits;
  std::optional<bool> valves_gagged;
  std::optional<units::Temperature> water;  ///< as filled; else the supply of the description
  std::optional<units::Temperature> metal;  ///< thickest metal; else that of the water
  std::optional<units::Duration> hold;      ///< else the rule's longest
  std::optional<units::Power> heater;       ///< that warms the water, if anything does
};

using working::Section;

struct Sheet {
  std::string boiler_tag;
  std::string boiler_name;
  std::string rule_id;  ///< of the rule that it was made by; empty without one
  std::string rule_title;
  std::string rule_edition;
  std::vector<Section> sections;
  std::vector<working::Message> missing;  ///< what would be needed for the rest
  std::vector<working::Message> stops;    ///< why this test must not be made as it stands

  bool is_refused() const { return !stops.empty(); }
};

/// Throws    NotFound "sheet.unknown_rule" for a rule id that is not among the rules.
///           Faults of the description itself are boiler::check's to find first.
/// Checked   sheet_test.cc against the independent reference table and hand calculation.
Sheet make_sheet(const boiler::Boiler& boiler, const std::vector<rules::Rule>& rules,
                 const Request& request);

/// The figure with that key and subject; null if the sheet has none.
const working::Figure* find_figure(const Sheet& sheet, const std::string& key,
                                   const std::string& subject = "");

}  // namespace steamworthy::sheet
