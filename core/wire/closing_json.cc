#include "wire/closing_json.h"

#include <algorithm>

#include "closing/stage.h"
#include "facts/moment.h"
#include "wire/closing_view.h"

namespace steamworthy::wire {
namespace {

using closing::Clearance;

struct Plates {
  int opened = 0;
  int left = 0;
};

Plates plates(const closing::State& state) {
  Plates plates;
  for (const auto& [tag, closure] : state.closures) {
    plates.opened += closure.opened ? 1 : 0;
    plates.left += closure.opened && !closure.nipped_up.holds ? 1 : 0;
  }
  return plates;
}

working::Value count(std::size_t number) {
  return units::measure_count(static_cast<double>(number));
}

working::Message where_it_stands(const ClosingView& view) {
  const closing::State& state = view.state;
  const closing::Stage stage = closing::stage(state, view.terms);
  working::Message said{"closing.stands",
                        {{"stage", working::Term{"stage." + std::string(closing::token(stage))}}}};
  if (view.since_ms != 0) {
    said.values.emplace_back("since", facts::date_and_time(view.since_ms, view.utc_offset_min));
  }
  const Plates closures = plates(state);
  if (closures.left > 0) {
    said.values.emplace_back("left", units::measure_count(closures.left));
    said.values.emplace_back("opened", units::measure_count(closures.opened));
  }
  int inside = 0;
  for (const auto& [tag, space] : state.spaces) {
    for (const std::string& who : closing::inside(space.people)) {
      said.values.emplace_back("in_" + std::to_string(++inside), who + " (" + tag + ")");
    }
  }
  std::size_t open_leaks = 0;
  for (const auto& [number, leak] : state.leaks) {
    open_leaks += closing::is_closed(state, leak) ? 0 : 1;
  }
  if (open_leaks > 0) said.values.emplace_back("leaks", count(open_leaks));
  if (state.left_safe && !state.call.empty()) said.values.emplace_back("call", state.call);
  const std::size_t alarms = closing::alarms(state).size();
  if (alarms > 0) said.values.emplace_back("alarms", count(alarms));
  if (!state.fire_lit) {
    const Clearance next = closing::next_clearance(state, view.terms);
    said.values.emplace_back("next",
                             working::Term{"clearance." + std::string(facts::token(next.step))});
    said.values.emplace_back(
        "outstanding", count(closing::outstanding(state, view.terms, next, view.now_ms).size()));
  }
  return said;
}

Json taken_in(const TakenIn& one, const words::Style& style) {
  const facts::Fact& fact = *one.fact;
  const auto* unread = std::get_if<facts::Unread>(&fact.body);
  Json json{
      {"intake_no", one.intake_no},
      {"id", fact.id},
      {"kind", unread != nullptr ? unread->token : std::string(facts::kind_of(fact.body).token)},
      {"sentence", words::sentence(facts::tell(fact), style)}};
  if (!fact.beside.note.empty()) json["note"] = fact.beside.note;
  if (!fact.beside.photos.empty()) json["photos"] = fact.beside.photos;
  json["at_ms"] = fact.happened_at_ms;
  json["at_text"] = facts::date_and_time(fact.happened_at_ms, fact.utc_offset_min);
  json["recorded_at_ms"] = fact.recorded_at_ms;
  json["person"] = fact.person;
  json["device"] = fact.device;
  json["device_seq"] = fact.device_seq;
  return json;
}

}  // namespace

std::string closing_sentence(const ClosingView& view, const words::Style& style) {
  return words::sentence(where_it_stands(view), style);
}

std::string outstanding_json(const Clearance& clearance,
                             const std::vector<closing::Outstanding>& items, std::int64_t intake_no,
                             const words::Style& style) {
  Json json = clearance_texts(clearance, style);
  json["may_be_given"] = items.empty();
  json["intake_no"] = intake_no;
  json["outstanding"] = outstanding_list(items, style);
  return text(json);
}

std::string outstanding_items_json(const std::vector<closing::Outstanding>& items,
                                   const words::Style& style) {
  return text(outstanding_list(items, style));
}

std::string alarms_json(const closing::State& state, const words::Style& style) {
  return text(alarms_list(state, style));
}

std::string clearance_json(const ClosingView& view, facts::StepName step,
                           const std::string& subject, const words::Style& style) {
  for (const Json& one : clearances_json({view, style})) {
    if (one["step"] == facts::token(step) && one["subject"] == subject) return text(one);
  }
  return text(nullptr);
}

std::string taken_in_json(const TakenIn& fact, const words::Style& style) {
  return text(taken_in(fact, style));
}

std::string closing_json(const ClosingView& view, const words::Style& style) {
  const closing::State& state = view.state;
  const Speaker speaker{view, style};
  const closing::Stage stage = closing::stage(state, view.terms);
  const std::string stage_token(closing::token(stage));
  const Clearance next = closing::next_clearance(state, view.terms);
  Json json{{"closing", view.closing},
            {"boiler", state.boiler},
            {"boiler_name", view.terms.boiler().name},
            {"description_sha256", state.description_sha256},
            {"intake_no", view.intake_no},
            {"now_ms", view.now_ms},
            {"stage", stage_token},
            {"stage_text", speaker.say("stage." + stage_token)},
            {"since_ms", view.since_ms},
            {"sentence", closing_sentence(view, style)}};
  const std::string step(facts::token(next.step));
  json["next_step"] = step;
  json["next_step_text"] = speaker.say("clearance." + step);
  json["next"] = clearance_texts(next, style);
  json["pen"] = state.pen;
  json["outstanding"] =
      outstanding_list(closing::outstanding(state, view.terms, next, view.now_ms), style);
  json["clearances"] = clearances_json(speaker);
  json["alarms"] = alarms_list(state, style);
  const Plates closures = plates(state);
  json["closures_opened"] = closures.opened;
  json["closures_left"] = closures.left;
  json["spaces"] = spaces_json(speaker);
  json["parts"] = parts_json(speaker);
  json["headers"] = headers_json(speaker);
  json["banks"] = banks_json(speaker);
  json["isolations"] = isolations_json(speaker);
  json["internals"] = internals_json(speaker);
  json["temporaries"] = temporaries_json(speaker);
  json["mountings"] = mountings_json(speaker);
  json["gauges"] = gauges_json(speaker);
  json["findings"] = findings_json(speaker);
  json["leaks"] = leaks_json(speaker);
  json["places"] = places_json(speaker);
  json["posts"] = posts_json(speaker);
  json["temperatures"] = temperatures_json(speaker);
  json["sheet"] = sheet_json(speaker);
  json["test"] = test_json(speaker);
  json["record"] = record_json(speaker);
  Json last = Json::array();
  for (const TakenIn& fact : view.last) last.push_back(taken_in(fact, style));
  json["last"] = std::move(last);
  return text(json);
}

}  // namespace steamworthy::wire
