#include "boiler/places.h"

#include "boiler/circuit.h"

namespace steamworthy::boiler {
namespace {

using Places = std::vector<PlaceToLook>;

void add(Places& places, PlaceKind kind, const std::string& tag, const std::string& part,
         const std::string& about, units::Level level, int count = 1) {
  if (count > 0) places.push_back({tag, kind, part, about, "", level, count});
}

bool has_gland(MountingKind kind) {
  switch (kind) {
    case MountingKind::SafetyValve:
    case MountingKind::PressureGauge:
    case MountingKind::TestConnection:
    case MountingKind::Instrument:
    case MountingKind::LowWaterCutOut:
      return false;
    default:
      return true;
  }
}

bool can_pass_out(MountingKind kind) {
  switch (kind) {
    case MountingKind::Drain:
    case MountingKind::Blowdown:
    case MountingKind::SurfaceBlowdown:
    case MountingKind::StopValve:
    case MountingKind::StopCheck:
    case MountingKind::SampleValve:
    case MountingKind::FillValve:
    case MountingKind::Vent:
      return true;
    default:
      return false;
  }
}

void add_tubes(Places& places, const Part& part, const Tubes& tubes) {
  if (!tubes.from.empty()) {
    add(places, PlaceKind::TubeEnds, part.tag + ".ends-" + tubes.from, tubes.from, part.tag,
        tubes.from_level, tubes.to == tubes.from ? 2 * part.count : part.count);
  }
  if (!tubes.to.empty() && tubes.to != tubes.from) {
    add(places, PlaceKind::TubeEnds, part.tag + ".ends-" + tubes.to, tubes.to, part.tag,
        tubes.to_level, part.count);
  }
  if (tubes.from.empty() && tubes.to.empty()) {
    add(places, PlaceKind::TubeEnds, part.tag + ".ends", part.tag, part.tag, middle(part),
        2 * part.count);
  }
  add(places, PlaceKind::PluggedTube, part.tag + ".plugged", part.tag, part.tag, middle(part),
      tubes.plugged);
  if (tubes.run == Run::Hanging) {
    add(places, PlaceKind::Bend, part.tag + ".bends", part.tag, part.tag, tubes.bottom_level,
        part.count);
  } else if (tubes.run == Run::Standing) {
    add(places, PlaceKind::Bend, part.tag + ".bends", part.tag, part.tag, tubes.top_level,
        part.count);
  } else if (part.kind == PartKind::Coil) {
    add(places, PlaceKind::Bend, part.tag + ".bends", part.tag, part.tag, middle(part), part.count);
  }
}

void add_part(Places& places, const Part& part) {
  if (const auto* tubes = std::get_if<Tubes>(&part.shape)) {
    add_tubes(places, part, *tubes);
    return;
  }
  const auto* cylinder = std::get_if<Cylinder>(&part.shape);
  const bool has_ends = cylinder == nullptr || !cylinder->heads.empty();
  if (has_ends) {
    add(places, PlaceKind::Seam, part.tag + ".seams", part.tag, part.tag, middle(part),
        2 * part.count);
  }
  if (const auto* shell = std::get_if<FiretubeShell>(&part.shape)) {
    for (const Inside& inside : shell->inside) {
      const units::Level level =
          inside.bottom_level + 0.5 * (inside.top_level - inside.bottom_level);
      add(places, PlaceKind::TubeEnds, inside.tag + ".ends", part.tag, inside.tag, level,
          2 * inside.count);
    }
  }
}

}  // namespace

std::vector<PlaceToLook> places_to_look(const Boiler& boiler) {
  Places places;
  for (const Closure& closure : boiler.closures) {
    add(places, PlaceKind::Closure, closure.tag, closure.part, closure.tag, closure.level);
  }
  for (const Part& part : boiler.parts) add_part(places, part);
  for (const Mounting& mounting : boiler.mountings) {
    add(places, PlaceKind::Nozzle, mounting.tag + ".nozzle", mounting.part, mounting.tag,
        opening_level(boiler, mounting));
    if (has_gland(mounting.kind)) {
      add(places, PlaceKind::Gland, mounting.tag + ".gland", mounting.part, mounting.tag,
          mounting.level);
    }
    if (can_pass_out(mounting.kind)) {
      add(places, PlaceKind::FarEnd, mounting.tag + ".far-end", mounting.part, mounting.tag,
          mounting.level);
      places.back().name = mounting.leads_to;
    }
  }
  places.insert(places.end(), boiler.stated_places.begin(), boiler.stated_places.end());
  return places;
}

}  // namespace steamworthy::boiler
