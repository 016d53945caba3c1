#include "water/humid_air.h"

#include <fmt/format.h>

#include "base/error.h"
#include "numerics/math.h"
#include "units/makers.h"

namespace steamworthy::water {

units::Temperature dew_point(units::Temperature air, double relative_humidity) {
  const double t = units::in_celsius(air);
  if (!(t >= -45.0 && t <= 60.0) || !(relative_humidity > 0.0 && relative_humidity <= 1.0)) {
    throw OutOfRange(
        "water.humid_air",
        fmt::format("air of {} °C and {} % humidity is outside -45 °C to 60 °C and 0 to "
                    "100 %, the range of the dew point formula",
                    t, 100.0 * relative_humidity));
  }
  constexpr double a = 17.62;
  constexpr double b = 243.12;
  const double f = numerics::log(relative_humidity) + a * t / (b + t);
  return units::celsius(b * f / (a - f));
}

}  // namespace steamworthy::water
