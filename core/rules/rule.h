// Rule: a published or site rule for a pressure test, as data.
//
// A rule says what its source says and no more. What sources disagree about is
// kept in separate fields: water on filling, water under test and metal at the
// examination each have their own window; several holds stand side by side; an
// overshoot belongs to a strength test only. A field that is absent means "the
// rule does not say", and is shown as such.
//
// Rules come from rules/*.toml (wire/rule.h) or from a site's own facts. Which
// one applies: choose.h. What it demands here: evaluate.h.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "rules/circumstances.h"
#include "rules/formula.h"
#include "rules/stated.h"

namespace steamworthy::rules {

enum class Purpose {
  Tightness,  ///< are joints and tubes tight
  Strength,   ///< will the metal bear it
  Working,    ///< a look at working pressure or below
  Limit,      ///< not a test: bounds a design pressure or a valve's setting
  Interval,   ///< not a pressure: how often
  History,    ///< shown for the record, never offered as a way to work
};

/// How the words were seen.
enum class Seen {
  Seen,        ///< the law's, code's or manual's own words
  SecondHand,  ///< quoted by somebody else: check your copy
  FromMemory,  ///< not seen: check your copy
  Site,        ///< the site's own rule
};

enum class SourceKind { Law, HistoricLaw, Standard, Manual, Handbook, CommonPractice, SiteRule };

struct Source {
  std::string key;  ///< key of docs/bibliography.bib; for a site's rule its own document
  SourceKind kind = SourceKind::Law;
  Seen seen = Seen::Seen;

  friend bool operator==(const Source&, const Source&) = default;
};

/// A conjunction: everything that is filled in must be so.
struct Case {
  std::vector<BoilerKind> boilers;  ///< any of these; empty: any
  std::vector<Work> works;          ///< any of these; empty: any
  std::vector<std::pair<Trait, bool>> traits;
  std::optional<Stated<units::GaugePressure>> working_above;
  std::optional<Stated<units::GaugePressure>> working_not_above;

  friend bool operator==(const Case&, const Case&) = default;
};

enum class Sense {
  Exactly,
  AtLeast,
  AtMost,
  Between,           ///< above `above`, not above `value`: the user picks within
  NamedByAuthority,  ///< the rule leaves the figure to the surveyor or inspector
};

struct Demand {
  Sense sense = Sense::Exactly;
  Formula value;  ///< empty for NamedByAuthority
  Formula above;  ///< only for Between: must be passed, not only reached

  friend bool operator==(const Demand&, const Demand&) = default;
};

/// Never to be passed: factor x test pressure, or x the test pressure that the
/// code allowed when the boiler was built. Belongs to strength tests.
struct Ceiling {
  double factor = 1.0;
  bool of_original_test_pressure = false;

  friend bool operator==(const Ceiling&, const Ceiling&) = default;
};

enum class Stage { Filling, UnderTest, Examination };
enum class Medium { Water, Metal };

struct Window {
  Stage stage = Stage::UnderTest;
  Medium medium = Medium::Water;
  std::vector<BoilerKind> boilers;  ///< empty: any
  std::optional<Stated<units::Temperature>> from;
  std::optional<Stated<units::Temperature>> to;
  std::string source;  ///< key of the bibliography where it is not the rule's own

  friend bool operator==(const Window&, const Window&) = default;
};

enum class HoldAt { TestPressure, ExaminationPressure };

/// One clause about time. Clauses that disagree are listed one by one.
struct Hold {
  std::optional<Stated<units::Duration>> at_least;  ///< absent: until the examination is over
  HoldAt at = HoldAt::TestPressure;
  std::string words;  ///< what for, in the rule's sense: "must stand it, consecutive minutes"

  friend bool operator==(const Hold&, const Hold&) = default;
};

/// "Not more than this share of the pressure within this time."
struct AllowedDrop {
  double fraction = 0.0;
  Stated<units::Duration> within;
  std::string source;  ///< where it is not the rule's own

  friend bool operator==(const AllowedDrop&, const AllowedDrop&) = default;
};

/// To what pressure to let down before people go near.
struct Examination {
  double factor = 1.0;
  Reference of = Reference::WorkingPressure;

