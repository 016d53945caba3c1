#include "rules/formula.h"

#include <fmt/format.h>

#include "base/error.h"
#include "rules/input_names.h"
#include "units/makers.h"

namespace steamworthy::rules {
namespace {

using units::GaugePressure;
using working::Input;
using working::Message;
using working::Origin;

std::string_view symbol(Reference reference) {
  switch (reference) {
    case Reference::WorkingPressure:
      return "p_w";
    case Reference::OperatingPressure:
      return "p_o";
    case Reference::LowestSafetyValve:
      return "p_low";
    case Reference::HighestSafetyValve:
      return "p_high";
    case Reference::LesserOfWorkingAndHighestSafetyValve:
      return "min(p_w, p_high)";
    case Reference::DesignPressure:
      return "p_d";
    case Reference::ServiceLoading:
      return "p_l";
    case Reference::BoilerTestPressure:
      return "p_b";
    case Reference::RetestPressure:
      return "p_r";
    case Reference::OriginalTestPressure:
      return "p_0";
  }
  return "p";
}

/// Builds one working: reads each input once, and notes what is not there.
class Reader {
 public:
  Reader(const Circumstances& circumstances, const std::string& source)
      : circumstances_(circumstances), source_(source) {}

  std::optional<GaugePressure> pressure(Reference reference) {
    if (reference == Reference::LesserOfWorkingAndHighestSafetyValve) {
      const auto working = pressure(Reference::WorkingPressure);
      const auto valve = pressure(Reference::HighestSafetyValve);
      if (!working || !valve) return std::nullopt;
      return std::min(*working, *valve);
    }
    const auto value = pressure_of(reference, circumstances_);
    if (!value) {
      lacks(token(reference));
      return std::nullopt;
    }
    if (*value < GaugePressure{}) {
      throw OutOfRange("rules.negative_pressure",
                       fmt::format("the {} is {} bar; a rule needs one not below 0 bar gauge",
                                   token(reference), units::in_bars_gauge(*value)));
    }
    note(std::string(symbol(reference)), words_key("input", token(reference)),
         units::measure(*value), circumstances_.pressures_from);
    return value;
  }

  std::optional<double> stress_ratio() {
    const auto value = circumstances_.stress_ratio;
    if (!value) {
      lacks("stress ratio");
      return std::nullopt;
    }
    if (!(*value > 0.0)) {
      throw OutOfRange(
          "rules.stress_ratio",
          fmt::format("the ratio of allowable stresses is {}; it must be above 0", *value));
    }
    note("r", "input.stress_ratio", units::measure_fraction(*value), Origin::Computed);
    return value;
  }

  void rule_says(std::string symbol, std::string_view name, units::Measure value) {
    note(std::move(symbol), words_key("input", name), value, Origin::Rule);
  }

  std::vector<Input> inputs;
  std::vector<Message> missing;

 private:
  void note(std::string symbol, std::string name, units::Measure value, Origin origin) {
    for (const Input& input : inputs) {
      if (input.symbol == symbol) return;
    }
    inputs.push_back({std::move(symbol), std::move(name), value, origin,
                      origin == Origin::Rule ? source_ : std::string()});
  }
  void lacks(std::string_view name) { add_once(missing, missing_input(name)); }

