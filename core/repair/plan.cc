#include "repair/plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "base/error.h"
#include "boiler/circuit.h"
#include "boiler/places.h"

namespace steamworthy::repair {
namespace {

using boiler::Boiler;
using boiler::Closure;
using boiler::PlaceKind;
using boiler::PlaceToLook;
using facts::LeakKind;
using units::Level;
using working::Message;

std::vector<Cure> joint_cures(const Closure* closure) {
  if (closure != nullptr && closure->makers_book) return {Cure::MakersBook};
  return {Cure::HardenUp, Cure::RemakeJoint};
}

std::vector<Cure> cures_of(const Leak& leak, const Closure* closure) {
  if (leak.passes == facts::Passing::In) return {Cure::FindWhatPassesIn};
  switch (leak.at) {
    case LeakKind::Gasket:
      return joint_cures(closure);
    case LeakKind::Gland:
      return {Cure::TakeUpGland, Cure::Repack};
    case LeakKind::TubeJoint:
      return {Cure::Expand};
    case LeakKind::Weld:
    case LeakKind::Crack:
      return {Cure::EngineerDecides};
    case LeakKind::Plug:
      return closure == nullptr ? std::vector<Cure>{Cure::MakersBook} : joint_cures(closure);
    case LeakKind::ValveEnd:
      return {Cure::WorkValve, Cure::Reseat};
  }
  return {};
}

bool needs_drop(Cure cure) {
  return cure == Cure::EngineerDecides || cure == Cure::MakersBook ||
         action_of(cure) == Action::Break;
}

/// Below the lowest edge of the place.
Level free_level(const Boiler& boiler, const PlaceToLook& place, const Closure* closure,
                 units::Length margin) {
  Level edge = place.level;
  if (closure != nullptr) edge = closure->level - 0.5 * closure->opening.width;
  if (place.kind == PlaceKind::TubeEnds) {
    const boiler::Part* bank = boiler::find_part(boiler, place.about);
    const auto* tubes = bank == nullptr ? nullptr : std::get_if<boiler::Tubes>(&bank->shape);
    if (tubes != nullptr && tubes->from == place.part) edge = std::min(edge, tubes->bottom_level);
  }
  if (place.kind == PlaceKind::FarEnd || place.kind == PlaceKind::Gland) {
    // The pipe to the valve empties with its opening.
    if (const auto* mounting = boiler::find_mounting(boiler, place.about)) {
      edge = std::min(edge, boiler::opening_level(boiler, *mounting));
    }
  }
  return edge - margin;
}

void note_leak(const Boiler& boiler, const LeakPlan& one, std::vector<Message>& notes) {
  if (one.cure == Cure::EngineerDecides) notes.push_back({"repair.stop_and_report", {}});
  if (one.cure == Cure::MakersBook) notes.push_back({"repair.makers_book_only", {}});
  if (one.cure == Cure::HardenUp) notes.push_back({"repair.may_not_take_up", {}});
  if (one.cure == Cure::FindWhatPassesIn) notes.push_back({"repair.passes_in", {}});
  if (one.may_be_watched_hot) {
    notes.push_back({"repair.may_be_watched_hot", {}});
  } else if (one.leak.passes != facts::Passing::In) {
    notes.push_back({"repair.never_put_up_with", {}});
  }
  const boiler::Part* part = boiler::find_part(boiler, one.place.part);
  if (one.cure == Cure::Expand && part != nullptr && !part->space.empty()) {
    notes.push_back({"repair.entry_needed", {{"part", part->name}}});
  }
  if (!one.needs_drop && one.comes_free) notes.push_back({"repair.comes_free_anyhow", {}});
}

class Checker {
 public:
  Checker(const Boiler& boiler, const PlanRequest& request)
      : places_(boiler::places_to_look(boiler)) {
    for (const Leak& leak : request.leaks) check(boiler, leak);
    const auto positive = [&](const char* field, double si) {
      if (std::isfinite(si) && si > 0.0) return;
      problem("repair.bad_value", field, fmt::format("{}", si), "more than 0", "it must be some");
    };
    if (request.drain_rate) positive("drain_rate", request.drain_rate->si());
    if (request.fill_rate) positive("fill_rate", request.fill_rate->si());
    const Hours& h = request.hours;
    for (const auto& [field, value] : {std::pair{"hours.let_down", h.let_down},
                                       {"hours.repairs", h.repairs},
                                       {"hours.raise_and_hold", h.raise_and_hold},
                                       {"hours.walkdown", h.walkdown},
                                       {"hours.walkdown_left", h.walkdown_left}}) {
      if (!value || (std::isfinite(value->si()) && value->si() >= 0.0)) continue;
      problem("repair.bad_value", field, fmt::format("{}", value->si()), "0 or more",
              "no time is like this");
    }
    if (!std::isfinite(request.margin.si()) || request.margin.si() < 0.0) {
      problem("repair.bad_value", "margin", fmt::format("{}", request.margin.si()), "0 m or more",
              "no margin is like this");
    }
    if (!problems_.empty()) throw BadInput(std::move(problems_));
  }

  const PlaceToLook* place(const std::string& tag) const {
    const auto found = std::find_if(places_.begin(), places_.end(),
                                    [&](const PlaceToLook& one) { return one.tag == tag; });
    return found == places_.end() ? nullptr : &*found;
  }

 private:
  void problem(const char* code, const std::string& field, const std::string& found,
               const std::string& accepted, const std::string& message) {
    problems_.push_back({code, "", 0, field, found, accepted, message});
  }

