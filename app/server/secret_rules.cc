#include "server/secret_rules.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/utf8.h"
#include "server/http.h"

namespace steamworthy::server {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool has_control(std::string_view text) {
  return std::any_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
}

/// 111111, 123456, 987654: what everybody tries first.
bool is_run(std::string_view digits) {
  for (const int step : {-1, 0, 1}) {
    bool all = true;
    for (std::size_t i = 1; i < digits.size(); ++i) all = all && digits[i] - digits[i - 1] == step;
    if (all) return true;
  }
  return false;
}

[[noreturn]] void refuse(const std::string& sentence) {
  throw Refusal(422, "server.bad_secret", sentence);
}

}  // namespace

std::string kind_of_secret(std::string_view text) {
  return std::all_of(text.begin(), text.end(), is_digit) ? "pin" : "passphrase";
}

bool may_be_who(std::string_view who) {
  const auto is_letter = [](char c) { return c >= 'a' && c <= 'z'; };
  return !who.empty() && who.size() <= 40 && is_letter(who.front()) &&
         std::all_of(who.begin(), who.end(), [&](char c) {
           return is_letter(c) || is_digit(c) || c == '_' || c == '-' || c == '.';
         });
}

std::string plain_name(std::string_view name, std::string_view field) {
  while (!name.empty() && name.front() == ' ') name.remove_prefix(1);
  while (!name.empty() && name.back() == ' ') name.remove_suffix(1);
  if (name.empty() || name.size() > 100 || line_of_bad_utf8(name) || has_control(name)) {
    throw Refusal(422, "server.bad_name",
                  fmt::format("{}: a name has 1 to 100 bytes of text on one line", field));
  }
  return std::string(name);
}

std::string check_secret(const std::string& kind, std::string_view text) {
  const std::string known = kind.empty() ? kind_of_secret(text) : kind;
  if (line_of_bad_utf8(text) || has_control(text)) refuse("a secret is text on one line");
  if (known == "pin") {
    const bool digits = std::all_of(text.begin(), text.end(), is_digit);
    if (!digits || text.size() < 6 || text.size() > 12) refuse("a PIN has 6 to 12 digits");
    if (is_run(text)) refuse("a PIN may not be one digit over and over, or a run such as 123456");
  } else if (known == "badge") {
    if (text.size() < 6 || text.size() > 128) refuse("a badge has 6 to 128 characters");
  } else if (known == "passphrase") {
    if (text.size() < 12 || text.size() > 128) refuse("a passphrase has 12 to 128 characters");
  } else {
    refuse("a secret is a pin, a badge or a passphrase");
  }
  return known;
}

}  // namespace steamworthy::server
