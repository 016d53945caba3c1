// English: what the gauge says, from the room hold.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"hold.fell_far",
          "the pressure fell from {from} to {to}; the loss is reckoned with the pressure that "
          "drove it"},
    Entry{"hold.fell_suddenly",
          "the pressure fell suddenly; readings from there on are left out. If nobody let it "
          "down, look for what gave way"},
    Entry{"hold.find_it_by_eye",
          "find it by eye: walk every place to look, and the far end of every drain, blowdown and "
          "stop valve"},
    Entry{"hold.gaining",
          "water comes in: {gain}, between {low} and {high}; something passes in and may hide a "
          "leak"},
    Entry{"hold.gauge_changed",
          "the gauge was changed; a step of unknown size is allowed for there"},
    Entry{"hold.gauge_step_assumed",
          "the gauge's smallest step is not stated; {step} is assumed from the readings"},
    Entry{"hold.hold_longer",
          "hold longer: what the thermometers do not see grows slower than "
          "what leaks"},
    Entry{"hold.hold_shorter_than_rule",
          "the rule judges the fall over {asked}, and the hold lasted {hold}: the rule is not met "
          "yet"},
    Entry{"hold.interval_too_wide",
          "the loss lies between {low} and {high}; that neither shows a loss nor rules out the "
          "leak of concern, {concern}"},
    Entry{"hold.let_down_before",
          "the pressure was let down and raised again; only the last raising is used for the air"},
    Entry{"hold.look_for_what_passes_in",
          "look for what passes in: feed check, test valve, the header of another boiler under "
          "pressure, warming that no thermometer shows"},
    Entry{"hold.losing", "water is lost: {loss}, between {low} and {high}"},
    Entry{"hold.low_pressure_baseline",
          "hold once at low pressure: a leak falls with the pressure, cooling does not"},
    Entry{"hold.metal_stands_in_for_water",
          "no thermometer is in the water; the metal's stands in for it, no better than 0.3 K"},
    Entry{"hold.no_leak_of_concern",
          "no leak of concern is set, so none can be ruled out; a loss of {detectable} would have "
          "shown"},
    Entry{"hold.no_loss_seen",
          "no net loss larger than {concern} could hide; at most {high} is left. The eyes on "
          "every joint remain the proof"},
    Entry{"hold.no_pump_up",
          "the pump-up was not logged with the water pumped: trapped air is not known, and the "
          "description alone says how much water a fall of the gauge means"},
    Entry{"hold.no_readings", "there are fewer than two readings that can be used"},
    Entry{"hold.no_thermometer",
          "there is no thermometer on water or metal: a change of 0.3 K is allowed for, and the "
          "room's temperature is not used in its place"},
    Entry{"hold.nothing_can_be_told", "the readings of the hold do not let a loss be reckoned"},
    Entry{"hold.pressure_gone",
          "the pressure was gone before the end; readings from there on are left out"},
    Entry{"hold.pressure_rises",
          "the pressure rises while it is shut: warming or water coming in. Never leave it shut "
          "solid unattended"},
    Entry{"hold.pump_side_not_hung_open", "the pump side was not hung open"},
    Entry{"hold.pump_up_not_from_vented",
          "the log begins after pumping began: trapped air can hardly be told from it"},
    Entry{"hold.pumped_total_falls",
          "the column of water pumped falls somewhere, so it is no running total and is not used"},
    Entry{"hold.read_every_minute",
          "log pressure and both temperatures at least every minute, from the vented start on"},
    Entry{"hold.rows_out_of_range",
          "{rows} {rows|reading lies|readings lie} outside what liquid water can be, and "
          "{rows|is|are} left out"},
    Entry{"hold.scale_far_from_description",
          "the boiler took {scale} times the water that its description says: check the "
          "description, the pump's stroke and what else was connected"},
    Entry{"hold.second_thermometer",
          "put a thermometer into another water space: temperature, not the gauge, limits this"},
    Entry{"hold.set_leak_of_concern", "say which loss the gauge has to rule out"},
    Entry{"hold.shut_and_hang_open",
          "shut the test valve, bleed the pump side and leave it open, and hold again"},
    Entry{"hold.start_from_record",
          "when the hold began is not stated; the end of pumping in the log is taken"},
    Entry{"hold.test_valve_not_shut",
          "the test valve was not shut: what passes the pump cannot be told from what leaks"},
    Entry{"hold.too_few_readings",
          "the hold has {readings} {readings|reading|readings}; four are the fewest that say "
          "anything"},
};

}  // namespace

std::span<const Entry> english_hold() { return entries; }

}  // namespace steamworthy::words
