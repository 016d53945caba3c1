#include <optional>

#include "closing/fold.h"
#include "closing/outstanding.h"
#include "closing/site.h"
#include "facts/table.h"
#include "units/measure.h"
#include "wire/closing_json.h"
#include "wire/description.h"
#include "wire/fact_body.h"
#include "wire/fact_line.h"
#include "wire/tablet.h"
#include "wire/tablet_request.h"

namespace steamworthy::wire {
namespace {

boiler::Boiler described(TabletRequest& request) {
  const auto at = request.json().find("description");
  Description read;
  if (at != request.json().end() && at->is_object()) {
    read = read_boiler_json(text(*at), "description");
  } else {
    read = read_boiler_toml(request.text("description"), "description");
  }
  for (Problem& problem : read.problems) request.add(std::move(problem));
  request.settle();
  return std::move(*read.boiler);
}

std::optional<facts::SiteLimitsSet> limits_of(TabletRequest& request) {
  const auto at = request.json().find("limits");
  if (at == request.json().end() || at->is_null()) return std::nullopt;
  ReadBody read = read_body(facts::SiteLimitsSet::kind.token, 1, text(*at), UnknownKeys::Refuse);
  for (Problem& problem : read.problems) request.add(std::move(problem));
  request.settle();
  return std::get<facts::SiteLimitsSet>(read.body);
}

void let_people(TabletRequest& request, closing::Terms& terms) {
  for (const Json& one : request.list("people")) {
    TabletRequest person(text(one));
    const std::string who = person.text("who");
    for (const Json& role : person.list("roles")) {
      const auto known = role.is_string()
                             ? facts::value_of<facts::RoleName>(role.get<std::string>())
                             : std::nullopt;
      if (known) {
        terms.let(who, *known);
      } else {
        person.refuse("roles", role.dump(), "a role, such as \"lead_hand\"");
      }
    }
    person.settle();
  }
}

std::vector<facts::Fact> facts_of(TabletRequest& request) {
  std::string lines;
  for (const Json& fact : request.list("facts")) lines += fact.dump() + "\n";
  ReadFacts read = read_fact_lines(lines, "facts");
  // A body that cannot be read gives a fact all the same; that stands in the way by itself.
  if (read.facts.size() != request.list("facts").size()) {
    for (Problem& problem : read.problems) request.add(std::move(problem));
  }
  request.settle();
  return std::move(read.facts);
}

closing::Clearance wish_of(TabletRequest& request) {
  closing::Clearance wish;
  const std::string step = request.text("step");
  if (const auto known = facts::value_of<facts::StepName>(step)) {
    wish.step = *known;
  } else {
    request.refuse("step", step, "a step, such as \"fill\"");
  }
  wish.subject = request.maybe("subject");
  if (request.json().contains("up_to_bar_gauge")) {
    wish.up_to = units::GaugePressure::from_si(
        units::from_border(units::Kind::GaugePressure, request.number("up_to_bar_gauge", 0.0)).si);
  }
  request.settle();
  return wish;
}

}  // namespace

std::string answer_outstanding(std::string_view json) {
  TabletRequest request(json);
  const closing::Clearance wish = wish_of(request);
  closing::Terms terms(described(request), closing::site_of(limits_of(request)));
  let_people(request, terms);
  const std::vector<facts::Fact> facts = facts_of(request);
  const std::int64_t now_ms = request.whole("now_ms");
  request.settle();
  const closing::State state = closing::fold(facts, terms);
  words::Style style;
  style.print.system = request.system();
  return outstanding_json(wish, closing::outstanding(state, terms, wish, now_ms),
                          static_cast<std::int64_t>(facts.size()), style);
}

}  // namespace steamworthy::wire
