// Commands: the one table of commands and options. The parser, the help, the man page and the
// shell completions all come from it.
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

namespace steamworthy::cli {

/// The texts of the options as given; read() turns them into a request.
struct SheetOptions {
  std::string file, rule, work, units = "si", own_pressure, reason, authority, pick, ceiling, water,
                                metal, hold, heater;
  std::vector<std::string> traits;
  bool json = false;
  bool with_working = false;
};

/// The same for commands that make papers.
struct PaperOptions {
  std::vector<std::string> files;
  std::string kind, out, test, paper = "a4", units = "si", date;
  std::string store, closing;      ///< a closing in a store ...
  std::vector<std::string> facts;  ///< ... or lines of facts
  SheetOptions request;            ///< what is said of the test; its file and units are not used
};

/// The same for commands that read a pressure log.
struct TraceOptions {
  std::string file, test, boiler, units = "si";
  std::vector<std::string> columns, column_units;
  bool json = false;
  bool with_working = false;
};

/// The same for the commands of the log.
struct LogOptions {
  std::string store, file, closing;
  std::string boiler, units = "si", step, subject, up_to, person, second;
  std::vector<std::string> keys;
  bool script = false;
  bool json = false;
};

/// The same for serve.
struct ServeOptions {
  std::string store, address = "127.0.0.1", certificate, certificate_key, host, pages;
  std::vector<std::string> boilers;
  int port = 8080;
  int connections = 1024;
  int connections_per_address = 512;
  bool tls = false;
  bool make = false;
  bool demo = false;
};

/// The same for the commands of work at the boiler: plates, repairs, raising steam.
struct WorkOptions {
  std::string store, boiler, closing, units = "si";
  std::string closure, step = "0.05 mm", makers_limit, drain_rate, fill_rate, margin, let_down,
                       repairs, raise_and_hold, walkdown, walkdown_left, level;
  std::vector<std::string> gaps, cures;
  bool standing = false;
  bool json = false;
  bool with_working = false;
};

/// The parser with the places that it fills. Not to be moved: the parser points into it.
struct Commands {
  Commands();
  Commands(const Commands&) = delete;
  Commands& operator=(const Commands&) = delete;

  CLI::App app;
  CLI::App* check = nullptr;
  CLI::App* sheet = nullptr;
  CLI::App* rules = nullptr;
  CLI::App* draw = nullptr;
  CLI::App* trace = nullptr;
  CLI::App* paper = nullptr;
  CLI::App* table = nullptr;
  CLI::App* pump_up = nullptr;
  CLI::App* hold = nullptr;
  CLI::App* record = nullptr;
  std::string description;
  SheetOptions sheet_options;
  PaperOptions paper_options;
  TraceOptions trace_options;

  CLI::App* log = nullptr;
  CLI::App *log_create = nullptr, *log_append = nullptr, *log_list = nullptr, *log_export = nullptr,
           *log_verify = nullptr, *log_keys = nullptr, *log_backup = nullptr,
           *log_restore = nullptr, *log_state = nullptr, *log_outstanding = nullptr,
           *log_clear = nullptr;
  LogOptions log_options;
  CLI::App* serve = nullptr;
  ServeOptions serve_options;

  CLI::App *fitup = nullptr, *repair = nullptr, *raising = nullptr;
  WorkOptions work_options;

 private:
  void add_log();
  void add_serve();
  void add_log_state();
  void add_work();
};

}  // namespace steamworthy::cli
