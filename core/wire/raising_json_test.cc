// Checks wire/raising_json.h and wire/repair_json.h: shape, tokens, keys that end in their unit.
#include "wire/raising_json.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "testing/examples_test.h"
#include "units/makers.h"
#include "wire/repair_json.h"

namespace steamworthy::wire {
namespace {

using nlohmann::json;

TEST(RaisingJson, WritesTheListBeforeFire) {
  const closing::Terms terms(testing::example_boiler("watertube"), {});
  const json list = json::parse(before_fire_json(raising::before_fire(terms, {})));
  ASSERT_EQ(list.size(), 18u);
  EXPECT_EQ(list[0]["task"], "take_off_temporary");
  EXPECT_EQ(list[0]["subject"], "T-1");
  EXPECT_EQ(list[0]["where"], "SV-1");
  EXPECT_EQ(list[0]["done"], false);
  EXPECT_EQ(list[0]["remedy"]["key"], "raising.do.see_off");
  EXPECT_EQ(list[0]["role"], "lead_hand");
}

TEST(RaisingJson, WritesTheRounds) {
  const closing::Terms terms(testing::example_boiler("watertube"), {});
  const json steam = json::parse(first_steam_json(raising::first_steam(terms, {}), false));
  EXPECT_EQ(steam["rounds"][1]["pressure"]["value_bar_gauge"], 18.0);
  EXPECT_EQ(steam["rounds"][0]["places"].size(), 0u);
}

TEST(RaisingJson, WritesTheWaterToStartWith) {
  const boiler::Boiler boiler = testing::example_boiler("watertube");
  const json start =
      json::parse(start_level_json(raising::start_level(boiler, units::level_metres(8.5)), true));
  EXPECT_EQ(start["figures"][0]["value_m"], 8.5);
  EXPECT_EQ(start["figures"][1]["key"], "raising.run_off");
  EXPECT_TRUE(start["stops"].empty());
  EXPECT_FALSE(start["open"].empty());
}

TEST(RepairJson, WritesLeaksDropAndFigures) {
  repair::PlanRequest request;
  repair::Leak leak;
  leak.number = "1";
  leak.place = "FH-A01";
  leak.chosen = repair::Cure::RemakeJoint;
  leak.drops_per_min = 12;
  request.leaks = {leak};
  const json plan =
      json::parse(repair_json(repair::plan(testing::example_boiler("watertube"), request), true));
  EXPECT_EQ(plan["leaks"][0]["cure"], "remake_joint");
  EXPECT_EQ(plan["leaks"][0]["action"], "break");
  EXPECT_EQ(plan["leaks"][0]["drops_per_min"], 12);
  EXPECT_NEAR(plan["leaks"][0]["free_below_m"].get<double>(), 1.0425, 1e-9);
  EXPECT_EQ(plan["drop"]["open"], json::array({"BD-2"}));
  EXPECT_EQ(plan["figures"][0]["key"], "repair.litres_out");
  EXPECT_EQ(plan["figures"][0]["value_l"], plan["drop"]["out_l"]);
  EXPECT_EQ(plan["leaks"][0]["out_alone_l"], plan["drop"]["out_l"]);
}

}  // namespace
}  // namespace steamworthy::wire
