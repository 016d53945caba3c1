#include <fmt/format.h>

#include <cmath>

#include "units/parse.h"
#include "wire/rule.h"

namespace steamworthy::wire {
namespace {

using rules::Rule;

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (byte < 0x20 || byte == 0x7f) {
      out += fmt::format("\\u{:04X}", static_cast<unsigned>(byte));
    } else {
      out += c;
    }
  }
  return out + "\"";
}

std::string as_text(units::GaugePressure p) { return fmt::format("{} Pa", p.si()); }
std::string as_text(units::PressureDifference p) { return fmt::format("{} Pa", p.si()); }
std::string as_text(units::Temperature t) { return fmt::format("{} K", t.si()); }
std::string as_text(units::Duration t) { return fmt::format("{} s", t.si()); }
std::string as_text(units::PressureRate r) { return fmt::format("{} Pa/s", r.si()); }

/// The percentage that is read as exactly this fraction: times 100 and back may round.
std::string percent(double fraction) {
  const double near = fraction * 100.0;
  for (const double value : {near, std::nextafter(near, 0.0), std::nextafter(near, 200.0)}) {
    const std::string text = fmt::format("{} %", value);
    if (units::parse_percent(text).value == fraction) return text;
  }
  return fmt::format("{} %", near);
}

/// A list of words or texts on one line.
template <class List, class ToText>
std::string list(const List& values, ToText to_text) {
  std::string out = "[";
  for (const auto& value : values) {
    if (out.size() > 1) out += ", ";
    out += quoted(to_text(value));
  }
  return out + "]";
}

class Writer {
 public:
  std::string take() { return std::move(out_); }

  void table(const std::string& name) { out_ += fmt::format("\n[{}]\n", name); }
  void element(const std::string& name) { out_ += fmt::format("\n[[{}]]\n", name); }
  void put(const char* key, const std::string& value) {
    out_ += fmt::format("{} = {}\n", key, value);
  }
  void text(const char* key, std::string_view value) {
    if (!value.empty()) put(key, quoted(value));
  }
  template <class Enum>
  void word(const char* key, Enum value) {
    put(key, quoted(token(value)));
  }
  template <class Enum>
  void words(const char* key, const std::vector<Enum>& values) {
    if (!values.empty()) put(key, list(values, [](Enum value) { return token(value); }));
  }
  void texts(const char* key, const std::vector<std::string>& values) {
    if (!values.empty()) put(key, list(values, [](const std::string& value) { return value; }));
  }
  void number(const char* key, const std::optional<double>& value) {
    if (value) put(key, fmt::format("{}", *value));
  }
  void whole(const char* key, const std::optional<int>& value) {
    if (value) put(key, fmt::format("{}", *value));
  }
  void share(const char* key, const std::optional<double>& value) {
    if (value) put(key, quoted(percent(*value)));
  }
  void yes(const char* key, bool value) {
    if (value) put(key, "true");
  }
  template <class Quantity>
  void quantity(const char* key, const std::optional<rules::Stated<Quantity>>& value) {
    if (value) put(key, quoted(value->text.empty() ? as_text(value->value) : value->text));
  }

 private:
  std::string out_;
};

void write_product(Writer& out, const rules::Product& product) {
  out.number("factor", product.factor);
  out.word("of", product.of);
  out.yes("times_stress_ratio", product.times_stress_ratio);
  out.number("least_stress_ratio", product.least_stress_ratio);
  out.quantity("plus", product.plus);
}

void write_branch(Writer& out, const std::string& name, const rules::Branch& branch) {
  const bool several = branch.greatest_of.size() > 1;
  if (!several && !branch.greatest_of.empty()) write_product(out, branch.greatest_of.front());
  out.quantity("least", branch.least);
  out.quantity("cap", branch.cap);
  if (!several) return;
  for (const rules::Product& product : branch.greatest_of) {
    out.element(name + ".greatest_of");
    write_product(out, product);
  }
}

/// The formula of the table that was begun last, whose name this is.
void write_formula(Writer& out, const std::string& name, const rules::Formula& formula) {
  if (formula.branches.size() == 1) write_branch(out, name, formula.branches.front());
  if (formula.branches.size() < 2) return;
  out.word("switched_by", formula.switched_by);
  for (const rules::Branch& branch : formula.branches) {
    out.element(name + ".branches");
    out.quantity("up_to", branch.up_to);
    write_branch(out, name + ".branches", branch);
  }
}

