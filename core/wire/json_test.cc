#include "wire/json.h"

#include <gtest/gtest.h>

#include <limits>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::wire {
namespace {

TEST(FigureJson, NamesTheUnitInTheKeyAndTidiesTheLastBit) {
  const auto figure = working::known(
      "sheet.test_pressure", "", units::measure(units::bars_gauge(45.1)), {.formula = "1.25 x P"});
  const Json json = figure_json(figure, true);
  EXPECT_EQ(json.at("value_bar_gauge").dump(), "45.1");
  EXPECT_EQ(json.at("working").at("formula"), "1.25 x P");
}

TEST(FigureJson, GivesTheReasonWhereThereIsNoValue) {
  const auto figure =
      working::unknown("sheet.share_of_yield", "SD", {"sheet.material_unknown", {{"part", "SD"}}});
  const Json json = figure_json(figure, false);
  EXPECT_FALSE(json.contains("value_percent"));
  EXPECT_EQ(json.at("cannot_tell").at("values").at("part"), "SD");
  EXPECT_FALSE(json.contains("working"));
}

TEST(FigureJson, RefusesNumbersThatAreNone) {
  const auto figure = working::known(
      "sheet.x", "", units::measure_percent(std::numeric_limits<double>::quiet_NaN()), {});
  try {
    figure_json(figure, false);
    FAIL() << "a NaN was written";
  } catch (const OutOfRange& error) {
    EXPECT_EQ(error.code(), "wire.not_finite");
  }
}

TEST(MessageJson, KeepsTermsTextsAndMeasuresApart) {
  const working::Message message{"a.b",
                                 {{"tag", "SV1"},
                                  {"what", working::Term{"word.vent"}},
                                  {"level", units::measure(units::level_metres(8.5))},
                                  {"n", units::measure_count(3)}}};
  EXPECT_EQ(
      message_json(message).dump(),
      R"({"key":"a.b","values":{"tag":"SV1","what":{"key":"word.vent"},"level_m":8.5,"n":3}})");
}

}  // namespace
}  // namespace steamworthy::wire
