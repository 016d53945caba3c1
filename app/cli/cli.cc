#include "cli/cli.h"

#include <fmt/format.h>

#include <string>
#include <vector>

#include "base/error.h"
#include "cli/commands.h"
#include "cli/files.h"
#include "cli/hold_command.h"
#include "cli/log_commands.h"
#include "cli/paper_commands.h"
#include "cli/request.h"
#include "cli/serve_command.h"
#include "cli/sheet_text.h"
#include "cli/trace_command.h"
#include "cli/work_commands.h"
#include "service/sheet_service.h"
#include "wire/sheet_json.h"

namespace steamworthy::cli {
namespace {

constexpr int done = 0;
constexpr int failed = 1;
constexpr int wrong_usage = 2;

int check_command(const std::string& file) {
  const boiler::Boiler boiler = service::read_description(read_file(file), base_name(file));
  fmt::print("{}: no fault found. {}, {}: {} parts, {} closures, {} mountings, {} temporaries.\n",
             base_name(file), boiler.tag, boiler.name, boiler.parts.size(), boiler.closures.size(),
             boiler.mountings.size(), boiler.temporaries.size());
  return done;
}

int sheet_command(const SheetOptions& options) {
  const sheet::Request request = read_request(options);
  const sheet::Sheet sheet =
      service::make_sheet(read_file(options.file), base_name(options.file), request);
  words::Style style;
  if (options.units == "us") style.print.system = units::System::Us;
  const std::string text = options.json ? wire::sheet_json(sheet, options.with_working)
                                        : sheet_text(sheet, style, options.with_working);
  std::fwrite(text.data(), 1, text.size(), stdout);
  return sheet.is_refused() ? failed : done;
}

int rules_command() {
  for (const rules::Rule& rule : service::shipped_rules()) {
    fmt::print("{:<36} {:<12} {}\n", rule.id, rules::token(rule.source.seen), rule.title);
  }
  return done;
}

int say(const std::string& text) {
  std::fwrite(text.data(), 1, text.size(), stdout);
  return done;
}

int say(const Printed& printed) {
  say(printed.text);
  return printed.code;
}

int report(const Error& error, const std::vector<Problem>& problems, bool json) {
  if (json) {
    const std::string text = wire::error_json(error.code(), error.what(), problems);
    std::fwrite(text.data(), 1, text.size(), stdout);
  }
  if (problems.empty()) fmt::print(stderr, "steamworthy: {} ({})\n", error.what(), error.code());
  for (const Problem& problem : problems)
    fmt::print(stderr, "{} ({})\n", sentence(problem), problem.code);
  return failed;
}

}  // namespace

int run(int argc, char** argv) {
  Commands commands;
  const SheetOptions& options = commands.sheet_options;
  try {
    commands.app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    const std::string word = argc > 1 ? argv[1] : "";
    std::string accepted;
    bool known = word.empty() || word.front() == '-';
    for (const CLI::App* command : commands.app.get_subcommands({})) {
      known = known || command->get_name() == word;
      accepted += (accepted.empty() ? "" : ", ") + command->get_name();
    }
    if (!known) {
      fmt::print(stderr, "steamworthy: \"{}\" is no command; accepted: {}\n", word, accepted);
      return wrong_usage;
    }
    return commands.app.exit(error) == 0 ? done : wrong_usage;
  }
  const bool json = options.json || commands.trace_options.json || commands.log_options.json ||
                    commands.work_options.json;
  try {
    if (commands.check->parsed()) return check_command(commands.description);
    if (commands.sheet->parsed()) return sheet_command(options);
    if (commands.rules->parsed()) return rules_command();
    if (commands.trace->parsed()) return say(trace_command(commands.trace_options));
    if (commands.hold->parsed()) return say(hold_command(commands.trace_options));
    if (commands.pump_up->parsed()) return say(pump_up_command(commands.trace_options));
    if (commands.draw->parsed()) return say(draw_command(commands.paper_options));
    if (commands.paper->parsed()) return say(paper_command(commands.paper_options));
    if (commands.log->parsed()) return log_command(commands);
    if (commands.serve->parsed()) return serve_command(commands.serve_options);
    if (commands.fitup->parsed()) return say(fitup_command(commands.work_options));
    if (commands.repair->parsed()) return say(repair_command(commands.work_options));
    if (commands.raising->parsed()) return say(raising_command(commands.work_options));
    if (commands.record->parsed()) return say(record_command(commands.paper_options));
    if (commands.table->parsed()) return say(table_command(commands.paper_options));
  } catch (const Usage& usage) {
    fmt::print(stderr, "steamworthy: {}\n", usage.sentence);
    return wrong_usage;
  } catch (const BadInput& error) {
    // A wrong word on the command line, not in a file.
    const bool usage =
        !error.problems().empty() && error.problems().front().code == "service.not_an_overrule";
    return report(error, error.problems(), json) == failed && usage ? wrong_usage : failed;
  } catch (const Error& error) {
    return report(error, {}, json);
  }
  return wrong_usage;
}

}  // namespace steamworthy::cli
