#include "boiler/boiler.h"

#include <fmt/format.h>

#include "base/error.h"

namespace steamworthy::boiler {
namespace {

template <class Thing>
const Thing* find(const std::vector<Thing>& things, const std::string& key,
                  std::string Thing::*member) {
  for (const Thing& thing : things) {
    if (thing.*member == key) return &thing;
  }
  return nullptr;
}

}  // namespace

const Part* find_part(const Boiler& boiler, const std::string& tag) {
  return find(boiler.parts, tag, &Part::tag);
}
const Section* find_section(const Boiler& boiler, const std::string& name) {
  return find(boiler.sections, name, &Section::name);
}
const Closure* find_closure(const Boiler& boiler, const std::string& tag) {
  return find(boiler.closures, tag, &Closure::tag);
}
const Mounting* find_mounting(const Boiler& boiler, const std::string& tag) {
  return find(boiler.mountings, tag, &Mounting::tag);
}
const Space* find_space(const Boiler& boiler, const std::string& tag) {
  return find(boiler.spaces, tag, &Space::tag);
}

const Part& part(const Boiler& boiler, const std::string& tag) {
  if (const Part* found = find_part(boiler, tag)) return *found;
  throw NotFound("boiler.unknown_part",
                 fmt::format("no part of {} has the tag \"{}\"",
                             boiler.name.empty() ? "the boiler" : boiler.name, tag));
}

std::optional<units::GaugePressure> working_pressure(const Boiler& boiler, const Part& part) {
  if (const Section* section = find_section(boiler, part.section)) return section->working_pressure;
  return std::nullopt;
}

}  // namespace steamworthy::boiler
