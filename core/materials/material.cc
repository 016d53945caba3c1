#include "materials/material.h"

#include <fmt/format.h>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::materials {
namespace {

using units::Temperature;

// Tensile tests at "room temperature" are made between 10 and 35 °C [ISO-6892-1].
constexpr Temperature end_of_room_temperature = units::celsius(35.0);
constexpr Temperature lowest_temperature = units::celsius(0.0);

void require_rising(const std::string& name, const YieldCurve& curve) {
  for (std::size_t i = 0; i < curve.points.size(); ++i) {
    const YieldPoint& point = curve.points[i];
    if (!(point.yield.si() > 0.0)) {
      throw OutOfRange(
          "materials.yield_points",
          fmt::format("the yield strength of {} at {:.1f} °C is {:.1f} MPa; it must be above zero",
                      name, units::in_celsius(point.temperature),
                      units::in_megapascals(point.yield)));
    }
    if (i > 0 && !(curve.points[i - 1].temperature < point.temperature)) {
      throw OutOfRange(
          "materials.yield_points",
          fmt::format(
              "the yield strengths of {} are not in rising order of temperature at {:.1f} °C", name,
              units::in_celsius(point.temperature)));
    }
  }
}

// The curve that holds for a wall; without a wall the last one, which is the weakest.
const YieldCurve* curve_for(const Material& material, std::optional<units::Length> wall) {
  if (!wall) return &material.yield.back();
  for (const YieldCurve& curve : material.yield) {
    if (!curve.greatest_wall || *wall <= *curve.greatest_wall) return &curve;
  }
  return nullptr;
}

std::optional<units::Stress> at(const YieldCurve& curve, Temperature temperature) {
  const auto& points = curve.points;
  if (points.empty() || temperature < lowest_temperature) return std::nullopt;
  if (temperature <= points.front().temperature) return points.front().yield;
  if (points.size() == 1) {
    if (temperature <= end_of_room_temperature) return points.front().yield;
    return std::nullopt;
  }
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (temperature > points[i].temperature) continue;
    const double fraction = (temperature - points[i - 1].temperature) /
                            (points[i].temperature - points[i - 1].temperature);
    return points[i - 1].yield + fraction * (points[i].yield - points[i - 1].yield);
  }
  return std::nullopt;
}

}  // namespace

bool may_bear_strength(const Provenance& provenance) {
  return provenance.trust != Trust::Remembered;
}

YieldAnswer yield_at(const Material& material, Temperature temperature,
                     std::optional<units::Length> wall) {
  for (const YieldCurve& curve : material.yield) require_rising(material.name, curve);
  if (material.yield.empty()) return {std::nullopt, NoYield::NoneStated, {}};
  const YieldCurve* curve = curve_for(material, wall);
  if (curve == nullptr)
    return {std::nullopt, NoYield::WallTooThick, material.yield.back().provenance};
  if (!may_bear_strength(curve->provenance))
    return {std::nullopt, NoYield::FromMemory, curve->provenance};
  const auto value = at(*curve, temperature);
  return {value, value ? NoYield::None : NoYield::OutsideStated, curve->provenance};
}

}  // namespace steamworthy::materials
