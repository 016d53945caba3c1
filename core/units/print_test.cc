// Checks units/print.h: the texts themselves, and that parse.h reads each of them back.
#include "units/print.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>

#include "units/makers.h"
#include "units/parse.h"

namespace steamworthy::units {
namespace {

constexpr PrintStyle si{System::Si, 0, " "};
constexpr PrintStyle us{System::Us, 0, " "};

std::vector<Kind> every_kind() {
  std::vector<Kind> kinds;
  for (int i = 0; i <= static_cast<int>(Kind::Count); ++i) kinds.push_back(static_cast<Kind>(i));
  return kinds;
}

TEST(Print, WritesTheNumberWithItsUnitInEitherSystem) {
  struct Row {
    Measure measure;
    const char* si;
    const char* us;
  };
  const Row table[] = {
      {measure(bars_gauge(45.3)), "45.30 bar gauge", "657.0 psig"},
      {measure(standard_atmosphere), "1.013 bar abs", "14.70 psia"},
      {measure_pressure_difference(bars(0.002)), "0.0020 bar", "0.029 psi"},
      {measure_stress(psi(17500)), "120.7 MPa", "17500 psi"},
      {measure_modulus(megapascals(200000)), "200.0 GPa", "29008 ksi"},
      {measure(fahrenheit(70)), "21.1 °C", "70.0 °F"},
      {measure(kelvin_difference(0.02)), "0.020 K", "0.036 °F"},
      {measure(kelvins_per_hour(50)), "50.0 K/h", "90.0 °F/h"},
      {measure(per_kelvin(11.5e-6)), "11.50 µm/(m·K)", "6.389 µin/(in·°F)"},
      {measure_size(inches(0.0625)), "1.59 mm", "0.0625 in"},
      {measure_size(millimetres(50)), "50 mm", "1.969 in"},
      {measure_distance(feet(12.5)), "3.81 m", "12.5 ft"},
      {measure(level_metres(-0.25)), "-0.250 m", "-0.82 ft"},
      {measure(square_millimetres(11613)), "116.1 cm²", "18.00 in²"},
      {measure(litres(1.468)), "1.468 L", "0.3878 US gal"},
      {measure(millilitres(8)), "8.00 mL", "0.0021 US gal"},
      {measure_large_volume(cubic_metres(3.5185)), "3.518 m³", "929.5 US gal"},
      {measure(kilograms(1200)), "1200 kg", "2646 lb"},
      {measure(kilograms_per_cubic_metre(998.207)), "998.21 kg/m³", "62.32 lb/ft³"},
      {measure(kilonewtons(12)), "12.00 kN", "2698 lbf"},
      {measure_torque(joules(81.3)), "81.3 N·m", "60.0 ft·lbf"},
      {measure_leakage(millilitres_per_minute(-20)), "-20.0 mL/min", "-0.317 US gal/h"},
      {measure_flow(litres_per_minute(20)), "20.0 L/min", "5.28 US gal/min"},
      {measure(millilitres_per_bar(551)), "551.0 mL/bar", "0.01004 US gal/psi"},
      {measure(bars_per_kelvin(3.13)), "3.13 bar/K", "25.2 psi/°F"},
      {measure(bars_per_minute(3.4)), "3.40 bar/min", "49.3 psi/min"},
      {measure(seconds(90)), "90 s", "90 s"},
      {measure(minutes(15)), "15 min", "15 min"},
      {measure(hours(1.5)), "90 min", "90 min"},
      {measure(hours(4.25)), "4 h 15 min", "4 h 15 min"},
      {measure(hours(24)), "24 h", "24 h"},
      {measure_percent(0.005), "0.5 %", "0.5 %"},
      {measure_fraction(0.75), "0.75", "0.75"},
      {measure_count(116), "116", "116"},
      {measure(per_pascal(0.459e-9)), "0.4590 /GPa", "3.165 /Msi"},
  };
  for (const Row& row : table) {
    EXPECT_EQ(print(row.measure, si), row.si);
    EXPECT_EQ(print(row.measure, us), row.us);
  }
}

TEST(Print, JoinsNumberAndUnitWithBlanksThatDoNotBreak) {
  EXPECT_EQ(print(measure(bars_gauge(45.3))), "45.30\u00a0bar\u00a0gauge");
}

TEST(Print, WritesNoMinusBeforeNothing) {
  for (const Kind kind : every_kind()) {
    for (const PrintStyle& style : {si, us}) {
      for (const double value : {-0.0, -1e-12}) {
        const std::string text = print({kind, value}, style);
        const auto number = std::strtod(text.c_str(), nullptr);
        EXPECT_FALSE(number == 0.0 && text.front() == '-') << text;
      }
    }
  }
}

TEST(Print, SurvivesWhatIsNotANumber) {
  EXPECT_EQ(print({Kind::GaugePressure, std::nan("")}, si), "? bar gauge");
  EXPECT_EQ(print({Kind::Duration, std::numeric_limits<double>::infinity()}, si), "? s");
}

TEST(Print, GivesEveryKindAUnitThatItsOwnParserReads) {
  for (const Kind kind : every_kind()) {
    for (const System system : {System::Si, System::Us}) {
      if (kind == Kind::Fraction || kind == Kind::Count) {
        EXPECT_EQ(unit(kind, system), "");
        continue;
      }
      const auto found = read_unit(unit(kind, system));
      ASSERT_TRUE(found) << unit(kind, system);
      EXPECT_EQ(found->dimension, dimension(kind)) << unit(kind, system);
    }
  }
}

/// A number of the size that the trade meets: 0.001 to 9999 of the kind's unit.
rc::Gen<double> usual_number() {
  return rc::gen::map(rc::gen::pair(rc::gen::inRange(1000, 10000), rc::gen::inRange(-6, 1)),
                      [](const std::pair<int, int>& p) {
                        double value = p.first;
                        for (int i = p.second; i < 0; ++i) value /= 10.0;
                        return value;
                      });
}

RC_GTEST_PROP(PrintProperty, FullDigitsAreReadBackAsTheSameValue, ()) {
  const Kind kind = *rc::gen::elementOf(every_kind());
  const System system = *rc::gen::element(System::Si, System::Us);
  const Measure before = from_border(kind, *usual_number());
  const std::string text =
      print(before, {system, 17, *rc::gen::element<std::string_view>(" ", "\u00a0")});
  const auto after = parse_measure(kind, text);
  RC_ASSERT(after.value.has_value());
  // A temperature goes through 459.67 and keeps the digits of that sum.
  const double scale = std::fabs(before.si) + (kind == Kind::Temperature ? 500.0 : 0.0);
  RC_ASSERT(std::fabs(after.value->si - before.si) <=
            8.0 * std::numeric_limits<double>::epsilon() * scale);
}

RC_GTEST_PROP(PrintProperty, WhatIsPrintedStaysTheSameWhenReadAndPrintedAgain, ()) {
  const Kind kind = *rc::gen::elementOf(every_kind());
  const PrintStyle style{*rc::gen::element(System::Si, System::Us), 0, " "};
  const std::string once = print(from_border(kind, *usual_number()), style);
  const auto read = parse_measure(kind, once);
  RC_ASSERT(read.value.has_value());
  RC_ASSERT(print(*read.value, style) == once);
}

}  // namespace
}  // namespace steamworthy::units
