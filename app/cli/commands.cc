#include "cli/commands.h"

namespace steamworthy::cli {
namespace {

void add_sheet_options(CLI::App& command, SheetOptions& options) {
  command
      .add_option("file", options.file, "boiler description, TOML or JSON; - reads standard input")
      ->required();
  command.add_option("--rule", options.rule, "id of the rule to test by (see: steamworthy rules)");
  command.add_option("--work", options.work,
                     "what was done: gaskets, tubes-rolled, tubes-renewed, drum-repaired, ...");
  command.add_option("--units", options.units, "units of the text: si or us")
      ->check(CLI::IsMember({"si", "us"}));
  command.add_flag("--json", options.json, "JSON on standard output, units in the keys");
  command.add_flag("--working", options.with_working,
                   "unfold each figure: formula, inputs, sources");
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
  command.footer(
      "Examples:\n"
      "  steamworthy sheet examples/watertube.toml\n"
      "  steamworthy sheet examples/watertube.toml --work gaskets --rule us-marine-ordinary \\\n"
      "      --authority \"the marine inspector, by name\" --ceiling \"48 bar\" --working\n"
      "Exit codes: 0 done, 1 refused or failed, 2 wrong usage.");
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
}

}  // namespace steamworthy::cli
