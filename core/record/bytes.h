// Bytes of fixed length that must not be taken for one another: a hash is not a key.
#pragma once

#include <array>
#include <cstdint>
#include <cstring>
#include <optional>
#include <string>
#include <string_view>

namespace steamworthy::record {

/// N bytes; the tag makes the type.
template <class Tag, std::size_t N>
struct Fixed {
  static constexpr std::size_t size = N;

  std::array<std::uint8_t, N> bytes{};

  bool is_zero() const {
    for (const std::uint8_t byte : bytes) {
      if (byte != 0) return false;
    }
    return true;
  }
  std::string_view view() const { return {reinterpret_cast<const char*>(bytes.data()), N}; }

  friend bool operator==(const Fixed& a, const Fixed& b) {
    return std::memcmp(a.bytes.data(), b.bytes.data(), N) == 0;
  }
  friend bool operator!=(const Fixed& a, const Fixed& b) { return !(a == b); }
  friend bool operator<(const Fixed& a, const Fixed& b) {
    return std::memcmp(a.bytes.data(), b.bytes.data(), N) < 0;
  }
};

using Hash = Fixed<struct HashTag, 32>;            ///< SHA-256
using PublicKey = Fixed<struct PublicKeyTag, 32>;  ///< Ed25519
using Signature = Fixed<struct SignatureTag, 64>;  ///< Ed25519
using DeviceId = Fixed<struct DeviceIdTag, 16>;    ///< see device_of()
using Uuid = Fixed<struct UuidTag, 16>;

/// Lower-case hexadecimal, two digits a byte.
std::string hex(std::string_view bytes);

template <class Tag, std::size_t N>
std::string hex(const Fixed<Tag, N>& value) {
  return hex(value.view());
}

/// Reads exactly 2 `count` hexadecimal digits, capitals or not, into `into`.
bool read_hex(std::string_view text, std::uint8_t* into, std::size_t count);

template <class T>
std::optional<T> from_hex(std::string_view text) {
  T value;
  if (!read_hex(text, value.bytes.data(), T::size)) return std::nullopt;
  return value;
}

/// The bytes as T; nothing if there are not exactly as many.
template <class T>
std::optional<T> from_bytes(std::string_view bytes) {
  if (bytes.size() != T::size) return std::nullopt;
  T value;
  std::memcpy(value.bytes.data(), bytes.data(), T::size);
  return value;
}

}  // namespace steamworthy::record
