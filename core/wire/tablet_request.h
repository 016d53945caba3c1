// A page's question as JSON: fields out of it, each missing or wrong one a fault.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "record/bytes.h"
#include "units/print.h"
#include "wire/json.h"

namespace steamworthy::wire {

class TabletRequest {
 public:
  /// Throws BadInput "tablet.bad_request" where the text is no JSON object.
  explicit TabletRequest(std::string_view json);

  const Json& json() const { return json_; }
  units::System system() const;

  std::string text(const char* key);
  std::string maybe(const char* key);
  std::int64_t whole(const char* key);
  double number(const char* key, double otherwise);
  const Json& list(const char* key);

  /// A run of bytes in hexadecimal.
  template <class T>
  T hex(const char* key) {
    return hex_of<T>(key, text(key));
  }
  template <class T>
  T hex_of(const char* key, const std::string& written) {
    if (const auto value = record::from_hex<T>(written)) return *value;
    refuse(key, written, "bytes in hexadecimal");
    return T{};
  }

  void refuse(const char* key, const std::string& found, const std::string& accepted);
  void add(Problem problem) { problems_.push_back(std::move(problem)); }
  /// Throws BadInput with all faults so far, if there are any.
  void settle() const;

 private:
  const Json* find(const char* key) const;

  Json json_;
  std::vector<Problem> problems_;
};

/// Problems as the error shape has them.
Json problems_json(const std::vector<Problem>& problems);

}  // namespace steamworthy::wire
