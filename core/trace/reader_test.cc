// Logs as loggers and hands write them, each with what must come of it. The layouts are invented;
// what stands in each was read by eye.
#include "trace/reader.h"

#include <gtest/gtest.h>

#include "trace/moment.h"
#include "trace/summary.h"
#include "trace/test_facts.h"
#include "trace/told.h"

namespace steamworthy::trace {
namespace {

Reading read(const std::string& text, const Overrules& overrules = {}) {
  Reading reading = read_trace(text, "log", overrules);
  for (const Problem& problem : reading.problems) ADD_FAILURE() << sentence(problem);
  return reading;
}

std::vector<std::string> notes(const Reading& reading) {
  std::vector<std::string> keys;
  for (const auto& note : reading.notes) keys.push_back(note.key);
  return keys;
}

using Keys = std::vector<std::string>;

TEST(Reader, TakesAClockOverMidnight) {
  const Reading reading =
      read("Uhrzeit;Druck bar\n23:50;10,5\n23:55;10,4\n00:00;10,3\n00:05;10,2\n");
  EXPECT_EQ(reading.trace.seconds, (std::vector<double>{0, 300, 600, 900}));
  EXPECT_EQ(notes(reading), Keys{"trace.note_midnight"});
}

TEST(Reader, FindsGapsAndFillsNothingIn) {
  const Reading reading = read("t_s,p_barg\n0,1.0\n5,1.0\n10,1.0\n15,1.0\n600,1.0\n605,1.0\n");
  ASSERT_EQ(reading.trace.gaps.size(), 1u);
  EXPECT_EQ(reading.trace.gaps[0].row, 4u);
  EXPECT_EQ(reading.trace.gaps[0].seconds, 585.0);
  EXPECT_EQ(reading.trace.rows(), 6u);
  EXPECT_EQ(notes(reading), Keys{"trace.note_gaps"});
}

TEST(Reader, CountsDoubledRowsOnceAndKeepsOthersOfTheSameTime) {
  const Reading reading = read("time,p_barg\n07:00,1.0\n07:00,1.0\n07:00,1.1\n07:01,1.2\n");
  EXPECT_EQ(reading.trace.rows(), 3u);
  EXPECT_EQ(notes(reading), (Keys{"trace.note_doubled", "trace.note_same_time"}));
}

TEST(Reader, KeepsAnEmptyCellAsNoReading) {
  const Reading reading = read("t_s,p_barg,T_water_C\n0,1.0,20.0\n5,,20.1\n10,1.2,NaN\n15,1.3,-\n");
  const Series& pressure = reading.trace.pressures.at(0).values;
  const Series& water = reading.trace.water.at(0).values;
  EXPECT_EQ(reading.trace.rows(), 4u);
  EXPECT_TRUE(pressure.has(0));
  EXPECT_FALSE(pressure.has(1));
  EXPECT_FALSE(water.has(2));
  EXPECT_FALSE(water.has(3));
  EXPECT_EQ(water.known(), 2u);
}

TEST(Reader, KeepsEveryGaugeAndThermometerByItsName) {
  const Reading reading = read(
      "time,Pump pressure [bar],TG-1 gauge [bar],TG-2 gauge [psig],Drum water [\u00b0C],"
      "Tube water [\u00b0C],Shell 1 [\u00b0C],Shell 2 [\u00b0C],Boiler room [\u00b0C],Feed tank "
      "[\u00b0C]\n"
      "07:00,0.1,0.2,1.0,20.0,21.0,22.0,23.0,24.0,15.0\n07:05,0.1,0.2,1.0,20.0,21.0,22.0,23.0,24.0,"
      "15.0\n");
  const Trace& trace = reading.trace;
  ASSERT_EQ(trace.pressures.size(), 3u);
  EXPECT_EQ(trace.pressures[0].name, "TG-1 gauge");
  EXPECT_EQ(trace.pressures[1].name, "TG-2 gauge");
  EXPECT_EQ(trace.pressures[2].name, "Pump pressure");
  EXPECT_TRUE(trace.pressures[0].zero_assumed);
  EXPECT_FALSE(trace.pressures[1].zero_assumed);
  ASSERT_EQ(trace.water.size(), 2u);
  EXPECT_EQ(trace.water[1].name, "Tube water");
  ASSERT_EQ(trace.metal.size(), 2u);
  EXPECT_EQ(trace.ambient.size(), 1u);
  EXPECT_EQ(trace.supply.size(), 1u);
  EXPECT_TRUE(is_called(trace.pressures[1], "TG-2 gauge [psig]"));
  EXPECT_TRUE(is_called(trace.pressures[1], "4"));
}

TEST(Reader, TakesPreambleUnitsRowAndRepeatedHeads) {
  const Reading reading = read(
      "Logger;LX-4\nSerial;1234\n\nTime;Pressure;Water;Metal\nhh:mm:ss;bar abs;\u00b0C;\u00b0C\n"
      "07:00:00;1.01;20.0;20.0\n07:00:05;1.51;20.0;20.0\nTime;Pressure;Water;Metal\n07:00:10;2.01;"
      "20.0;20.0\n");
  EXPECT_EQ(reading.trace.rows(), 3u);
  EXPECT_TRUE(reading.trace.pressures.at(0).absolute);
  EXPECT_FALSE(reading.trace.pressures.at(0).zero_assumed);
  EXPECT_EQ(reading.understanding.header_line, 4);
  EXPECT_EQ(notes(reading), (Keys{"trace.note_preamble", "trace.note_repeated_heads"}));
}

TEST(Reader, TakesHeadsOutOfAComment) {
  const Reading reading = read("# t_s p_barg T_water_C\n0 1.0 20.0\n5 1.1 20.0\n");
  EXPECT_EQ(reading.understanding.separator, ' ');
  EXPECT_EQ(reading.trace.water.size(), 1u);
}

TEST(Reader, TakesColumnsOfBlanksWithHeadsOfSeveralWords) {
  const Reading reading = read(
      "Time      Gauge psig   Water temp F\n07:00:00     0.0         89.3\n07:00:30     4.4        "
      " 89.3\n");
  EXPECT_EQ(reading.trace.rows(), 2u);
  EXPECT_NEAR(reading.trace.water.at(0).values.si(1), (89.3 + 459.67) / 1.8, 1e-9);
}

TEST(Reader, TakesRemarksThatHoldSeparators) {
  const Reading reading = read(
      "time,reading bar,remarks\n07:00,1.0,\n07:05,2.0,pump stopped, valve "
      "shut\n07:10,2.0\n07:15,2.0,\"weep, left\"\n");
  EXPECT_EQ(reading.bad_line_count, 0u);
  ASSERT_EQ(reading.trace.remarks.size(), 2u);
  EXPECT_EQ(reading.trace.remarks[0].text, "pump stopped, valve shut");
  EXPECT_EQ(reading.trace.remarks[1].text, "weep, left");
}

TEST(Reader, TakesUtf16AndWindows1252) {
  const std::string plain = "t_s;Druck [bar];Wasser [\u00b0C]\r\n0;1,5;20,5\r\n5;1,6;20,5\r\n";
  std::string wide = "\xff\xfe";
  std::string old;
  for (std::size_t i = 0; i < plain.size(); ++i) {
    const bool degree = plain[i] == '\xc2';
    const char c = degree ? '\xb0' : plain[i];
    if (degree) ++i;
    wide += c;
    wide += '\0';
    old += c;
  }
  for (const std::string& text : {wide, old}) {
    const Reading reading = read(text);
    EXPECT_EQ(reading.trace.rows(), 2u);
    EXPECT_FALSE(reading.trace.water.at(0).unit_assumed);
    EXPECT_EQ(reading.notes.size(), 1u);
  }
}

TEST(Reader, MarksADecimalCommaThatMayPartThousands) {
  const Reading reading = read("t_s;p_barg\n0;6,500\n5;6,512\n");
  EXPECT_TRUE(reading.understanding.decimal_assumed);
  EXPECT_NEAR(reading.trace.pressures.at(0).values.si(1), 651200.0, 1e-6);
  EXPECT_FALSE(read("t_s;p_barg\n0;6,50\n5;6,512\n").understanding.decimal_assumed);
}

TEST(Reader, LetsTheFirstDecimalsDecideWhereTheSampleHasNone) {
  std::string text = "t_s;p_barg\n";
  for (int i = 0; i < 300; ++i) text += std::to_string(i) + ";2\n";
  text += "300;2,5\n";
  const Reading reading = read(text);
  EXPECT_EQ(reading.bad_line_count, 0u);
  EXPECT_NEAR(reading.trace.pressures.at(0).values.si(300), 2.5e5, 1e-6);
}

TEST(Reader, SaysWhenAGaugePressureBeginsAtOneAtmosphere) {
  const Reading reading = read("t_s,p_bar\n0,1.01\n5,1.51\n");
  EXPECT_EQ(notes(reading), Keys{"trace.note_perhaps_absolute"});
  Overrules overrules;
  overrules.pressures_absolute = true;
  EXPECT_TRUE(read("t_s,p_bar\n0,1.01\n5,1.51\n", overrules).trace.pressures.at(0).absolute);
  // A head that says gauge is not overruled by a word for all gauges.
  EXPECT_FALSE(read("t_s,p_barg\n0,1.01\n5,1.51\n", overrules).trace.pressures.at(0).absolute);
}

TEST(Reader, LetsAUserOverruleMeaningAndUnit) {
  Overrules overrules;
  overrules.columns = {{2, Meaning::Metal}, {3, Meaning::Pressure}};
  overrules.units = {{2, "F"}, {3, "bar abs"}, {1, "min"}};
  const Reading reading = read("t,a,b\n0,68,1.0\n5,68,2.0\n", overrules);
  EXPECT_EQ(reading.trace.seconds.at(1), 300.0);
  EXPECT_NEAR(reading.trace.metal.at(0).values.si(0), 293.15, 1e-9);
  EXPECT_TRUE(reading.trace.pressures.at(0).absolute);
}

TEST(Reader, ReadsElapsedTimesWrittenAsClocks) {
  EXPECT_EQ(read("elapsed,p_barg\n23:59:00,1.0\n24:01:00,1.0\n").trace.seconds.at(1), 120.0);
  EXPECT_EQ(read("Dauer (mm:ss);Druck bar\n05:30;1,0\n06:00;1,0\n").trace.seconds.at(1), 30.0);
  EXPECT_EQ(read("t [min],p [bar]\n0,1.0\n2.5,1.0\n").trace.seconds.at(1), 150.0);
}

TEST(Reader, ReadsDatesInEitherOrderOnceOneShowsIt) {
  const Reading us = read("time,Gauge psig\n11/25/2026 11:59 PM,1.0\n11/26/2026 12:01 AM,1.0\n");
  EXPECT_EQ(us.trace.seconds.at(1), 120.0);
  const Reading eu = read("time;Druck bar\n30/11/2026 23:59;1,0\n01/12/2026 00:01;1,0\n");
  EXPECT_EQ(eu.trace.seconds.at(1), 120.0);
}

TEST(Reader, HonoursAChangeOfSummerTimeThatTheLogSays) {
  const Reading reading =
      read("time,p_barg\n2026-10-25T02:59:00+02:00,1.0\n2026-10-25T02:01:00+01:00,1.0\n");
  EXPECT_EQ(reading.trace.seconds.at(1), 120.0);
}

TEST(Moments, FallOnTheTraceByClockElapsedOrDate) {
  const Trace clock = read("time,p_barg\n23:50,1.0\n23:55,1.0\n00:20,1.0\n").trace;
  EXPECT_EQ(seconds_at(clock, *read_moment("00:10"), std::nullopt), 1200.0);
  EXPECT_EQ(seconds_at(clock, *read_moment("23:40"), std::nullopt), -600.0);
  EXPECT_EQ(seconds_at(clock, {900.0, {}, {}}, 23 * 3600.0 + 55 * 60.0), 1200.0);
  EXPECT_EQ(seconds_at(clock, {900.0, {}, {}}, std::nullopt), 900.0);
  const Trace elapsed = read("t_s,p_barg\n100,1.0\n105,1.0\n").trace;
  EXPECT_EQ(seconds_at(elapsed, {103.0, {}, {}}, std::nullopt), 3.0);
  EXPECT_EQ(seconds_at(elapsed, *read_moment("07:02"), 7 * 3600.0), 20.0);
  EXPECT_FALSE(seconds_at(elapsed, *read_moment("07:02"), std::nullopt).has_value());
  const Trace dated = read("time,p_barg\n2026-11-25 23:50,1.0\n2026-11-26 00:20,1.0\n").trace;
  EXPECT_EQ(seconds_at(dated, *read_moment("2026-11-26 00:10"), std::nullopt), 1200.0);
  EXPECT_FALSE(read_moment("half past seven").has_value());
}

TEST(Summary, TellsSpanStepAndHighestPressure) {
  const Reading reading = read("t_s,p_barg\n0,1.0\n5,3.5\n10,2.0\n15,x\n");
  const Summary summary = summarise(reading);
  EXPECT_EQ(summary.rows, 3u);
  EXPECT_EQ(summary.span_s, 10.0);
  EXPECT_EQ(summary.usual_step_s, 5.0);
  EXPECT_EQ(summary.bad_lines, 1u);
  ASSERT_EQ(summary.highest.size(), 1u);
  EXPECT_NEAR(summary.highest[0].pa, 3.5e5, 1e-6);
  EXPECT_EQ(summary.highest[0].at_s, 5.0);
}

TEST(Series, KeepsDigitsInFourBytesAndWidensWhereTheyDoNotFit) {
  Series series(1.0, 0.0);
  const auto cell = [](double value, std::int32_t digits, int decimals) {
    return Written{value, digits, decimals, true};
  };
  series.push(cell(15.8, 158, 1));
  series.push(cell(15.84, 1584, 2));
  series.push_missing();
  EXPECT_EQ(series.number(0), 15.8);
  EXPECT_EQ(series.number(1), 15.84);
  EXPECT_FALSE(series.has(2));
  series.push(cell(999999999.0, 999999999, 0));  // times a hundred this fits no longer
  series.push(Written{1e300, 0, 0, false});
  EXPECT_EQ(series.number(0), 15.8);
  EXPECT_EQ(series.number(3), 999999999.0);
  EXPECT_EQ(series.number(4), 1e300);
  EXPECT_FALSE(series.has(2));
  EXPECT_EQ(series.known(), 4u);
  series.reverse();
  EXPECT_EQ(series.number(4), 15.8);
}

}  // namespace
}  // namespace steamworthy::trace