  const Circumstances& circumstances_;
  const std::string& source_;
};

/// A value and how it is written in the formula.
struct Piece {
  std::optional<GaugePressure> value;
  std::string text;
};

Piece product(const Product& product, const std::string& index, Reader& reader) {
  Piece piece;
  const auto reference = reader.pressure(product.of);
  const std::string factor = "k" + index;
  piece.text = fmt::format("{} {}", factor, symbol(product.of));
  reader.rule_says(factor, "factor", units::measure_fraction(product.factor));

  std::optional<double> ratio = 1.0;
  if (product.times_stress_ratio) {
    ratio = reader.stress_ratio();
    piece.text += " r";
    if (product.least_stress_ratio) {
      const std::string least = "r_min" + index;
      piece.text.resize(piece.text.size() - 1);
      piece.text += fmt::format("max(r, {})", least);
      reader.rule_says(least, "least stress ratio",
                       units::measure_fraction(*product.least_stress_ratio));
      if (ratio) ratio = std::max(*ratio, *product.least_stress_ratio);
    }
  }
  units::PressureDifference plus;
  if (product.plus) {
    plus = product.plus->value;
    piece.text += " + c" + index;
    reader.rule_says("c" + index, "constant", units::measure_pressure_difference(plus));
  }
  if (reference && ratio) {
    piece.value = GaugePressure{} + (product.factor * *ratio) * reference->from_origin() + plus;
  }
  return piece;
}

Piece greatest(const std::vector<Product>& products, Reader& reader) {
  if (products.size() == 1) return product(products.front(), "", reader);
  Piece result;
  bool all_known = true;
  for (std::size_t i = 0; i < products.size(); ++i) {
    const Piece piece = product(products[i], fmt::format("_{}", i + 1), reader);
    result.text += (i == 0 ? "max(" : ", ") + piece.text;
    all_known = all_known && piece.value.has_value();
    if (piece.value && (!result.value || *result.value < *piece.value)) result.value = piece.value;
  }
  result.text += ")";
  if (!all_known) result.value.reset();  // the unknown one might be the greatest
  return result;
}

Piece bounded(const Branch& branch, Reader& reader, std::vector<Message>& remarks) {
  Piece piece = greatest(branch.greatest_of, reader);
  if (branch.least) {
    const GaugePressure least = branch.least->value;
    piece.text = fmt::format("max({}, p_min)", piece.text);
    reader.rule_says("p_min", "least", units::measure(least));
    if (piece.value && *piece.value < least) {
      piece.value = least;
      remarks.push_back({"rules.least_governs", {{"least", units::measure(least)}}});
    }
  }
  if (branch.cap) {
    const GaugePressure cap = branch.cap->value;
    piece.text = fmt::format("min({}, p_cap)", piece.text);
    reader.rule_says("p_cap", "cap", units::measure(cap));
    if (piece.value && cap < *piece.value) {
      piece.value = cap;
      remarks.push_back({"rules.cap_governs", {{"cap", units::measure(cap)}}});
    }
  }
  return piece;
}

/// The branch that the switching pressure selects, with a remark that says so.
const Branch* select(const Formula& formula, Reader& reader, std::vector<Message>& remarks) {
  if (formula.branches.size() == 1) return &formula.branches.front();
  const auto by = reader.pressure(formula.switched_by);
  if (!by) return nullptr;
  const working::Term name = term("input", token(formula.switched_by));
  const Branch* below = nullptr;
  for (const Branch& branch : formula.branches) {
    if (branch.up_to && branch.up_to->value < *by) {
      below = &branch;
      continue;
    }
    if (branch.up_to) {
      remarks.push_back({"rules.branch_up_to",
                         {{"input", name}, {"limit", units::measure(branch.up_to->value)}}});
    } else if (below != nullptr) {
      remarks.push_back({"rules.branch_above",
                         {{"input", name}, {"limit", units::measure(below->up_to->value)}}});
    }
    return &branch;
  }
  return nullptr;
}

}  // namespace

FormulaResult evaluate_formula(const Formula& formula, const Circumstances& circumstances,
                               const std::string& key, const std::string& subject,
                               const std::string& source) {
  Reader reader(circumstances, source);
  working::Working working;
  working.method = "rules";
  if (!source.empty()) working.sources.push_back(source);

  const Branch* branch = formula.empty() ? nullptr : select(formula, reader, working.remarks);
  Piece piece;
  if (branch != nullptr && !branch->greatest_of.empty()) {
    piece = bounded(*branch, reader, working.remarks);
    working.formula = "p = " + piece.text;
  }
  working.inputs = std::move(reader.inputs);

  FormulaResult result;
  result.missing = std::move(reader.missing);
  if (piece.value) {
    result.figure = working::known(key, subject, units::measure(*piece.value), std::move(working));
  } else {
    Message why = result.missing.empty() ? Message{"rules.not_stated", {}} : result.missing.front();
    result.figure = working::unknown(key, subject, std::move(why), std::move(working));
  }
  return result;
}

}  // namespace steamworthy::rules
