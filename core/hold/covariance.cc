#include "hold/covariance.h"

#include <cmath>

#include "numerics/math.h"

namespace steamworthy::hold {

void add_wandering(Eigen::MatrixXd& covariance, const std::vector<double>& seconds,
                   const Eigen::VectorXd& sd, double tau_s) {
  const Eigen::Index n = covariance.rows();
  for (Eigen::Index i = 0; i < n; ++i) {
    for (Eigen::Index j = 0; j <= i; ++j) {
      const double apart =
          std::fabs(seconds[static_cast<std::size_t>(i)] - seconds[static_cast<std::size_t>(j)]);
      const double c = sd(i) * sd(j) * numerics::exp(-apart / tau_s);
      covariance(i, j) += c;
      if (i != j) covariance(j, i) += c;
    }
  }
}

void add_wandering(Eigen::MatrixXd& covariance, const std::vector<double>& seconds, double sd,
                   double tau_s) {
  add_wandering(covariance, seconds, Eigen::VectorXd::Constant(covariance.rows(), sd), tau_s);
}

void add_course(Eigen::MatrixXd& covariance, const Eigen::VectorXd& shape) {
  covariance.noalias() += shape * shape.transpose();
}

Eigen::VectorXd settling(const std::vector<double>& seconds, double tau_s) {
  Eigen::VectorXd shape(static_cast<Eigen::Index>(seconds.size()));
  for (Eigen::Index i = 0; i < shape.size(); ++i) {
    const double since = seconds[static_cast<std::size_t>(i)] - seconds.front();
    shape(i) = numerics::exp(-since / tau_s) - 1.0;
  }
  return shape;
}

}  // namespace steamworthy::hold
