#include "report/standing.h"

#include <algorithm>

#include "closing/stage.h"

namespace steamworthy::report {
namespace {

std::string step_words(const Context& context, facts::StepName step) {
  return context.say("clearance." + std::string(facts::token(step)));
}

/// Rows of one kind that differ in what they are about alone.
struct Group {
  std::vector<std::string> subjects;
  std::vector<closing::Outstanding> items;
};

std::string reason_of(const Context& context, const Group& group) {
  working::Message reason = group.items.front().reason;
  if (!group.subjects.empty()) {
    for (auto& [name, value] : reason.values)
      if (name == "subject") value = joined(group.subjects);
  }
  return words::sentence(reason, context.style);
}

}  // namespace

std::string joined(const std::vector<std::string>& tags) {
  std::string text;
  for (const std::string& tag : tags) text += (text.empty() ? "" : ", ") + tag;
  return text;
}

std::string stage_now(const Context& context) {
  const Filled& filled = *context.filled;
  return context.say("stage." +
                     std::string(closing::token(closing::stage(filled.state(), filled.terms()))));
}

std::string gauges_now(const Context& context) {
  std::string text;
  for (const auto& [tag, gauge] : context.filled->state().gauges) {
    if (!gauge.fitted.holds || !gauge.reading) continue;
    text += (text.empty() ? "" : "; ") + tag + " " + context.print(units::measure(*gauge.reading));
  }
  return text;
}

std::string temperatures_now(const Context& context, facts::Thing of) {
  std::string text;
  for (const auto& [tag, reading] : context.filled->state().temperatures) {
    if (reading.of != of) continue;
    text +=
        (text.empty() ? "" : "; ") + tag + " " + context.print(units::measure(reading.temperature));
  }
  return text;
}

std::optional<units::GaugePressure> test_pressure(const Filled& filled) {
  if (!filled.state().sheet) return std::nullopt;
  return filled.state().sheet->test_pressure;
}

Seen seen_dry(const Filled& filled) {
  Seen seen;
  for (const std::string& place : filled.terms().layout().places) {
    ++seen.places;
    const closing::Condition* dry = at(filled.state().dry, place);
    const facts::Fact* fact = filled.last<facts::PlaceSeenDry>(place);
    if (dry == nullptr || !dry->holds || fact == nullptr) continue;
    ++seen.dry;
    const auto pressure = std::get<facts::PlaceSeenDry>(fact->body).pressure.value;
    if (!seen.lowest || pressure < *seen.lowest) seen.lowest = pressure;
    seen.by[fact->person] = fact;
    if (seen.first == nullptr || fact->happened_at_ms < seen.first->happened_at_ms)
      seen.first = fact;
    if (seen.last == nullptr || fact->happened_at_ms > seen.last->happened_at_ms) seen.last = fact;
  }
  return seen;
}

void outstanding_table(const Context& context, paper::Flow& flow, facts::StepName step) {
  const Filled& filled = *context.filled;
  closing::Clearance asked{step, "", std::nullopt};
  if (step == facts::StepName::RaisePressure) asked.up_to = test_pressure(filled);
  std::vector<Group> groups;
  for (closing::Outstanding& item :
       closing::outstanding(filled.state(), filled.terms(), asked, filled.now_ms())) {
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
      return group.items.front().check == item.check;
    });
    Group& group = same == groups.end() ? groups.emplace_back() : *same;
    std::string subject = item.subject;
    if (item.check == closing::Check::S11Alarm) {
      // An alarm's name is for the log; what it says is for people.
      if (const closing::Alarm* alarm = at(filled.state().alarms, subject))
        subject = "\"" + words::phrase(alarm->why, context.style) + "\"";
    }
    const auto known = std::find(group.subjects.begin(), group.subjects.end(), subject);
    if (!subject.empty() && known == group.subjects.end()) group.subjects.push_back(subject);
    group.items.push_back(std::move(item));
  }
  if (groups.empty()) {
    flow.paragraph(context.say("paper.nothing_outstanding",
                               {{"step", step_words(context, step)}, {"time", filled.now()}}));
    return;
  }
  paper::Table table{{{"", 8.0},
                      {context.say("paper.outstanding")},
                      {context.say("paper.to_do"), flow.width() * 0.3},
                      {context.say("paper.whose"), 26.0}},
                     {}};
  table.ruled = true;
  for (const Group& group : groups) {
    const closing::Outstanding& first = group.items.front();
    table.rows.push_back({{paper::tick_box(),
                           {reason_of(context, group)},
                           {words::sentence(first.remedy, context.style)},
                           {context.say("role." + std::string(facts::token(first.role)))}},
                          6.5});
  }
  flow.table(table);
}

void lapsed_table(const Context& context, paper::Flow& flow) {
  const Filled& filled = *context.filled;
  struct Row {
    facts::StepName step;
    closing::Check by;
    std::vector<std::string> subjects;
  };
  std::vector<Row> rows;
  for (const closing::Standing& one :
       closing::standing(filled.state(), filled.terms(), filled.now_ms())) {
    if (!one.lapsed) continue;
    auto same = std::find_if(rows.begin(), rows.end(), [&](const Row& row) {
      return row.step == one.given.step && row.by == *one.lapsed;
    });
    if (same == rows.end()) same = rows.insert(rows.end(), {one.given.step, *one.lapsed, {}});
    if (!one.given.subject.empty()) same->subjects.push_back(one.given.subject);
  }
  paper::Table table{{{context.say("paper.clearance"), flow.width() * 0.42},
                      {context.say("paper.lapsed_because")},
                      {context.say("paper.to_do")}},
                     {}};
  table.ruled = true;
  for (const Row& row : rows) {
    const std::string token(closing::row(row.by).token);
    std::string what = step_words(context, row.step);
    if (!row.subjects.empty()) what += ": " + joined(row.subjects);
    const std::vector<std::pair<std::string, working::Value>> about = {
        {"subject", context.say("paper.something")}};
    table.rows.push_back({{{what},
                           {context.say("outstanding." + token, about)},
                           {context.say("remedy." + token, about)}}});
  }
  for (int i = spare_rows(context, table.rows.size(), 3); i > 0; --i)
    table.rows.push_back(empty_row(3));
  flow.table(table);
}