  friend bool operator==(const Examination&, const Examination&) = default;
};

struct GaugeDemand {
  std::optional<int> number;
  std::optional<double> range_from;                             ///< x test pressure
  std::optional<double> range_to;                               ///< x test pressure
  std::optional<Stated<units::PressureDifference>> graduation;  ///< not coarser than
  std::optional<double> accuracy;                               ///< of span, a fraction
  std::string words;

  friend bool operator==(const GaugeDemand&, const GaugeDemand&) = default;
};

enum class ValveTreatment {
  NotStated,
  MustBeGagged,      ///< gagged or clamped
  RemovedOrClamped,  ///< removed or clamped; never by screwing down the spring
  MayBeGagged,
};

struct SafetyValves {
  ValveTreatment treatment = ValveTreatment::NotStated;
  std::string words;
  std::string source;  ///< where it is not the rule's own

  friend bool operator==(const SafetyValves&, const SafetyValves&) = default;
};

struct Rise {
  std::optional<Stated<units::PressureRate>> not_faster;
  std::optional<double> first_step;  ///< fraction of the test pressure
  std::optional<double> next_steps;  ///< fraction of the test pressure
  std::string words;
  std::string source;

  friend bool operator==(const Rise&, const Rise&) = default;
};

struct Rule {
  std::string id;  ///< "us-marine-ordinary": lower case, digits, hyphens
  std::string title;
  std::string jurisdiction;  ///< "us-marine", "in", "site"
  std::string edition;       ///< what is known of it: "as seen; edition not recorded"
  std::string date;          ///< of the edition; empty where it is not known
  std::string content_hash;  ///< of the file's bytes, filled in by the caller; core has no hash
  Source source;

  Purpose purpose = Purpose::Strength;
  std::vector<Subject> subjects{Subject::Boiler};
  std::vector<BoilerKind> boilers;  ///< empty: any
  std::vector<Work> works;          ///< empty: any
  std::vector<Case> applies;        ///< at least one must hold, if there are any
  std::vector<Case> unless;         ///< none may hold

  Demand pressure;
  std::optional<Ceiling> ceiling;
  std::vector<Window> windows;
  std::vector<Hold> holds;
  std::optional<AllowedDrop> drop;
  std::optional<Examination> examination;
  std::optional<GaugeDemand> gauges;
  SafetyValves safety_valves;
  std::optional<Rise> rise;
  std::optional<double> stress_cap;   ///< membrane stress, fraction of yield at test temperature
  std::optional<int> months_between;  ///< greatest, from test to test or look to look
  std::string witness;                ///< who must be there or must call for it
  std::vector<std::string> preparations;  ///< to blank, gag, remove, prevent
  std::vector<std::string> notes;

  bool is_test() const {
    return purpose == Purpose::Tightness || purpose == Purpose::Strength ||
           purpose == Purpose::Working;
  }
  friend bool operator==(const Rule&, const Rule&) = default;
};

std::string_view token(Purpose purpose);     ///< "tightness", "strength", "working", ...
std::string_view token(Seen seen);           ///< "seen", "second-hand", "from-memory", "site"
std::string_view token(SourceKind kind);     ///< "law", "historic-law", "standard", ...
std::string_view token(Sense sense);         ///< "exactly", "at-least", "at-most", ...
std::string_view token(Stage stage);         ///< "filling", "under-test", "examination"
std::string_view token(Medium medium);       ///< "water", "metal"
std::string_view token(HoldAt at);           ///< "test-pressure", "examination-pressure"
std::string_view token(ValveTreatment how);  ///< "not-stated", "must-be-gagged", ...
std::optional<Purpose> purpose_of(std::string_view token);
std::optional<Seen> seen_of(std::string_view token);
std::optional<SourceKind> source_kind_of(std::string_view token);
std::optional<Sense> sense_of(std::string_view token);
std::optional<Stage> stage_of(std::string_view token);
std::optional<Medium> medium_of(std::string_view token);
std::optional<HoldAt> hold_at_of(std::string_view token);
std::optional<ValveTreatment> valve_treatment_of(std::string_view token);
std::vector<std::string_view> purpose_tokens();
std::vector<std::string_view> seen_tokens();
std::vector<std::string_view> source_kind_tokens();
std::vector<std::string_view> sense_tokens();
std::vector<std::string_view> stage_tokens();
std::vector<std::string_view> medium_tokens();
std::vector<std::string_view> hold_at_tokens();
std::vector<std::string_view> valve_treatment_tokens();

}  // namespace steamworthy::rules
