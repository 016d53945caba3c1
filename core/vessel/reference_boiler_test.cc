// Checks this room against an independent Python model of ours: the parts of the reference boiler
// (an invented plant), tests/published/reference_boiler_parts.csv and reference_boiler_levels.csv.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "units/makers.h"
#include "vessel/growth.h"
#include "vessel/volume.h"

namespace steamworthy::vessel {
namespace {

struct Row {
  std::string name;
  Body body;
  double volume_l;
  double growth_ml_per_bar;
};

std::vector<std::vector<std::string>> table(const std::string& name) {
  std::ifstream file(STEAMWORTHY_SOURCE_DIR "/tests/published/" + name);
  std::vector<std::vector<std::string>> rows;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::vector<std::string> cells;
    std::stringstream text(line);
    for (std::string cell; std::getline(text, cell, ',');) cells.push_back(cell);
    rows.push_back(cells);
  }
  if (!rows.empty()) rows.erase(rows.begin());  // the header
  return rows;
}

std::vector<Row> parts() {
  std::vector<Row> rows;
  const auto metres = [](const std::string& cell) { return units::metres(std::stod(cell)); };
  const auto level = [](const std::string& cell) { return units::level_metres(std::stod(cell)); };
  for (const auto& c : table("reference_boiler_parts.csv")) {
    const int n = std::stoi(c[2]);
    Body body;
    if (c[1] == "hcyl") {
      body = {Cylinder{metres(c[3]), metres(c[4]), metres(c[5]), level(c[6]), 0.0, Ends::Closed},
              n};
    } else if (c[1] == "ellhead") {
      body = {Head{Ellipsoidal{std::stod(c[9])}, metres(c[3]), metres(c[4]), level(c[6]), 0.0}, n};
    } else {
      const units::Length wall = metres(c[4]);
      body = {TubeBank{n, metres(c[3]) + 2.0 * wall, wall, metres(c[5]), level(c[7]), level(c[8]),
                       Ends::Closed},
              1};
    }
    rows.push_back({c[0], body, std::stod(c[10]), std::stod(c[11])});
  }
  return rows;
}

const materials::Elasticity steel{units::Modulus::from_si(200e9), 0.3};

TEST(ReferenceBoiler, EachPartHoldsAndGrowsAsTheIndependentModelSays) {
  const auto rows = parts();
  ASSERT_EQ(rows.size(), 28u);
  for (const Row& row : rows) {
    EXPECT_NEAR(units::in_litres(volume(row.body)) / row.volume_l, 1.0, 1e-12) << row.name;
    // the heads' factor was integrated with 20001 points there: 1e-8
    EXPECT_NEAR(units::in_millilitres_per_bar(*growth_per_pressure(row.body, steel).value) /
                    row.growth_ml_per_bar,
                1.0, 1e-8)
        << row.name;
  }
}

TEST(ReferenceBoiler, HoldsTheLitresBelowTwentyLevels) {
  const auto rows = parts();
  const auto levels = table("reference_boiler_levels.csv");
  ASSERT_EQ(levels.size(), 20u);
  for (const auto& cells : levels) {
    units::Volume sum;
    for (const Row& row : rows)
      sum += volume_below(row.body, units::level_metres(std::stod(cells[0])));
    const double expected = std::stod(cells[1]);
    EXPECT_NEAR(units::in_litres(sum), expected, 1e-9 * std::max(expected, 1.0)) << cells[0];
  }
}

// Source: the same model, printed totals: 26886.2817050899 L, 266.9340475568422 mL/bar,
// 57283.7194473172 kg of steel.
TEST(ReferenceBoiler, HasTheTotalsOfTheIndependentModel) {
  units::Volume water;
  units::VolumePerPressure growth;
  units::Mass metal;
  for (const Row& row : parts()) {
    water += volume(row.body);
    growth += *growth_per_pressure(row.body, steel).value;
    metal += *metal_mass(row.body, units::kilograms_per_cubic_metre(7850.0));
  }
  EXPECT_NEAR(units::in_litres(water), 26886.2817050899, 1e-6);
  EXPECT_NEAR(units::in_millilitres_per_bar(growth), 266.9340475568422, 1e-5);
  EXPECT_NEAR(units::in_kilograms(metal), 57283.7194473172, 1e-6);
}

}  // namespace
}  // namespace steamworthy::vessel
