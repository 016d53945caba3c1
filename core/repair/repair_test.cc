// Checks repair/drop.h and repair/plan.h on the example watertube boiler. Litres are worked by hand
// from its description: whole tubes and cylinders, circle segments, halves of spheroids.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "base/error.h"
#include "boiler/content.h"
#include "boiler/places.h"
#include "repair/plan.h"
#include "testing/examples_test.h"
#include "units/makers.h"

namespace steamworthy::repair {
namespace {

using units::hours;
using units::in_litres;
using units::level_metres;

constexpr double pi = 3.14159265358979323846;

const boiler::Boiler& watertube() {
  static const boiler::Boiler boiler = testing::example_boiler("watertube");
  return boiler;
}

/// Litres of `count` tubes.
double tubes(int count, double bore, double length) {
  return 1000.0 * count * pi / 4.0 * bore * bore * length;
}
/// Litres of a lying cylinder of bore d and length l below the depth h, with two 2:1 heads: circle
/// segment times length, and a sphere's cap halved along the axis.
double vessel(double d, double l, double h) {
  const double r = 0.5 * d;
  const double segment =
      r * r * std::acos((r - h) / r) - (r - h) * std::sqrt(std::max(0.0, 2.0 * r * h - h * h));
  return 1000.0 * (segment * l + 0.5 * pi * h * h * (3.0 * r - h) / 3.0);
}

Leak leak(const std::string& number, const std::string& place, facts::LeakKind at) {
  Leak one;
  one.number = number;
  one.place = place;
  one.at = at;
  return one;
}
Leak remade(const std::string& number, const std::string& place) {
  Leak one = leak(number, place, facts::LeakKind::Gasket);
  one.chosen = Cure::RemakeJoint;
  return one;
}

Plan plan_of(std::vector<Leak> leaks) {
  PlanRequest request;
  request.leaks = std::move(leaks);
  return plan(watertube(), request);
}

const LeakPlan& of(const Plan& plan, const std::string& number) {
  for (const LeakPlan& one : plan.leaks) {
    if (one.leak.number == number) return one;
  }
  throw std::runtime_error("no leak " + number);
}

const working::Figure& figure(const Plan& plan, const std::string& key) {
  for (const working::Figure& one : plan.figures) {
    if (one.key == key) return one;
  }
  throw std::runtime_error("no figure " + key);
}

bool has(const std::vector<working::Message>& messages, const std::string& key) {
  return std::any_of(messages.begin(), messages.end(),
                     [&](const working::Message& message) { return message.key == key; });
}

using Tags = std::vector<std::string>;

TEST(Drop, AHandholeOfTheFrontHeaderEmptiesTheWallsAndLeavesTheMudDrumFull) {
  const Plan plan = plan_of({remade("1", "FH-A01")});
  EXPECT_EQ(plan.drop.open, (Tags{"BD-2"}));
  // The header (bore 187.1 mm, axis 1.2 m) must be empty: its plate reaches down to 1.1425 m, less
  // 0.1 m. Over the nipples at 1.29 m the other lower headers keep what lies below; the downcomers
  // open into the steam drum at 8.0 m, 0.125 m above its bottom, and what lies below stays there.
  const double d = 0.1871;
  const double front = vessel(d, 4.8, d);
  const double rear = vessel(d, 4.8, d) - vessel(d, 4.8, 1.29 - (1.2 - d / 2));
  const double sides = 2.0 * (vessel(d, 6.2, d) - vessel(d, 6.2, 1.29 - (1.35 - d / 2)));
  const double upper = 2.0 * vessel(d, 6.2, d);
  const double walls = tubes(56, 0.0555, 7.9) + tubes(56, 0.0555, 7.7) +
                       2.0 * tubes(72, 0.0555, 6.05) + 2.0 * tubes(6, 0.0983, 1.7) +
                       2.0 * tubes(3, 0.1433, 7.4);
  const double drum = vessel(1.25, 6.6, 1.25) - vessel(1.25, 6.6, 0.125);
  // Economizer: outlet header and link pipes run back into the drum; the coils, spread over 4.9 to
  // 8.9 m, lose what stands above the bottom of the outlet header's bore, 8.9 - 0.1391/2 m. The
  // links, 8.6 to 8.9 m, empty.
  const double b = 0.1391;
  const double economizer =
      vessel(b, 2.4, b) + tubes(2, 0.0943, 2.0) + tubes(32, 0.030, 34.0) * (0.5 * b) / (8.9 - 4.9);
  // The convection bank, spread over 2.9 to 8.05 m, loses what stands above 8.0 m, no more.
  const double bank = tubes(720, 0.0438, 5.4) * 0.05 / (8.05 - 2.9);
  EXPECT_NEAR(in_litres(plan.drop.out),
              front + rear + sides + upper + walls + drum + economizer + bank, 1.0);
  for (const PartWater& part : plan.drop.left) {
    if (part.part != "MD") continue;
    EXPECT_NEAR(part.held.si(), water_content(boiler::part(watertube(), "MD")).si(), 1e-9);
  }
}

TEST(Drop, AnEconomizerCapEmptiesTheEconomizerAndSkimsTheDrum) {
  const Plan plan = plan_of({remade("1", "EI-A01")});
  EXPECT_EQ(plan.drop.open, (Tags{"BD-8"}));
  const double b = 0.1391;
  const double sill = 8.9 - 0.5 * b;  // bottom of the outlet header, where the links come in
  const double drum = vessel(1.25, 6.6, 1.25) - vessel(1.25, 6.6, sill - 7.875);
  const double links = tubes(2, 0.0943, 2.0) * (8.9 - sill) / 0.3;
  EXPECT_NEAR(in_litres(plan.drop.out),
              2.0 * vessel(b, 2.4, b) + tubes(32, 0.030, 34.0) + drum + links, 3.0);
}

TEST(Drop, AnElementOfTheHangingSuperheaterDoesNotDrain) {
  const Plan plan = plan_of({leak("1", "SE.bends", facts::LeakKind::Crack)});
  ASSERT_EQ(plan.drop.stuck.size(), 1u);
  EXPECT_EQ(plan.drop.stuck[0].part, "SE");
  // Its holes are at the bottom of the headers' bores, 6.85 m - 0.1871 m / 2.
  EXPECT_NEAR(plan.drop.stuck[0].stays_below->si(), 6.85 - 0.1871 / 2, 1e-9);
  EXPECT_TRUE(has(plan.notes, "repair.does_not_drain_so_far"));
  EXPECT_FALSE(of(plan, "1").comes_free);
  EXPECT_TRUE(has(of(plan, "1").notes, "repair.stop_and_report"));
  EXPECT_TRUE(has(of(plan, "1").notes, "repair.never_put_up_with"));
}

TEST(Drop, NothingIsDroppedForWhatMayBeHardenedUp) {
  const Plan plan = plan_of({leak("1", "FH-A01", facts::LeakKind::Gasket)});
  EXPECT_EQ(of(plan, "1").cure, Cure::HardenUp);
  EXPECT_FALSE(of(plan, "1").needs_drop);
  EXPECT_EQ(plan.drop.out.si(), 0.0);
  EXPECT_TRUE(plan.drop.open.empty());
  EXPECT_TRUE(of(plan, "1").may_be_watched_hot);
}

TEST(Plan, OneDropServesAllAndTellsWhatComesFreeBesides) {
  const Plan plan = plan_of({remade("low", "FH-A03"), remade("high", "LU-A02"),
                             leak("free", "SD-M1", facts::LeakKind::Gasket),
                             leak("apart", "MD-M1", facts::LeakKind::Gasket)});
  // The falling water frees the upper header before the lower one; both need it, the manholes not.
  ASSERT_EQ(plan.leaks.size(), 4u);
  EXPECT_EQ(plan.leaks[2].leak.number, "high");
  EXPECT_EQ(plan.leaks[3].leak.number, "low");
  // The steam drum's manhole, 8.5 m less 0.2 and 0.1, lies above the 8.0 m to which the drum falls.
  EXPECT_TRUE(of(plan, "free").comes_free);
  EXPECT_TRUE(has(of(plan, "free").notes, "repair.comes_free_anyhow"));
  // The mud drum joins the walls only by way of the steam drum, and stays full.
  EXPECT_FALSE(of(plan, "apart").comes_free);
  // The drop for the lower one alone serves the higher one too; not the other way round.
  EXPECT_EQ(of(plan, "low").above, (Tags{"high", "free"}));
  EXPECT_EQ(of(plan, "high").above, (Tags{"free"}));
  EXPECT_NEAR(plan.drop.out.si(), of(plan, "low").out_alone.si(), 1e-9);
}

TEST(Plan, SpecialPlugsFollowTheMakersBook) {
  const Plan plan = plan_of({leak("1", "SI-A01", facts::LeakKind::Plug)});
  EXPECT_EQ(of(plan, "1").cures, (std::vector<Cure>{Cure::MakersBook}));
  EXPECT_TRUE(has(of(plan, "1").notes, "repair.makers_book_only"));
  EXPECT_FALSE(of(plan, "1").may_be_watched_hot);
  EXPECT_EQ(plan.drop.open, (Tags{"BD-6"}));
}

TEST(Plan, AValveThatPassesInIsNoMatterOfDropping) {
  Leak passing = leak("1", "FV-1.far-end", facts::LeakKind::ValveEnd);
  passing.passes = facts::Passing::In;
  const Plan plan = plan_of({passing});
  EXPECT_EQ(of(plan, "1").cure, Cure::FindWhatPassesIn);
  EXPECT_FALSE(of(plan, "1").needs_drop);
  EXPECT_TRUE(has(of(plan, "1").notes, "repair.passes_in"));
}

TEST(Plan, CountsMinutesAndHours) {
  PlanRequest request;
  request.leaks = {remade("1", "FH-A01")};
  request.drain_rate = units::litres_per_minute(100);
  request.hours = {hours(1), hours(2), hours(3), hours(4), hours(1.5)};
  const Plan made = plan(watertube(), request);
  const double litres = in_litres(made.drop.out);
  EXPECT_NEAR(figure(made, "repair.minutes_out").value->si, litres / 100 * 60, 1e-6);
  EXPECT_NEAR(figure(made, "repair.minutes_back").value->si, litres / 250 * 60, 1e-6);
  const double cycle = 10 * 3600 + litres * 60 * (1.0 / 100 + 1.0 / 250);
  EXPECT_NEAR(figure(made, "repair.drop_now").value->si, cycle, 1e-6);
  EXPECT_NEAR(figure(made, "repair.look_on").value->si, cycle + 1.5 * 3600, 1e-6);
  EXPECT_NEAR(figure(made, "repair.break_even").value->si, 1.5 * 3600 / cycle, 1e-12);
  // One drain of 40 mm, 8.175 m below the highest water at 9.125 m: A sqrt(2 g h) = 15.9 L/s.
  EXPECT_NEAR(figure(made, "repair.soonest_out").value->si, litres / 15.912, 0.01 * litres / 15.9);
}

TEST(Plan, DoesNotGuessHoursThatNobodyStated) {
  PlanRequest request;
  request.leaks = {remade("1", "FH-A01")};
  request.hours.let_down = hours(1);
  const Plan made = plan(watertube(), request);
  EXPECT_FALSE(figure(made, "repair.minutes_out").is_known());
  EXPECT_FALSE(figure(made, "repair.drop_now").is_known());
  EXPECT_EQ(figure(made, "repair.drop_now").cannot_tell.key, "repair.hours_not_stated");
}

TEST(Plan, TellsAllFaultsAtOnce) {
  PlanRequest request;
  request.leaks = {remade("1", "NO-1"), remade("1", "FH-A01"), remade("2", "SI-A01")};
  request.drain_rate = units::litres_per_minute(0);
  try {
    plan(watertube(), request);
    FAIL() << "accepted";
  } catch (const BadInput& error) {
    Tags codes;
    for (const Problem& problem : error.problems()) codes.push_back(problem.code);
    EXPECT_EQ(codes, (Tags{"repair.unknown_place", "repair.same_number", "repair.wrong_cure",
                           "repair.bad_value"}));
  }
}

TEST(MayDo, BreakingWantsZeroAirAndWaterBelowAndNothingWaivesIt) {
  Work work;
  work.closure = boiler::ClosureKind::Handhole;
  work.free_below = level_metres(1.0);
  SiteRules site;
  site.tighten_up_to[boiler::ClosureKind::Handhole] = units::bars_gauge(50);
  site.strike_up_to[boiler::ClosureKind::Handhole] = units::bars_gauge(50);
  const Now good{units::bars_gauge(0), true, level_metres(0.9)};
  EXPECT_TRUE(in_the_way(Action::Break, work, good, site).empty());
  for (const auto& [now, key] :
       {std::pair{Now{units::bars_gauge(0.1), true, level_metres(0.9)}, "repair.gauge_not_at_zero"},
        {Now{std::nullopt, true, level_metres(0.9)}, "repair.gauge_not_read"},
        {Now{units::bars_gauge(0), std::nullopt, level_metres(0.9)}, "repair.no_air_at_vent"},
        {Now{units::bars_gauge(0), false, level_metres(0.9)}, "repair.no_air_at_vent"},
        {Now{units::bars_gauge(0), true, level_metres(1.01)}, "repair.water_above"},
        {Now{units::bars_gauge(0), true, std::nullopt}, "repair.water_not_seen"}}) {
    const auto ways = in_the_way(Action::Break, work, now, site);
    ASSERT_EQ(ways.size(), 1u) << key;
    EXPECT_EQ(ways[0].key, key);
  }
}

TEST(MayDo, AWrenchWantsPressureOffUnlessTheSiteNamesOne) {
  Work work;
  work.closure = boiler::ClosureKind::Handhole;
  const Now under{units::bars_gauge(4), false, std::nullopt};
  for (const Action action : {Action::Tighten, Action::Strike}) {
    EXPECT_TRUE(has(in_the_way(action, work, under, {}), "repair.pressure_off_first"));
    EXPECT_TRUE(in_the_way(action, work, {units::bars_gauge(0), {}, {}}, {}).empty());
    EXPECT_TRUE(has(in_the_way(action, work, {}, {}), "repair.gauge_not_read"));
    SiteRules site;
    (action == Action::Tighten ? site.tighten_up_to
                               : site.strike_up_to)[boiler::ClosureKind::Handhole] =
        units::bars_gauge(5);
    EXPECT_TRUE(in_the_way(action, work, under, site).empty());
    // The rule for the one does not serve the other, nor another kind of closure.
    const Action other = action == Action::Tighten ? Action::Strike : Action::Tighten;
    EXPECT_FALSE(in_the_way(other, work, under, site).empty());
    Work manhole = work;
    manhole.closure = boiler::ClosureKind::Manhole;
    EXPECT_FALSE(in_the_way(action, manhole, under, site).empty());
    EXPECT_TRUE(has(in_the_way(action, work, {units::bars_gauge(6), {}, {}}, site),
                    "repair.above_the_sites_pressure"));
  }
  Work plug = work;
  plug.makers_book = true;
  EXPECT_TRUE(has(in_the_way(Action::Tighten, plug, {units::bars_gauge(0), {}, {}}, {}),
                  "repair.makers_book_only"));
}

RC_GTEST_PROP(PlanProperty, OneDropIsNoMoreThanAllAndNoLessThanEach, ()) {
  static const auto places = boiler::places_to_look(watertube());
  std::vector<Leak> leaks;
  const int count = *rc::gen::inRange(1, 5);
  for (int i = 0; i < count; ++i) {
    const auto& place = places[*rc::gen::inRange<std::size_t>(0, places.size())];
    leaks.push_back(leak(std::to_string(i), place.tag, facts::LeakKind::Weld));
  }
  const Plan made = plan_of(leaks);
  double sum = 0.0;
  double most = 0.0;
  for (const LeakPlan& one : made.leaks) {
    sum += one.out_alone.si();
    most = std::max(most, one.out_alone.si());
    const bool stuck = std::any_of(made.drop.stuck.begin(), made.drop.stuck.end(),
                                   [&](const Stuck& s) { return s.part == one.free.part; });
    RC_ASSERT(one.comes_free || stuck || one.free.part.empty());
  }
  RC_ASSERT(made.drop.out.si() <= sum + 1e-9);
  RC_ASSERT(made.drop.out.si() >= most - 1e-9);
  RC_ASSERT(made.drop.out.si() <= water_content(watertube()).si() + 1e-9);
}

}  // namespace
}  // namespace steamworthy::repair
