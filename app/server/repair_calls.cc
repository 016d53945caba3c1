#include "server/repair_calls.h"

#include <algorithm>

#include "repair/plan.h"
#include "server/sheet_form.h"
#include "service/test_log.h"
#include "service/work_service.h"
#include "units/parse.h"
#include "wire/json_text.h"
#include "words/words.h"

namespace steamworthy::server {
namespace {

using units::Kind;
using wire::JsonObject;

/// What is asked in the query, with all faults kept.
class Asked {
 public:
  explicit Asked(const Call& call) : call_(call) {}

  template <class Quantity>
  std::optional<Quantity> measure(const char* name, Kind kind) {
    const auto written = call_.asked(name);
    if (!written || written->empty()) return std::nullopt;
    const auto parsed = units::parse_measure(kind, *written);
    if (parsed) return Quantity::from_si(parsed.value->si);
    Problem problem = parsed.problem;
    problem.field = name;
    problems.push_back(std::move(problem));
    return std::nullopt;
  }

  /// Several by commas: the leak's number, = and the cure.
  void choose(std::vector<repair::Leak>& leaks) {
    for (const std::string& written : service::between_commas(call_.asked("cure").value_or(""))) {
      choose(leaks, written);
    }
  }

  std::vector<Problem> problems;

 private:
  void choose(std::vector<repair::Leak>& leaks, const std::string& written) {
    const std::size_t equals = written.find('=');
    const auto leak = std::find_if(leaks.begin(), leaks.end(), [&](const repair::Leak& one) {
      return one.number == written.substr(0, equals);
    });
    std::vector<std::string_view> accepted;
    for (int i = 0; i <= static_cast<int>(repair::Cure::FindWhatPassesIn); ++i) {
      const auto cure = static_cast<repair::Cure>(i);
      accepted.push_back(repair::token(cure));
      if (leak == leaks.end() || equals == std::string::npos) continue;
      if (written.substr(equals + 1) != accepted.back()) continue;
      leak->chosen = cure;
      return;
    }
    problems.push_back({"server.not_said", "", 0, "cure", written,
                        "the number of an open leak, = and one of " + wire::listed(accepted),
                        "is no cure of an open leak"});
  }

  const Call& call_;
};

std::string cure_text(repair::Cure cure, const words::Style& style) {
  return words::label("repair.cure." + std::string(repair::token(cure)), style);
}

std::string leak_json(const repair::LeakPlan& one, const words::Style& style) {
  std::vector<std::string> cures;
  for (const repair::Cure cure : one.cures) {
    cures.push_back(
        JsonObject().put("cure", repair::token(cure)).put("text", cure_text(cure, style)).text());
  }
  return JsonObject()
      .put("number", one.leak.number)
      .put("place", one.leak.place)
      .put("cure", repair::token(one.cure))
      .put("cure_text", cure_text(one.cure, style))
      .list("cures", cures)
      .put("needs_drop", one.needs_drop)
      .put("comes_free", one.comes_free)
      .put("may_be_watched_hot", one.may_be_watched_hot)
      .put("out_alone_text",
           one.needs_drop ? words::text(units::measure(one.out_alone), style) : std::string())
      .put("above", one.above)
      .put("notes", sentences(one.notes, style))
      .text();
}

}  // namespace

Outcome repair_plan(House& house, const Call& call) {
  const record::Uuid closing = call.closing();
  const words::Style style = call.style();
  const KnownBoiler known = house.closings.boiler_of(closing);
  repair::PlanRequest request;
  house.closings.read([&](const service::ClosingBook& book) {
    request.leaks = service::open_leaks(book.ledger(scope_of(closing)).state());
  });
  Asked asked(call);
  asked.choose(request.leaks);
  request.drain_rate = asked.measure<units::VolumeFlow>("drain_rate", Kind::Flow);
  request.fill_rate = asked.measure<units::VolumeFlow>("fill_rate", Kind::Flow);
  request.margin = asked.measure<units::Length>("margin", Kind::Size).value_or(request.margin);
  request.hours.let_down = asked.measure<units::Duration>("let_down", Kind::Duration);
  request.hours.repairs = asked.measure<units::Duration>("repairs", Kind::Duration);
  request.hours.raise_and_hold = asked.measure<units::Duration>("raise_and_hold", Kind::Duration);
  request.hours.walkdown = asked.measure<units::Duration>("walkdown", Kind::Duration);
  request.hours.walkdown_left = asked.measure<units::Duration>("walkdown_left", Kind::Duration);
  if (!asked.problems.empty()) throw BadInput(std::move(asked.problems));
  const repair::Plan plan = repair::plan(*known.boiler, request);
  std::vector<std::string> leaks;
  for (const repair::LeakPlan& one : plan.leaks) leaks.push_back(leak_json(one, style));
  std::vector<std::string> figures;
  for (const working::Figure& figure : plan.figures) figures.push_back(figure_json(figure, style));
  return answer(JsonObject()
                    .list("leaks", leaks)
                    .put("drop_by", plan.drop.open)
                    .list("figures", figures)
                    .put("notes", sentences(plan.notes, style))
                    .text());
}

}  // namespace steamworthy::server
