// Lines: bytes of a log, in chunks of any size, as lines of UTF-8.
//
// Line ends may be LF, CR LF or CR. A byte-order mark is taken off; UTF-16 with
// its mark becomes UTF-8; a line that is not UTF-8 is read as Windows-1252, which
// older loggers write (their degree sign is the byte B0).
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace steamworthy::trace {

class LineDecoder {
 public:
  /// Longer lines are given cut off, and is_cut is set.
  static constexpr std::size_t longest_line = std::size_t{1} << 16;

  struct Line {
    std::string_view text;   ///< without its end; valid until the next call
    std::size_t number = 0;  ///< counted from 1
    bool is_cut = false;
  };

  /// Calls `take(const Line&)` for each line that is complete.
  template <class Take>
  void feed(std::string_view bytes, Take&& take) {
    bytes = decoded(bytes);
    while (!bytes.empty()) {
      if (skip_line_feed_ && bytes.front() == '\n') bytes.remove_prefix(1);
      skip_line_feed_ = false;
      const std::size_t end = bytes.find_first_of("\r\n");
      if (end == std::string_view::npos) {
        keep(bytes);
        return;
      }
      skip_line_feed_ = bytes[end] == '\r';
      if (kept_.empty() && end <= longest_line) {
        give(bytes.substr(0, end), take);
      } else {
        keep(bytes.substr(0, end));
        give(kept_, take);
        kept_.clear();
      }
      bytes.remove_prefix(end + 1);
    }
  }

  /// The last line, where no line end follows it.
  template <class Take>
  void finish(Take&& take) {
    feed(remainder(), take);
    if (!kept_.empty()) give(kept_, take);
    kept_.clear();
  }

  bool was_utf16() const { return coding_ == Coding::Utf16Little || coding_ == Coding::Utf16Big; }
  bool was_windows_1252() const { return was_windows_1252_; }

 private:
  enum class Coding { Unseen, Bytes, Utf16Little, Utf16Big };

  std::string_view decoded(std::string_view bytes);
  std::string_view remainder();
  std::string_view from_utf16(std::string_view bytes);
  void keep(std::string_view part);
  std::string_view as_utf8(std::string_view line);

  template <class Take>
  void give(std::string_view text, Take& take) {
    const Line line{as_utf8(text), ++number_, is_cut_};
    is_cut_ = false;
    take(line);
  }

  Coding coding_ = Coding::Unseen;
  bool skip_line_feed_ = false;
  bool is_cut_ = false;
  bool was_windows_1252_ = false;
  std::size_t number_ = 0;
  std::string kept_;     ///< the beginning of a line that goes on in the next chunk
  std::string head_;     ///< the first bytes, until they can be told
  std::string odd_;      ///< bytes of a UTF-16 unit or pair that goes on in the next chunk
  std::string decoded_;  ///< what became of a chunk of UTF-16
  std::string recoded_;  ///< what became of a line of Windows-1252
};

/// Whether all bytes are UTF-8.
bool is_utf8(std::string_view text);

}  // namespace steamworthy::trace
