#include "hold/loss_fit.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "hold/covariance.h"
#include "numerics/math.h"

namespace steamworthy::hold {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

struct Choice {
  double value;
  double weight;
};
constexpr std::array<Choice, 4> sizes = {{{0.35, 0.25}, {0.7, 0.35}, {1.4, 0.25}, {2.8, 0.15}}};
constexpr std::array<Choice, 3> times = {{{1800.0, 0.3}, {7200.0, 0.4}, {28800.0, 0.3}}};
// The loss ran from the start, or began a tenth, two tenths ... of the hold in.
constexpr double from_start = 0.7;
// A leak goes with a power of the pressure: the root through a hole, the pressure itself
// through a narrow slot. Which one matters only where the pressure falls.
constexpr std::array<Choice, 2> exponents = {{{0.5, 0.65}, {1.0, 0.35}}};
constexpr double falls_enough = 0.97;
constexpr int later_onsets = 9;
double onset_at(int k) { return 0.1 * k; }
double onset_weight(int k) { return k == 0 ? from_start : (1.0 - from_start) / later_onsets; }

double spread(const VectorXd& values) { return values.maxCoeff() - values.minCoeff(); }

// Gauge and thermometer: white where noise shakes them loose, wandering where they stick.
MatrixXd reading_covariance(const HoldRows& rows, double ml_per_unit, double noise, double step,
                            const VectorXd& reading) {
  const Index n = reading.size();
  const double span = std::max(rows.seconds.back(), 1.0);
  const bool stuck = sticks(noise, step);
  const double white = noise * noise + (stuck ? 0.0 : step * step / 12.0);
  MatrixXd s = MatrixXd::Zero(n, n);
  s.diagonal() = (ml_per_unit * ml_per_unit * white / rows.readings.array()).matrix();
  if (stuck) {
    const double between_steps = span * step / std::max(spread(reading), step / 2.0);
    add_wandering(s, rows.seconds, ml_per_unit * step / std::sqrt(12.0), between_steps / 3.0);
  }
  return s;
}

// How far the two thermometers moved against each other, five averages smoothed.
double moved_apart(const VectorXd& apart) {
  const Index n = apart.size();
  if (n <= 10) return spread(apart);
  VectorXd smooth(n - 4);
  for (Index i = 0; i + 4 < n; ++i) smooth(i) = apart.segment(i, 5).mean();
  return spread(smooth);
}

// Standard deviation of the steady drift that no thermometer shows, K/s.
double unseen_drift(const HoldRows& rows) {
  const Index n = rows.apart_k.size();
  double between = 0.3;  // K/h, where it cannot be seen
  if (n > 3) {
    double tt = 0.0, td = 0.0, mean_t = 0.0;
    for (const double s : rows.seconds) mean_t += s / 3600.0 / double(n);
    for (Index i = 0; i < n; ++i) {
      const double t = rows.seconds[static_cast<std::size_t>(i)] / 3600.0 - mean_t;
      tt += t * t;
      td += t * rows.apart_k(i);
    }
    between = std::fabs(td / tt);
  }
  return numerics::hypot(0.10, 0.30 * between) / 3600.0;
}

// What drives the loss, against the start.
VectorXd driving_of(const HoldRows& rows, double exponent) {
  return exponent == 0.5 ? rows.driving : VectorXd(rows.driving.array().square());
}

// Minutes of running since the onset, weighed by what drives it.
VectorXd running(const HoldRows& rows, const VectorXd& driving, double onset) {
  const Index n = driving.size();
  const double from = onset * rows.seconds.back();
  VectorXd x(n);
  x(0) = 0.0;
  for (Index i = 1; i < n; ++i) {
    const auto k = static_cast<std::size_t>(i);
    const double step = rows.seconds[k] > from ? rows.seconds[k] - rows.seconds[k - 1] : 0.0;
    x(i) = x(i - 1) + 0.5 * (driving(i) + driving(i - 1)) * step / 60.0;
  }
  return x;
}

// The error of L(t), by what it comes from. The unseen ones stand times f^2.
struct Sources {
  VectorXd fast, slow, dissolving;
  MatrixXd gauge;        ///< and a floor of rounding
  MatrixXd thermometer;  ///< its readings, its weight, and water that nothing shows
  MatrixXd drift;        ///< unseen
};

Sources sources_of(const HoldRows& rows, const InstrumentsUsed& used, const LossOptions& options) {
  const Index n = rows.pressure_pa.size();
  const double theta = rows.theta_ml_per_k;
  const double both = numerics::hypot(theta, rows.steel_ml_per_k);
  const VectorXd t = Eigen::Map<const VectorXd>(rows.seconds.data(), n);
  Sources s;
  s.fast = settling(rows.seconds, 900.0) * (both * 0.05);
  s.slow = settling(rows.seconds, 2700.0) * (both * 0.05);
  s.dissolving = VectorXd::Zero(n);
  if (options.dissolving_air_m3 > 0.0) {  // a pocket 10 mm deep dissolving by diffusion
    const double area = options.dissolving_air_m3 / 0.01;
    const double ml = area * 0.019 * std::sqrt(2e-9 / numerics::pi) * 2.0 * 1e6;
    s.dissolving = ml * ((t.array() + 600.0).sqrt() - std::sqrt(600.0));
  }
  s.gauge = reading_covariance(rows, rows.k_ml_per_pa, used.gauge_noise_pa, used.gauge_step_pa,
                               rows.pressure_pa);
  s.gauge.diagonal().array() += 1e-3;
  s.thermometer = reading_covariance(rows, theta, used.thermometer_noise_k, used.thermometer_step_k,
                                     rows.water_k);
  add_course(s.thermometer, rows.apart_k * (theta * used.metal_weight_sd));
  if (used.unseen_water_k > 0.0) {
    const double within = std::min(rows.seconds.back(), 3600.0);
    add_course(s.thermometer, t * (theta * used.unseen_water_k / within));
    add_wandering(s.thermometer, rows.seconds, theta * used.unseen_water_k, 7200.0);
  }
  s.drift = MatrixXd::Zero(n, n);
  add_course(s.drift, t * (both * unseen_drift(rows)));
  return s;
}

}  // namespace

