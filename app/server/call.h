// Call: a request whose route and caller are known, as handlers get it, and how they answer.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <variant>
#include <vector>

#include "server/accounts.h"
#include "server/http.h"
#include "store/fact_log.h"
#include "wire/object_reader.h"
#include "words/style.h"

namespace steamworthy::server {

struct Call {
  Request request;
  Caller caller;
  std::map<std::string, std::string, std::less<>> parts;  ///< of the path, by name
  std::map<std::string, std::string, std::less<>> query;
  std::int64_t now_ms = 0;

  const std::string& part(std::string_view name) const { return parts.find(name)->second; }
  /// Nothing if it was left out.
  std::optional<std::string> asked(std::string_view name) const;
  /// Throws   Refusal 400 server.bad_query for what is no whole number from `least` to `greatest`.
  std::int64_t whole(std::string_view name, std::int64_t otherwise, std::int64_t least,
                     std::int64_t greatest) const;
  /// Throws   Refusal 400 server.bad_query for what is no number.
  std::optional<double> number(std::string_view name) const;
  bool flag(std::string_view name) const;
  /// Throws   Refusal 400 server.bad_query.
  words::Style style() const;
  /// The closing of the path. Throws   Refusal 404 server.no_closing.
  record::Uuid closing() const;
};

/// Facts that the writer takes in together with those of other calls, with one sync for all.
struct Taking {
  std::vector<record::SealedFact> facts;
  std::function<Response(const std::vector<store::Received>&)> finish;
};

using Outcome = std::variant<Response, Taking>;

/// Reads a body that is one JSON object by `read`; all its faults, and keys that nobody asked for,
/// at once.
/// Throws   Refusal 400 with the faults.
void read_form(const std::string& body, const std::function<void(wire::ObjectReader&)>& read);

/// A text of a form as one of an enumeration of facts; adds a fault if it is none.
template <class Enum>
void read_word(wire::ObjectReader& form, const char* key, Enum& into, wire::Need need) {
  std::string written;
  form.text(key, written, need);
  if (written.empty()) return;
  if (const auto value = facts::value_of<Enum>(written)) {
    into = *value;
  } else {
    form.add("wire.unknown_word", key, written, wire::listed(facts::all_words<Enum>()),
             "is not one of the words that may stand here");
  }
}

}  // namespace steamworthy::server
