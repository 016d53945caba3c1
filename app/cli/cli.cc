#include "cli/cli.h"

#include <fmt/format.h>

#include <string>
#include <vector>

#include "base/error.h"
#include "cli/commands.h"
#include "cli/files.h"
#include "cli/paper_commands.h"
#include "cli/sheet_text.h"
#include "cli/trace_command.h"
#include "service/sheet_service.h"
#include "units/makers.h"
#include "units/parse.h"
#include "wire/sheet_json.h"

namespace steamworthy::cli {
namespace {

constexpr int done = 0;
constexpr int failed = 1;
constexpr int wrong_usage = 2;

/// A wrong word on the command line, as opposed to a wrong file.
struct Usage {
  std::string sentence;
};

template <class Quantity>
std::optional<Quantity> quantity(units::Kind kind, const std::string& option,
                                 const std::string& text) {
  if (text.empty()) return std::nullopt;
  const auto parsed = units::parse_measure(kind, text);
  if (!parsed) {
    Problem problem = parsed.problem;
    problem.field = option;
    throw Usage{sentence(problem)};
  }
  return Quantity::from_si(parsed.value->si);
}

sheet::Request read(const SheetOptions& options) {
  using units::Kind;
  sheet::Request request;
  if (!options.rule.empty()) request.rule_id = options.rule;
  if (!options.work.empty()) {
    request.work = rules::work_of(options.work);
    if (!request.work) {
      std::string words;
      for (const auto token : rules::work_tokens())
        words += (words.empty() ? "" : ", ") + std::string(token);
      throw Usage{
          fmt::format("--work: \"{}\" is no kind of work; accepted: {}", options.work, words)};
    }
  }
  request.authority = options.authority;
  request.picked = quantity<units::GaugePressure>(Kind::GaugePressure, "--pick", options.pick);
  request.stated_ceiling =
      quantity<units::GaugePressure>(Kind::GaugePressure, "--ceiling", options.ceiling);
  request.water = quantity<units::Temperature>(Kind::Temperature, "--water", options.water);
  request.metal = quantity<units::Temperature>(Kind::Temperature, "--metal", options.metal);
  request.hold = quantity<units::Duration>(Kind::Duration, "--hold", options.hold);
  request.heater = quantity<units::Power>(Kind::Power, "--heater", options.heater);
  if (const auto own = quantity<units::GaugePressure>(Kind::GaugePressure, "--own-pressure",
                                                      options.own_pressure)) {
    request.own_pressure = rules::OwnPressure{*own, options.reason};
  }
  for (const std::string& given : options.traits) {
    const std::size_t equals = given.find('=');
    const auto trait = rules::trait_of(given.substr(0, equals));
    const std::string answer = equals == std::string::npos ? "yes" : given.substr(equals + 1);
    if (!trait || (answer != "yes" && answer != "no")) {
      std::string words;
      for (const auto token : rules::trait_tokens())
        words += (words.empty() ? "" : ", ") + std::string(token);
      throw Usage{
          fmt::format("--trait: found \"{}\"; accepted: one of {} and =yes or =no", given, words)};
    }
    request.traits[*trait] = answer == "yes";
  }
  return request;
}

int check_command(const std::string& file) {
  const boiler::Boiler boiler = service::read_description(read_file(file), base_name(file));
  fmt::print("{}: no fault found. {}, {}: {} parts, {} closures, {} mountings, {} temporaries.\n",
             base_name(file), boiler.tag, boiler.name, boiler.parts.size(), boiler.closures.size(),
             boiler.mountings.size(), boiler.temporaries.size());
  return done;
}

int sheet_command(const SheetOptions& options) {
  const sheet::Request request = read(options);
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
  const bool json = options.json || commands.trace_options.json;
  try {
    if (commands.check->parsed()) return check_command(commands.description);
    if (commands.sheet->parsed()) return sheet_command(options);
    if (commands.rules->parsed()) return rules_command();
    if (commands.trace->parsed()) return say(trace_command(commands.trace_options));
    if (commands.draw->parsed()) return say(draw_command(commands.paper_options));
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