void write_cases(Writer& out, const char* name, const std::vector<rules::Case>& cases) {
  for (const rules::Case& one : cases) {
    out.element(name);
    out.words("boilers", one.boilers);
    out.words("works", one.works);
    for (const auto& [trait, value] : one.traits) {
      out.put(std::string(token(trait)).c_str(), value ? "true" : "false");
    }
    out.quantity("working_above", one.working_above);
    out.quantity("working_not_above", one.working_not_above);
  }
}

void write_particulars(Writer& out, const Rule& rule) {
  out.text("id", rule.id);
  out.text("title", rule.title);
  out.text("jurisdiction", rule.jurisdiction);
  out.text("edition", rule.edition);
  out.text("date", rule.date);
  out.word("purpose", rule.purpose);
  out.words("subjects", rule.subjects);
  out.words("boilers", rule.boilers);
  out.words("works", rule.works);
  out.text("witness", rule.witness);
  out.whole("months_between", rule.months_between);
  out.share("stress_cap", rule.stress_cap);
  out.texts("preparations", rule.preparations);
  out.texts("notes", rule.notes);
  out.table("source");
  out.text("key", rule.source.key);
  out.word("kind", rule.source.kind);
  out.word("seen", rule.source.seen);
  write_cases(out, "applies", rule.applies);
  write_cases(out, "unless", rule.unless);
}

void write_pressure(Writer& out, const Rule& rule) {
  out.table("pressure");
  out.word("sense", rule.pressure.sense);
  write_formula(out, "pressure", rule.pressure.value);
  if (!rule.pressure.above.empty()) {
    out.table("pressure.above");
    write_formula(out, "pressure.above", rule.pressure.above);
  }
  if (rule.ceiling) {
    out.table("ceiling");
    out.number("factor", rule.ceiling->factor);
    out.yes("of_original_test_pressure", rule.ceiling->of_original_test_pressure);
  }
  if (rule.examination) {
    out.table("examination");
    out.number("factor", rule.examination->factor);
    out.word("of", rule.examination->of);
  }
}

void write_windows_and_holds(Writer& out, const Rule& rule) {
  for (const rules::Window& window : rule.windows) {
    out.element("windows");
    out.word("stage", window.stage);
    out.word("medium", window.medium);
    out.words("boilers", window.boilers);
    out.quantity("from", window.from);
    out.quantity("to", window.to);
    out.text("source", window.source);
  }
  for (const rules::Hold& hold : rule.holds) {
    out.element("holds");
    out.quantity("at_least", hold.at_least);
    out.word("at", hold.at);
    out.text("words", hold.words);
  }
  if (rule.drop) {
    out.table("drop");
    out.share("share", rule.drop->fraction);
    out.quantity("within", std::optional(rule.drop->within));
    out.text("source", rule.drop->source);
  }
}

void write_conduct(Writer& out, const Rule& rule) {
  if (rule.gauges) {
    out.table("gauges");
    out.whole("number", rule.gauges->number);
    out.number("range_from", rule.gauges->range_from);
    out.number("range_to", rule.gauges->range_to);
    out.quantity("graduation", rule.gauges->graduation);
    out.share("accuracy", rule.gauges->accuracy);
    out.text("words", rule.gauges->words);
  }
  if (!(rule.safety_valves == rules::SafetyValves{})) {
    out.table("safety_valves");
    out.word("treatment", rule.safety_valves.treatment);
    out.text("words", rule.safety_valves.words);
    out.text("source", rule.safety_valves.source);
  }
  if (rule.rise) {
    out.table("rise");
    out.quantity("not_faster", rule.rise->not_faster);
    out.share("first_step", rule.rise->first_step);
    out.share("next_steps", rule.rise->next_steps);
    out.text("words", rule.rise->words);
    out.text("source", rule.rise->source);
  }
}

}  // namespace

std::string write_rule(const Rule& rule) {
  Writer out;
  write_particulars(out, rule);
  write_pressure(out, rule);
  write_windows_and_holds(out, rule);
  write_conduct(out, rule);
  return out.take();
}

}  // namespace steamworthy::wire
