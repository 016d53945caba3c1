// Marks: the state of a closure, told by shape; tone only repeats it.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "paper/display.h"

namespace steamworthy::paper {

enum class Mark {
  NotOpened,    ///< thin outline, crossed once
  Open,         ///< dashed outline
  Cleaned,      ///< solid outline
  NippedUp,     ///< solid outline, the yoke drawn across
  GapMeasured,  ///< and a dot in the middle
  SeenDry,      ///< filled
  HardenedUp,   ///< filled, the yoke left light
  Touched,      ///< filled lower half only: touched since it was seen dry
};

enum class Outlined { Oval, Circle, Oblong };

/// What may stand on or beside a mark.
struct Signs {
  int leak = 0;         ///< number of the leak: a drop under it
  bool decide = false;  ///< a small flag on it
  bool unsent = false;  ///< a short tail
};

/// The outline of an opening, as wide and high as the box.
Path outline(Outlined shape, const Box& box);

/// Draws the mark with its outline filling the box; signs stand outside of it, within a third of
/// its height.
void draw_mark(Page& page, const Box& box, Outlined shape, Mark mark, const Signs& signs = {});

/// The legend that goes on every sheet with marks: how high it is at that width, and its drawing.
/// `words` are those of the eight states in their order, then of leak, decide and unsent.
inline constexpr int legend_entries = 11;
double legend_height(double width);
void draw_legend(Page& page, const Box& box, const std::array<std::string, legend_entries>& words);

}  // namespace steamworthy::paper
