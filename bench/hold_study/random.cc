#include "hold_study/random.h"

#include "numerics/math.h"

namespace steamworthy::hold_study {
namespace {

/// One round of SplitMix64: neighbouring seeds become strangers.
std::uint64_t mixed(std::uint64_t x) {
  x += 0x9e3779b97f4a7c15ULL;
  x = (x ^ (x >> 30U)) * 0xbf58476d1ce4e5b9ULL;
  x = (x ^ (x >> 27U)) * 0x94d049bb133111ebULL;
  return x ^ (x >> 31U);
}

}  // namespace

Random::Random(std::uint64_t seed, std::uint64_t stream) : engine_(mixed(mixed(seed) + stream)) {}

double Random::uniform() {
  constexpr double step = 1.0 / 9007199254740992.0;  // 2^-53
  return static_cast<double>(engine_() >> 11U) * step;
}

double Random::log_uniform(double low, double high) {
  return numerics::exp(uniform(numerics::log(low), numerics::log(high)));
}

double Random::normal(double mean, double standard_deviation) {
  // Half a step off zero, where the quantile would be infinite.
  return mean + standard_deviation * numerics::normal_quantile(uniform() + 0x1p-54);
}

double Random::choice(std::initializer_list<double> values) {
  const auto index = static_cast<std::size_t>(uniform() * static_cast<double>(values.size()));
  return values.begin()[index];
}

std::array<double, 3> Random::shares(const std::array<int, 3>& parameters) {
  std::array<double, 3> parts{};
  double sum = 0.0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    // A gamma variable of whole shape k is a sum of k exponential ones.
    for (int k = 0; k < parameters[i]; ++k) parts[i] -= numerics::log(1.0 - uniform());
    sum += parts[i];
  }
  for (double& part : parts) part /= sum;
  return parts;
}

}  // namespace steamworthy::hold_study