std::vector<LossCell> loss_cells(const HoldRows& rows, const InstrumentsUsed& used,
                                 const LossOptions& options) {
  const Index n = rows.pressure_pa.size();
  const double theta = rows.theta_ml_per_k;
  const double span = rows.seconds.back();
  if (!(span > 0.0)) return {};
  const Sources sources = sources_of(rows, used, options);
  const double wander_k = numerics::hypot(0.01, 0.1 * moved_apart(rows.apart_k));
  MatrixXd fixed = sources.gauge + sources.thermometer;
  add_course(fixed, sources.dissolving);

  const auto steps = static_cast<Index>(rows.gauge_steps.size());
  MatrixXd free(n, 1 + steps);
  free.col(0).setOnes();
  for (Index k = 0; k < steps; ++k) {
    free.col(1 + k) = rows.gauge_steps[static_cast<std::size_t>(k)];
  }
  const VectorXd y = rows.missing_ml + used.metal_weight * theta * rows.apart_k;

  const bool falls = rows.driving.minCoeff() < falls_enough;
  std::vector<LossCell> cells;
  for (const Choice& time : times) {
    MatrixXd unseen = sources.drift;  // with the wandering: what moves the mean water
    add_wandering(unseen, rows.seconds, theta * wander_k, time.value);
    MatrixXd scaled = unseen;
    add_course(scaled, sources.fast);
    add_course(scaled, sources.slow);
    for (const Choice& size : sizes) {
      const double f2 = size.value * size.value;
      const Eigen::LLT<MatrixXd> factor(fixed + f2 * scaled);
      if (factor.info() != Eigen::Success) continue;
      double log_det = 0.0;
      for (Index i = 0; i < n; ++i) log_det += 2.0 * numerics::log(factor.matrixLLT()(i, i));
      const MatrixXd s_free = factor.solve(free);
      const VectorXd s_y = factor.solve(y);
      const Eigen::LLT<MatrixXd> inner(free.transpose() * s_free);
      if (inner.info() != Eigen::Success) continue;
      double log_inner = 0.0;
      for (Index k = 0; k <= steps; ++k) {
        log_inner += 2.0 * numerics::log(inner.matrixLLT()(k, k));
      }
      const VectorXd free_y = inner.solve(free.transpose() * s_y);
      const double yy = y.dot(s_y) - (free.transpose() * s_y).dot(free_y);
      const double no_loss = -0.5 * (log_det + log_inner + yy);
      for (const Choice& exponent : exponents) {
        if (!falls && exponent.value != 0.5) continue;
        const VectorXd driving = driving_of(rows, exponent.value);
        const double exponent_weight = falls ? exponent.weight : 1.0;
        for (int k = 0; k <= (options.onsets ? later_onsets : 0); ++k) {
          const VectorXd raw = running(rows, driving, onset_at(k));
          const double minutes = span * (1.0 - onset_at(k)) / 60.0;
          const double mean_driving = raw(n - 1) / minutes;
          if (!(mean_driving > 1e-6)) continue;  // began after the pressure was gone
          const VectorXd x = raw / mean_driving;
          const VectorXd s_x = factor.solve(x);
          const VectorXd free_x = inner.solve(free.transpose() * s_x);
          const double xx = x.dot(s_x) - (free.transpose() * s_x).dot(free_x);
          const double xy = x.dot(s_y) - (free.transpose() * s_x).dot(free_y);
          if (!(xx > 1e-12)) continue;
          LossCell cell;
          cell.rate_ml_min = xy / xx;
          cell.variance = 1.0 / xx;
          cell.gain = xy * xy / xx;
          cell.log_evidence = numerics::log(size.weight * time.weight * exponent_weight *
                                            (options.onsets ? onset_weight(k) : 1.0)) +
                              no_loss;
          cell.mean_share = 1.0 - onset_at(k);
          cell.end_share = driving(n - 1) / mean_driving;
          cell.onset = onset_at(k);
          const VectorXd rest = s_y - s_free * (free_y - free_x * cell.rate_ml_min) -
                                s_x * cell.rate_ml_min;  // S^-1 of the residual
          const auto along = [&](const VectorXd& course) {
            return course.dot(rest) * (course(n - 1) - course(0)) / rows.k_ml_per_pa;
          };
          const auto within = [&](const MatrixXd& covariance) {
            return (covariance.row(n - 1) - covariance.row(0)).dot(rest) / rows.k_ml_per_pa;
          };
          cell.relaxing_pa = f2 * (along(sources.fast) + along(sources.slow));
          cell.air_pa = along(sources.dissolving);
          cell.unseen_cooling_pa = within(sources.thermometer) + f2 * within(unseen);
          cells.push_back(cell);
        }
      }
    }
  }
  double most = -1e300;
  const auto flat = [](const LossCell& c) {
    return c.log_evidence + 0.5 * c.gain + 0.5 * numerics::log(c.variance);
  };
  for (const LossCell& c : cells) most = std::max(most, flat(c));
  double sum = 0.0;
  for (LossCell& c : cells) sum += c.weight = numerics::exp(flat(c) - most);
  for (LossCell& c : cells) c.weight /= sum;
  return cells;
}

