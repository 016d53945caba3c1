#include "hold_study/tables.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "hold_study/statistics.h"

namespace steamworthy::hold_study {
namespace {

const Filter all = [](const Outcome&) { return true; };

/// "0 of 131 (below 2.3 %)", "3 of 131 (2.3 %, below 5.8 %)": the bound is at 95 %.
std::string rate(const Count& count) {
  if (count.of == 0) return "none asked";
  const double bound = 100.0 * count.upper_95();
  if (count.hits == 0) return fmt::format("0 of {} (below {:.1f} %)", count.of, bound);
  return fmt::format("{} of {} ({:.1f} %, below {:.1f} %)", count.hits, count.of,
                     100.0 * count.share(), bound);
}

std::string percent(const Count& count) {
  return count.of == 0 ? "-" : fmt::format("{:.1f} %", 100.0 * count.share());
}

std::string method_rows(const std::vector<Outcome>& outcomes) {
  std::string text =
      "| method | median bias | mean bias | median error | rms error | median width | coverage | "
      "false \"no loss\" | false \"losing\" | false \"gaining\" | cannot tell |\n"
      "| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";
  for (std::size_t i = 0; i < method_count; ++i) {
    const Score s = score(outcomes, i, all);
    text += fmt::format(
        "| {} | {:+.1f} | {:+.1f} | {:.1f} | {:.1f} | {:.1f} | {} | {} | {} | {} | {} |\n",
        methods[i], s.bias_median, s.bias_mean, s.error_median, s.error_rms, s.width_median,
        percent(s.covered), rate(s.false_no_loss), rate(s.false_losing), rate(s.false_gaining),
        percent(s.cannot_tell));
  }
  return text;
}

struct Slice {
  std::string name;
  Filter filter;
};

std::string slice_rows(const std::vector<Outcome>& outcomes, const std::vector<Slice>& slices) {
  std::string text =
      "| cases | number | median bias | median error | median width | coverage | false \"no loss\" "
      "| "
      "false \"losing\" | cannot tell | air coverage |\n"
      "| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";
  for (const auto& [name, filter] : slices) {
    const Score s = score(outcomes, 0, filter);
    const AirScore air = air_score(outcomes, filter);
    text += fmt::format(
        "| {} | {} | {:+.1f} | {:.1f} | {:.1f} | {} | {} of {} | {} of {} | {} | {} |\n", name,
        s.cases, s.bias_median, s.error_median, s.width_median, percent(s.covered),
        s.false_no_loss.hits, s.false_no_loss.of, s.false_losing.hits, s.false_losing.of,
        percent(s.cannot_tell), percent(air.covered));
  }
  return text;
}

std::vector<Slice> slices() {
  std::vector<Slice> list;
  for (const double every : {1.0, 5.0, 10.0, 30.0, 60.0, 300.0}) {
    list.push_back({fmt::format("a reading every {:g} s", every),
                    [=](const Outcome& o) { return o.made.instruments.every_s == every; }});
  }
  const double edges[] = {1.5, 4.0, 8.0, 16.0, 45.0};
  for (std::size_t i = 0; i + 1 < std::size(edges); ++i) {
    list.push_back({fmt::format("{:g} to {:g} m3", edges[i], edges[i + 1]), [=](const Outcome& o) {
                      const double volume = o.made.test.plant.volume_m3();
                      return volume >= edges[i] && volume < edges[i + 1];
                    }});
  }
  for (const double minutes : {20.0, 30.0, 60.0, 120.0}) {
    list.push_back({fmt::format("hold of {:g} min", minutes),
                    [=](const Outcome& o) { return o.made.test.plan.hold_s == 60.0 * minutes; }});
  }
  list.push_back(
      {"steps to 0.2 bar and 0.1 K, 30 min or more, every 60 s or less", [](const Outcome& o) {
         const Instruments& set = o.made.instruments;
         return set.thermometer_step_k <= 0.1 && set.gauge_step_pa <= 2e4 && set.every_s <= 60.0 &&
                o.made.test.plan.hold_s >= 1800.0;
       }});
  list.push_back({"a valve passes in",
                  [](const Outcome& o) { return o.made.test.inflow.at_test_pressure_m3_s > 0.0; }});
  list.push_back({"the pump's check passes while raising",
                  [](const Outcome& o) { return o.made.test.pump.check_passes_m3_s > 0.0; }});
  list.push_back({"neither", [](const Outcome& o) {
                    return o.made.test.pump.check_passes_m3_s == 0.0 &&
                           o.made.test.inflow.at_test_pressure_m3_s == 0.0;
                  }});
  list.push_back(
      {"nothing lost, nothing gained", [](const Outcome& o) { return o.made.nothing_passes(); }});
  return list;
}

std::string air_row(const char* name, const AirScore& s, const std::string& covered) {
  return fmt::format("| {} | {} | {:+.2f} | {:.2f} | {:+.1f} % | {:.1f} % | {:.1f} % | {} |\n",
                     name, s.cases, s.bias_median_l, s.error_median_l,
                     100.0 * s.relative_bias_median, 100.0 * s.relative_error_median,
                     100.0 * s.relative_error_p90, covered);
}

std::string air_table(const Study& study) {
  const AirScore ordinary = air_score(study.ordinary, all);
  const AirScore harsh = air_score(study.harsh, all);
  std::string text =
      "| set | cases | median bias, L | median error, L | median bias | median error | 90 % of "
      "errors "
      "below | coverage |\n| --- | --- | --- | --- | --- | --- | --- | --- |\n";
  text += air_row("recommended", ordinary, percent(ordinary.covered));
  text += air_row("recommended, harsh", harsh, percent(harsh.covered));
  text += air_row("upper half's straight line", intercept_score(study.ordinary), "no interval");
  return text;
}

std::string onset_sentence(const std::vector<Outcome>& outcomes) {
  const OnsetScore s = onset_score(outcomes);
  return fmt::format(
      "A leak begins within the hold in {} cases: the interval covers the mean in {}, the one for "
      "the "
      "end of the hold covers that in {}, one of the two in {}; estimate over truth at the end, "
      "median: {:.2f}.\n",
      s.cases, percent(s.mean_covered), percent(s.end_covered), percent(s.either_covered),
      s.end_ratio_median);
}

std::string found_sentence(const std::vector<Outcome>& outcomes) {
  const Score s = score(outcomes, 0, all);
  return fmt::format(
      "Of {} cases that lose the leak of concern or more, over the hold and at its end, the "
      "recommended "
      "method says `losing` in {}; of {} that gain as much, `gaining` in {}.\n\n",
      s.found_losing.of, s.found_losing.hits, s.found_gaining.of, s.found_gaining.hits);
}

std::string not_bled_sentence(const std::vector<Outcome>& outcomes) {
  const Score s = score(outcomes, 0, all);
  const int intervals =
      static_cast<int>(std::count_if(outcomes.begin(), outcomes.end(), [](const Outcome& o) {
        return o.answers[0].net_loss.has_value();
      }));
  return fmt::format(
      "Test valve open and the pump's check passing, {} cases: `cannot_tell` in {}, a loss given "
      "in "
      "{}.\n",
      s.cases, s.cannot_tell.hits, intervals);
}

}  // namespace

std::string tables(const Study& study) {
  const std::size_t count = study.ordinary.size();
  std::string text = fmt::format(
      "Seed {}; {} ordinary cases, {} harsh ones (ambient offset and uneven start x 2.5), {} with "
      "the "
      "pump side not hung open. Leak of concern {:g} mL/min. Loss in mL/min, positive when water "
      "leaves. Bias, error, width and coverage of the 90 % interval: cases without a leak that "
      "begins "
      "within the hold, against the mean over the hold. False \"no loss\": of the cases that lose "
      "the "
      "leak of concern or more, over the hold or at its end. False \"losing\": of those that lose "
      "nothing. \"Below\": 95 % bound of the rate.\n\n",
      study.seed, count, study.harsh.size(), study.not_bled.size(), leak_of_concern_ml_per_min);
  text += "### Ordinary\n\n" + method_rows(study.ordinary) + "\n";
  text += found_sentence(study.ordinary);
  text += onset_sentence(study.ordinary) + "\n";
  text += "### Harsh\n\n" + method_rows(study.harsh) + "\n";
  text += found_sentence(study.harsh);
  text += onset_sentence(study.harsh) + "\n";
  text += not_bled_sentence(study.not_bled) + "\n";
  text += "### Trapped air\n\n" + air_table(study) + "\n";
  text += "Relative figures: cases with more than a litre.\n\n";
  text += "### By kind of case (recommended method, ordinary set)\n\n";
  text += slice_rows(study.ordinary, slices());
  return text;
}

}  // namespace steamworthy::hold_study
