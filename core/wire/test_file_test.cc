// Test files: what a right one says, every wrong one's exact sentences
// (tests/wrong/test_files.txt), the .meta.json files of tests/traces, and that
// docs/formats/test-file.md lists every key.
#include "wire/test_file.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "units/makers.h"
#include "wire/spoiled_file_test.h"

namespace steamworthy::wire {
namespace {

std::string right_file() { return source_file("tests/wrong/test.toml"); }

TEST(TestFile, SaysWhatTheCrewKnows) {
  const TestFile read = read_test_file(right_file(), "test.toml");
  for (const Problem& problem : read.problems) ADD_FAILURE() << sentence(problem);
  ASSERT_TRUE(read.facts.has_value());
  const trace::TestFacts& facts = *read.facts;
  EXPECT_EQ(facts.log, "hold.csv");
  EXPECT_NEAR(facts.boiler.volume->si(), 7.96, 1e-12);
  EXPECT_NEAR(*facts.boiler.volume_sd_fraction, 0.02, 1e-15);
  EXPECT_NEAR(facts.boiler.growth->si(), 0.081e-9, 1e-20);
  EXPECT_EQ(facts.stages.size(), 3u);
  EXPECT_NEAR(facts.leak_of_concern->si(), 20e-6 / 60.0, 1e-15);
  EXPECT_NEAR(facts.allowed_drop->drop.si(), 0.5e5, 1e-6);
  EXPECT_EQ(facts.allowed_drop->within->si(), 1800.0);
  EXPECT_EQ(facts.hold_began->clock_s, 7 * 3600.0 + 33 * 60.0 + 40.0);
  EXPECT_EQ(facts.hold->si(), 3600.0);
  ASSERT_EQ(facts.gauge_changed.size(), 1u);
  EXPECT_EQ(facts.gauge_changed[0].clock_s, 7 * 3600.0 + 50 * 60.0);
  EXPECT_EQ(facts.clock_zero_s, 7 * 3600.0);
  ASSERT_EQ(facts.gauges.size(), 1u);
  EXPECT_EQ(facts.gauges[0].absolute, false);
  EXPECT_NEAR(*facts.gauges[0].accuracy_of_span_fraction, 0.005, 1e-15);
  ASSERT_EQ(facts.thermometers.size(), 2u);
  EXPECT_EQ(facts.thermometers[1].of, trace::Meaning::Metal);
  EXPECT_EQ(facts.thermometers[1].sits, "tube bank");
  ASSERT_EQ(facts.tell_tales.size(), 1u);
  EXPECT_EQ(facts.tell_tales[0].dry, true);
  EXPECT_NEAR(facts.pump.stroke->si(), 30e-6, 1e-18);
  EXPECT_NEAR(facts.pump.supply->si(), 291.15, 1e-9);
  EXPECT_NEAR(facts.barometer->si(), 101300.0, 1e-6);
  EXPECT_NEAR(facts.pocket_below_gauge->si(), 0.6, 1e-12);
  EXPECT_TRUE(facts.valve_is_shut());
  EXPECT_TRUE(facts.pump_side_is_open());
}

TEST(TestFile, CountsAsNotDoneWhatItDoesNotState) {
  const TestFile read = read_test_file("format = \"steamworthy-test-1\"\n", "test.toml");
  ASSERT_TRUE(read.facts.has_value());
  EXPECT_FALSE(read.facts->valve_is_shut());
  EXPECT_FALSE(read.facts->pump_side_is_open());
  EXPECT_FALSE(read.facts->test_valve_shut.has_value());
  EXPECT_FALSE(read.facts->leak_of_concern.has_value());
}

TEST(TestFile, IsReadFromJsonWithTheSameKeys) {
  const TestFile read = read_test_file(
      R"({"format": "steamworthy-test-1", "hold": {"began_after_s": 2020.4, "lasts_s": 3600},
          "pump": {"stroke_l": 0.03}, "done": {"test_valve_shut": false}})",
      "test.json");
  for (const Problem& problem : read.problems) ADD_FAILURE() << sentence(problem);
  ASSERT_TRUE(read.facts.has_value());
  EXPECT_EQ(read.facts->hold_began->elapsed_s, 2020.4);
  EXPECT_NEAR(read.facts->pump.stroke->si(), 30e-6, 1e-18);
  EXPECT_EQ(read.facts->test_valve_shut, false);
}

