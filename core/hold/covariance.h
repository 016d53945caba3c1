// Pieces of the error's covariance that pump-up and hold share.
#pragma once

#include <Eigen/Dense>
#include <vector>

namespace steamworthy::hold {

/// sd^2 exp(-|t_i - t_j| / tau): an error that wanders and returns.
void add_wandering(Eigen::MatrixXd& covariance, const std::vector<double>& seconds, double sd,
                   double tau_s);

/// The same with a size of its own in each row.
void add_wandering(Eigen::MatrixXd& covariance, const std::vector<double>& seconds,
                   const Eigen::VectorXd& sd, double tau_s);

/// shape shape^T: an error of unknown size along one course.
void add_course(Eigen::MatrixXd& covariance, const Eigen::VectorXd& shape);

/// exp(-t/tau) - 1 with t from the first second: how a start settles.
Eigen::VectorXd settling(const std::vector<double>& seconds, double tau_s);

/// Noise below half a step does not shake a reading loose: it sticks.
inline bool sticks(double noise, double step) { return step > 0.0 && noise < 0.5 * step; }

}  // namespace steamworthy::hold
