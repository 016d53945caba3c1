#include "raising/before_fire.h"

#include <algorithm>
#include <map>

namespace steamworthy::raising {
namespace {

using boiler::MountingKind;
using boiler::TemporaryKind;
using closing::State;
using closing::Terms;
using facts::RoleName;
using working::Message;

template <class Value>
const Value& known(const closing::ByTag<Value>& all, const std::string& tag) {
  static const Value nothing{};
  const auto found = all.find(tag);
  return found == all.end() ? nothing : found->second;
}

Message about(const char* key, const std::string& subject) { return {key, {{"subject", subject}}}; }

class List {
 public:
  List(const Terms& terms, const State& state) : terms_(terms), state_(state) {}

  std::vector<Item> make() {
    temporaries();
    protection();
    isolated();
    plates();
    pump();
    gauges();
    if (terms_.site().spring_hangers || state_.hangers_said) {
      add(Task::FreeHangers, "", "", state_.hangers_free.holds, {"raising.why.free_hangers", {}},
          {"raising.do.free_hangers", {}}, RoleName::Engineer);
    }
    for (const boiler::Isolation& line : terms_.boiler().isolations) {
      add(Task::RestoreLine, line.tag, line.behind, state_.normalised.holds,
          about("raising.why.restore_line", line.tag),
          about(line.how == boiler::IsolationKind::Blank ? "raising.do.take_blank_out"
                                                         : "raising.do.restore_line",
                line.tag),
          RoleName::WatchEngineer);
    }
    return std::move(items_);
  }

 private:
  void add(Task task, const std::string& subject, const std::string& where, bool done,
           Message reason, Message remedy, RoleName role) {
    items_.push_back({task, subject, where, done, done ? Message{} : std::move(reason),
                      std::move(remedy), role});
  }

  void temporaries() {
    // By kind, gags first; one that only the facts know of stands with the test gear.
    std::map<std::pair<int, std::string>, std::string> all;
    for (const boiler::Temporary& one : terms_.boiler().temporaries) {
      const int rank = one.kind == TemporaryKind::Gag     ? 0
                       : one.kind == TemporaryKind::Blank ? 1
                                                          : 2;
      all[{rank, one.tag}] = one.where;
    }
    for (const auto& [number, told] : state_.temporaries) {
      const auto& described = terms_.boiler().temporaries;
      const bool is_described =
          std::any_of(described.begin(), described.end(),
                      [&, n = number](const boiler::Temporary& one) { return one.tag == n; });
      if (!is_described && told.was_on) all[{2, number}] = told.where;
    }
    for (const auto& [key, where] : all) temporary(key.second, where);
  }

  void temporary(const std::string& number, const std::string& where) {
    const closing::Temporary& told = known(state_.temporaries, number);
    const bool off = told.off.holds || !told.was_on;
    const char* why = !told.was_on ? "raising.why.never_told_of"
                      : off        ? "raising.why.not_seen_off"
                                   : "raising.why.is_on";
    add(Task::TakeOffTemporary, number, where, off && told.seen_off.holds, about(why, number),
        about(off ? "raising.do.see_off" : "raising.do.take_off", number),
        off ? RoleName::LeadHand : RoleName::Hand);
  }

  bool is_back(const closing::Fitting& told) const { return !told.was_isolated || told.back.holds; }

  void protection() {
    for (const boiler::Mounting* mounting : terms_.layout().protection) {
      const closing::Fitting& told = known(state_.fittings, mounting->tag);
      const bool is_glass = mounting->kind == MountingKind::GaugeGlass;
      add(Task::ProveProtection, mounting->tag, mounting->part, is_back(told) && told.proved.holds,
          about(is_back(told) ? "raising.why.not_proved" : "raising.why.shut_off", mounting->tag),
          about(is_glass ? "raising.do.blow_through" : "raising.do.trip_cut_out", mounting->tag),
          RoleName::WatchEngineer);
    }
  }

  void isolated() {
    for (const auto& [tag, told] : state_.fittings) {
      const auto& shown = terms_.layout().protection;
      const bool is_shown = std::any_of(shown.begin(), shown.end(),
                                        [&, t = tag](const auto* one) { return one->tag == t; });
      if (!told.was_isolated || is_shown) continue;
      add(Task::PutBack, tag, "", told.back.holds, about("raising.why.shut_off", tag),
          about("raising.do.put_back", tag), RoleName::Hand);
    }
  }

  void plates() {
    for (const auto& [tag, told] : state_.closures) {
      if (!told.opened) continue;
      add(Task::HardenUp, tag, "", told.hardened_up.holds, about("raising.why.not_hardened", tag),
          about("raising.do.harden_up", tag), RoleName::Hand);
    }
  }

  void pump() {
    for (const boiler::Mounting& mounting : terms_.boiler().mountings) {
      if (mounting.kind != MountingKind::TestConnection) continue;
      add(Task::DisconnectPump, mounting.tag, mounting.part, state_.normalised.holds,
          about("raising.why.pump_on", mounting.tag),
          about("raising.do.disconnect_pump", mounting.tag), RoleName::PumpHand);
    }
  }

  void gauges() {
    for (const auto& [tag, told] : state_.gauges) {
      if (!told.fitted.holds) continue;
      add(Task::TakeOffGauge, tag, "", false, about("raising.why.test_gauge_on", tag),
          about("raising.do.take_gauge_off", tag), RoleName::Hand);
    }
  }

  const Terms& terms_;
  const State& state_;
  std::vector<Item> items_;
};

}  // namespace

std::string_view token(Task task) {
  switch (task) {
    case Task::TakeOffTemporary:
      return "take_off_temporary";
    case Task::ProveProtection:
      return "prove_protection";
    case Task::PutBack:
      return "put_back";
    case Task::HardenUp:
      return "harden_up";
    case Task::DisconnectPump:
      return "disconnect_pump";
    case Task::TakeOffGauge:
      return "take_off_gauge";
    case Task::FreeHangers:
      return "free_hangers";
    case Task::RestoreLine:
      break;
  }
  return "restore_line";
}

std::vector<Item> before_fire(const Terms& terms, const State& state) {
  return List(terms, state).make();
}

std::vector<Item> still_to_do(const std::vector<Item>& items) {
  std::vector<Item> open;
  std::copy_if(items.begin(), items.end(), std::back_inserter(open),
               [](const Item& item) { return !item.done; });
  return open;
}

}  // namespace steamworthy::raising
