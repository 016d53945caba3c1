// roots_test.cc: checks numerics/roots.h against roots known in closed form.
#include "numerics/roots.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "base/error.h"

namespace steamworthy::numerics {
namespace {

TEST(FindRoot, FindsRootsKnownInClosedForm) {
  const Root two = find_root([](double x) { return x * x - 2.0; }, 0.0, 2.0);
  EXPECT_TRUE(two.converged);
  EXPECT_NEAR(two.x, std::sqrt(2.0), 1e-15);
  const Root pi_half = find_root([](double x) { return std::cos(x); }, 1.0, 2.0);
  EXPECT_NEAR(pi_half.x, std::acos(0.0), 1e-15);
  // A root of ninth order, on which secant steps alone are slow.
  const Root flat = find_root([](double x) { return std::pow(x - 0.25, 9.0); }, -1.0, 1.0);
  EXPECT_TRUE(flat.converged);
  EXPECT_NEAR(flat.x, 0.25, 1e-12);
}

TEST(FindRoot, StopsAtTheToleranceAndInFewSteps) {
  const Root root =
      find_root([](double x) { return std::exp(x) - 5.0; }, 0.0, 10.0, {.tolerance = 1e-3});
  EXPECT_TRUE(root.converged);
  EXPECT_NEAR(root.x, std::log(5.0), 1e-3);
  EXPECT_LT(root.steps, 20);
}

TEST(FindRoot, TakesAnEndThatIsARoot) {
  EXPECT_EQ(find_root([](double x) { return x; }, 0.0, 1.0).x, 0.0);
  EXPECT_EQ(find_root([](double x) { return x - 1.0; }, 0.0, 1.0).x, 1.0);
}

TEST(FindRoot, SaysWhenItRanOutOfSteps) {
  const Root root = find_root([](double x) { return x < 0.3 ? -1.0 : 1.0; }, 0.0, 1.0,
                              {.tolerance = 0.0, .most_steps = 3});
  EXPECT_FALSE(root.converged);
}

TEST(FindRoot, RefusesWhatIsNotBracketed) {
  for (const double nan_or_one : {1.0, std::nan("")}) {
    try {
      find_root([nan_or_one](double) { return nan_or_one; }, 0.0, 1.0);
      FAIL() << "no exception";
    } catch (const OutOfRange& error) {
      EXPECT_EQ(error.code(), "numerics.not_bracketed");
    }
  }
}

RC_GTEST_PROP(FindRoot, SolvesAnyRisingCubic, ()) {
  const double root = *rc::gen::inRange(-1000, 1000) / 7.0;
  const double slope = *rc::gen::inRange(1, 100) / 10.0;
  const Root found = find_root(
      [=](double x) { return (x - root) * ((x - root) * (x - root) + slope); }, -500.0, 700.0);
  RC_ASSERT(found.converged);
  RC_ASSERT(std::fabs(found.x - root) <= 1e-12 * (1.0 + std::fabs(root)));
}

}  // namespace
}  // namespace steamworthy::numerics
