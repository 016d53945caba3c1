// Tighten, strike, break: three rules, and what stands in the way of each (S7 of docs/safety.md).
//
//   tighten, strike  pressure off, unless the site's rule names a pressure for that kind of closure
//   break            zero at the gauge and air at the vent and water below it; nothing else, and
//                    nobody may wave it through
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "boiler/closure.h"
#include "units/quantity.h"
#include "working/message.h"

namespace steamworthy::repair {

enum class Action { Tighten, Strike, Break };
std::string_view token(Action action);

/// What is known now. What nobody knows stands in the way.
struct Now {
  std::optional<units::GaugePressure> gauge;  ///< as last read
  std::optional<bool> vent_moves_air;         ///< seen at an open vent
  std::optional<units::Level> water_below;    ///< level of the water at the place
};

/// The greatest pressure at which the site lets a kind of closure be tightened or struck.
struct SiteRules {
  std::map<boiler::ClosureKind, units::GaugePressure> tighten_up_to;
  std::map<boiler::ClosureKind, units::GaugePressure> strike_up_to;
};

/// What is to be worked on.
struct Work {
  std::optional<boiler::ClosureKind> closure;  ///< nothing: a gland, a tube end, ...
  bool makers_book = false;                    ///< expanded or special plug
  std::optional<units::Level> free_below;      ///< water must stand below this to break it
};

/// Everything that stands in the way of it now, each with its remedy in the same sentence; empty:
/// nothing known does. Source: design; common practice, no source.
std::vector<working::Message> in_the_way(Action action, const Work& work, const Now& now,
                                         const SiteRules& site);

}  // namespace steamworthy::repair
