#include "hold/pump_fit.h"

#include <algorithm>
#include <cmath>

#include "hold/covariance.h"
#include "numerics/math.h"
#include "water/water.h"

namespace steamworthy::hold {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double supply_density = 997.0;  // stands in; a per mille, far below the pump's own error

double vapour_pa(double water_k) {
  return water::saturation_pressure(units::Temperature::from_si(water_k)).si();
}

// The courses that the litres are made of, rows after the first.
struct Courses {
  VectorXd airless, air, loss, airless_slope, air_slope, expansion;
  double theta_m3_per_k = 0.0;
};

Courses courses(const HoldInput& input, const PumpRows& rows, const Lump& lump) {
  const auto n = static_cast<Index>(rows.seconds.size());
  const double supply =
      input.pump.supply
          ? water_at(lump.barometer_pa, std::clamp(input.pump.supply->si(), 273.16, 368.15)).density
          : water_at(lump.barometer_pa, rows.water_k.front()).density;
  const double head_pa = supply_density * 9.80665 * input.pocket_below_gauge.si();
  const auto [low, high] = std::minmax_element(rows.pressure_pa.begin(), rows.pressure_pa.end());
  const double range_pa = std::max(*high - *low, 1.0);
  const double p0 = rows.pressure_pa.front();
  const double t0 = rows.water_k.front();
  const double dry_pa = lump.barometer_pa - vapour_pa(t0);
  const auto pocket = [&](double pa, double k) {
    return dry_pa / std::max(pa + head_pa - vapour_pa(k), 2000.0) * k / t0;
  };
  const double start_kg = lump.mass_kg(p0, t0, t0);

  Courses c;
  for (VectorXd* v : {&c.airless, &c.air, &c.loss, &c.airless_slope, &c.air_slope}) v->resize(n);
  double lost = 0.0;
  double expansivity = 0.0;
  for (Index i = 0; i < n; ++i) {
    const auto k = static_cast<std::size_t>(i);
    const double p = rows.pressure_pa[k];
    const double t = rows.water_k[k];
    const WaterAt water = water_at(p, t);
    expansivity += water.expansivity / double(n);
    c.airless(i) = (lump.mass_kg(p, t, t) - start_kg) / supply;
    c.air(i) = pocket(p0, t0) - pocket(p, t);
    c.airless_slope(i) = lump.volume_m3 * (water.compressibility + lump.growth_per_pa);
    const double held = std::max(p + head_pa, 2e4);
    c.air_slope(i) = lump.barometer_pa / (held * held);
    if (i > 0) {
      const auto driven = [&](std::size_t j) {
        return std::sqrt(std::max(rows.pressure_pa[j] - lump.barometer_pa, 0.0) / range_pa);
      };
      lost += 0.5 * (driven(k) + driven(k - 1)) * (rows.seconds[k] - rows.seconds[k - 1]);
    }
    c.loss(i) = lost;
  }
  c.theta_m3_per_k = lump.volume_m3 * expansivity;
  return c;
}

MatrixXd error_covariance(const PumpRows& rows, const InstrumentsUsed& used, const Courses& c,
                          const VectorXd& slope) {
  const auto n = static_cast<Index>(rows.seconds.size()) - 1;
  const std::vector<double> seconds(rows.seconds.begin() + 1, rows.seconds.end());
  const VectorXd w = slope.tail(n);
  const double theta = c.theta_m3_per_k;
  const double step = used.gauge_step_pa;
  const bool stuck = sticks(used.gauge_noise_pa, step);
  const double white =
      used.gauge_noise_pa * used.gauge_noise_pa + (stuck ? 0.0 : step * step / 12.0);
  MatrixXd s = MatrixXd::Zero(n, n);
  s.diagonal() = w.array().square() * white + 2e-5 * 2e-5;
  const double span = seconds.back() - rows.seconds.front();
  if (stuck) {
    const auto [low, high] = std::minmax_element(rows.pressure_pa.begin(), rows.pressure_pa.end());
    add_wandering(s, seconds, w * (step / std::sqrt(12.0)),
                  std::max(span * step / std::max(*high - *low, step), 1.0));
  }
  VectorXd since(n), fast(n), slow(n), shape(n);
  const double most = std::max(c.airless.maxCoeff(), 1e-12);
  for (Index i = 0; i < n; ++i) {
    since(i) = seconds[static_cast<std::size_t>(i)] - rows.seconds.front();
    slow(i) = theta * 0.08 * (1.0 - numerics::exp(-since(i) / 900.0));
    fast(i) = theta * 0.06 * (1.0 - numerics::exp(-since(i) / 150.0));
    const double x = c.airless(i + 1) / most;
    shape(i) = 0.006 * most * x * (1.0 - x);
  }
  const double walk = (theta * 0.02) * (theta * 0.02) / 1800.0;
  for (Index i = 0; i < n; ++i) {
    for (Index j = 0; j < n; ++j) s(i, j) += walk * std::min(since(i), since(j));
  }
  add_course(s, since * (theta * 0.25 / 3600.0));
  add_wandering(s, seconds, theta * used.thermometer_step_k / std::sqrt(12.0), 1800.0);
  add_course(s, slow);
  add_course(s, fast);
  add_course(s, shape);
  if (used.unseen_water_k > 0.0) {
    add_course(s, since * (theta * used.unseen_water_k / std::max(span, 1.0)));
  }
  for (const double changed : rows.changed_at_s) {
    VectorXd after = VectorXd::Zero(n);
    for (Index i = 0; i < n; ++i) {
      if (seconds[static_cast<std::size_t>(i)] >= changed) after(i) = w(i);
    }
    const double highest = *std::max_element(rows.pressure_pa.begin(), rows.pressure_pa.end());
    add_course(s, after * std::max(2.0 * step, 0.01 * highest));
  }
  return s;
}

double square(double x) { return x * x; }

}  // namespace

