#include "vessel/growth.h"

#include "vessel/parts.h"

namespace steamworthy::vessel {

Growth growth_per_pressure(const Body& body, const materials::Elasticity& metal) {
  require_sound(body);
  Growth growth =
      std::visit([&](const auto& shape) { return detail::growth(shape, metal); }, body.shape);
  if (growth.value) growth.value = body.count * *growth.value;
  return growth;
}

units::VolumePerTemperature growth_per_kelvin(units::Volume volume, units::Expansivity alpha) {
  return 3.0 * (alpha * volume);
}

}  // namespace steamworthy::vessel
