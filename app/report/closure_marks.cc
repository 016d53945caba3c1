#include "report/closure_marks.h"

#include <algorithm>
#include <cctype>

#include "closing/mark.h"

namespace steamworthy::report {
namespace {

using paper::Mark;

/// The digits of a leak's number: 2 of "K2"; 1 where it has none.
int number_of(const std::string& leak) {
  int number = 0;
  for (const char c : leak) {
    if (std::isdigit(static_cast<unsigned char>(c)) != 0 && number < 1000)
      number = number * 10 + (c - '0');
  }
  return std::max(number, 1);
}

/// Core's marks are those of the room paper, in the same order.
Mark of(closing::Mark mark) {
  static_assert(static_cast<int>(closing::Mark::NotOpened) == static_cast<int>(Mark::NotOpened) &&
                static_cast<int>(closing::Mark::Cleaned) == static_cast<int>(Mark::Cleaned) &&
                static_cast<int>(closing::Mark::SeenDry) == static_cast<int>(Mark::SeenDry) &&
                static_cast<int>(closing::Mark::Touched) == static_cast<int>(Mark::Touched));
  return static_cast<Mark>(mark);
}

}  // namespace

ClosureMark mark_of(const Filled& filled, const std::string& closure) {
  ClosureMark found{of(closing::mark(filled.state(), closure)), {}};
  const closing::Signs signs = closing::signs(filled.state(), closure);
  if (!signs.leak.empty()) found.signs.leak = number_of(signs.leak);
  found.signs.decide = signs.decide;
  return found;
}

std::string mark_key(paper::Mark mark) {
  return "mark." + std::string(closing::token(static_cast<closing::Mark>(mark)));
}

paper::Outlined outlined(boiler::OpeningShape shape) {
  switch (shape) {
    case boiler::OpeningShape::Circle:
      return paper::Outlined::Circle;
    case boiler::OpeningShape::Oblong:
      return paper::Outlined::Oblong;
    case boiler::OpeningShape::Oval:
      break;
  }
  return paper::Outlined::Oval;
}

std::array<std::string, paper::legend_entries> legend_words(const Context& context) {
  return {context.say("mark.not_opened"),   context.say("mark.open"),
          context.say("mark.cleaned"),      context.say("mark.nipped_up"),
          context.say("mark.gap_measured"), context.say("mark.seen_dry"),
          context.say("mark.hardened_up"),  context.say("mark.touched"),
          context.say("mark.leaking"),      context.say("mark.decide"),
          context.say("mark.unsent")};
}

std::string opening_text(const Context& context, const boiler::Closure& closure) {
  const std::string width = context.print(units::measure_size(closure.opening.width));
  if (closure.opening.shape == boiler::OpeningShape::Circle) return width;
  return context.number(units::measure_size(closure.opening.height)) + " × " + width;
}

}  // namespace steamworthy::report
