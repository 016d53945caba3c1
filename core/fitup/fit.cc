#include "fitup/fit.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>

#include "numerics/math.h"

namespace steamworthy::fitup {
namespace {

Eigen::Vector3d row(Plane normal) { return {1.0, -normal.right, -normal.up}; }

/// The move at which three readings have one gap, and that gap; false where there is none.
bool level_three(const Felt& a, const Felt& b, const Felt& c, const std::array<double, 3>& gap,
                 Centring& out) {
  // gap_i - v . n_i = t: differences leave two equations for v.
  const Plane ab = a.normal + -b.normal;
  const Plane ac = a.normal + -c.normal;
  const double det = ab.right * ac.up - ab.up * ac.right;
  if (std::fabs(det) < 1e-9) return false;
  const double p = gap[0] - gap[1];
  const double q = gap[0] - gap[2];
  out.move = {(p * ac.up - q * ab.up) / det, (ab.right * q - ac.right * p) / det};
  out.greatest = gap[0] - dot(out.move, a.normal);
  return true;
}

}  // namespace

double Fit::gap(Plane normal, Plane move) const {
  return clearance - dot(off_centre + move, normal);
}

double Fit::sd(Plane normal) const {
  const Eigen::Vector3d a = row(normal);
  double sum = 0.0;
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) {
      sum += a[static_cast<Eigen::Index>(i)] * covariance[i][j] * a[static_cast<Eigen::Index>(j)];
    }
  }
  return std::sqrt(std::max(sum, 0.0));
}

Fit fit_plate(const std::vector<Felt>& felt) {
  Eigen::Matrix3d normal_matrix = Eigen::Matrix3d::Zero();
  Eigen::Vector3d right_side = Eigen::Vector3d::Zero();
  for (const Felt& one : felt) {
    const double step = one.most - one.least;
    const double weight = 12.0 / (step * step);
    const Eigen::Vector3d a = row(one.normal);
    normal_matrix += weight * a * a.transpose();
    right_side += weight * one.middle() * a;
  }
  const Eigen::Matrix3d inverse = normal_matrix.inverse();
  const Eigen::Vector3d x = inverse * right_side;
  Fit fit;
  fit.clearance = x[0];
  fit.off_centre = {x[1], x[2]};
  double chi_squared = 0.0;
  for (std::size_t i = 0; i < felt.size(); ++i) {
    const double misfit = felt[i].middle() - fit.gap(felt[i].normal, {});
    const double step = felt[i].most - felt[i].least;
    chi_squared += 12.0 * misfit * misfit / (step * step);
    if (std::fabs(misfit) > std::fabs(fit.greatest_misfit)) {
      fit.greatest_misfit = misfit;
      fit.misfit_at = i;
    }
  }
  const double freedom = static_cast<double>(felt.size()) - 3.0;
  const double scatter = std::max(1.0, chi_squared / freedom);
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) {
      fit.covariance[i][j] =
          scatter * inverse(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
    }
  }
  return fit;
}

Centring best_centring(const std::vector<Felt>& felt, bool at_most, Plane near) {
  const auto gap = [&](const Felt& one) { return at_most ? one.most : one.least; };
  constexpr double slack = 1e-9;
  Centring best;
  best.greatest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < felt.size(); ++i) {
    for (std::size_t j = i + 1; j < felt.size(); ++j) {
      for (std::size_t k = j + 1; k < felt.size(); ++k) {
        Centring tried;
        if (!level_three(felt[i], felt[j], felt[k], {gap(felt[i]), gap(felt[j]), gap(felt[k])},
                         tried)) {
          continue;
        }
        const bool holds = std::all_of(felt.begin(), felt.end(), [&](const Felt& one) {
          return gap(one) - dot(tried.move, one.normal) <= tried.greatest + slack;
        });
        if (!holds || tried.greatest > best.greatest + slack) continue;
        const bool is_nearer = size(tried.move + -near) < size(best.move + -near);
        if (tried.greatest < best.greatest - slack || is_nearer) best = tried;
      }
    }
  }
  return best;
}

double widest_unfelt(const std::vector<Felt>& felt) {
  std::vector<double> bearings;
  for (const Felt& one : felt) bearings.push_back(one.bearing);
  std::sort(bearings.begin(), bearings.end());
  double widest = bearings.front() + 2.0 * numerics::pi - bearings.back();
  for (std::size_t i = 1; i < bearings.size(); ++i) {
    widest = std::max(widest, bearings[i] - bearings[i - 1]);
  }
  return widest;
}

}  // namespace steamworthy::fitup
