#include "report/leaks.h"

#include <algorithm>

#include "closing/collector.h"
#include "report/blocks.h"

namespace steamworthy::report {
namespace {

using closing::Leak;

bool natural(const std::string& a, const std::string& b) {
  return a.size() != b.size() ? a.size() < b.size() : a < b;
}

template <class Enum>
std::string word(const Context& context, Enum value) {
  return context.say(std::string(facts::Words<Enum>::family) + "." +
                     std::string(facts::token(value)));
}

}  // namespace

std::vector<std::string> leaks_of(const Filled& filled, bool open_only) {
  std::vector<std::string> numbers;
  for (const auto& [number, leak] : filled.state().leaks) {
    if (!open_only || !closing::is_closed(filled.state(), leak)) numbers.push_back(number);
  }
  std::sort(numbers.begin(), numbers.end(), natural);
  return numbers;
}

std::vector<std::string> leaks_at(const Filled& filled, const std::string& place) {
  std::vector<std::string> numbers;
  for (const auto& [number, leak] : filled.state().leaks) {
    if (leak.place == place) numbers.push_back(number);
  }
  std::sort(numbers.begin(), numbers.end(), natural);
  return numbers;
}

std::string leak_now(const Context& context, const std::string& number) {
  const Filled& filled = *context.filled;
  const Leak* leak = at(filled.state().leaks, number);
  if (leak == nullptr) return "";
  if (closing::is_closed(filled.state(), *leak)) {
    return context.say(leak->passes == facts::Passing::In ? "paper.leak_holds"
                                                          : "paper.leak_seen_dry");
  }
  if (leak->watched_hot.holds) {
    const facts::Fact* by = filled.last<facts::LeakWatchedHot>(number);
    return context.say("paper.leak_watched", {{"who", by == nullptr ? "" : by->person}});
  }
  return context.say(leak->repaired.holds ? "paper.leak_repaired" : "paper.leak_open");
}

std::string leak_what(const Context& context, const std::string& number) {
  const facts::Fact* fact = context.filled->last<facts::LeakFound>(number);
  if (fact == nullptr) return "";
  const auto& found = std::get<facts::LeakFound>(fact->body);
  std::string text = word(context, found.at) + ", " + word(context, found.passes);
  if (found.drops) {
    text +=
        ", " + context.say("paper.drops_of", {{"drops", units::measure_count(found.drops->value)}});
  }
  return text;
}

void leak_table(const Context& context, paper::Flow& flow, bool open_only) {
  if (context.filled == nullptr) return;
  const Filled& filled = *context.filled;
  paper::Table table{{{context.say("paper.leak"), 11.0},
                      {context.say("paper.place"), 22.0},
                      {context.say("paper.what"), 30.0},
                      {context.say("paper.found_by_at"), 26.0},
                      {context.say("paper.repair")},
                      {context.say("paper.repaired_by_at"), 26.0},
                      {context.say("paper.leak_now"), 30.0}},
                     {},
                     {8.0, false}};
  table.ruled = true;
  for (const std::string& number : leaks_of(filled, open_only)) {
    const facts::Fact* found = filled.last<facts::LeakFound>(number);
    const facts::Fact* repaired = filled.last<facts::LeakRepaired>(number);
    const std::string how =
        repaired == nullptr ? "" : std::get<facts::LeakRepaired>(repaired->body).how;
    table.rows.push_back({{{number, true},
                           {at(filled.state().leaks, number)->place},
                           {leak_what(context, number)},
                           {who_when(found)},
                           {how},
                           {who_when(repaired)},
                           {leak_now(context, number), true}}});
  }
  if (table.rows.empty()) {
    flow.paragraph(context.say(open_only ? "paper.no_open_leak" : "paper.no_leak"));
    return;
  }
  flow.table(table);
}

}  // namespace steamworthy::report
