#include "repair/drop.h"

#include <algorithm>
#include <cmath>

#include "boiler/circuit.h"
#include "boiler/content.h"

namespace steamworthy::repair {
namespace {

using boiler::Boiler;
using boiler::Mounting;
using boiler::MountingKind;
using boiler::Part;
using boiler::PartCircuit;
using units::Level;

bool is_drain(const Mounting& mounting) {
  return mounting.kind == MountingKind::Drain || mounting.kind == MountingKind::Blowdown;
}

const PartCircuit* find(const boiler::Circuit& circuit, const std::string& part) {
  const auto found = std::find_if(circuit.parts.begin(), circuit.parts.end(),
                                  [&](const PartCircuit& one) { return one.part == part; });
  return found == circuit.parts.end() ? nullptr : &*found;
}

Level within(const Part& part, Level level) {
  return std::clamp(level, boiler::lowest(part), boiler::highest(part));
}

Mounting outlet(const Free& place, Level level) {
  Mounting mounting;
  mounting.kind = MountingKind::Drain;
  mounting.tag = place.part;
  mounting.part = place.part;
  mounting.level = level;
  mounting.opening_level = level;
  return mounting;
}

}  // namespace

Drop drop_to(const Boiler& boiler, const std::vector<Free>& wanted) {
  Drop drop;
  if (wanted.empty()) return drop;
  const boiler::Circuit as_it_is = boiler::circuit(boiler);
  if (!as_it_is.described) {
    drop.cannot_tell = working::Message{"repair.circuit_not_described", {}};
    return drop;
  }
  Boiler cut = boiler;
  std::erase_if(cut.mountings, is_drain);
  for (const Free& place : wanted) {
    const Part& part = boiler::part(boiler, place.part);
    const PartCircuit& circuit = *find(as_it_is, place.part);
    const Level asked = within(part, place.level);
    const Level reached = circuit.water_below ? std::max(asked, *circuit.water_below) : asked;
    if (!circuit.water_below || reached - asked > boiler::level_tolerance) {
      drop.stuck.push_back({place.part, circuit.water_below, place.level});
    }
    if (!circuit.water_below) continue;
    cut.mountings.push_back(outlet(place, reached));
    for (const std::string& drain : circuit.drains) {
      if (std::find(drop.open.begin(), drop.open.end(), drain) == drop.open.end()) {
        drop.open.push_back(drain);
      }
    }
  }
  const boiler::Circuit after = boiler::circuit(cut);
  for (const Part& part : boiler.parts) {
    const PartCircuit* one = find(after, part.tag);
    if (one == nullptr) {  // nothing was opened
      drop.left.push_back({part.tag, std::nullopt, boiler::water_content(part)});
      continue;
    }
    drop.left.push_back({part.tag, one->water_below, one->held_water});
    drop.out += boiler::water_content(part) - one->held_water;
  }
  return drop;
}

bool is_free(const Boiler& boiler, const Drop& drop, const Free& place) {
  for (const PartWater& one : drop.left) {
    if (one.part != place.part || !one.stays_below) continue;
    const Level asked = within(boiler::part(boiler, place.part), place.level);
    return *one.stays_below - asked <= boiler::level_tolerance;
  }
  return false;
}

std::optional<units::Duration> soonest_out(const Boiler& boiler, const Drop& drop) {
  constexpr double quarter_pi = 0.78539816339744831;
  double flow = 0.0;
  for (const std::string& tag : drop.open) {
    const Mounting* drain = boiler::find_mounting(boiler, tag);
    if (drain == nullptr || !drain->size) return std::nullopt;
    const double head = (boiler::highest(boiler) - drain->level).si();
    if (head <= 0.0) return std::nullopt;
    const double bore = drain->size->si();
    flow += quarter_pi * bore * bore * std::sqrt(2.0 * units::standard_gravity.si() * head);
  }
  if (flow <= 0.0) return std::nullopt;
  return units::Duration::from_si(drop.out.si() / flow);
}

}  // namespace steamworthy::repair
