// Closings: the book of all closings, shared between the writer, who lets it
// catch up, and readers.
//
// A book is for one thread at a time: whoever reads takes its lock for as long
// as it takes to render. What is asked for again and again, the view, is
// rendered once and handed out.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "server/hub.h"
#include "service/closing_book.h"
#include "store/fact_log.h"
#include "store/surroundings.h"
#include "words/style.h"

namespace steamworthy::server {

/// A boiler that closings can be begun on.
struct KnownBoiler {
  std::string sha256;
  std::string name;  ///< of the file
  std::string bytes;
  std::shared_ptr<const boiler::Boiler> boiler;
};

class Closings {
 public:
  Closings(store::FactLog& log, Hub& hub, store::Surroundings& world);

  /// Keeps a description, so that closings can be begun on its boiler and be
  /// read for ever. Throws   BadInput with its faults.
  void add_boiler(const std::string& name, const std::string& bytes);
  /// By tag, those that were added since the program began.
  std::vector<std::pair<std::string, KnownBoiler>> boilers() const;
  /// The description of a closing. Throws   NotFound "service.unknown_closing",
  /// "server.no_boiler".
  KnownBoiler boiler_of(const record::Uuid& closing) const;

  // For the writer.

  std::vector<store::Received> take_in(const std::vector<record::SealedFact>& facts);
  /// Lets the book catch up, raises alarms, and tells followers.
  void caught_up();
  /// Does what needs the book to itself and may store; then as caught_up().
  void write(const std::function<void(service::ClosingBook&)>& work);

  // For readers.

  /// What the plant's feed says now. Never waits for the book.
  std::shared_ptr<const service::Plant> plant() const;

  /// Throws   what `read` throws.
  void read(const std::function<void(const service::ClosingBook&)>& read) const;
  /// The view as JSON, at most a second old.
  std::shared_ptr<const std::string> view(const record::Uuid& closing,
                                          const words::Style& style) const;
  /// The boiler with the marks of the last fact, drawn once for all who ask.
  std::shared_ptr<const std::string> drawing(
      const record::Uuid& closing, const words::Style& style,
      const std::function<std::string(const service::Ledger&)>& draw) const;
  /// Of the last fact of a closing. Throws   NotFound
  /// "service.unknown_closing".
  std::int64_t newest(const record::Uuid& closing) const;
  /// Of the last fact of the log.
  std::int64_t newest() const;

 private:
  void tell();
  std::shared_ptr<const boiler::Boiler> described(const std::string& sha256);

  struct Shown {
    std::int64_t intake_no = 0;
    std::int64_t plant_no = 0;
    std::int64_t at_ms = 0;
    std::shared_ptr<const std::string> json;
  };

  store::FactLog& log_;
  Hub& hub_;
  store::Surroundings& world_;
  mutable std::mutex plant_mutex_;  // guards the one below
  std::shared_ptr<const service::Plant> plant_ = std::make_shared<const service::Plant>();
  mutable std::mutex mutex_;                         // guards all below
  std::map<std::string, KnownBoiler> boilers_;       ///< by tag
  std::map<std::string, KnownBoiler> descriptions_;  ///< by hash
  service::ClosingBook book_;
  std::map<record::Uuid, std::int64_t> told_;  ///< up to which number
  mutable std::map<std::pair<record::Uuid, bool>, Shown> shown_;
  mutable std::map<std::pair<record::Uuid, bool>, Shown> drawn_;
};

/// The scope of a closing's id.
inline record::Scope scope_of(const record::Uuid& closing) {
  return {record::ScopeKind::Closing, closing};
}

}  // namespace steamworthy::server
