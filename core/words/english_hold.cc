// English: what the gauge says, from the room hold.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"hold.air_known_at", "pressure by which the air could be known"},
    Entry{"hold.air_may_sit", "air may sit in {part}, which holds back {volume} when filled"},
    Entry{"hold.air_never_known",
          "the air was not known to a quarter of itself at any pressure of this log"},
    Entry{"hold.allowed_fall_as_loss", "the rule's allowed fall, as a loss of water"},
    Entry{"hold.change_not_on_the_log",
          "when the gauge was changed cannot be placed on the log; say it in the log's own time"},
    Entry{"hold.detectable", "smallest loss that would have shown"},
    Entry{"hold.fall", "fall of the gauge"},
    Entry{"hold.fall_air", "of it, air going into solution"},
    Entry{"hold.fall_cooling", "of it, water and steel changing temperature"},
    Entry{"hold.fall_loss", "of it, the net loss"},
    Entry{"hold.fall_relaxing", "of it, relaxing after the pressure was raised"},
    Entry{"hold.fall_rest", "of it, the rest"},
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
    Entry{"hold.loss_at_end", "net loss at the end of the hold"},
    Entry{"hold.loss_at_end_high", "at the end, high end of its 90 % interval"},
    Entry{"hold.loss_at_end_low", "at the end, low end of its 90 % interval"},
    Entry{"hold.low_pressure_baseline",
          "hold once at low pressure: a leak falls with the pressure, cooling does not"},
    Entry{"hold.may_be_gaining",
          "water may come in, between {low} and {high}, which could hide a leak"},
    Entry{"hold.metal_stands_in_for_water",
          "no thermometer is in the water; the metal's stands in for it, no better than 0.3 K"},
    Entry{"hold.net_loss", "net loss, mean over the hold (less than zero: water comes in)"},
    Entry{"hold.net_loss_high", "high end of its 90 % interval"},
    Entry{"hold.net_loss_low", "low end of its 90 % interval"},
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
    Entry{"hold.pump_rate", "rate of the pump while it ran"},
    Entry{"hold.pump_side_not_hung_open", "the pump side was not hung open"},
    Entry{"hold.pump_up_not_from_vented",
          "the log begins after pumping began: trapped air can hardly be told from it"},
    Entry{"hold.pumped", "water pumped up to the hold"},
    Entry{"hold.pumped_airless", "of which an airless boiler would have taken"},
    Entry{"hold.pumped_total_falls",
          "the column of water pumped falls somewhere, so it is no running total and is not used"},
    Entry{"hold.read_every_minute",
          "log pressure and both temperatures at least every minute, from the vented start on"},
    Entry{"hold.result_is", "what the gauge says: {result}"},
    Entry{"hold.rows_out_of_range",
          "{rows} {rows|reading lies|readings lie} outside what liquid water can be, and "
          "{rows|is|are} left out"},
    Entry{"hold.rule_met", "rule met: the gauge fell by {seen}, and {allowed} is allowed"},
    Entry{"hold.rule_not_met", "rule not met: the gauge fell by {seen}, and {allowed} is allowed"},
    Entry{"hold.scale_far_from_description",
          "the boiler took {scale} times the water that its description says: check the "
          "description, the pump's stroke and what else was connected"},
    Entry{"hold.second_thermometer",
          "put a thermometer into another water space: temperature, not the gauge, limits this"},
    Entry{"hold.section.fall", "What the fall is made of"},
    Entry{"hold.section.pump_up", "Raising pressure"},
    Entry{"hold.section.result", "What the gauge says"},
    Entry{"hold.section.rule", "What the rule says of the fall"},
    Entry{"hold.set_leak_of_concern", "say which loss the gauge has to rule out"},
    Entry{"hold.shut_and_hang_open",
          "shut the test valve, bleed the pump side and leave it open, and hold again"},
    Entry{"hold.start_from_record",
          "when the hold began is not stated; the end of pumping in the log is taken"},
    Entry{"hold.start_not_on_the_log",
          "when the hold began cannot be placed on the log; say it in the log's own time"},
    Entry{"hold.stroke_not_stated",
          "the log counts strokes, and the test file does not say what a stroke delivers: the "
          "water pumped is not known"},
    Entry{"hold.tell_tale_runs", "tell-tale {tag} was not dry: a valve passes there"},
    Entry{"hold.test_valve_not_shut",
          "the test valve was not shut: what passes the pump cannot be told from what leaks"},
    Entry{"hold.too_few_readings",
          "the hold has {readings} {readings|reading|readings}; four are the fewest that say "
          "anything"},
    Entry{"hold.trapped_air", "trapped air, at the barometer's pressure"},
    Entry{"hold.trapped_air_high", "high end of its 90 % interval"},
    Entry{"hold.trapped_air_low", "low end of its 90 % interval"},
    Entry{"hold.venting_costs", "letting down, venting and pumping again would take"},
    Entry{"input.leak_of_concern", "leak of concern"},
    Entry{"input.loss_per_kelvin", "apparent loss for each kelvin of cooling"},
    Entry{"input.scale_found", "water taken per pressure, against the description"},
    Entry{"input.steel_growth", "growth of the steel under pressure"},
    Entry{"input.water_per_pressure", "water for each unit of pressure"},
};

}  // namespace

std::span<const Entry> english_hold() { return entries; }

}  // namespace steamworthy::words
