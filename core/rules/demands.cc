#include "rules/demands.h"

#include <algorithm>

#include "rules/input_names.h"

namespace steamworthy::rules {
namespace {

using units::GaugePressure;
using units::Measure;
using working::Figure;
using working::Message;
using working::Origin;
using working::Working;

class Demands {
 public:
  Demands(const Rule& rule, const Circumstances& given, std::optional<GaugePressure> target,
          Evaluation& out)
      : rule_(rule), given_(given), target_(target), out_(out) {}

  void put() {
    windows();
    holds();
    drop();
    gauges();
    rise();
    out_.stress_cap = says("rules.stress_cap", rule_.stress_cap, units::measure_percent);
    out_.safety_valves = rule_.safety_valves;
    out_.witness = rule_.witness;
    out_.preparations = rule_.preparations;
    out_.notes = rule_.notes;
  }

 private:
  Working working(const std::string& source) const {
    Working result;
    result.method = "rules";
    result.sources = {source.empty() ? rule_.source.key : source};
    return result;
  }

  Figure not_stated(const std::string& key) const {
    return working::unknown(key, rule_.id, {"rules.not_stated", {}});
  }

  /// A number that stands in the rule as it is.
  Figure stated(const std::string& key, Measure value, const std::string& source = "") const {
    Working how = working(source);
    how.formula = "x";
    how.inputs = {{"x", key, value, Origin::Rule, how.sources.front()}};
    return working::known(key, rule_.id, value, std::move(how));
  }

  template <class T, class ToMeasure>
  Figure says(const std::string& key, const std::optional<T>& value, ToMeasure to_measure) const {
    return value ? stated(key, to_measure(*value)) : not_stated(key);
  }

  /// factor x test pressure.
  Figure share_of_target(const std::string& key, std::optional<double> factor) const {
    if (!factor) return not_stated(key);
    Working how = working("");
    how.formula = "p_x = k p";
    how.inputs = {
        {"k", "input.factor", units::measure_fraction(*factor), Origin::Rule, rule_.source.key}};
    if (!target_) return working::unknown(key, rule_.id, out_.test_pressure.cannot_tell, how);
    how.inputs.push_back(
        {"p", "rules.test_pressure", units::measure(*target_), Origin::Computed, ""});
    const GaugePressure value = GaugePressure{} + *factor * target_->from_origin();
    return working::known(key, rule_.id, units::measure(value), std::move(how));
  }

  void windows() {
    for (const Window& window : rule_.windows) {
      if (!window.boilers.empty() && !given_.boiler) {
        unknown_window(window);
        continue;
      }
      if (!window.boilers.empty() && std::find(window.boilers.begin(), window.boilers.end(),
                                               *given_.boiler) == window.boilers.end()) {
        continue;
      }
      WindowFigures figures{window.stage, window.medium, not_stated("rules.temperature_from"),
                            not_stated("rules.temperature_to")};
      if (window.from) {
        figures.from =
            stated("rules.temperature_from", units::measure(window.from->value), window.source);
      }
      if (window.to) {
        figures.to =
            stated("rules.temperature_to", units::measure(window.to->value), window.source);
      }
      out_.windows.push_back(std::move(figures));
    }
  }

  /// The window differs by kind of boiler and nobody said which it is: one entry says so.
  void unknown_window(const Window& window) {
    const Message why = missing_input("boiler kind");
    add_once(out_.missing, why);
    for (const WindowFigures& there : out_.windows) {
      if (there.stage == window.stage && there.medium == window.medium) return;
    }
    out_.windows.push_back({window.stage, window.medium,
                            working::unknown("rules.temperature_from", rule_.id, why),
                            working::unknown("rules.temperature_to", rule_.id, why)});
  }

  void holds() {
    for (const Hold& hold : rule_.holds) {
      Figure time = working::unknown("rules.hold", rule_.id, {"rules.until_examined", {}});
      if (hold.at_least) time = stated("rules.hold", units::measure(hold.at_least->value));
      out_.holds.push_back({hold.at, hold.words, std::move(time)});
    }
  }

  void drop() {
    out_.drop_share = not_stated("rules.drop_share");
    out_.drop_time = not_stated("rules.drop_time");
    out_.drop_least = not_stated("rules.drop_least");
    if (!rule_.drop) return;
    const std::string& source = rule_.drop->source;
    out_.drop_share =
        stated("rules.drop_share", units::measure_percent(rule_.drop->fraction), source);
    out_.drop_time = stated("rules.drop_time", units::measure(rule_.drop->within.value), source);
    out_.drop_least = share_of_target("rules.drop_least", 1.0 - rule_.drop->fraction);
    out_.drop_least.working.remarks.push_back({"rules.met_is_not_tight", {}});
    out_.remarks.push_back({"rules.met_is_not_tight", {}});
  }

  void gauges() {
    const GaugeDemand demand = rule_.gauges.value_or(GaugeDemand{});
    std::optional<double> number;
    if (demand.number) number = *demand.number;
    out_.gauge_number = says("rules.gauge_number", number, units::measure_count);
    out_.gauge_range_from = share_of_target("rules.gauge_range_from", demand.range_from);
    out_.gauge_range_to = share_of_target("rules.gauge_range_to", demand.range_to);
    out_.gauge_graduation = not_stated("rules.gauge_graduation");
    if (demand.graduation) {
      out_.gauge_graduation = stated("rules.gauge_graduation",
                                     units::measure_pressure_difference(demand.graduation->value));
    }
    out_.gauge_accuracy = says("rules.gauge_accuracy", demand.accuracy, units::measure_percent);
  }

  void rise() {
    out_.greatest_rate = not_stated("rules.greatest_rate");
    if (!rule_.rise) return;
    const Rise& rise = *rule_.rise;
    if (rise.not_faster) {
      out_.greatest_rate =
          stated("rules.greatest_rate", units::measure(rise.not_faster->value), rise.source);
    }
    if (!rise.first_step || !rise.next_steps) return;
    // Whole steps by counting, so that no rounding adds a step just short of the end.
    for (int i = 0;; ++i) {
      const double share = *rise.first_step + i * *rise.next_steps;
      if (share > 1.0 - 1e-9) break;
      out_.steps.push_back(share_of_target("rules.step", share));
    }
    out_.steps.push_back(share_of_target("rules.step", 1.0));
  }

  const Rule& rule_;
  const Circumstances& given_;
  std::optional<GaugePressure> target_;
  Evaluation& out_;
};

}  // namespace

void put_other_demands(const Rule& rule, const Circumstances& circumstances,
                       std::optional<GaugePressure> target, Evaluation& evaluation) {
  Demands(rule, circumstances, target, evaluation).put();
}

}  // namespace steamworthy::rules
