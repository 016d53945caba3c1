#include "closing/outstanding.h"

#include <algorithm>

#include "closing/collector.h"

namespace steamworthy::closing {
namespace {

using facts::StepName;

constexpr std::int64_t ms_per_minute = 60'000;
constexpr std::int64_t clocks_differ_ms = 2 * ms_per_minute;  ///< without meaning it

using CheckOf = void (*)(Collector&);

CheckOf check_of(StepName step) {
  switch (step) {
    case StepName::Open:
      return check_open;
    case StepName::Enter:
      return check_enter;
    case StepName::CloseLastWayIn:
      return check_close_last_way_in;
    case StepName::Fill:
      return check_fill;
    case StepName::RaisePressure:
      return check_raise;
    case StepName::WalkFireSide:
      return check_walk_fire_side;
    case StepName::Tighten:
    case StepName::Strike:
      return check_wrench;
    case StepName::BreakJoint:
      return check_break;
    case StepName::LetDown:
      return check_let_down;
    case StepName::Drain:
      return check_drain;
    case StepName::LeaveFull:
      return check_leave_full;
    case StepName::TakeOver:
      return check_take_over;
    case StepName::Steam:
      return check_steam;
  }
  return check_record;  // every step is above
}

}  // namespace

void Collector::add(Check check, const std::string& subject) {
  if (!terms.is_on(check)) return;
  const CheckRow& about = row(check);
  for (const Override& one : overrides_) {
    if (one.step == clearance.step && one.check == check && one.subject == subject) return;
  }
  Outstanding item;
  item.check = check;
  item.subject = subject;
  item.reason.key = "outstanding." + std::string(about.token);
  item.remedy.key = "remedy." + std::string(about.token);
  if (!subject.empty()) {
    item.reason.values.emplace_back("subject", subject);
    item.remedy.values.emplace_back("subject", subject);
  }
  item.role = about.remover;
  found.push_back(std::move(item));
}

bool is_old(std::int64_t at_ms, std::int64_t now_ms, std::optional<int> minutes) {
  if (!minutes) return true;
  const std::int64_t age = now_ms - at_ms;
  return age > *minutes * ms_per_minute || age < -clocks_differ_ms;
}

std::vector<Outstanding> outstanding_with(const State& state, const Terms& terms,
                                          const Clearance& clearance, std::int64_t now_ms,
                                          const std::vector<Override>& overrides) {
  Collector into(state, terms, clearance, now_ms, overrides);
  check_of(clearance.step)(into);
  check_record(into);
  std::stable_sort(into.found.begin(), into.found.end(),
                   [](const Outstanding& a, const Outstanding& b) {
                     return row(a.check).danger < row(b.check).danger;
                   });
  return std::move(into.found);
}

std::vector<Outstanding> outstanding(const State& state, const Terms& terms,
                                     const Clearance& clearance, std::int64_t now_ms) {
  return outstanding_with(state, terms, clearance, now_ms, state.overrides);
}

std::vector<Standing> standing(const State& state, const Terms& terms, std::int64_t now_ms) {
  std::vector<Standing> result;
  for (const Given& given : state.given) {
    Standing one{given, given.lapsed};
    if (given.taken_back) {
      one.why.key = "clearance.taken_back";
    } else if (given.lapsed) {
      one.why.key = "outstanding." + std::string(row(*given.lapsed).token);
      if (!given.about.empty()) one.why.values.emplace_back("subject", given.about);
    } else {
      const auto now_against = outstanding_with(
          state, terms, {given.step, given.subject, given.up_to}, now_ms, given.overrides);
      if (!now_against.empty()) {
        one.lapsed = now_against.front().check;
        one.why = now_against.front().reason;
      }
    }
    result.push_back(std::move(one));
  }
  return result;
}

bool stands(const State& state, const Terms& terms, StepName step, const std::string& subject,
            std::int64_t now_ms) {
  for (const Standing& one : standing(state, terms, now_ms)) {
    if (one.given.step == step && one.given.subject == subject && !one.lapsed) return true;
  }
  return false;
}

std::vector<Alarm> alarms(const State& state) {
  std::vector<Alarm> open;
  for (const auto& [name, alarm] : state.alarms) {
    if (!alarm.taken) open.push_back(alarm);
  }
  return open;
}

void check_record(Collector& into) {
  if (!into.state.unread.empty()) into.add(Check::S11Unread, into.state.unread.front().device);
  if (!into.state.forked.empty()) into.add(Check::S11Unread, into.state.forked.front().device);
  for (const Alarm& alarm : alarms(into.state)) {
    if (alarm.stops) into.add(Check::S11Alarm, alarm.name);
  }
}

}  // namespace steamworthy::closing