  void check(const Boiler& boiler, const Leak& leak) {
    const std::string field = fmt::format("leaks[{}]", leak.number);
    if (!numbers_.insert(leak.number).second) {
      problem("repair.same_number", field, leak.number, "a number for each leak",
              "two leaks have this number");
    }
    const PlaceToLook* at = place(leak.place);
    if (at == nullptr) {
      problem("repair.unknown_place", field + ".place", leak.place,
              "the tag of a place of the walkdown list", "the boiler has no such place");
      return;
    }
    if (leak.drops_per_min && !(std::isfinite(*leak.drops_per_min) && *leak.drops_per_min >= 0)) {
      problem("repair.bad_value", field + ".drops_per_min", fmt::format("{}", *leak.drops_per_min),
              "0 or more", "no leak drips like this");
    }
    const auto cures = cures_of(leak, boiler::find_closure(boiler, at->about));
    if (leak.chosen && std::find(cures.begin(), cures.end(), *leak.chosen) == cures.end()) {
      std::string accepted;
      for (const Cure cure : cures)
        accepted += (accepted.empty() ? "" : ", ") + std::string(token(cure));
      problem("repair.wrong_cure", field + ".chosen", std::string(token(*leak.chosen)), accepted,
              "that does not cure this leak");
    }
  }

  std::vector<PlaceToLook> places_;
  std::set<std::string> numbers_;
  std::vector<Problem> problems_;
};

LeakPlan plan_leak(const Boiler& boiler, const Leak& leak, const PlaceToLook& place,
                   units::Length margin) {
  LeakPlan one;
  one.leak = leak;
  one.place = place;
  const Closure* closure = boiler::find_closure(boiler, place.about);
  one.cures = cures_of(leak, closure);
  one.cure = leak.chosen.value_or(one.cures.front());
  one.needs_drop = needs_drop(one.cure);
  one.may_be_watched_hot = leak.passes != facts::Passing::In &&
                           (leak.at == LeakKind::Gasket || leak.at == LeakKind::Gland);
  one.free = {place.part, free_level(boiler, place, closure, margin)};
  if (closure != nullptr) one.work.closure = closure->kind;
  one.work.makers_book = closure != nullptr && closure->makers_book;
  if (!place.part.empty()) one.work.free_below = one.free.level;
  return one;
}

void drop_notes(const Drop& drop, std::vector<Message>& notes) {
  if (drop.cannot_tell) notes.push_back(*drop.cannot_tell);
  for (const Stuck& stuck : drop.stuck) {
    if (!stuck.stays_below) {
      notes.push_back({"repair.no_drain", {{"part", stuck.part}}});
    } else {
      notes.push_back({"repair.does_not_drain_so_far",
                       {{"part", stuck.part},
                        {"stays_below", units::measure(*stuck.stays_below)},
                        {"asked", units::measure(stuck.asked)}}});
    }
  }
  if (drop.out.si() > 0.0) notes.push_back({"repair.vent_before_draining", {}});
}

}  // namespace

std::string_view token(Cure cure) {
  switch (cure) {
    case Cure::HardenUp:
      return "harden_up";
    case Cure::RemakeJoint:
      return "remake_joint";
    case Cure::TakeUpGland:
      return "take_up_gland";
    case Cure::Repack:
      return "repack";
    case Cure::Expand:
      return "expand";
    case Cure::MakersBook:
      return "makers_book";
    case Cure::EngineerDecides:
      return "engineer_decides";
    case Cure::WorkValve:
      return "work_valve";
    case Cure::Reseat:
      return "reseat";
    case Cure::FindWhatPassesIn:
      break;
  }
  return "find_what_passes_in";
}

std::optional<Action> action_of(Cure cure) {
  switch (cure) {
    case Cure::HardenUp:
    case Cure::TakeUpGland:
      return Action::Tighten;
    case Cure::RemakeJoint:
    case Cure::Repack:
    case Cure::Expand:
    case Cure::MakersBook:
    case Cure::Reseat:
      return Action::Break;
    default:
      return std::nullopt;
  }
}

Plan plan(const Boiler& boiler, const PlanRequest& request) {
  const Checker checker(boiler, request);
  Plan result;
  std::vector<Free> wanted;
  for (const Leak& leak : request.leaks) {
    LeakPlan one = plan_leak(boiler, leak, *checker.place(leak.place), request.margin);
    if (one.needs_drop) {
      if (one.free.part.empty()) {
        result.notes.push_back({"repair.place_without_part", {{"place", one.leak.place}}});
      } else {
        wanted.push_back(one.free);
      }
    }
    result.leaks.push_back(std::move(one));
  }
  result.drop = drop_to(boiler, wanted);
  for (LeakPlan& one : result.leaks) {
    one.comes_free = is_free(boiler, result.drop, one.free);
    if (!one.free.part.empty()) {
      const Drop alone = drop_to(boiler, {one.free});
      one.out_alone = alone.out;
      for (const LeakPlan& other : result.leaks) {
        if (other.leak.number != one.leak.number && is_free(boiler, alone, other.free)) {
          one.above.push_back(other.leak.number);
        }
      }
    }
    note_leak(boiler, one, one.notes);
  }
  std::stable_sort(result.leaks.begin(), result.leaks.end(),
                   [](const LeakPlan& a, const LeakPlan& b) {
                     if (a.needs_drop != b.needs_drop) return !a.needs_drop;
                     return a.needs_drop && a.free.level > b.free.level;
                   });
  drop_notes(result.drop, result.notes);
  result.figures = plan_figures(boiler, request, result.drop, !wanted.empty());
  return result;
}

}  // namespace steamworthy::repair
