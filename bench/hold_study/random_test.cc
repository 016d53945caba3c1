#include "hold_study/random.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steamworthy::hold_study {
namespace {

TEST(Random, EngineIsTheOneOfTheStandard) {
  // ISO/IEC 14882, [rand.predef]: the 10000th output of a default std::mt19937_64.
  std::mt19937_64 engine;
  engine.discard(9999);
  EXPECT_EQ(engine(), 9981545732273789042ULL);
}

TEST(Random, SameSeedGivesTheSameNumbersAndAnotherStreamOthers) {
  Random a(7, 1);
  Random b(7, 1);
  Random other(7, 2);
  int same = 0;
  for (int i = 0; i < 100; ++i) {
    const double x = a.normal(0.0, 1.0);
    EXPECT_EQ(x, b.normal(0.0, 1.0));
    if (x == other.normal(0.0, 1.0)) ++same;
  }
  EXPECT_EQ(same, 0);
}

TEST(Random, MomentsAreThoseOfTheDistributions) {
  // Means and deviations within four standard errors of the mean.
  constexpr int n = 40000;
  Random random(1, 1);
  double sum = 0.0;
  double squares = 0.0;
  double logs = 0.0;
  double share = 0.0;
  for (int i = 0; i < n; ++i) {
    const double z = random.normal(3.0, 2.0);
    sum += z;
    squares += (z - 3.0) * (z - 3.0);
    logs += std::log(random.log_uniform(1.0, std::exp(2.0)));
    share += random.shares({8, 10, 5})[0];
  }
  EXPECT_NEAR(sum / n, 3.0, 4.0 * 2.0 / std::sqrt(n));
  EXPECT_NEAR(squares / n, 4.0, 4.0 * 4.0 * std::sqrt(2.0 / n));
  EXPECT_NEAR(logs / n, 1.0, 4.0 * 2.0 / std::sqrt(12.0 * n));
  // A Dirichlet share has the mean a/A and the variance a (A - a) / (A^2 (A + 1)).
  EXPECT_NEAR(share / n, 8.0 / 23.0, 4.0 * std::sqrt(8.0 * 15.0 / (529.0 * 24.0) / n));
}

TEST(Random, ChoiceTakesEachValueAboutEqually) {
  Random random(2, 1);
  int counts[3] = {};
  for (int i = 0; i < 9000; ++i) ++counts[static_cast<int>(random.choice({0.0, 1.0, 2.0}))];
  for (const int count : counts) EXPECT_NEAR(count, 3000, 4 * std::sqrt(2000.0));
}

}  // namespace
}  // namespace steamworthy::hold_study