std::optional<PumpFit> fit_pump_up(const HoldInput& input, const PumpRows& rows,
                                   const InstrumentsUsed& used, const Lump& lump,
                                   const LossPrior& loss) {
  const auto n = static_cast<Index>(rows.seconds.size()) - 1;
  if (n < 3) return std::nullopt;
  const Courses c = courses(input, rows, lump);
  const double mean_slope = c.airless_slope.tail(n).mean();
  // What is known of the scale beforehand: contents, growth by its share, pump.
  const double share = lump.growth_per_pa * lump.volume_m3 / c.airless_slope.mean();
  const double scale_sd = std::max(0.04, std::sqrt(square(input.boiler.volume_sd_fraction) +
                                                   square(share * input.boiler.growth_sd_fraction) +
                                                   square(input.pump.calibration_sd_fraction)));

  const Index columns = rows.from_vented ? 3 : 4;
  MatrixXd x(n, columns);
  x.col(0) = c.airless.tail(n);
  x.col(1) = c.air.tail(n);
  x.col(2) = c.loss.tail(n);
  if (!rows.from_vented) x.col(3).setOnes();
  VectorXd y(n);
  for (Index i = 0; i < n; ++i) y(i) = rows.pumped_m3[static_cast<std::size_t>(i + 1)];
  VectorXd prior = VectorXd::Zero(columns);
  VectorXd weight = VectorXd::Zero(columns);
  prior(0) = 1.0;
  weight(0) = 1.0 / square(scale_sd);
  prior(2) = loss.mean_m3_s;
  weight(2) = 1.0 / square(loss.sd_m3_s);

  VectorXd beta = prior;
  beta(1) = 0.0005 * lump.volume_m3;
  MatrixXd information(columns, columns);
  double misfit = 1.0;
  for (int round = 0; round < 8; ++round) {  // the error is in the pressure: weights by the fit
    const double air = std::max(beta(1), 0.0);
    const double cap = 30.0 * mean_slope + air / 3e5;
    const VectorXd slope =
        (std::max(beta(0), 0.1) * c.airless_slope + air * c.air_slope).cwiseMin(cap);
    const Eigen::LLT<MatrixXd> factor(error_covariance(rows, used, c, slope));
    if (factor.info() != Eigen::Success) return std::nullopt;
    const MatrixXd sx = factor.solve(x);
    information = x.transpose() * sx;
    information.diagonal() += weight;
    // columns of very different size: scaled before solving
    const VectorXd size = information.diagonal().cwiseMax(1e-300).cwiseSqrt().cwiseInverse();
    const MatrixXd scaled = size.asDiagonal() * information * size.asDiagonal();
    const Eigen::LDLT<MatrixXd> solver(scaled);
    if (solver.info() != Eigen::Success || !solver.isPositive()) return std::nullopt;
    const VectorXd right = sx.transpose() * y + weight.cwiseProduct(prior);
    beta = size.asDiagonal() * solver.solve(size.cwiseProduct(right));
    if (!beta.allFinite()) return std::nullopt;
    const VectorXd rest = y - x * beta;
    misfit = rest.dot(factor.solve(rest)) / std::max<double>(double(n) - 2.0, 1.0);
  }
  const VectorXd size = information.diagonal().cwiseMax(1e-300).cwiseSqrt().cwiseInverse();
  const MatrixXd scaled = size.asDiagonal() * information * size.asDiagonal();
  const MatrixXd unit = scaled.ldlt().solve(MatrixXd::Identity(columns, columns));
  MatrixXd covariance = size.asDiagonal() * unit * size.asDiagonal();
  covariance *= std::max(1.0, misfit);

  const double head_pa = supply_density * 9.80665 * input.pocket_below_gauge.si();
  PumpFit fit;
  fit.air_m3 = beta(1);
  // the pump's own calibration; the pocket's level, known to 0.3 m
  fit.air_sd_m3 = std::sqrt(
      std::max(covariance(1, 1), 0.0) + square(input.pump.calibration_sd_fraction * beta(1)) +
      square(0.03 * beta(1) * lump.barometer_pa / std::max(lump.barometer_pa + head_pa, 2e4)));
  fit.scale = beta(0);
  fit.scale_sd = std::sqrt(std::max(covariance(0, 0), 0.0));
  fit.loss_m3_s = beta(2);
  for (Index i = 0; i <= n; ++i) fit.airless_m3.push_back(beta(0) * c.airless(i));
  if (!std::isfinite(fit.air_sd_m3) || !std::isfinite(fit.scale_sd)) return std::nullopt;
  return fit;
}

}  // namespace steamworthy::hold
