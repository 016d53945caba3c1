// Checks units/quantity.h, makers.h and measure.h: what compiles, what must not, and that every
// maker undoes its reader.
#include "units/quantity.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <concepts>
#include <set>
#include <string>
#include <type_traits>

#include "units/makers.h"
#include "units/measure.h"

namespace steamworthy::units {
namespace {

template <class A, class B>
concept CanAdd = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept CanSubtract = requires(A a, B b) {
  a - b;
};
template <class A, class B>
concept CanCompare = requires(A a, B b) {
  a < b;
};
template <class A, class B>
concept CanMultiply = requires(A a, B b) {
  a* b;
};

// Quantities add within their dimension only, and never to a bare number.
static_assert(CanAdd<Length, Length>);
static_assert(!CanAdd<Length, Area>);
static_assert(!CanAdd<Length, double>);
static_assert(!CanAdd<double, Stress>);
static_assert(!CanCompare<Length, Mass>);
static_assert(!CanCompare<Length, double>);
static_assert(!std::is_convertible_v<double, Length>);
static_assert(!std::is_convertible_v<Length, double>);
static_assert(!std::constructible_from<Length, double>);

// A point takes a difference; two points have a distance and no sum.
static_assert(CanAdd<Temperature, TemperatureDifference>);
static_assert(CanAdd<TemperatureDifference, Temperature>);
static_assert(!CanAdd<Temperature, Temperature>);
static_assert(std::same_as<decltype(Temperature{} - Temperature{}), TemperatureDifference>);
static_assert(std::same_as<decltype(GaugePressure{} - GaugePressure{}), PressureDifference>);
static_assert(std::same_as<decltype(Level{} - Level{}), Length>);
static_assert(!CanMultiply<double, Temperature>);
static_assert(!CanMultiply<GaugePressure, Area>);
static_assert(CanMultiply<PressureDifference, Area>);

// Gauge and absolute are different scales.
static_assert(!CanSubtract<GaugePressure, AbsolutePressure>);
static_assert(!CanCompare<GaugePressure, AbsolutePressure>);
static_assert(!std::is_convertible_v<GaugePressure, AbsolutePressure>);
static_assert(!std::is_assignable_v<AbsolutePressure&, GaugePressure>);
static_assert(!CanAdd<GaugePressure, AbsolutePressure>);
static_assert(!CanAdd<Level, PressureDifference>);

// Products and quotients carry their dimension; a pure ratio is a number.
static_assert(std::same_as<decltype(Stress{} * Area{}), Force>);
static_assert(std::same_as<decltype(Mass{} / Volume{}), Density>);
static_assert(std::same_as<decltype(Density{} * standard_gravity * Length{}), PressureDifference>);
static_assert(std::same_as<decltype(Volume{} / PressureDifference{}), VolumePerPressure>);
static_assert(std::same_as<decltype(Volume{} * Compressibility{}), VolumePerPressure>);
static_assert(std::same_as<decltype(Length{} / Length{}), double>);
static_assert(std::same_as<decltype(1.0 / Modulus{}), Compressibility>);

TEST(Quantity, HydrostaticHeadOfTenMetresOfWater) {
  // 998.2 kg/m3 * 9.80665 m/s2 * 10 m = 97 890 Pa, worked by hand.
  const PressureDifference head =
      kilograms_per_cubic_metre(998.2) * standard_gravity * metres(10.0);
  EXPECT_NEAR(in_bars(head), 0.9788998, 1e-7);
}

TEST(Pressure, GaugeBecomesAbsoluteOnlyByABarometer) {
  const AbsolutePressure barometer = bars_absolute(0.98);
  EXPECT_NEAR(in_bars_absolute(absolute(bars_gauge(45.0), barometer)), 45.98, 1e-12);
  EXPECT_NEAR(in_bars_gauge(gauge(bars_absolute(1.98), barometer)), 1.0, 1e-12);
}

TEST(Temperature, FixedPointsOfTheFahrenheitScale) {
  // By definition of the scale: 32 F = 0 C, 212 F = 100 C, -40 F = -40 C.
  EXPECT_NEAR(in_celsius(fahrenheit(32.0)), 0.0, 1e-12);
  EXPECT_NEAR(in_celsius(fahrenheit(212.0)), 100.0, 1e-12);
  EXPECT_NEAR(in_fahrenheit(celsius(-40.0)), -40.0, 1e-12);
}

TEST(Makers, HoldTheDefinedFactors) {
  // [NIST-SP811] app. B.8, digits as printed there.
  EXPECT_NEAR(psi(1.0).si(), 6.894757e3, 0.5e-3);
  EXPECT_NEAR(us_gallons(1.0).si(), 3.785412e-3, 0.5e-9);
  EXPECT_NEAR(pounds(1.0).si(), 4.535924e-1, 0.5e-7);
  EXPECT_NEAR(pounds_force(1.0).si(), 4.448222, 0.5e-6);
  EXPECT_DOUBLE_EQ(inches(1.0).si(), 0.0254);
  EXPECT_DOUBLE_EQ(feet(1.0).si(), 0.3048);
}

TEST(Measure, EveryKindHasANameOfItsOwnAndComesBackFromTheBorder) {
  std::set<std::string_view> names;
  for (int i = 0; i <= static_cast<int>(Kind::Count); ++i) {
    const auto kind = static_cast<Kind>(i);
    EXPECT_TRUE(names.insert(info(kind).name).second) << info(kind).name;
    EXPECT_NEAR(at_border(from_border(kind, 12.5)), 12.5, 1e-12) << info(kind).name;
  }
}

TEST(Measure, StandsInTheUnitOfItsSuffix) {
  EXPECT_NEAR(at_border(measure(psi_gauge(650.0))), 44.81592, 1e-5);  // _bar_gauge
  EXPECT_NEAR(at_border(measure(celsius(21.0))), 21.0, 1e-12);        // _celsius
  EXPECT_NEAR(at_border(measure_size(inches(1.0))), 25.4, 1e-12);     // _mm
  EXPECT_NEAR(at_border(measure_percent(0.005)), 0.5, 1e-12);         // _percent
  EXPECT_NEAR(at_border(measure(per_pascal(4.5e-10))), 0.45, 1e-12);  // _per_gpa
}

RC_GTEST_PROP(QuantityProperty, APointMovedAndMovedBackIsWhereItWas, (int start, int step)) {
  const GaugePressure p = pascals_gauge(start);
  const PressureDifference d = pascals(step);
  RC_ASSERT(in_pascals_gauge((p + d) - d) == start);
  RC_ASSERT((p + d) - p == d);
}

}  // namespace
}  // namespace steamworthy::units
