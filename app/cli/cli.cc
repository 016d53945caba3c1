#include "cli/cli.h"

#include <fmt/format.h>

namespace steamworthy::cli {

int run(int argc, char**) {
  fmt::print(stderr, "steamworthy " STEAMWORTHY_VERSION "\n");
  return argc > 1 ? 2 : 0;
}

}  // namespace steamworthy::cli
