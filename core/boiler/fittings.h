// Fittings: mountings, the isolation list, temporaries.
#pragma once

#include <optional>
#include <string>

#include "units/quantity.h"

namespace steamworthy::boiler {

enum class MountingKind {
  SafetyValve,
  Vent,
  Drain,
  Blowdown,
  SurfaceBlowdown,
  GaugeGlass,
  StopValve,
  StopCheck,
  FeedCheck,
  FeedStop,
  PressureGauge,
  LowWaterCutOut,
  SampleValve,
  ChemicalFeed,
  FillValve,
  TestConnection,
  Instrument,
};

struct Mounting {
  std::string tag;
  std::string name;
  MountingKind kind = MountingKind::Vent;
  std::string part;
  units::Level level;                              ///< of the valve or instrument itself
  std::optional<units::Level> opening_level;       ///< of its hole in the part, where stated
  std::optional<units::GaugePressure> setting;     ///< SafetyValve: where it lifts
  std::optional<units::Length> size;               ///< nominal bore
  std::string leads_to;                            ///< "blowdown tank", "atmosphere"; may be empty
  std::optional<units::GaugePressure> test_limit;  ///< the most it may see; isolated above that

  friend bool operator==(const Mounting&, const Mounting&) = default;
};

enum class IsolationKind {
  TwoValvesAndTellTale,  ///< two shut valves with an open, dry tell-tale between
  Blank,
};

/// One pipe of the isolation list.
struct Isolation {
  std::string tag;
  std::string pipe;
  std::string behind;  ///< what lies behind it
  IsolationKind how = IsolationKind::Blank;
  std::string tell_tale;  ///< tag or words; empty for a blank

  friend bool operator==(const Isolation&, const Isolation&) = default;
};

enum class TemporaryKind { Blank, Gag, TestGear };

/// The step before which a temporary must be off again.
enum class OffBefore { Filling, RaisingPressure, Steam };

struct Temporary {
  std::string tag;  ///< the number stamped on it
  std::string name;
  TemporaryKind kind = TemporaryKind::Blank;
  std::string where;  ///< tag of the mounting, isolation or part that it is fitted on
  units::Level level;
  OffBefore off_before = OffBefore::Steam;

  friend bool operator==(const Temporary&, const Temporary&) = default;
};

}  // namespace steamworthy::boiler
