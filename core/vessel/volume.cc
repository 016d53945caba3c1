#include "vessel/volume.h"

#include "units/makers.h"
#include "vessel/parts.h"

namespace steamworthy::vessel {
namespace {

template <class F>
auto of_shape(const Body& body, F f) {
  require_sound(body);
  return std::visit(f, body.shape);
}

}  // namespace

units::Volume volume(const Body& body) {
  return body.count * units::cubic_metres(
                          of_shape(body, [](const auto& shape) { return detail::volume(shape); }));
}

units::Volume volume_below(const Body& body, units::Level level) {
  const auto below = [&](const auto& shape) {
    const auto [lowest, highest] = detail::span(shape);
    if (level.si() <= lowest) return 0.0;
    if (level.si() >= highest) return detail::volume(shape);
    return detail::below(shape, level.si());
  };
  return body.count * units::cubic_metres(of_shape(body, below));
}

units::Area surface_at(const Body& body, units::Level level) {
  return body.count * units::square_metres(of_shape(body, [&](const auto& shape) {
           return detail::surface(shape, level.si());
         }));
}

units::Level bottom(const Body& body) {
  return units::level_metres(
      of_shape(body, [](const auto& shape) { return detail::span(shape).bottom; }));
}

units::Level top(const Body& body) {
  return units::level_metres(
      of_shape(body, [](const auto& shape) { return detail::span(shape).top; }));
}

units::Level centroid(const Body& body) {
  return units::level_metres(
      of_shape(body, [](const auto& shape) { return detail::centroid(shape); }));
}

units::Area wetted_area(const Body& body) {
  return body.count * units::square_metres(
                          of_shape(body, [](const auto& shape) { return detail::wetted(shape); }));
}

std::optional<units::Volume> metal_volume(const Body& body) {
  const auto one = of_shape(body, [](const auto& shape) { return detail::metal(shape); });
  if (!one) return std::nullopt;
  return body.count * units::cubic_metres(*one);
}

std::optional<units::Mass> metal_mass(const Body& body, units::Density density) {
  const auto metal = metal_volume(body);
  if (!metal) return std::nullopt;
  return *metal * density;
}

}  // namespace steamworthy::vessel
