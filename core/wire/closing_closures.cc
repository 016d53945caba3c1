// The closing view: closures in their order, headers, tubes, internals, findings.
#include <algorithm>
#include <map>

#include "closing/mark.h"
#include "wire/closing_view.h"

namespace steamworthy::wire {
namespace {

using closing::ClosureState;

Json closure_json(const Speaker& speaker, const std::string& tag) {
  const boiler::Closure* known = boiler::find_closure(speaker.boiler(), tag);
  const ClosureState& closure = closing::of(speaker.state().closures, tag);
  const closing::Mark mark = closing::mark(speaker.state(), tag);
  const closing::Signs signs = closing::signs(speaker.state(), tag);
  Json json{{"tag", tag}, {"kind", known != nullptr ? boiler::token(known->kind) : ""}};
  if (known != nullptr) {
    json["shape"] = boiler::token(known->opening.shape);
    put_measure(json, "width", units::measure_size(known->opening.width));
    put_measure(json, "height", units::measure_size(known->opening.height));
  }
  json["mark"] = closing::token(mark);
  json["mark_text"] = speaker.say("mark." + std::string(closing::token(mark)));
  json["leak"] = signs.leak;
  json["flag"] = signs.decide;
  Json done = Json::array();
  const bool is_dry = closing::of(speaker.state().dry, tag).holds;
  const std::pair<const char*, bool> steps[] = {
      {"opened", closure.opened},
      {"not_opened", !closure.opened && closure.known_not_opened.holds},
      {"cleaned", closure.cleaned.holds},
      {"looked_at", closure.looked_at.holds},
      {"plate_matched", closure.matches.holds},
      {"gasket_fitted", closure.gasket.holds},
      {"nipped_up", closure.nipped_up.holds},
      {"gap_good", closure.gaps_good.holds},
      {"seen_dry", is_dry && closure.untouched.holds},
      {"hardened_up", closure.hardened_up.holds}};
  for (const auto& [step, is_done] : steps) {
    if (is_done) done.push_back(step);
  }
  json["step_done"] = std::move(done);
  json["look_on_steam"] = closure.look_on_steam;
  return json;
}

struct OnPart {
  std::map<int, std::vector<const boiler::Closure*>> rows;
  std::vector<std::string> undescribed;
};

Json part_json(const Speaker& speaker, const std::string& tag, const std::string& name,
               OnPart& on) {
  int opened = 0;
  int left = 0;
  const auto take = [&](Json& row, const std::string& closure) {
    const ClosureState& known = closing::of(speaker.state().closures, closure);
    opened += known.opened ? 1 : 0;
    left += known.opened && !known.nipped_up.holds ? 1 : 0;
    row.push_back(closure_json(speaker, closure));
  };
  Json rows = Json::array();
  for (auto& [number, closures] : on.rows) {
    std::stable_sort(closures.begin(), closures.end(),
                     [](const auto* a, const auto* b) { return a->column < b->column; });
    Json row = Json::array();
    for (const boiler::Closure* closure : closures) take(row, closure->tag);
    rows.push_back(std::move(row));
  }
  if (!on.undescribed.empty()) {
    Json row = Json::array();
    for (const std::string& closure : on.undescribed) take(row, closure);
    rows.push_back(std::move(row));
  }
  return Json{{"tag", tag},
              {"name", name},
              {"opened", opened},
              {"done", opened - left},
              {"rows", std::move(rows)}};
}

}  // namespace

Json parts_json(const Speaker& speaker) {
  std::map<std::string, OnPart> by_part;
  for (const boiler::Closure& closure : speaker.boiler().closures) {
    by_part[closure.part].rows[closure.row].push_back(&closure);
  }
  for (const auto& [tag, closure] : speaker.state().closures) {
    if (boiler::find_closure(speaker.boiler(), tag) == nullptr) {
      by_part[""].undescribed.push_back(tag);
    }
  }
  Json list = Json::array();
  for (const boiler::Part& part : speaker.boiler().parts) {
    const auto on = by_part.find(part.tag);
    if (on != by_part.end()) list.push_back(part_json(speaker, part.tag, part.name, on->second));
  }
  if (const auto none = by_part.find(""); none != by_part.end()) {
    list.push_back(part_json(speaker, "", speaker.say("closing.no_part"), none->second));
  }
  return list;
}

Json headers_json(const Speaker& speaker) {
  Json list = Json::array();
  const auto add = [&](const std::string& tag, const std::string& name) {
    const closing::Header& header = closing::of(speaker.state().headers, tag);
    list.push_back(Json{{"tag", tag},
                        {"name", name},
                        {"opened", header.opened},
                        {"looked_into", header.looked_into.holds},
                        {"sealed", header.sealed.holds}});
  };
  for (const boiler::Part& part : speaker.boiler().parts) {
    if (part.kind == boiler::PartKind::Header) add(part.tag, part.name);
  }
  for (const auto& [tag, header] : speaker.state().headers) {
    const boiler::Part* part = boiler::find_part(speaker.boiler(), tag);
    if (part == nullptr || part->kind != boiler::PartKind::Header) add(tag, tag);
  }
  return list;
}

Json banks_json(const Speaker& speaker) {
  Json list = Json::array();
  const auto add = [&](const std::string& tag, const std::string& name, int tubes) {
    const closing::Bank& bank = closing::of(speaker.state().banks, tag);
    Json troubled = Json::array();
    int passed = 0;
    for (const auto& [at, condition] : bank.troubled) {
      passed += condition.holds ? 1 : 0;
      if (!condition.holds) troubled.push_back(Json{{"row", at.first}, {"tube", at.second}});
    }
    list.push_back(Json{{"tag", tag},
                        {"name", name},
                        {"tubes", tubes},
                        {"passed", passed},
                        {"balls_out", bank.balls_out},
                        {"not_clear", std::move(troubled)}});
  };
  for (const boiler::Part& part : speaker.boiler().parts) {
    if (part.kind == boiler::PartKind::TubeBank) add(part.tag, part.name, part.count);
  }
  for (const auto& [tag, bank] : speaker.state().banks) {
    const boiler::Part* part = boiler::find_part(speaker.boiler(), tag);
    if (part == nullptr || part->kind != boiler::PartKind::TubeBank) add(tag, tag, 0);
  }
  return list;
}

Json internals_json(const Speaker& speaker) {
  const auto is_in = [&](const std::string& tag) {
    const auto told = speaker.state().internals.find(tag);
    return told == speaker.state().internals.end() || told->second.holds;  // never taken out
  };
  Json list = Json::array();
  for (const std::string& tag : all_tags(speaker.boiler().internals, speaker.state().internals)) {
    const boiler::Internal* known = described(speaker.boiler().internals, tag);
    Json before = Json::array();
    for (const boiler::Internal& other : speaker.boiler().internals) {
      const bool comes_first =
          known != nullptr && other.part == known->part && other.order < known->order;
      if (comes_first && !is_in(other.tag)) before.push_back(other.tag);
    }
    list.push_back(Json{{"tag", tag},
                        {"name", known != nullptr ? known->name : tag},
                        {"part", known != nullptr ? known->part : ""},
                        {"order", known != nullptr ? known->order : 0},
                        {"held_by", known != nullptr ? known->held_by : ""},
                        {"in", is_in(tag)},
                        {"was_out", speaker.state().internals.count(tag) != 0},
                        {"before", std::move(before)}});
  }
  return list;
}

Json findings_json(const Speaker& speaker) {
  Json list = Json::array();
  for (const auto& [name, finding] : speaker.state().findings) {
    Json json{{"name", name},
              {"where", finding.where},
              {"what", finding.what},
              {"severity", facts::token(finding.severity)},
              {"severity_text", speaker.word(finding.severity)}};
    if (finding.disposition) {
      json["disposition"] = facts::token(*finding.disposition);
      json["disposition_text"] = speaker.word(*finding.disposition);
    }
    json["undecided"] = finding.is_undecided();
    list.push_back(std::move(json));
  }
  return list;
}

}  // namespace steamworthy::wire
