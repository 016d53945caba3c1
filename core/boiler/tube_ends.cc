#include "boiler/tube_ends.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace steamworthy::boiler {
namespace {

units::Level hole(const Boiler& boiler, const std::string& tag, units::Level end,
                  bool tubes_rise_from_it) {
  const Part* part = find_part(boiler, tag);
  if (part == nullptr || part->kind != PartKind::Header) return end;
  if (end < lowest(*part) || end > highest(*part)) return end;
  return tubes_rise_from_it ? highest(*part) : lowest(*part);
}

}  // namespace

void complete_tube_ends(Boiler& boiler) {
  for (Part& part : boiler.parts) {
    auto* tubes = std::get_if<Tubes>(&part.shape);
    if (tubes == nullptr) continue;
    const bool rises_from_first = tubes->run != Run::Hanging;
    const bool rises_from_second = tubes->run == Run::Standing;
    if (std::isnan(tubes->from_level.si())) {
      const units::Level end = rises_from_first ? tubes->bottom_level : tubes->top_level;
      tubes->from_level = hole(boiler, tubes->from, end, rises_from_first);
    }
    if (std::isnan(tubes->to_level.si())) {
      const units::Level end = rises_from_second ? tubes->bottom_level : tubes->top_level;
      tubes->to_level = hole(boiler, tubes->to, end, rises_from_second);
    }
  }
}

std::optional<int> usual_order(std::string_view name) {
  constexpr std::string_view usual[] = {"internal feed pipe", "desuperheater", "dry pipe",
                                        "steam baffles"};
  std::string plain(name);
  std::transform(plain.begin(), plain.end(), plain.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  for (int i = 0; i < 4; ++i) {
    if (plain == usual[i]) return i + 1;
  }
  return std::nullopt;
}

}  // namespace steamworthy::boiler
