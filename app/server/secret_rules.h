// What may be a name and a secret.
#pragma once

#include <string>
#include <string_view>

namespace steamworthy::server {

/// "pin" for a text of digits alone, else "passphrase". A badge must be named as one.
std::string kind_of_secret(std::string_view text);

/// Whether it may be somebody's short name: a letter a-z, then up to 39 of a-z, 0-9, _, - and dot.
bool may_be_who(std::string_view who);

/// The name without blanks at its ends.
/// Throws   Refusal 422 server.bad_name: empty, longer than 100 bytes, not UTF-8, or with a control
///          character.
std::string plain_name(std::string_view name, std::string_view field);

/// The kind of a new secret, told by its form where `kind` is empty.
/// Throws   Refusal 422 server.bad_secret: a PIN that is not 6 to 12 digits, or all the same or in
///          one run; a badge of less than 6 or more than 128 bytes; a passphrase of less than 12 or
///          more than 128; a kind that is none.
std::string check_secret(const std::string& kind, std::string_view text);

}  // namespace steamworthy::server
