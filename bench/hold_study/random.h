// Seeded random numbers that are the same on every machine.
//
// The engine std::mt19937_64 is fixed by the standard, the distributions of <random> are not: so
// they are written here, on core's own elementary functions.
#pragma once

#include <array>
#include <cstdint>
#include <initializer_list>
#include <random>

namespace steamworthy::hold_study {

class Random {
 public:
  /// A stream of its own for each pair.
  Random(std::uint64_t seed, std::uint64_t stream);

  /// In [0, 1).
  double uniform();
  double uniform(double low, double high) { return low + (high - low) * uniform(); }
  /// Its logarithm is uniform; both bounds above zero.
  double log_uniform(double low, double high);
  double normal(double mean, double standard_deviation);
  bool chance(double probability) { return uniform() < probability; }
  double choice(std::initializer_list<double> values);
  /// Shares that sum to 1, spread as a Dirichlet distribution of whole parameters.
  std::array<double, 3> shares(const std::array<int, 3>& parameters);

 private:
  std::mt19937_64 engine_;
};

}  // namespace steamworthy::hold_study
