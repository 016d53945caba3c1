// First steam: the rounds to walk as pressure comes up, and what to look at on each; and the water
// to start with.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "closing/state.h"
#include "closing/terms.h"
#include "repair/drop.h"
#include "working/figure.h"

namespace steamworthy::raising {

/// Why a thing is looked at.
enum class Look {
  WatchedHot,  ///< a weep that somebody signed for
  HardenedUp,  ///< followed up after it was seen dry
  Opened,      ///< any other closure that was opened this time
};
std::string_view token(Look why);

struct ToLook {
  std::string subject;  ///< tag of the closure or place
  std::string leak;     ///< WatchedHot: number of the leak
  Look why = Look::Opened;
};

struct Round {
  working::Figure pressure;    ///< "raising.round_pressure"
  std::vector<ToLook> places;  ///< in the order of Look, then by tag
};

struct FirstSteam {
  std::vector<Round> rounds;            ///< at 1 to 2 bar, at half and at working pressure
  std::vector<working::Message> notes;  ///< when to follow up, expansion, glands
};

/// Rounds at 2 bar at most, half and the whole of the lowest working pressure of any section. A
/// plate is followed up with pressure off, or by the site's stated maximum.
///
/// Source   the three rounds and the rule of following up: common practice, no source.
/// Checked  raising_test.cc.
FirstSteam first_steam(const closing::Terms& terms, const closing::State& state);

/// The water to light a fire on.
struct StartLevel {
  std::vector<working::Figure> figures;  ///< "raising.start_level", "raising.run_off", and for each
                                         ///< part that does not drain "raising.held_water"
  std::vector<working::Message> stops;   ///< why that level is not fit to start with
  std::vector<working::Message> notes;   ///< parts whose water stands higher, and their drains
  repair::Drop drop;                     ///< from full to that level in the part of the glasses
};

/// From the level that maker or site state; none ships. It must be above every low-water cut-out
/// and no higher than the top of the part that has the gauge glasses.
///
/// Range    a boiler with gauge glasses on a part; else the figures say why not.
StartLevel start_level(const boiler::Boiler& boiler, std::optional<units::Level> stated);

}  // namespace steamworthy::raising
