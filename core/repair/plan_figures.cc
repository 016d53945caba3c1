// Litres, minutes and hours of a repair plan.
#include "repair/plan.h"

namespace steamworthy::repair {
namespace {

using units::Duration;
using working::Figure;
using working::Input;
using working::Message;
using working::Origin;
using working::Working;

Input volume(units::Volume out) {
  return {"V", "input.water_out", units::measure(out), Origin::Computed, ""};
}

Figure litres(const Drop& drop) {
  if (drop.cannot_tell) return working::unknown("repair.litres_out", "", *drop.cannot_tell);
  return working::known("repair.litres_out", "", units::measure(drop.out),
                        {.formula = "V = sum over parts of (all - below where it stays)",
                         .method = "repair",
                         .remarks = {{"repair.from_full", {}}}});
}

Figure time_at(const char* key, const Drop& drop, std::optional<units::VolumeFlow> rate,
               Origin origin, const Message& not_stated) {
  if (drop.cannot_tell) return working::unknown(key, "", *drop.cannot_tell);
  if (!rate) return working::unknown(key, "", not_stated);
  return working::known(
      key, "", units::measure(Duration::from_si(drop.out.si() / rate->si())),
      {.formula = "t = V / q",
       .inputs = {volume(drop.out),
                  {"q", "input.water_rate", units::measure_flow(*rate), origin, ""}},
       .method = "repair"});
}

/// The sum of what is stated; the name of the first that is not.
struct Sum {
  double seconds = 0.0;
  std::vector<Input> inputs;
  std::optional<Message> missing;

  void add(const char* symbol, const char* name, std::optional<Duration> value, Origin origin) {
    if (!value) {
      if (!missing) missing = Message{"repair.hours_not_stated", {{"what", working::Term{name}}}};
      return;
    }
    seconds += value->si();
    inputs.push_back({symbol, name, units::measure(*value), origin, ""});
  }
};

std::optional<Duration> value_of(const Figure& figure) {
  if (!figure.is_known()) return std::nullopt;
  return Duration::from_si(figure.value->si);
}

Figure sum_figure(const char* key, const Sum& sum, const char* formula) {
  if (sum.missing) return working::unknown(key, "", *sum.missing);
  return working::known(key, "", units::measure(Duration::from_si(sum.seconds)),
                        {.formula = formula, .inputs = sum.inputs, .method = "repair"});
}

void add_hours(std::vector<Figure>& figures, const Hours& hours, std::optional<Duration> out,
               std::optional<Duration> back) {
  Sum cycle;
  cycle.add("a", "input.hours_let_down", hours.let_down, Origin::Stated);
  cycle.add("b", "input.hours_out", out, Origin::Computed);
  cycle.add("c", "input.hours_repairs", hours.repairs, Origin::Stated);
  cycle.add("d", "input.hours_back", back, Origin::Computed);
  cycle.add("e", "input.hours_raise_and_hold", hours.raise_and_hold, Origin::Stated);
  cycle.add("f", "input.hours_walkdown", hours.walkdown, Origin::Stated);
  figures.push_back(sum_figure("repair.drop_now", cycle, "T = a + b + c + d + e + f"));
  Sum look_on = cycle;
  look_on.add("g", "input.hours_walkdown_left", hours.walkdown_left, Origin::Stated);
  figures.push_back(sum_figure("repair.look_on", look_on, "g + T"));
  if (look_on.missing || cycle.seconds <= 0.0) {
    figures.push_back(working::unknown("repair.break_even", "",
                                       look_on.missing.value_or(Message{"repair.no_hours", {}})));
    return;
  }
  figures.push_back(working::known(
      "repair.break_even", "", units::measure_percent(hours.walkdown_left->si() / cycle.seconds),
      {.formula = "g / T",
       .inputs = look_on.inputs,
       .method = "repair",
       .remarks = {{"repair.what_break_even_means", {}}}}));
}

}  // namespace

std::vector<Figure> plan_figures(const boiler::Boiler& boiler, const PlanRequest& request,
                                 const Drop& drop, bool needs_drop) {
  std::vector<Figure> figures;
  std::optional<Duration> out = Duration{};
  std::optional<Duration> back = Duration{};
  if (needs_drop) {
    figures.push_back(litres(drop));
    figures.push_back(time_at("repair.minutes_out", drop, request.drain_rate, Origin::Stated,
                              {"repair.drain_rate_not_stated", {}}));
    out = value_of(figures.back());
    const auto fill = request.fill_rate ? request.fill_rate : boiler.house.fill_rate;
    figures.push_back(time_at("repair.minutes_back", drop, fill,
                              request.fill_rate ? Origin::Stated : Origin::Described,
                              {"repair.fill_rate_not_stated", {}}));
    back = value_of(figures.back());
    if (const auto soonest = soonest_out(boiler, drop)) {
      figures.push_back(working::known("repair.soonest_out", "", units::measure(*soonest),
                                       {.formula = "t = V / sum of A sqrt(2 g h)",
                                        .inputs = {volume(drop.out)},
                                        .method = "repair",
                                        .remarks = {{"repair.drains_pass_less", {}}}}));
    }
  }
  add_hours(figures, request.hours, out, back);
  return figures;
}

}  // namespace steamworthy::repair
