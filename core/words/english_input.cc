// English: names of what goes into a formula, and of where a value came from.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"origin.assumed", "assumed"},
    Entry{"origin.computed", "computed"},
    Entry{"origin.described", "from the boiler's description"},
    Entry{"origin.published", "published"},
    Entry{"origin.remembered", "from memory, check your copy"},
    Entry{"origin.rule", "the rule says so"},
    Entry{"origin.stated", "stated for this test"},

    Entry{"input.all_parts_shop_tested", "whether every pressure part was tested at its maker's"},
    Entry{"input.boiler_kind", "kind of boiler"},
    Entry{"input.boiler_test_pressure", "test pressure of the boiler"},
    Entry{"input.can_be_blanked", "whether the piping can be blanked from its boiler"},
    Entry{"input.can_be_entered", "whether the inside can be entered or properly seen"},
    Entry{"input.cap", "the rule's upper limit"},
    Entry{"input.constant", "the rule's constant"},
    Entry{"input.design_pressure", "design pressure"},
    Entry{"input.drop_start", "pressure at the start of the drop test"},
    Entry{"input.extensive_repair", "whether the inspector counts the repair as extensive"},
    Entry{"input.factor", "the rule's factor"},
    Entry{"input.highest_safety_valve", "setting of the safety valve that is set highest"},
    Entry{"input.jurisdiction", "jurisdiction"},
    Entry{"input.lap_seam", "whether a longitudinal joint is lapped"},
    Entry{"input.least", "the rule's lower limit"},
    Entry{"input.least_stress_ratio", "least ratio of allowable stresses"},
    Entry{"input.lesser_of_working_pressure_and_highest_safety_valve",
          "lesser of working pressure and highest safety valve setting"},
    Entry{"input.locomotive", "whether it is a locomotive's"},
    Entry{"input.lowest_safety_valve", "setting of the safety valve that is set lowest"},
    Entry{"input.operating_pressure", "operating pressure"},
    Entry{"input.original_test_pressure", "test pressure when the boiler was built"},
    Entry{"input.overshoot", "ceiling of the rule as a factor"},
    Entry{"input.own_pressure", "your own pressure"},
    Entry{"input.picked_pressure", "pressure picked within the rule"},
    Entry{"input.retest_pressure", "pressure of the retest"},
    Entry{"input.service_loading", "greatest loading in service"},
    Entry{"input.stated_ceiling", "ceiling that you stated"},
    Entry{"input.stop_valve_between", "whether a stop valve stands between economizer and drum"},
    Entry{"input.stress_ratio",
          "allowable stress at test temperature over that at design temperature"},
    Entry{"input.work", "kind of work done"},
    Entry{"input.working_pressure", "working pressure"},
};

}  // namespace

std::span<const Entry> english_input() { return entries; }

}  // namespace steamworthy::words
