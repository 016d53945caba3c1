#include "hold/decide.h"

#include <algorithm>
#include <cmath>

#include "numerics/math.h"
#include "units/makers.h"

namespace steamworthy::hold {

namespace {

constexpr int fewest_readings = 4;
constexpr double improbable = 0.05;

units::Measure loss(double ml_min) {
  return {units::Kind::Leakage, units::millilitres_per_minute(ml_min).si()};
}

void cannot_tell(HoldAnswer& answer, working::Message reason) {
  answer.result = Result::CannotTell;
  answer.reason = std::move(reason);
}

void say_losing(const Judged& j, HoldAnswer& answer) {
  answer.result = Result::Losing;
  answer.reason = {
      "hold.losing",
      {{"loss", loss(j.mean.mean)}, {"low", loss(j.mean.low)}, {"high", loss(j.mean.high)}}};
  answer.settle_by.push_back({"hold.find_it_by_eye", {}});
}

void say_gaining(const Judged& j, HoldAnswer& answer) {
  answer.result = Result::Gaining;
  answer.reason = {
      "hold.gaining",
      {{"gain", loss(-j.mean.mean)}, {"low", loss(-j.mean.high)}, {"high", loss(-j.mean.low)}}};
  answer.settle_by.push_back({"hold.look_for_what_passes_in", {}});
}

// Without a leak of concern only an interval clear of zero says anything.
void decide_without_concern(const Judged& j, HoldAnswer& answer) {
  const double clear = j.detectable_ml_min / 10.0;
  if (std::min(j.mean.low, j.running.low) > clear) return say_losing(j, answer);
  if (std::max(j.mean.high, j.running.high) < -clear) return say_gaining(j, answer);
  cannot_tell(answer, {"hold.no_leak_of_concern", {{"detectable", loss(j.detectable_ml_min)}}});
  answer.settle_by.push_back({"hold.set_leak_of_concern", {}});
}

}  // namespace

Spread widened(const Spread& spread, double relative_sd) {
  const double more = 1.6449 * relative_sd * spread.mean;
  return {spread.mean, numerics::hypot(spread.sd, relative_sd * spread.mean),
          spread.mean - numerics::hypot(spread.mean - spread.low, more),
          spread.mean + numerics::hypot(spread.high - spread.mean, more)};
}

Spread scaled(const Spread& s, double share) {
  return {s.mean * share, s.sd * share, s.low * share, s.high * share};
}

void decide(const Judged& j, HoldAnswer& answer) {
  if (j.readings < fewest_readings) {
    cannot_tell(answer, {"hold.too_few_readings",
                         {{"readings", units::Measure{units::Kind::Count, double(j.readings)}}}});
    answer.settle_by.push_back({"hold.read_every_minute", {}});
    return;
  }
  if (!(j.concern_ml_min > 0.0)) return decide_without_concern(j, answer);
  const double some = j.concern_ml_min / 10.0;
  const Chances& p = j.chances;
  if (1.0 - p.losing < improbable && j.running.low > some) return say_losing(j, answer);
  if (1.0 - p.gaining < improbable && j.running.high < -some) return say_gaining(j, answer);
  if (j.running.high < -some) {  // not sure enough for gaining, and it could hide a leak
    cannot_tell(answer, {"hold.may_be_gaining",
                         {{"low", loss(-j.running.high)}, {"high", loss(-j.running.low)}}});
    answer.settle_by.push_back({"hold.look_for_what_passes_in", {}});
    answer.settle_by.push_back({"hold.second_thermometer", {}});
    return;
  }
  if (p.losing_more < improbable && std::max(j.running.high, j.mean.high) < j.concern_ml_min) {
    answer.result = Result::NoLossSeen;
    answer.reason = {"hold.no_loss_seen",
                     {{"concern", loss(j.concern_ml_min)}, {"high", loss(j.running.high)}}};
    return;
  }
  cannot_tell(answer, {"hold.interval_too_wide",
                       {{"low", loss(j.running.low)},
                        {"high", loss(j.running.high)},
                        {"concern", loss(j.concern_ml_min)}}});
  answer.settle_by.push_back({"hold.hold_longer", {}});
  answer.settle_by.push_back({"hold.second_thermometer", {}});
  answer.settle_by.push_back({"hold.low_pressure_baseline", {}});
}

}  // namespace steamworthy::hold
