// Writes the man page and the shell completions into a folder; run by the build.
#include <cstdio>
#include <string>

#include "cli/pages.h"

namespace {

bool write(const std::string& path, const std::string& text) {
  std::FILE* file = std::fopen(path.c_str(), "wb");
  if (file == nullptr) return false;
  const bool whole = std::fwrite(text.data(), 1, text.size(), file) == text.size();
  return std::fclose(file) == 0 && whole;
}

}  // namespace

int main(int argc, char** argv) {
  using namespace steamworthy;
  if (argc != 2) return 2;
  const std::string folder = argv[1];
  const bool done = write(folder + "/steamworthy.1", cli::man_page()) &&
                    write(folder + "/steamworthy.bash", cli::bash_completion()) &&
                    write(folder + "/_steamworthy", cli::zsh_completion()) &&
                    write(folder + "/steamworthy.fish", cli::fish_completion());
  return done ? 0 : 1;
}
