// English: what may be done to a leak, and how far to drop the water, from the room repair.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"input.hours_back", "water in again"},
    Entry{"input.hours_let_down", "letting down"},
    Entry{"input.hours_out", "water out"},
    Entry{"input.hours_raise_and_hold", "raising pressure again, and the hold"},
    Entry{"input.hours_repairs", "all repairs"},
    Entry{"input.hours_walkdown", "the whole walkdown"},
    Entry{"input.hours_walkdown_left", "what is left of this walkdown"},
    Entry{"input.water_out", "water out"},
    Entry{"input.water_rate", "rate"},
    Entry{"repair.above_the_sites_pressure",
          "{pressure} is on, and the site lets it be touched up to {up_to}: let down first"},
    Entry{"repair.break_even",
          "looking on pays if another leak that needs a drop is likelier than"},
    Entry{"repair.circuit_not_described",
          "the description does not say how the water spaces join, vent and drain: how far to drop "
          "cannot be told"},
    Entry{"repair.comes_free_anyhow",
          "the water is dropped below it anyhow: remake it while it is down, rather than try"},
    Entry{"repair.cure.engineer_decides", "the engineer and the inspector decide"},
    Entry{"repair.cure.expand", "expand the tube end again"},
    Entry{"repair.cure.find_what_passes_in", "find what passes in and isolate it"},
    Entry{"repair.cure.harden_up", "harden up"},
    Entry{"repair.cure.makers_book", "by the maker's book"},
    Entry{"repair.cure.remake_joint", "remake the joint"},
    Entry{"repair.cure.repack", "repack the gland"},
    Entry{"repair.cure.reseat", "grind in or renew the seat"},
    Entry{"repair.cure.take_up_gland", "take up the gland"},
    Entry{"repair.cure.work_valve", "open and shut the valve again, flush its seat"},
    Entry{"repair.does_not_drain_so_far",
          "{part}: its drains leave the water standing up to {stays_below}, and it has to be below "
          "{asked}; another way to get it out must be found"},
    Entry{"repair.drain_rate_not_stated",
          "how fast this boiler drains is not stated; time it once and write it down"},
    Entry{"repair.drains_pass_less",
          "what the bores alone would pass; valves and pipes pass less, so it takes longer"},
    Entry{"repair.drop_now", "drop the water now: until it is all looked at again"},
    Entry{"repair.entry_needed",
          "it is done from inside ({part}): isolations, air and attendant first"},
    Entry{"repair.fill_rate_not_stated", "how fast it fills is not stated"},
    Entry{"repair.from_full",
          "from the boiler full, only the drains named open, and cold: expanded water left out"},
    Entry{"repair.gauge_not_at_zero", "the gauge stands at {pressure}: let down to zero"},
    Entry{"repair.gauge_not_read", "nobody has read the gauge: read it"},
    Entry{"repair.hours_not_stated", "not known: {what}"},
    Entry{"repair.level_of_place_not_known",
          "how high this place lies is not known, so water below it cannot be told"},
    Entry{"repair.litres_out", "water to drop"},
    Entry{"repair.look_on", "put up with it and look on first: until it is all looked at again"},
    Entry{"repair.makers_book_only",
          "expanded or special plug: by the maker's book only, and by those who know it"},
    Entry{"repair.may_be_watched_hot",
          "a weep here may be left to watch it hot, if somebody signs for it"},
    Entry{"repair.may_not_take_up",
          "a badly seated plate may take up; dirt or a nicked gasket does not, and means remaking "
          "the joint"},
    Entry{"repair.minutes_back", "time to fill it again"},
    Entry{"repair.minutes_out", "time to drain it"},
    Entry{"repair.never_put_up_with", "a leak here is never left open for steam"},
    Entry{"repair.no_air_at_vent",
          "nobody has seen air move at an open vent: open one and see that it draws"},
    Entry{"repair.no_drain", "{part}: no drain takes its water; another way must be found"},
    Entry{"repair.no_hours", "no hours are stated"},
    Entry{"repair.passes_in",
          "something passes in: shut, blank or drain it off outside; dropping the water does not "
          "cure it"},
    Entry{"repair.place_without_part",
          "{place} belongs to no part, so how far to drop for it cannot be told"},
    Entry{"repair.pressure_off_first",
          "{pressure} is on, and the site names no pressure at which this may be touched: pressure "
          "off first"},
    Entry{"repair.soonest_out", "it cannot drain sooner than"},
    Entry{"repair.stop_and_report",
          "stop, let down, call the engineer and the inspector; nobody mends this on their own"},
    Entry{"repair.vent_before_draining",
          "let down slowly by a valve, open the vents before the drains; never by a plate"},
    Entry{"repair.water_above",
          "the water stands at {water}, and must be below {level}: drop it first"},
    Entry{"repair.water_not_seen",
          "nobody has seen where the water stands; it must be below {level}"},
    Entry{
        "repair.what_break_even_means",
        "looking on costs what is left of the walkdown; a leak found after the drop costs a whole "
        "drop more"},
    Entry{"repair.action.break", "break the joint"},
    Entry{"repair.action.strike", "strike"},
    Entry{"repair.action.tighten", "tighten"},
};

}  // namespace

std::span<const Entry> english_repair() { return entries; }

}  // namespace steamworthy::words
