#include "cli/trace_command.h"

#include <fmt/format.h>

#include "cli/files.h"
#include "service/trace_service.h"
#include "trace/reader.h"
#include "trace/told.h"
#include "wire/trace_json.h"
#include "words/words.h"

namespace steamworthy::cli {
namespace {

using Messages = std::vector<working::Message>;

void put(std::string& text, const char* head, const Messages& messages, const words::Style& style) {
  if (messages.empty()) return;
  text += fmt::format("\n{}\n", head);
  for (const auto& message : messages) text += "  " + words::sentence(message, style) + "\n";
}

std::string trace_text(const std::string& file, const trace::Reading& reading, const Messages& told,
                       const words::Style& style) {
  std::string text = fmt::format("Pressure log: {}\n", file);
  put(text, "Understood", reading.understanding.sentences, style);
  put(text, "Noticed", reading.notes, style);
  if (reading.bad_line_count > 0) {
    text += "\nPut aside\n";
    for (const Problem& problem : reading.bad_lines) text += "  " + sentence(problem) + "\n";
    if (reading.bad_line_count > reading.bad_lines.size()) {
      text += fmt::format("  ... and {} more\n", reading.bad_line_count - reading.bad_lines.size());
    }
  }
  put(text, "Summary", trace::tell(trace::summarise(reading)), style);
  put(text, "By the test file", told, style);
  return text;
}

}  // namespace

std::string trace_command(const TraceOptions& options) {
  const std::string name = base_name(options.file);
  trace::Overrules overrules = service::read_overrules(options.columns, options.column_units);
  std::optional<service::Test> test;
  if (!options.test.empty()) {
    test = service::read_test(read_file(options.test), base_name(options.test));
    overrules = service::joined(std::move(overrules), test->facts);
  }
  trace::TraceReader reader(name, std::move(overrules));
  read_pieces(
      options.file, [&reader](std::size_t bytes) { reader.expect(bytes); },
      [&reader](std::string_view piece) { reader.feed(piece); });
  const trace::Reading reading = reader.finish();
  Messages told;
  if (test) {
    told = trace::tell(reading.trace, test->facts);
    told.insert(told.end(), test->notes.begin(), test->notes.end());
  }
  words::Style style;
  if (options.units == "us") style.print.system = units::System::Us;
  if (!reading.is_usable()) {
    if (!options.json) {
      const std::string text = trace_text(name, reading, told, style);
      std::fwrite(text.data(), 1, text.size(), stdout);
    }
    throw BadInput(reading.problems);
  }
  return options.json ? wire::trace_json(name, reading, told)
                      : trace_text(name, reading, told, style);
}

}  // namespace steamworthy::cli
