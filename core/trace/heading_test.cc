// Heads in English and German and what each says. Written by hand from what loggers and crews write
// (common practice, no source).
#include "trace/heading.h"

#include <gtest/gtest.h>

namespace steamworthy::trace {
namespace {

struct Row {
  const char* text;
  Meaning meaning;
  const char* unit;  // as shown; "" for none
  int zero;          // -1 unsaid, 0 gauge, 1 absolute
};

const Row rows[] = {
    {"t_s", Meaning::Elapsed, "s", -1},
    {"Time", Meaning::Elapsed, "", -1},
    {"Elapsed (min)", Meaning::Elapsed, "min", -1},
    {"Zeit in s", Meaning::Elapsed, "s", -1},
    {"Zeit [Sekunden]", Meaning::Elapsed, "Sekunden", -1},
    {"Uhrzeit", Meaning::Elapsed, "", -1},
    {"Datum/Zeit", Meaning::Elapsed, "", -1},
    {"timestamp", Meaning::Elapsed, "", -1},
    {"p_barg", Meaning::Pressure, "bar", 0},
    {"p / bar", Meaning::Pressure, "bar", -1},
    {"P (MPa abs)", Meaning::Pressure, "MPa", 1},
    {"Gauge (psig)", Meaning::Pressure, "psi", 0},
    {"Gauge pressure, bar", Meaning::Pressure, "bar", 0},
    {"Absolute pressure [kPa]", Meaning::Pressure, "kPa", 1},
    {"Pressure bar (gauge)", Meaning::Pressure, "bar", 0},
    {"reading bar", Meaning::Pressure, "bar", -1},
    {"Druck_kPa", Meaning::Pressure, "kPa", -1},
    {"\u00dcberdruck [bar]", Meaning::Pressure, "bar", 0},
    {"Absolutdruck in bar", Meaning::Pressure, "bar", 1},
    {"Kesseldruck [bar(a)]", Meaning::Pressure, "bar", 1},
    {"psig", Meaning::Pressure, "psi", 0},
    {"at\u00fc", Meaning::Pressure, "at\u00fc", 0},
    {"T_water_C", Meaning::Water, "\u00b0C", -1},
    {"T_Wasser", Meaning::Water, "", -1},
    {"Kesselwassertemperatur [\u00b0C]", Meaning::Water, "\u00b0C", -1},
    {"water C", Meaning::Water, "\u00b0C", -1},
    {"Water temp (deg F)", Meaning::Water, "\u00b0F", -1},
    {"WaterTemp", Meaning::Water, "", -1},
    {"Steam drum water K", Meaning::Water, "K", -1},
    {"T_metal_C", Meaning::Metal, "\u00b0C", -1},
    {"Shell temp (F)", Meaning::Metal, "\u00b0F", -1},
    {"Wandtemperatur \u00b0C", Meaning::Metal, "\u00b0C", -1},
    {"Mantel [\u00b0C]", Meaning::Metal, "\u00b0C", -1},
    {"Water wall tubes [\u00b0C]", Meaning::Metal, "\u00b0C", -1},
    {"T_amb_C", Meaning::Ambient, "\u00b0C", -1},
    {"Air temp (F)", Meaning::Ambient, "\u00b0F", -1},
    {"Umgebungstemperatur", Meaning::Ambient, "", -1},
    {"Raumtemp. [\u00b0C]", Meaning::Ambient, "\u00b0C", -1},
    {"Zulauf [\u00b0C]", Meaning::Supply, "\u00b0C", -1},
    {"Speisewassertemperatur", Meaning::Supply, "", -1},
    {"Supply water (\u00b0C)", Meaning::Supply, "\u00b0C", -1},
    {"Temperature (\u00b0C)", Meaning::OtherTemperature, "\u00b0C", -1},
    {"T", Meaning::OtherTemperature, "", -1},
    {"V_pumped_L", Meaning::Pumped, "L", -1},
    {"Pumped (US gal)", Meaning::Pumped, "US gal", -1},
    {"Volumen_mL", Meaning::Pumped, "mL", -1},
    {"zugef\u00fchrte Menge [l]", Meaning::Pumped, "l", -1},
    {"strokes", Meaning::Strokes, "", -1},
    {"Pump strokes", Meaning::Strokes, "", -1},
    {"Pumpenh\u00fcbe", Meaning::Strokes, "", -1},
    {"H\u00fcbe", Meaning::Strokes, "", -1},
    {"Hub", Meaning::Strokes, "", -1},
    {"remarks", Meaning::Remarks, "", -1},
    {"Bemerkung", Meaning::Remarks, "", -1},
    {"Notes", Meaning::Remarks, "", -1},
    {"No.", Meaning::Ignored, "", -1},
    {"lfd. Nr.", Meaning::Ignored, "", -1},
    {"Solldruck [bar]", Meaning::Unknown, "bar", -1},
    {"Barometer [mbar]", Meaning::Unknown, "mbar", -1},
    {"Luftdruck", Meaning::Unknown, "", -1},
    {"Flow L/min", Meaning::Unknown, "", -1},
    {"Pumpe L/min", Meaning::Unknown, "", -1},
    {"t/min", Meaning::Elapsed, "min", -1},
    {"Druck/bar", Meaning::Pressure, "bar", -1},
    {"Tube water", Meaning::Water, "", -1},
    {"Water drum shell temp", Meaning::Metal, "", -1},
    {"Wassertemperatur Rohrb\u00fcndel", Meaning::Water, "", -1},
    {"colour", Meaning::Unknown, "", -1},
    {"", Meaning::Unknown, "", -1},
};

TEST(Headings, SayWhatTheyHoldInEnglishAndGerman) {
  for (const Row& row : rows) {
    SCOPED_TRACE(row.text);
    const Heading heading = read_heading(row.text);
    EXPECT_EQ(token(heading.meaning), token(row.meaning));
    EXPECT_EQ(heading.unit ? shown_unit(*heading.unit) : "", row.unit);
    EXPECT_EQ(heading.absolute ? (*heading.absolute ? 1 : 0) : -1, row.zero);
  }
}

TEST(Headings, KeepANameWithoutItsUnit) {
  EXPECT_EQ(read_heading("Gauge (psig)").name, "Gauge");
  EXPECT_EQ(read_heading("p / bar").name, "p");
  EXPECT_EQ(read_heading("T_metal_C").name, "T_metal");
  EXPECT_EQ(read_heading("Zeit in s").name, "Zeit");
}

TEST(Headings, KeepAUnitThatTheyCannotRead) {
  EXPECT_EQ(read_heading("Pressure [bur]").unreadable_unit, "bur");
  EXPECT_EQ(read_heading("Druck [mPa]").unreadable_unit, "mPa");
  EXPECT_EQ(read_heading("Gauge (main) [bar]").unreadable_unit, "");
}

}  // namespace
}  // namespace steamworthy::trace
