// Circumstances: what a rule needs to know of the boiler, the work and the people.
//
// Everything is optional: what a rule needs and does not find is named in a
// Message, never guessed. The caller fills this from a boiler's description, a
// test file or a form; this room does not know the description.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "units/quantity.h"
#include "working/figure.h"

namespace steamworthy::rules {

enum class BoilerKind { Watertube, Firetube, CastIron, OnceThrough };

/// What was done to the pressure parts since they were last proved.
enum class Work {
  GasketsOnly,           ///< closures opened and shut; no metal touched
  TubesRolledOrPlugged,  ///< tubes re-rolled or plugged, fittings opened
  TubesRenewed,          ///< tubes or nipples renewed or welded
  DrumRepaired,          ///< drum, header, seam or seat repaired or rebuilt
  StrengthDoubted,       ///< somebody entitled to doubts the boiler's strength
  NewInstallation,       ///< first test after building or erecting
  Periodic,              ///< nothing was done: the test falls due
};

/// What a rule is about. Only rules for the thing asked about are candidates.
enum class Subject {
  Boiler,
  UnfiredVessel,           ///< ordinary ("Division 1") pressure vessel
  UnfiredVesselDivision2,  ///< vessel designed by analysis ("Division 2")
  BoilerPiping,
  Economizer,
  Fitting,  ///< bodies of valves and fittings
  ValveSeat,
  SafetyValve,
};

/// Yes-or-no matters on which rules hang.
enum class Trait {
  LapSeam,             ///< a longitudinal joint is lapped
  CanBeEntered,        ///< can be entered, or properly seen inside
  ExtensiveRepair,     ///< the inspector counts the repair as extensive
  AllPartsShopTested,  ///< every pressure part was tested at its maker's
  Locomotive,
  CanBeBlanked,      ///< piping that can be blanked from its boiler
  StopValveBetween,  ///< a stop valve stands between economizer and drum
};

/// The pressures that a rule may refer to.
enum class Reference {
  WorkingPressure,     ///< greatest allowed: MAWP, PS, the stamped or certified pressure
  OperatingPressure,   ///< what it is normally run at
  LowestSafetyValve,   ///< setting of the valve that is set lowest
  HighestSafetyValve,  ///< setting of the valve that is set highest
  LesserOfWorkingAndHighestSafetyValve,
  DesignPressure,
  ServiceLoading,       ///< greatest loading in service, with the head of water
  BoilerTestPressure,   ///< test pressure of the boiler to which piping is welded
  RetestPressure,       ///< pressure of a retest after yielding
  OriginalTestPressure  ///< test pressure that the code allowed when the boiler was built
};

struct Circumstances {
  std::vector<std::string> jurisdictions;  ///< ids as rules carry them: law, class, insurer, site
  Subject subject = Subject::Boiler;
  std::optional<BoilerKind> boiler;
  std::optional<Work> work;
  std::map<Trait, bool> traits;  ///< a trait that is not there is not known

  std::optional<units::GaugePressure> working_pressure;
  std::optional<units::GaugePressure> operating_pressure;
  std::optional<units::GaugePressure> lowest_safety_valve;
  std::optional<units::GaugePressure> highest_safety_valve;
  std::optional<units::GaugePressure> design_pressure;
  std::optional<units::GaugePressure> service_loading;
  std::optional<units::GaugePressure> boiler_test_pressure;
  std::optional<units::GaugePressure> retest_pressure;
  std::optional<units::GaugePressure> original_test_pressure;
  working::Origin pressures_from = working::Origin::Described;
  /// Allowable stress at test temperature over that at design temperature.
  std::optional<double> stress_ratio;

  std::optional<bool> safety_valves_gagged;  ///< gagged, clamped or removed and blanked
  std::string authority;  ///< who, by name, ordered or agreed to the test; empty: nobody yet
  std::optional<units::GaugePressure> picked;  ///< the user's pick inside a rule's interval
  std::optional<units::GaugePressure>
      stated_ceiling;  ///< never to pass, as the user or the pump's relief sets it
};

/// The pressure referred to, if the circumstances tell it.
std::optional<units::GaugePressure> pressure_of(Reference reference,
                                                const Circumstances& circumstances);
/// What is known of a trait.
std::optional<bool> known_trait(Trait trait, const Circumstances& circumstances);

// Tokens: one word for ever for each value, in files, on the command line and in
// messages. `..._of` gives nothing for a word that is not in the list.
std::string_view token(BoilerKind kind);  ///< "watertube", "firetube", "cast-iron", "once-through"
std::string_view token(Work work);        ///< "gaskets", "tubes-rolled", "tubes-renewed", ...
std::string_view token(Subject subject);  ///< "boiler", "boiler-piping", ...
std::string_view token(Trait trait);      ///< "lap_seam", "can_be_entered", ...
std::string_view token(Reference reference);  ///< "working pressure", "lowest safety valve", ...
std::optional<BoilerKind> boiler_kind_of(std::string_view token);
std::optional<Work> work_of(std::string_view token);
std::optional<Subject> subject_of(std::string_view token);
std::optional<Trait> trait_of(std::string_view token);
std::optional<Reference> reference_of(std::string_view token);
/// Every token of an enumeration, in its order, for help texts and suggestions.
std::vector<std::string_view> boiler_kind_tokens();
std::vector<std::string_view> work_tokens();
std::vector<std::string_view> subject_tokens();
std::vector<std::string_view> trait_tokens();
std::vector<std::string_view> reference_tokens();

}  // namespace steamworthy::rules
