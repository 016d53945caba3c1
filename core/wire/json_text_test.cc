#include "wire/json_text.h"

#include <gtest/gtest.h>

#include <limits>

#include "wire/json.h"

namespace steamworthy::wire {
namespace {

TEST(JsonText, IsReadBackAsItWasPut) {
  JsonObject object;
  object.put("text", "a \"b\"\n\\ ü").put("yes", true).put("whole", 7);
  object.put("large", std::int64_t{9007199254740993}).put("half", 0.5).put_null("none");
  object.put("texts", std::vector<std::string>{"x", "y"}).raw("list", json_list({"1", "{}"}));
  const Json read = Json::parse(object.text());
  EXPECT_EQ(read["text"], "a \"b\"\n\\ ü");
  EXPECT_EQ(read["yes"], true);
  EXPECT_EQ(read["whole"], 7);
  EXPECT_EQ(read["large"], 9007199254740993);
  EXPECT_EQ(read["half"], 0.5);
  EXPECT_TRUE(read["none"].is_null());
  EXPECT_EQ(read["texts"], Json::array({"x", "y"}));
  EXPECT_EQ(read["list"], Json::array({1, Json::object()}));
}

TEST(JsonText, IsAnObjectEvenWhenNothingWasPut) {
  EXPECT_EQ(JsonObject().text(), "{}");
  EXPECT_EQ(json_list({}), "[]");
}

TEST(JsonText, StaysValidWhateverStandsInAText) {
  JsonObject object;
  object.put("a", std::string_view("\xff\0\x01", 3));
  EXPECT_TRUE(Json::accept(object.text())) << object.text();
  EXPECT_EQ(number_text(std::numeric_limits<double>::quiet_NaN()), "null");
  EXPECT_EQ(number_text(std::numeric_limits<double>::infinity()), "null");
}

}  // namespace
}  // namespace steamworthy::wire
