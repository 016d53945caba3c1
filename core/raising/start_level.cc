#include <algorithm>

#include "boiler/circuit.h"
#include "raising/first_steam.h"

namespace steamworthy::raising {
namespace {

using boiler::Mounting;
using boiler::MountingKind;
using working::Figure;
using working::Message;
using working::Origin;

const Mounting* first_glass(const boiler::Boiler& boiler) {
  for (const Mounting& mounting : boiler.mountings) {
    if (mounting.kind == MountingKind::GaugeGlass) return &mounting;
  }
  return nullptr;
}

void check_level(const boiler::Boiler& boiler, const boiler::Part& part, units::Level level,
                 std::vector<Message>& stops) {
  for (const Mounting& mounting : boiler.mountings) {
    if (mounting.kind == MountingKind::LowWaterCutOut && level <= mounting.level) {
      stops.push_back({"raising.below_cut_out",
                       {{"level", units::measure(level)},
                        {"cut_out", mounting.tag},
                        {"at", units::measure(mounting.level)}}});
    }
  }
  if (level >= boiler::highest(part)) {
    stops.push_back({"raising.no_steam_room",
                     {{"level", units::measure(level)},
                      {"part", part.tag},
                      {"top", units::measure(boiler::highest(part))}}});
  }
}

/// Water that stays above the level: a superheater hung off the drum's top, an economizer.
void tell_higher(const boiler::Circuit& circuit, const repair::Drop& drop, units::Level level,
                 std::vector<Message>& notes) {
  for (const repair::PartWater& water : drop.left) {
    const bool is_higher =
        !water.stays_below || *water.stays_below - level > boiler::level_tolerance;
    if (!is_higher || water.held.si() <= 0.0) continue;
    const auto found =
        std::find_if(circuit.parts.begin(), circuit.parts.end(),
                     [&](const boiler::PartCircuit& one) { return one.part == water.part; });
    Message note{"raising.stands_higher",
                 {{"part", water.part}, {"volume", units::measure(water.held)}}};
    int number = 0;
    for (const std::string& drain : found->drains) {
      note.values.emplace_back("drain_" + std::to_string(++number), drain);
    }
    notes.push_back(std::move(note));
  }
}

void held_water(const boiler::Circuit& circuit, std::vector<Figure>& figures) {
  for (const boiler::PartCircuit& part : circuit.parts) {
    if (!part.holds_water()) continue;
    figures.push_back(working::known("raising.held_water", part.part,
                                     units::measure(part.held_water),
                                     {.formula = "water below the way to its drains",
                                      .method = "circuit",
                                      .remarks = {{"raising.boil_it_off_slowly", {}}}}));
  }
}

}  // namespace

StartLevel start_level(const boiler::Boiler& boiler, std::optional<units::Level> stated) {
  StartLevel result;
  const Mounting* glass = first_glass(boiler);
  const boiler::Part* part = glass == nullptr ? nullptr : boiler::find_part(boiler, glass->part);
  std::optional<Message> why;
  if (!stated) why = Message{"raising.start_level_not_stated", {}};
  if (part == nullptr) why = Message{"raising.no_gauge_glass", {}};
  if (why) {
    result.figures = {working::unknown("raising.start_level", "", *why),
                      working::unknown("raising.run_off", "", *why)};
    return result;
  }
  result.figures.push_back(working::known("raising.start_level", part->tag, units::measure(*stated),
                                          {.formula = "as stated", .method = "raising"}));
  check_level(boiler, *part, *stated, result.stops);
  const boiler::Circuit circuit = boiler::circuit(boiler);
  result.drop = repair::drop_to(boiler, {{part->tag, *stated}});
  if (result.drop.cannot_tell) {
    result.figures.push_back(
        working::unknown("raising.run_off", part->tag, *result.drop.cannot_tell));
    return result;
  }
  result.figures.push_back(working::known(
      "raising.run_off", part->tag, units::measure(result.drop.out),
      {.formula = "V = sum over parts of (all - below where it stays)",
       .inputs = {{"z", "input.start_level", units::measure(*stated), Origin::Stated, ""}},
       .method = "repair",
       .remarks = {{"repair.from_full", {}}}}));
  tell_higher(circuit, result.drop, *stated, result.notes);
  held_water(circuit, result.figures);
  return result;
}

}  // namespace steamworthy::raising
