// Checks fitup/fitup.h with made-up plates. Their gaps are computed from the geometry, exactly for
// circles and by the nearest point of the shoulder for ovals, not by the linear form of the fit.
#include "fitup/fitup.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "base/error.h"
#include "fitup/fit.h"
#include "units/makers.h"

namespace steamworthy::fitup {
namespace {

using units::millimetres;

constexpr double pi = 3.14159265358979323846;

Outline round(double diameter) {
  return {{boiler::OpeningShape::Circle, millimetres(diameter), millimetres(diameter)}, 3.0};
}
Outline oval(double long_axis) {
  return {{boiler::OpeningShape::Oval, millimetres(400), millimetres(300)}, long_axis};
}

/// A point of the opening's edge under a bearing, millimetres.
Plane edge_at(const Outline& outline, double bearing) {
  const double a = 0.5 * units::in_millimetres(outline.opening.width);
  const double b = 0.5 * units::in_millimetres(outline.opening.height);
  const double turn = bearing - outline.long_axis * pi / 6.0;  // from the long axis
  const double reach =
      1.0 / std::sqrt(std::pow(std::cos(turn) / a, 2) + std::pow(std::sin(turn) / b, 2));
  return {reach * std::sin(bearing), reach * std::cos(bearing)};
}

/// Distance from a point outside to a plate's shoulder: the curve that lies `clearance` inside the
/// edge, moved by `offset`. The nearest of 400 points near it, then of 400 more.
double distance_to_shoulder(const Outline& outline, double clearance, Plane offset, Plane from) {
  const auto at = [&](double bearing) {
    const Plane out = normal_at(outline, bearing);
    const Plane p = edge_at(outline, bearing) + -clearance * out + offset;
    return std::hypot(p.right - from.right, p.up - from.up);
  };
  double best = 1e300;
  double where = 0.0;
  const auto look = [&](double low, double high, int steps) {
    for (int i = 0; i <= steps; ++i) {
      const double bearing = low + (high - low) * i / steps;
      if (const double d = at(bearing); d < best) {
        best = d;
        where = bearing;
      }
    }
  };
  const double mid = bearing(from);
  look(mid - 0.2, mid + 0.2, 400);
  const double found = where;
  look(found - 0.001, found + 0.001, 400);
  return best;
}

/// The thickest feeler that goes into a gap.
GapReading feel(double clock, double gap_mm, double step_mm) {
  return {clock, millimetres(std::floor(gap_mm / step_mm + 1e-9) * step_mm), millimetres(step_mm)};
}

std::vector<double> clocks(int count, double first = 12.0) {
  std::vector<double> list;
  for (int i = 0; i < count; ++i) list.push_back(std::fmod(first + 12.0 * i / count, 12.0));
  return list;
}

FitRequest made_up(const Outline& outline, double clearance, Plane offset, double step,
                   const std::vector<double>& places) {
  FitRequest request{"SD-M1", outline, {}, {}};
  for (const double clock : places) {
    const double at = clock * pi / 6.0;
    const double gap =
        outline.opening.shape == boiler::OpeningShape::Circle
            // Exact: the shoulder is a circle about `offset`.
            ? [&] {
                const double r = 0.5 * units::in_millimetres(outline.opening.width);
                const Plane p{r * std::sin(at) - offset.right, r * std::cos(at) - offset.up};
                return std::hypot(p.right, p.up) - (r - clearance);
              }()
            : distance_to_shoulder(outline, clearance, offset, edge_at(outline, at));
    request.readings.push_back(feel(clock, gap, step));
  }
  return request;
}

std::string value_of(const working::Message& message, const std::string& name) {
  for (const auto& [key, value] : message.values) {
    if (key != name) continue;
    if (const auto* term = std::get_if<working::Term>(&value)) return term->key;
  }
  return "";
}

TEST(Opening, TheNormalOfACircleIsItsBearing) {
  for (double at = 0.0; at < 6.28; at += 0.1) {
    const Plane n = normal_at(round(400), at);
    EXPECT_NEAR(bearing(n), at, 1e-12);
  }
}

TEST(Opening, TheNormalOfAnOvalIsSquareToItsEdge) {
  for (const double axis : {3.0, 12.0, 1.5}) {
    for (double at = 0.05; at < 6.28; at += 0.1) {
      const Plane before = edge_at(oval(axis), at - 1e-5);
      const Plane after = edge_at(oval(axis), at + 1e-5);
      const Plane along = after + -before;
      const Plane n = normal_at(oval(axis), at);
      EXPECT_NEAR(dot(n, along) / size(along), 0.0, 1e-6);
      EXPECT_NEAR(size(n), 1.0, 1e-12);
      EXPECT_GT(dot(n, edge_at(oval(axis), at)), 0.0);
    }
  }
}

TEST(Opening, AnOblongFacesUpAlongItsSidesAndAwayFromItsEndCentres) {
  const Outline outline{{boiler::OpeningShape::Oblong, millimetres(400), millimetres(200)}, 3.0};
  EXPECT_EQ(normal_at(outline, 0.3).up, 1.0);
  EXPECT_NEAR(normal_at(outline, pi / 2).right, 1.0, 1e-15);
  // At 60 degrees from the top the ray meets the end about (100, 0), radius 100:
  // t^2 - 2 t 100 sin60 + 100^2 = 100^2, so t = 200 sin60 and the point is (150, 86.6).
  const Plane n = normal_at(outline, pi / 3);
  EXPECT_NEAR(n.right, 0.5, 1e-12);
  EXPECT_NEAR(n.up, std::sqrt(0.75), 1e-12);
}

TEST(Opening, WordsAreThoseOfTheNearestEighth) {
  EXPECT_EQ(word_of_bearing(0.0), "top");
  EXPECT_EQ(word_of_bearing(bearing_of_clock(1.5)), "top_right");
  EXPECT_EQ(word_of_bearing(bearing_of_clock(7.4)), "lower_left");
  EXPECT_EQ(word_of_bearing(bearing_of_clock(11.9)), "top");
}

TEST(Fit, FindsWhereAMadeUpPlateSits) {
  for (const Outline& outline : {round(400), oval(3.0), oval(12.0)}) {
    for (const int count : {4, 6, 8, 12}) {
      const Plane offset{-0.40, 0.30};
      const FitAnswer answer = judge_fit(made_up(outline, 1.10, offset, 0.02, clocks(count)));
      // A feeler's step either way, and what the linear form leaves out.
      EXPECT_NEAR(answer.off_centre.right, offset.right, 0.02);
      EXPECT_NEAR(answer.off_centre.up, offset.up, 0.02);
      EXPECT_NEAR(answer.clearance, 1.10, 0.02);
    }
  }
}

TEST(Fit, SaysToMoveThePlateBackAndHowMuchIsLeft) {
  // 0.6 mm off toward the lower left of a plate that is 1.1 mm smaller all round.
  const Plane offset{-0.6 * std::sqrt(0.5), -0.6 * std::sqrt(0.5)};
  const FitAnswer answer = judge_fit(made_up(oval(3.0), 1.10, offset, 0.05, clocks(8)));
  EXPECT_EQ(answer.verdict, FitVerdict::GoodOnceMoved);
  EXPECT_EQ(answer.sentence.key, "fitup.good_once_moved");
  EXPECT_EQ(value_of(answer.sentence, "towards"), "fitup.place.top_right");
  EXPECT_NEAR(size(answer.move), 0.6, 0.05);
  EXPECT_LT(answer.worst_then, 1.1 + 2 * 0.05);
  EXPECT_GT(answer.worst_now, 1.5875);
}

TEST(Fit, ReportsAPlateThatIsTooSmallEvenInTheMiddle) {
  const FitAnswer answer = judge_fit(made_up(oval(3.0), 2.0, {0.3, 0.0}, 0.05, clocks(8)));
  EXPECT_EQ(answer.verdict, FitVerdict::Report);
  EXPECT_EQ(answer.sentence.key, "fitup.report_all_round");
}

TEST(Fit, NamesThePlaceWhereTheEdgeIsWornAway) {
  // Everywhere 1.0 mm, at half past seven 2.6 mm; moving the plate there by v leaves 2.6 - v, and
  // opens the other side to 1.0 + v: 1.8 mm at best with a reading opposite.
  FitRequest request = made_up(round(400), 1.0, {}, 0.05, clocks(8));
  request.readings[5].gap = millimetres(2.6);
  ASSERT_EQ(request.readings[5].clock, 7.5);
  const FitAnswer answer = judge_fit(request);
  EXPECT_EQ(answer.verdict, FitVerdict::Report);
  EXPECT_EQ(answer.sentence.key, "fitup.report_at_place");
  EXPECT_EQ(value_of(answer.sentence, "place"), "fitup.place.lower_left");
  EXPECT_TRUE(std::any_of(answer.notes.begin(), answer.notes.end(),
                          [](const auto& note) { return note.key == "fitup.not_of_its_shape"; }));
}

TEST(Fit, CannotTellWhereTheLimitLiesWithinTheStep) {
  // 1.58 mm all round against 1.5875 mm, felt in steps of 0.1 mm.
  const FitAnswer answer = judge_fit(made_up(round(400), 1.58, {}, 0.1, clocks(8)));
  EXPECT_EQ(answer.verdict, FitVerdict::CannotTell);
  EXPECT_EQ(answer.sentence.key, "fitup.within_the_step");
}

TEST(Fit, CannotTellFromPlacesOnOneSide) {
  const FitAnswer answer =
      judge_fit(made_up(round(400), 1.0, {}, 0.05, {12.0, 1.0, 2.0, 3.0, 4.0}));
  EXPECT_EQ(answer.verdict, FitVerdict::CannotTell);
  EXPECT_EQ(answer.sentence.key, "fitup.places_do_not_reach_round");
  EXPECT_FALSE(answer.figures.front().is_known());
}

TEST(Fit, IsGoodAsItStandsWhenEveryGapIsWithinTheLimit) {
  const FitAnswer answer = judge_fit(made_up(oval(12.0), 0.8, {0.1, 0.1}, 0.05, clocks(6)));
  EXPECT_EQ(answer.verdict, FitVerdict::GoodAsItStands);
  EXPECT_EQ(size(answer.move), 0.0);
}

TEST(Fit, TakesTheMakersLimitInPlaceOfTheUsualOne) {
  FitRequest request = made_up(round(400), 1.1, {}, 0.05, clocks(8));
  EXPECT_EQ(judge_fit(request).verdict, FitVerdict::GoodAsItStands);
  request.makers_limit = millimetres(0.5);
  EXPECT_EQ(judge_fit(request).verdict, FitVerdict::Report);
}

TEST(Fit, TellsAllFaultsAtOnce) {
  FitRequest request = made_up(round(400), 1.1, {}, 0.05, {12.0, 4.0, 8.0});
  request.readings[1].clock = 13.0;
  request.readings[2].step = millimetres(0);
  request.outline.opening.height = millimetres(500);
  request.makers_limit = millimetres(-1);
  try {
    judge_fit(request);
    FAIL() << "accepted";
  } catch (const BadInput& error) {
    std::vector<std::string> codes;
    for (const Problem& problem : error.problems()) codes.push_back(problem.code);
    EXPECT_EQ(codes, (std::vector<std::string>{"fitup.too_few_readings", "fitup.bad_reading",
                                               "fitup.bad_reading", "fitup.bad_opening",
                                               "fitup.bad_limit"}));
  }
}

double in_range(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 10001) / 10000.0;
}

/// Any plate: uneven by up to `uneven`, anywhere, felt at 4 to 12 places about evenly apart.
FitRequest any_plate(std::vector<double>& true_gaps, double most_clearance, double uneven) {
  const double turn = in_range(0.0, 12.0);
  const int count = *rc::gen::inRange(4, 13);
  const double clearance = in_range(0.2, most_clearance);
  const Plane offset{in_range(-0.7, 0.7) * clearance, in_range(-0.7, 0.7) * clearance};
  const double step = in_range(0.01, 0.2);
  FitRequest request{"P", *rc::gen::arbitrary<bool>() ? round(380) : oval(3.0), {}, {}};
  for (const double clock : clocks(count, turn)) {
    const Plane n = normal_at(request.outline, bearing_of_clock(clock));
    const double gap = std::max(0.0, clearance - dot(offset, n) + in_range(-uneven, uneven));
    true_gaps.push_back(gap);
    request.readings.push_back(feel(clock, gap, step));
  }
  return request;
}

RC_GTEST_PROP(FitProperty, AGapThatNoMoveCuresIsNeverCalledGood, ()) {
  std::vector<double> gaps;
  const FitRequest request = any_plate(gaps, 2.5, in_range(0.0, 1.0));
  const FitAnswer answer = judge_fit(request);
  if (answer.verdict != FitVerdict::GoodAsItStands && answer.verdict != FitVerdict::GoodOnceMoved) {
    return;
  }
  // Moved as it says, no true gap is above the limit.
  const double limit = units::in_millimetres(usual_limit);
  for (std::size_t i = 0; i < gaps.size(); ++i) {
    const Plane n = normal_at(request.outline, bearing_of_clock(request.readings[i].clock));
    RC_ASSERT(gaps[i] - dot(answer.move, n) <= limit + 1e-6);
  }
}

RC_GTEST_PROP(FitProperty, APlateThatSomeMoveCuresIsNeverReported, ()) {
  std::vector<double> gaps;
  const FitRequest request = any_plate(gaps, 2.0, in_range(0.0, 0.5));
  if (judge_fit(request).verdict != FitVerdict::Report) return;
  // A walk over all moves on a grid of 0.05 mm, up to 2 mm each way, finds none that cures it.
  const double limit = units::in_millimetres(usual_limit);
  for (int i = -40; i <= 40; ++i) {
    for (int j = -40; j <= 40; ++j) {
      double worst = -1.0;
      for (std::size_t k = 0; k < gaps.size(); ++k) {
        const Plane n = normal_at(request.outline, bearing_of_clock(request.readings[k].clock));
        worst = std::max(worst, gaps[k] - dot(Plane{0.05 * i, 0.05 * j}, n));
      }
      RC_ASSERT(worst > limit);
    }
  }
}

RC_GTEST_PROP(FitProperty, APlateTooSmallByMoreThanAStepIsReportedWhereverItSits, ()) {
  const double step = in_range(0.01, 0.1);
  const double clearance = in_range(1.5875 + step + 0.02, 3.0);
  const Plane offset{in_range(-1.0, 1.0), in_range(-1.0, 1.0)};
  const FitAnswer answer =
      judge_fit(made_up(round(400), clearance, offset, step, clocks(*rc::gen::inRange(4, 13))));
  RC_ASSERT(answer.verdict == FitVerdict::Report);
}

RC_GTEST_PROP(FitProperty, TurningAllReadingsTurnsTheAnswer, ()) {
  std::vector<double> gaps;
  FitRequest request = any_plate(gaps, 2.0, 0.3);
  const FitAnswer before = judge_fit(request);
  const double turn = in_range(0.0, 11.9);
  for (GapReading& reading : request.readings)
    reading.clock = std::fmod(reading.clock + turn, 12.0);
  request.outline.long_axis = std::fmod(request.outline.long_axis + turn, 12.0);
  const FitAnswer after = judge_fit(request);
  const double angle = turn * pi / 6.0;
  const Plane turned{
      before.off_centre.right * std::cos(angle) + before.off_centre.up * std::sin(angle),
      before.off_centre.up * std::cos(angle) - before.off_centre.right * std::sin(angle)};
  RC_ASSERT(std::fabs(after.off_centre.right - turned.right) < 1e-9);
  RC_ASSERT(std::fabs(after.off_centre.up - turned.up) < 1e-9);
  RC_ASSERT(std::fabs(after.clearance - before.clearance) < 1e-9);
}

RC_GTEST_PROP(FitProperty, TheTrueOffsetLiesWithinWhatTheSpreadAllows, ()) {
  const double step = in_range(0.02, 0.1);
  const Plane offset{in_range(-0.5, 0.5), in_range(-0.5, 0.5)};
  const FitAnswer answer =
      judge_fit(made_up(round(400), 1.2, offset, step, clocks(*rc::gen::inRange(4, 13))));
  // Feelers round down by a step at most: no average of them is out by more than that; the exact
  // circle departs from the linear form by u^2 / 2r < 0.002 mm.
  RC_ASSERT(std::fabs(answer.off_centre.right - offset.right) <= step + 0.002);
  RC_ASSERT(std::fabs(answer.off_centre.up - offset.up) <= step + 0.002);
  RC_ASSERT(std::fabs(answer.clearance - 1.2) <= 0.5 * step + 0.002);
}

}  // namespace
}  // namespace steamworthy::fitup
