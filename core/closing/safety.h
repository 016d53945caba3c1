// Safety: the rules of what may happen next, S1 to S11, and each check that they are made of.
//
// One table for document, code and proof: docs/safety.md is written from it, outstanding() and the
// fold look their checks up in it, the exploration switches each of them off and must notice.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "facts/words.h"

namespace steamworthy::closing {

enum class Rule { S1, S2, S3, S4, S5, S6, S7, S8, S9, S10, S11 };

enum class Check {
  S1Pressure,
  S1Vent,
  S1Isolation,
  S1Hot,
  S1Drained,
  S2Isolation,
  S2Air,
  S2AirOld,
  S2AirLimits,
  S2AirLow,
  S2Attendant,
  S2Pressure,
  S3Inside,
  S3Count,
  S3CountOld,
  S3Device,
  S3Missing,
  S4Space,
  S4Closure,
  S4Plate,
  S4Gap,
  S4Internal,
  S4Header,
  S4Tubes,
  S4Finding,
  S4Drain,
  S4Vent,
  S4VentManned,
  S4Order,
  S5FireSide,
  S5Sheet,
  S5Above,
  S5Filled,
  S5Vent,
  S5Temperature,
  S5Gauges,
  S5SafetyValve,
  S5Relief,
  S5Instrument,
  S5Hangers,
  S5Pump,
  S5Contact,
  S5People,
  S5StopWord,
  S6Raising,
  S6Hold,
  S6Pressure,
  S7Pressure,
  S7Zero,
  S7Vent,
  S7Water,
  S8Valve,
  S8Zero,
  S8Vent,
  S8ShutSolid,
  S9Inside,
  S9Temporary,
  S9SeenOff,
  S9Hold,
  S9NotSeen,
  S9Touched,
  S9Hardened,
  S9Leak,
  S9Weep,
  S9Protection,
  S9Hangers,
  S9Normalised,
  S9Finding,
  S9TakenOver,
  S10Shift,
  S10Plate,
  S10Isolation,
  S10Entry,
  S10Temperature,
  S10Air,
  S10Boiler,
  S11Late,
  S11Alarm,
  S11Unread,
  S11Names,
};

/// A set of roles, a bit each.
using Roles = std::uint32_t;
constexpr Roles bit(facts::RoleName role) { return Roles{1} << static_cast<unsigned>(role); }
inline constexpr Roles nobody = 0;

struct RuleRow {
  Rule rule;
  std::string_view token;  ///< "S1"
  std::string_view title;  ///< "Open"
  std::string_view means;
};

struct CheckRow {
  Check check;
  Rule rule;
  std::string_view token;   ///< "s1_pressure"; its English is outstanding.TOKEN and remedy.TOKEN
  Roles override_by;        ///< `nobody`: never
  facts::RoleName remover;  ///< whose it is to remove what stands in the way
  int danger;               ///< 1 somebody may be hurt at once, 2 soon, 3 the rest
  std::string_view means;   ///< when it stands in the way, for docs/safety.md
};

std::span<const RuleRow> rules();
std::span<const CheckRow> checks();
const CheckRow& row(Check check);
/// The check with that token; null if there is none.
const CheckRow* find_check(std::string_view token);

}  // namespace steamworthy::closing
