// English: what the room rules says, and the words for its tokens.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"rules.above_ceiling", "{pressure} is above the ceiling of {ceiling}"},
    Entry{"rules.authority_names_pressure",
          "the rule leaves the pressure to the one who orders the test ({witness}); enter who "
          "ordered "
          "it and what was ordered"},
    Entry{"rules.authority_not_named",
          "{pressure} is above the working pressure of {working_pressure}; name who ordered or "
          "agreed "
          "to it[ ({witness})]"},
    Entry{"rules.branch_above", "this branch of the rule holds for {input} above {limit}"},
    Entry{"rules.branch_up_to", "this branch of the rule holds for {input} up to {limit}"},
    Entry{"rules.cap_governs", "the rule's upper limit of {cap} governs"},
    Entry{"rules.ceiling", "never to be passed"},
    Entry{"rules.ceiling_is_the_rule",
          "the rule's own upper limit is the ceiling; there is no overshoot"},
    Entry{"rules.ceiling_not_stated", "the rule names no ceiling; state one"},
    Entry{"rules.ceiling_only_gagged", "this ceiling holds only with the safety valves gagged"},
    Entry{"rules.check_your_copy", "the words of [{source}] were not seen; check your copy"},
    Entry{"rules.depends_on", "it depends on: {input}"},
    Entry{"rules.drop_least", "least pressure at the end of the drop test"},
    Entry{"rules.drop_met",
          "rule met: {end} after {elapsed}, and the rule allows down to {least} after {within}"},
    Entry{
        "rules.drop_not_met",
        "rule not met: {end} after {elapsed}, and the rule allows down to {least} after {within}"},
    Entry{
        "rules.drop_not_read_in_time",
        "{end} was read after {elapsed}; the rule asks for the reading after {within}, when it may "
        "have been above {least} still"},
    Entry{"rules.drop_share", "allowed fall as a share of the starting pressure"},
    Entry{"rules.drop_time", "time of the drop test"},
    Entry{"rules.drop_too_short",
          "{end} after {elapsed} is above {least}, but the rule asks for {within}"},
    Entry{"rules.empty_interval",
          "the rule leaves nothing to pick: it asks for more than {least} and at most {most}"},
    Entry{"rules.examination_pressure", "examination pressure"},
    Entry{"rules.excluded_by", "the rule excludes this case: {condition_*}"},
    Entry{"rules.from_memory",
          "{pressure} is above the working pressure of {working_pressure}, and the rule is from "
          "memory "
          "only"},
    Entry{"rules.gags_needed",
          "{pressure} reaches the lowest safety valve setting of {lowest_safety_valve}: the valves "
          "have "
          "to be gagged, or removed and blanked"},
    Entry{"rules.gauge_accuracy", "gauge accuracy, share of span, not worse than"},
    Entry{"rules.gauge_graduation", "gauge graduation not coarser than"},
    Entry{"rules.gauge_number", "gauges at least"},
    Entry{"rules.gauge_range_from", "gauge range at least"},
    Entry{"rules.gauge_range_to", "gauge range at most"},
    Entry{"rules.greatest_rate", "raise pressure not faster than"},
    Entry{"rules.historic_law", "[{source}] is no longer in force"},
    Entry{"rules.hold", "hold"},
    Entry{"rules.jurisdiction_not_told",
          "nobody has said under which law, class or insurer this boiler stands"},
    Entry{"rules.least_governs", "the rule's lower limit of {least} governs"},
    Entry{"rules.least_pressure", "least test pressure of the rule"},
    Entry{"rules.met_is_not_tight",
          "keeping within the allowed fall meets the rule; it does not show that nothing leaks"},
    Entry{"rules.missing_input", "the rule needs to know: {input}"},
    Entry{"rules.more_than_one", "{count} rules apply: choose one"},
    Entry{"rules.most_pressure", "greatest test pressure of the rule"},
    Entry{"rules.no_case_holds", "none of the cases that the rule names is this one"},
    Entry{"rules.no_rule_of_jurisdiction", "there is no rule of \"{jurisdiction}\""},
    Entry{"rules.none_applies", "no rule applies"},
    Entry{"rules.not_a_test", "the rule asks for no hydrostatic test: it is {purpose}"},
    Entry{"rules.not_stated", "the rule does not say"},
    Entry{"rules.other_boiler", "the rule is not for {boiler_kind}"},
    Entry{"rules.other_jurisdiction", "the rule belongs to \"{jurisdiction}\""},
    Entry{"rules.other_subject", "the rule is not about {subject}"},
    Entry{"rules.other_work", "the rule is not for this work: {work}"},
    Entry{
        "rules.own_above_every_rule",
        "{pressure} is above the working pressure of {working_pressure}, and no rule that applies "
        "goes so far"},
    Entry{"rules.own_above_rule", "{pressure} is above the {rule_pressure} of rule {rule}"},
    Entry{"rules.own_below_rule", "{pressure} is below the {rule_pressure} of rule {rule}"},
    Entry{"rules.own_not_positive", "a test pressure is above zero; {pressure} was stated"},
    Entry{"rules.own_pressure", "your own test pressure"},
    Entry{"rules.own_reason", "the reason given: {reason}"},
    Entry{"rules.own_reason_missing", "a pressure of your own needs a reason"},
    Entry{"rules.own_rule_names_none", "rule {rule} names no pressure to compare with"},
    Entry{"rules.own_rule_not_certain", "whether rule {rule} applies is not certain"},
    Entry{"rules.own_within_rule", "it is within rule {rule}"},
    Entry{"rules.own_without_rule",
          "{pressure} is above the working pressure of {working_pressure}, and no rule applies"},
    Entry{"rules.pick_within",
          "the rule leaves the pressure to you[, not below {least}][, not above {most}]"},
    Entry{"rules.picked_above", "{picked} was picked; the rule goes to {most} at most"},
    Entry{"rules.picked_below", "{picked} was picked; the rule asks for more, from {least}"},
    Entry{"rules.picked_is_not_the_rules", "{picked} was picked; the rule demands {demanded}"},
    Entry{"rules.picked_not_positive", "a test pressure is above zero; {picked} was picked"},
    Entry{"rules.second_hand", "[{source}] was seen second-hand only; check your copy"},
    Entry{"rules.step", "next step"},
    Entry{"rules.stress_cap", "greatest stress as a share of yield"},
    Entry{"rules.target_not_positive",
          "a test pressure is above zero; the rule comes to {pressure}"},
    Entry{"rules.temperature_from", "not colder than"},
    Entry{"rules.temperature_to", "not warmer than"},
    Entry{"rules.test_pressure", "test pressure of the rule"},
    Entry{"rules.too_cold", "{found} is colder than the {limit} that the rule asks for"},
    Entry{"rules.too_hot", "{found} is warmer than the {limit} that the rule allows"},
    Entry{"rules.ungagged_at_valve_height",
          "the valves are not gagged; this is their setting, at the height of the valve"},
    Entry{"rules.until_examined", "until the examination is over"},
    Entry{"rules.valves_not_gagged",
          "{pressure} reaches the lowest safety valve setting of {lowest_safety_valve}, and the "
          "valves "
          "are not gagged"},
    Entry{"rules.work_not_told", "nobody has said what work was done"},
    Entry{"rules.working_pressure_not_told",
          "the working pressure is not known, so nobody can say whether the test goes above it"},

    Entry{"boiler_kind.cast_iron", "cast-iron boiler"},
    Entry{"boiler_kind.firetube", "firetube boiler"},
    Entry{"boiler_kind.once_through", "once-through boiler"},
    Entry{"boiler_kind.watertube", "watertube boiler"},

    Entry{"purpose.history", "a rule of the past"},
    Entry{"purpose.interval", "about how often to test"},
    Entry{"purpose.limit", "a limit"},
    Entry{"purpose.strength", "a strength test"},
    Entry{"purpose.tightness", "a tightness test"},
    Entry{"purpose.working", "about the working pressure"},

    Entry{"subject.boiler", "boilers"},
    Entry{"subject.boiler_piping", "boiler piping"},
    Entry{"subject.economizer", "economizers"},
    Entry{"subject.fitting", "valves and fittings"},
    Entry{"subject.safety_valve", "safety valves"},
    Entry{"subject.unfired_vessel", "unfired vessels"},
    Entry{"subject.unfired_vessel_division_2", "unfired vessels designed by analysis"},
    Entry{"subject.valve_seat", "valve seats"},

    Entry{"trait.all_parts_shop_tested", "every pressure part was tested at its maker's"},
    Entry{"trait.can_be_blanked", "the piping can be blanked from its boiler"},
    Entry{"trait.can_be_entered", "the inside can be entered or properly seen"},
    Entry{"trait.extensive_repair", "the inspector counts the repair as extensive"},
    Entry{"trait.lap_seam", "a longitudinal joint is lapped"},
    Entry{"trait.locomotive", "a locomotive's boiler"},
    Entry{"trait.stop_valve_between", "a stop valve stands between economizer and drum"},
    Entry{"trait_not.all_parts_shop_tested", "not every pressure part was tested at its maker's"},
    Entry{"trait_not.can_be_blanked", "the piping cannot be blanked from its boiler"},
    Entry{"trait_not.can_be_entered", "the inside cannot be entered or properly seen"},
    Entry{"trait_not.extensive_repair", "the inspector does not count the repair as extensive"},
    Entry{"trait_not.lap_seam", "no longitudinal joint is lapped"},
    Entry{"trait_not.locomotive", "no locomotive's boiler"},
    Entry{"trait_not.stop_valve_between", "no stop valve stands between economizer and drum"},

    Entry{"work.drum_repaired", "drum, header, seam or seat repaired"},
    Entry{"work.gaskets", "gaskets only"},
    Entry{"work.new_installation", "new installation"},
    Entry{"work.periodic", "nothing was done, the test falls due"},
    Entry{"work.strength_doubted", "strength doubted"},
    Entry{"work.tubes_renewed", "tubes renewed or welded"},
    Entry{"work.tubes_rolled", "tubes re-rolled or plugged"},
};

}  // namespace

std::span<const Entry> english_rules() { return entries; }

}  // namespace steamworthy::words
