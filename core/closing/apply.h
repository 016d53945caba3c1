// Apply: how each kind of fact changes the state. Part of the fold; see fold.h.
#pragma once

#include "closing/told.h"

namespace steamworthy::closing {

using Steps = std::uint32_t;
constexpr Steps bit(facts::StepName step) { return Steps{1} << static_cast<unsigned>(step); }
inline constexpr Steps every_step = ~Steps{0};

/// Folds one fact in. It must come after everything that it has seen.
void apply(State& state, const Told& told);

// One a family of kinds: whether the body was of the family.
bool apply_closing(State& state, const Told& told);   ///< kinds_closing.h
bool apply_inside(State& state, const Told& told);    ///< kinds_inside.h
bool apply_closures(State& state, const Told& told);  ///< kinds_closures.h
bool apply_pressure(State& state, const Told& told);  ///< kinds_pressure.h

/// Calls `on(state, told, body)` if there is such a function for the body.
#define STEAMWORTHY_DISPATCH(state, told)                    \
  std::visit(                                                \
      [&](const auto& body) {                                \
        if constexpr (requires { on(state, told, body); }) { \
          on(state, told, body);                             \
          return true;                                       \
        } else {                                             \
          return false;                                      \
        }                                                    \
      },                                                     \
      (told).fact().body)

// Shared by the families.

/// Clearances of these steps lapse; those that the fact did not know of were given against it.
void lapse(State& state, const Told& told, Check by, Steps steps, const std::string& subject = "");

/// A clearance is given: by whom, on what, and what speaks against it.
void give(State& state, const Told& told, const facts::ClearanceGiven& given);

/// An alarm that stays until somebody with one of the roles takes it.
void raise_alarm(State& state, const std::string& name, working::Message why, Roles may_take,
                 bool stops = true);
/// A step was taken: if no clearance for it stands, that is an alarm. It stops no other clearance;
/// what is wrong with the boiler does that by itself. While one of the same step and subject was
/// not taken there is no second.
void note_step(State& state, const Told& told, facts::StepName step, const std::string& subject);
std::string name_of(const Stamp& stamp);  ///< "tablet/12"

/// Something entered the space, or a way into it was opened: a count must have seen it.
void note_entry(State& state, const Told& told, const std::string& space);
/// A way in was shut: if it was the last, under a clearance that stands, the space is closed.
void note_shut(State& state, const Told& told, const std::string& space);
/// Every count must have seen this fact.
void note_entry_everywhere(State& state, const Told& told);

bool is_water_side(const Terms& terms, const std::string& space);
/// Nobody may be in there while pressure is raised; so of a space that nobody described.
bool is_fire_side(const Terms& terms, const std::string& space);
/// A clearance of the step that no event has made lapse.
bool has_given(const State& state, facts::StepName step);
/// The same for that subject.
bool has_given(const State& state, facts::StepName step, const std::string& subject);

}  // namespace steamworthy::closing
