#include "service/closing_facts.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/error.h"
#include "paper/digest.h"
#include "record/sha256.h"
#include "service/log_service.h"
#include "service/plant.h"
#include "store/reader.h"
#include "wire/fact_line.h"

namespace steamworthy::service {
namespace {

constexpr const char* plant = "plant";

struct Read {
  std::vector<facts::Fact> facts;  ///< of all closings and of the plant
  /// By closing and device: the last number and its hash.
  std::map<std::string, std::map<std::string, report::FeedHead>> heads;
};

Read read_lines(const std::vector<Given>& files) {
  Read read;
  std::vector<Problem> problems;
  for (const Given& file : files) {
    wire::ReadFacts some = wire::read_fact_lines(file.bytes, file.name);
    std::move(some.facts.begin(), some.facts.end(), std::back_inserter(read.facts));
    std::move(some.problems.begin(), some.problems.end(), std::back_inserter(problems));
  }
  if (!problems.empty()) throw BadInput(std::move(problems));
  return read;
}

Read read_facts_of(const std::string& store) {
  Read read;
  for (const store::StoredFact& stored : store::read_store(store).facts) {
    const record::Parsed parsed = record::parse(stored.sealed.bytes);
    if (!parsed) continue;  // a store that holds such bytes is damaged: verify says so
    const record::Envelope& envelope = parsed.fact->envelope;
    const std::string scope =
        envelope.scope.kind == record::ScopeKind::Plant ? plant : text(envelope.scope.id);
    report::FeedHead& head = read.heads[scope][hex(envelope.device)];
    if (static_cast<int>(envelope.device_seq) > head.device_seq) {
      head = {hex(envelope.device), static_cast<int>(envelope.device_seq),
              hex(record::sha256(stored.sealed.bytes))};
    }
    if (auto fact = fact_of(envelope, parsed.fact->body)) read.facts.push_back(std::move(*fact));
  }
  return read;
}

std::string chosen(const std::vector<facts::Fact>& facts, const std::string& wanted) {
  std::set<std::string> names;
  for (const facts::Fact& fact : facts)
    if (fact.closing != plant) names.insert(fact.closing);
  if (wanted.empty() && names.size() == 1) return *names.begin();
  if (names.count(wanted) != 0) return wanted;
  std::string accepted;
  for (const std::string& name : names) accepted += (accepted.empty() ? "" : ", ") + name;
  throw BadInput({{"service.no_closing", "", 0, "--closing", wanted,
                   accepted.empty() ? "there is none" : accepted,
                   "is not the name of a closing that is there"}});
}

}  // namespace

FilledClosing::FilledClosing(const boiler::Boiler& boiler, const std::string& description_sha256,
                             const ClosingSource& source) {
  const Read read = source.store.empty() ? read_lines(source.lines) : read_facts_of(source.store);
  const std::string name = chosen(read.facts, source.closing);
  std::vector<facts::Fact> of_plant;
  for (const facts::Fact& fact : read.facts)
    if (fact.closing == plant) of_plant.push_back(fact);
  fold_ = std::make_unique<closing::Fold>(terms_of(boiler, plant_of(of_plant)));
  for (const facts::Fact& fact : read.facts)
    if (fact.closing == name) fold_->add(fact);
  const closing::State& state = fold_->state();
  if (!state.boiler.empty() && state.boiler != boiler.tag) {
    throw BadInput({{"service.other_boiler", "", 0, "--closing", state.boiler, boiler.tag,
                     "is the boiler of closing " + name + ", not the one that is described"}});
  }
  std::vector<report::FeedHead> heads;
  std::string lines;
  if (const auto found = read.heads.find(name); found != read.heads.end()) {
    for (const auto& [device, head] : found->second) {
      heads.push_back(head);
      lines += device + " " + std::to_string(head.device_seq) + " " + head.sha256 + "\n";
    }
  }
  if (!source.store.empty()) inputs_.emplace_back("closing " + name, paper::sha256(lines));
  for (const Given& file : source.lines) inputs_.emplace_back(file.name, paper::sha256(file.bytes));
  filled_ = std::make_unique<report::Filled>(*fold_, name, std::move(heads));
  filled_->set_described_as(description_sha256);
}

}  // namespace steamworthy::service
