// English: where a closing stands, what a clearance permits and what lapses it.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"closing.stands",
          "{stage}[ since {since}][; {left} of {opened} opened closures left][; inside: {in_*}]"
          "[; {leaks} open {leaks|leak|leaks}][; call {call}][; {alarms} {alarms|alarm|alarms} "
          "not taken][; next: {next}, {outstanding} still outstanding]"},
    Entry{"closing.no_part", "on no described part"},
    Entry{"closing.air",
          "oxygen {top} at the top, {middle} in the middle, {bottom} at the bottom, read {age} ago"
          "[; {bad}][; {old}]"},
    Entry{"closing.air_bad", "not fit to breathe, or could burn"},
    Entry{"closing.air_old", "too old to go in on"},
    Entry{"closing.leak", "{at} at {place}[, {drops} drops a minute][, {passes}]"},
    Entry{"closing.isolation", "[{how}; ]{stands}"},
    Entry{"closing.isolation_tried", "shut off twice, and tried"},
    Entry{"closing.isolation_not_tried", "shut off twice, not tried"},
    Entry{"closing.isolation_not_double", "not shut off twice"},

    Entry{"permits.open", "closures and doors may be opened"},
    Entry{"permits.enter", "people may go in[ to {subject}], with the attendant outside"},
    Entry{"permits.close_last_way_in", "the last way in[ to {subject}] may be shut"},
    Entry{"permits.fill", "water may be let in"},
    Entry{"permits.raise_pressure", "the pump may be started[, up to {up_to}]"},
    Entry{"permits.walk_fire_side", "people may go in by name[ to {subject}] to look"},
    Entry{"permits.tighten", "the nuts[ of {subject}] may be tightened"},
    Entry{"permits.strike", "a hammer may be put[ to {subject}]"},
    Entry{"permits.break_joint", "the joint[ of {subject}] may be broken"},
    Entry{"permits.let_down", "pressure may be let down, slowly, by a valve"},
    Entry{"permits.drain", "the boiler may be drained, its vent open"},
    Entry{"permits.leave_full", "the boiler may be left standing full"},
    Entry{"permits.take_over", "the boiler may be signed over"},
    Entry{"permits.steam", "the first fire may be lit"},

    Entry{"lapses_when.open",
          "it lapses when the shift changes, an isolation or its tell-tale changes, the vent is "
          "shut, a gauge shows pressure, the metal is hotter than the site's limit, or water is "
          "let in"},
    Entry{"lapses_when.enter",
          "it lapses when the shift changes, an isolation or its tell-tale changes, the air test "
          "grows old or shows bad air, the attendant leaves, water is let in or a gauge shows "
          "pressure"},
    Entry{"lapses_when.close_last_way_in",
          "it lapses when the shift changes, anybody or anything goes in, the space is opened, the "
          "count grows old, or a device that takes part is lost"},
    Entry{"lapses_when.fill",
          "it lapses when the shift changes, an isolation changes, a plate, door, seal or internal "
          "is touched, a drain is opened, a vent is shut, or a finding must be reported"},
    Entry{"lapses_when.raise_pressure",
          "it lapses when the shift changes, an isolation, plate, vent, drain, gauge, temporary or "
          "post changes, contact is lost, a temperature leaves its window, another sheet is "
          "issued, or the hold ends"},
    Entry{"lapses_when.walk_fire_side",
          "it lapses when the shift changes, an isolation changes, pressure is raised or let down, "
          "the air test grows old or shows bad air, a plate is touched, or the attendant leaves"},
    Entry{"lapses_when.tighten",
          "it lapses when the shift changes, an isolation changes, or a gauge shows pressure"},
    Entry{"lapses_when.strike",
          "it lapses when the shift changes, an isolation changes, or a gauge shows pressure"},
    Entry{"lapses_when.break_joint",
          "it lapses when the shift changes, an isolation changes, a gauge shows pressure, the "
          "vent is shut, or the water level is seen to change"},
    Entry{"lapses_when.let_down",
          "it lapses when the shift changes, an isolation changes, the post at the valve is left "
          "or contact is lost"},
    Entry{"lapses_when.drain",
          "it lapses when the shift changes, an isolation changes, a gauge shows pressure, or the "
          "vent is shut"},
    Entry{"lapses_when.leave_full",
          "it lapses when the shift changes, an isolation changes, a plate is touched, the vent is "
          "shut, or the post is left"},
    Entry{"lapses_when.take_over",
          "it lapses when the shift changes, an isolation changes, a plate is touched, anybody "
          "goes in, a temporary is put on, or a leak or finding is made known"},
    Entry{"lapses_when.steam",
          "it lapses when the shift changes, an isolation changes, a plate is touched, anybody "
          "goes in, a temporary is put on, or a leak or finding is made known"},
};

}  // namespace

std::span<const Entry> english_view() { return entries; }

}  // namespace steamworthy::words
