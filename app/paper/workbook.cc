#include "paper/workbook.h"

#include <fmt/format.h>
#include <xlsxwriter.h>

#include <algorithm>
#include <cmath>

#include "base/error.h"

namespace steamworthy::paper {
namespace {

constexpr time_t start_of_1980 = 315532800;

void put(lxw_worksheet* sheet, lxw_row_t row, lxw_col_t column, const SheetCell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) {
    // As a string whatever it begins with: a name is never a formula.
    worksheet_write_string(sheet, row, column, text->c_str(), nullptr);
  } else if (const auto* number = std::get_if<double>(&cell); number && std::isfinite(*number)) {
    worksheet_write_number(sheet, row, column, *number, nullptr);
  }
}

double width_of(const SheetTable& table, std::size_t column) {
  std::size_t widest = table.heads[column].size();
  for (const auto& row : table.rows) {
    if (column >= row.size()) continue;
    if (const auto* text = std::get_if<std::string>(&row[column]))
      widest = std::max(widest, text->size());
  }
  return static_cast<double>(std::clamp<std::size_t>(widest + 2, 8, 60));
}

}  // namespace

void write_xlsx(const Workbook& workbook, const std::string& path) {
  lxw_workbook* book = workbook_new(path.c_str());
  lxw_doc_properties properties = {};
  // The library's interface wants writable text; it copies what it is given.
  properties.title = const_cast<char*>(workbook.title.c_str());
  properties.subject = const_cast<char*>(workbook.subject.c_str());
  properties.author = const_cast<char*>(workbook.creator.c_str());
  properties.created = start_of_1980;
  workbook_set_properties(book, &properties);
  lxw_format* head = workbook_add_format(book);
  format_set_bold(head);
  format_set_bottom(head, LXW_BORDER_THIN);
  for (const SheetTable& table : workbook.tables) {
    lxw_worksheet* sheet = workbook_add_worksheet(book, table.name.c_str());
    if (sheet == nullptr) continue;
    for (std::size_t i = 0; i < table.heads.size(); ++i) {
      const auto column = static_cast<lxw_col_t>(i);
      worksheet_write_string(sheet, 0, column, table.heads[i].c_str(), head);
      worksheet_set_column(sheet, column, column, width_of(table, i), nullptr);
    }
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
      for (std::size_t i = 0; i < table.rows[r].size(); ++i)
        put(sheet, static_cast<lxw_row_t>(r + 1), static_cast<lxw_col_t>(i), table.rows[r][i]);
    }
    worksheet_freeze_panes(sheet, 1, 1);
    worksheet_repeat_rows(sheet, 0, 0);
    worksheet_set_landscape(sheet);
    worksheet_fit_to_pages(sheet, 1, 0);
  }
  const lxw_error error = workbook_close(book);
  if (error != LXW_NO_ERROR) {
    throw Error("paper.cannot_write",
                fmt::format("cannot write the spreadsheet {}: {}", path, lxw_strerror(error)));
  }
}

}  // namespace steamworthy::paper
