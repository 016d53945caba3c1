// Repair plan: for the leaks found, what may be done to each and when, and one drop for all of
// them.
//
// One drain-down to the lowest of the places that need it frees all the higher ones on the same
// water, so that a plan never has more than one; what lies in waters apart is drained at the same
// time. A leak that may do without is told whether its place comes free anyhow.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "boiler/boiler.h"
#include "facts/words.h"
#include "repair/drop.h"
#include "repair/may_do.h"
#include "working/figure.h"

namespace steamworthy::repair {

/// What can be done to a leak.
enum class Cure {
  HardenUp,     ///< follow the plate or joint up
  RemakeJoint,  ///< break it, clean, new gasket
  TakeUpGland,
  Repack,
  Expand,           ///< expand the tube end again
  MakersBook,       ///< expanded or special plug
  EngineerDecides,  ///< weld, crack: stop, engineer and inspector
  WorkValve,        ///< open and shut it again, flush its seat
  Reseat,
  FindWhatPassesIn,
};
std::string_view token(Cure cure);
/// The rule that the cure falls under; nothing where it touches no joint.
std::optional<Action> action_of(Cure cure);

struct Leak {
  std::string number;
  std::string place;  ///< tag of a place to look
  facts::LeakKind at = facts::LeakKind::Gasket;
  facts::Passing passes = facts::Passing::Out;
  std::optional<double> drops_per_min;
  std::optional<Cure> chosen;  ///< by the lead hand; else the first that needs no drop
};

/// Hours that the crew states; what is not stated is not guessed.
struct Hours {
  std::optional<units::Duration> let_down;
  std::optional<units::Duration> repairs;  ///< all of them, hands side by side
  std::optional<units::Duration> raise_and_hold;
  std::optional<units::Duration> walkdown;       ///< all of it
  std::optional<units::Duration> walkdown_left;  ///< of the one under way
};

struct PlanRequest {
  std::vector<Leak> leaks;
  std::optional<units::VolumeFlow> drain_rate;         ///< as known on this boiler
  std::optional<units::VolumeFlow> fill_rate;          ///< else that of the description
  units::Length margin = units::Length::from_si(0.1);  ///< of the water below the lowest edge
  Hours hours;
};

struct LeakPlan {
  Leak leak;
  boiler::PlaceToLook place;
  std::vector<Cure> cures;     ///< what may be done at all, the mildest first
  Cure cure = Cure::HardenUp;  ///< the one planned
  bool needs_drop = false;
  bool comes_free = false;          ///< at the plan's drop, whether it needs it or not
  bool may_be_watched_hot = false;  ///< a weep at a gasket or gland, with a signature
  Work work;                        ///< for in_the_way()
  Free free;                        ///< level to which the water must go to break it
  units::Volume out_alone;          ///< litres out if it were the only one
  std::vector<std::string>
      above;  ///< leaks that come free too if the water is dropped for this one
  std::vector<working::Message> notes;
};

struct Plan {
  std::vector<LeakPlan> leaks;  ///< in order of work: without a drop first, then as they come free
  Drop drop;                    ///< one for all that need it
  std::vector<working::Figure> figures;
  std::vector<working::Message> notes;
};

/// Throws   BadInput "repair.unknown_place", "repair.wrong_cure", "repair.bad_value",
/// "repair.same_number":
///          all faults at once.
/// Checked  repair_test.cc on the example boiler, with litres worked by hand.
Plan plan(const boiler::Boiler& boiler, const PlanRequest& request);

/// The figures of a plan: "repair.litres_out", "repair.minutes_out", "repair.soonest_out",
/// "repair.minutes_back", "repair.drop_now", "repair.look_on", "repair.break_even". Part of plan().
std::vector<working::Figure> plan_figures(const boiler::Boiler& boiler, const PlanRequest& request,
                                          const Drop& drop, bool needs_drop);

}  // namespace steamworthy::repair
