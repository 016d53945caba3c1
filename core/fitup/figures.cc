#include "fitup/figures.h"

#include <algorithm>

#include "units/makers.h"

namespace steamworthy::fitup {
namespace {

using working::Figure;
using working::Message;
using working::Origin;
using working::Working;

units::Measure mm(double value) { return units::measure_size(units::millimetres(value)); }

Message give_or_take(double sd) { return {"fitup.give_or_take", {{"give_or_take", mm(2.0 * sd)}}}; }

Working fitted(const FitRequest& request, double sd) {
  units::Length coarsest;
  for (const GapReading& reading : request.readings) coarsest = std::max(coarsest, reading.step);
  return {.formula = "least squares of g = c - u . n",
          .inputs = {{"g", "input.gaps_felt",
                      units::measure_count(static_cast<double>(request.readings.size())),
                      Origin::Stated, ""},
                     {"s", "input.feeler_step", units::measure_size(coarsest), Origin::Stated, ""}},
          .method = "fitup",
          .remarks = {give_or_take(sd)}};
}

Figure limit_figure(const FitRequest& request) {
  Working working{.formula = "as stated", .method = "fitup"};
  if (!request.makers_limit) {
    working.formula = "1/16 in";
    working.remarks.push_back({"fitup.limit_is_practice", {}});
  } else {
    working.inputs = {{"g_max", "input.makers_gap_limit",
                       units::measure_size(*request.makers_limit), Origin::Stated, ""}};
  }
  return working::known("fitup.limit", request.closure,
                        units::measure_size(request.makers_limit.value_or(usual_limit)), working);
}

}  // namespace

std::vector<Figure> figures(const FitRequest& request, const FitAnswer& answer) {
  const std::string& closure = request.closure;
  const Working worst{.formula = "max over the places felt of g + s - v . n", .method = "fitup"};
  std::vector<Figure> list;
  if (answer.sentence.key == "fitup.places_do_not_reach_round") {
    for (const char* key : {"fitup.off_centre", "fitup.clearance", "fitup.smaller_by"}) {
      list.push_back(working::unknown(key, closure, answer.sentence));
    }
  } else {
    const double off_sd = std::max(answer.off_centre_sd.right, answer.off_centre_sd.up);
    list = {working::known("fitup.off_centre", closure, mm(size(answer.off_centre)),
                           fitted(request, off_sd)),
            working::known("fitup.clearance", closure, mm(answer.clearance),
                           fitted(request, answer.clearance_sd)),
            working::known("fitup.smaller_by", closure, mm(2.0 * answer.clearance),
                           fitted(request, 2.0 * answer.clearance_sd))};
  }
  list.push_back(working::known("fitup.worst_now", closure, mm(answer.worst_now), worst));
  if (answer.verdict == FitVerdict::GoodOnceMoved || answer.verdict == FitVerdict::Report) {
    list.push_back(working::known("fitup.worst_then", closure, mm(answer.worst_then), worst));
  }
  list.push_back(limit_figure(request));
  return list;
}

}  // namespace steamworthy::fitup
