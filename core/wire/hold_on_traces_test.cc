// The analysis on simulated logs of known truth, read as a user's: log, test file, answer.
//
// Source: tests/traces, thirteen made by an independent simulator (Python, IAPWS-IF97, three
// water and steel groups), two with water coming in by ours (bench/hold_study). truth.json tells
// for each what is true and which results are honest for a leak of concern of 20 mL/min.
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "hold/analyse.h"
#include "hold/from_trace.h"
#include "hold/sections.h"
#include "trace/reader.h"
#include "units/makers.h"
#include "wire/description.h"
#include "wire/hold_json.h"
#include "wire/test_file.h"

namespace steamworthy::wire {
namespace {

using Object = nlohmann::json;

const std::string folder = STEAMWORTHY_SOURCE_DIR "/tests/traces/";

std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

struct Case {
  std::string name;
  Object truth;
  hold::HoldInput input;
  hold::HoldAnswer answer;
};

std::vector<Case> cases() {
  std::vector<Case> all;
  const Object truth = Object::parse(bytes_of(folder + "truth.json"));
  for (const auto& [name, one] : truth.at("cases").items()) {
    const std::string base = folder + name.substr(0, name.size() - 4);
    const TestFile test = read_test_file(bytes_of(base + ".meta.json"), name);
    EXPECT_TRUE(test.facts) << name;
    const trace::Reading reading =
        trace::read_trace(bytes_of(folder + name), name, trace::overrules_of(*test.facts));
    EXPECT_TRUE(reading.is_usable()) << name;
    Case c{name, one, hold::input_from(reading.trace, *test.facts, nullptr), {}};
    c.answer = hold::analyse(c.input);
    all.push_back(std::move(c));
  }
  return all;
}

template <class Estimate>
bool covers(const Estimate& e, double value) {
  return e.low_90.si() <= value && value <= e.high_90.si();
}

TEST(HoldOnTraces, SaysOnlyWhatIsHonest) {
  for (const Case& c : cases()) {
    const std::string result(hold::token(c.answer.result));
    const auto accepted = c.truth.at("accept_results").get<std::vector<std::string>>();
    EXPECT_NE(std::find(accepted.begin(), accepted.end(), result), accepted.end())
        << c.name << ": " << result;
    if (!c.truth.at("must_not_say").is_null()) {
      EXPECT_NE(result, c.truth.at("must_not_say").get<std::string>()) << c.name;
    }
  }
}

// 90 % intervals: 10 of 13 or more for the loss, 12 for the air. The seeds are fixed; these are
// the numbers of that draw, not a rate.
TEST(HoldOnTraces, ItsIntervalsHoldTheTruth) {
  int loss = 0, air = 0, all = 0;
  for (const Case& c : cases()) {
    if (c.truth.contains("simulator")) continue;  // our own, for water that comes in
    ++all;
    const auto flow = [&](const char* key) {
      return units::millilitres_per_minute(c.truth.at(key).get<double>()).si();
    };
    ASSERT_TRUE(c.answer.net_loss) << c.name;
    const bool onset = c.truth.at("leak_onset_s_into_hold").get<double>() > 0.0;
    const bool at_end =
        onset && c.answer.loss_at_end && covers(*c.answer.loss_at_end, flow("leak_mL_min_end"));
    loss += covers(*c.answer.net_loss, flow("leak_mL_min_mean_over_hold")) || at_end;
    ASSERT_TRUE(c.answer.pump_up) << c.name;
    air += covers(c.answer.pump_up->trapped_air,
                  c.truth.at("trapped_air_L_at_1atm").get<double>() * 1e-3);
  }
  EXPECT_EQ(all, 13);
  EXPECT_GE(loss, 10);
  EXPECT_GE(air, 12);
}

// What the truth says of pressure and of the mean water: the fall within a tenth and two steps
// of the gauge; the part of the temperature with its sign, wherever it is worth a fifth of a bar.
TEST(HoldOnTraces, TheFallAndItsPartOfTheTemperature) {
  for (const Case& c : cases()) {
    if (!c.truth.contains("P_barg_hold_start") || !c.answer.split) continue;
    if (c.input.record.seconds[1] - c.input.record.seconds[0] > 60.0) continue;  // starts unread
    const auto at = [&](const char* key) { return c.truth.at(key).get<double>(); };
    const double fall = at("P_barg_hold_start") - at("P_barg_end");
    const double step = units::in_bars(*c.input.gauge.resolution);
    EXPECT_NEAR(units::in_bars(c.answer.split->fall), fall, 0.1 * std::fabs(fall) + 2.0 * step)
        << c.name;
    const double warming = at("T_bulk_water_C_end") - at("T_bulk_water_C_hold_start");
    const double effect_bar =
        -warming * units::in_bars(units::PressureDifference::from_si(c.answer.per_temperature.si() /
                                                                     c.answer.per_pressure.si()));
    if (std::fabs(effect_bar) > 0.2) {
      EXPECT_GT(effect_bar * units::in_bars(c.answer.split->cooling), 0.0)
          << c.name << " " << effect_bar;
    }
  }
}

TEST(HoldOnTraces, JsonHasTheKeysThatAreDocumented) {
  for (const Case& c : cases()) {
    const Object json = Object::parse(hold_json(c.input, c.answer, nullptr, true));
    for (const char* key : {"result", "net_loss_ml_per_min", "detectable_ml_per_min", "fall_bar",
                            "temperature_effect_bar", "trapped_air_l"}) {
      EXPECT_TRUE(json.contains(key)) << key;
    }
    EXPECT_EQ(json.at("net_loss_ml_per_min").at("estimate").get<double>(),
              units::in_millilitres_per_minute(c.answer.net_loss->estimate));
    double sum = 0.0;
    for (const auto& [key, part] : json.at("fall_parts").items()) sum += part.get<double>();
    EXPECT_NEAR(sum, json.at("fall_bar").get<double>(), 1e-9);
    const Object up = Object::parse(pump_up_json(c.input, c.answer, nullptr, false));
    EXPECT_TRUE(up.at("ok").get<bool>());
    EXPECT_GT(up.at("points").size(), 3u);
  }
}

// A description beside a stated volume: the steel stays steel.
TEST(HoldOnTraces, ADescriptionGivesTheExpansionWhateverVolumeIsStated) {
  const std::string path = STEAMWORTHY_SOURCE_DIR "/examples/watertube.toml";
  const auto description = read_boiler_toml(bytes_of(path), "watertube.toml");
  ASSERT_TRUE(description.boiler);
  const std::string name = "25_leak_masked_by_warming";
  const TestFile test = read_test_file(bytes_of(folder + name + ".meta.json"), name);
  const trace::Reading reading = trace::read_trace(bytes_of(folder + name + ".csv"), name);
  const auto input = hold::input_from(reading.trace, *test.facts, &*description.boiler);
  EXPECT_NEAR(input.boiler.steel_expansion.si(), 11.5e-6, 1e-6);
  EXPECT_NEAR(input.boiler.volume.si(), 2.6797, 1e-9);
}

}  // namespace
}  // namespace steamworthy::wire
