#include "cli/section_text.h"

#include <fmt/format.h>

#include <iterator>

namespace steamworthy::cli {
namespace {

std::string value_text(const working::Figure& figure, const words::Style& style) {
  return figure.value ? words::text(*figure.value, style)
                      : "cannot tell: " + words::phrase(figure.cannot_tell, style);
}

std::string subject_text(const std::string& subject, const words::Style& style) {
  return subject.rfind("sheet.", 0) == 0 ? words::label(subject, style) : subject;
}

void put_figures(std::string& text, const working::Section& section, const words::Style& style,
                 bool with_working) {
  const auto& figures = section.figures;
  for (std::size_t i = 0; i < figures.size(); ++i) {
    std::string subjects = subject_text(figures[i].subject, style);
    const std::string value = value_text(figures[i], style);
    if (!with_working) {
      while (i + 1 < figures.size() && figures[i + 1].key == figures[i].key &&
             value_text(figures[i + 1], style) == value) {
        subjects += ", " + subject_text(figures[++i].subject, style);
      }
    }
    fmt::format_to(std::back_inserter(text), "  {}{}: {}\n", words::label(figures[i].key, style),
                   subjects.empty() ? "" : " (" + subjects + ")", value);
    if (with_working) text += words::render_working(figures[i], style);
  }
}

}  // namespace

std::string section_text(const working::Section& section, const words::Style& style,
                         bool with_working) {
  if (section.figures.empty() && section.notes.empty()) return "";
  std::string text = "\n" + words::label(section.key, style) + "\n";
  put_figures(text, section, style, with_working);
  for (const auto& note : section.notes) text += "  - " + words::sentence(note, style) + "\n";
  for (const auto& caution : section.cautions) {
    text += "  ! " + words::sentence(caution, style) + "\n";
  }
  return text;
}

}  // namespace steamworthy::cli
