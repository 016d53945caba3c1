// Writes a simulated log as a crew would hand it in: NAME.csv and NAME.meta.json in a folder, and
// its entry of truth on standard output.
//
//   hold_logs FOLDER NAME KIND LAYOUT [SEED [EVERY_S]]
//
// KIND: gaining, gaining-hidden, not-bled, no-loss, losing. LAYOUT: si, us, german, manual.
#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <stdexcept>

#include "hold_study/logs.h"

namespace {

void write(const std::string& path, const std::string& text) {
  std::ofstream file(path, std::ios::binary);
  file << text;
  file.close();
  if (!file) throw std::runtime_error("cannot write " + path);
}

}  // namespace

int main(int argc, char** argv) {
  using namespace steamworthy::hold_study;
  if (argc < 5 || argc > 7) {
    fmt::print(stderr, "usage: hold_logs FOLDER NAME KIND LAYOUT [SEED [EVERY_S]]\n");
    return 2;
  }
  try {
    const std::string folder = argv[1];
    const std::string name = argv[2];
    const Layout layout = layout_named(argv[4]);
    const std::uint64_t seed = argc > 5 ? std::strtoull(argv[5], nullptr, 10) : study_seed;
    const double every_s = argc > 6                   ? std::strtod(argv[6], nullptr)
                           : layout == Layout::Manual ? 300.0
                                                      : 10.0;
    if (every_s < 1.0) throw std::invalid_argument("EVERY_S is a number of seconds, 1 or more");
    const Case made = named_case(argv[3], seed, every_s);
    write(fmt::format("{}/{}.csv", folder, name), csv_text(made, layout));
    write(fmt::format("{}/{}.meta.json", folder, name), meta_text(made, layout, name + ".csv"));
    fmt::print("{}", truth_text(made, layout));
  } catch (const std::exception& error) {
    fmt::print(stderr, "{}\n", error.what());
    return 1;
  }
  return 0;
}
