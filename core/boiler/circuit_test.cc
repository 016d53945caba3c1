// Checks boiler/circuit.h on boilers small enough to be judged by eye. No
// published table; each expectation is argued beside it.
#include "boiler/circuit.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "boiler/content.h"
#include "units/makers.h"

namespace steamworthy::boiler {
namespace {

using units::level_metres;
using units::metres;
using units::millimetres;

/// A lying pipe of 0.2 m bore and 4 m, without heads.
Part header(const std::string& tag, double level) {
  Cylinder shape;
  shape.inner_diameter = metres(0.2);
  shape.wall = millimetres(10);
  shape.length = metres(4.0);
  shape.centre_level = level_metres(level);
  Part part;
  part.tag = tag;
  part.kind = PartKind::Header;
  part.shape = shape;
  return part;
}

Part tubes(const std::string& tag, Run run, double bottom, double top, const std::string& from,
           double from_level, const std::string& to, double to_level) {
  Tubes shape;
  shape.outer_diameter = millimetres(40);
  shape.wall = millimetres(4);
  shape.length = metres(3.0 * (top - bottom));
  shape.bottom_level = level_metres(bottom);
  shape.top_level = level_metres(top);
  shape.run = run;
  shape.from = from;
  shape.to = to;
  shape.from_level = level_metres(from_level);
  shape.to_level = level_metres(to_level);
  Part part;
  part.tag = tag;
  part.kind = PartKind::TubeBank;
  part.count = 10;
  part.shape = shape;
  return part;
}

Mounting fitting(const std::string& tag, MountingKind kind, const std::string& part, double level) {
  Mounting mounting;
  mounting.tag = tag;
  mounting.kind = kind;
  mounting.part = part;
  mounting.level = level_metres(level);
  return mounting;
}

PartCircuit of(const Circuit& circuit, const std::string& tag) {
  for (const PartCircuit& part : circuit.parts) {
    if (part.part == tag) return part;
  }
  throw std::runtime_error("no part " + tag);
}

using Tags = std::vector<std::string>;

/// Two headers at 1 m and 5 m with straight tubes between; drain below, vent above.
Boiler wall() {
  Boiler boiler;
  boiler.parts = {header("L", 1.0), header("U", 5.0),
                  tubes("T", Run::Straight, 1.1, 4.9, "L", 1.1, "U", 4.9)};
  boiler.mountings = {fitting("VT", MountingKind::Vent, "U", 5.5),
                      fitting("DR", MountingKind::Drain, "L", 0.5)};
  return boiler;
}

TEST(Circuit, StraightTubesBetweenHeadersVentAndDrainWholly) {
  const Circuit all = circuit(wall());
  ASSERT_TRUE(all.described);
  for (const PartCircuit& part : all.parts) {
    EXPECT_FALSE(part.traps_air()) << part.part;
    EXPECT_FALSE(part.holds_water()) << part.part;
    EXPECT_EQ(part.vents, Tags{"VT"}) << part.part;
    EXPECT_EQ(part.drains, Tags{"DR"}) << part.part;
    EXPECT_FALSE(part.fills_by_spilling) << part.part;
  }
}

TEST(Circuit, AVentBelowTheTopTrapsTheAirAboveIt) {
  Boiler boiler = wall();
  boiler.mountings[0].opening_level = level_metres(5.0);  // at the side of the header
  const Circuit all = circuit(boiler);
  const PartCircuit upper = of(all, "U");
  EXPECT_EQ(*upper.air_above, level_metres(5.0));
  // Half of the header's bore lies above its axis.
  EXPECT_NEAR(upper.trapped_air.si(), 0.5 * water_content(boiler.parts[1]).si(), 1e-12);
  EXPECT_FALSE(of(all, "T").traps_air());
}

TEST(Circuit, ADrainAboveTheBottomLeavesTheWaterBelowIt) {
  Boiler boiler = wall();
  boiler.mountings[1].opening_level = level_metres(1.0);
  const PartCircuit lower = of(circuit(boiler), "L");
  EXPECT_EQ(*lower.water_below, level_metres(1.0));
  EXPECT_NEAR(lower.held_water.si(), 0.5 * water_content(boiler.parts[0]).si(), 1e-12);
}

/// Two headers side by side at 5 m, a loop between them, vent and drain on each.
Boiler loop(Run run) {
  const bool hanging = run == Run::Hanging;
  const double hole = hanging ? 4.9 : 5.1;
  Boiler boiler;
  boiler.parts = {header("A", 5.0), header("B", 5.0),
                  tubes("E", run, hanging ? 2.0 : 5.1, hanging ? 4.9 : 8.0, "A", hole, "B", hole)};
  boiler.mountings = {
      fitting("VA", MountingKind::Vent, "A", 6.0), fitting("VB", MountingKind::Vent, "B", 6.0),
      fitting("DA", MountingKind::Drain, "A", 4.0), fitting("DB", MountingKind::Drain, "B", 4.0)};
  return boiler;
}

TEST(Circuit, AHangingLoopHoldsAllItsWaterAndIsBackFilledFirst) {
  const Boiler boiler = loop(Run::Hanging);
  const Circuit all = circuit(boiler);
  const PartCircuit elements = of(all, "E");
  EXPECT_NEAR(elements.held_water.si(), water_content(boiler.parts[2]).si(), 1e-12);
  EXPECT_NEAR(units::in_litres(elements.held_water), 70.0, 0.05);  // docs/methods/circuit.md
  EXPECT_FALSE(elements.traps_air());                              // a vent over either leg
  EXPECT_TRUE(elements.fills_by_spilling);
  ASSERT_FALSE(all.filling.empty());
  const FillStep& first = all.filling.front();
  EXPECT_EQ(first.kind, FillKind::BackFill);
  EXPECT_EQ(first.parts, (Tags{"E", "B", "A"}));
  EXPECT_EQ(first.through, Tags{"DB"});  // from the second end, the outlet
  EXPECT_EQ(first.vents, (Tags{"VB", "VA"}));
  EXPECT_NEAR(first.volume.si(), water_content(boiler).si(), 1e-12);
}

TEST(Circuit, AStandingLoopCatchesAirButDrains) {
  const Boiler boiler = loop(Run::Standing);
  const PartCircuit loops = of(circuit(boiler), "E");
  EXPECT_NEAR(loops.trapped_air.si(), water_content(boiler.parts[2]).si(), 1e-12);
  EXPECT_FALSE(loops.holds_water());
  EXPECT_FALSE(loops.fills_by_spilling);
}

TEST(Circuit, AHeaderBehindAHangingLoopWithoutADrainKeepsWhatTheLoopDammed) {
  Boiler boiler = loop(Run::Hanging);
  boiler.mountings.pop_back();  // B has no drain: its water must pass the loop
  const PartCircuit second = of(circuit(boiler), "B");
  // Down through the loop, up to the holes in A at 4.9 m: B empties to that level, its bottom.
  EXPECT_EQ(*second.water_below, level_metres(4.9));
  EXPECT_FALSE(second.holds_water());
  EXPECT_EQ(second.drains, Tags{"DA"});
}

TEST(Circuit, AHeaderBehindAHangingLoopWithoutAVentTrapsItsAir) {
  Boiler boiler = loop(Run::Hanging);
  boiler.mountings.erase(boiler.mountings.begin() + 1);  // B has no vent
  const PartCircuit second = of(circuit(boiler), "B");
  // Its air would have to go down through the loop's bottom at 2 m.
  EXPECT_EQ(*second.air_above, level_metres(2.0));
  EXPECT_NEAR(units::in_litres(second.trapped_air), 125.7, 0.05);  // docs/methods/circuit.md
  EXPECT_NEAR(second.trapped_air.si(), water_content(boiler.parts[1]).si(), 1e-12);
}

TEST(Circuit, APartThatNothingReachesIsSaidToBeSo) {
  Boiler boiler = wall();
  boiler.parts.push_back(header("X", 3.0));
  const PartCircuit lonely = of(circuit(boiler), "X");
  EXPECT_FALSE(lonely.air_above.has_value());
  EXPECT_FALSE(lonely.water_below.has_value());
  EXPECT_TRUE(lonely.vents.empty());
  EXPECT_EQ(lonely.trapped_air, water_content(boiler.parts.back()));
}

TEST(Circuit, IsNotDescribedWithoutVentsOrWithoutConnections) {
  Boiler boiler = wall();
  boiler.mountings.clear();
  EXPECT_FALSE(circuit(boiler).described);
  Boiler apart = wall();
  apart.parts.pop_back();
  EXPECT_FALSE(circuit(apart).described);
  EXPECT_TRUE(circuit(apart).parts.empty());
}

TEST(Circuit, TheStepsOfFillingAddUpToTheContent) {
  const Boiler boiler = wall();
  units::Volume sum;
  for (const FillStep& step : circuit(boiler).filling) sum += step.volume;
  EXPECT_NEAR(sum.si(), water_content(boiler).si(), 1e-12);
}

Boiler upside_down(const Boiler& boiler) {
  const auto turn = [](units::Level level) { return units::Level::from_si(10.0 - level.si()); };
  Boiler result = boiler;
  for (Part& part : result.parts) {
    if (auto* shape = std::get_if<Cylinder>(&part.shape)) {
      shape->centre_level = turn(shape->centre_level);
    } else {
      auto& t = std::get<Tubes>(part.shape);
      const units::Level bottom = turn(t.top_level);
      t.top_level = turn(t.bottom_level);
      t.bottom_level = bottom;
      if (t.run == Run::Straight) {
        std::swap(t.from, t.to);
        std::swap(t.from_level, t.to_level);
      } else {
        t.run = t.run == Run::Hanging ? Run::Standing : Run::Hanging;
      }
      t.from_level = turn(t.from_level);
      t.to_level = turn(t.to_level);
    }
  }
  for (Mounting& mounting : result.mountings) {
    mounting.level = turn(mounting.level);
    mounting.kind = mounting.kind == MountingKind::Vent ? MountingKind::Drain : MountingKind::Vent;
  }
  return result;
}

// Air rises as water falls: a boiler turned over traps as air what it held as water.
RC_GTEST_PROP(CircuitProperty, TurnedUpsideDownAirAndWaterChangePlaces, ()) {
  Boiler boiler;
  const int headers = *rc::gen::inRange(2, 6);
  for (int i = 0; i < headers; ++i) {
    const double level = 1.0 + 1.5 * i + 0.1 * *rc::gen::inRange(0, 12);
    boiler.parts.push_back(header("H" + std::to_string(i), level));
  }
  const int banks = *rc::gen::inRange(1, 6);
  for (int i = 0; i < banks; ++i) {
    const auto run = *rc::gen::element(Run::Straight, Run::Hanging, Run::Standing);
    int a = *rc::gen::inRange(0, headers);
    int b = (a + *rc::gen::inRange(1, headers)) % headers;
    if (b < a) std::swap(a, b);
    const double low = middle(boiler.parts[static_cast<std::size_t>(a)]).si();
    const double high = middle(boiler.parts[static_cast<std::size_t>(b)]).si();
    const double bottom = run == Run::Hanging ? low - 1.5 : low;
    const double top = run == Run::Standing ? high + 1.5 : high;
    boiler.parts.push_back(tubes("T" + std::to_string(i), run, bottom, top, "H" + std::to_string(a),
                                 low, "H" + std::to_string(b), high));
  }
  const int vented = *rc::gen::inRange(0, headers);
  const int drained = *rc::gen::inRange(0, headers);
  boiler.mountings = {fitting("V", MountingKind::Vent, "H" + std::to_string(vented), 15.0),
                      fitting("D", MountingKind::Drain, "H" + std::to_string(drained), -5.0)};
  const Circuit as_is = circuit(boiler);
  const Circuit turned = circuit(upside_down(boiler));
  RC_ASSERT(as_is.parts.size() == boiler.parts.size());
  for (std::size_t i = 0; i < as_is.parts.size(); ++i) {
    const double slip = 1e-9 * water_content(boiler.parts[i]).si();
    const auto& one = as_is.parts[i];
    const auto& other = turned.parts[i];
    RC_ASSERT(std::fabs((one.trapped_air - other.held_water).si()) < slip);
    RC_ASSERT(std::fabs((one.held_water - other.trapped_air).si()) < slip);
  }
}

}  // namespace
}  // namespace steamworthy::boiler
