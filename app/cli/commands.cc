#include "cli/commands.h"

#include "service/paper_service.h"

namespace steamworthy::cli {
namespace {

/// What is said of this test.
void add_request_options(CLI::App& command, SheetOptions& options) {
  command.add_option("--rule", options.rule, "id of the rule to test by (see: steamworthy rules)");
  command.add_option("--work", options.work,
                     "what was done: gaskets, tubes-rolled, tubes-renewed, drum-repaired, ...");
  command.add_option("--authority", options.authority,
                     "who ordered or agreed to the test, by name");
  command.add_option("--pick", options.pick,
                     "pressure picked inside a rule's interval, e.g. \"36 bar\"");
  command.add_option("--own-pressure", options.own_pressure,
                     "your own test pressure; needs --reason");
  command.add_option("--reason", options.reason, "why your own pressure, in your words");
  command.add_option("--ceiling", options.ceiling, "never to be passed, e.g. \"48 bar\"");
  command.add_option("--water", options.water, "temperature of the water, e.g. \"24 °C\"");
  command.add_option("--metal", options.metal, "temperature of the thickest metal");
  command.add_option("--hold", options.hold, "length of the hold, e.g. \"30 min\"");
  command.add_option("--heater", options.heater, "power that warms the water, e.g. \"60 kW\"");
  command.add_option("--trait", options.traits,
                     "what a rule hangs on, e.g. lap_seam=no (repeatable)");
}

void add_sheet_options(CLI::App& command, SheetOptions& options) {
  command
      .add_option("file", options.file, "boiler description, TOML or JSON; - reads standard input")
      ->required();
  add_request_options(command, options);
  command.add_option("--units", options.units, "units of the text: si or us")
      ->check(CLI::IsMember({"si", "us"}));
  command.add_flag("--json", options.json, "JSON on standard output, units in the keys");
  command.add_flag("--working", options.with_working,
                   "unfold each figure: formula, inputs, sources");
  command.footer(
      "Examples:\n"
      "  steamworthy sheet examples/watertube.toml\n"
      "  steamworthy sheet examples/watertube.toml --work gaskets --rule us-marine-ordinary \\\n"
      "      --authority \"the marine inspector, by name\" --ceiling \"48 bar\" --working\n"
      "Exit codes: 0 done, 1 refused or failed, 2 wrong usage.");
}

void add_trace_options(CLI::App& command, TraceOptions& options) {
  command
      .add_option("file", options.file, "pressure log, in whatever layout; - reads standard input")
      ->required();
  command.add_option("--test", options.test, "what the crew knows of the test: TOML or .meta.json");
  command.add_option("--column", options.columns, "what a column is, e.g. 3=water (repeatable)");
  command.add_option("--unit", options.column_units,
                     "unit of a column, e.g. \"2=psi\" or \"2=bar abs\" (repeatable)");
  command.add_option("--units", options.units, "units of the text: si or us")
      ->check(CLI::IsMember({"si", "us"}));
  command.add_flag("--json", options.json, "JSON on standard output, units in the keys");
}

void add_hold_options(CLI::App& command, TraceOptions& options) {
  add_trace_options(command, options);
  command.add_option("--boiler", options.boiler,
                     "boiler description, where the test file names none");
  command.add_flag("--working", options.with_working,
                   "unfold each figure: formula, inputs, sources");
}

void add_paper_options(CLI::App& command, PaperOptions& options,
                       const std::vector<std::string>& endings) {
  std::string accepted;
  for (const std::string& end : endings) accepted += (accepted.empty() ? "" : ", ") + end;
  command.add_option("-o,--out", options.out, "file to write, by its ending: " + accepted)
      ->required()
      ->check([endings, accepted](const std::string& name) {
        for (const std::string& end : endings) {
          if (name.size() > end.size() && name.substr(name.size() - end.size()) == end)
            return std::string();
        }
        return "\"" + name + "\" does not end in one of " + accepted;
      });
  command.add_option("--paper", options.paper, "size of the pages: a4 or letter")
      ->check(CLI::IsMember({"a4", "letter"}));
  command.add_option("--units", options.units, "units of the text: si or us")
      ->check(CLI::IsMember({"si", "us"}));
  command.add_option("--date", options.date, "day to be printed at the foot, e.g. 2026-11-25")
      ->check([](const std::string& text) {
        const bool good = text.size() == 10 && text[4] == '-' && text[7] == '-' &&
                          text.find_first_not_of("0123456789-") == std::string::npos;
        return good ? std::string() : "\"" + text + "\" is no day as in 2026-11-25";
      });
}

void add_closing_options(CLI::App& command, PaperOptions& options) {
  CLI::Option* log =
      command.add_option("--log", options.store, "fill it from a closing in this store");
  command
      .add_option("--facts", options.facts,
                  "fill it from lines of facts, signed by nobody (repeatable)")
      ->excludes(log);
  command.add_option("--closing", options.closing,
                     "which closing, by its id; not needed where there is one alone");
}

}  // namespace

Commands::Commands()
    : app{"Steamworthy: closes a boiler, proves it by a hydrostatic test, hands it back.",
          "steamworthy"} {
  app.set_version_flag("--version", "steamworthy " STEAMWORTHY_VERSION);
  app.require_subcommand(1);
  app.footer("Exit codes: 0 done, 1 refused or failed, 2 wrong usage.");

  check = app.add_subcommand("check", "finds every fault of a boiler description");
  check->add_option("file", description, "boiler description, TOML or JSON; - reads standard input")
      ->required();
  check->footer("Example:\n  steamworthy check examples/watertube.toml");
  sheet = app.add_subcommand("sheet", "computes the test sheet of a boiler");
  add_sheet_options(*sheet, sheet_options);
  rules = app.add_subcommand("rules", "lists the rules that ship with the program");
  rules->footer("Example:\n  steamworthy rules");
  trace = app.add_subcommand("trace", "shows what is understood of a pressure log");
  add_trace_options(*trace, trace_options);
  trace->footer(
      "Examples:\n"
      "  steamworthy trace hold.csv --test hold.toml\n"
      "  steamworthy trace logger.txt --column 4=metal --unit \"2=bar abs\"");
  pump_up = app.add_subcommand("pumpup", "tells trapped air from the log of raising pressure");
  add_hold_options(*pump_up, trace_options);
  pump_up->footer(
      "Example:\n"
      "  steamworthy pumpup hold.csv --test hold.toml\n"
      "Exit codes: 0 done, 4 cannot tell, 1 failed, 2 wrong usage.");
  hold = app.add_subcommand("hold", "says what the gauge says: net loss, and what it could hide");
  add_hold_options(*hold, trace_options);
  hold->footer(
      "Example:\n"
      "  steamworthy hold hold.csv --test hold.toml --working\n"
      "Exit codes: 0 no loss seen, 3 losing or gaining, 4 cannot tell, 1 failed, 2 wrong usage.");
  draw = app.add_subcommand("draw", "draws the boiler to scale, with every closure and fitting");
  draw->add_option("file", paper_options.files, "boiler description; - reads standard input")
      ->required()
      ->expected(1);
  add_paper_options(*draw, paper_options, {".pdf", ".svg", ".png"});
  add_closing_options(*draw, paper_options);
  draw->footer("Example:\n  steamworthy draw examples/watertube.toml -o boiler.pdf --paper letter");
  paper = app.add_subcommand("paper", "makes a paper of a boiler: test sheet, field sheets, lists");
  std::vector<std::string> kinds;
  std::string kinds_text = "kind of paper:";
  for (const auto& [token, words] : service::paper_kinds()) {
    kinds.push_back(token);
    kinds_text += " " + token + (kinds.size() < service::paper_kinds().size() ? "," : "");
  }
  paper->add_option("kind", paper_options.kind, kinds_text)
      ->required()
      ->check(CLI::IsMember(kinds));
  paper->add_option("file", paper_options.files, "boiler description; - reads standard input")
      ->required()
      ->expected(1);
  add_paper_options(*paper, paper_options, {".pdf", ".svg", ".png"});
  add_request_options(*paper, paper_options.request);
  add_closing_options(*paper, paper_options);
  paper->footer(
      "Examples:\n  steamworthy paper walkdown examples/watertube.toml -o walkdown.pdf "
      "--rule us-marine-ordinary --work gaskets --authority \"the inspector, by name\"\n"
      "  steamworthy paper closures examples/watertube.toml -o closures.pdf --log "
      "plant.steamworthy");
  record = app.add_subcommand("record", "makes the test record of a pressure log, with its plots");
  record->add_option("files", paper_options.files, "boiler description, then the pressure log")
      ->required()
      ->expected(2);
  record->add_option("--test", paper_options.test, "what the crew knows of this test: a test file");
  add_paper_options(*record, paper_options, {".pdf", ".svg", ".png"});
  add_request_options(*record, paper_options.request);
  add_closing_options(*record, paper_options);
  record->footer(
      "Example:\n  steamworthy record boiler.toml log.csv --test test.toml -o record.pdf");
  table =
      app.add_subcommand("table", "writes figures, closures, fittings, places and parts as XLSX");
  table->add_option("file", paper_options.files, "boiler description; - reads standard input")
      ->required()
      ->expected(1);
  add_paper_options(*table, paper_options, {".xlsx"});
  add_request_options(*table, paper_options.request);
  table->footer("Example:\n  steamworthy table examples/watertube.toml -o boiler.xlsx --units us");
  add_work();
  add_log();
  add_serve();
}

}  // namespace steamworthy::cli
