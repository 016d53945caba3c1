// Spaces, ways in, internals.
#include <fmt/format.h>

#include <map>

#include "boiler/faults.h"

namespace steamworthy::boiler {
namespace {

template <class Thing>
std::vector<std::string_view> tags_of(const std::vector<Thing>& things) {
  std::vector<std::string_view> tags;
  for (const Thing& thing : things) tags.push_back(thing.tag);
  return tags;
}

void check_internals(const Boiler& boiler, const std::vector<std::string_view>& parts,
                     Faults& faults) {
  std::map<std::pair<std::string, int>, std::string> places;
  for (const Internal& internal : boiler.internals) {
    const std::string field = fmt::format("internal[{}]", internal.tag);
    faults.known(field + ".part", internal.part, parts, "a part");
    if (internal.order == 0) continue;  // reported as missing by whoever read it
    faults.between(field + ".order", internal.order, 1, 1000);
    const auto [at, fresh] =
        places.emplace(std::make_pair(internal.part, internal.order), internal.tag);
    if (!fresh) {
      faults.add("boiler.stated_twice", field + ".order", fmt::format("{}", internal.order),
                 "a place of its own in the order", fmt::format("is also that of {}", at->second));
    }
  }
}

}  // namespace

void check_spaces(const Boiler& boiler, Faults& faults) {
  const std::vector<std::string_view> parts = part_tags(boiler);
  const std::vector<std::string_view> spaces = tags_of(boiler.spaces);
  const std::vector<std::string_view> closures = tags_of(boiler.closures);
  for (const Part& part : boiler.parts) {
    faults.known(fmt::format("part[{}].space", part.tag), part.space, spaces, "a space");
  }
  for (const Space& space : boiler.spaces) {
    for (const std::string& tag : space.parts) {
      faults.known(fmt::format("space[{}].parts", space.tag), tag, parts, "a part");
    }
  }
  for (const WayIn& way_in : boiler.ways_in) {
    const std::string field = fmt::format("way_in[{}]", way_in.tag);
    faults.known(field + ".space", way_in.space, spaces, "a space");
    faults.known(field + ".closure", way_in.closure, closures, "a closure");
    if (way_in.closure.empty() && way_in.name.empty()) {
      faults.add("boiler.missing", field + ".closure", "",
                 "the tag of a closure, or name = \"...\" for a door",
                 "is neither a closure nor a door with a name");
    }
  }
  check_internals(boiler, parts, faults);
}

}  // namespace steamworthy::boiler
