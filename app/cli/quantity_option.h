// An option's text as a quantity.
#pragma once

#include <optional>
#include <string>

#include "cli/request.h"
#include "units/parse.h"

namespace steamworthy::cli {

/// Nothing where the option was not given. Throws Usage, naming the option, for a text that is no
/// such quantity.
template <class Quantity>
std::optional<Quantity> quantity(units::Kind kind, const std::string& option,
                                 const std::string& text) {
  if (text.empty()) return std::nullopt;
  const auto parsed = units::parse_measure(kind, text);
  if (!parsed) {
    Problem problem = parsed.problem;
    problem.field = option;
    throw Usage{sentence(problem)};
  }
  return Quantity::from_si(parsed.value->si);
}

}  // namespace steamworthy::cli