void inside_table(const Context& context, paper::Flow& flow) {
  const Filled& filled = *context.filled;
  paper::Table table{{{context.say("paper.name"), flow.width() * 0.3},
                      {context.say("paper.space")},
                      {context.say("paper.in_at")},
                      {context.say("paper.way")}},
                     {}};
  table.ruled = true;
  for (const auto& [tag, space] : filled.state().spaces) {
    const auto add = [&, &tag = tag](const std::string& what, const facts::Fact* in) {
      table.rows.push_back({{{what, true}, {tag}, {in == nullptr ? "" : when(*in)}, {}}});
    };
    for (const std::string& who : closing::inside(space.people)) {
      const facts::Fact* in = nullptr;
      for (const facts::Fact* fact : filled.all<facts::TallyIn>(tag))
        if (std::get<facts::TallyIn>(fact->body).who == who) in = fact;
      add(who, in);
    }
    for (const std::string& tool : closing::inside(space.things)) {
      const facts::Fact* in = nullptr;
      for (const facts::Fact* fact : filled.all<facts::ToolIn>(tag))
        if (std::get<facts::ToolIn>(fact->body).tool == tool) in = fact;
      add(tool, in);
    }
  }
  if (table.rows.empty()) flow.paragraph(context.say("paper.nobody_inside"));
  for (int i = spare_rows(context, 1, 3); i > 0; --i) table.rows.push_back(empty_row(4));
  flow.table(table);
}

void still_on_table(const Context& context, paper::Flow& flow) {
  const Filled& filled = *context.filled;
  paper::Table table{{{context.say("paper.tag"), 18.0},
                      {context.say("paper.what")},
                      {context.say("paper.where"), 30.0},
                      {context.say("paper.lock"), 26.0},
                      {context.say("paper.on_by_at"), 30.0},
                      {context.say("paper.seen_by"), 26.0}},
                     {}};
  table.ruled = true;
  for (const auto& [tag, now] : filled.state().temporaries) {
    if (!now.was_on || (now.off.holds && now.seen_off.holds)) continue;
    const boiler::Temporary* known = nullptr;
    for (const boiler::Temporary& one : context.boiler.temporaries)
      if (one.tag == tag) known = &one;
    std::string what = known == nullptr ? "" : known->name;
    if (now.off.holds) what += (what.empty() ? "" : "; ") + context.say("paper.off_not_seen");
    table.rows.push_back({{{tag, true},
                           {what},
                           {now.where},
                           {},
                           {who_when(filled.last<facts::TemporaryOn>(tag))},
                           {}},
                          7.0});
  }
  for (const boiler::Isolation& one : context.boiler.isolations) {
    const closing::Isolation* now = at(filled.state().isolations, one.tag);
    const facts::Fact* made = filled.last<facts::IsolationMade>(one.tag);
    if (now == nullptr || !now->how || made == nullptr) continue;
    table.rows.push_back({{{one.tag, true},
                           {one.pipe},
                           {context.say("isolated_how." + std::string(facts::token(*now->how)))},
                           {std::get<facts::IsolationMade>(made->body).lock},
                           {who_when(made)},
                           {}},
                          7.0});
  }
  if (table.rows.empty()) flow.paragraph(context.say("paper.nothing_on"));
  for (int i = spare_rows(context, 1, 3); i > 0; --i) table.rows.push_back(empty_row(6, 7.0));
  flow.table(table);
}

void findings_table(const Context& context, paper::Flow& flow) {
  const Filled& filled = *context.filled;
  const auto made = filled.all<facts::FindingMade>();
  if (made.empty()) return;
  flow.heading(context.title("paper.findings"), 2);
  paper::Table table{{{context.say("paper.finding"), 14.0},
                      {context.say("paper.where"), 22.0},
                      {context.say("paper.what")},
                      {context.say("paper.found_by_at"), 30.0},
                      {context.say("paper.decided"), 30.0},
                      {context.say("paper.decided_by_at"), 30.0}},
                     {}};
  table.ruled = true;
  for (const facts::Fact* fact : made) {
    const auto& body = std::get<facts::FindingMade>(fact->body);
    const closing::Finding* now = at(filled.state().findings, body.finding);
    const bool is_decided = now != nullptr && now->disposition;
    const facts::Fact* decided =
        is_decided ? filled.last<facts::FindingDecided>(body.finding) : nullptr;
    std::string words = context.say("paper.undecided");
    if (is_decided)
      words = context.say("disposition." + std::string(facts::token(*now->disposition)));
    if (decided != nullptr && !decided->beside.note.empty()) words += ": " + decided->beside.note;
    table.rows.push_back(
        {{{body.finding, true},
          {body.where},
          {body.what + "; " + context.say("severity." + std::string(facts::token(body.severity)))},
          {who_when(fact)},
          {words, true},
          {who_when(decided)}}});
  }
  flow.table(table);
}

std::vector<Signed> signatures_given(const Filled& filled) {
  std::vector<Signed> rows;
  for (const facts::Fact* fact : filled.all<facts::SignatureGiven>()) {
    const auto& body = std::get<facts::SignatureGiven>(fact->body);
    rows.push_back({"role." + std::string(facts::token(body.role)), fact, "", body.what});
  }
  return rows;
}

}  // namespace steamworthy::report
