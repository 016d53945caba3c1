#include "base/error.h"

#include <fmt/format.h>

namespace steamworthy {

std::string sentence(const Problem& problem) {
  std::string text;
  if (!problem.file.empty()) {
    text += problem.file;
    text += problem.line > 0 ? fmt::format(":{}: ", problem.line) : ": ";
  } else if (problem.line > 0) {
    text += fmt::format("line {}: ", problem.line);
  }
  if (!problem.field.empty()) text += problem.field + ": ";
  text += problem.message;
  if (!problem.found.empty() && !problem.accepted.empty()) {
    text += fmt::format(" (found \"{}\"; accepted: {})", problem.found, problem.accepted);
  } else if (!problem.found.empty()) {
    text += fmt::format(" (found \"{}\")", problem.found);
  } else if (!problem.accepted.empty()) {
    text += fmt::format(" (accepted: {})", problem.accepted);
  }
  return text;
}

BadInput::BadInput(std::vector<Problem> problems)
    : Error(problems.empty() ? "base.bad_input" : problems.front().code,
            problems.empty() ? "the input is not acceptable" : sentence(problems.front())),
      problems_(std::move(problems)) {}

}  // namespace steamworthy
