#include "materials/material.h"

#include <gtest/gtest.h>

#include "base/error.h"
#include "materials/steels.h"
#include "units/makers.h"

namespace steamworthy::materials {
namespace {

using units::celsius;
using units::in_megapascals;
using units::megapascals;
using units::millimetres;

Material users_own(std::vector<YieldPoint> points, Trust trust = Trust::User) {
  Material material = generic_boiler_steel();
  material.name = "plate of 1961";
  material.yield = {{std::move(points), std::nullopt, {trust, "", "mill certificate"}}};
  return material;
}

// Source: EN 10216-2, Table 5 (0.2 % proof strength at temperature, walls up to 60 mm), as quoted
// second-hand; see [EN-10216-2] in docs/bibliography.bib. Whole megapascals as printed.
struct Printed {
  const char* grade;
  double at_100, at_200, at_300, at_400;
};
constexpr Printed en_10216_2_table_5[] = {{"P235GH", 198, 170, 132, 112},
                                          {"P265GH", 226, 192, 154, 134},
                                          {"16Mo3", 243, 224, 173, 156},
                                          {"13CrMo4-5", 264, 245, 192, 174},
                                          {"10CrMo9-10", 249, 234, 219, 207}};

TEST(YieldAtTemperature, AgreesWithTheTableOfTheTubeStandard) {
  for (const Printed& row : en_10216_2_table_5) {
    const auto material = steel(row.grade);
    ASSERT_TRUE(material) << row.grade;
    const double printed[] = {row.at_100, row.at_200, row.at_300, row.at_400};
    for (int i = 0; i < 4; ++i) {
      const auto answer = yield_at(*material, celsius(100.0 * (i + 1)), millimetres(5.0));
      ASSERT_TRUE(answer.value) << row.grade;
      EXPECT_DOUBLE_EQ(in_megapascals(*answer.value), printed[i]) << row.grade;
      EXPECT_EQ(answer.provenance.trust, Trust::SecondHand);
    }
  }
}

// Source: the same standard's room temperature table, seen on suppliers' pages.
TEST(YieldAtTemperature, FallsWithTheWallAtRoomTemperature) {
  const auto p265gh = steel("P265GH");
  const auto at_20 = [&](double wall_mm) {
    return in_megapascals(*yield_at(*p265gh, celsius(20), millimetres(wall_mm)).value);
  };
  EXPECT_DOUBLE_EQ(at_20(16.0), 265.0);
  EXPECT_DOUBLE_EQ(at_20(16.1), 255.0);
  EXPECT_DOUBLE_EQ(at_20(60.0), 245.0);
  EXPECT_EQ(yield_at(*p265gh, celsius(20), millimetres(60.1)).why_not, NoYield::WallTooThick);
}

TEST(YieldAtTemperature, TakesTheWeakestWhenTheWallIsNotKnown) {
  EXPECT_DOUBLE_EQ(in_megapascals(*yield_at(*steel("P265GH"), celsius(20)).value), 245.0);
}

// Source: worked example of docs/methods/materials.md: P235GH, wall 3.5 mm, at 40 °C lies a
// quarter of the way from 235 MPa at 20 °C to 198 MPa at 100 °C.
TEST(YieldAtTemperature, RunsStraightBetweenStatedPoints) {
  const auto answer = yield_at(*steel("P235GH"), celsius(40), millimetres(3.5));
  EXPECT_NEAR(in_megapascals(*answer.value), 235.0 - 37.0 / 4.0, 1e-9);
}

TEST(YieldAtTemperature, StaysOnTheSafeSideInTheColdAndTellsNothingBeyondTheTable) {
  const auto p235gh = *steel("P235GH");
  EXPECT_DOUBLE_EQ(in_megapascals(*yield_at(p235gh, celsius(5), millimetres(4)).value), 235.0);
  EXPECT_EQ(yield_at(p235gh, celsius(-1), millimetres(4)).why_not, NoYield::OutsideStated);
  EXPECT_EQ(yield_at(p235gh, celsius(451), millimetres(4)).why_not, NoYield::OutsideStated);
  EXPECT_TRUE(yield_at(p235gh, celsius(450), millimetres(4)).value);
}

TEST(YieldAtTemperature, OnePointHoldsForRoomTemperatureOnly) {
  const auto plate = *steel("SA-516-70");
  EXPECT_DOUBLE_EQ(in_megapascals(*yield_at(plate, celsius(35)).value),
                   260.0);  // [ASTM-A516]: 260 MPa
  EXPECT_EQ(yield_at(plate, celsius(35.5)).why_not, NoYield::OutsideStated);
}

TEST(YieldAtTemperature, NeverReassuresFromMemory) {
  const auto answer = yield_at(*steel("SA-285-C"), celsius(20));
  EXPECT_FALSE(answer.value);
  EXPECT_EQ(answer.why_not, NoYield::FromMemory);
  EXPECT_FALSE(may_bear_strength(answer.provenance));
}

TEST(YieldAtTemperature, TellsNothingWhereNothingIsStated) {
  EXPECT_EQ(yield_at(generic_boiler_steel(), celsius(20)).why_not, NoYield::NoneStated);
}

TEST(YieldAtTemperature, TakesTheUsersOwnValues) {
  const auto answer = yield_at(
      users_own({{celsius(20), megapascals(220)}, {celsius(50), megapascals(205)}}), celsius(35));
  EXPECT_NEAR(in_megapascals(*answer.value), 212.5, 1e-9);
  EXPECT_EQ(answer.provenance.trust, Trust::User);
  EXPECT_EQ(answer.provenance.remark, "mill certificate");
}

TEST(YieldAtTemperature, RefusesPointsOutOfOrder) {
  try {
    yield_at(users_own({{celsius(50), megapascals(205)}, {celsius(20), megapascals(220)}}),
             celsius(30));
    FAIL();
  } catch (const OutOfRange& error) {
    EXPECT_EQ(error.code(), "materials.yield_points");
  }
  EXPECT_THROW(yield_at(users_own({{celsius(20), megapascals(0)}}), celsius(20)), OutOfRange);
}

TEST(Steels, AreFoundHoweverTheNameIsWritten) {
  for (const char* written :
       {"SA-516-70", "sa516 gr 70", "SA 516 Gr. 70", "A516-70", "SA-516 Grade 70"}) {
    const auto found = steel(written);
    ASSERT_TRUE(found) << written;
    EXPECT_EQ(found->name, "SA-516-70");
  }
  EXPECT_EQ(steel("13 crmo 4-5")->name, "13CrMo4-5");
  EXPECT_EQ(steel("1.0345")->name, "P235GH");
  EXPECT_FALSE(steel("P266GH"));
  EXPECT_FALSE(steel(""));
}

TEST(Steels, EveryNameFindsItselfAndNoNameStandsForTwo) {
  const auto names = steel_names();
  EXPECT_GT(names.size(), 25u);
  for (const auto& name : names) {
    ASSERT_TRUE(steel(name)) << name;
    EXPECT_EQ(steel(name)->name, name);
    const Material material = *steel(name);
    for (const auto& other : material.other_names) EXPECT_EQ(steel(other)->name, name) << other;
  }
}

TEST(Steels, NamesASourceForEveryValueThatIsNotFromMemory) {
  for (const auto& name : steel_names()) {
    const Material material = *steel(name);
    for (const Provenance& p :
         {material.young.provenance, material.poisson.provenance, material.expansion.provenance,
          material.density.provenance, material.specific_heat.provenance}) {
      EXPECT_EQ(p.source.empty(), p.trust == Trust::Remembered) << name;
    }
    for (const auto& curve : material.yield) {
      EXPECT_EQ(curve.provenance.source.empty(), curve.provenance.trust == Trust::Remembered)
          << name;
    }
  }
}

// Limits of nature rather than a table: a thermodynamically possible solid, a metal's density.
TEST(Steels, AreSteels) {
  for (const auto& name : steel_names()) {
    const Material material = *steel(name);
    EXPECT_GT(material.poisson.value, 0.2) << name;
    EXPECT_LT(material.poisson.value, 0.5) << name;
    EXPECT_GT(material.density.value.si(), 7000.0) << name;
    EXPECT_LT(material.density.value.si(), 8100.0) << name;
    for (const auto& curve : material.yield) {
      for (std::size_t i = 1; i < curve.points.size(); ++i) {
        EXPECT_LT(curve.points[i].yield, curve.points[i - 1].yield)
            << name << " does not weaken as it warms";
      }
    }
  }
}

TEST(GenericBoilerSteel, KnowsHowItStretchesButNotWhatItBears) {
  const Material material = generic_boiler_steel();
  EXPECT_DOUBLE_EQ(material.elasticity().young.si(), 200e9);
  EXPECT_DOUBLE_EQ(material.elasticity().poisson, 0.3);
  EXPECT_DOUBLE_EQ(material.expansion.value.si(), 11.5e-6);
  EXPECT_TRUE(material.yield.empty());
  EXPECT_TRUE(steel("Boiler Steel"));
}

}  // namespace
}  // namespace steamworthy::materials
