#include "record/uuid.h"

namespace steamworthy::record {
namespace {

/// Counts the random part up: rand_b below the variant, then rand_a below the version, then the
/// time.
void count_up(Uuid& uuid) {
  auto& b = uuid.bytes;
  for (std::size_t i = 15; i > 8; --i) {
    if (++b[i] != 0) return;
  }
  const auto rand_b_high = static_cast<std::uint8_t>((b[8] + 1) & 0x3f);
  b[8] = static_cast<std::uint8_t>(0x80 | rand_b_high);
  if (rand_b_high != 0) return;
  if (++b[7] != 0) return;
  const auto rand_a_high = static_cast<std::uint8_t>((b[6] + 1) & 0x0f);
  b[6] = static_cast<std::uint8_t>(0x70 | rand_a_high);
  if (rand_a_high != 0) return;
  for (std::size_t i = 6; i > 0; --i) {
    if (++b[i - 1] != 0) return;
  }
}

}  // namespace

Uuid uuid7(std::int64_t unix_ms, const RandomForUuid& random) {
  Uuid uuid;
  const auto ms = static_cast<std::uint64_t>(unix_ms);
  for (std::size_t i = 0; i < 6; ++i) {
    uuid.bytes[i] = static_cast<std::uint8_t>(ms >> (40 - 8 * i));
  }
  for (std::size_t i = 0; i < 10; ++i) uuid.bytes[6 + i] = random[i];
  uuid.bytes[6] = static_cast<std::uint8_t>(0x70 | (uuid.bytes[6] & 0x0f));
  uuid.bytes[8] = static_cast<std::uint8_t>(0x80 | (uuid.bytes[8] & 0x3f));
  return uuid;
}

Uuid uuid7_after(const Uuid& previous, std::int64_t unix_ms, const RandomForUuid& random) {
  const Uuid fresh = uuid7(unix_ms, random);
  if (previous < fresh) return fresh;
  Uuid next = previous;
  count_up(next);
  return next;
}

std::string text(const Uuid& uuid) {
  const std::string digits = hex(uuid);
  return digits.substr(0, 8) + "-" + digits.substr(8, 4) + "-" + digits.substr(12, 4) + "-" +
         digits.substr(16, 4) + "-" + digits.substr(20);
}

std::optional<Uuid> read_uuid(std::string_view text) {
  if (text.size() != 36) return std::nullopt;
  std::string digits;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool hyphen = i == 8 || i == 13 || i == 18 || i == 23;
    if (hyphen != (text[i] == '-')) return std::nullopt;
    if (!hyphen) digits += text[i];
  }
  return from_hex<Uuid>(digits);
}

bool is_uuid7(const Uuid& uuid) {
  return (uuid.bytes[6] & 0xf0) == 0x70 && (uuid.bytes[8] & 0xc0) == 0x80;
}

}  // namespace steamworthy::record
