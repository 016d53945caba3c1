#include "cli/commands.h"

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

}  // namespace

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
