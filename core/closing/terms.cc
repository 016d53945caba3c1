#include "closing/terms.h"

#include <algorithm>

#include "boiler/circuit.h"
#include "boiler/places.h"

namespace steamworthy::closing {
namespace {

using boiler::MountingKind;

void take_mounting(Layout& layout, const boiler::Mounting& mounting) {
  switch (mounting.kind) {
    case MountingKind::Vent:
      layout.vents.push_back(mounting.tag);
      break;
    case MountingKind::Drain:
    case MountingKind::Blowdown:
      layout.drains.push_back(mounting.tag);
      break;
    case MountingKind::SafetyValve:
      layout.safety_valves.push_back(&mounting);
      break;
    case MountingKind::LowWaterCutOut:
    case MountingKind::GaugeGlass:
      layout.protection.push_back(&mounting);
      break;
    default:
      break;
  }
  if (mounting.test_limit) layout.limited.push_back(&mounting);
}

Layout lay_out(const boiler::Boiler& boiler) {
  Layout layout;
  for (const boiler::Space& space : boiler.spaces) {
    layout.spaces[space.tag] = {space.tag, space.side, {}};
  }
  for (const boiler::WayIn& way : boiler.ways_in) {
    layout.ways_in[way.tag] = {way.tag, way.space, way.closure};
    layout.spaces[way.space].ways_in.push_back(way.tag);
    if (!way.closure.empty()) layout.way_of_closure[way.closure] = way.tag;
  }
  for (const boiler::Closure& closure : boiler.closures) {
    layout.closures[closure.tag] = &closure;
    const boiler::Part* part = boiler::find_part(boiler, closure.part);
    if (part != nullptr && part->kind == boiler::PartKind::Header) {
      layout.header_of_closure[closure.tag] = part->tag;
    }
  }
  for (const boiler::Isolation& line : boiler.isolations) layout.isolations.push_back(line.tag);
  for (const boiler::Mounting& mounting : boiler.mountings) take_mounting(layout, mounting);
  for (const boiler::PlaceToLook& place : boiler::places_to_look(boiler)) {
    layout.places.push_back(place.tag);
  }
  for (const boiler::PartCircuit& part : boiler::circuit(boiler).parts) {
    layout.traps_air = layout.traps_air || part.traps_air() || part.fills_by_spilling;
  }
  return layout;
}

}  // namespace

Terms::Terms(boiler::Boiler boiler, Site site)
    : boiler_(std::move(boiler)), site_(site), layout_(lay_out(boiler_)) {}

Terms::Terms(const Terms& other)
    : broken_for_tests(other.broken_for_tests),
      boiler_(other.boiler_),
      site_(other.site_),
      layout_(lay_out(boiler_)),
      roles_(other.roles_) {}

bool Terms::has_role(const std::string& person, Roles any_of) const {
  const auto found = roles_.find(person);
  return found != roles_.end() && (found->second & any_of) != 0;
}

}  // namespace steamworthy::closing
