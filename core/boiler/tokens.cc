#include "boiler/tokens.h"

#include <cassert>
#include <string>

namespace steamworthy::boiler {
namespace {

template <class Enum>
struct Word {
  Enum value;
  std::string_view token;
};

constexpr Word<BoilerKind> boiler_kind_words[] = {
    {BoilerKind::Watertube, "watertube"},
    {BoilerKind::Firetube, "firetube"},
    {BoilerKind::Other, "other"},
};
constexpr Word<PartKind> part_kind_words[] = {
    {PartKind::Drum, "drum"},   {PartKind::Header, "header"}, {PartKind::TubeBank, "tube_bank"},
    {PartKind::Shell, "shell"}, {PartKind::Coil, "coil"},     {PartKind::Pipe, "pipe"},
};
constexpr Word<HeadKind> head_kind_words[] = {
    {HeadKind::Flat, "flat"},
    {HeadKind::Elliptical, "elliptical"},
    {HeadKind::Torispherical, "torispherical"},
    {HeadKind::Hemispherical, "hemispherical"},
};
constexpr Word<Axis> axis_words[] = {
    {Axis::Horizontal, "horizontal"},
    {Axis::Vertical, "vertical"},
    {Axis::Inclined, "inclined"},
};
constexpr Word<Run> run_words[] = {
    {Run::Straight, "straight"},
    {Run::Hanging, "hanging"},
    {Run::Standing, "standing"},
};
constexpr Word<InsideKind> inside_kind_words[] = {
    {InsideKind::Furnace, "furnace"},
    {InsideKind::FireTubes, "fire_tubes"},
    {InsideKind::ReversalChamber, "reversal_chamber"},
};
constexpr Word<ThermalGroup> thermal_group_words[] = {
    {ThermalGroup::TopDrum, "top_drum"},
    {ThermalGroup::Tubes, "tubes"},
    {ThermalGroup::Lower, "lower"},
};
constexpr Word<ClosureKind> closure_kind_words[] = {
    {ClosureKind::Manhole, "manhole"}, {ClosureKind::Handhole, "handhole"},
    {ClosureKind::Plug, "plug"},       {ClosureKind::Cap, "cap"},
    {ClosureKind::Flange, "flange"},
};
constexpr Word<OpeningShape> opening_shape_words[] = {
    {OpeningShape::Oval, "oval"},
    {OpeningShape::Circle, "circle"},
    {OpeningShape::Oblong, "oblong"},
};
constexpr Word<GasketKind> gasket_kind_words[] = {
    {GasketKind::CompressedFibre, "compressed_fibre"},
    {GasketKind::FlexibleGraphite, "flexible_graphite"},
    {GasketKind::SpiralWound, "spiral_wound"},
    {GasketKind::Rubber, "rubber"},
    {GasketKind::WovenTape, "woven_tape"},
    {GasketKind::SoftMetal, "soft_metal"},
    {GasketKind::MetalToMetal, "metal_to_metal"},
    {GasketKind::Other, "other"},
};
constexpr Word<Side> side_words[] = {
    {Side::Front, "front"}, {Side::Rear, "rear"}, {Side::Left, "left"},
    {Side::Right, "right"}, {Side::Top, "top"},   {Side::Bottom, "bottom"},
};
constexpr Word<SpaceSide> space_side_words[] = {
    {SpaceSide::Water, "water"},
    {SpaceSide::Fire, "fire"},
    {SpaceSide::Gas, "gas"},
    {SpaceSide::Steam, "steam"},
};
constexpr Word<MountingKind> mounting_kind_words[] = {
    {MountingKind::SafetyValve, "safety_valve"},
    {MountingKind::Vent, "vent"},
    {MountingKind::Drain, "drain"},
    {MountingKind::Blowdown, "blowdown"},
    {MountingKind::SurfaceBlowdown, "surface_blowdown"},
    {MountingKind::GaugeGlass, "gauge_glass"},
    {MountingKind::StopValve, "stop_valve"},
    {MountingKind::StopCheck, "stop_check"},
    {MountingKind::FeedCheck, "feed_check"},
    {MountingKind::FeedStop, "feed_stop"},
    {MountingKind::PressureGauge, "pressure_gauge"},
    {MountingKind::LowWaterCutOut, "low_water_cut_out"},
    {MountingKind::SampleValve, "sample_valve"},
    {MountingKind::ChemicalFeed, "chemical_feed"},
    {MountingKind::FillValve, "fill_valve"},
    {MountingKind::TestConnection, "test_connection"},
    {MountingKind::Instrument, "instrument"},
};
constexpr Word<IsolationKind> isolation_kind_words[] = {
    {IsolationKind::TwoValvesAndTellTale, "two_valves_and_tell_tale"},
    {IsolationKind::Blank, "blank"},
};
constexpr Word<TemporaryKind> temporary_kind_words[] = {
    {TemporaryKind::Blank, "blank"},
    {TemporaryKind::Gag, "gag"},
    {TemporaryKind::TestGear, "test_gear"},
};
constexpr Word<OffBefore> off_before_words[] = {
    {OffBefore::Filling, "filling"},
    {OffBefore::RaisingPressure, "raising_pressure"},
    {OffBefore::Steam, "steam"},
};
constexpr Word<PlaceKind> place_kind_words[] = {
    {PlaceKind::Closure, "closure"},
    {PlaceKind::TubeEnds, "tube_ends"},
    {PlaceKind::Seam, "seam"},
    {PlaceKind::Nozzle, "nozzle"},
    {PlaceKind::PluggedTube, "plugged_tube"},
    {PlaceKind::Gland, "gland"},
    {PlaceKind::Bend, "bend"},
    {PlaceKind::FarEnd, "far_end"},
    {PlaceKind::Other, "other"},
};
constexpr Word<ThermometerOn> thermometer_on_words[] = {
    {ThermometerOn::Water, "water"},
    {ThermometerOn::Metal, "metal"},
    {ThermometerOn::Air, "air"},
};

/// "Safety valve" and "safety-valve" are safety_valve.
std::string normal(std::string_view written) {
  std::string result;
  for (char c : written) {
    if (c == ' ' || c == '-') c = '_';
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    result += c;
  }
  return result;
}

template <class Enum, std::size_t N>
std::string_view find_token(const Word<Enum> (&words)[N], Enum value) {
  for (const Word<Enum>& word : words) {
    if (word.value == value) return word.token;
  }
  assert(false);  // each table names every value: tokens_test.cc
  return {};
}

template <class Enum, std::size_t N>
std::optional<Enum> find_value(const Word<Enum> (&words)[N], std::string_view written) {
  const std::string token = normal(written);
  for (const Word<Enum>& word : words) {
    if (word.token == token) return word.value;
  }
  return std::nullopt;
}

template <class Enum, std::size_t N>
std::vector<std::string_view> list(const Word<Enum> (&words)[N]) {
  std::vector<std::string_view> result;
  for (const Word<Enum>& word : words) result.push_back(word.token);
  return result;
}

}  // namespace

#define STEAMWORTHY_TOKENS(Enum, table)                                   \
  std::string_view token(Enum value) { return find_token(table, value); } \
  std::optional<Enum> Words<Enum>::value_of(std::string_view written) {   \
    return find_value(table, written);                                    \
  }                                                                       \
  std::vector<std::string_view> Words<Enum>::all() { return list(table); }

STEAMWORTHY_TOKENS(BoilerKind, boiler_kind_words)
STEAMWORTHY_TOKENS(PartKind, part_kind_words)
STEAMWORTHY_TOKENS(HeadKind, head_kind_words)
STEAMWORTHY_TOKENS(Axis, axis_words)
STEAMWORTHY_TOKENS(Run, run_words)
STEAMWORTHY_TOKENS(InsideKind, inside_kind_words)
STEAMWORTHY_TOKENS(ThermalGroup, thermal_group_words)
STEAMWORTHY_TOKENS(ClosureKind, closure_kind_words)
STEAMWORTHY_TOKENS(OpeningShape, opening_shape_words)
STEAMWORTHY_TOKENS(GasketKind, gasket_kind_words)
STEAMWORTHY_TOKENS(Side, side_words)
STEAMWORTHY_TOKENS(SpaceSide, space_side_words)
STEAMWORTHY_TOKENS(MountingKind, mounting_kind_words)
STEAMWORTHY_TOKENS(IsolationKind, isolation_kind_words)
STEAMWORTHY_TOKENS(TemporaryKind, temporary_kind_words)
STEAMWORTHY_TOKENS(OffBefore, off_before_words)
STEAMWORTHY_TOKENS(PlaceKind, place_kind_words)
STEAMWORTHY_TOKENS(ThermometerOn, thermometer_on_words)

#undef STEAMWORTHY_TOKENS

}  // namespace steamworthy::boiler
