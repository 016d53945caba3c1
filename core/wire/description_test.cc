// Checks wire/description.h: examples both ways, the keys against document and
// schema, whatever bytes come.
#include "wire/description.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "base/utf8.h"
#include "boiler/tokens.h"
#include "units/makers.h"
#include "wire/node.h"
#include "wire/source_file_test.h"

namespace steamworthy::wire {
namespace {

boiler::Boiler example(const std::string& name) {
  const std::string file = "examples/" + name + ".toml";
  const Description read = read_boiler_toml(source_file(file), file);
  for (const Problem& problem : read.problems) ADD_FAILURE() << sentence(problem);
  return read.boiler.value();
}

class Example : public testing::TestWithParam<const char*> {};

TEST_P(Example, GivesTheSameBoilerBackThroughJson) {
  const boiler::Boiler boiler = example(GetParam());
  const std::string json = boiler_json(boiler);
  const Description again = read_boiler_json(json, "again.json");
  for (const Problem& problem : again.problems) ADD_FAILURE() << sentence(problem);
  ASSERT_TRUE(again.boiler.has_value());
  EXPECT_TRUE(*again.boiler == boiler);  // to the last bit
  EXPECT_EQ(boiler_json(*again.boiler), json);
}

// The file is what tests/schema_test.py checks against the schema.
TEST_P(Example, IsWrittenAsInTestsDescriptions) {
  std::istringstream ours(boiler_json(example(GetParam())));
  std::istringstream file(source_file(std::string("tests/descriptions/") + GetParam() + ".json"));
  std::string left;
  std::string right;
  for (int line = 1; std::getline(ours, left); ++line) {
    ASSERT_TRUE(std::getline(file, right)) << "the file ends before line " << line;
    ASSERT_EQ(left, right) << "line " << line;
  }
  EXPECT_FALSE(std::getline(file, right));
}

INSTANTIATE_TEST_SUITE_P(All, Example, testing::Values("watertube", "firetube", "minimal"));

TEST(WatertubeExample, HasTheNumbersOfClosuresAndTemporariesThatItIsKnownFor) {
  const boiler::Boiler boiler = example("watertube");
  EXPECT_EQ(boiler.closures.size(), 116U);
  EXPECT_EQ(boiler.temporaries.size(), 4U);
  EXPECT_EQ(boiler.closures[4].tag, "FH-A01");
}

TEST(FiretubeExample, IsReadFromTheUnitsOfItsDrawing) {
  const boiler::Boiler boiler = example("firetube");
  EXPECT_NEAR(units::in_psi_gauge(boiler.sections[0].working_pressure), 150.0, 1e-12);
  EXPECT_NEAR(inner_diameter(boiler.parts[0]).si(), 94.5 * 0.0254, 1e-12);
  EXPECT_NEAR(length(boiler.parts[0]).si(), 17 * 0.3048, 1e-12);
}

/// What is in backquotes in a document.
std::set<std::string> quoted(const std::string& document) {
  std::set<std::string> result;
  for (std::size_t at = document.find('`'); at != std::string::npos;) {
    const std::size_t end = document.find('`', at + 1);
    if (end == std::string::npos) break;
    result.insert(document.substr(at + 1, end - at - 1));
    at = document.find('`', end + 1);
  }
  return result;
}

std::string last_name(const std::string& key) { return key.substr(key.find_last_of('.') + 1); }

TEST(DescriptionKeys, AreAllInTheDocument) {
  const std::set<std::string> named = quoted(source_file("docs/formats/boiler.md"));
  const std::vector<std::string> keys = description_keys(false);
  EXPECT_GT(keys.size(), 150U);
  for (const std::string& key : keys) EXPECT_TRUE(named.count(last_name(key))) << key;
}

void collect(const nlohmann::json& schema, std::set<std::string>& into) {
  if (schema.is_object()) {
    if (const auto it = schema.find("properties"); it != schema.end() && it->is_object()) {
      for (const auto& [name, value] : it->items()) into.insert(name);
    }
  }
  if (schema.is_structured()) {
    for (const auto& each : schema) collect(each, into);
  }
}

TEST(DescriptionKeys, AreTheKeysOfTheSchema) {
  std::set<std::string> in_schema;
  collect(nlohmann::json::parse(source_file("schema/boiler.schema.json")), in_schema);
  std::set<std::string> read;
  for (const std::string& key : description_keys(true)) read.insert(last_name(key));
  EXPECT_EQ(read, in_schema);
}

TEST(WordsOfADescription, AreAllInTheDocument) {
  const std::set<std::string> named = quoted(source_file("docs/formats/boiler.md"));
  const auto expect = [&](std::vector<std::string_view> words) {
    for (std::string_view word : words) {
      std::string written(word);
      std::replace(written.begin(), written.end(), '_', ' ');
      EXPECT_TRUE(named.count(written)) << written;
    }
  };
  expect(boiler::Words<boiler::BoilerKind>::all());
  expect(boiler::Words<boiler::PartKind>::all());
  expect(boiler::Words<boiler::HeadKind>::all());
  expect(boiler::Words<boiler::Axis>::all());
  expect(boiler::Words<boiler::Run>::all());
  expect(boiler::Words<boiler::InsideKind>::all());
  expect(boiler::Words<boiler::ThermalGroup>::all());
  expect(boiler::Words<boiler::ClosureKind>::all());
  expect(boiler::Words<boiler::OpeningShape>::all());
  expect(boiler::Words<boiler::GasketKind>::all());
  expect(boiler::Words<boiler::Side>::all());
  expect(boiler::Words<boiler::SpaceSide>::all());
  expect(boiler::Words<boiler::MountingKind>::all());
  expect(boiler::Words<boiler::IsolationKind>::all());
  expect(boiler::Words<boiler::TemporaryKind>::all());
  expect(boiler::Words<boiler::OffBefore>::all());
  expect(boiler::Words<boiler::PlaceKind>::all());
  expect(boiler::Words<boiler::ThermometerOn>::all());
}

// The guide's example is whole: every block of TOML in it together is a description.
TEST(DescribingABoiler, TheExampleOfTheGuideIsRead) {
  const std::string guide = source_file("docs/describing-a-boiler.md");
  std::string toml;
  for (std::size_t at = guide.find("```toml\n"); at != std::string::npos;) {
    const std::size_t end = guide.find("```", at + 8);
    toml += guide.substr(at + 8, end - at - 8);
    at = guide.find("```toml\n", end);
  }
  const Description read = read_boiler_toml(toml, "guide");
  for (const Problem& problem : read.problems) ADD_FAILURE() << sentence(problem);
  EXPECT_TRUE(read.boiler.has_value());
}

TEST(JsonDescription, NamesFieldAndUnitOfWhatIsWrong) {
  auto json = nlohmann::ordered_json::parse(boiler_json(example("minimal")));
  json["section"][0].erase("working_pressure_bar_gauge");
  json["section"][0]["working_pressure_psi"] = 150;
  json["content"]["water_content_l"] = "8400 L";
  const Description read = read_boiler_json(json.dump(), "b.json");
  std::vector<std::string> told;
  for (const Problem& problem : read.problems) told.push_back(sentence(problem));
  EXPECT_EQ(
      told,
      (std::vector<std::string>{
          "b.json: content.water_content_l: is a text (found \"8400 L\"; accepted: a number)",
          "b.json: section[boiler].working_pressure_bar_gauge: is missing (accepted: a "
          "number)",
          "b.json: section[boiler].working_pressure_psi: is not a key known here (found "
          "\"working_pressure_psi\"; accepted: \"name\" or \"working_pressure_bar_gauge\")"}));
}

std::string code_of_json(const std::string& text) {
  const Description read = read_boiler_json(text, "b.json");
  return read.problems.empty() ? "" : read.problems.front().code;
}

TEST(JsonDescription, RefusesWhatIsNoDescription) {
  EXPECT_EQ(code_of_json(""), "wire.syntax");
  EXPECT_EQ(code_of_json("[1]"), "wire.syntax");
  EXPECT_EQ(code_of_json("{\"format\": 1e999}"), "wire.syntax");
  EXPECT_EQ(code_of_json("{\"format\": \"x\", \"format\": \"y\"}"), "wire.doubled_key");
  EXPECT_EQ(code_of_json("{\"format\": \"\xff\"}"), "wire.not_utf8");
  EXPECT_EQ(code_of_json(std::string(100000, '[')), "wire.too_deep");
  EXPECT_EQ(code_of_json("{}"), "wire.missing");
}

TEST(TomlDescription, RefusesATextOfAbsurdSize) {
  const Description read = read_boiler_toml(std::string(greatest_text + 1, ' '), "big.toml");
  ASSERT_EQ(read.problems.size(), 1U);
  EXPECT_EQ(read.problems[0].code, "wire.too_large");
}

// Examples of the notes on RFC 3629 and of the Unicode standard's table of
// well-formed byte sequences, from memory.
TEST(Utf8, RefusesOverlongFormsSurrogatesAndWhatLiesBeyond) {
  EXPECT_FALSE(line_of_bad_utf8("a\xc2\xb0 \xe2\x82\xac \xf0\x9f\x94\xa7").has_value());
  for (const char* bad : {"\x80", "\xc0\xaf", "\xe0\x80\xaf", "\xed\xa0\x80", "\xf0\x80\x80\xaf",
                          "\xf4\x90\x80\x80", "\xf5\x80\x80\x80", "\xe2\x82", "\xff"}) {
    EXPECT_EQ(line_of_bad_utf8(std::string("ok\n") + bad), 2);
  }
}

// However a description is spoiled, it is read or refused with a code, a file and a message.
RC_GTEST_PROP(SpoiledDescription, IsReadOrRefusedWithReasons, ()) {
  static const std::string whole = source_file("examples/firetube.toml");
  std::string text = whole;
  const int edits = *rc::gen::inRange(1, 8);
  for (int i = 0; i < edits; ++i) {
    const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
    switch (*rc::gen::inRange(0, 4)) {
      case 0:
        text[at] = *rc::gen::arbitrary<char>();
        break;
      case 1:
        text.erase(at, *rc::gen::inRange<std::size_t>(1, 80));
        break;
      case 2:
        text.insert(at, text.substr(*rc::gen::inRange<std::size_t>(0, text.size()), 60));
        break;
      default:
        text.insert(at, *rc::gen::element<std::string>("9999999999999999", "-", "\"", "[[part]]\n",
                                                       "nan", "e308", "\n", "#", "=", "\xff"));
    }
    if (text.empty()) text = " ";
  }
  const Description read = read_boiler_toml(text, "x.toml");
  RC_ASSERT(read.boiler.has_value() == read.problems.empty());
  for (const Problem& problem : read.problems) {
    RC_ASSERT(!problem.code.empty());
    RC_ASSERT(!problem.message.empty());
    RC_ASSERT(problem.file == "x.toml");
  }
  if (read.boiler) {
    const Description again = read_boiler_json(boiler_json(*read.boiler), "x.json");
    RC_ASSERT(again.boiler.has_value());
    RC_ASSERT(*again.boiler == *read.boiler);
  }
}

// Any number that a quantity may have comes back from JSON to the last bit.
RC_GTEST_PROP(QuantitiesInJson, ComeBackToTheLastBit, ()) {
  static const boiler::Boiler base = example("minimal");
  const auto digits = *rc::gen::inRange(1, 1000000);
  const auto unit = *rc::gen::element<std::string>("psi", "bar", "MPa", "kPa", "kgf/cm2");
  const double in_bar = unit == "MPa" ? 10.0 : unit == "psi" ? 0.069 : unit == "kPa" ? 0.01 : 1.0;
  const double number = digits * 1e-6 * 300.0 / in_bar + 10.0 / in_bar;
  std::string text = source_file("examples/minimal.toml");
  const std::string old = "working_pressure = \"10 bar\"";
  const std::size_t at = text.find(old);
  RC_ASSERT(at != std::string::npos);
  text.replace(at, old.size(),
               "working_pressure = \"" + std::to_string(number) + " " + unit + "\"");
  const Description read = read_boiler_toml(text, "x.toml");
  RC_ASSERT(read.boiler.has_value());
  const Description again = read_boiler_json(boiler_json(*read.boiler), "x.json");
  RC_ASSERT(*again.boiler == *read.boiler);
}

}  // namespace
}  // namespace steamworthy::wire
