#include "service/paper_service.h"

#include <fmt/format.h>

#include "base/error.h"
#include "paper/digest.h"
#include "paper/write.h"
#include "report/drawing_paper.h"
#include "report/papers.h"
#include "report/record.h"
#include "report/tables.h"
#include "service/hold_service.h"
#include "service/sheet_service.h"
#include "service/trace_service.h"
#include "trace/reader.h"
#include "words/words.h"

namespace steamworthy::service {
namespace {

/// A closing's facts, put into what papers say; its sources become sources of the paper.
struct ClosingFor {
  ClosingFor(const boiler::Boiler& boiler, report::Context& context, const ClosingSource& source)
      : closing(boiler, context.sources.front().sha256, source) {
    for (const auto& [name, sha256] : closing.inputs()) context.sources.push_back({name, sha256});
    context.filled = &closing.filled();
  }
  FilledClosing closing;
};

/// Everything that papers of one boiler are made of; holds the boiler that they refer to.
struct Material {
  /// The description is the first of the files.
  Material(const std::vector<Given>& files, const sheet::Request& request, const std::string& said,
           const PaperStyle& style, const ClosingSource& closing = {})
      : boiler(read_description(files.front().bytes, files.front().name)),
        rules(shipped_rules()),
        papers{paper_context(boiler, files, style), sheet::make_sheet(boiler, rules, request)} {
    papers.context.said = said;
    papers.context.rule = papers.sheet.rule_id;
    papers.context.rule_title = papers.sheet.rule_title;
    for (const rules::Rule& rule : rules) {
      if (rule.id == papers.sheet.rule_id) {
        papers.context.rule_source = fmt::format("[{}], {}; words {}", rule.source.key,
                                                 rule.edition, rules::token(rule.source.seen));
      }
    }
    if (closing.is_given()) filled.emplace(boiler, papers.context, closing);
  }
  Material(const Material&) = delete;
  Material& operator=(const Material&) = delete;

  boiler::Boiler boiler;
  std::vector<rules::Rule> rules;
  report::Papers papers;
  std::optional<ClosingFor> filled;
};

}  // namespace

report::Context paper_context(const boiler::Boiler& boiler, const std::vector<Given>& files,
                              const PaperStyle& style) {
  report::Context context{.boiler = boiler};
  context.style.print.system = style.system;
  context.size = style.size;
  context.date = style.date;
  context.version = STEAMWORTHY_VERSION;
  for (const Given& file : files) context.sources.push_back({file.name, paper::sha256(file.bytes)});
  return context;
}

paper::Document make_drawing(const Given& description, const PaperStyle& style,
                             const ClosingSource& closing) {
  const boiler::Boiler boiler = read_description(description.bytes, description.name);
  report::Context context = paper_context(boiler, {description}, style);
  std::optional<ClosingFor> filled;
  if (closing.is_given()) filled.emplace(boiler, context, closing);
  return report::drawing_paper(context);
}

paper::Document make_paper(std::string_view kind, const Given& description,
                           const sheet::Request& request, const std::string& said,
                           const PaperStyle& style, const ClosingSource& closing) {
  const report::PaperKind* found = report::find_kind(kind);
  if (found == nullptr) {
    std::string accepted;
    for (const report::PaperKind& one : report::kinds())
      accepted += (accepted.empty() ? "" : ", ") + std::string(one.token);
    throw NotFound("service.unknown_paper",
                   fmt::format("\"{}\" is no kind of paper; accepted: {}", kind, accepted));
  }
  const Material material({description}, request, said, style, closing);
  return found->make(material.papers);
}

paper::Document make_record(const Given& description, const Given& log,
                            const trace::Overrules& columns, const Test& known,
                            const std::vector<Given>& known_from, const sheet::Request& request,
                            const std::string& said, const PaperStyle& style,
                            const ClosingSource& closing) {
  std::vector<Given> files = {description, log};
  files.insert(files.end(), known_from.begin(), known_from.end());
  const Material material(files, request, said, style, closing);
  const trace::Reading reading =
      trace::read_trace(log.bytes, log.name, joined(columns, known.facts));
  if (!reading.is_usable()) throw BadInput(reading.problems);
  HoldJudgement judgement = judge_hold(reading.trace, known.facts, material.boiler);
  auto& notes = judgement.answer.notes;
  notes.insert(notes.end(), known.notes.begin(), known.notes.end());
  return report::test_record(material.papers,
                             {reading.trace, known.facts, judgement.input, judgement.answer});
}

void write_table(const Given& description, const sheet::Request& request, const std::string& said,
                 const PaperStyle& style, const std::string& path) {
  const Material material({description}, request, said, style);
  paper::write_xlsx(report::workbook(material.papers), path);
}

std::vector<std::pair<std::string, std::string>> paper_kinds() {
  std::vector<std::pair<std::string, std::string>> kinds;
  for (const report::PaperKind& one : report::kinds())
    kinds.emplace_back(one.token, words::label(one.key));
  return kinds;
}

std::vector<std::string> files_of(const paper::Document& document, Format format) {
  constexpr double dots_per_inch = 150.0;
  if (format == Format::Pdf) return {paper::pdf(document)};
  std::vector<std::string> files;
  for (const paper::Page& page : document.pages) {
    files.push_back(format == Format::Svg ? paper::svg(page, document.title)
                                          : paper::png(page, dots_per_inch));
  }
  return files;
}

}  // namespace steamworthy::service
