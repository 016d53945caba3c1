// The watertube example against an independent model of the same invented plant.
//
// Source: tests/published/reference_boiler_levels.csv and reference_boiler_parts.csv (see their
// heads), and the totals below, printed by the same model: water content at 20 °C, growth with
// E 200 GPa and nu 0.3, steel at 7850 kg/m^3.
#include <gtest/gtest.h>

#include <sstream>

#include "boiler/circuit.h"
#include "boiler/content.h"
#include "units/makers.h"
#include "wire/description.h"
#include "wire/source_file_test.h"

namespace steamworthy::wire {
namespace {

const boiler::Boiler& watertube() {
  static const boiler::Boiler boiler =
      read_boiler_toml(source_file("examples/watertube.toml"), "watertube.toml").boiler.value();
  return boiler;
}

constexpr double volume_tolerance = 1e-6;  // relative, asked of the program

TEST(ReferenceBoiler, HoldsWhatTheModelSays) {
  EXPECT_NEAR(water_content(watertube()).si() / 26.8862817050899, 1.0, volume_tolerance);
}

TEST(ReferenceBoiler, HoldsBelowEachLevelWhatTheModelSays) {
  std::istringstream table(source_file("tests/published/reference_boiler_levels.csv"));
  int rows = 0;
  for (std::string line; std::getline(table, line);) {
    if (line.empty() || line[0] == '#' || line[0] == 'l') continue;
    const std::size_t comma = line.find(',');
    const double level = std::stod(line.substr(0, comma));
    const double litres = std::stod(line.substr(comma + 1));
    const double ours = units::in_litres(*volume_below(watertube(), units::level_metres(level)));
    EXPECT_NEAR(ours, litres, volume_tolerance * 26886.3) << "at " << level << " m";
    ++rows;
  }
  EXPECT_EQ(rows, 20);
}

TEST(ReferenceBoiler, GrowsAndWeighsWhatTheModelSays) {
  // The model integrates its heads with 20001 points: nine digits.
  EXPECT_NEAR(units::in_millilitres_per_bar(growth(watertube()).value) / 266.9340475568422, 1.0,
              1e-8);
  EXPECT_NEAR(metal_mass(watertube())->si() / 57283.7194473172, 1.0, 1e-9);
  // 3 alpha V with alpha 11.5e-6 /K.
  EXPECT_NEAR(growth_per_kelvin(watertube())->si() / (3.0 * 11.5e-6 * 26.8862817050899), 1.0, 1e-9);
}

TEST(ReferenceBoiler, EveryPartIsOfAKnownMetal) {
  for (const boiler::PartGrowth& part : growth(watertube()).parts) {
    EXPECT_TRUE(part.metal_known) << part.part;
  }
}

// Argued from the drawing: only the hanging superheater elements hold water when all drains are
// open, and nothing traps air that has a vent above it.
TEST(ReferenceBoiler, OnlyItsHangingSuperheaterHoldsWater) {
  const boiler::Circuit circuit = boiler::circuit(watertube());
  ASSERT_TRUE(circuit.described);
  for (const boiler::PartCircuit& part : circuit.parts) {
    EXPECT_EQ(part.holds_water(), part.part == "SE") << part.part;
    EXPECT_EQ(part.fills_by_spilling, part.part == "SE") << part.part;
    EXPECT_FALSE(part.traps_air()) << part.part;
  }
  ASSERT_EQ(circuit.filling.size(), 3U);
  EXPECT_EQ(circuit.filling[0].kind, boiler::FillKind::BackFill);
  EXPECT_EQ(circuit.filling[0].through, std::vector<std::string>{"BD-7"});
  EXPECT_EQ(circuit.filling[2].vents, (std::vector<std::string>{"VT-1", "VT-2"}));
  units::Volume sum;
  for (const boiler::FillStep& step : circuit.filling) sum += step.volume;
  EXPECT_NEAR(sum.si() / water_content(watertube()).si(), 1.0, 1e-12);
}

}  // namespace
}  // namespace steamworthy::wire
