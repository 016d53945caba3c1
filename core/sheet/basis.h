// Basis: what every section of the sheet stands on, gathered once.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "boiler/boiler.h"
#include "hold/water_filled.h"
#include "rules/choose.h"
#include "rules/evaluate.h"
#include "sheet/sheet.h"

namespace steamworthy::sheet {

struct Stage {
  std::string key;  ///< words key: "sheet.stage.air_check"
  units::GaugePressure at_reference;
};

struct Basis {
  const boiler::Boiler& boiler;
  const Request& request;
  rules::Circumstances circumstances;
  rules::Choice choice;
  const rules::Rule* rule = nullptr;
  std::optional<rules::Evaluation> evaluation;
  std::optional<rules::OwnVerdict> own;

  units::Level reference;  ///< where the rule's pressure is meant
  units::AbsolutePressure barometer;
  bool barometer_assumed = false;
  units::Temperature water;
  bool water_assumed = false;
  units::Temperature metal;
  units::Temperature supply;
  std::optional<units::Duration> hold;

  std::optional<units::GaugePressure> test_pressure;  ///< at the reference level
  std::optional<units::GaugePressure> never_above;    ///< at the reference level
  std::optional<units::GaugePressure> examination;
  /// Test pressure, or without one the working pressure: where stiffness is given.
  std::optional<units::GaugePressure> ruling;
  std::vector<Stage> stages;

  units::Density water_density;  ///< at the ruling pressure
  hold::FilledBoiler filled;     ///< pressures of this model are those at the reference level
};

/// Throws  NotFound "sheet.unknown_rule"; BadInput of boiler content.
Basis gather(const boiler::Boiler& boiler, const std::vector<rules::Rule>& rules,
             const Request& request);

/// p(z) = p_ref + rho g (z_ref - z).
units::GaugePressure pressure_at(const Basis& basis, units::GaugePressure at_reference,
                                 units::Level level);

/// pressure_at() as a figure with its working.
working::Figure pressure_figure(const Basis& basis, const std::string& key,
                                const std::string& subject, units::GaugePressure at_reference,
                                units::Level level);

/// The barometer's absolute pressure that a gauge pressure at the reference stands for.
units::AbsolutePressure absolute_at_reference(const Basis& basis, units::GaugePressure gauge);

/// Why a figure has no value without a test pressure.
working::Message no_test_pressure();

// One function a section, in the order of use.
Section pressure_section(const Basis& basis);
Section gauge_section(const Basis& basis);
Section part_section(const Basis& basis);
Section place_section(const Basis& basis);
Section strength_section(const Basis& basis, std::vector<working::Message>& stops);
Section valve_section(const Basis& basis);
Section temperature_section(const Basis& basis);
Section filling_section(const Basis& basis);
Section pumping_section(const Basis& basis);
Section hold_section(const Basis& basis);
Section preparation_section(const Basis& basis);
Section after_section(const Basis& basis);

}  // namespace steamworthy::sheet
