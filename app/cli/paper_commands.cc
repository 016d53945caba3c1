#include "cli/paper_commands.h"

#include <fmt/format.h>

#include "base/error.h"
#include "cli/files.h"
#include "cli/request.h"
#include "service/paper_service.h"

namespace steamworthy::cli {
namespace {

std::string ending(const std::string& name) {
  const std::size_t dot = name.find_last_of('.');
  return dot == std::string::npos ? "" : name.substr(dot);
}

service::Format format_of(const std::string& name) {
  const std::string end = ending(name);
  if (end == ".pdf") return service::Format::Pdf;
  if (end == ".svg") return service::Format::Svg;
  if (end == ".png") return service::Format::Png;
  throw BadInput(
      {{"cli.no_such_format", "", 0, "-o", name, "a name that ends in .pdf, .svg or .png",
        "the ending does not tell what to write"}});
}

service::PaperStyle style_of(const PaperOptions& options) {
  return {options.units == "us" ? units::System::Us : units::System::Si,
          options.paper == "letter" ? paper::Size::Letter : paper::Size::A4, options.date};
}

service::ClosingSource closing_of(const PaperOptions& options) {
  service::ClosingSource source;
  source.store = options.store;
  source.closing = options.closing;
  for (const std::string& file : options.facts)
    source.lines.push_back({base_name(file), read_file(file)});
  if (!source.is_given() && !source.closing.empty())
    throw Usage{"--closing: needs --log or --facts to say where its facts are"};
  return source;
}

/// One file, or one a page: "out-01.png", "out-02.png" ...
std::string write_document(const paper::Document& document, const std::string& name) {
  const std::vector<std::string> files = service::files_of(document, format_of(name));
  std::string said;
  for (std::size_t i = 0; i < files.size(); ++i) {
    std::string one = name;
    if (files.size() > 1) {
      const std::string end = ending(name);
      one = fmt::format("{}-{:02}{}", name.substr(0, name.size() - end.size()), i + 1, end);
    }
    write_file(one, files[i]);
    said += one + "\n";
  }
  return said;
}

}  // namespace

std::string draw_command(const PaperOptions& options) {
  format_of(options.out);  // before the work is done
  const std::string& file = options.files.at(0);
  return write_document(service::make_drawing({base_name(file), read_file(file)}, style_of(options),
                                              closing_of(options)),
                        options.out);
}

std::string paper_command(const PaperOptions& options) {
  format_of(options.out);
  const sheet::Request request = read_request(options.request);
  const std::string& file = options.files.at(0);
  return write_document(service::make_paper(options.kind, {base_name(file), read_file(file)},
                                            request, service::text_of(said(options.request)),
                                            style_of(options), closing_of(options)),
                        options.out);
}

std::string record_command(const PaperOptions& options) {
  format_of(options.out);
  const auto given = [](const std::string& file) {
    return service::Given{base_name(file), read_file(file)};
  };
  std::vector<service::Given> known_from;
  service::Test known;
  if (!options.test.empty()) {
    known_from.push_back(given(options.test));
    known = service::read_test(known_from[0].bytes, known_from[0].name);
  }
  return write_document(service::make_record(given(options.files.at(0)), given(options.files.at(1)),
                                             {}, known, known_from, read_request(options.request),
                                             service::text_of(said(options.request)),
                                             style_of(options), closing_of(options)),
                        options.out);
}

std::string table_command(const PaperOptions& options) {
  const std::string& file = options.files.at(0);
  service::write_table({base_name(file), read_file(file)}, read_request(options.request),
                       service::text_of(said(options.request)), style_of(options), options.out);
  return options.out + "\n";
}

}  // namespace steamworthy::cli
