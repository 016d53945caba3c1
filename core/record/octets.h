// Octets: whole numbers, most significant byte first, and runs of bytes, in and out.
//
// A reader that meets the end too early turns bad and gives zeros from then on, so that its user
// checks once, at the end.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "record/bytes.h"

namespace steamworthy::record {

class OctetWriter {
 public:
  void reserve(std::size_t size) { out_.reserve(size); }

  template <class Whole>
  void whole(Whole value) {
    char octets[sizeof(Whole)];
    put(octets, value);
    out_.append(octets, sizeof octets);
  }
  /// Writes over what stands at a place.
  template <class Whole>
  void whole_at(std::size_t at, Whole value) {
    put(out_.data() + at, value);
  }
  std::size_t size() const { return out_.size(); }
  void bytes(std::string_view bytes) { out_ += bytes; }
  template <class Tag, std::size_t N>
  void fixed(const Fixed<Tag, N>& value) {
    out_ += value.view();
  }

  std::string take() { return std::move(out_); }

 private:
  template <class Whole>
  static void put(char* into, Whole value) {
    for (std::size_t i = 0; i < sizeof(Whole); ++i) {
      into[i] =
          static_cast<char>(static_cast<std::uint64_t>(value) >> (8 * (sizeof(Whole) - 1 - i)));
    }
  }

  std::string out_;
};

class OctetReader {
 public:
  explicit OctetReader(std::string_view bytes) : bytes_(bytes) {}

  bool is_good() const { return good_; }
  std::size_t left() const { return bytes_.size() - at_; }
  std::size_t at() const { return at_; }

  std::string_view bytes(std::uint64_t count) {
    if (!good_ || count > left()) {
      good_ = false;
      return {};
    }
    const std::string_view run = bytes_.substr(at_, static_cast<std::size_t>(count));
    at_ += run.size();
    return run;
  }
  template <class Whole>
  Whole whole() {
    std::uint64_t value = 0;
    for (const char c : bytes(sizeof(Whole))) value = value << 8 | static_cast<unsigned char>(c);
    return static_cast<Whole>(value);
  }
  template <class Tag, std::size_t N>
  void fixed(Fixed<Tag, N>& into) {
    const std::string_view run = bytes(N);
    if (good_) std::memcpy(into.bytes.data(), run.data(), N);
  }
  /// A count of 16 bits of things of `each` bytes; bad if they cannot all be there.
  std::size_t count(std::size_t each) {
    const std::size_t count = whole<std::uint16_t>();
    if (!good_ || count * each > left()) {
      good_ = false;
      return 0;
    }
    return count;
  }

 private:
  std::string_view bytes_;
  std::size_t at_ = 0;
  bool good_ = true;
};

}  // namespace steamworthy::record
