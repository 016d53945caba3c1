// The facts of one closing, from a store or from files of lines, folded for papers.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "closing/fold.h"
#include "report/filled.h"

namespace steamworthy::service {

/// One file as it was given.
struct Given {
  std::string name;
  std::string bytes;
};

/// Where a closing's facts are: in a store, or in files of lines as wire/fact_line.h reads them.
/// Neither: there are none, and papers are blank.
struct ClosingSource {
  std::string store;         ///< its path
  std::vector<Given> lines;  ///< the plant's feed may be among them
  std::string closing;       ///< its id or name; may be empty where there is one alone
  bool is_given() const { return !store.empty() || !lines.empty(); }
};

/// The facts, folded by the boiler's description and what the plant's feed tells: roles, limits.
class FilledClosing {
 public:
  /// `description_sha256` is that of the description that papers are made of.
  /// Throws  BadInput "service.no_closing" where no closing of that name is there, or several and
  ///         none is named; "service.other_boiler" where it is one of another boiler; with the
  ///         faults of all lines; store::read_store()'s StoreErrors.
  FilledClosing(const boiler::Boiler& boiler, const std::string& description_sha256,
                const ClosingSource& source);

  const report::Filled& filled() const { return *filled_; }
  /// The facts as an input of a paper: a name, and a SHA-256. Of lines: those of each file. Of a
  /// store: "closing ID", and that of a line "DEVICE NUMBER HASH" for each head by rising device.
  const std::vector<std::pair<std::string, std::string>>& inputs() const { return inputs_; }

 private:
  std::vector<std::pair<std::string, std::string>> inputs_;
  std::unique_ptr<closing::Fold> fold_;
  std::unique_ptr<report::Filled> filled_;
};

}  // namespace steamworthy::service