namespace {

template <class Share>
Spread spread_with(const std::vector<LossCell>& cells, Share share) {
  Spread s;
  double square = 0.0;
  for (const LossCell& c : cells) {
    const double mean = c.rate_ml_min * share(c);
    s.mean += c.weight * mean;
    square += c.weight * (c.variance * share(c) * share(c) + mean * mean);
  }
  s.sd = std::sqrt(std::max(square - s.mean * s.mean, 0.0));
  const auto below = [&](double q) {
    double sum = 0.0;
    for (const LossCell& c : cells) {
      sum += c.weight * numerics::normal_cdf((q - c.rate_ml_min * share(c)) /
                                             (std::sqrt(c.variance) * share(c)));
    }
    return sum;
  };
  const auto point = [&](double p) {
    double low = s.mean - 40.0 * s.sd - 1e-3;
    double high = s.mean + 40.0 * s.sd + 1e-3;
    for (int i = 0; i < 60; ++i) {
      const double middle = 0.5 * (low + high);
      (below(middle) < p ? low : high) = middle;
    }
    return 0.5 * (low + high);
  };
  s.low = point(0.05);
  s.high = point(0.95);
  return s;
}

}  // namespace

Spread spread_while_running(const std::vector<LossCell>& cells) {
  return spread_with(cells, [](const LossCell&) { return 1.0; });
}

