// Formula: how a rule derives a pressure. A closed set of forms, no expression language.
//
// Every form that the rules seen so far use is one shape: branches chosen by the
// size of one reference pressure; in a branch the greatest of some products
// "factor x reference x stress ratio + constant"; then not below a floor and not
// above a cap. A rule of a kind that does not fit is a reason to widen this
// shape on purpose, never to smuggle in a calculator.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rules/circumstances.h"
#include "rules/stated.h"
#include "working/figure.h"

namespace steamworthy::rules {

/// factor x reference [x stress ratio] [+ constant].
struct Product {
  double factor = 1.0;
  Reference of = Reference::WorkingPressure;
  bool times_stress_ratio = false;           ///< S at test temperature / S at design temperature
  std::optional<double> least_stress_ratio;  ///< the ratio is taken as this where it is less
  std::optional<Stated<units::PressureDifference>> plus;

  friend bool operator==(const Product&, const Product&) = default;
};

/// The greatest of `greatest_of`, not below `least`, not above `cap`.
struct Branch {
  /// This branch holds while Formula::switched_by is not above this; absent in the last branch.
  std::optional<Stated<units::GaugePressure>> up_to;
  std::vector<Product> greatest_of;
  std::optional<Stated<units::GaugePressure>> least;
  std::optional<Stated<units::GaugePressure>> cap;

  friend bool operator==(const Branch&, const Branch&) = default;
};

struct Formula {
  Reference switched_by = Reference::WorkingPressure;  ///< matters with more than one branch
  std::vector<Branch> branches;

  bool empty() const { return branches.empty(); }
  friend bool operator==(const Formula&, const Formula&) = default;
};

/// What a formula gave: a figure, and the inputs that it lacked.
struct FormulaResult {
  working::Figure figure;                 ///< without a value when anything was missing
  std::vector<working::Message> missing;  ///< "rules.missing_input" with the name of each
};

/// The pressure that a formula gives in some circumstances, with its working.
///
///   p = min(cap, max(least, max_i(k_i p_i r_i + c_i)))
///
///   k_i  factor        p_i  reference pressure        c_i  constant
///   r_i  stress ratio, or 1; never below least_stress_ratio where the rule says so
///
/// The branch is the first whose up_to is not below the switching pressure.
///
/// Throws    OutOfRange "rules.negative_pressure" if a pressure of the circumstances
///           that the formula uses is below zero gauge, "rules.stress_ratio" if the
///           ratio is not above zero.
/// Source    the rule's own (`source` is copied into the working).
/// Checked   formula_test.cc, against the laws named there.
FormulaResult evaluate_formula(const Formula& formula, const Circumstances& circumstances,
                               const std::string& key, const std::string& subject,
                               const std::string& source);

}  // namespace steamworthy::rules
