// record_test.cc: the test record of one of the simulated logs, and of a day's log of three gauges.
#include "report/record.h"

#include <gtest/gtest.h>

#include <cmath>

#include "hold/analyse.h"
#include "paper/type.h"
#include "paper/write.h"
#include "report/boilers_test.h"
#include "report/document_test.h"
#include "trace/reader.h"

namespace steamworthy::report {
namespace {

using paper::Box;
using paper::Page;
using paper::Text;

/// A leak of 30 mL/min, half a litre of air, at 45 bar; the analysis has its own tests.
struct Logged {
  explicit Logged(const std::string& log, std::size_t closures = 0,
                  units::System system = units::System::Si, paper::Size size = paper::Size::A4)
      : boiler(closures == 0 ? testing::example_boiler("watertube") : with_many_closures(closures)),
        papers{{.boiler = boiler}, sheet::make_sheet(boiler, testing::rule_files(), request())},
        reading(trace::read_trace(log, "log.csv")) {
    papers.context.version = "0";
    papers.context.sources = {{"x.toml", "00"}, {"log.csv", "01"}};
    papers.context.style.print.system = system;
    papers.context.size = size;
    const trace::Trace& trace = reading.trace;
    for (std::size_t i = 0; i < trace.rows(); ++i) {
      if (!trace.pressures.front().values.has(i)) continue;
      input.record.seconds.push_back(trace.seconds[i]);
      input.record.pressure_pa_abs.push_back(trace.pressures.front().values.si(i) +
                                             input.barometer.si());
      input.record.water_temperature_k.push_back(trace.water.front().values.si(i));
      if (trace.pumped) input.record.pumped_m3.push_back(trace.pumped->values.si(i));
    }
    input.boiler.volume = units::cubic_metres(26.8);
    input.boiler.growth = units::per_pascal(1e-10);
    input.valves = {true, true};
    input.leak_of_concern = units::millilitres_per_minute(50);
    input.hold_start_s = 20 * 60.0;
    answer = hold::analyse(input);
  }
  static sheet::Request request() {
    sheet::Request request;
    request.rule_id = "us-marine-ordinary";
    request.work = rules::Work::GasketsOnly;
    request.authority = "an inspector";
    request.stated_ceiling = units::bars_gauge(48);
    return request;
  }
  paper::Document record() const {
    return test_record(papers, {reading.trace, facts, input, answer});
  }

  boiler::Boiler boiler;
  Papers papers;
  trace::Reading reading;
  trace::TestFacts facts;
  hold::HoldInput input;
  hold::HoldAnswer answer;
};

/// Pump-up in 20 minutes to 45 bar, then a hold that falls slowly.
std::string log_of(int seconds, int every, int gauges) {
  std::string text = "time [s]";
  for (int g = 0; g < gauges; ++g) text += ",gauge " + std::to_string(g + 1) + " [bar gauge]";
  text += ",water [degC],pumped [L]\n";
  for (int t = 0; t <= seconds; t += every) {
    const double up = std::min(1.0, t / 1200.0);
    const double pressure = 45.0 * up - std::max(0, t - 1200) * 2e-5;
    text += std::to_string(t);
    for (int g = 0; g < gauges; ++g) text += "," + std::to_string(pressure + 0.1 * g);
    text += ",25.0," + std::to_string(66.4 * up) + "\n";
  }
  return text;
}

TEST(Record, SaysWhatTheGaugeSaysBesideRoomForWhatWasSeen) {
  for (const units::System system : {units::System::Si, units::System::Us}) {
    for (const paper::Size size : {paper::Size::A4, paper::Size::Letter}) {
      const Logged test(log_of(5400, 10, 1), 0, system, size);
      ASSERT_TRUE(test.reading.is_usable());
      const paper::Document document = test.record();
      const std::string text = all_text(document);
      for (const char* words :
           {"what the gauge says", "Places seen dry: _______ of 222", "never above", "go to",
            "net loss over the hold", "Instruments", "TG-1", "2027-03-31", "log.csv"})
        EXPECT_NE(text.find(words), std::string::npos) << words;
      EXPECT_EQ(text.find("<"), std::string::npos) << text.substr(text.find("<"), 40);
      ASSERT_TRUE(test.answer.split.has_value());
      EXPECT_NE(text.find(test.papers.context.number(units::measure_pressure_difference(
                    units::pascals(std::round(test.answer.split->fall.si() / 10.0) * 10.0)))),
                std::string::npos);
      for (const Page& page : document.pages) {
        const Box all{8.0, 5.0, page.width - 16.0, page.height - 8.0};
        for (const Text& one : texts(page))
          EXPECT_TRUE(all.contains(paper::bounds(one))) << one.text;
      }
    }
  }
}

TEST(Record, DrawsThePumpUpWithTheAirlessLine) {
  const Logged test(log_of(5400, 10, 1));
  ASSERT_TRUE(test.answer.pump_up.has_value());
  const std::string text = all_text(test.record());
  for (const char* words : {"without trapped air", "as logged", "Trapped air: "})
    EXPECT_NE(text.find(words), std::string::npos) << words;
}

TEST(Record, ALogWithoutPumpUpAndFewReadingsStillMakesARecord) {
  const Logged test(
      "time [min],gauge [bar gauge],water [degC]\n0,45.0,25\n5,44.9,25\n10,44.9,25\n15,44.8,25\n");
  const std::string text = all_text(test.record());
  EXPECT_EQ(text.find("Trapped air: "), std::string::npos);
  EXPECT_NE(text.find("what the gauge says"), std::string::npos);
}

TEST(Record, ThreeGaugesOfADayAreThinnedAndAllNamed) {
  const Logged test(log_of(86'400, 1, 3), 600);
  const paper::Document document = test.record();
  const std::string text = all_text(document);
  for (const char* words : {"gauge 1", "gauge 2", "gauge 3", "time, h"})
    EXPECT_NE(text.find(words), std::string::npos) << words;
  EXPECT_LT(paper::pdf(document).size(), 2'000'000u);
}

}  // namespace
}  // namespace steamworthy::report
