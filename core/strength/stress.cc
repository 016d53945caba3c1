#include "strength/stress.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/error.h"
#include "units/makers.h"
#include "vessel/square_header.h"

namespace steamworthy::strength {
namespace {

using units::PressureDifference;
using units::Stress;

constexpr std::string_view hoop_formula = "p D_m / (2 t)";
constexpr std::string_view bore_formula = "p (a^2 + b^2) / (b^2 - a^2)";

// The wall to compute with, or why there is none.
struct Wall {
  std::optional<units::Length> value;
  bool measured = false;
  NoAnswer why_not = NoAnswer::None;
};

Wall wall_of(std::optional<units::Length> as_made, const WallState& state) {
  if (state.measured) {
    if (!(state.measured->si() > 0.0)) return {std::nullopt, true, NoAnswer::WallGone};
    return {state.measured, true, NoAnswer::None};
  }
  if (!as_made) return {std::nullopt, false, NoAnswer::WallNotKnown};
  return {as_made, false, NoAnswer::None};
}

WallStress at(Place place, const Wall& wall, double efficiency) {
  WallStress stress;
  stress.place = place;
  stress.wall = wall.value;
  stress.wall_measured = wall.measured;
  stress.why_not = wall.why_not;
  stress.ligament_efficiency = efficiency;
  return stress;
}

// Hoop of a round wall with pressure inside; a bore, b outside.
void fill_round(WallStress& stress, double a, double b, PressureDifference p) {
  stress.membrane = (a + b) / (2.0 * (b - a)) / stress.ligament_efficiency * p;
  stress.membrane_formula = hoop_formula;
  stress.greatest = (a * a + b * b) / ((b - a) * (b + a)) * p;
  stress.greatest_formula = bore_formula;
}

using Stresses = std::vector<WallStress>;

Stresses stresses(const vessel::Cylinder& cylinder, PressureDifference p, double,
                  const WallState& state) {
  const Wall wall = wall_of(cylinder.wall, state);
  WallStress stress = at(Place::Shell, wall, state.ligament_efficiency);
  const double a = cylinder.inner_diameter.si() / 2.0;
  if (wall.value) fill_round(stress, a, a + wall.value->si(), p);
  return {stress};
}

Stresses stresses(const vessel::TubeBank& bank, PressureDifference p, double,
                  const WallState& state) {
  const Wall wall = wall_of(bank.wall, state);
  WallStress stress = at(Place::Tube, wall, state.ligament_efficiency);
  const double b = bank.outer_diameter.si() / 2.0;
  if (wall.value) fill_round(stress, b - wall.value->si(), b, p);
  return {stress};
}

Stresses ellipsoidal(const vessel::Head& head, double ratio, const Wall& wall, PressureDifference p,
                     double efficiency) {
  const double t = wall.value->si();
  const double R = head.inner_diameter.si() / 2.0 + t / 2.0;
  const double h = head.inner_diameter.si() / 2.0 / ratio + t / 2.0;
  const double crown = R * R / (2.0 * h);
  const double rim = R * (1.0 - R * R / (2.0 * h * h));  // hoop force over p
  WallStress tension = at(Place::HeadCrown, wall, efficiency);
  const bool at_rim = rim > crown;
  tension.membrane = (at_rim ? rim : crown) / t / efficiency * p;
  tension.membrane_formula = at_rim ? "p R (1 - R^2/(2 h^2)) / t" : "p R^2 / (2 h t)";
  if (rim >= 0.0) return {tension};
  WallStress compression = at(Place::HeadKnuckle, wall, 1.0);
  compression.membrane = rim / t * p;
  compression.membrane_formula = "p R (1 - R^2/(2 h^2)) / t";
  return {tension, compression};
}

Stresses torispherical(const vessel::Torispherical& form, const Wall& wall, PressureDifference p,
                       double efficiency) {
  const double t = wall.value->si();
  const double L = form.crown_radius.si() + t / 2.0;
  const double k = form.knuckle_radius.si() + t / 2.0;
  WallStress crown = at(Place::HeadCrown, wall, efficiency);
  crown.membrane = L / (2.0 * t) / efficiency * p;
  crown.membrane_formula = "p L / (2 t)";
  WallStress knuckle = at(Place::HeadKnuckle, wall, 1.0);
  knuckle.membrane = 0.25 * (3.0 + std::sqrt(L / k)) * L / (2.0 * t) * p;
  knuckle.membrane_formula = "p L M / (2 t), M = (3 + sqrt(L/k))/4";
  return {crown, knuckle};
}

WallStress hemispherical(const vessel::Head& head, const Wall& wall, PressureDifference p,
                         double efficiency) {
  WallStress stress = at(Place::HeadCrown, wall, efficiency);
  const double a = head.inner_diameter.si() / 2.0;
  const double t = wall.value->si();
  const double b = a + t;
  stress.membrane = (a + b) / 2.0 / (2.0 * t) / efficiency * p;
  stress.membrane_formula = "p R_m / (2 t)";
  stress.greatest = (2.0 * a * a * a + b * b * b) / (2.0 * t * (a * a + a * b + b * b)) * p;
  stress.greatest_formula = "p (2 a^3 + b^3) / (2 (b^3 - a^3))";
  return stress;
}

WallStress flat(const vessel::Head& head, vessel::PlateEdge edge, const Wall& wall,
                PressureDifference p, double poisson, double efficiency) {
  WallStress stress = at(Place::FlatPlate, wall, efficiency);
  const double slenderness = head.inner_diameter.si() / 2.0 / wall.value->si();
  const bool clamped = edge == vessel::PlateEdge::Clamped;
  const double factor = clamped ? 0.75 : 0.375 * (3.0 + poisson);
  stress.greatest = factor * slenderness * slenderness / efficiency * p;
  stress.greatest_formula = clamped ? "3 p R^2 / (4 t^2)" : "3 (3 + nu) p R^2 / (8 t^2)";
  return stress;
}

Stresses stresses(const vessel::Head& head, PressureDifference p, double poisson,
                  const WallState& state) {
  const Wall wall = wall_of(head.wall, state);
  const double efficiency = state.ligament_efficiency;
  if (const auto* plate = std::get_if<vessel::Flat>(&head.form)) {
    if (plate->edge == vessel::PlateEdge::Stayed || !wall.value) {
      WallStress stress = at(Place::FlatPlate, wall, efficiency);
      if (plate->edge == vessel::PlateEdge::Stayed) stress.why_not = NoAnswer::StayedPlate;
      return {stress};
    }
    return {flat(head, plate->edge, wall, p, poisson, efficiency)};
  }
  if (!wall.value) return {at(Place::HeadCrown, wall, efficiency)};
  if (const auto* form = std::get_if<vessel::Ellipsoidal>(&head.form)) {
    return ellipsoidal(head, form->ratio, wall, p, efficiency);
  }
  if (const auto* form = std::get_if<vessel::Torispherical>(&head.form))
    return torispherical(*form, wall, p, efficiency);
  return {hemispherical(head, wall, p, efficiency)};
}

// Hoop force over p, by equilibrium of the inner faces, and bending moment over p, of the frame.
void fill_frame(WallStress& stress, double force, double moment, PressureDifference p) {
  const double t = stress.wall->si();
  stress.membrane = force / t / stress.ligament_efficiency * p;
  stress.membrane_formula = "p N / t";
  stress.greatest =
      (force / t + 6.0 * std::fabs(moment) / (t * t)) / stress.ligament_efficiency * p;
  stress.greatest_formula = "p (N / t + 6 |M| / t^2)";
}

Stresses stresses(const vessel::SquareHeader& header, PressureDifference p, double,
                  const WallState& state) {
  const Wall wall = wall_of(header.wall, state);
  WallStress side = at(Place::HeaderSide, wall, state.ligament_efficiency);
  WallStress corner = at(Place::HeaderCorner, wall, 1.0);
  if (!wall.value) return {side, corner};
  const vessel::SquareFrame frame = vessel::square_frame(header, *wall.value);
  const auto moment = [&](double r2) { return -(r2 - frame.mean_square) / 2.0; };
  WallStress level = side;
  WallStress upright = side;
  fill_frame(level, header.inner_height.si() / 2.0, moment(frame.half_height * frame.half_height),
             p);
  fill_frame(upright, header.inner_width.si() / 2.0, moment(frame.half_width * frame.half_width),
             p);
  const double x = frame.half_width - frame.corner_radius;
  const double y = frame.half_height - frame.corner_radius;
  const double reach =
      std::sqrt(x * x + y * y);  // the corner's far point is on the line from the centre
  const double far = reach + frame.corner_radius;
  fill_frame(corner, reach + header.corner_radius.si(), moment(far * far), p);
  return {units::abs(*level.greatest) > units::abs(*upright.greatest) ? level : upright, corner};
}

Stresses stresses(const vessel::FiretubeShell& shell, PressureDifference p, double,
                  const WallState& state) {
  const Wall wall = wall_of(shell.wall, state);
  WallStress round = at(Place::Shell, wall, state.ligament_efficiency);
  const double a = shell.inner_diameter.si() / 2.0;
  if (wall.value) fill_round(round, a, a + wall.value->si(), p);
  Stresses found = {round};
  for (std::size_t i = 0; i < shell.rows.size(); ++i) {
    const vessel::FlueRow& row = shell.rows[i];
    const double b = row.outer_diameter.si() / 2.0;
    const double t = row.wall.si();
    WallStress stress =
        at(row.furnace ? Place::Furnace : Place::FlueTube, {row.wall, false, NoAnswer::None}, 1.0);
    stress.row = static_cast<int>(i) + 1;
    stress.membrane = -(2.0 * b - t) / (2.0 * t) * p;
    stress.membrane_formula = "-p D_m / (2 t)";
    stress.greatest = -2.0 * b * b / (t * (2.0 * b - t)) * p;
    stress.greatest_formula = "-2 p b^2 / (b^2 - a^2)";
    found.push_back(stress);
  }
  return found;
}

NoAnswer reason(materials::NoYield why) {
  switch (why) {
    case materials::NoYield::None:
      return NoAnswer::None;
    case materials::NoYield::NoneStated:
      return NoAnswer::YieldNotStated;
    case materials::NoYield::FromMemory:
      return NoAnswer::YieldFromMemory;
    case materials::NoYield::OutsideStated:
      return NoAnswer::TemperatureOutside;
    case materials::NoYield::WallTooThick:
      break;
  }
  return NoAnswer::WallTooThickForYield;
}

// The body with the measured wall in place of the one as made, to see that it can be.
vessel::Body as_measured(const vessel::Body& body, const WallState& state) {
  vessel::Body measured = body;
  if (!state.measured || !(state.measured->si() > 0.0)) return measured;
  std::visit([&](auto& shape) { shape.wall = *state.measured; }, measured.shape);
  return measured;
}

}  // namespace

bool carries_by_bending(Place place) {
  return place == Place::FlatPlate || place == Place::HeaderSide || place == Place::HeaderCorner;
}

std::vector<WallStress> wall_stresses(const vessel::Body& body, PressureDifference pressure,
                                      double poisson, const WallState& state) {
  if (!(state.ligament_efficiency > 0.0 && state.ligament_efficiency <= 1.0)) {
    throw OutOfRange("strength.efficiency",
                     fmt::format("the ligament efficiency of {:.4f} must be above 0 and at most 1",
                                 state.ligament_efficiency));
  }
  vessel::require_sound(as_measured(body, state));
  return std::visit([&](const auto& shape) { return stresses(shape, pressure, poisson, state); },
                    body.shape);
}

ShareOfYield share_of_yield(const WallStress& stress, const materials::Material* material,
                            units::Temperature temperature) {
  ShareOfYield share;
  const std::optional<Stress> judged =
      carries_by_bending(stress.place) ? stress.greatest : stress.membrane;
  if (!judged) {
    share.why_not = stress.why_not;
    return share;
  }
  if (material == nullptr) {
    share.why_not = NoAnswer::MaterialNotKnown;
    return share;
  }
  const materials::YieldAnswer answer = materials::yield_at(*material, temperature, stress.wall);
  share.yield_provenance = answer.provenance;
  share.why_not = reason(answer.why_not);
  if (!answer.value) return share;
  share.yield = answer.value;
  share.share = units::abs(*judged) / *answer.value;
  return share;
}

}  // namespace steamworthy::strength
