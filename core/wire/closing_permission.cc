// The closing view: what is outstanding, clearances, alarms, the state of the record itself.
#include "wire/closing_view.h"

namespace steamworthy::wire {

using closing::Clearance;
using closing::Standing;

Json roles_json(closing::Roles roles) {
  Json list = Json::array();
  for (const auto& [role, word] : facts::Words<facts::RoleName>::table) {
    if ((roles & closing::bit(role)) != 0) list.push_back(word);
  }
  return list;
}

Json names_json(const std::vector<std::string>& names) {
  Json list = Json::array();
  for (const std::string& name : names) list.push_back(name);
  return list;
}

Json outstanding_list(const std::vector<closing::Outstanding>& items, const words::Style& style) {
  Json list = Json::array();
  for (const closing::Outstanding& item : items) {
    const closing::CheckRow& check = closing::row(item.check);
    const std::string role(facts::token(item.role));
    list.push_back(Json{{"check", check.token},
                        {"rule", closing::rules()[static_cast<std::size_t>(check.rule)].token},
                        {"subject", item.subject},
                        {"danger", check.danger},
                        {"reason", words::sentence(item.reason, style)},
                        {"remedy", words::sentence(item.remedy, style)},
                        {"role", role},
                        {"role_text", words::label("role." + role, style)},
                        {"overridable_by", roles_json(check.override_by)}});
  }
  return list;
}

Json clearance_texts(const Clearance& clearance, const words::Style& style) {
  const std::string step(facts::token(clearance.step));
  Json json{{"step", step},
            {"step_text", words::label("clearance." + step, style)},
            {"subject", clearance.subject},
            {"up_to_bar_gauge", nullptr},
            {"up_to_text", ""}};
  std::vector<std::pair<std::string, working::Value>> values;
  if (!clearance.subject.empty()) values.emplace_back("subject", clearance.subject);
  if (clearance.up_to) {
    const units::Measure up_to = units::measure(*clearance.up_to);
    values.emplace_back("up_to", up_to);
    put_measure(json, "up_to", up_to);
    json["up_to_text"] = words::text(up_to, style);
  }
  json["permits_text"] = words::sentence({"permits." + step, values}, style);
  json["lapses_when_text"] = words::sentence({"lapses_when." + step, values}, style);
  return json;
}

Json clearances_json(const Speaker& speaker) {
  Json list = Json::array();
  for (const Standing& one :
       closing::standing(speaker.state(), speaker.terms(), speaker.view.now_ms)) {
    Json json =
        clearance_texts({one.given.step, one.given.subject, one.given.up_to}, speaker.style);
    json["given_at_ms"] = one.given.stamp.at_ms;
    json["by"] = one.given.by;
    json["second"] = one.given.second;
    json["stands"] = !one.lapsed;
    json["lapsed_by"] = one.lapsed ? closing::row(*one.lapsed).token : "";
    json["lapsed_text"] = speaker.sentence(one.why);
    list.push_back(std::move(json));
  }
  return list;
}

Json alarms_list(const closing::State& state, const words::Style& style) {
  Json list = Json::array();
  for (const auto& [name, alarm] : state.alarms) {
    list.push_back(Json{{"name", name},
                        {"text", words::sentence(alarm.why, style)},
                        {"may_take", roles_json(alarm.may_take)},
                        {"taken", alarm.taken}});
  }
  return list;
}

Json record_json(const Speaker& speaker) {
  const closing::State& state = speaker.state();
  Json devices = Json::array();
  for (const auto& [name, device] : state.devices) {
    devices.push_back(Json{{"device", name},
                           {"last", device.last},
                           {"entries_missing", device.is_missing_entries()},
                           {"takes_part", device.joined && !device.left && !device.lost},
                           {"left", device.left},
                           {"lost", device.lost.has_value()}});
  }
  return Json{{"devices", std::move(devices)},
              {"unread", state.unread.size()},
              {"same_number", state.forked.size()},
              {"withdrawals", state.withdrawn.size()}};
}

}  // namespace steamworthy::wire
