#include "closing/safety.h"

#include <array>

namespace steamworthy::closing {
namespace {

using facts::RoleName;

constexpr Roles never = nobody;
constexpr Roles engineer = bit(RoleName::Engineer);
constexpr Roles lead = bit(RoleName::LeadHand) | engineer;
constexpr RoleName LeadHand = RoleName::LeadHand;
constexpr RoleName Hand = RoleName::Hand;
constexpr RoleName PumpHand = RoleName::PumpHand;
constexpr RoleName Attendant = RoleName::Attendant;
constexpr RoleName Engineer = RoleName::Engineer;
constexpr RoleName WatchEngineer = RoleName::WatchEngineer;

// clang-format off
constexpr std::array rule_rows = {
    RuleRow{Rule::S1, "S1", "Open", "A boiler is opened only at zero gauge, vented and moving air, drained, cool, and with every line of its isolation list shut off twice."},
    RuleRow{Rule::S2, "S2", "Enter", "Nobody goes in without isolations tried, air tested lately at three heights, and an attendant by name."},
    RuleRow{Rule::S3, "S3", "Close the last way in", "The last way in is closed only on a fresh count of two people who looked in and called, with every device heard from."},
    RuleRow{Rule::S4, "S4", "Fill", "Water is let in only when every water-side space is closed by S3, every opened closure set, internals in, drains shut, vents open and manned."},
    RuleRow{Rule::S5, "S5", "Raise pressure", "Pressure is raised only with the fire side empty and everything ready that keeps the test within its figures."},
    RuleRow{Rule::S6, "S6", "Fire side in for the walkdown", "The fire side is walked only by name, after the hold, at examination pressure, while no clearance to raise stands."},
    RuleRow{Rule::S7, "S7", "Tighten, strike, break", "A wrench or hammer waits for pressure off; a joint is broken only at zero, with air at the vent and the water below it."},
    RuleRow{Rule::S8, "S8", "Let down and drain", "Pressure goes down slowly by a valve; a boiler is drained with its vent open, and never left shut solid unattended."},
    RuleRow{Rule::S9, "S9", "Steam", "Fire only with every temporary off and seen off, every plate hardened up, every place seen dry, protection proved, two signatures."},
    RuleRow{Rule::S10, "S10", "Clearances lapse", "A clearance lapses at shift change, when readings or the count grow old, when a temperature leaves its window, when a plate is touched or an isolation changes."},
    RuleRow{Rule::S11, "S11", "Late entries", "A late entry that makes a clearance wrong raises an alarm that stays until somebody with the right role takes it."},
};

constexpr std::array check_rows = {
    CheckRow{Check::S1Pressure, Rule::S1, "s1_pressure", never, LeadHand, 1, "no gauge was read, or the last reading of one is above zero"},
    CheckRow{Check::S1Vent, Rule::S1, "s1_vent", never, Hand, 1, "no vent is open and was seen to move air"},
    CheckRow{Check::S1Isolation, Rule::S1, "s1_isolation", never, LeadHand, 1, "a line is not shut off twice: two shut valves with an open, dry tell-tale between, or a blank; a stop-check is neither"},
    CheckRow{Check::S1Hot, Rule::S1, "s1_hot", engineer, LeadHand, 2, "the metal is hotter than the site opens at, or its temperature or that limit is not known"},
    CheckRow{Check::S1Drained, Rule::S1, "s1_drained", engineer, Hand, 2, "a drain or blowdown was not proved clear and run dry"},
    CheckRow{Check::S2Isolation, Rule::S2, "s2_isolation", never, LeadHand, 1, "a line is not shut off twice, or was not tried"},
    CheckRow{Check::S2Air, Rule::S2, "s2_air", never, Attendant, 1, "the air in the space was not tested"},
    CheckRow{Check::S2AirOld, Rule::S2, "s2_air_old", never, Attendant, 1, "the test of the air is older than the site allows, is dated ahead of the clock, or the site names no age"},
    CheckRow{Check::S2AirLimits, Rule::S2, "s2_air_limits", never, LeadHand, 1, "oxygen under 19.5 or over 23.5 %, more than 10 % of the lower flammable limit, or a gas at the site's alarm value"},
    CheckRow{Check::S2AirLow, Rule::S2, "s2_air_low", lead, Attendant, 2, "oxygen under 20.8 % and nobody said why"},
    CheckRow{Check::S2Attendant, Rule::S2, "s2_attendant", never, LeadHand, 1, "no attendant stands at the space"},
    CheckRow{Check::S2Pressure, Rule::S2, "s2_pressure", never, LeadHand, 1, "the boiler is being filled or is under pressure (the fire side is walked by S6)"},
    CheckRow{Check::S3Inside, Rule::S3, "s3_inside", never, Attendant, 1, "people or things are inside by the tally or by the count"},
    CheckRow{Check::S3Count, Rule::S3, "s3_count", never, LeadHand, 1, "no count by two names since the last entry, shift change or lost device that looked in and called"},
    CheckRow{Check::S3CountOld, Rule::S3, "s3_count_old", never, LeadHand, 1, "the count is older than the site allows, is dated ahead of the clock, or the site names no age"},
    CheckRow{Check::S3Device, Rule::S3, "s3_device", never, LeadHand, 1, "a device that takes part has not been heard from since the count and may hold an entry"},
    CheckRow{Check::S3Missing, Rule::S3, "s3_missing", never, LeadHand, 1, "entries of a device are known to exist and are not here"},
    CheckRow{Check::S4Space, Rule::S4, "s4_space", never, LeadHand, 1, "a water-side space was open or entered and its last way in was not closed by S3"},
    CheckRow{Check::S4Closure, Rule::S4, "s4_closure", never, Hand, 2, "a closure is open, or nobody said whether it was opened"},
    CheckRow{Check::S4Plate, Rule::S4, "s4_plate", engineer, Hand, 3, "a plate does not belong to its hole, or an opened closure has no gasket or was not looked at"},
    CheckRow{Check::S4Gap, Rule::S4, "s4_gap", engineer, LeadHand, 2, "gaps round a plate are to be reported, or those of a manway were not measured"},
    CheckRow{Check::S4Internal, Rule::S4, "s4_internal", engineer, Hand, 3, "an internal that was taken out is not back"},
    CheckRow{Check::S4Header, Rule::S4, "s4_header", engineer, Hand, 3, "a header that was opened was not looked into and sealed"},
    CheckRow{Check::S4Tubes, Rule::S4, "s4_tubes", engineer, LeadHand, 3, "a ball is stuck or missing, or tubes that were to be tried were not"},
    CheckRow{Check::S4Finding, Rule::S4, "s4_finding", engineer, Engineer, 2, "a finding that stops the job, or must be reported, is undecided"},
    CheckRow{Check::S4Drain, Rule::S4, "s4_drain", lead, Hand, 3, "a drain or blowdown is not shut"},
    CheckRow{Check::S4Vent, Rule::S4, "s4_vent", never, Hand, 2, "a vent is not open"},
    CheckRow{Check::S4VentManned, Rule::S4, "s4_vent_manned", lead, LeadHand, 3, "nobody stands at a vent"},
    CheckRow{Check::S4Order, Rule::S4, "s4_order", engineer, LeadHand, 3, "parts trap air and the order of filling is not known"},
    CheckRow{Check::S5FireSide, Rule::S5, "s5_fire_side", never, LeadHand, 1, "somebody is, or may be, on the fire side: no count that S3 would take"},
    CheckRow{Check::S5Sheet, Rule::S5, "s5_sheet", never, Engineer, 2, "no test sheet was issued, or the clearance names no pressure"},
    CheckRow{Check::S5Above, Rule::S5, "s5_above", never, Engineer, 1, "the pressure asked for is above the sheet's"},
    CheckRow{Check::S5Filled, Rule::S5, "s5_filled", never, LeadHand, 2, "the boiler is not full, or stands open"},
    CheckRow{Check::S5Vent, Rule::S5, "s5_vent", never, Hand, 1, "a vent was not seen to run solid, or is not shut"},
    CheckRow{Check::S5Temperature, Rule::S5, "s5_temperature", engineer, LeadHand, 2, "water or metal is outside the sheet's window, or was not read"},
    CheckRow{Check::S5Gauges, Rule::S5, "s5_gauges", never, PumpHand, 2, "fewer than two test gauges are fitted"},
    CheckRow{Check::S5SafetyValve, Rule::S5, "s5_safety_valve", never, LeadHand, 1, "a safety valve without gag could lift below the pressure asked for"},
    CheckRow{Check::S5Relief, Rule::S5, "s5_relief", engineer, PumpHand, 2, "the pump's relief was not tried, or lifts above the never-above figure"},
    CheckRow{Check::S5Instrument, Rule::S5, "s5_instrument", engineer, Hand, 2, "an instrument or glass that cannot take the pressure is not shut off"},
    CheckRow{Check::S5Hangers, Rule::S5, "s5_hangers", engineer, Engineer, 2, "spring hangers are not pinned"},
    CheckRow{Check::S5Pump, Rule::S5, "s5_pump", never, LeadHand, 2, "nobody by name stands at the pump"},
    CheckRow{Check::S5Contact, Rule::S5, "s5_contact", never, LeadHand, 1, "contact with a post is lost"},
    CheckRow{Check::S5People, Rule::S5, "s5_people", never, LeadHand, 1, "people were not seen clear"},
    CheckRow{Check::S5StopWord, Rule::S5, "s5_stop_word", never, LeadHand, 2, "the stop word was not checked"},
    CheckRow{Check::S6Raising, Rule::S6, "s6_raising", never, LeadHand, 1, "a clearance to raise stands, or the pump runs"},
    CheckRow{Check::S6Hold, Rule::S6, "s6_hold", never, LeadHand, 1, "the rule's hold is not met"},
    CheckRow{Check::S6Pressure, Rule::S6, "s6_pressure", never, PumpHand, 1, "a gauge was not read since the hold, or stands above examination pressure"},
    CheckRow{Check::S7Pressure, Rule::S7, "s7_pressure", never, LeadHand, 1, "pressure is on, above what the site's rule names for that kind of closure"},
    CheckRow{Check::S7Zero, Rule::S7, "s7_zero", never, LeadHand, 1, "no gauge was read, or the last reading of one is above zero"},
    CheckRow{Check::S7Vent, Rule::S7, "s7_vent", never, Hand, 1, "no vent is open and was seen to move air"},
    CheckRow{Check::S7Water, Rule::S7, "s7_water", never, LeadHand, 1, "the water was not seen below that plate"},
    CheckRow{Check::S8Valve, Rule::S8, "s8_valve", never, LeadHand, 2, "nobody stands at the let-down valve"},
    CheckRow{Check::S8Zero, Rule::S8, "s8_zero", never, LeadHand, 2, "pressure is on before draining"},
    CheckRow{Check::S8Vent, Rule::S8, "s8_vent", never, Hand, 2, "no vent is open before draining"},
    CheckRow{Check::S8ShutSolid, Rule::S8, "s8_shut_solid", never, LeadHand, 1, "the full boiler would stand shut solid with nobody to look after it"},
    CheckRow{Check::S9Inside, Rule::S9, "s9_inside", never, LeadHand, 1, "somebody or something is, or may be, inside a space"},
    CheckRow{Check::S9Temporary, Rule::S9, "s9_temporary", never, Hand, 1, "a temporary is on"},
    CheckRow{Check::S9SeenOff, Rule::S9, "s9_seen_off", never, LeadHand, 1, "a temporary was not seen off by its number"},
    CheckRow{Check::S9Hold, Rule::S9, "s9_hold", engineer, LeadHand, 2, "the rule's hold is not met"},
    CheckRow{Check::S9NotSeen, Rule::S9, "s9_not_seen", engineer, LeadHand, 2, "a place to look was not seen dry"},
    CheckRow{Check::S9Touched, Rule::S9, "s9_touched", engineer, LeadHand, 2, "a closure was touched after it was seen dry, other than by hardening up"},
    CheckRow{Check::S9Hardened, Rule::S9, "s9_hardened", engineer, Hand, 2, "a plate that was opened is not hardened up"},
    CheckRow{Check::S9Leak, Rule::S9, "s9_leak", never, LeadHand, 1, "a leak at a tube joint, weld, plug, crack or valve end is open"},
    CheckRow{Check::S9Weep, Rule::S9, "s9_weep", never, Engineer, 2, "a weep at a gasket or gland is open and nobody signed to watch it hot"},
    CheckRow{Check::S9Protection, Rule::S9, "s9_protection", never, WatchEngineer, 1, "a low-water cut-out or gauge glass is not back and proved"},
    CheckRow{Check::S9Hangers, Rule::S9, "s9_hangers", engineer, Engineer, 2, "spring hangers are still pinned"},
    CheckRow{Check::S9Normalised, Rule::S9, "s9_normalised", never, LeadHand, 2, "valves and controls do not stand as for steaming"},
    CheckRow{Check::S9Finding, Rule::S9, "s9_finding", engineer, Engineer, 2, "a finding that stops the job, or must be reported, is undecided"},
    CheckRow{Check::S9TakenOver, Rule::S9, "s9_taken_over", never, WatchEngineer, 2, "the boiler was not given and received by two signatures"},
    CheckRow{Check::S10Shift, Rule::S10, "s10_shift", never, LeadHand, 2, "the shift changed after the clearance was given"},
    CheckRow{Check::S10Plate, Rule::S10, "s10_plate", never, LeadHand, 2, "a closure was opened or touched after it was given"},
    CheckRow{Check::S10Isolation, Rule::S10, "s10_isolation", never, LeadHand, 1, "an isolation changed, or its tell-tale ran, after it was given"},
    CheckRow{Check::S10Entry, Rule::S10, "s10_entry", never, LeadHand, 1, "somebody or something went in after it was given"},
    CheckRow{Check::S10Temperature, Rule::S10, "s10_temperature", never, LeadHand, 2, "a temperature left its window after it was given"},
    CheckRow{Check::S10Air, Rule::S10, "s10_air", never, Attendant, 1, "the air went bad, or the attendant left, after it was given"},
    CheckRow{Check::S10Boiler, Rule::S10, "s10_boiler", never, LeadHand, 2, "the boiler was changed after it was given: pressure, water, a vent, drain, post, gauge, temporary or mounting"},
    CheckRow{Check::S11Late, Rule::S11, "s11_late", never, LeadHand, 1, "a clearance was given that the entries known now speak against"},
    CheckRow{Check::S11Alarm, Rule::S11, "s11_alarm", never, LeadHand, 1, "an alarm was not taken"},
    CheckRow{Check::S11Unread, Rule::S11, "s11_unread", never, Engineer, 2, "an entry cannot be read here, was written by a later program, or two entries carry the same number"},
    CheckRow{Check::S11Names, Rule::S11, "s11_names", never, LeadHand, 2, "a clearance was given without the pen, by one name, or by somebody without the role"},
};
// clang-format on

}  // namespace

std::span<const RuleRow> rules() { return rule_rows; }

std::span<const CheckRow> checks() { return check_rows; }

const CheckRow& row(Check check) { return check_rows[static_cast<std::size_t>(check)]; }

const CheckRow* find_check(std::string_view token) {
  for (const CheckRow& one : check_rows) {
    if (one.token == token) return &one;
  }
  return nullptr;
}

}  // namespace steamworthy::closing
