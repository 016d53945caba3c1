#include "service/closing_service.h"

#include <algorithm>

#include "wire/fact_body.h"

namespace steamworthy::service {
namespace {

using closing::Clearance;
using facts::StepName;

constexpr std::uint32_t second_ms = 1000;

Problem problem(const char* code, const char* field, const std::string& found,
                const std::string& accepted, const char* message) {
  return {code, "", 0, field, found, accepted, message};
}

std::vector<Problem> faults_of_asking(const ClosingBook& book, const Ledger& ledger,
                                      const std::string& device, const Asking& asking) {
  std::vector<Problem> faults = faults_of(asking.clearance, ledger.terms());
  const std::string& pen = ledger.state().pen;
  if (pen != device) {
    faults.push_back(problem("service.no_pen", "closing", device, pen.empty() ? "" : pen,
                             "is not the device that holds the pen of this closing"));
  }
  if (!book.plant().may(asking.person, may_clear)) {
    faults.push_back(problem("service.no_role", "person", asking.person,
                             "a lead hand or engineer of the plant", "may not give clearances"));
  }
  const bool is_known = book.plant().may(asking.second, ~closing::nobody);
  if (!is_known || asking.second == asking.person) {
    faults.push_back(problem("service.two_names", "second", asking.second,
                             "another person of the plant", "is not a second name"));
  }
  return faults;
}

bool is_about_a_space(StepName step) {
  return step == StepName::Enter || step == StepName::CloseLastWayIn ||
         step == StepName::WalkFireSide;
}

bool is_about_a_closure(StepName step) {
  return step == StepName::Tighten || step == StepName::Strike || step == StepName::BreakJoint;
}

facts::OfClearance body_of(const Clearance& clearance) {
  facts::OfClearance body{clearance.step, clearance.subject, std::nullopt};
  if (clearance.up_to) body.up_to = facts::Measured<units::GaugePressure>{*clearance.up_to, ""};
  return body;
}

/// What made the clearance that was just given lapse.
std::vector<closing::Outstanding> lapse_of(const Ledger& ledger, const Clearance& clearance,
                                           std::int64_t now_ms) {
  for (const closing::Standing& one : closing::standing(ledger.state(), ledger.terms(), now_ms)) {
    if (one.given.step != clearance.step || one.given.subject != clearance.subject || !one.lapsed) {
      continue;
    }
    const closing::CheckRow& check = closing::row(*one.lapsed);
    return {{check.check,
             one.given.about,
             one.why,
             {"remedy." + std::string(check.token), one.why.values},
             check.remover}};
  }
  return {};
}

/// Whether a count waits to hear from this device: it was made by another one, and nothing that
/// this one wrote has seen it.
bool is_awaited(const closing::State& state, const std::string& device) {
  for (const auto& [tag, space] : state.spaces) {
    if (space.count && space.count->valid && space.count->heard.count(device) == 0) return true;
  }
  return false;
}

}  // namespace

std::vector<Problem> faults_of(const Clearance& clearance, const closing::Terms& terms) {
  std::vector<Problem> faults;
  const auto& layout = terms.layout();
  std::vector<std::string> accepted;
  if (is_about_a_space(clearance.step)) {
    for (const auto& [tag, space] : layout.spaces) accepted.push_back(tag);
  } else if (is_about_a_closure(clearance.step)) {
    for (const auto& [tag, closure] : layout.closures) accepted.push_back(tag);
  }
  const bool needs_one = is_about_a_space(clearance.step) || is_about_a_closure(clearance.step);
  const bool is_one =
      std::find(accepted.begin(), accepted.end(), clearance.subject) != accepted.end();
  if (needs_one && !is_one) {
    faults.push_back(
        problem("service.no_subject", "subject", clearance.subject,
                is_about_a_space(clearance.step) ? "tag of a space" : "tag of a closure",
                "is not what this step is about"));
  } else if (!needs_one && !clearance.subject.empty()) {
    faults.push_back(problem("service.no_subject", "subject", clearance.subject, "nothing",
                             "stands where this step is about the whole boiler"));
  }
  if (clearance.step == StepName::RaisePressure && !clearance.up_to) {
    faults.push_back(problem("service.no_pressure", "up_to", "", "a gauge pressure",
                             "the pressure that the step goes up to is missing"));
  }
  return faults;
}

store::Draft draft_of(const record::Scope& scope, const std::string& person,
                      const facts::Body& body, std::int64_t happened_at_ms, int utc_offset_min) {
  const facts::Kind kind = facts::kind_of(body);
  store::Draft draft;
  draft.scope = scope;
  draft.person = person;
  draft.kind = std::string(kind.token);
  draft.kind_version = static_cast<std::uint16_t>(kind.version);
  draft.happened_at_ms = happened_at_ms;
  draft.happened_precision_ms = second_ms;
  draft.utc_offset_min = static_cast<std::int16_t>(utc_offset_min);
  draft.body = wire::body_json(body);
  return draft;
}

std::size_t raise_alarms(store::FactLog& log, ClosingBook& book, std::int64_t now_ms) {
  book.catch_up(log);
  std::vector<store::Draft> drafts;
  std::size_t raised = 0;
  for (const record::Scope& scope : book.closings()) {
    const Ledger& ledger = book.ledger(scope);
    if (ledger.state().pen != hex(log.device())) continue;
    const int offset = ledger.view(now_ms, 0).utc_offset_min;
    for (const closing::Alarm& alarm : ledger.alarms_to_raise()) {
      drafts.push_back(
          draft_of(scope, "", facts::AlarmRaised{alarm.name, alarm.why.key}, now_ms, offset));
      ++raised;
    }
    if (is_awaited(ledger.state(), hex(log.device()))) {
      drafts.push_back(draft_of(scope, "", facts::DeviceReported{}, now_ms, offset));
    }
  }
  if (drafts.empty()) return 0;
  log.append(drafts);
  book.catch_up(log);
  return raised;
}

std::vector<store::Receipt> append(store::FactLog& log, ClosingBook& book,
                                   const std::vector<store::Draft>& drafts, std::int64_t now_ms) {
  std::vector<store::Receipt> receipts = log.append(drafts);
  raise_alarms(log, book, now_ms);
  return receipts;
}

record::Scope begin_closing(store::FactLog& log, ClosingBook& book, const record::Uuid& id,
                            const std::string& boiler, const std::string& description_sha256,
                            const std::string& person, std::int64_t now_ms, int utc_offset_min) {
  const record::Scope scope{record::ScopeKind::Closing, id};
  append(
      log, book,
      {draft_of(scope, person, facts::ClosingStarted{boiler, description_sha256}, now_ms,
                utc_offset_min),
       draft_of(scope, person, facts::DeviceJoined{{hex(log.device())}}, now_ms, utc_offset_min)},
      now_ms);
  return scope;
}

Clearing give_clearance(store::FactLog& log, ClosingBook& book, const record::Scope& closing,
                        const Asking& asking, std::int64_t now_ms) {
  raise_alarms(log, book, now_ms);
  const Ledger& ledger = book.ledger(closing);
  std::vector<Problem> faults = faults_of_asking(book, ledger, hex(log.device()), asking);
  if (!faults.empty()) throw BadInput(std::move(faults));
  Clearing clearing{ledger.outstanding(asking.clearance, now_ms), {}};
  if (!clearing.is_given()) return clearing;
  facts::ClearanceGiven given;
  const facts::OfClearance about = body_of(asking.clearance);
  given.step = about.step;
  given.subject = about.subject;
  given.up_to = about.up_to;
  given.second = asking.second;
  clearing.receipts =
      append(log, book,
             {draft_of(closing, asking.person, facts::ClearanceAsked{about}, now_ms,
                       asking.utc_offset_min),
              draft_of(closing, asking.person, given, now_ms, asking.utc_offset_min)},
             now_ms);
  clearing.outstanding = lapse_of(book.ledger(closing), asking.clearance, now_ms);
  return clearing;
}

}  // namespace steamworthy::service
