// English: the words of the trade, as design.md section 2 puts them on pages and papers.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"figure.cannot_tell", "cannot tell"},
    Entry{"figure.method", "method"},
    Entry{"figure.sources", "sources"},

    Entry{"clearance.close_last_way_in", "clear to close the last way in"},
    Entry{"clearance.enter", "clear to enter"},
    Entry{"clearance.fill", "clear to fill"},
    Entry{"clearance.open", "clear to open"},
    Entry{"clearance.raise_pressure", "clear to raise pressure"},
    Entry{"clearance.steam", "clear to raise steam"},
    Entry{"clearance.walk_fire_side", "clear to walk the fire side"},

    Entry{"gauge_result.cannot_tell", "cannot tell"},
    Entry{"gauge_result.gaining", "gaining"},
    Entry{"gauge_result.losing", "losing"},
    Entry{"gauge_result.no_loss_seen", "no loss seen"},

    Entry{"stage.closed", "closed"},
    Entry{"stage.closing_up", "closing up"},
    Entry{"stage.filled", "filled"},
    Entry{"stage.left_safe", "left safe"},
    Entry{"stage.normalised", "normalised"},
    Entry{"stage.opened", "opened"},
    Entry{"stage.passed", "passed"},
    Entry{"stage.repairing", "repairing"},
    Entry{"stage.shut_down", "shut down"},
    Entry{"stage.taken_over", "taken over"},
    Entry{"stage.under_test", "under test"},

    Entry{"trade.boiler", "boiler"},
    Entry{"trade.closing", "this closing"},
    Entry{"trade.closure", "closure"},
    Entry{"trade.drop", "drop the water"},
    Entry{"trade.fact", "log entry"},
    Entry{"trade.figure", "figure"},
    Entry{"trade.gasket", "gasket"},
    Entry{"trade.gauge_result", "what the gauge says"},
    Entry{"trade.hold", "hold"},
    Entry{"trade.internals", "drum internals"},
    Entry{"trade.leak", "leak"},
    Entry{"trade.leak_of_concern", "leak of concern"},
    Entry{"trade.mounting", "fittings"},
    Entry{"trade.outstanding", "still outstanding"},
    Entry{"trade.part", "part"},
    Entry{"trade.place_to_look", "place to look"},
    Entry{"trade.plate", "plate"},
    Entry{"trade.pump_side", "pump side"},
    Entry{"trade.pump_up", "raising pressure"},
    Entry{"trade.reading", "reading"},
    Entry{"trade.repair", "remake the joint"},
    Entry{"trade.rule", "rule"},
    Entry{"trade.seat", "seat"},
    Entry{"trade.seen_dry", "seen dry"},
    Entry{"trade.sheet", "test sheet"},
    Entry{"trade.space", "space"},
    Entry{"trade.stud", "stud"},
    Entry{"trade.tally", "who and what is inside"},
    Entry{"trade.tell_tale", "tell-tale"},
    Entry{"trade.temporary", "blanks, gags and test gear"},
    Entry{"trade.test_valve", "test valve"},
    Entry{"trade.trace", "pressure log"},
    Entry{"trade.walkdown", "walkdown list"},
    Entry{"trade.way_in", "way in"},
    Entry{"trade.working", "working"},
    Entry{"trade.yoke", "yoke"},
};

}  // namespace

std::span<const Entry> english_trade() { return entries; }

}  // namespace steamworthy::words
