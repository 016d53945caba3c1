// Closure marks: which mark of paper/marks.h a closure has by the facts.
#pragma once

#include <array>
#include <string>

#include "boiler/boiler.h"
#include "paper/marks.h"
#include "report/context.h"

namespace steamworthy::report {

struct ClosureMark {
  paper::Mark mark = paper::Mark::Open;
  paper::Signs signs;
};

/// As core says (closing/mark.h).
ClosureMark mark_of(const Filled& filled, const std::string& closure);

/// The mark's state in words: "mark.nipped_up".
std::string mark_key(paper::Mark mark);

paper::Outlined outlined(boiler::OpeningShape shape);

/// What paper::draw_legend() says.
std::array<std::string, paper::legend_entries> legend_words(const Context& context);

/// "300 × 400 mm", or the diameter of a round one.
std::string opening_text(const Context& context, const boiler::Closure& closure);

}  // namespace steamworthy::report