TEST(WrongTestFiles, EachGetsExactlyItsSentences) {
  const std::vector<std::string> base = split(right_file());
  const std::vector<Case> all = wrong_cases("test_files.txt");
  EXPECT_GE(all.size(), 30U);
  for (const Case& one : all) {
    SCOPED_TRACE(one.title);
    const TestFile read = read_test_file(spoiled(base, one), "test.toml");
    std::vector<std::string> told;
    for (const Problem& problem : read.problems) told.push_back(sentence(problem));
    EXPECT_FALSE(one.expected.empty());
    EXPECT_EQ(joined(told), joined(one.expected));
    EXPECT_FALSE(read.facts.has_value());
  }
}

const char* const logs[] = {"00_tight_good_si",          "03_tight_ok_us",    "04_tight_cooling",
                            "07_tight_cold10C",          "13_tight_much_air", "16_leak_big",
                            "14_tight_dissolving_air",   "19_leak_med",       "23_leak_small_us",
                            "25_leak_masked_by_warming", "27_leak_onset",     "29_leak_manual",
                            "36_und_small_leak_poor"};

// Against a plain reading of the same file by the JSON library.
TEST(MetaFiles, AreReadWhole) {
  for (const char* log : logs) {
    SCOPED_TRACE(log);
    const std::string text = source_file(std::string("tests/traces/") + log + ".meta.json");
    const auto json = nlohmann::json::parse(text);
    const TestFile read = read_test_file(text, "meta.json");
    for (const Problem& problem : read.problems) ADD_FAILURE() << sentence(problem);
    EXPECT_TRUE(read.unread.empty());
    ASSERT_TRUE(read.facts.has_value());
    const trace::TestFacts& facts = *read.facts;
    const auto number = [&](const char* key) { return json.at(key).get<double>(); };
    EXPECT_EQ(facts.log, json.at("file"));
    EXPECT_EQ(facts.boiler.volume->si(), number("volume_m3_nominal"));
    EXPECT_EQ(facts.boiler.growth->si(), number("shell_compliance_per_Pa_nominal"));
    EXPECT_EQ(*facts.boiler.volume_sd_fraction, number("volume_sd_rel"));
    EXPECT_EQ(*facts.boiler.growth_sd_fraction, number("compliance_sd_rel"));
    EXPECT_DOUBLE_EQ(facts.test_pressure->si(), number("test_pressure_barg") * 1e5);
    ASSERT_EQ(facts.stages.size(), json.at("stages_barg").size());
    EXPECT_DOUBLE_EQ(facts.stages.back().si(), json.at("stages_barg").back().get<double>() * 1e5);
    EXPECT_EQ(facts.hold_began->elapsed_s, number("hold_start_s"));
    EXPECT_EQ(facts.hold->si(), number("hold_s"));
    EXPECT_DOUBLE_EQ(facts.gauges.at(0).resolution->si(), number("gauge_resolution_bar") * 1e5);
    EXPECT_DOUBLE_EQ(facts.gauges.at(0).noise_sd->si(), number("gauge_noise_sd_bar") * 1e5);
    EXPECT_EQ(facts.gauges.at(0).absolute, false);
    EXPECT_EQ(facts.thermometers.at(0).sits, json.at("water_sensor_in"));
    EXPECT_EQ(facts.thermometers.at(1).sits, json.at("metal_sensor_on"));
    for (const trace::ThermometerFact& thermometer : facts.thermometers) {
      EXPECT_EQ(thermometer.resolution->si(), number("temp_resolution_K"));
      EXPECT_EQ(thermometer.noise_sd->si(), number("temp_noise_sd_K"));
    }
    EXPECT_DOUBLE_EQ(facts.pump.stroke->si(), number("stroke_mL") * 1e-6);
    EXPECT_EQ(*facts.pump.calibration_sd_fraction, number("pump_calibration_sd_rel"));
    EXPECT_EQ(facts.pocket_below_gauge->si(), number("air_pocket_below_gauge_m"));
    EXPECT_EQ(facts.clock_zero_s, 7 * 3600.0);
    EXPECT_DOUBLE_EQ(facts.leak_of_concern->si(), number("leak_of_concern_mL_min") * 1e-6 / 60.0);
    EXPECT_EQ(facts.test_valve_shut, json.at("test_valve_shut").get<bool>());
    EXPECT_EQ(facts.pump_side_hung_open, json.at("pump_side_hung_open").get<bool>());
    EXPECT_EQ(facts.gauge_changed.size(), json.at("gauge_changed_s").size());
    EXPECT_EQ(facts.notes.size(), json.at("notes").size());
  }
}

