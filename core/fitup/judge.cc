#include <algorithm>
#include <cmath>

#include "fitup/check.h"
#include "fitup/figures.h"
#include "fitup/fit.h"
#include "fitup/fitup.h"
#include "numerics/math.h"
#include "units/makers.h"

namespace steamworthy::fitup {
namespace {

using numerics::pi;
using working::Message;
using working::Term;

constexpr double coverage = 2.0;   // standard deviations of the fit, between the places felt
constexpr int places_round = 72;   // at which the fit is looked at: every 5 degrees
constexpr double slack_mm = 1e-9;  // of sums of readings against a limit equal to them
constexpr double most_unfelt = 2.0 * pi / 3.0;

struct Judged {
  std::vector<Felt> felt;
  Fit fit;
  std::vector<Plane> edge;  ///< normals all round
  double limit = 0.0;
};

/// The greatest gap felt, moved by `move`, at its greatest; its place.
double worst_felt(const std::vector<Felt>& felt, Plane move) {
  double worst = -1e300;
  for (const Felt& one : felt) worst = std::max(worst, one.most - dot(move, one.normal));
  return worst;
}

/// The greatest gap anywhere round by the fit, with its uncertainty.
double worst_fitted(const Judged& judged, Plane move) {
  double worst = -1e300;
  for (const Plane normal : judged.edge) {
    worst = std::max(worst, judged.fit.gap(normal, move) + coverage * judged.fit.sd(normal));
  }
  return worst;
}

/// The plate can go there: it does not run into the edge at a place felt.
bool has_room(const std::vector<Felt>& felt, Plane move) {
  return std::all_of(felt.begin(), felt.end(),
                     [&](const Felt& one) { return one.most - dot(move, one.normal) >= 0.0; });
}

bool is_good(const Judged& judged, Plane move) {
  return worst_felt(judged.felt, move) <= judged.limit + slack_mm &&
         worst_fitted(judged, move) <= judged.limit + slack_mm && has_room(judged.felt, move);
}

Judged gather(const FitRequest& request) {
  Judged judged;
  for (const GapReading& reading : request.readings) {
    const double at = bearing_of_clock(reading.clock);
    const double gap = units::in_millimetres(reading.gap);
    judged.felt.push_back(
        {at, normal_at(request.outline, at), gap, gap + units::in_millimetres(reading.step)});
  }
  for (int i = 0; i < places_round; ++i) {
    judged.edge.push_back(normal_at(request.outline, 2.0 * pi * i / places_round));
  }
  judged.limit = units::in_millimetres(request.makers_limit.value_or(usual_limit));
  return judged;
}

units::Measure mm(double value) { return units::measure_size(units::millimetres(value)); }

Term place(double bearing) { return Term{"fitup.place." + std::string(word_of_bearing(bearing))}; }

void report(FitAnswer& answer, const Judged& judged, const Centring& least) {
  answer.verdict = FitVerdict::Report;
  answer.move = least.move;
  const Felt* worst = &judged.felt.front();
  const auto centred = [&](const Felt& one) {
    return one.middle() + dot(judged.fit.off_centre, one.normal);
  };
  for (const Felt& one : judged.felt) {
    if (centred(one) > centred(*worst)) worst = &one;
  }
  const bool is_even = centred(*worst) - judged.fit.clearance <= worst->most - worst->least;
  if (is_even) {
    answer.sentence = {"fitup.report_all_round",
                       {{"least", mm(least.greatest)}, {"limit", mm(judged.limit)}}};
  } else {
    answer.sentence = {"fitup.report_at_place",
                       {{"least", mm(least.greatest)},
                        {"place", place(worst->bearing)},
                        {"limit", mm(judged.limit)}}};
  }
}

void good_once_moved(FitAnswer& answer, const Judged& judged, Plane move) {
  answer.verdict = FitVerdict::GoodOnceMoved;
  answer.move = move;
  answer.worst_then = worst_felt(judged.felt, move);
  answer.sentence = {"fitup.good_once_moved",
                     {{"move", mm(size(move))},
                      {"towards", place(bearing(move))},
                      {"clearance", mm(judged.fit.clearance)},
                      {"most", mm(answer.worst_then)}}};
  answer.notes.push_back({"fitup.read_again", {}});
}

void decide(FitAnswer& answer, const Judged& judged) {
  if (widest_unfelt(judged.felt) > most_unfelt + 1e-9) {
    answer.sentence = {"fitup.places_do_not_reach_round", {}};
    return;
  }
  if (is_good(judged, {})) {
    answer.verdict = FitVerdict::GoodAsItStands;
    answer.worst_then = answer.worst_now;
    answer.sentence = {"fitup.good_as_it_stands",
                       {{"most", mm(answer.worst_now)}, {"limit", mm(judged.limit)}}};
    return;
  }
  const Plane back = -judged.fit.off_centre;
  const Centring least = best_centring(judged.felt, false, back);
  answer.worst_then = worst_felt(judged.felt, least.move);
  if (least.greatest > judged.limit + slack_mm) {
    report(answer, judged, least);
    return;
  }
  const Centring most = best_centring(judged.felt, true, back);
  for (const Plane move : {back, most.move}) {
    if (is_good(judged, move)) {
      good_once_moved(answer, judged, move);
      return;
    }
  }
  if (most.greatest <= judged.limit) {
    answer.sentence = {"fitup.more_places",
                       {{"most", mm(worst_fitted(judged, back))}, {"limit", mm(judged.limit)}}};
  } else {
    answer.sentence = {
        "fitup.within_the_step",
        {{"least", mm(least.greatest)}, {"most", mm(most.greatest)}, {"limit", mm(judged.limit)}}};
  }
}

void add_notes(FitAnswer& answer, const Judged& judged) {
  const Fit& fit = judged.fit;
  const double off = size(fit.off_centre);
  const double give = coverage * std::max(answer.off_centre_sd.right, answer.off_centre_sd.up);
  if (off > give) {
    answer.notes.push_back({"fitup.sits_off_centre",
                            {{"off_centre", mm(off)},
                             {"towards", place(bearing(fit.off_centre))},
                             {"give_or_take", mm(give)}}});
  } else {
    answer.notes.push_back({"fitup.sits_in_the_middle", {{"give_or_take", mm(give)}}});
  }
  const Felt& odd = judged.felt[fit.misfit_at];
  if (std::fabs(fit.greatest_misfit) > odd.most - odd.least) {
    answer.notes.push_back(
        {"fitup.not_of_its_shape",
         {{"misfit", mm(std::fabs(fit.greatest_misfit))}, {"place", place(odd.bearing)}}});
  }
}

}  // namespace

std::string_view token(FitVerdict verdict) {
  switch (verdict) {
    case FitVerdict::GoodAsItStands:
      return "good_as_it_stands";
    case FitVerdict::GoodOnceMoved:
      return "good_once_moved";
    case FitVerdict::Report:
      return "report";
    case FitVerdict::CannotTell:
      break;
  }
  return "cannot_tell";
}

FitAnswer judge_fit(const FitRequest& request) {
  check(request);
  Judged judged = gather(request);
  judged.fit = fit_plate(judged.felt);
  FitAnswer answer;
  answer.off_centre = judged.fit.off_centre;
  answer.off_centre_sd = {std::sqrt(judged.fit.covariance[1][1]),
                          std::sqrt(judged.fit.covariance[2][2])};
  answer.clearance = judged.fit.clearance;
  answer.clearance_sd = std::sqrt(judged.fit.covariance[0][0]);
  answer.worst_now = worst_felt(judged.felt, {});
  answer.worst_then = answer.worst_now;
  decide(answer, judged);
  if (widest_unfelt(judged.felt) <= most_unfelt + 1e-9) add_notes(answer, judged);
  answer.figures = figures(request, answer);
  return answer;
}

}  // namespace steamworthy::fitup
