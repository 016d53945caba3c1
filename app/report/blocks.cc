#include "report/blocks.h"

#include <algorithm>

#include "closing/stage.h"

namespace steamworthy::report {

std::string kind(const Context& context, std::string_view token) {
  return context.say("kind." + std::string(token));
}

std::string named(const std::string& tag, const std::string& name) {
  if (tag.empty()) return name;
  return name.empty() ? tag : tag + ", " + name;
}

void cautions(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys) {
  for (const std::string& key : keys)
    flow.paragraph(words::sentence({key, {}}, context.style), {8.5, false}, "!");
  flow.space(1.0);
}

void fill_in(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys) {
  std::vector<Asked> asked;
  for (const std::string& key : keys) asked.push_back({key, ""});
  answered(context, flow, asked);
}

void answered(const Context& context, paper::Flow& flow, const std::vector<Asked>& asked) {
  paper::Table table;
  const double wide = flow.width() / 2.0;
  const double words = wide * 0.42;
  table.columns = {{"", words}, {"", wide - words}, {"", words}, {"", wide - words}};
  for (std::size_t i = 0; i < asked.size(); i += 2) {
    paper::Row row{{{context.say(asked[i].key)}, {asked[i].answer, true}}, writing_height};
    const bool has_next = i + 1 < asked.size();
    row.cells.push_back({has_next ? context.say(asked[i + 1].key) : ""});
    row.cells.push_back({has_next ? asked[i + 1].answer : "", true});
    table.rows.push_back(std::move(row));
  }
  flow.table(table);
}

void blank_table(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys,
                 int rows, const std::vector<double>& widths) {
  paper::Table table;
  for (std::size_t i = 0; i < keys.size(); ++i)
    table.columns.push_back({context.say(keys[i]), i < widths.size() ? widths[i] : 0.0});
  table.ruled = true;
  for (int i = 0; i < rows; ++i)
    table.rows.push_back({std::vector<paper::Cell>(keys.size()), writing_height});
  flow.table(table);
}

void signatures(const Context& context, paper::Flow& flow, const std::vector<std::string>& roles) {
  std::vector<Signed> rows;
  for (const std::string& role : roles) rows.push_back({role});
  signed_by(context, flow, rows);
}

void signed_by(const Context& context, paper::Flow& flow, const std::vector<Signed>& rows) {
  paper::Table table{{{context.say("paper.role")},
                      {context.say("paper.name"), flow.width() * 0.25},
                      {context.say("paper.signature"), flow.width() * 0.25},
                      {context.say("paper.day_and_time"), flow.width() * 0.2}},
                     {}};
  table.ruled = true;
  for (const Signed& row : rows) {
    std::vector<paper::Cell> cells{{context.say(row.key)}, {}, {}, {}};
    if (row.entry != nullptr) {
      cells[1] = {row.name.empty() ? row.entry->person : row.name, true};
      if (!row.what.empty()) cells[0].text += ": " + row.what;
      cells[2] = {context.say("paper.by_entry", {{"entry", entry_name(*row.entry)}})};
      cells[3] = {when(*row.entry)};
    }
    table.rows.push_back({std::move(cells), writing_height + 2.0});
  }
  flow.need(14.0 + 10.0 * static_cast<double>(rows.size()));
  flow.table(table);
}

paper::Row empty_row(std::size_t columns, double height) {
  return {std::vector<paper::Cell>(columns), height};
}

int spare_rows(const Context& context, std::size_t filled, int blank) {
  if (context.filled == nullptr) return blank;
  const auto stage = closing::stage(context.filled->state(), context.filled->terms());
  if (stage == closing::Stage::TakenOver) return filled == 0 ? 1 : 0;
  return std::max(2, blank - static_cast<int>(filled));
}

paper::Cell tick(bool done) { return {done ? "✓" : "", true}; }

paper::Cell done(bool holds, const facts::Fact* fact) { return {holds ? who_when(fact) : ""}; }

void tick_list(const Context& context, paper::Flow& flow, const std::vector<std::string>& what) {
  paper::Table table{{{"", 8.0},
                      {context.say("paper.what")},
                      {context.say("paper.who_and_when"), flow.width() * 0.25}},
                     {}};
  for (const std::string& one : what)
    table.rows.push_back({{paper::tick_box(), {one}, {}}, writing_height - 1.0});
  flow.table(table);
}

std::string head(const Context& context, const std::string& key, units::Kind kind) {
  const std::string unit = context.unit(kind);
  return context.say(key) + (unit.empty() ? "" : ", " + unit);
}

}  // namespace steamworthy::report