Spread spread_at_end(const std::vector<LossCell>& cells) {
  return spread_with(cells, [](const LossCell& c) { return std::max(c.end_share, 1e-6); });
}

Spread spread_of_mean(const std::vector<LossCell>& cells) {
  return spread_with(cells, [](const LossCell& c) { return c.mean_share; });
}

Chances chances(const std::vector<LossCell>& cells, double slab_ml_min, double concern_ml_min) {
  // The slab's mass between edges that are even in the logarithm, laid evenly between two
  // of them; then each cell's normal likelihood integrates in closed form.
  constexpr int bins = 300;
  double highest = 1e3 * concern_ml_min;
  double most = -1e300;
  for (const LossCell& c : cells) {
    highest = std::max(highest, 10.0 * std::fabs(c.rate_ml_min));
    most = std::max(most, c.log_evidence + 0.5 * c.gain);
  }
  const double lowest = 1e-2 * concern_ml_min;
  const double per_decade = (bins - 1) / 5.0;
  const int above = static_cast<int>(per_decade * numerics::log10(highest / lowest)) + 2;
  const double ratio = numerics::exp(numerics::log(10.0) / per_decade);
  std::vector<double> edges = {0.0, lowest};
  const auto concern_bin = static_cast<int>(2.0 * per_decade + 0.5);  // two decades up: an edge
  for (int i = 1; i <= above; ++i) edges.push_back(edges.back() * ratio);
  edges[static_cast<std::size_t>(1 + concern_bin)] = concern_ml_min;
  const auto mass_below = [&](double q) { return q / (slab_ml_min + q); };

  double nothing = 0.0, losing = 0.0, gaining = 0.0, more = 0.0;
  for (const LossCell& c : cells) {
    nothing += numerics::exp(c.log_evidence - most);
    const double sd = std::sqrt(c.variance);
    const double peak =
        numerics::exp(c.log_evidence + 0.5 * c.gain - most) * sd * std::sqrt(2.0 * numerics::pi);
    double out = 0.5 * numerics::erf((0.0 - c.rate_ml_min) / sd / std::sqrt(2.0));
    double in = -out;
    for (std::size_t k = 1; k < edges.size(); ++k) {
      const double a = edges[k - 1];
      const double b = edges[k];
      const double density = (mass_below(b) - mass_below(a)) / (b - a);
      const double out_b = 0.5 * numerics::erf((b - c.rate_ml_min) / sd / std::sqrt(2.0));
      const double in_b = 0.5 * numerics::erf((b + c.rate_ml_min) / sd / std::sqrt(2.0));
      const double leaving = peak * density * (out_b - out);
      losing += leaving;
      if (a >= concern_ml_min) more += leaving;
      gaining += peak * density * (in_b - in);
      out = out_b;
      in = in_b;
    }
  }
  // nothing, losing and gaining: as likely each beforehand
  const double all = nothing + losing + gaining;
  if (!(all > 0.0)) return {1.0, 0.0, 0.0, 0.0};
  return {nothing / all, losing / all, gaining / all, more / all};
}

}  // namespace steamworthy::hold
