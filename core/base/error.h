// Errors: what stops an operation, and what is wrong with somebody's input.
//
// Exceptions are for what stops an operation; a Problem is one fault among
// possibly many in a form or a file, all of which are reported at once. Every
// error has a stable code "room.problem", listed in docs/reference/errors.md.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

namespace steamworthy {

/// The base of all our exceptions. what() is one sentence for a person that
/// names the offending value with its unit and the limit that it broke.
class Error : public std::runtime_error {
 public:
  Error(std::string code, const std::string& sentence)
      : std::runtime_error(sentence), code_(std::move(code)) {}

  /// Stable, "room.problem".
  const std::string& code() const { return code_; }

 private:
  std::string code_;
};

/// An argument is outside the range in which a formula holds.
class OutOfRange : public Error {
 public:
  using Error::Error;
};

/// What was asked for does not exist.
class NotFound : public Error {
 public:
  using Error::Error;
};

/// The store of facts, its disk or its database refused; nothing that was not acknowledged counts.
class StoreError : public Error {
 public:
  using Error::Error;
};

/// One fault in a form, file or command line.
struct Problem {
  std::string code;      ///< stable, "room.problem"
  std::string file;      ///< the file's name as the user gave it; empty if there is none
  int line = 0;          ///< counted from 1; 0 where no line applies
  std::string field;     ///< for instance "part[SD].wall"
  std::string found;     ///< what stood there, as written
  std::string accepted;  ///< what would be accepted
  std::string message;   ///< what is wrong, one sentence without a full stop

  friend bool operator==(const Problem&, const Problem&) = default;
};

/// "boilers/one.toml:12: part[SD].wall: <message> (found "x"; accepted: y)"
std::string sentence(const Problem& problem);

/// Input with one or more faults. what() is the first sentence.
class BadInput : public Error {
 public:
  explicit BadInput(std::vector<Problem> problems);
  const std::vector<Problem>& problems() const { return problems_; }

 private:
  std::vector<Problem> problems_;
};

}  // namespace steamworthy
