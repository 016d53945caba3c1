// English: the words that stand in log entries.
#include <array>

#include "words/catalogue.h"

namespace steamworthy::words {
namespace {

constexpr std::array entries = {
    Entry{"answer.yes", "yes"},
    Entry{"answer.no", "no"},
    Entry{"isolated_how.two_valves_and_tell_tale", "two shut valves with a tell-tale between"},
    Entry{"isolated_how.blank", "blank"},
    Entry{"isolated_how.stop_check", "stop-check screwed down"},
    Entry{"isolated_how.one_valve", "one shut valve"},
    Entry{"looked_with.lamp", "lamp"},
    Entry{"looked_with.mirror", "mirror"},
    Entry{"looked_with.scope", "scope"},
    Entry{"ball_result.passed", "passed"},
    Entry{"ball_result.stuck", "stuck"},
    Entry{"ball_result.not_tried", "not tried"},
    Entry{"severity.note", "to be noted"},
    Entry{"severity.report", "to be reported"},
    Entry{"severity.stop", "stops the job"},
    Entry{"disposition.as_it_is", "stays as it is"},
    Entry{"disposition.repaired", "repaired"},
    Entry{"disposition.watch", "to be watched"},
    Entry{"disposition.stop_the_job", "stops the job"},
    Entry{"touched_how.tightened", "tightened"},
    Entry{"touched_how.struck", "struck"},
    Entry{"touched_how.slackened", "slackened"},
    Entry{"gap_verdict.good", "good"},
    Entry{"gap_verdict.report", "to be reported"},
    Entry{"leak_kind.gasket", "gasket"},
    Entry{"leak_kind.gland", "gland"},
    Entry{"leak_kind.tube_joint", "tube joint"},
    Entry{"leak_kind.weld", "weld"},
    Entry{"leak_kind.plug", "plug"},
    Entry{"leak_kind.crack", "crack"},
    Entry{"leak_kind.valve_end", "end of a valve"},
    Entry{"passing.none", "does not pass"},
    Entry{"passing.out", "outward"},
    Entry{"passing.in", "inward"},
    Entry{"thing.water", "water"},
    Entry{"thing.metal", "metal"},
    Entry{"thing.air", "air"},
    Entry{"post.pump", "the pump"},
    Entry{"post.test_valve", "the test valve"},
    Entry{"post.vent", "a vent"},
    Entry{"post.let_down", "the let-down valve"},
    Entry{"post.drain", "a drain"},
    Entry{"post.attendant", "a way in"},
    Entry{"post.gag", "the gags"},
    Entry{"post.lookout", "the lookout"},
    Entry{"role.lead_hand", "lead hand"},
    Entry{"role.hand", "hand"},
    Entry{"role.pump_hand", "pump hand"},
    Entry{"role.attendant", "attendant"},
    Entry{"role.engineer", "engineer"},
    Entry{"role.inspector", "inspector"},
    Entry{"role.watch_engineer", "watch engineer"},
    Entry{"clearance.tighten", "clear to tighten"},
    Entry{"clearance.strike", "clear to strike"},
    Entry{"clearance.break_joint", "clear to break the joint"},
    Entry{"clearance.let_down", "clear to let down"},
    Entry{"clearance.drain", "clear to drain"},
    Entry{"clearance.leave_full", "clear to leave full"},
    Entry{"clearance.take_over", "clear to hand over"},
    Entry{"laid_up.dry", "dry"},
    Entry{"laid_up.wet", "wet"},
    Entry{"laid_up.nitrogen", "under nitrogen"},
    Entry{"precision.second", "to the second"},
    Entry{"precision.minute", "to the minute"},
    Entry{"precision.hour", "to the hour"},
    Entry{"precision.day", "to the day"},
};

}  // namespace

std::span<const Entry> english_tokens() { return entries; }

}  // namespace steamworthy::words
