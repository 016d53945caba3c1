#include "hold_study/outcome.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <thread>

#include "hold_study/naive.h"
#include "hold_study/recommended.h"

namespace steamworthy::hold_study {
namespace {

double mean_water_k(const Case& made, std::size_t row) {
  double sum = 0.0;
  for (std::size_t g = 0; g < groups; ++g) {
    sum += made.test.plant.group[g].volume_m3 * made.course.water_k[row][g];
  }
  return sum / made.test.plant.volume_m3();
}

}  // namespace

Outcome run_case(std::uint64_t seed, std::uint64_t number, const Spread& spread) {
  Outcome outcome;
  outcome.made = make_case(seed, number, spread);
  const Case& made = outcome.made;
  outcome.net_mean = made.net_loss_mean() / ml_per_min;
  outcome.net_at_end = made.net_loss_at_end() / ml_per_min;
  outcome.air_l = made.test.air_m3 * 1e3;
  const auto start = static_cast<std::size_t>(made.course.hold_start_s);
  outcome.bulk_drift_k_per_h =
      (mean_water_k(made, made.course.seconds.size() - 1) - mean_water_k(made, start)) /
      made.hold_s() * 3600.0;
  const auto begin = std::chrono::steady_clock::now();
  outcome.answers.push_back(recommended(made));
  outcome.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  outcome.answers.push_back(raw_slope(made));
  outcome.answers.push_back(corrected_slope(made));
  outcome.intercept_air_l = intercept_air(made);
  outcome.made.course = {};
  outcome.made.log = {};
  return outcome;
}

std::vector<Outcome> run_cases(std::uint64_t seed, std::uint64_t first, std::size_t count,
                               const Spread& spread) {
  std::vector<Outcome> outcomes(count);
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t i = next++; i < count; i = next++) {
      outcomes[i] = run_case(seed, first + i, spread);
    }
  };
  std::vector<std::thread> hands;
  for (unsigned i = 0; i < std::max(1U, std::thread::hardware_concurrency()); ++i) {
    hands.emplace_back(work);
  }
  for (std::thread& hand : hands) hand.join();
  return outcomes;
}

}  // namespace steamworthy::hold_study
