// English: what comes off and is proved before fire, first steam, from the room raising.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"input.start_level", "water level to start with"},
    Entry{"raising.below_cut_out",
          "{level} is not above low-water cut-out {cut_out}, which lies at {at}: start higher"},
    Entry{"raising.boil_it_off_slowly",
          "it does not drain: boil it off slowly, outlet vent and drains open until steam goes on "
          "line"},
    Entry{"raising.do.blow_through",
          "open {subject} to the boiler and blow it through, water and "
          "steam side"},
    Entry{"raising.do.disconnect_pump",
          "shut {subject}, take the test pump's hose off, plug or "
          "blank it for steam"},
    Entry{"raising.do.free_hangers", "take the pins out, see that expansion is clear"},
    Entry{"raising.do.harden_up", "harden up {subject}, pressure off"},
    Entry{"raising.do.put_back", "open {subject} to the boiler again"},
    Entry{"raising.do.restore_line", "set {subject} as for steaming, shut its tell-tale"},
    Entry{"raising.do.see_off", "see {subject} off, by its number"},
    Entry{"raising.do.take_blank_out",
          "take the blank of {subject} out, new gasket, valves as for "
          "steaming"},
    Entry{"raising.do.take_gauge_off", "take {subject} off, or say that it stays"},
    Entry{"raising.do.take_off", "take {subject} off and have it seen off, by its number"},
    Entry{"raising.do.trip_cut_out",
          "open {subject} to the boiler and prove that it trips before fire is lit"},
    Entry{"raising.follow_up_below",
          "the site lets plates be followed up below {pressure}; above it, pressure off"},
    Entry{
        "raising.follow_up_pressure_off",
        "follow plates up with pressure off: the site states no pressure at which it may be done"},
    Entry{"raising.held_water", "water that does not drain"},
    Entry{"raising.look.hardened_up", "hardened up after it was seen dry"},
    Entry{"raising.look.opened", "opened this time"},
    Entry{"raising.look.watched_hot", "weep to watch hot"},
    Entry{"raising.look_at_expansion", "drums, headers and pipes free to expand on every round"},
    Entry{"raising.look_at_glands", "glands, and the far ends of drains and vents, on every round"},
    Entry{"raising.no_gauge_glass", "no gauge glass on a part is described"},
    Entry{"raising.no_steam_room", "{level} leaves no steam room: {part} ends at {top}"},
    Entry{"raising.no_working_pressure", "no working pressure is described"},
    Entry{"raising.round_pressure", "look round at"},
    Entry{"raising.rounds_are_practice",
          "1 to 2 bar, half and working pressure are common practice, no source"},
    Entry{"raising.run_off", "water to run off, from full to that level"},
    Entry{"raising.stands_higher",
          "{part} keeps {volume} standing above that level[; its drains: {drain_*}]"},
    Entry{"raising.start_level", "water level to start with"},
    Entry{"raising.start_level_not_stated",
          "the level to start with is not stated; the maker's book or the site says"},
    Entry{"raising.task.disconnect_pump", "test pump off"},
    Entry{"raising.task.free_hangers", "hangers"},
    Entry{"raising.task.harden_up", "plates"},
    Entry{"raising.task.prove_protection", "cut-outs and glasses"},
    Entry{"raising.task.put_back", "shut off for the test"},
    Entry{"raising.task.restore_line", "isolated lines"},
    Entry{"raising.task.take_off_gauge", "test gauges off"},
    Entry{"raising.task.take_off_temporary", "temporaries off"},
    Entry{"raising.why.free_hangers", "nobody has said that the spring hangers are free"},
    Entry{"raising.why.is_on", "{subject} is on"},
    Entry{"raising.why.never_told_of",
          "no entry tells whether {subject} was fitted: look where it would be"},
    Entry{"raising.why.not_hardened", "{subject} is not hardened up"},
    Entry{"raising.why.not_proved", "{subject} is not proved"},
    Entry{"raising.why.not_seen_off", "{subject} was not seen off"},
    Entry{"raising.why.pump_on", "nobody has said that the test pump is off {subject}"},
    Entry{"raising.why.restore_line", "{subject} still stands isolated, as far as is told"},
    Entry{"raising.why.shut_off", "{subject} is shut off from the boiler"},
    Entry{"raising.why.test_gauge_on", "test gauge {subject} is on"},
};

}  // namespace

std::span<const Entry> english_raising() { return entries; }

}  // namespace steamworthy::words
