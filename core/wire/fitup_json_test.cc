// Checks wire/fitup_json.h: keys end in their unit, the verdict is its token.
#include "wire/fitup_json.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "units/makers.h"

namespace steamworthy::wire {
namespace {

using units::millimetres;

TEST(FitupJson, WritesTheVerdictTheShiftAndTheFigures) {
  // A round plate 1.0 mm smaller all round, 0.5 mm toward three o'clock: 0.5 mm there, 1.5
  // opposite.
  fitup::FitRequest request;
  request.closure = "SD-M1";
  request.outline.opening = {boiler::OpeningShape::Circle, millimetres(400), millimetres(400)};
  for (const auto& [clock, gap] : {std::pair{12.0, 1.0}, {3.0, 0.5}, {6.0, 1.0}, {9.0, 1.5}}) {
    request.readings.push_back({clock, millimetres(gap - 0.01), millimetres(0.02)});
  }
  const auto json = nlohmann::json::parse(fitup_json(fitup::judge_fit(request), true));
  EXPECT_EQ(json["verdict"], "good_as_it_stands");
  EXPECT_NEAR(json["off_centre_right_mm"].get<double>(), 0.5, 1e-9);
  EXPECT_NEAR(json["off_centre_up_mm"].get<double>(), 0.0, 1e-9);
  EXPECT_NEAR(json["clearance_mm"].get<double>(), 1.0, 1e-9);
  EXPECT_EQ(json["sentence"]["key"], "fitup.good_as_it_stands");
  EXPECT_EQ(json["figures"][0]["key"], "fitup.off_centre");
  EXPECT_EQ(json["figures"][0]["subject"], "SD-M1");
  EXPECT_NEAR(json["figures"][0]["value_mm"].get<double>(), 0.5, 1e-9);
}

}  // namespace
}  // namespace steamworthy::wire
