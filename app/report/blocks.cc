#include "report/blocks.h"

#include <algorithm>

namespace steamworthy::report {

std::string kind(const Context& context, std::string_view token) {
  return context.say("kind." + std::string(token));
}

void cautions(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys) {
  for (const std::string& key : keys)
    flow.paragraph(words::sentence({key, {}}, context.style), {8.5, false}, "!");
  flow.space(1.0);
}

void fill_in(const Context& context, paper::Flow& flow, const std::vector<std::string>& keys) {
  paper::Table table;
  const double wide = flow.width() / 2.0;
  const double asked = wide * 0.42;
  table.columns = {{"", asked}, {"", wide - asked}, {"", asked}, {"", wide - asked}};
  for (std::size_t i = 0; i < keys.size(); i += 2) {
    paper::Row row{{{context.say(keys[i])}, {""}}, writing_height};
    row.cells.push_back({i + 1 < keys.size() ? context.say(keys[i + 1]) : ""});
    row.cells.push_back({""});
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
  paper::Table table{{{context.say("paper.role")},
                      {context.say("paper.name"), flow.width() * 0.25},
                      {context.say("paper.signature"), flow.width() * 0.25},
                      {context.say("paper.day_and_time"), flow.width() * 0.2}},
                     {}};
  table.ruled = true;
  for (const std::string& role : roles)
    table.rows.push_back({{{context.say(role)}, {}, {}, {}}, writing_height + 2.0});
  flow.need(14.0 + 10.0 * static_cast<double>(roles.size()));
  flow.table(table);
}

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
