// Figure: a number that shows how it was come by. The only way for a number to
// reach a page or a paper.
//
// A figure either has a value, or says why it has none: a value outside its
// range of validity is never shown as if it were good.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "units/measure.h"
#include "working/message.h"

namespace steamworthy::working {

/// Where an input's value came from.
enum class Origin {
  Described,   ///< stated in the boiler's description or the test file
  Stated,      ///< stated by the user for this sheet
  Rule,        ///< the rule says so
  Published,   ///< a table or standard: see Input::source
  Remembered,  ///< from memory, check your copy
  Computed,    ///< another figure or working
  Assumed,     ///< nobody said so: the remark says what was assumed
};

/// One symbol of a formula with its value.
struct Input {
  std::string symbol;  ///< as in the formula: "rho"
  std::string name;    ///< words key of what it is: "input.density"
  units::Measure value;
  Origin origin = Origin::Computed;
  std::string source;  ///< key of docs/bibliography.bib, or "" ; only for Published and Rule
};

struct Working {
  std::string formula;  ///< plain characters: "p = p_g + rho g (z_g - z)"
  std::vector<Input> inputs = {};
  std::vector<std::string> sources = {};  ///< keys of docs/bibliography.bib
  std::string method = {};                ///< page of docs/methods without ".md"; may be empty
  std::vector<Message> remarks = {};      ///< range of validity, assumptions, what else to know
};

struct Figure {
  std::string key;      ///< words key and JSON key: "sheet.litres_to_stage"
  std::string subject;  ///< the tag or name that it is about; empty for the boiler as a whole
  std::optional<units::Measure> value;
  Message cannot_tell;  ///< why there is no value; empty when there is one
  Working working;

  bool is_known() const { return value.has_value(); }
};

inline Figure known(std::string key, std::string subject, units::Measure value, Working working) {
  return {std::move(key), std::move(subject), value, {}, std::move(working)};
}
inline Figure unknown(std::string key, std::string subject, Message why, Working working = {}) {
  return {std::move(key), std::move(subject), std::nullopt, std::move(why), std::move(working)};
}

}  // namespace steamworthy::working
