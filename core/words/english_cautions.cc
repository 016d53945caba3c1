// English: cautions, and inputs of the sheet.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"caution.air_throws",
          "trapped air throws metal when a joint lets go: vent until the gauge jumps with each "
          "stroke"},
    Entry{"caution.brittle",
          "cold thick metal can break without warning: the thickest and oldest part sets the "
          "lowest temperature"},
    Entry{
        "caution.clearances_lapse",
        "clearances lapse at the change of shift: each is asked for again by the shift that comes"},
    Entry{"caution.confined_space",
          "nobody enters without isolations tried, air tested, an attendant at the way in and a "
          "rescue that is ready"},
    Entry{"caution.count_at_shift",
          "count people and tools inside together, both shifts, before either signs"},
    Entry{"caution.fire_side_empty",
          "nobody in the furnace or on the gas side while pressure is raised or at full test "
          "pressure"},
    Entry{"caution.gags",
          "set gags up by hand only, as their maker says; count them on and count them off"},
    Entry{"caution.hot_water",
          "never test a hot boiler; water that would scald keeps people from looking closely"},
    Entry{"caution.isolation",
          "each line isolated twice with an open, dry tell-tale between, locked and tagged, tried"},
    Entry{"caution.let_down_slowly",
          "let down slowly by a valve; vent open before draining; never by a plate"},
    Entry{"caution.local_rules",
          "local codes, site rules and licensed people decide; check your copy of the rule"},
    Entry{"caution.no_wrench_under_pressure",
          "pressure off before any wrench or hammer; break a joint only at zero, air at the vent "
          "and water below it"},
    Entry{
        "caution.nobody_inside",
        "nobody and nothing inside: a fresh count by two people before the last way in is closed"},
    Entry{"caution.overshoot",
          "raise slowly and stop short of each stage; never pass the figure under never above"},
    Entry{"caution.pump_attended",
          "one named hand stays at the pump, with the stop word known to all"},
    Entry{"caution.pump_side_hung_open",
          "test valve shut, pump side bled and hung open, or the hold proves nothing"},
    Entry{"caution.shut_solid",
          "a full boiler shut solid gains several bar with each degree: never leave it so "
          "unattended"},
    Entry{"caution.temporaries_off_before_steam",
          "every blank, gag and piece of test gear off and seen off, by number, before fire"},
    Entry{"caution.vents_manned", "vents open and manned while filling"},
    Entry{"caution.walkdown",
          "go near only after the hold, at examination pressure, by name, nobody raising pressure "
          "meanwhile"},
    Entry{"caution.yielding",
          "a gauge that stops rising while the pump strokes may be metal yielding: stop, let down, "
          "call the inspector"},
    Entry{"input.air_temperature", "air temperature"},
    Entry{"input.allowed_fall", "allowed fall"},
    Entry{"input.allowed_time", "within"},
    Entry{"input.density", "density of the water"},
    Entry{"input.dew_point", "dew point"},
    Entry{"input.fill_rate", "filling rate"},
    Entry{"input.gauge_range", "range of the gauge"},
    Entry{"input.gauge_reading", "reading"},
    Entry{"input.gauge_resolution", "smallest step of the gauge"},
    Entry{"input.heat_capacity_mj_per_k", "heat for each kelvin"},
    Entry{"input.heater_power", "power"},
    Entry{"input.hold", "length of the hold"},
    Entry{"input.level", "level"},
    Entry{"input.ligament_efficiency", "ligament efficiency"},
    Entry{"input.measured_wall", "least measured wall"},
    Entry{"input.metal_temperature", "metal temperature"},
    Entry{"input.ml_per_bar", "water for each bar"},
    Entry{"input.ml_per_kelvin_of_water", "water for each kelvin, the water alone"},
    Entry{"input.nominal_wall", "wall as made"},
    Entry{"input.number_of_parts", "parts"},
    Entry{"input.pressure_at_part", "pressure at the part"},
    Entry{"input.pressure_at_reference", "pressure at the reference level"},
    Entry{"input.pressure_at_valve", "pressure at the valve"},
    Entry{"input.pump_rate", "pump rate"},
    Entry{"input.pump_stroke", "one stroke"},
    Entry{"input.reference_level", "level where the pressure is meant"},
    Entry{"input.relative_humidity", "relative humidity"},
    Entry{"input.stress_cap", "cap"},
    Entry{"input.supply_temperature", "temperature of the supply"},
    Entry{"input.test_pressure", "test pressure"},
    Entry{"input.thermometer_resolution", "smallest step of the thermometer"},
    Entry{"input.unseen_drift", "warming that no thermometer shows"},
    Entry{"input.valve_setting", "setting"},
    Entry{"input.volume_to_pump", "water to pump"},
    Entry{"input.wall_stress", "stress"},
    Entry{"input.water_content", "water content"},
    Entry{"input.water_temperature", "water temperature"},
    Entry{"input.yield", "yield strength"},
};

}  // namespace

std::span<const Entry> english_cautions() { return entries; }

}  // namespace steamworthy::words
