// Every wrong quantity and the exact message that it gets.
#include <gtest/gtest.h>

#include <set>
#include <string>

#include "units/makers.h"
#include "units/parse.h"

namespace steamworthy::units {
namespace {

struct Wrong {
  Kind kind;
  const char* text;
  const char* code;
  const char* message;
};

constexpr const char* two_ways =
    "may be read in two ways: write no mark between thousands, and a point or comma only before "
    "decimals";

const Wrong wrong[] = {
    {Kind::GaugePressure, "", "units.empty", "is empty"},
    {Kind::GaugePressure, "  \u00a0 ", "units.empty", "is empty"},
    {Kind::GaugePressure, "bar", "units.not_a_number", "does not begin with a number"},
    {Kind::GaugePressure, "forty bar", "units.not_a_number", "does not begin with a number"},
    {Kind::GaugePressure, "nan bar", "units.not_a_number", "does not begin with a number"},
    {Kind::GaugePressure, "inf bar", "units.not_a_number", "does not begin with a number"},
    {Kind::GaugePressure, "- bar", "units.not_a_number", "does not begin with a number"},
    {Kind::GaugePressure, "45, bar", "units.not_a_number", "does not begin with a number"},
    {Kind::GaugePressure, "1e400 bar", "units.too_large", "is too large a number"},
    {Kind::GaugePressure, "1e308 MPa", "units.too_large", "is too large a number"},
    {Kind::GaugePressure, "1,200 psi", "units.ambiguous_number", two_ways},
    {Kind::GaugePressure, "1,234.5 psi", "units.ambiguous_number", two_ways},
    {Kind::GaugePressure, "1.234,5 kPa", "units.ambiguous_number", two_ways},
    {Kind::GaugePressure, "1.234.567 Pa", "units.ambiguous_number", two_ways},
    {Kind::GaugePressure, "45", "units.no_unit", "has no unit"},
    {Kind::GaugePressure, "45 bars-ish", "units.unknown_unit",
     "has a unit that is not known: \"bars-ish\""},
    {Kind::GaugePressure, "45 45 bar", "units.unknown_unit",
     "has a unit that is not known: \"45 bar\""},
    {Kind::GaugePressure, "4.5 mPa", "units.unknown_unit",
     "has the unit \"mPa\", which may be read in two ways: write MPa for megapascals"},
    {Kind::GaugePressure, "45 kg", "units.wrong_kind", "is a mass, not a gauge pressure"},
    {Kind::GaugePressure, "45 bar a", "units.absolute_for_gauge",
     "is an absolute pressure where a gauge pressure is wanted"},
    {Kind::GaugePressure, "665 psia", "units.absolute_for_gauge",
     "is an absolute pressure where a gauge pressure is wanted"},
    {Kind::GaugePressure, "10 psid", "units.wrong_kind",
     "is a pressure difference, not a gauge pressure"},
    {Kind::GaugePressure, "-2 bar", "units.below_vacuum", "is below a vacuum"},
    {Kind::AbsolutePressure, "1.013 bar", "units.zero_unsaid",
     "does not say whether it is gauge or absolute"},
    {Kind::AbsolutePressure, "45 barg", "units.gauge_for_absolute",
     "is a gauge pressure where an absolute pressure is wanted"},
    {Kind::AbsolutePressure, "-1 bara", "units.negative",
     "is negative, which an absolute pressure cannot be"},
    {Kind::AbsolutePressure, "0", "units.no_unit", "has no unit"},
    {Kind::PressureDifference, "10 psig", "units.not_a_difference",
     "is a gauge pressure, not a pressure difference"},
    {Kind::Stress, "118 MPa abs", "units.not_a_difference",
     "is an absolute pressure, not a stress"},
    {Kind::Modulus, "-200 GPa", "units.negative", "is negative, which a modulus cannot be"},
    {Kind::Temperature, "0", "units.no_unit", "has no unit"},
    {Kind::Temperature, "70", "units.no_unit", "has no unit"},
    {Kind::Temperature, "-500 °F", "units.below_absolute_zero", "is below absolute zero"},
    {Kind::Temperature, "-1 K", "units.below_absolute_zero", "is below absolute zero"},
    {Kind::Temperature, "20 bar", "units.wrong_kind", "is a pressure, not a temperature"},
    {Kind::Temperature, "20 °", "units.unknown_unit", "has a unit that is not known: \"°\""},
    {Kind::TemperatureRate, "50 K", "units.wrong_kind", "is a temperature, not a temperature rate"},
    {Kind::Size, "5 kg", "units.wrong_kind", "is a mass, not a length"},
    {Kind::Size, "-50 mm", "units.negative", "is negative, which a length cannot be"},
    {Kind::Size, "1/0 in", "units.zero_denominator", "divides by zero"},
    {Kind::Size, "2 1/0 in", "units.zero_denominator", "divides by zero"},
    {Kind::Size, "50 M", "units.unknown_unit",
     "has the unit \"M\", which may be read in two ways: write m for metres"},
    {Kind::Size, "50 furlongs", "units.unknown_unit", "has a unit that is not known: \"furlongs\""},
    {Kind::Distance, "12 ft 6", "units.unknown_unit", "has a unit that is not known: \"ft 6\""},
    {Kind::Distance, "6 in 12 ft", "units.unknown_unit",
     "has a unit that is not known: \"in 12 ft\""},
    {Kind::Distance, "12 ft 14 in", "units.unknown_unit",
     "has a unit that is not known: \"ft 14 in\""},
    {Kind::Level, "3 m2", "units.wrong_kind", "is an area, not a level"},
    {Kind::Volume, "8 ML", "units.unknown_unit",
     "has the unit \"ML\", which may be read in two ways: write mL for millilitres"},
    {Kind::Volume, "8 L/min", "units.wrong_kind", "is a flow, not a volume"},
    {Kind::Mass, "2 tons", "units.unknown_unit",
     "has the unit \"tons\", which may be read in two ways: write t, kg or lb"},
    {Kind::Force, "50 lb", "units.wrong_kind", "is a mass, not a force"},
    {Kind::Flow, "-20 L/min", "units.negative", "is negative, which a flow cannot be"},
    {Kind::Flow, "20 L", "units.wrong_kind", "is a volume, not a flow"},
    {Kind::VolumePerPressure, "1.468 bar/L", "units.wrong_kind", "is not a volume per pressure"},
    {Kind::Duration, "1:30", "units.unknown_unit", "has a unit that is not known: \":30\""},
    {Kind::Duration, "-5 min", "units.negative", "is negative, which a time cannot be"},
    {Kind::Duration, "5'", "units.wrong_kind", "is a length, not a time"},
    {Kind::Percent, "0.5", "units.no_unit", "has no unit"},
    {Kind::Count, "23 bar", "units.wrong_kind", "is a pressure, not a plain number"},
    {Kind::Count, "-1", "units.negative", "is negative, which a plain number cannot be"},
};

TEST(WrongQuantities, EachGetsItsOwnMessage) {
  for (const Wrong& row : wrong) {
    const auto parsed = parse_measure(row.kind, row.text);
    EXPECT_FALSE(parsed) << row.text;
    EXPECT_EQ(parsed.problem.code, row.code) << row.text;
    EXPECT_EQ(parsed.problem.message, row.message) << row.text;
    EXPECT_EQ(parsed.problem.found, row.text);
    EXPECT_EQ(parsed.problem.accepted, accepted(row.kind));
  }
}

TEST(WrongQuantities, TheWholeSentenceSaysWhatWouldBeAccepted) {
  EXPECT_EQ(sentence(parse_length("5 kg").problem),
            "is a mass, not a length (found \"5 kg\"; accepted: a length such as \"50 mm\" or "
            "\"2 1/2 in\")");
}

TEST(WrongQuantities, BytesThatAreNoTextAreSpelledOut) {
  const auto parsed = parse_length("5 m\xff\x01");
  EXPECT_EQ(parsed.problem.found, "5 m\\xff\\x01");
  EXPECT_EQ(parsed.problem.message, "has a unit that is not known: \"m\\xff\\x01\"");
}

TEST(WrongQuantities, ATextWithoutEndIsRefusedBeforeItIsRead) {
  const auto parsed = parse_length(std::string(5000, '1'));
  EXPECT_EQ(parsed.problem.code, "units.too_long");
  EXPECT_LE(parsed.problem.found.size(), 64u);
}

TEST(WrongQuantities, ACountIsWhole) {
  EXPECT_EQ(parse_count("2.5").problem.code, "units.not_whole");
  EXPECT_EQ(*parse_count("23").value, 23.0);
}

TEST(Assumed, ABareNumberTakesTheUnitThatTheCallerNames) {
  const auto parsed = parse_gauge_pressure("45", {.unit = "bar"});
  ASSERT_TRUE(parsed);
  EXPECT_DOUBLE_EQ(in_bars_gauge(*parsed.value), 45.0);
  EXPECT_TRUE(parsed.unit_assumed);
  EXPECT_TRUE(parsed.zero_assumed);
  const auto warm = parse_temperature("70", {.unit = "°F"});
  ASSERT_TRUE(warm);
  EXPECT_NEAR(in_fahrenheit(*warm.value), 70.0, 1e-12);
}

TEST(Assumed, AWrittenUnitWinsOverTheCallers) {
  const auto parsed = parse_gauge_pressure("650 psig", {.unit = "bar"});
  ASSERT_TRUE(parsed);
  EXPECT_NEAR(in_psi_gauge(*parsed.value), 650.0, 1e-9);
  EXPECT_FALSE(parsed.unit_assumed);
  EXPECT_FALSE(parsed.zero_assumed);
}

TEST(Assumed, AnUnmarkedPressureIsMarkedAsAssumedToBeGauge) {
  EXPECT_TRUE(parse_gauge_pressure("45 bar").zero_assumed);
  EXPECT_EQ(parse_gauge_pressure("45 bar", {.unmarked_is_gauge = false}).problem.code,
            "units.zero_unsaid");
}

TEST(Assumed, ABarometersReadingIsAbsolute) {
  const auto parsed = parse_absolute_pressure("1013 mbar", barometer_reading);
  ASSERT_TRUE(parsed);
  EXPECT_NEAR(in_bars_absolute(*parsed.value), 1.013, 1e-12);
  EXPECT_TRUE(parsed.zero_assumed);
}

TEST(Assumed, ABarometerLetsAnAbsolutePressureStandForAGaugePressure) {
  const auto gauge = parse_gauge_pressure("46 bar a", {.barometer = bars_absolute(0.98)});
  ASSERT_TRUE(gauge);
  EXPECT_NEAR(in_bars_gauge(*gauge.value), 45.02, 1e-12);
  const auto absolute = parse_absolute_pressure("45.02 barg", {.barometer = bars_absolute(0.98)});
  ASSERT_TRUE(absolute);
  EXPECT_NEAR(in_bars_absolute(*absolute.value), 46.0, 1e-12);
}

TEST(ParseMeasure, NeverGivesAMinusBeforeNothing) {
  EXPECT_FALSE(std::signbit(parse_level("-0 m").value->si()));
  EXPECT_FALSE(std::signbit(parse_gauge_pressure("-0.00 bar").value->si()));
}

}  // namespace
}  // namespace steamworthy::units
