// Checks water_filled.h against an independent Python model of ours over python3-iapws: the
// two-drum example boiler, 25 °C, its gauge at 9.40 m, 45 bar. The model's own volumes and
// growths are taken as given, so that this tests the equation of state alone.
#include "hold/water_filled.h"

#include <gtest/gtest.h>

#include "base/error.h"
#include "units/makers.h"

namespace steamworthy::hold {
namespace {

using units::celsius;

struct Row {
  double litres, ml_per_bar, level_m;
};
constexpr Row rows[] = {
    {8099.418560036184, 103.01058585922935, 8.5},                // steam drum
    {511.32692929521374, 13.819858336101596, 8.5},               // steam drum heads
    {4678.2241602769, 54.21668132072324, 2.6},                   // mud drum
    {224.4602501142957, 5.578244996291843, 2.6},                 // mud drum heads
    {131.9710565814627, 0.8468518351946706, 1.2},                // front wall lower header
    {1.7147072698883106, 0.025728821697619683, 1.2},             // front wall lower header heads
    {131.9710565814627, 0.8468518351946706, 1.2},                // rear wall lower header
    {1.7147072698883106, 0.025728821697619683, 1.2},             // rear wall lower header heads
    {340.925229502112, 2.1877005742528985, 1.35},                // side wall lower headers
    {3.429414539776621, 0.051457643395239366, 1.35},             // side wall lower headers heads
    {340.925229502112, 2.1877005742528985, 7.35},                // side wall upper headers
    {3.429414539776621, 0.051457643395239366, 7.35},             // side wall upper headers heads
    {252.9445251144702, 1.6231326841231182, 6.85},               // superheater headers
    {3.429414539776621, 0.051457643395239366, 6.85},             // superheater headers heads
    {36.47164761102283, 0.19678766418290175, 4.9},               // economiser inlet header
    {0.7046119698185105, 0.009247893091784448, 4.9},             // economiser inlet header heads
    {36.47164761102283, 0.19678766418290175, 8.9},               // economiser outlet header
    {0.7046119698185105, 0.009247893091784448, 8.9},             // economiser outlet header heads
    {5858.202214062925, 39.86174860093217, 5.4750000000000005},  // convection bank
    {1070.2641192969277, 7.9708538609497515, 4.75},              // front wall tubes
    {1043.1688251375117, 7.76906009231811, 4.75},                // rear wall tubes
    {2107.626809971707, 15.696672431418222, 4.35},               // side wall tubes
    {154.820007605876, 1.0368776444890064, 7.825},               // side wall risers
    {716.0860811856472, 4.517436029365326, 4.6},                 // downcomers
    {257.8619250066502, 1.1457791270699906, 4.975},              // superheater U-elements
    {81.01608564275003, 0.43341918307403765, 7.9875},            // steam offtakes
    {769.0618815987813, 3.4172359930157614, 6.9},                // economiser coils
    {27.936581256120697, 0.1494548907151854, 8.75},              // economiser link pipes
};

FilledBoiler example() {
  FilledBoiler boiler;
  for (const Row& row : rows) {
    boiler.pieces.push_back({units::litres(row.litres), units::millilitres_per_bar(row.ml_per_bar),
                             units::level_metres(row.level_m)});
  }
  boiler.gauge = units::level_metres(9.40);
  boiler.steel_expansion = units::per_kelvin(11.5e-6);
  return boiler;
}

constexpr auto vented = units::standard_atmosphere;
constexpr auto at_45_bar = units::pascals_absolute(101325.0 + 45e5);
FilledState at(double celsius_value) {
  return {at_45_bar, celsius(celsius_value), celsius(celsius_value)};
}

FilledBoiler with_air(double at_vent_l) {
  FilledBoiler boiler = example();
  boiler.air = TrappedAir{units::litres(at_vent_l), celsius(25), units::level_metres(9.1)};
  return boiler;
}

TEST(WaterFilled, HoldsTheReferenceMass) {
  EXPECT_NEAR(water_mass(example(), {vented, celsius(25), celsius(25)}).si(), 26812.057458271818,
              0.3);
}

TEST(WaterFilled, TakesTheReferenceLitresTo45Bar) {
  const auto litres = [](const FilledBoiler& b) {
    return units::in_litres(water_to_pump(b, vented, at_45_bar, celsius(25), celsius(25)));
  };
  EXPECT_NEAR(litres(example()), 66.43366609794624, 5e-5 * 66);
  EXPECT_NEAR(litres(with_air(5)), 71.18169904200074, 5e-5 * 71);
  EXPECT_NEAR(litres(with_air(20)), 85.42579787417156, 5e-5 * 85);
  EXPECT_NEAR(litres(with_air(50)), 113.91399553851319, 5e-5 * 114);
}

TEST(WaterFilled, ChangesPressureWithTemperatureAsTheReference) {
  const double table[][2] = {{10, 1.1310247769369743}, {15, 2.2308560160449704},
                             {20, 3.2398736862260846}, {25, 4.17046188236773},
                             {30, 5.031830397907645},  {40, 6.573388676759787},
                             {50, 7.90487469296949}};
  for (const auto& [t, bar_per_k] : table) {
    EXPECT_NEAR(units::in_bars_per_kelvin(pressure_per_kelvin(example(), at(t))), bar_per_k, 1e-3)
        << t;
  }
  EXPECT_NEAR(units::in_bars_per_kelvin(pressure_per_kelvin(example(), at(25), Warming::WaterOnly)),
              4.80213753121905, 1e-3);
  EXPECT_NEAR(units::in_bars_per_kelvin(pressure_per_kelvin(with_air(20), at(25))),
              4.14524961394677, 1e-3);
}

TEST(WaterFilled, IsAsStiffAsTheReference) {
  EXPECT_NEAR(units::in_millilitres_per_bar(volume_per_pressure(example(), at(25))),
              1468.461706406898, 0.05);
  EXPECT_NEAR(units::in_millilitres_per_kelvin(volume_per_kelvin(example(), at(25))),
              6124.163572286641, 1.0);
  EXPECT_NEAR(units::in_celsius(*temperature_of_no_effect(at_45_bar, units::per_kelvin(11.5e-6))),
              5.309675995887801, 1e-3);
  EXPECT_NEAR(heat_of_compression(vented, at_45_bar, celsius(25)).si(), 0.08441582621746452, 1e-6);
}

TEST(WaterFilled, FindsThePressureThatAMassStandsAt) {
  const auto mass = water_mass(example(), at(25));
  EXPECT_NEAR(pressure_at_mass(example(), mass, celsius(25), celsius(25)).si(), at_45_bar.si(),
              0.1);
  const auto pumped = water_to_pump(example(), vented, at_45_bar, celsius(25), celsius(15));
  EXPECT_NEAR(pressure_after_pumping(example(), vented, pumped, celsius(25), celsius(15)).si(),
              at_45_bar.si(), 0.1);
}

TEST(WaterFilled, RefusesWhatCannotBe) {
  EXPECT_THROW(water_mass({}, at(25)), OutOfRange);
  EXPECT_THROW(pressure_at_mass(example(), units::kilograms(1.0), celsius(25), celsius(25)),
               OutOfRange);
}

// A closed steel vessel of 10 m3, D/t 20, E 207 GPa: bar per kelvin by handbook water properties
// (Kell's equation), as in the trade table; its own figures carry two decimals and Kell's
// compressibility is up to 0.4 % above the industrial formulation's.
TEST(WaterFilled, ClosedVesselOneDegree) {
  FilledBoiler vessel;
  vessel.pieces = {{units::cubic_metres(10), units::VolumePerPressure::from_si(10 * 0.918e-10),
                    units::level_metres(0)}};
  vessel.steel_expansion = units::per_kelvin(1.15e-5);
  const double table[][2] = {{5, -0.32}, {10, 0.94}, {15, 2.08},
                             {20, 3.13}, {30, 4.98}, {50, 7.93}};
  for (const auto& [t, bar_per_k] : table) {
    const FilledState state{units::pascals_absolute(101325.0 + 6e4), celsius(t), celsius(t)};
    EXPECT_NEAR(units::in_bars_per_kelvin(pressure_per_kelvin(vessel, state)), bar_per_k, 0.05)
        << t;
  }
  EXPECT_NEAR(
      units::in_litres(water_to_pump(vessel, vented, units::pascals_absolute(101325.0 + 62e5),
                                     celsius(20), celsius(20))),
      34.1, 0.2);
}

}  // namespace
}  // namespace steamworthy::hold
