// Use cases around papers: a drawing or a paper of a boiler, as the bytes of files.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "paper/display.h"
#include "paper/flow.h"
#include "report/context.h"
#include "service/closing_facts.h"
#include "service/trace_service.h"
#include "sheet/sheet.h"
#include "units/print.h"

namespace steamworthy::service {

struct PaperStyle {
  units::System system = units::System::Si;
  paper::Size size = paper::Size::A4;
  std::string date;  ///< "2026-11-25", or empty
};

/// What every paper of this boiler says at its foot. Keeps a reference to the boiler.
report::Context paper_context(const boiler::Boiler& boiler, const std::vector<Given>& files,
                              const PaperStyle& style);

/// The boiler to scale, with the marks of a closing. Throws as read_description(), FilledClosing.
paper::Document make_drawing(const Given& description, const PaperStyle& style,
                             const ClosingSource& closing = {});

/// A paper of that kind, with the test sheet that the request makes. `said` is what was said beside
/// the description, one "name=value" a line; it goes into the paper's hash. Filled from the
/// closing's facts where there are any.
/// Throws  NotFound "service.unknown_paper"; as read_description(), sheet::make_sheet() and
///         FilledClosing.
paper::Document make_paper(std::string_view kind, const Given& description,
                           const sheet::Request& request, const std::string& said,
                           const PaperStyle& style, const ClosingSource& closing = {});

/// The test record of a log, its columns as somebody said they are. `known` is what is known of the
/// test, read from the files `known_from`; where that is empty nothing is known of valves and
/// instruments, and the gauge cannot tell.
/// Throws  as make_paper(), read_test() and judge_hold(); BadInput with every fault of a log of
///         which nothing can be read.
paper::Document make_record(const Given& description, const Given& log,
                            const trace::Overrules& columns, const Test& known,
                            const std::vector<Given>& known_from, const sheet::Request& request,
                            const std::string& said, const PaperStyle& style,
                            const ClosingSource& closing = {});

/// Figures, closures, fittings, places and parts as a spreadsheet, into that file.
/// Throws as make_paper(), and as paper::write_xlsx().
void write_table(const Given& description, const sheet::Request& request, const std::string& said,
                 const PaperStyle& style, const std::string& path);

/// Kinds of paper, by token, with what each is called.
std::vector<std::pair<std::string, std::string>> paper_kinds();

enum class Format { Pdf, Svg, Png };

/// The bytes of the files: one PDF, or one SVG or PNG (150 dots to the inch) a page.
std::vector<std::string> files_of(const paper::Document& document, Format format);

}  // namespace steamworthy::service
