#include "service/paper_service.h"

#include "paper/digest.h"
#include "paper/write.h"
#include "report/drawing_paper.h"
#include "service/sheet_service.h"

namespace steamworthy::service {

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

paper::Document make_drawing(const Given& description, const PaperStyle& style) {
  const boiler::Boiler boiler = read_description(description.bytes, description.name);
  return report::drawing_paper(paper_context(boiler, {description}, style));
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
