#include "report/sheet_sections.h"

#include <algorithm>
#include <set>

namespace steamworthy::report {
namespace {

using working::Figure;
using working::Input;

/// Figures of one key and formula. Inputs that all share are told once, in the working; those that
/// differ stand beside each value.
struct Group {
  std::vector<std::string> keys;
  std::vector<const Figure*> figures;
  std::vector<std::string> shared;  ///< symbols
};

bool same_value(const Input& a, const Input& b) {
  return a.symbol == b.symbol && a.name == b.name && a.value == b.value && a.origin == b.origin;
}

const Input* input_of(const Figure& figure, const std::string& symbol) {
  for (const Input& input : figure.working.inputs) {
    if (input.symbol == symbol) return &input;
  }
  return nullptr;
}

std::vector<Group> grouped(const std::vector<Figure>& figures) {
  std::vector<Group> groups;
  for (const Figure& figure : figures) {
    const auto it = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
      const Figure& first = *group.figures.front();
      return first.key == figure.key && first.working.formula == figure.working.formula &&
             first.working.remarks == figure.working.remarks;
    });
    if (it == groups.end()) {
      groups.push_back({{figure.key}, {&figure}, {}});
    } else {
      it->figures.push_back(&figure);
    }
  }
  for (Group& group : groups) {
    for (const Input& input : group.figures.front()->working.inputs) {
      const bool all =
          std::all_of(group.figures.begin(), group.figures.end(), [&](const Figure* other) {
            const Input* same = input_of(*other, input.symbol);
            return same != nullptr && same_value(*same, input);
          });
      if (all) group.shared.push_back(input.symbol);
    }
  }
  return groups;
}

std::string subject_text(const Context& context, const std::string& subject) {
  return subject.rfind("sheet.", 0) == 0 ? context.say(subject) : subject;
}

std::string own_inputs(const Context& context, const Group& group, const Figure& figure) {
  std::string text;
  for (const Input& input : figure.working.inputs) {
    if (std::find(group.shared.begin(), group.shared.end(), input.symbol) != group.shared.end())
      continue;
    text +=
        (text.empty() ? "" : "; ") + input.symbol + "\u00a0=\u00a0" + context.print(input.value);
  }
  return text;
}

void put_figures(const Context& context, paper::Flow& flow, const std::vector<Group>& groups) {
  paper::Table table{{{context.say("paper.figure")},
                      {context.say("paper.about")},
                      {context.say("paper.value"), 0.0, paper::Align::Right},
                      {context.say("paper.with")}},
                     {}};
  bool any_own = false, any_subject = false;
  for (const Group& group : groups) {
    for (std::size_t i = 0; i < group.figures.size(); ++i) {
      const Figure& figure = *group.figures[i];
      std::string subjects = subject_text(context, figure.subject);
      const std::string value = value_text(context, figure);
      const std::string own = own_inputs(context, group, figure);
      while (i + 1 < group.figures.size() && value_text(context, *group.figures[i + 1]) == value &&
             own_inputs(context, group, *group.figures[i + 1]) == own) {
        subjects += ", " + subject_text(context, group.figures[++i]->subject);
      }
      any_own = any_own || !own.empty();
      any_subject = any_subject || !subjects.empty();
      table.rows.push_back(
          {{{context.say(figure.key)}, {subjects}, {value, figure.is_known()}, {own}}});
    }
  }
  const auto drop = [&](std::size_t column) {
    table.columns.erase(table.columns.begin() + static_cast<std::ptrdiff_t>(column));
    for (paper::Row& row : table.rows)
      row.cells.erase(row.cells.begin() + static_cast<std::ptrdiff_t>(column));
  };
  if (!any_own) drop(3);
  if (!any_subject) drop(1);
  flow.table(table);
}

std::string_view origin_key(working::Origin origin) {
  switch (origin) {
    case working::Origin::Described:
      return "origin.described";
    case working::Origin::Stated:
      return "origin.stated";
    case working::Origin::Rule:
      return "origin.rule";
    case working::Origin::Published:
      return "origin.published";
    case working::Origin::Remembered:
      return "origin.remembered";
    case working::Origin::Computed:
      return "origin.computed";
    case working::Origin::Assumed:
      break;
  }
  return "origin.assumed";
}

/// One working in one paragraph: formula; inputs; sources; method; remarks.
std::string working_text(const Context& context, const Group& group) {
  const working::Working& working = group.figures.front()->working;
  std::string text = working.formula;
  for (const Input& input : working.inputs) {
    const bool is_shared =
        std::find(group.shared.begin(), group.shared.end(), input.symbol) != group.shared.end();
    text += (text.empty() ? "" : "; ") + input.symbol;
    if (is_shared) text += "\u00a0=\u00a0" + context.print(input.value);
    text +=
        " " + context.say(input.name) + " (" + context.say(std::string(origin_key(input.origin)));
    text += (input.source.empty() ? "" : ", [" + input.source + "]") + ")";
  }
  for (const std::string& source : working.sources)
    text += (text.empty() ? "" : "; ") + ("[" + source + "]");
  if (!working.method.empty())
    text += (text.empty() ? "" : "; ") + ("docs/methods/" + working.method + ".md");
  if (!text.empty()) text += ".";
  for (const working::Message& remark : working.remarks)
    text += " " + words::sentence(remark, context.style);
  return text;
}

void put_workings(const Context& context, paper::Flow& flow, const std::vector<Group>& groups) {
  // Figures that are come by in the same way share one line.
  std::vector<std::pair<std::string, std::string>> lines;  // working, names of figures
  for (const Group& group : groups) {
    const std::string text = working_text(context, group);
    if (text.empty()) continue;
    const std::string name = context.say(group.keys.front());
    const auto it = std::find_if(lines.begin(), lines.end(),
                                 [&](const auto& line) { return line.first == text; });
    if (it == lines.end()) {
      lines.emplace_back(text, name);
    } else if (it->second.find(name) == std::string::npos) {
      it->second += ", " + name;
    }
  }
  if (lines.empty()) return;
  paper::Table table{
      {{context.say("paper.how"), flow.width() * 0.26}, {context.say("paper.working")}},
      {},
      {7.5, false}};
  for (const auto& [text, names] : lines) table.rows.push_back({{{names}, {text}}});
  flow.table(table);
}

}  // namespace

std::string value_text(const Context& context, const Figure& figure) {
  if (figure.is_known()) return context.print(*figure.value);
  return context.say("figure.cannot_tell") + ": " +
         words::phrase(figure.cannot_tell, context.style);
}

void sheet_section(const Context& context, paper::Flow& flow, const sheet::Section& section) {
  if (section.figures.empty() && section.notes.empty()) return;
  flow.heading(context.title(section.key));
  const std::vector<Group> groups = grouped(section.figures);
  put_figures(context, flow, groups);
  // Without a rule many candidates wait for the same word: once is enough.
  std::set<std::string> said;
  for (const auto& note : section.notes) {
    const std::string text = words::sentence(note, context.style);
    if (said.insert(text).second) flow.paragraph(text, {8.5, false}, "–");
  }
  for (const auto& caution : section.cautions)
    flow.paragraph(words::sentence(caution, context.style), {8.5, true}, "!");
  flow.space(1.0);
  put_workings(context, flow, groups);
}

}  // namespace steamworthy::report
