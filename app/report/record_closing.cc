#include "report/record_closing.h"

#include <algorithm>
#include <map>
#include <string_view>

#include "report/blocks.h"
#include "report/body_texts.h"
#include "report/leaks.h"
#include "report/standing.h"

namespace steamworthy::report {
namespace {

paper::Table by_and_what(const Context& context) {
  paper::Table table{{{context.say("paper.time"), 30.0},
                      {context.say("paper.what")},
                      {context.say("paper.entry"), 26.0}},
                     {}};
  table.ruled = true;
  return table;
}

void add(const Context& context, paper::Table& table, const facts::Fact& fact) {
  std::string text = words::sentence(facts::tell(fact), context.style);
  if (!fact.beside.note.empty()) {
    if (!text.empty() && text.back() == '.') text.pop_back();
    text += ": " + fact.beside.note + ".";
  }
  table.rows.push_back({{{when(fact)}, {text}, {entry_name(fact)}}});
}

/// Entries of some kinds, each as its sentence.
template <class... Kinds>
void told(const Context& context, paper::Flow& flow, const char* title) {
  paper::Table table = by_and_what(context);
  for (const facts::Fact* fact : context.filled->facts()) {
    if ((std::holds_alternative<Kinds>(fact->body) || ...)) add(context, table, *fact);
  }
  if (table.rows.empty()) return;
  flow.heading(context.title(title), 2);
  flow.table(table);
}

/// Tubes that a ball did not pass at once; how many passed.
void tubes(const Context& context, paper::Flow& flow) {
  const Filled& filled = *context.filled;
  const auto balled = filled.all<facts::TubesBalled>();
  if (balled.empty()) return;
  int passed = 0;
  paper::Table table = by_and_what(context);
  for (const facts::Fact* fact : balled) {
    const auto& body = std::get<facts::TubesBalled>(fact->body);
    const bool is_single = body.first == body.last;
    if (body.result == facts::BallResult::Passed) passed += body.last - body.first + 1;
    if (body.result != facts::BallResult::Passed || is_single) add(context, table, *fact);
  }
  flow.heading(context.title("paper.tubes_balled"), 2);
  flow.paragraph(context.say("paper.tubes_passed", {{"count", units::measure_count(passed)}}));
  if (!table.rows.empty()) flow.table(table);
  for (const auto& [bank, now] : filled.state().banks) {
    const auto troubled = std::count_if(now.troubled.begin(), now.troubled.end(),
                                        [](const auto& one) { return !one.second.holds; });
    if (troubled == 0 && now.balls_out == 0) continue;
    flow.paragraph(context.say("paper.tubes_open", {{"bank", bank},
                                                    {"tubes", std::to_string(troubled)},
                                                    {"balls", std::to_string(now.balls_out)}}),
                   {9.0, true}, "!");
  }
}

/// The names that a body tells beside its maker's: who went in, who counted with him.
std::vector<std::string> named_in(const facts::Body& body) {
  std::vector<std::string> found;
  for_each_text(body, [&](std::string_view name, const std::string& value) {
    if (name == "who" || name == "second" || name == "from" || name == "to") found.push_back(value);
  });
  return found;
}

/// Everybody whose entries are in the log, or whom they name.
void people(const Context& context, paper::Flow& flow) {
  struct Person {
    std::size_t entries = 0;
    std::size_t named = 0;
    const facts::Fact* first = nullptr;
    const facts::Fact* last = nullptr;
  };
  std::map<std::string, Person> all;
  const auto note = [&](const std::string& name, const facts::Fact* fact) -> Person& {
    Person& person = all[name];
    if (person.first == nullptr) person.first = fact;
    person.last = fact;
    return person;
  };
  for (const facts::Fact* fact : context.filled->facts()) {
    if (!fact->person.empty()) ++note(fact->person, fact).entries;
    for (const std::string& name : named_in(fact->body))
      if (!name.empty()) ++note(name, fact).named;
  }
  flow.heading(context.title("paper.people"), 2);
  paper::Table table{{{context.say("paper.name"), flow.width() * 0.3},
                      {context.say("paper.entries"), 0.0, paper::Align::Right},
                      {context.say("paper.named_in"), 0.0, paper::Align::Right},
                      {context.say("paper.first_entry")},
                      {context.say("paper.last_entry")}},
                     {}};
  table.ruled = true;
  for (const auto& [name, person] : all) {
    table.rows.push_back({{{name, true},
                           {std::to_string(person.entries)},
                           {std::to_string(person.named)},
                           {when(*person.first)},
                           {when(*person.last)}}});
  }
  flow.table(table);
}

void heads(const Context& context, paper::Flow& flow) {
  flow.heading(context.title("paper.heads"), 2);
  if (context.filled->heads().empty()) {
    flow.paragraph(context.say("paper.no_heads"), {9.0, false}, "!");
    return;
  }
  flow.paragraph(context.say("paper.heads_note"), {8.5, false});
  paper::Table table{
      {{context.say("paper.last_entry"), 34.0}, {context.say("paper.sha256")}}, {}, {8.0, false}};
  table.ruled = true;
  for (const FeedHead& head : context.filled->heads())
    table.rows.push_back({{{entry_name(head), true}, {head.sha256}}});
  flow.table(table);
}

}  // namespace

std::string test_day(const Filled& filled) {
  const facts::Fact* hold = filled.last<facts::HoldEnded>();
  return hold == nullptr ? filled.now().substr(0, 10) : when(*hold).substr(0, 10);
}

std::string seen_text(const Context& context) {
  const Filled& filled = *context.filled;
  const Seen seen = seen_dry(filled);
  std::string text = context.say("paper.seen_dry_of", {{"dry", std::to_string(seen.dry)},
                                                       {"places", std::to_string(seen.places)}});
  const auto leaks = leaks_of(filled, false);
  std::string found;
  for (const std::string& number : leaks) {
    found += (found.empty() ? "" : "; ") + number + " " + at(filled.state().leaks, number)->place +
             ": " + leak_now(context, number);
  }
  text += "\n" + (found.empty() ? context.say("paper.no_leak")
                                : context.say("paper.leaks_found", {{"leaks", found}}));
  if (seen.first != nullptr) {
    std::vector<std::string> names;
    for (const auto& [who, fact] : seen.by) names.push_back(who);
    text += "\n" + context.say("paper.looked_by", {{"who", joined(names)},
                                                   {"pressure", units::measure(*seen.lowest)},
                                                   {"from", when(*seen.first)},
                                                   {"to", when(*seen.last)}});
  }
  return text;
}

void record_of_closing(const Context& context, paper::Flow& flow) {
  const Filled& filled = *context.filled;
  flow.heading(context.title("paper.what_the_log_says"));
  told<facts::SheetIssued, facts::ReliefTried, facts::RaisingStarted, facts::HoldStarted,
       facts::HoldEnded, facts::ResultAccepted, facts::TestStopped, facts::BoilerLetDown,
       facts::BoilerLeftFull, facts::BoilerLeftSafe, facts::ShiftHandedOver>(context, flow,
                                                                             "paper.course");
  flow.heading(context.title("paper.leaks"), 2);
  leak_table(context, flow, false);
  findings_table(context, flow);
  tubes(context, flow);
  told<facts::ClearanceOverridden, facts::AlarmRaised, facts::AlarmTaken, facts::EntryWithdrawn>(
      context, flow, "paper.alarms");
  people(context, flow);
  heads(context, flow);
  std::vector<Signed> rows = signatures_given(filled);
  const auto sign = [&](const char* key, const facts::Fact* fact) {
    if (fact != nullptr) rows.push_back({key, fact});
  };
  const auto& state = filled.state();
  sign("paper.result_accepted_by", filled.last<facts::ResultAccepted>());
  if (!state.given_by.empty()) sign("paper.given_by", filled.last<facts::BoilerGiven>());
  if (!state.received_by.empty()) sign("paper.received_by", filled.last<facts::BoilerReceived>());
  if (rows.empty()) rows = {{"paper.pump_hand_name"}, {"paper.sign_inspector"}};
  flow.need(26.0 + 10.0 * static_cast<double>(rows.size()));
  flow.heading(context.title("paper.signatures"), 2);
  signed_by(context, flow, rows);
}

}  // namespace steamworthy::report
