#include "cli/pages.h"

#include <fmt/format.h>

#include <iterator>

#include "cli/commands.h"

namespace steamworthy::cli {
namespace {

struct OptionRow {
  std::string name;  ///< "--rule", or "file" for a positional
  std::string about;
  bool takes_value = false;
  bool positional = false;
};

struct CommandRow {
  std::string name;
  std::string about;
  std::string footer;
  std::vector<OptionRow> options;
  std::vector<CommandRow> inner = {};  ///< commands of a command: "log append"
};

CommandRow row_of(const CLI::App& command, const std::string& before) {
  CommandRow row{before + command.get_name(), command.get_description(), command.get_footer(), {}};
  for (const CLI::Option* option : command.get_options()) {
    const bool positional = option->get_positional();
    row.options.push_back({option->get_name(positional, true), option->get_description(),
                           option->get_items_expected() > 0, positional});
    if (!positional) {
      const auto& names = option->get_lnames();
      row.options.back().name = "--" + names.front();
    }
  }
  for (const CLI::App* inner : command.get_subcommands([](const CLI::App*) { return true; })) {
    row.inner.push_back(row_of(*inner, row.name + " "));
  }
  return row;
}

std::vector<CommandRow> table() {
  Commands commands;
  std::vector<CommandRow> rows;
  for (const CLI::App* command : commands.app.get_subcommands({})) {
    rows.push_back(row_of(*command, ""));
  }
  return rows;
}

/// A command with the options of its inner commands among its own, and their names, each once: what
/// a shell may complete after its name.
CommandRow flat(const CommandRow& command) {
  CommandRow row = command;
  auto add = [&row](const OptionRow& option) {
    for (const OptionRow& known : row.options) {
      if (known.name == option.name) return;
    }
    row.options.push_back(option);
  };
  for (const CommandRow& inner : command.inner) {
    for (const OptionRow& option : inner.options) {
      if (!option.positional) add(option);
    }
  }
  return row;
}

std::vector<CommandRow> flat_table() {
  std::vector<CommandRow> rows;
  for (const CommandRow& command : table()) rows.push_back(flat(command));
  return rows;
}

/// Hyphens and backslashes mean something to troff.
std::string troff(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\') {
      out += "\\e";
    } else if (c == '-') {
      out += "\\-";
    } else {
      out += c;
    }
  }
  return out;
}

/// In single quotes of a shell; fish and zsh read them alike for text without quotes.
std::string quoted(const std::string& text) {
  std::string out = "'";
  for (const char c : text) {
    if (c != '\'' && c != '[' && c != ']' && c != ':') out += c;
  }
  return out + "'";
}

}  // namespace

std::string man_page() {
  std::string page =
      ".TH STEAMWORTHY 1 \"\" \"steamworthy " STEAMWORTHY_VERSION
      "\"\n.SH NAME\n"
      "steamworthy \\- closes a boiler, proves it by a hydrostatic test, hands it back\n"
      ".SH SYNOPSIS\n.B steamworthy\n.I command\n[options]\n.SH COMMANDS\n";
  auto out = std::back_inserter(page);
  std::vector<CommandRow> rows;
  for (const CommandRow& command : table()) {
    rows.push_back(command);
    rows.insert(rows.end(), command.inner.begin(), command.inner.end());
  }
  for (const CommandRow& command : rows) {
    fmt::format_to(out, ".SS {}\n{}\n", command.name, troff(command.about));
    for (const OptionRow& option : command.options) {
      fmt::format_to(out, ".TP\n.B {}\n{}\n", troff(option.name), troff(option.about));
    }
    if (!command.footer.empty()) fmt::format_to(out, ".PP\n.nf\n{}\n.fi\n", troff(command.footer));
  }
  page +=
      ".SH EXIT STATUS\n0 done, 1 refused or failed, 2 wrong usage.\n"
      ".SH CAUTION\nLocal codes, site rules and licensed people decide.\n";
  return page;
}

std::string bash_completion() {
  std::string names;
  std::string cases;
  for (const CommandRow& command : flat_table()) {
    names += (names.empty() ? "" : " ") + command.name;
    std::string options;
    for (const OptionRow& option : command.options) {
      if (!option.positional) options += (options.empty() ? "" : " ") + option.name;
    }
    std::string inner;
    for (const CommandRow& row : command.inner) {
      inner += (inner.empty() ? "" : " ") + row.name.substr(command.name.size() + 1);
    }
    if (!inner.empty()) {
      cases += fmt::format(
          "    {}) if [[ $COMP_CWORD -eq 2 ]]; then COMPREPLY=($(compgen -W \"{}\" -- \"$word\")); "
          "return; fi; words=\"{}\" ;;\n",
          command.name, inner, options);
      continue;
    }
    cases += fmt::format("    {}) words=\"{}\" ;;\n", command.name, options);
  }
  return fmt::format(
      "_steamworthy() {{\n  local word=\"${{COMP_WORDS[COMP_CWORD]}}\" words=\"{}\"\n"
      "  case \"${{COMP_WORDS[1]}}\" in\n{}  esac\n"
      "  if [[ $COMP_CWORD -gt 1 && $word != -* ]]; then\n"
      "    COMPREPLY=($(compgen -f -- \"$word\"))\n  else\n"
      "    COMPREPLY=($(compgen -W \"$words\" -- \"$word\"))\n  fi\n}}\n"
      "complete -o filenames -F _steamworthy steamworthy\n",
      names, cases);
}

std::string zsh_completion() {
  std::string commands;
  std::string cases;
  for (const CommandRow& command : flat_table()) {
    commands += " " + quoted(command.name);
    cases += fmt::format("    {}) _arguments '*:file:_files'", command.name);
    for (const OptionRow& option : command.options) {
      if (option.positional) continue;
      std::string about = quoted(option.about);
      about = about.substr(1, about.size() - 2);
      cases += fmt::format(" '{}[{}]{}'", option.name, about, option.takes_value ? ":value:" : "");
    }
    cases += " ;;\n";
  }
  return fmt::format(
      "#compdef steamworthy\nif (( CURRENT == 2 )); then\n  compadd{}\nelse\n  shift words\n"
      "  (( CURRENT-- ))\n  case $words[1] in\n{}  esac\nfi\n",
      commands, cases);
}

std::string fish_completion() {
  std::string text;
  for (const CommandRow& command : flat_table()) {
    text += fmt::format("complete -c steamworthy -n __fish_use_subcommand -a {} -d {}\n",
                        command.name, quoted(command.about));
    for (const OptionRow& option : command.options) {
      if (option.positional) continue;
      text +=
          fmt::format("complete -c steamworthy -n '__fish_seen_subcommand_from {}' -l {}{} -d {}\n",
                      command.name, option.name.substr(2), option.takes_value ? " -r" : "",
                      quoted(option.about));
    }
  }
  return text;
}

}  // namespace steamworthy::cli
