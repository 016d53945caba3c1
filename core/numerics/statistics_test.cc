// statistics_test.cc: checks numerics/statistics.h.
//
// Source: NIST StRD univariate sets NumAcc1 to NumAcc3 [NIST-STRD], which are given by a rule, and
// their certified values; from memory (the rules allow to recompute them by hand).
#include "numerics/statistics.h"

#include <gtest/gtest.h>

#include <cmath>

#include "base/error.h"

namespace steamworthy::numerics {
namespace {

/// `first`, then 500 times `first - 0.1, first + 0.1` in one order or the other.
std::vector<double> alternating(double first) {
  std::vector<double> values{first};
  for (int i = 0; i < 500; ++i) {
    values.push_back(first - 0.1);
    values.push_back(first + 0.1);
  }
  return values;
}

TEST(Statistics, NumAcc1) {
  const std::vector<double> values{10000001.0, 10000003.0, 10000002.0};
  EXPECT_EQ(mean(values), 10000002.0);
  EXPECT_EQ(variance(values), 1.0);
}

TEST(Statistics, NumAcc2) {
  EXPECT_NEAR(mean(alternating(1.2)), 1.2, 1e-15);
  EXPECT_NEAR(std::sqrt(variance(alternating(1.2))), 0.1, 1e-14);
}

TEST(Statistics, NumAcc3) {
  EXPECT_NEAR(mean(alternating(1000000.2)), 1000000.2, 2e-10);
  // The values themselves are rounded to 1e-10, which limits what can be had.
  EXPECT_NEAR(std::sqrt(variance(alternating(1000000.2))), 0.1, 1e-9);
}

TEST(Statistics, QuantilesInterpolateBetweenOrderStatistics) {
  // By definition: position p (n - 1) in {1, 2, 4, 8}.
  EXPECT_EQ(quantile({8.0, 1.0, 4.0, 2.0}, 0.0), 1.0);
  EXPECT_EQ(quantile({8.0, 1.0, 4.0, 2.0}, 1.0), 8.0);
  EXPECT_EQ(quantile({8.0, 1.0, 4.0, 2.0}, 0.25), 1.75);
  EXPECT_EQ(median({8.0, 1.0, 4.0, 2.0}), 3.0);
  EXPECT_EQ(median({3.0}), 3.0);
}

TEST(Statistics, MedianFilterTakesOutAWildReadingAndKeepsAStep) {
  const std::vector<double> filtered = median_filter({1, 1, 9, 1, 1, 5, 5, 5}, 3);
  EXPECT_EQ(filtered, (std::vector<double>{1, 1, 1, 1, 1, 5, 5, 5}));
}

TEST(Statistics, BlockAverageLeavesOutAShortLastBlock) {
  EXPECT_EQ(block_average({1, 3, 5, 7, 100}, 2), (std::vector<double>{2, 6}));
}

TEST(Statistics, RefusesTooFewAndWrongWidths) {
  const auto code = [](auto call) -> std::string {
    try {
      call();
    } catch (const OutOfRange& error) {
      return error.code();
    }
    return "";
  };
  EXPECT_EQ(code([] { mean({}); }), "numerics.too_few");
  EXPECT_EQ(code([] { variance({1.0}); }), "numerics.too_few");
  EXPECT_EQ(code([] { quantile({}, 0.5); }), "numerics.too_few");
  EXPECT_EQ(code([] { quantile({1.0}, 1.5); }), "numerics.fraction");
  EXPECT_EQ(code([] { median_filter({1.0}, 2); }), "numerics.width");
  EXPECT_EQ(code([] { block_average({1.0}, 0); }), "numerics.width");
}

}  // namespace
}  // namespace steamworthy::numerics
