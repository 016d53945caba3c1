#include "service/closing_book.h"

#include <algorithm>
#include <utility>

#include "base/error.h"
#include "service/log_service.h"

namespace steamworthy::service {
namespace {

constexpr std::size_t at_once = 1000;

/// Of a closing whose description is not to hand: nothing of the boiler is known.
const boiler::Boiler& nothing_described() {
  static const boiler::Boiler nothing;
  return nothing;
}

std::unique_ptr<closing::Fold> empty_fold(const std::shared_ptr<const boiler::Boiler>& boiler,
                                          const Plant& plant) {
  return std::make_unique<closing::Fold>(
      terms_of(boiler != nullptr ? *boiler : nothing_described(), plant));
}

}  // namespace

Ledger::Ledger(std::string closing, std::shared_ptr<const boiler::Boiler> boiler,
               const Plant& plant)
    : closing_(std::move(closing)), boiler_(std::move(boiler)), fold_(empty_fold(boiler_, plant)) {}

void Ledger::take(std::int64_t intake_no, facts::Fact fact) {
  if (const auto* raised = std::get_if<facts::AlarmRaised>(&fact.body)) {
    raised_.insert(raised->alarm);
  }
  fold_->add(fact);
  taken_.push_back({intake_no, std::move(fact)});
}

void Ledger::judge_by(std::shared_ptr<const boiler::Boiler> boiler, const Plant& plant) {
  boiler_ = std::move(boiler);
  fold_ = empty_fold(boiler_, plant);
  for (const Taken& one : taken_) fold_->add(one.fact);
}

wire::ClosingView Ledger::view(std::int64_t now_ms, std::size_t most) const {
  wire::ClosingView view{state(), terms(), closing_, now_ms, fold_->since_ms(), intake_no()};
  if (!taken_.empty()) view.utc_offset_min = taken_.back().fact.utc_offset_min;
  for (auto one = taken_.rbegin(); one != taken_.rend() && view.last.size() < most; ++one) {
    view.last.push_back({one->intake_no, &one->fact});
  }
  return view;
}

std::vector<wire::TakenIn> Ledger::facts_after(std::int64_t intake_no, std::size_t most) const {
  auto from =
      std::upper_bound(taken_.begin(), taken_.end(), intake_no,
                       [](std::int64_t no, const Taken& one) { return no < one.intake_no; });
  std::vector<wire::TakenIn> facts;
  for (; from != taken_.end() && facts.size() < most; ++from) {
    facts.push_back({from->intake_no, &from->fact});
  }
  return facts;
}

std::vector<closing::Outstanding> Ledger::outstanding(const closing::Clearance& clearance,
                                                      std::int64_t now_ms) const {
  return closing::outstanding(state(), terms(), clearance, now_ms);
}

std::vector<closing::Alarm> Ledger::alarms_to_raise() const {
  std::vector<closing::Alarm> alarms = closing::alarms(state());
  std::erase_if(alarms, [&](const closing::Alarm& one) { return raised_.count(one.name) != 0; });
  return alarms;
}

ClosingBook::ClosingBook(const record::Scope& plant, Descriptions descriptions)
    : plant_scope_(plant), descriptions_(std::move(descriptions)) {}

void ClosingBook::catch_up(const store::FactLog& log) {
  while (true) {
    const std::vector<store::StoredFact> facts = log.read(intake_no_, at_once);
    take_in(facts);
    if (facts.size() < at_once) break;
  }
}

void ClosingBook::take_in(const std::vector<store::StoredFact>& facts) {
  const std::size_t plant_facts = plant_facts_.size();
  for (const store::StoredFact& fact : facts) take(fact);
  if (plant_facts_.size() == plant_facts) return;
  const auto before = std::exchange(plant_, std::make_shared<const Plant>(plant_of(plant_facts_)));
  if (judge_alike(*before, *plant_)) return;
  for (auto& [scope, ledger] : ledgers_) ledger.judge_by(ledger.boiler_, *plant_);
}

void ClosingBook::take(const store::StoredFact& stored) {
  intake_no_ = stored.intake_no;
  const record::Parsed parsed = record::parse(stored.sealed.bytes);
  if (!parsed) return;  // a store that holds such bytes is damaged: verify says so
  const record::Envelope& envelope = parsed.fact->envelope;
  auto fact = fact_of(envelope, parsed.fact->body);
  if (!fact) return;
  if (envelope.scope.kind == record::ScopeKind::Plant) {
    if (envelope.scope == plant_scope_) plant_facts_.push_back(std::move(*fact));
    return;
  }
  auto ledger = ledgers_.find(envelope.scope);
  if (ledger == ledgers_.end()) {
    ledger =
        ledgers_.emplace(envelope.scope, Ledger(text(envelope.scope.id), nullptr, *plant_)).first;
  }
  const std::string pinned = ledger->second.state().description_sha256;
  ledger->second.take(stored.intake_no, std::move(*fact));
  const std::string& pins = ledger->second.state().description_sha256;
  if (pins != pinned) ledger->second.judge_by(descriptions_(pins), *plant_);
}

std::vector<record::Scope> ClosingBook::closings() const {
  std::vector<record::Scope> scopes;
  for (const auto& [scope, ledger] : ledgers_) scopes.push_back(scope);
  return scopes;
}

const Ledger& ClosingBook::ledger(const record::Scope& closing) const {
  const auto ledger = ledgers_.find(closing);
  if (ledger == ledgers_.end()) {
    throw NotFound("service.unknown_closing",
                   "there is no closing " + text(closing.id) + " in this store");
  }
  return ledger->second;
}

}  // namespace steamworthy::service
