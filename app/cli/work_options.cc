#include "cli/commands.h"

namespace steamworthy::cli {
namespace {

void add_texts(CLI::App& command, WorkOptions& options) {
  command.add_option("--units", options.units, "units of the text: si or us")
      ->check(CLI::IsMember({"si", "us"}));
  command.add_flag("--json", options.json, "JSON on standard output, units in the keys");
  command.add_flag("--working", options.with_working,
                   "unfold each figure: formula, inputs, sources");
}

void add_closing(CLI::App& command, WorkOptions& options) {
  command.add_option("store", options.store, "the store's file")->required();
  command
      .add_option("--boiler", options.boiler,
                  "description of the boiler, held to the hash that the closing names")
      ->required();
  command.add_option("--closing", options.closing, "which closing, where the store has several");
}

}  // namespace

void Commands::add_work() {
  WorkOptions& options = work_options;
  fitup = app.add_subcommand("fitup", "judges a manway plate by the gaps round its shoulder");
  fitup->add_option("file", options.boiler, "boiler description; - reads standard input")
      ->required();
  fitup->add_option("closure", options.closure, "tag of the closure")->required();
  fitup
      ->add_option("--gap", options.gaps,
                   "where on the clock, facing it from outside, and the thickest feeler that goes "
                   "in, e.g. 12=\"0.8 mm\" (four or more)")
      ->required();
  fitup->add_option("--step", options.step,
                    "to the next thicker feeler, which does not go in; 0.05 mm if not said");
  fitup->add_option("--makers-limit", options.makers_limit,
                    "greatest gap by the maker's book; else 1/16 in");
  fitup->add_flag("--standing", options.standing, "the opening's greater width stands upright");
  add_texts(*fitup, options);
  fitup->footer(
      "Example:\n  steamworthy fitup examples/watertube.toml SD-M1 --gap 12=\"0.8 mm\" "
      "--gap 3=\"0.5 mm\" --gap 6=\"0.3 mm\" --gap 9=\"0.6 mm\"");
  repair = app.add_subcommand("repair", "plans what to do about the open leaks of a closing");
  add_closing(*repair, options);
  repair->add_option("--cure", options.cures,
                     "what is to be done to a leak, e.g. 3=remake_joint (repeatable)");
  repair->add_option("--drain-rate", options.drain_rate, "as known here, e.g. \"120 L/min\"");
  repair->add_option("--fill-rate", options.fill_rate, "else that of the description");
  repair->add_option("--margin", options.margin, "of the water below the lowest edge; else 100 mm");
  repair->add_option("--let-down", options.let_down, "time to let pressure down, e.g. \"30 min\"");
  repair->add_option("--repairs", options.repairs, "time for the repairs, all of them");
  repair->add_option("--raise-and-hold", options.raise_and_hold, "time to raise pressure and hold");
  repair->add_option("--walkdown", options.walkdown, "time for the whole walkdown");
  repair->add_option("--walkdown-left", options.walkdown_left, "time left of the one under way");
  add_texts(*repair, options);
  repair->footer(
      "Example:\n  steamworthy repair plant.steamworthy --boiler examples/watertube.toml "
      "--cure 3=remake_joint --drain-rate \"120 L/min\"");
  raising = app.add_subcommand("raising", "lists what must be done before fire, and the rounds");
  add_closing(*raising, options);
  raising->add_option("--level", options.level, "water level to start with, e.g. \"8.5 m\"");
  add_texts(*raising, options);
  raising->footer(
      "Example:\n  steamworthy raising plant.steamworthy --boiler examples/watertube.toml "
      "--level \"8.5 m\"");
}

}  // namespace steamworthy::cli
