// The man page and the shell completions, from the table of commands.
#pragma once

#include <string>

namespace steamworthy::cli {

std::string man_page();         ///< in troff, section 1
std::string bash_completion();  ///< for bash
std::string zsh_completion();   ///< for zsh
std::string fish_completion();  ///< for fish

}  // namespace steamworthy::cli
