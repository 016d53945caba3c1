// What a rule demands in some circumstances, as figures that show their working.
//
// A figure that the rule does not state is there without a value and says
// "rules.not_stated"; one that lacks an input says "rules.missing_input".
#pragma once

#include <string>
#include <vector>

#include "rules/circumstances.h"
#include "rules/rule.h"
#include "working/figure.h"

namespace steamworthy::rules {

struct WindowFigures {
  Stage stage = Stage::UnderTest;
  Medium medium = Medium::Water;
  working::Figure from;
  working::Figure to;
};

struct HoldFigures {
  HoldAt at = HoldAt::TestPressure;
  std::string words;
  working::Figure at_least;  ///< without a value: until the examination is over
};

struct Evaluation {
  std::string rule;  ///< id
  std::string title;
  Purpose purpose = Purpose::Strength;
  Sense sense = Sense::Exactly;
  Source source;

  // What the rule says, whoever is there. Pressures at the highest point of the
  // steam side, as gauge pressures.
  working::Figure least;              ///< "rules.least_pressure"
  bool least_must_be_passed = false;  ///< above it, not only at it
  working::Figure most;               ///< "rules.most_pressure"

  /// "rules.test_pressure": the pressure to go to. Without a value while
  /// something is missing, has to be picked, or forbids it (`stops`).
  working::Figure test_pressure;
  /// "rules.ceiling": never to be passed. For a strength test the rule's
  /// overshoot, with the safety valves gagged; for any other test the rule's
  /// own upper bound; never above the ceiling that the user states.
  working::Figure ceiling;
  working::Figure examination_pressure;  ///< "rules.examination_pressure"

  std::vector<WindowFigures> windows;  ///< those for this kind of boiler
  std::vector<HoldFigures> holds;
  working::Figure drop_share;          ///< "rules.drop_share": allowed fall as a share
  working::Figure drop_time;           ///< "rules.drop_time"
  working::Figure drop_least;          ///< "rules.drop_least": pressure it may fall to in that time
  working::Figure gauge_number;        ///< "rules.gauge_number"
  working::Figure gauge_range_from;    ///< "rules.gauge_range_from"
  working::Figure gauge_range_to;      ///< "rules.gauge_range_to"
  working::Figure gauge_graduation;    ///< "rules.gauge_graduation": not coarser than
  working::Figure gauge_accuracy;      ///< "rules.gauge_accuracy": share of span
  working::Figure greatest_rate;       ///< "rules.greatest_rate"
  std::vector<working::Figure> steps;  ///< "rules.step": stepped rise to the test pressure
  working::Figure stress_cap;          ///< "rules.stress_cap": share of yield at test temperature
  SafetyValves safety_valves;
  std::string witness;
  std::vector<std::string> preparations;
  std::vector<std::string> notes;

  std::vector<working::Message> missing;  ///< inputs that the rule needs: "rules.missing_input"
  std::vector<working::Message> stops;    ///< why the pressure may not be preset
  std::vector<working::Message> remarks;  ///< "rules.second_hand", "rules.gags_needed", ...

  bool may_be_preset() const { return test_pressure.is_known() && stops.empty(); }
};

/// What a rule demands. Does not ask whether the rule applies: choose.h does.
///
/// Stops, so that no pressure is preset:
///   "rules.authority_not_named"  it is above the working pressure and nobody is named
///   "rules.working_pressure_not_told"  nobody can say whether it is above it
///   "rules.from_memory"          it is above the working pressure by a rule nobody saw
///   "rules.not_a_test"           the rule is a limit, an interval or history
///   "rules.picked_below", "rules.picked_above", "rules.picked_is_not_the_rules"
///   "rules.picked_not_positive", "rules.target_not_positive"  it is not above zero
///   "rules.empty_interval"       the interval has no room
///   "rules.above_ceiling"        it is above the ceiling
///   "rules.valves_not_gagged"    the test pressure reaches the lowest safety valve
///
/// Throws    as evaluate_formula().
/// Source    the rule's own.
/// Checked   evaluate_test.cc, evaluate_property_test.cc.
Evaluation evaluate(const Rule& rule, const Circumstances& circumstances);

}  // namespace steamworthy::rules