TEST(MetaFiles, TakeNullAsNotStatedAndTellWhatTheyDoNotKnow) {
  const TestFile read = read_test_file(
      R"({"water_sensor_in": null, "stroke_mL": null, "gauge_changed_s": [2500.5],
          "pressure_is": "absolute", "colour": "red"})",
      "meta.json");
  ASSERT_TRUE(read.facts.has_value());
  EXPECT_FALSE(read.facts->pump.stroke.has_value());
  EXPECT_EQ(read.facts->gauge_changed.at(0).elapsed_s, 2500.5);
  EXPECT_EQ(read.facts->gauges.at(0).absolute, true);
  EXPECT_EQ(read.unread, std::vector<std::string>{"colour"});
  EXPECT_EQ(overrules_of(*read.facts).pressures_absolute, true);
}

TEST(MetaFiles, NameEveryFaultByItsKey) {
  const TestFile read = read_test_file(
      "{\n \"volume_m3_nominal\": 0,\n \"hold_start_s\": \"2020\",\n \"clock_zero\": \"7 "
      "o'clock\",\n"
      " \"pressure_is\": \"high\",\n \"gauge_resolution_bar\": -0.1,\n \"temp_resolution_K\": 0,\n"
      " \"test_valve_shut\": \"yes\",\n \"stages_barg\": 6.4,\n \"volume_sd_rel\": 2\n}\n",
      "meta.json");
  std::string told;
  for (const Problem& problem : read.problems) told += sentence(problem) + "\n";
  EXPECT_EQ(
      told,
      "meta.json: clock_zero: is no time of day (found \"7 o'clock\"; accepted: a time of day such "
      "as "
      "\"07:00\")\n"
      "meta.json: gauge_resolution_bar: is not above zero (found \"-0.1\"; accepted: more than "
      "zero)\n"
      "meta.json: hold_start_s: is a text (found \"2020\"; accepted: a number)\n"
      "meta.json: pressure_is: is not a word known here (found \"high\"; accepted: \"gauge\" or "
      "\"absolute\")\n"
      "meta.json: stages_barg: is a number (found \"6.4\"; accepted: a list of numbers)\n"
      "meta.json: temp_resolution_K: is not above zero (found \"0\"; accepted: more than zero)\n"
      "meta.json: test_valve_shut: is a text (found \"yes\"; accepted: true or false)\n"
      "meta.json: volume_m3_nominal: is not above zero (found \"0\"; accepted: more than zero)\n"
      "meta.json: volume_sd_rel: is no share of the whole (found \"2\"; accepted: more than 0 % "
      "and "
      "less than 100 %)\n");
}

TEST(TestFileFormat, EveryKeyIsInItsDocument) {
  const std::string page = source_file("docs/formats/test-file.md");
  for (const std::string& key : test_file_keys()) {
    EXPECT_NE(page.find("`" + key.substr(key.find('.') + 1) + "`"), std::string::npos) << key;
  }
  for (const std::string& key : meta_keys()) {
    EXPECT_NE(page.find("`" + key + "`"), std::string::npos) << key;
  }
  EXPECT_GT(test_file_keys().size(), 40u);
  EXPECT_EQ(meta_keys().size(), 25u);
}

}  // namespace
}  // namespace steamworthy::wire
