// Tube banks, coils and pipes as some of their lines.
#include <algorithm>
#include <cmath>

#include "boiler/solid.h"

namespace steamworthy::boiler::detail {
namespace {

struct Range {
  double from, to;
  double at(double share) const { return from + share * (to - from); }
};

/// Where along the view the tubes meet the part at one of their ends.
Range end_range(const Solid* end, const Solid& bank, View view, Range otherwise) {
  if (end == nullptr) return otherwise;
  const double middle = middle_of(view, *end);
  if (lengthwise(view, *end) && !end->upright) {
    const double half = 0.47 * end->length;
    if (lengthwise(view, bank)) return {middle - half, middle + half};
    const double at = std::clamp(middle_of(view, bank), middle - half, middle + half);
    return {at, at};
  }
  // The part is seen from its end: one row of tubes comes to its middle, a bank to its width.
  const bool wide = lengthwise(view, bank) || bank.part->count > 200;
  const double half = wide ? 0.4 * end->diameter : 0.0;
  return {middle - half, middle + half};
}

const Solid* solid_at(const std::vector<Solid>& solids, const std::string& tag) {
  for (const Solid& solid : solids) {
    if (!solid.is_bank() && solid.part->tag == tag) return &solid;
  }
  return nullptr;
}

double own_half_width(const Solid& bank) {
  return std::min(0.5 * bank.part->count * 1.5 * bank.diameter, 3.0);
}

DrawnLine loop(Spot first, Spot second, double far, double width) {
  // Down (or up) from one end and back to the other.
  const double middle = (first.across + second.across) / 2.0;
  const double half = std::max(std::abs(second.across - first.across) / 2.0, width);
  const double left = middle - half, right = middle + half;
  if (first.across > second.across) std::swap(first, second);
  return {{first, {left, first.level}, {left, far}, {right, far}, {right, second.level}, second},
          false};
}

/// To and fro from bottom to top: a coil seen from its side.
DrawnLine serpentine(Spot bottom, Spot top, double left, double right) {
  DrawnLine line{{bottom}, false};
  constexpr int passes = 12;
  for (int i = 0; i <= passes; ++i) {
    const double level = bottom.level + (top.level - bottom.level) * i / passes;
    const bool to_right = i % 2 == 0;
    line.points.push_back({to_right ? left : right, level});
    line.points.push_back({to_right ? right : left, level});
  }
  line.points.push_back(top);
  return line;
}

}  // namespace

DrawnPart bank_of(const Solid& bank, const std::vector<Solid>& solids, View view) {
  const auto& tubes = std::get<Tubes>(bank.part->shape);
  DrawnPart part{bank.part->tag, {}, {}, {}, bank.assumed};
  const double own = middle_of(view, bank);
  const double half = lengthwise(view, bank) ? own_half_width(bank) : 0.0;
  const Solid* first_end = solid_at(solids, tubes.from);
  const Solid* second_end = solid_at(solids, tubes.to);
  const Range from = end_range(first_end, bank, view, {own - half, own + half});
  const Range to = end_range(second_end, bank, view, {own - half, own + half});
  const double bottom = tubes.bottom_level.si(), top = tubes.top_level.si();
  const auto level_of = [](units::Level stated, double otherwise) {
    return std::isfinite(stated.si()) ? stated.si() : otherwise;
  };
  const bool coil = bank.part->kind == PartKind::Coil;
  const bool spread = from.to - from.from > 1e-6 || to.to - to.from > 1e-6;
  const int most = bank.part->kind == PartKind::Pipe ? 12 : 24;
  const int lines = coil && !lengthwise(view, bank) ? 1
                    : spread                        ? std::max(1, std::min(bank.part->count, most))
                                                    : 1;
  for (int i = 0; i < lines; ++i) {
    const double share = lines > 1 ? i / (lines - 1.0) : 0.5;
    const Spot low{from.at(share), level_of(tubes.from_level, bottom)};
    const Spot high{to.at(share), level_of(tubes.to_level, top)};
    if (tubes.run == Run::Hanging) {
      part.thin.push_back(loop(low, high, bottom, 2.0 * bank.diameter));
    } else if (tubes.run == Run::Standing) {
      part.thin.push_back(loop(low, high, top, 2.0 * bank.diameter));
    } else if (coil && !lengthwise(view, bank)) {
      const double reach = std::max(std::abs(own - low.across), 0.25);
      part.thin.push_back(
          serpentine({low.across, bottom}, {high.across, top}, own - reach, own + reach));
    } else if (coil) {
      part.thin.push_back({{{low.across, bottom}, {high.across, top}}, false});
    } else {
      // By way of where the bank itself stands, unless that is on the straight line.
      const double bend = 0.12 * (high.level - low.level);
      DrawnLine line{{low}, false};
      if (lengthwise(view, bank)) {
        if (std::abs(low.across - high.across) > 0.05)
          line.points.push_back({low.across, high.level - bend});
      } else if (const double off = own - (from.at(0.5) + to.at(0.5)) / 2.0; std::abs(off) > 0.15) {
        const double aside = (low.across + high.across) / 2.0 + off;
        line.points.push_back({aside, low.level + bend});
        line.points.push_back({aside, high.level - bend});
      }
      line.points.push_back(high);
      part.thin.push_back(line);
    }
  }
  if (coil && lengthwise(view, bank)) {
    for (int pass = 0; pass <= 12; ++pass) {
      const double level = bottom + (top - bottom) * pass / 12.0;
      part.thin.push_back({{{from.from, level}, {from.to, level}}, false});
    }
  }
  const auto& middle_line = part.thin[part.thin.size() / 2].points;
  const Spot a = middle_line[middle_line.size() / 2 - (middle_line.size() > 1 ? 1 : 0)];
  const Spot b = middle_line[middle_line.size() / 2];
  part.label = {(a.across + b.across) / 2.0, (a.level + b.level) / 2.0};
  return part;
}

}  // namespace steamworthy::boiler::detail
