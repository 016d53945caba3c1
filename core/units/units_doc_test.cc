// Holds docs/reference/units.md to the code: every kind with its suffix, and every unit that the
// page says is accepted.
#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <string>
#include <vector>

#include "units/parse.h"
#include "units/print.h"

namespace steamworthy::units {
namespace {

std::vector<std::string> columns(const std::string& line) {
  std::vector<std::string> out;
  std::size_t from = line.find('|');
  for (std::size_t to; (to = line.find('|', from + 1)) != std::string::npos; from = to) {
    out.push_back(line.substr(from + 1, to - from - 1));
  }
  return out;
}

std::vector<std::string> quoted(const std::string& text) {
  std::vector<std::string> out;
  std::size_t from = 0;
  while ((from = text.find('`', from)) != std::string::npos) {
    const std::size_t to = text.find('`', from + 1);
    out.push_back(text.substr(from + 1, to - from - 1));
    from = to + 1;
  }
  return out;
}

std::map<std::string, std::vector<std::string>> rows_of_the_page() {
  std::ifstream page(STEAMWORTHY_SOURCE_DIR "/docs/reference/units.md");
  std::map<std::string, std::vector<std::string>> rows;
  for (std::string line; std::getline(page, line);) {
    const auto cells = columns(line);
    if (cells.size() != 4) continue;
    const auto name = quoted(cells[0]);
    if (name.size() == 1) rows[name[0]] = cells;
  }
  return rows;
}

TEST(UnitsPage, ListsEveryKindWithSuffixUnitsAndPrintedForm) {
  const auto rows = rows_of_the_page();
  EXPECT_EQ(rows.size(), static_cast<std::size_t>(Kind::Count) + 1);
  for (int i = 0; i <= static_cast<int>(Kind::Count); ++i) {
    const auto kind = static_cast<Kind>(i);
    const auto row = rows.find(std::string(info(kind).name));
    ASSERT_NE(row, rows.end()) << info(kind).name;
    const auto suffix = quoted(row->second[1]);
    EXPECT_EQ(suffix.empty() ? "" : suffix[0], info(kind).suffix) << info(kind).name;
    for (const std::string& name : quoted(row->second[2])) {
      const auto unit = read_unit(name);
      ASSERT_TRUE(unit) << name;
      EXPECT_EQ(unit->dimension, dimension(kind)) << name;
      EXPECT_TRUE(parse_measure(kind, "1 " + name, barometer_reading) ||
                  parse_measure(kind, "1 " + name))
          << name;
    }
    if (kind == Kind::Duration) continue;  // says "s, min, h min"
    for (const System system : {System::Si, System::Us}) {
      EXPECT_NE(row->second[3].find(unit(kind, system)), std::string::npos) << info(kind).name;
    }
  }
}

}  // namespace
}  // namespace steamworthy::units
