// ClosingBook: every closing of a log, folded and kept in memory while facts come in.
//
// Nothing here is stored: a book made anew of the same log says the same. A book is for one thread
// at a time; whoever shares it takes turns. Start reading at ClosingBook::catch_up().
#pragma once

#include <deque>
#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "closing/fold.h"
#include "service/plant.h"
#include "store/fact_log.h"
#include "wire/closing_json.h"

namespace steamworthy::service {

/// One closing in the book.
class Ledger {
 public:
  Ledger(std::string closing, std::shared_ptr<const boiler::Boiler> boiler, const Plant& plant);

  const std::string& closing() const { return closing_; }  ///< its id
  const closing::Fold& fold() const { return *fold_; }
  const closing::State& state() const { return fold_->state(); }
  const closing::Terms& terms() const { return fold_->terms(); }
  /// Of the last fact of this closing that was taken in; 0: none.
  std::int64_t intake_no() const { return taken_.empty() ? 0 : taken_.back().intake_no; }
  /// Whether the boiler is described as the closing says: its facts pin a description that the
  /// book knows.
  bool is_described() const { return boiler_ != nullptr; }

  /// What pages show, with the last `most` facts. Refers to this ledger.
  wire::ClosingView view(std::int64_t now_ms, std::size_t most = 20) const;
  /// At most `most` facts after an intake number, in the order of arrival.
  std::vector<wire::TakenIn> facts_after(std::int64_t intake_no, std::size_t most) const;

  std::vector<closing::Outstanding> outstanding(const closing::Clearance& clearance,
                                                std::int64_t now_ms) const;
  /// Alarms that nobody has taken and no `alarm.raised` tells of yet.
  std::vector<closing::Alarm> alarms_to_raise() const;

 private:
  friend class ClosingBook;
  void take(std::int64_t intake_no, facts::Fact fact);
  void judge_by(std::shared_ptr<const boiler::Boiler> boiler, const Plant& plant);

  struct Taken {
    std::int64_t intake_no;
    facts::Fact fact;
  };
  std::string closing_;
  std::shared_ptr<const boiler::Boiler> boiler_;
  std::unique_ptr<closing::Fold> fold_;
  std::deque<Taken> taken_;       ///< in the order of arrival
  std::set<std::string> raised_;  ///< names of alarms
};

class ClosingBook {
 public:
  /// The boiler of a description's SHA-256, in hexadecimal; null if it is not to hand.
  using Descriptions =
      std::function<std::shared_ptr<const boiler::Boiler>(const std::string& sha256)>;

  /// `plant` is the scope of the plant's own feeds.
  ClosingBook(const record::Scope& plant, Descriptions descriptions);

  /// Takes in every fact that the log has and the book has not. Checkpoints are left out.
  void catch_up(const store::FactLog& log);
  /// The same of facts that were read elsewhere, in the order of arrival.
  void take_in(const std::vector<store::StoredFact>& facts);
  /// Up to which fact of the log the book goes, checkpoints and the plant's feed counted.
  std::int64_t intake_no() const { return intake_no_; }

  const Plant& plant() const { return *plant_; }
  /// The same, to be kept: another takes its place when the plant's feed says more.
  std::shared_ptr<const Plant> plant_now() const { return plant_; }
  /// By rising id.
  std::vector<record::Scope> closings() const;
  /// Throws   NotFound "service.unknown_closing".
  const Ledger& ledger(const record::Scope& closing) const;

 private:
  void take(const store::StoredFact& stored);

  record::Scope plant_scope_;
  Descriptions descriptions_;
  std::int64_t intake_no_ = 0;
  std::vector<facts::Fact> plant_facts_;
  std::shared_ptr<const Plant> plant_ = std::make_shared<const Plant>();
  std::map<record::Scope, Ledger> ledgers_;
};

}  // namespace steamworthy::service
