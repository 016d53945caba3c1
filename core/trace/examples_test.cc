// The thirteen simulated logs of tests/traces, each in the layout of another logger, against what
// their .meta.json files and a plain reading of the text say.
#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <sstream>

#include "trace/moment.h"
#include "trace/reader.h"
#include "trace/summary.h"
#include "units/makers.h"

namespace steamworthy::trace {
namespace {

std::string file(const std::string& name) {
  std::ifstream stream(STEAMWORTHY_SOURCE_DIR "/tests/traces/" + name, std::ios::binary);
  std::stringstream text;
  text << stream.rdbuf();
  return text.str();
}

Reading read(const std::string& name) { return read_trace(file(name), name); }

struct Expected {
  const char* name;
  std::size_t rows;  // wc -l less the head
  double span_s;     // last time less first, by eye
  double last_bar;   // of the last line
  double last_water_c;
  double last_metal_c;
  double last_pumped_l;  // strokes where the log has strokes
};

// From the text of the files: tail -1, wc -l.
const Expected expected[] = {
    {"00_tight_good_si.csv", 1125, 5620, 15.84, 41.14, 40.66, 15.3705},
    {"03_tight_ok_us.csv", 170, 5070, 365.5 * 0.0689475729, (88.97 - 32) / 1.8, (89.87 - 32) / 1.8,
     2.2026 * 3.785411784},
    {"04_tight_cooling.csv", 1016, 5075, 42.67, 37.36, 36.22, 8.0118},
    {"07_tight_cold10C.csv", 1108, 5535, 59.87, 9.49, 10.62, 12.6020},
    {"13_tight_much_air.csv", 1126, 5625, 45.75, 44.98, 43.78, 56.1225},
    {"14_tight_dissolving_air.csv", 1098, 5485, 24.07, 17.05, 17.07, 11.887},
    {"16_leak_big.csv", 351, 3500, 2.0, 15.55, 15.05, 10.3453},
    {"19_leak_med.csv", 1133, 5660, 49.13, 19.96, 21.01, 31.9552},
    {"23_leak_small_us.csv", 1830, 9145, 593.8 * 0.0689475729, (90.27 - 32) / 1.8,
     (87.46 - 32) / 1.8, 3.4303 * 3.785411784},
    {"25_leak_masked_by_warming.csv", 1132, 5655, 52.04, 33.30, 34.26, 14.6395},
    {"27_leak_onset.csv", 1141, 5700, 76.93, 25.40, 25.97, 27.6180},
    {"29_leak_manual.csv", 17, 4800, 0.5, 37.9, 38.9, 195},
    {"36_und_small_leak_poor.csv", 56, 3300, 25.5, 35.85, 36.35, 56.6982},
};

TEST(ExampleLogs, AreReadToTheLastCell) {
  for (const Expected& one : expected) {
    SCOPED_TRACE(one.name);
    const Reading reading = read(one.name);
    for (const Problem& problem : reading.problems) ADD_FAILURE() << sentence(problem);
    for (const Problem& problem : reading.bad_lines) ADD_FAILURE() << sentence(problem);
    ASSERT_TRUE(reading.is_usable());
    const Trace& trace = reading.trace;
    EXPECT_EQ(trace.rows(), one.rows);
    EXPECT_DOUBLE_EQ(trace.seconds.back(), one.span_s);
    ASSERT_EQ(trace.pressures.size(), 1u);
    ASSERT_EQ(trace.water.size(), 1u);
    ASSERT_EQ(trace.metal.size(), 1u);
    const std::size_t last = trace.rows() - 1;
    EXPECT_NEAR(trace.pressures[0].values.si(last) / 1e5, one.last_bar, 1e-6);
    EXPECT_NEAR(trace.water[0].values.si(last) - 273.15, one.last_water_c, 1e-9);
    EXPECT_NEAR(trace.metal[0].values.si(last) - 273.15, one.last_metal_c, 1e-9);
    EXPECT_FALSE(trace.pressures[0].absolute);
    if (trace.pumped) {
      EXPECT_NEAR(trace.pumped->values.si(last) * 1e3, one.last_pumped_l, 1e-9);
    } else {
      ASSERT_TRUE(trace.strokes.has_value());
      EXPECT_EQ(trace.strokes->values.si(last), one.last_pumped_l);
    }
  }
}

TEST(ExampleLogs, MarkWhatTheHeadsDoNotSay) {
  const Reading german = read("14_tight_dissolving_air.csv");
  EXPECT_TRUE(german.trace.pressures.at(0).zero_assumed);  // Druck_kPa
  EXPECT_FALSE(german.trace.pressures.at(0).unit_assumed);
  EXPECT_TRUE(german.trace.water.at(0).unit_assumed);  // T_Wasser
  EXPECT_EQ(german.understanding.separator, ';');
  EXPECT_EQ(german.understanding.decimal, ',');
  const Reading american = read("03_tight_ok_us.csv");
  EXPECT_FALSE(american.trace.pressures.at(0).zero_assumed);  // psig
  EXPECT_EQ(american.trace.first_clock_s, 7 * 3600.0);
}

TEST(ExampleLogs, KeepTheRemarkWithItsRow) {
  const Reading manual = read("29_leak_manual.csv");
  ASSERT_EQ(manual.trace.remarks.size(), 1u);
  EXPECT_EQ(manual.trace.remarks[0].text, "hold started");
  EXPECT_EQ(manual.trace.seconds[manual.trace.remarks[0].row], 25 * 60.0);
}

TEST(ExampleLogs, SayWhatTheyUnderstood) {
  const Reading reading = read("23_leak_small_us.csv");
  const working::Message& third = reading.understanding.columns.at(2).sentence;
  EXPECT_EQ(third, (working::Message{"trace.column_is",
                                     {{"column", units::measure_count(3)},
                                      {"meaning", working::Term{"trace_meaning.water"}},
                                      {"header", std::string("Water temp (F)")},
                                      {"unit", std::string("\u00b0F")}}}));
}

}  // namespace
}  // namespace steamworthy::trace
