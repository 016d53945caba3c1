#include "boiler/filling.h"

#include <algorithm>

#include "boiler/content.h"

namespace steamworthy::boiler {
namespace {

using units::Volume;

bool contains(const std::vector<std::string>& list, const std::string& text) {
  return std::find(list.begin(), list.end(), text) != list.end();
}

std::vector<std::string> mountings_on(const Boiler& boiler, const std::string& part, bool vents) {
  std::vector<std::string> result;
  for (const Mounting& m : boiler.mountings) {
    if (m.part == part &&
        (vents ? m.kind == MountingKind::Vent
               : (m.kind == MountingKind::Drain || m.kind == MountingKind::Blowdown))) {
      result.push_back(m.tag);
    }
  }
  return result;
}

/// Hanging loops first, each with the headers at its ends, from the outlet's drain.
std::vector<FillStep> back_fills(const Boiler& boiler, std::vector<std::string>& filled) {
  std::vector<FillStep> steps;
  for (const Part& part : boiler.parts) {
    const auto* tubes = std::get_if<Tubes>(&part.shape);
    if (tubes == nullptr || tubes->run != Run::Hanging) continue;
    FillStep step;
    step.kind = FillKind::BackFill;
    step.to_level = lowest(part);
    const auto take = [&](const Part& piece) {
      if (contains(filled, piece.tag)) return;
      filled.push_back(piece.tag);
      step.parts.push_back(piece.tag);
      step.volume += water_content(piece);
      step.to_level = std::max(step.to_level, highest(piece));
    };
    take(part);
    for (const std::string& end : {tubes->to, tubes->from}) {
      const Part* header = find_part(boiler, end);
      if (header == nullptr || header->kind != PartKind::Header) continue;
      take(*header);
      if (step.through.empty()) step.through = mountings_on(boiler, end, false);
      for (const std::string& vent : mountings_on(boiler, end, true)) {
        if (!contains(step.vents, vent)) step.vents.push_back(vent);
      }
    }
    steps.push_back(std::move(step));
  }
  return steps;
}

}  // namespace

std::vector<FillStep> filling_order(const Boiler& boiler) {
  std::vector<std::string> filled;
  std::vector<FillStep> steps = back_fills(boiler, filled);

  std::vector<std::string> through;
  std::vector<const Mounting*> vents;
  for (const Mounting& mounting : boiler.mountings) {
    if (mounting.kind == MountingKind::FillValve) through.push_back(mounting.tag);
    if (mounting.kind == MountingKind::Vent && !contains(filled, mounting.part)) {
      vents.push_back(&mounting);
    }
  }
  std::stable_sort(vents.begin(), vents.end(), [&](const Mounting* a, const Mounting* b) {
    return opening_level(boiler, *a) < opening_level(boiler, *b);
  });

  Volume before;
  for (std::size_t i = 0; i < vents.size();) {
    FillStep step;
    step.through = through;
    step.to_level = opening_level(boiler, *vents[i]);
    for (; i < vents.size() && opening_level(boiler, *vents[i]) - step.to_level <= level_tolerance;
         ++i) {
      step.vents.push_back(vents[i]->tag);
    }
    Volume below;
    for (const Part& part : boiler.parts) {
      if (!contains(filled, part.tag)) below += volume_below(part, step.to_level);
    }
    step.volume = below - before;
    before = below;
    steps.push_back(std::move(step));
  }
  return steps;
}

}  // namespace steamworthy::boiler
