// Numbers as people write them: "2 1/2", "2½", "4,5", "12 000", "1.2e-5".
//
// The grammar is docs/reference/units.md. A comma is a decimal comma; where it
// could as well part thousands ("1,200"), the text is refused rather than read
// as a thousandth of what was meant.
#pragma once

#include <string>
#include <string_view>

namespace steamworthy::units {

/// Unicode spelled in the plain characters that the readers of this room know:
/// minus signs, quotes as feet and inches, vulgar fractions (parted by a space),
/// superscripts, degree signs, micro, the several spaces. Other bytes stay.
std::string plain_characters(std::string_view text);

/// The text as it can safely stand in a message: control characters and bytes that are not UTF-8
/// are written \xHH, and what is longer than 60 bytes ends in "...".
std::string quotable(std::string_view text);

enum class NumberFault {
  None,
  Missing,         ///< there is no number here
  AmbiguousComma,  ///< "1,200", "1,234.5", "1.234.567"
  ZeroDenominator,
  TooLarge,  ///< more than a double holds
};

struct NumberText {
  double value = 0.0;
  NumberFault fault = NumberFault::Missing;
  bool negative = false;  ///< a minus sign was written, also before zero
  std::size_t used = 0;   ///< how many characters of the text belong to the number
};

/// Reads one number at the start of text (after blanks); text must have gone
/// through plain_characters().
NumberText read_number(std::string_view text);

}  // namespace steamworthy::units
