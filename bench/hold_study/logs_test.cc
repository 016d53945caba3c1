#include "hold_study/logs.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>
#include <stdexcept>

namespace steamworthy::hold_study {
namespace {

std::vector<std::string> lines(const std::string& text) {
  std::vector<std::string> all;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) all.push_back(line);
  return all;
}

TEST(Logs, GainingCaseGains) {
  const Case made = named_case("gaining", 1, 30.0);
  EXPECT_LT(made.net_loss_mean() / ml_per_min, -20.0);
  const auto truth = nlohmann::json::parse(truth_text(made, Layout::Si));
  EXPECT_EQ(truth["accept_results"], nlohmann::json({"gaining"}));
  EXPECT_EQ(truth["must_not_say"], "losing");
  EXPECT_GT(truth["P_barg_end"], truth["P_barg_hold_start"]);
}

TEST(Logs, HiddenLeakIsLessThanWhatComesIn) {
  const Case made = named_case("gaining-hidden", 2, 30.0);
  EXPECT_GT(made.test.leak.at_test_pressure_m3_s, 0.0);
  EXPECT_LT(made.net_loss_mean() / ml_per_min, -15.0);
}

TEST(Logs, EveryLayoutHoldsTheSameReadings) {
  const Case made = named_case("no-loss", 3, 300.0);
  const auto si = lines(csv_text(made, Layout::Si));
  ASSERT_EQ(si.size(), made.log.seconds.size() + 1);
  for (const Layout layout : {Layout::Us, Layout::German, Layout::Manual}) {
    EXPECT_EQ(lines(csv_text(made, layout)).size(), si.size());
  }
  const std::size_t i = si.size() - 2;
  double bar = 0.0;
  ASSERT_EQ(std::sscanf(si[i + 1].c_str(), "%*d,%lf", &bar), 1);
  EXPECT_NEAR(bar, made.log.pressure_pa_gauge[i] / 1e5, 5e-4);
  double psi = 0.0;
  ASSERT_EQ(std::sscanf(lines(csv_text(made, Layout::Us))[i + 1].c_str(), "%*d:%*d:%*d,%lf", &psi),
            1);
  // 1 bar is 14.5038 psi.
  EXPECT_NEAR(psi / 14.5038, bar, 0.005);
  const std::string german = lines(csv_text(made, Layout::German))[i + 1];
  EXPECT_EQ(german.find('.'), std::string::npos);
  int millilitres = 0;
  double kilopascals = 0.0;
  ASSERT_EQ(std::sscanf(german.c_str(), "%*d:%*d:%*d;%d;%lf", &millilitres, &kilopascals), 2);
  EXPECT_NEAR(kilopascals / 100.0, bar, 0.01);
}

TEST(Logs, PaperSaysOnceWhenTheHoldBegan) {
  const std::string text = csv_text(named_case("no-loss", 3, 300.0), Layout::Manual);
  const std::size_t first = text.find("hold started");
  ASSERT_NE(first, std::string::npos);
  EXPECT_EQ(text.find("hold started", first + 1), std::string::npos);
}

TEST(Logs, PumpSideNotHungOpenIsToldInTheMeta) {
  const Case made = named_case("not-bled", 4, 60.0);
  const auto meta = nlohmann::json::parse(meta_text(made, Layout::Us, "x.csv"));
  EXPECT_EQ(meta["test_valve_shut"], false);
  EXPECT_EQ(meta["pump_side_hung_open"], false);
  EXPECT_EQ(nlohmann::json::parse(truth_text(made, Layout::Us))["accept_results"],
            nlohmann::json({"cannot_tell"}));
}

TEST(Logs, UnknownNamesAreRefused) {
  EXPECT_THROW(named_case("tidal", 1, 10.0), std::invalid_argument);
  EXPECT_THROW(layout_named("runes"), std::invalid_argument);
}

}  // namespace
}  // namespace steamworthy::hold_study
