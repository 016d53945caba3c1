// Context: what every paper needs to know, and what every paper says at its foot.
#pragma once

#include <string>
#include <vector>

#include "boiler/boiler.h"
#include "paper/flow.h"
#include "report/filled.h"
#include "words/words.h"

namespace steamworthy::report {

/// One input of a paper: the name that people call it by, and its bytes' SHA-256.
struct Source {
  std::string name;
  std::string sha256;
};

struct Context {
  const boiler::Boiler& boiler;
  words::Style style = {};
  paper::Size size = paper::Size::A4;
  std::vector<Source> sources = {};
  std::string said = {};     ///< what was said beside the files, one "name=value" a line
  std::string version = {};  ///< of the program
  std::string date = {};     ///< "2026-11-25", or empty
  std::string rule = {};     ///< id of the rule, or empty
  std::string rule_title = {};
  std::string rule_source = {};
  /// What a closing's facts say; without it papers are blank, to be filled in by hand.
  const Filled* filled = nullptr;

  bool us() const { return style.print.system == units::System::Us; }
  /// The words of a key of the catalogue.
  std::string say(const std::string& key) const { return words::label(key, style); }
  std::string say(const std::string& key,
                  std::vector<std::pair<std::string, working::Value>> values) const {
    return words::phrase({key, std::move(values)}, style);
  }
  /// The same with a capital, for headings.
  std::string title(const std::string& key) const {
    std::string text = say(key);
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
      text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
  }
  std::string print(const units::Measure& measure) const { return words::text(measure, style); }
  /// The number alone, for a column whose head is unit(kind).
  std::string number(const units::Measure& measure) const {
    return units::print_number(measure, style.print);
  }
  std::string unit(units::Kind kind) const {
    return std::string(units::unit(kind, style.print.system));
  }
};

/// The first twelve digits of the SHA-256 of this text: a line "name sha256" for each source in
/// order, then what was said. docs/methods/paper.md tells how to compute it by hand.
std::string short_hash(const Context& context);

/// An empty flow with head, foot and properties. `kind` is the paper's token for the QR code.
paper::Flow begin(const Context& context, const std::string& kind, const std::string& title,
                  bool landscape = false);

}  // namespace steamworthy::report
