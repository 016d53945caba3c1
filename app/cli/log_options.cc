#include "cli/commands.h"
#include "facts/words.h"

namespace steamworthy::cli {
namespace {

void add_store(CLI::App& command, LogOptions& options) {
  command.add_option("store", options.store, "the store's file")->required();
}

void add_closing(CLI::App& command, LogOptions& options, const char* about) {
  command.add_option("--closing", options.closing, about);
}

void add_json(CLI::App& command, LogOptions& options) {
  command.add_flag("--json", options.json, "JSON on standard output");
}

void add_view(CLI::App& command, LogOptions& options) {
  add_store(command, options);
  command
      .add_option("--boiler", options.boiler,
                  "description of the boiler, held to the hash that the closing names")
      ->required();
  add_closing(command, options, "which closing, where the store has several");
}

void add_units(CLI::App& command, LogOptions& options) {
  command.add_option("--units", options.units, "units of the text: si or us")
      ->check(CLI::IsMember({"si", "us"}));
}

void add_clearance(CLI::App& command, LogOptions& options) {
  std::vector<std::string> steps;
  std::string all = "the step:";
  for (const std::string_view word : facts::all_words<facts::StepName>()) {
    steps.emplace_back(word);
    all += (steps.size() > 1 ? ", " : " ") + steps.back();
  }
  command.add_option("--step", options.step, all)->required()->check(CLI::IsMember(steps));
  command.add_option("--subject", options.subject, "tag of the space or closure that it is for");
  command.add_option("--up-to", options.up_to,
                     "pressure at the reference level, e.g. \"45 bar\", to raise pressure");
}

}  // namespace

void Commands::add_log_state() {
  LogOptions& options = log_options;
  log_state = log->add_subcommand("state", "says where a closing stands and what comes next");
  add_view(*log_state, options);
  add_units(*log_state, options);
  add_json(*log_state, options);
  log_state->footer(
      "Example:\n  steamworthy log state plant.steamworthy --boiler examples/watertube.toml");
  log_outstanding = log->add_subcommand("outstanding", "lists what stands in a clearance's way");
  add_view(*log_outstanding, options);
  add_clearance(*log_outstanding, options);
  add_units(*log_outstanding, options);
  add_json(*log_outstanding, options);
  log_outstanding->footer(
      "Example:\n  steamworthy log outstanding plant.steamworthy --boiler examples/watertube.toml "
      "--step raise_pressure --up-to \"45 bar\"");
  log_clear = log->add_subcommand("clear", "gives a clearance, if nothing stands in its way");
  add_view(*log_clear, options);
  add_clearance(*log_clear, options);
  log_clear->add_option("--person", options.person, "who gives it: a lead hand or engineer")
      ->required();
  log_clear->add_option("--second", options.second, "the second of the two names")->required();
  add_units(*log_clear, options);
  add_json(*log_clear, options);
  log_clear->footer(
      "Example:\n  steamworthy log clear plant.steamworthy --boiler examples/watertube.toml "
      "--step fill --person \"R. Lind\" --second \"J. Moe\"\n"
      "Exit codes: 0 given, 1 refused or failed, 2 wrong usage.");
}

void Commands::add_log() {
  log = app.add_subcommand("log", "keeps, shows, exports and verifies the signed record");
  log->require_subcommand(1);
  LogOptions& options = log_options;
  log_create =
      log->add_subcommand("create", "makes a new, empty store and the key that signs in it");
  add_store(*log_create, options);
  log_create->footer("Example:\n  steamworthy log create plant.steamworthy");
  log_append = log->add_subcommand("append", "signs and stores facts, one JSON object a line");
  add_store(*log_append, options);
  log_append->add_option("file", options.file, "lines of facts; - reads standard input")
      ->required();
  add_closing(*log_append, options, "for lines that name none: an id, new, or plant");
  log_append->add_flag("--script", options.script,
                       "lines may say id, device, device_seq, seen, recorded_at_ms, which are left "
                       "out, and call a new closing by a name");
  log_append->footer(
      "Example:\n  steamworthy log append plant.steamworthy facts.jsonl --closing new");
  log_list = log->add_subcommand("list", "shows facts as sentences, in causal order");
  add_store(*log_list, options);
  add_closing(*log_list, options, "of one closing, or of the plant");
  add_json(*log_list, options);
  log_list->footer("Example:\n  steamworthy log list plant.steamworthy --closing plant");
  log_export =
      log->add_subcommand("export", "writes the record as one file that anybody can verify");
  add_store(*log_export, options);
  log_export->add_option("file", options.file, "file to write; it must not be there")->required();
  add_closing(*log_export, options, "one closing and the plant's feeds");
  log_export->footer("Example:\n  steamworthy log export plant.steamworthy record.swexport");
  log_verify = log->add_subcommand("verify", "says what an export or a store proves, and what not");
  log_verify->add_option("file", options.file, "an export, a store or a backup")->required();
  log_verify->add_option("--key", options.keys,
                         "a device's key that you have from elsewhere (repeatable)");
  add_json(*log_verify, options);
  log_verify->footer("Example:\n  steamworthy log verify record.swexport");
  log_keys = log->add_subcommand("keys", "shows the keys of the devices, to be compared");
  add_store(*log_keys, options);
  log_keys->footer("Example:\n  steamworthy log keys plant.steamworthy");
  add_log_state();
  log_backup =
      log->add_subcommand("backup", "copies a store, while it is in use, and checks the copy");
  add_store(*log_backup, options);
  log_backup->add_option("file", options.file, "file to write; it must not be there")->required();
  log_backup->footer("Example:\n  steamworthy log backup plant.steamworthy monday.backup");
  log_restore = log->add_subcommand("restore", "makes a new store of a backup, as a new device");
  log_restore->add_option("file", options.file, "the backup")->required();
  add_store(*log_restore, options);
  log_restore->footer("Example:\n  steamworthy log restore monday.backup plant-2.steamworthy");
}

}  // namespace steamworthy::cli
