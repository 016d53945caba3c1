// math_test.cc: checks numerics/math.h against 80-bit arithmetic.
//
// Source: the long double functions of the C library (glibc documents them to be
// within an ulp or two of the 64-bit mantissa, 1/1000 of a double's last place).
// The bounds are the accuracies promised in math.h.
#include "numerics/math.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <random>

#include "numerics/bits.h"

namespace steamworthy::numerics {
namespace {

static_assert(std::numeric_limits<long double>::digits == 64,
              "the reference needs the 80-bit long double of x86");

constexpr double inf = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double smallest = std::numeric_limits<double>::denorm_min();
constexpr double largest = std::numeric_limits<double>::max();
constexpr int samples = 200'000;

std::mt19937_64& generator() {
  static std::mt19937_64 engine(20250101);
  return engine;
}
double uniform(double low, double high) {
  return low + (high - low) * (static_cast<double>(generator()() >> 11) * 0x1p-53);
}
/// Uniform in its exponent.
double spread(double low_exponent, double high_exponent) {
  return std::exp2(uniform(low_exponent, high_exponent));
}
double either_sign(double x) { return (generator()() & 1) != 0 ? x : -x; }

/// How far `value` is from `exact` in last places of a double there.
double ulps(double value, long double exact) {
  const auto rounded = static_cast<double>(exact);
  if (std::isnan(value) || std::isnan(exact)) {
    return std::isnan(value) && std::isnan(exact) ? 0.0 : inf;
  }
  if (value == rounded) {
    if (std::isinf(value)) return 0.0;
  } else if (std::isinf(value) || std::isinf(rounded)) {
    return std::fabs(value) >= largest && std::fabs(rounded) >= largest ? 0.5 : inf;
  }
  int exponent = 0;
  std::frexp(rounded, &exponent);
  const double unit = std::ldexp(1.0, std::max(exponent - 53, -1074));
  return static_cast<double>(std::fabs(static_cast<long double>(value) - exact) / unit);
}

template <class Function, class Reference, class Argument>
void expect_accuracy(double limit, Function function, Reference reference, Argument argument) {
  double worst = 0.0;
  double worst_at = 0.0;
  for (int i = 0; i < samples; ++i) {
    const double x = argument();
    const double error = ulps(function(x), reference(static_cast<long double>(x)));
    if (error > worst) {
      worst = error;
      worst_at = x;
    }
  }
  EXPECT_LE(worst, limit) << "ulp at " << std::hexfloat << worst_at;
}

template <class Function, class Reference, class Argument>
void expect_accuracy_of_two(double limit, Function function, Reference reference,
                            Argument arguments) {
  double worst = 0.0;
  std::pair<double, double> worst_at;
  for (int i = 0; i < samples; ++i) {
    const std::pair<double, double> x = arguments();
    const double error =
        ulps(function(x.first, x.second),
             reference(static_cast<long double>(x.first), static_cast<long double>(x.second)));
    if (error > worst) {
      worst = error;
      worst_at = x;
    }
  }
  EXPECT_LE(worst, limit) << "ulp at " << std::hexfloat << worst_at.first << ", "
                          << worst_at.second;
}

void expect_same(double value, double expected) {
  if (std::isnan(expected)) {
    EXPECT_TRUE(std::isnan(value)) << value;
  } else {
    EXPECT_EQ(value, expected);
    EXPECT_EQ(std::signbit(value), std::signbit(expected));
  }
}

using Wide = long double;

TEST(Math, ExpAgreesWith80Bits) {
  const auto reference = [](Wide x) { return std::exp(x); };
  expect_accuracy(0.8, exp, reference, [] { return uniform(-760.0, 720.0); });
  expect_accuracy(0.8, exp, reference, [] { return uniform(-1.0, 1.0); });
}

TEST(Math, ExpOfOneIsTheDoubleNearestToE) {
  // The worked example of docs/methods/math.md. e = 2.71828182845904523536, from memory.
  EXPECT_EQ(exp(1.0), 0x1.5bf0a8b145769p+1);
  EXPECT_EQ(exp(1.0), 2.71828182845904523536);
}

TEST(Bits, SumsAndProductsAreExact) {
  for (int i = 0; i < samples; ++i) {
    // 30-bit factors over a wide range of exponents: an 80-bit sum or a product by halves is exact.
    const double a = std::ldexp(std::floor(uniform(-0x1p30, 0x1p30)), i % 20);
    const double b = uniform(-0x1p30, 0x1p30);
    const detail::DoubleDouble product = detail::exact_product(a, b);
    const Wide a_wide = a;
    const auto b_high = static_cast<double>(static_cast<float>(b));
    const Wide b_low = b - b_high;
    EXPECT_EQ(static_cast<double>((a_wide * b_high - product.hi) + a_wide * b_low), product.lo);
    const detail::DoubleDouble sum = detail::exact_sum(a, b * 0x1p-10);
    EXPECT_EQ(static_cast<double>((a_wide - sum.hi) + b * 0x1p-10L), sum.lo);
  }
}

TEST(Math, Expm1AgreesWith80Bits) {
  const auto reference = [](Wide x) { return std::expm1(x); };
  expect_accuracy(1.0, expm1, reference, [] { return uniform(-50.0, 710.0); });
  expect_accuracy(1.0, expm1, reference, [] { return either_sign(spread(-70.0, 2.0)); });
}

TEST(Math, LogAgreesWith80Bits) {
  const auto reference = [](Wide x) { return std::log(x); };
  expect_accuracy(0.6, log, reference, [] { return spread(-1074.0, 1024.0); });
  expect_accuracy(0.6, log, reference, [] { return uniform(0.5, 2.0); });
}

TEST(Math, Log1pAgreesWith80Bits) {
  const auto reference = [](Wide x) { return std::log1p(x); };
  expect_accuracy(1.0, log1p, reference, [] { return uniform(-1.0, 3.0); });
  expect_accuracy(1.0, log1p, reference, [] { return either_sign(spread(-70.0, 0.0)); });
  expect_accuracy(1.0, log1p, reference, [] { return spread(0.0, 1024.0); });
}

TEST(Math, Log10AgreesWith80BitsAndIsExactForPowersOfTen) {
  const auto reference = [](Wide x) { return std::log10(x); };
  expect_accuracy(0.6, log10, reference, [] { return spread(-1074.0, 1024.0); });
  double ten_to_n = 1.0;
  for (int n = 0; n <= 22; ++n, ten_to_n *= 10.0) EXPECT_EQ(log10(ten_to_n), n);
}

TEST(Math, PowAgreesWith80Bits) {
  const auto reference = [](Wide x, Wide y) { return std::pow(x, y); };
  const auto pairs = [](auto x, auto y) { return [=] { return std::pair(x(), y()); }; };
  expect_accuracy_of_two(0.8, pow, reference,
                         pairs([] { return spread(-100, 100); }, [] { return uniform(-12, 12); }));
  expect_accuracy_of_two(0.8, pow, reference,
                         pairs([] { return spread(-1, 1); }, [] { return uniform(-1100, 1100); }));
  expect_accuracy_of_two(0.8, pow, reference,
                         pairs([] { return 1.0 + either_sign(spread(-40, -1)); },
                               [] { return either_sign(spread(-10, 45)); }));
}

TEST(Math, PowKeepsTheSpecialCasesOfTheStandardLibrary) {
  for (const double x : {0.0, -0.0, 1.0, -1.0, 0.5, -0.5, 2.0, -2.0, 3.7, -3.7, inf, -inf, nan,
                         smallest, -smallest, largest, -largest}) {
    for (const double y : {0.0, -0.0, 1.0, -1.0, 2.0, -2.0, 3.0, -3.0, 0.5, -0.5, 2.5, 1e300,
                           -1e300, 0x1p53, 0x1.fffffffffffffp52, inf, -inf, nan, 1e-300}) {
      SCOPED_TRACE(testing::Message() << x << " to " << y);
      const double expected = std::pow(x, y);
      const double value = pow(x, y);
      if (std::isnan(expected) || std::isinf(expected) || expected == 0.0) {
        expect_same(value, expected);
      } else {
        EXPECT_LE(ulps(value, expected), 1.0);
      }
    }
  }
}

TEST(Math, PowerMultiplies) {
  EXPECT_EQ(power(3.0, 4), 81.0);
  EXPECT_EQ(power(-2.0, 3), -8.0);
  EXPECT_EQ(power(2.0, -3), 0.125);
  EXPECT_EQ(power(0.0, 0), 1.0);
  EXPECT_EQ(power(10.0, 22), 1e22);
  EXPECT_EQ(power(2.0, std::numeric_limits<int>::min()), 0.0);
}

TEST(Math, RootsAgreeWith80Bits) {
  expect_accuracy(
      0.7, cbrt, [](Wide x) { return std::cbrt(x); },
      [] { return either_sign(spread(-1074.0, 1024.0)); });
  const auto reference = [](Wide x, Wide y) { return std::hypot(x, y); };
  expect_accuracy_of_two(0.6, hypot, reference, [] {
    return std::pair(either_sign(spread(-1074.0, 1024.0)), either_sign(spread(-1074.0, 1024.0)));
  });
  expect_accuracy_of_two(0.6, hypot, reference,
                         [] { return std::pair(uniform(-9.0, 9.0), uniform(-9.0, 9.0)); });
  for (const double scale : {0x1p-1060, 0x1p-600, 1.0, 0x1p600, 0x1p1010}) {
    EXPECT_EQ(hypot(3.0 * scale, 4.0 * scale), 5.0 * scale);
  }
  EXPECT_EQ(cbrt(-27.0), -3.0);
}

TEST(Math, TrigonometryAgreesWith80Bits) {
  for (const double range : {1.0, 10.0, 1e6, 1e7}) {
    const auto argument = [range] { return uniform(-range, range); };
    expect_accuracy(
        1.0, sin, [](Wide x) { return std::sin(x); }, argument);
    expect_accuracy(
        1.0, cos, [](Wide x) { return std::cos(x); }, argument);
    expect_accuracy(
        1.0, tan, [](Wide x) { return std::tan(x); }, argument);
  }
  const auto any_size = [] { return either_sign(spread(-60.0, 62.0)); };
  expect_accuracy(
      1.0, sin, [](Wide x) { return std::sin(x); }, any_size);
  expect_accuracy(
      1.0, cos, [](Wide x) { return std::cos(x); }, any_size);
  expect_accuracy(
      1.0, tan, [](Wide x) { return std::tan(x); }, any_size);
}

TEST(Math, SineOfHugeAnglesKeepsItsDigits) {
  // Source: the double nearest to a multiple of pi/2, 6381956970095103 * 2^797, is a known worst
  // case of argument reduction: cos = -4.68716592425462761112e-19. From memory (J.-M. Muller,
  // Elementary Functions).
  EXPECT_NEAR(cos(0x1.6ac5b262ca1ffp+849) / -4.68716592425462761112e-19, 1.0, 4e-16);
  EXPECT_EQ(sin(0x1.6ac5b262ca1ffp+849), 1.0);
  // sin(1e22) = -0.8522008497671888017727...: the classic test of K. C. Ng. From memory.
  EXPECT_NEAR(sin(1e22), -0.8522008497671888017727, 1.2e-16);
}

TEST(Math, InverseTrigonometryAgreesWith80Bits) {
  const auto near_one = [] { return either_sign(1.0 - spread(-53.0, -1.0)); };
  expect_accuracy(
      1.0, asin, [](Wide x) { return std::asin(x); }, [] { return uniform(-1.0, 1.0); });
  expect_accuracy(
      1.0, asin, [](Wide x) { return std::asin(x); }, near_one);
  expect_accuracy(
      1.0, acos, [](Wide x) { return std::acos(x); }, [] { return uniform(-1.0, 1.0); });
  expect_accuracy(
      1.0, acos, [](Wide x) { return std::acos(x); }, near_one);
  expect_accuracy(
      1.0, atan, [](Wide x) { return std::atan(x); }, [] { return uniform(-4.0, 4.0); });
  expect_accuracy(
      1.0, atan, [](Wide x) { return std::atan(x); },
      [] { return either_sign(spread(-70.0, 70.0)); });
  expect_accuracy_of_two(
      2.0, atan2, [](Wide y, Wide x) { return std::atan2(y, x); },
      [] { return std::pair(either_sign(spread(-30.0, 30.0)), either_sign(spread(-30.0, 30.0))); });
}

TEST(Math, Atan2KeepsTheSpecialCasesOfTheStandardLibrary) {
  for (const double y : {0.0, -0.0, 1.0, -1.0, inf, -inf, nan, smallest, largest}) {
    for (const double x : {0.0, -0.0, 1.0, -1.0, inf, -inf, nan, smallest, largest, -largest}) {
      SCOPED_TRACE(testing::Message() << "atan2 of " << y << ", " << x);
      expect_same(atan2(y, x), std::atan2(y, x));
    }
  }
}

TEST(Math, ErrorFunctionAgreesWith80Bits) {
  expect_accuracy(
      1.0, erf, [](Wide x) { return std::erf(x); }, [] { return uniform(-7.0, 7.0); });
  expect_accuracy(
      1.0, erf, [](Wide x) { return std::erf(x); },
      [] { return either_sign(spread(-1070.0, 2.0)); });
  expect_accuracy(
      2.0, erfc, [](Wide x) { return std::erfc(x); }, [] { return uniform(-6.0, 28.0); });
  expect_accuracy(
      2.0, erfc, [](Wide x) { return std::erfc(x); },
      [] { return either_sign(spread(-60.0, 0.0)); });
}

Wide wide_normal_cdf(Wide z) { return std::erfc(-z * std::sqrt(0.5L)) / 2.0L; }

TEST(Math, NormalDistributionAgreesWith80Bits) {
  expect_accuracy(3.0, normal_cdf, wide_normal_cdf, [] { return uniform(-37.0, 9.0); });
  expect_accuracy(3.0, normal_cdf, wide_normal_cdf, [] { return uniform(-3.0, 3.0); });
}

TEST(Math, NormalQuantileIsTheInverseOfTheDistribution) {
  const auto root_of_two_pi = std::sqrt(2.0L * std::acos(-1.0L));
  for (int i = 0; i < samples; ++i) {
    const double p = i % 2 == 0 ? uniform(0.0, 1.0) : spread(-1000.0, -1.0);
    const double z = normal_quantile(p);
    // One step of Newton's method in 80 bits from there is the error.
    const Wide wide = z;
    const Wide density = std::exp(-wide * wide / 2.0L) / root_of_two_pi;
    const Wide error = (wide_normal_cdf(wide) - static_cast<Wide>(p)) / density;
    ASSERT_LE(std::fabs(static_cast<double>(error)), 2e-15 * std::max(std::fabs(z), 1e-3)) << p;
  }
}

TEST(Math, NormalQuantileOfTextbookProbabilities) {
  // Source: common statistical tables, five figures; from memory.
  EXPECT_NEAR(normal_quantile(0.975), 1.95996, 0.5e-5);
  EXPECT_NEAR(normal_quantile(0.95), 1.64485, 0.5e-5);
  EXPECT_NEAR(normal_quantile(0.995), 2.57583, 0.5e-5);
  EXPECT_EQ(normal_quantile(0.5), 0.0);
}

TEST(Math, EdgesAreThoseOfTheStandardLibrary) {
  struct Row {
    double (*ours)(double);
    double (*theirs)(double);
  };
  const Row rows[] = {
      {exp, [](double x) { return std::exp(x); }},
      {expm1, [](double x) { return std::expm1(x); }},
      {log, [](double x) { return std::log(x); }},
      {log1p, [](double x) { return std::log1p(x); }},
      {log10, [](double x) { return std::log10(x); }},
      {cbrt, [](double x) { return std::cbrt(x); }},
      {sin, [](double x) { return std::sin(x); }},
      {cos, [](double x) { return std::cos(x); }},
      {tan, [](double x) { return std::tan(x); }},
      {asin, [](double x) { return std::asin(x); }},
      {acos, [](double x) { return std::acos(x); }},
      {atan, [](double x) { return std::atan(x); }},
      {erf, [](double x) { return std::erf(x); }},
      {erfc, [](double x) { return std::erfc(x); }},
  };
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    for (const double x : {0.0, -0.0, 1.0, -1.0, inf, -inf, nan, smallest, -smallest, largest,
                           -largest, -745.2, 709.8, 1.0000000000000002}) {
      SCOPED_TRACE(testing::Message() << "function " << i << " of " << x);
      const double expected = rows[i].theirs(x);
      const double value = rows[i].ours(x);
      if (std::isnan(expected) || std::isinf(expected) || expected == 0.0) {
        expect_same(value, expected);
      } else {
        EXPECT_LE(ulps(value, expected), 2.0);
      }
    }
  }
  expect_same(normal_cdf(nan), nan);
  expect_same(normal_cdf(-inf), 0.0);
  expect_same(normal_cdf(inf), 1.0);
  expect_same(normal_quantile(0.0), -inf);
  expect_same(normal_quantile(1.0), inf);
  expect_same(normal_quantile(-0.1), nan);
  expect_same(normal_quantile(1.1), nan);
  expect_same(hypot(-inf, nan), inf);
  expect_same(hypot(nan, 1.0), nan);
}

}  // namespace
}  // namespace steamworthy::numerics
