// Workbook: tables as a spreadsheet (XLSX), numbers as numbers.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace steamworthy::paper {

using SheetCell = std::variant<std::monostate, std::string, double>;

/// One table; its heads carry the units.
struct SheetTable {
  std::string name;  ///< at most 31 letters, none of []:*?/\ .
  std::vector<std::string> heads;
  std::vector<std::vector<SheetCell>> rows;
};

struct Workbook {
  std::string title;
  std::string subject;
  std::string creator;
  std::vector<SheetTable> tables;
};

/// Writes the workbook to that file. The same workbook gives the same bytes: the file claims to be
/// made in 1980, the first year that its format knows. A number that is not finite is left empty.
/// Throws  Error "paper.cannot_write" with the library's reason.
void write_xlsx(const Workbook& workbook, const std::string& path);

}  // namespace steamworthy::paper
