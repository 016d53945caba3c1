// Parts, sections, materials, and how parts open into each other.
#include <fmt/format.h>

#include "boiler/faults.h"

namespace steamworthy::boiler {
namespace {

using units::Kind;
using units::Level;

std::vector<std::string_view> section_names(const Boiler& boiler) {
  std::vector<std::string_view> names;
  for (const Section& section : boiler.sections) names.push_back(section.name);
  return names;
}

/// A hole must be in the part: between its lowest and highest metal.
void check_hole(const Boiler& boiler, const std::string& tag, Level level, const std::string& field,
                Faults& faults) {
  const Part* part = find_part(boiler, tag);
  if (part == nullptr) return;
  const units::Length wall = nominal_wall(*part);
  const Level low = lowest(*part) - wall;
  const Level high = highest(*part) + wall;
  if (level < low || level > high) {
    faults.add("boiler.outside_part", field, shown_level(level),
               fmt::format("{} to {}, the height of {}", shown_level(low), shown_level(high), tag),
               fmt::format("lies outside part {}", tag));
  }
}

void check_materials(const Boiler& boiler, Faults& faults) {
  for (const OwnMaterial& material : boiler.materials) {
    const std::string field = fmt::format("material[{}]", material.name);
    faults.between(field + ".modulus", material.modulus, Kind::Modulus, 50e9, 300e9);
    if (material.poisson) {
      faults.between(field + ".poisson", units::Measure{Kind::Count, *material.poisson}, 0.0, 0.5);
    }
    faults.between(field + ".expansion", material.expansion, Kind::Expansivity, 1e-6, 3e-5);
    faults.between(field + ".density", material.density, Kind::Density, 1000.0, 12000.0);
    for (std::size_t i = 0; i < material.yield.size(); ++i) {
      const auto& [at, stress] = material.yield[i];
      faults.between(field + ".yield", stress, Kind::Stress, 1e6, 2e9);
      if (i > 0 && at <= material.yield[i - 1].first) {
        faults.add("boiler.impossible", field + ".yield", shown({Kind::Temperature, at.si()}),
                   "points by rising temperature", "does not stand by rising temperature");
      }
    }
  }
}

}  // namespace

void check_parts(const Boiler& boiler, Faults& faults) {
  for (const Section& section : boiler.sections) {
    faults.between(fmt::format("section[{}].working_pressure", section.name),
                   section.working_pressure, Kind::GaugePressure, 0.1e5, 400e5);
  }
  check_materials(boiler, faults);
  const std::vector<std::string_view> sections = section_names(boiler);
  for (const Part& part : boiler.parts) {
    const std::string field = fmt::format("part[{}]", part.tag);
    faults.known(field + ".section", part.section, sections, "a section");
    faults.between(field + ".count", part.count, 1, 20000);
    if (part.ligament_efficiency) {
      faults.between(field + ".ligament_efficiency",
                     units::Measure{Kind::Fraction, *part.ligament_efficiency}, 0.05, 1.0);
    }
    if (part.place) {
      faults.between(field + ".place.x", part.place->x, Kind::Distance, -200.0, 200.0);
      faults.between(field + ".place.y", part.place->y, Kind::Distance, -200.0, 200.0);
      faults.between(field + ".place.spacing", part.place->spacing, Kind::Distance, 0.0, 200.0);
    }
    check_shape(part, field, faults);
  }
}

void check_water_ways(const Boiler& boiler, Faults& faults) {
  const std::vector<std::string_view> tags = part_tags(boiler);
  for (const Part& part : boiler.parts) {
    const auto* tubes = std::get_if<Tubes>(&part.shape);
    if (tubes == nullptr) continue;
    const std::string field = fmt::format("part[{}]", part.tag);
    faults.known(field + ".from", tubes->from, tags, "a part");
    faults.known(field + ".to", tubes->to, tags, "a part");
    const std::pair<const char*, const std::string&> ends[] = {{"from", tubes->from},
                                                               {"to", tubes->to}};
    for (const auto& [key, end] : ends) {
      if (!end.empty() && end == part.tag) {
        faults.add("boiler.cycle", fmt::format("{}.{}", field, key), end, "another part",
                   "opens into itself");
      }
    }
    if (!tubes->from.empty() && tubes->from == tubes->to && tubes->run == Run::Straight) {
      faults.add("boiler.cycle", field + ".to", tubes->to,
                 "another part, or run = \"hanging\" or \"standing\"",
                 "is the part that these straight tubes begin at");
    }
    if (tubes->from != part.tag) {
      check_hole(boiler, tubes->from, tubes->from_level, field + ".from_level", faults);
    }
    if (tubes->to != part.tag) {
      check_hole(boiler, tubes->to, tubes->to_level, field + ".to_level", faults);
    }
  }
  for (std::size_t i = 0; i < boiler.connections.size(); ++i) {
    const Connection& connection = boiler.connections[i];
    const std::string field = fmt::format("connection[#{}]", i + 1);
    faults.known(field + ".from", connection.from, tags, "a part");
    faults.known(field + ".to", connection.to, tags, "a part");
    if (!connection.from.empty() && connection.from == connection.to) {
      faults.add("boiler.cycle", field + ".to", connection.to, "another part",
                 "joins a part to itself");
    }
    check_hole(boiler, connection.from, connection.from_level, field + ".from_level", faults);
    check_hole(boiler, connection.to, connection.to_level, field + ".to_level", faults);
  }
}

}  // namespace steamworthy::boiler
