#include "boiler/content.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/error.h"
#include "boiler/metal.h"
#include "vessel/volume.h"

namespace steamworthy::boiler {
namespace {

using units::Length;
using units::Level;
using units::Volume;

[[noreturn]] void throw_no_content(const Boiler& boiler) {
  throw NotFound("boiler.no_content",
                 fmt::format("{} has neither parts nor a water content",
                             boiler.name.empty() ? "the boiler" : boiler.name));
}

const Bulk& bulk(const Boiler& boiler) {
  if (!boiler.bulk) throw_no_content(boiler);
  return *boiler.bulk;
}

bool has_parts(const Boiler& boiler) { return !boiler.parts.empty(); }

/// The two tube plates of a firetube shell, less the holes that its tubes make.
Volume plate_metal(const FiretubeShell& shell) {
  constexpr double quarter_pi = 0.78539816339744830962;
  units::Area holes;
  for (const Inside& inside : shell.inside) {
    const double ends = inside.length ? 1.0 : 2.0;
    holes += ends * inside.count * quarter_pi * (inside.outer_diameter * inside.outer_diameter);
  }
  const units::Area both = 2.0 * quarter_pi * (shell.inner_diameter * shell.inner_diameter);
  return std::max(units::Area{}, both - holes) * shell.plate_wall;
}

Volume metal_volume(const Part& part) {
  Volume result;
  Part whole = part;  // plugged tubes are still there
  if (auto* tubes = std::get_if<Tubes>(&whole.shape)) tubes->plugged = 0;
  for (const vessel::Body& body : bodies(whole)) {
    result += vessel::metal_volume(body).value_or(Volume{});
  }
  if (const auto* shell = std::get_if<FiretubeShell>(&part.shape)) {
    result += static_cast<double>(part.count) * plate_metal(*shell);
  }
  return result;
}

}  // namespace

Volume water_content(const Part& part) {
  Volume result;
  for (const vessel::Body& body : bodies(part)) result += vessel::volume(body);
  return result;
}

Volume water_content(const Boiler& boiler) {
  if (!has_parts(boiler)) return bulk(boiler).water_content;
  Volume result;
  for (const Part& part : boiler.parts) result += water_content(part);
  return result;
}

Volume volume_below(const Part& part, Level level) {
  Volume result;
  for (const vessel::Body& body : bodies(part)) result += vessel::volume_below(body, level);
  return result;
}

std::optional<Volume> volume_below(const Boiler& boiler, Level level) {
  if (!has_parts(boiler)) {
    if (level <= bulk(boiler).bottom_level) return Volume{};
    if (level >= bulk(boiler).top_level) return bulk(boiler).water_content;
    return std::nullopt;
  }
  Volume result;
  for (const Part& part : boiler.parts) result += volume_below(part, level);
  return result;
}

std::optional<units::Area> surface_at(const Boiler& boiler, Level level) {
  if (!has_parts(boiler)) return std::nullopt;
  units::Area result;
  for (const Part& part : boiler.parts) {
    for (const vessel::Body& body : bodies(part)) result += vessel::surface_at(body, level);
  }
  return result;
}

std::optional<Level> level_of(const Boiler& boiler, Volume volume) {
  const Volume all = water_content(boiler);
  if (volume < Volume{} || volume > all) {
    throw OutOfRange("boiler.more_than_it_holds",
                     fmt::format("{:.1f} L is outside 0 to {:.1f} L, the water content",
                                 volume.si() * 1e3, all.si() * 1e3));
  }
  if (!has_parts(boiler)) return std::nullopt;
  // Bisection: the volume rises with the level but has corners, and stays level in gaps.
  Level low = lowest(boiler);
  Level high = highest(boiler);
  while ((high - low).si() > 1e-5) {
    const Level half = low + 0.5 * (high - low);
    (*volume_below(boiler, half) < volume ? low : high) = half;
  }
  return low + 0.5 * (high - low);
}

Level lowest(const Boiler& boiler) {
  if (!has_parts(boiler)) return bulk(boiler).bottom_level;
  Level result = lowest(boiler.parts.front());
  for (const Part& part : boiler.parts) result = std::min(result, lowest(part));
  return result;
}

Level highest(const Boiler& boiler) {
  if (!has_parts(boiler)) return bulk(boiler).top_level;
  Level result = highest(boiler.parts.front());
  for (const Part& part : boiler.parts) result = std::max(result, highest(part));
  return result;
}

Level reference_level(const Boiler& boiler) {
  return boiler.reference_level ? *boiler.reference_level : highest(boiler);
}

PartGrowth growth(const Boiler& boiler, const Part& part) {
  const Metal steel = metal(boiler, part);
  PartGrowth result{part.tag, {}, steel.known, {}};
  for (const vessel::Body& body : bodies(part)) {
    const vessel::Growth one = vessel::growth_per_pressure(body, steel.material.elasticity());
    if (one.value) result.value += *one.value;
    if (one.remark != vessel::GrowthRemark::None &&
        std::find(result.remarks.begin(), result.remarks.end(), one.remark) ==
            result.remarks.end()) {
      result.remarks.push_back(one.remark);
    }
  }
  return result;
}

BoilerGrowth growth(const Boiler& boiler) {
  if (!has_parts(boiler)) return {bulk(boiler).growth, {}};
  BoilerGrowth result;
  for (const Part& part : boiler.parts) {
    result.parts.push_back(growth(boiler, part));
    result.value += result.parts.back().value;
  }
  return result;
}

std::optional<units::VolumePerTemperature> growth_per_kelvin(const Boiler& boiler) {
  if (!has_parts(boiler)) return std::nullopt;
  units::VolumePerTemperature result;
  for (const Part& part : boiler.parts) {
    result += vessel::growth_per_kelvin(water_content(part),
                                        metal(boiler, part).material.expansion.value);
  }
  return result;
}

units::Mass metal_mass(const Boiler& boiler, const Part& part) {
  return metal_volume(part) * metal(boiler, part).material.density.value;
}

std::optional<units::Mass> metal_mass(const Boiler& boiler) {
  if (!has_parts(boiler)) return std::nullopt;
  units::Mass result;
  for (const Part& part : boiler.parts) result += metal_mass(boiler, part);
  return result;
}

std::optional<units::HeatCapacity> metal_heat_capacity(const Boiler& boiler) {
  if (!has_parts(boiler)) return std::nullopt;
  units::HeatCapacity result;
  for (const Part& part : boiler.parts) {
    result += metal_mass(boiler, part) * metal(boiler, part).material.specific_heat.value;
  }
  return result;
}

}  // namespace steamworthy::boiler
