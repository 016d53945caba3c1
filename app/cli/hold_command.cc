#include "cli/hold_command.h"

#include <fmt/format.h>

#include "cli/files.h"
#include "cli/section_text.h"
#include "hold/sections.h"
#include "service/hold_service.h"
#include "service/sheet_service.h"
#include "service/trace_service.h"
#include "trace/reader.h"
#include "wire/hold_json.h"

namespace steamworthy::cli {
namespace {

constexpr int no_loss_seen = 0;
constexpr int losing_or_gaining = 3;
constexpr int cannot_tell = 4;

struct Loaded {
  std::string name;
  trace::Reading reading;
  service::HoldJudgement judgement;
};

// A description named by the test file lies beside that file.
std::optional<boiler::Boiler> description_of(const TraceOptions& options,
                                             const trace::TestFacts& facts) {
  std::string path = options.boiler;
  if (path.empty() && !facts.description.empty()) {
    path = beside(options.test, facts.description);
  }
  if (path.empty()) return std::nullopt;
  return service::read_description(read_file(path), base_name(path));
}

Loaded load(const TraceOptions& options) {
  Loaded loaded;
  loaded.name = base_name(options.file);
  trace::Overrules overrules = service::read_overrules(options.columns, options.column_units);
  service::Test test;
  if (!options.test.empty()) {
    test = service::read_test(read_file(options.test), base_name(options.test));
    overrules = service::joined(std::move(overrules), test.facts);
  }
  trace::TraceReader reader(loaded.name, std::move(overrules));
  read_pieces(
      options.file, [&reader](std::size_t bytes) { reader.expect(bytes); },
      [&reader](std::string_view piece) { reader.feed(piece); });
  loaded.reading = reader.finish();
  if (!loaded.reading.is_usable()) throw BadInput(loaded.reading.problems);
  loaded.judgement =
      service::judge_hold(loaded.reading.trace, test.facts, description_of(options, test.facts));
  auto& notes = loaded.judgement.answer.notes;
  notes.insert(notes.end(), test.notes.begin(), test.notes.end());
  return loaded;
}

words::Style style_of(const TraceOptions& options) {
  words::Style style;
  if (options.units == "us") style.print.system = units::System::Us;
  return style;
}

// What was assumed of the log, and what was put aside: a reader must see it beside the answer.
std::string log_text(const Loaded& loaded, const words::Style& style) {
  std::string text = fmt::format("Pressure log: {}\n", loaded.name);
  for (const auto& column : loaded.reading.understanding.columns) {
    if (!column.unit_assumed && !column.zero_assumed) continue;
    text += "  - " + words::sentence(column.sentence, style) + "\n";
  }
  if (loaded.reading.bad_line_count > 0) {
    text += fmt::format(
        "  - {} lines could not be read and are kept aside: steamworthy trace "
        "shows them\n",
        loaded.reading.bad_line_count);
  }
  return text;
}

const boiler::Boiler* pointer(const service::HoldJudgement& judgement) {
  return judgement.description ? &*judgement.description : nullptr;
}

int code_of(hold::Result result) {
  switch (result) {
    case hold::Result::NoLossSeen:
      return no_loss_seen;
    case hold::Result::Losing:
    case hold::Result::Gaining:
      return losing_or_gaining;
    case hold::Result::CannotTell:
      break;
  }
  return cannot_tell;
}

}  // namespace

Printed hold_command(const TraceOptions& options) {
  const Loaded loaded = load(options);
  const auto& [input, answer, description] = loaded.judgement;
  const int code = code_of(answer.result);
  if (options.json) {
    return {wire::hold_json(input, answer, pointer(loaded.judgement), options.with_working), code};
  }
  const words::Style style = style_of(options);
  std::string text = log_text(loaded, style);
  for (const working::Section& section : hold::hold_sections(input, answer)) {
    text += section_text(section, style, options.with_working);
  }
  text += section_text(hold::pump_up_section(input, answer, pointer(loaded.judgement)), style,
                       options.with_working);
  return {text, code};
}

Printed pump_up_command(const TraceOptions& options) {
  const Loaded loaded = load(options);
  const auto& [input, answer, description] = loaded.judgement;
  const int code = answer.pump_up ? 0 : cannot_tell;
  if (options.json) {
    return {wire::pump_up_json(input, answer, pointer(loaded.judgement), options.with_working),
            code};
  }
  const words::Style style = style_of(options);
  return {log_text(loaded, style) +
              section_text(hold::pump_up_section(input, answer, pointer(loaded.judgement)), style,
                           options.with_working),
          code};
}

}  // namespace steamworthy::cli
