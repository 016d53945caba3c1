#include "server/paper_calls.h"

#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "assets/assets.h"
#include "boiler/layout.h"
#include "facts/moment.h"
#include "paper/write.h"
#include "record/sha256.h"
#include "report/elevation.h"
#include "server/sheet_form.h"
#include "service/closing_service.h"
#include "service/paper_service.h"
#include "service/sheet_service.h"
#include "service/test_log.h"
#include "store/export.h"
#include "store/local_time.h"
#include "wire/json_text.h"
#include "wire/sheet_json.h"

namespace steamworthy::server {
namespace {

using wire::JsonObject;

service::PaperStyle paper_style(const Call& call) {
  service::PaperStyle style;
  style.system = call.style().print.system;
  const std::string size = call.asked("paper").value_or("a4");
  if (size != "a4" && size != "letter") {
    throw Refusal(400, "server.bad_query", fmt::format("paper: \"{}\" is not a4 or letter", size));
  }
  if (size == "letter") style.size = paper::Size::Letter;
  style.date = facts::date_and_time(call.now_ms, store::utc_offset_min(call.now_ms)).substr(0, 10);
  return style;
}

/// A file that is gone when this is.
class TemporaryFile {
 public:
  TemporaryFile() {
    std::string name = (std::filesystem::temp_directory_path() / "steamworthy_XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) {
      throw StoreError("store.cannot_open", "no room for an export among temporary files");
    }
    folder_ = name;
  }
  ~TemporaryFile() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;
  std::string path() const { return folder_ + "/export"; }
  std::string bytes() const {
    std::ifstream file(path(), std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  }

 private:
  std::string folder_;
};

template <class Quantity>
std::optional<facts::Measured<Quantity>> measured(const sheet::Sheet& sheet,
                                                  const std::string& key) {
  // Of the rule that the sheet is by; of no rule where somebody's own pressure stands.
  const working::Figure* figure = sheet::find_figure(sheet, key, sheet.rule_id);
  if (figure == nullptr) figure = sheet::find_figure(sheet, key);
  if (figure == nullptr || !figure->is_known()) return std::nullopt;
  return facts::Measured<Quantity>{Quantity::from_si(figure->value->si), ""};
}

/// The figure of a key, whatever it is about: the least, or the greatest.
template <class Quantity>
std::optional<facts::Measured<Quantity>> extreme(const sheet::Sheet& sheet, const std::string& key,
                                                 bool greatest) {
  std::optional<double> found;
  for (const working::Section& section : sheet.sections) {
    for (const working::Figure& figure : section.figures) {
      if (figure.key != key || !figure.is_known()) continue;
      const double si = figure.value->si;
      if (!found || (greatest ? si > *found : si < *found)) found = si;
    }
  }
  if (!found) return std::nullopt;
  return facts::Measured<Quantity>{Quantity::from_si(*found), ""};
}

std::string sha256_of_rule(const std::string& id) {
  for (const assets::Asset& file : assets::rules()) {
    if (file.name == "rules/" + id + ".toml") return hex(record::sha256(file.bytes));
  }
  return {};
}

/// The pressure at which the boiler is examined: the rule's, or where it names
/// none what was agreed. Without one nobody could be cleared to walk the fire side.
facts::Measured<units::GaugePressure> examination_of(const sheet::Sheet& sheet,
                                                     const Agreed& agreed,
                                                     units::GaugePressure test) {
  const auto named = measured<units::GaugePressure>(sheet, "rules.examination_pressure");
  if (named && agreed.examination) {
    throw Refusal(409, "server.examination_named",
                  "this rule names the pressure for the examination, so none can be agreed");
  }
  if (named) return *named;
  if (!agreed.examination) {
    throw Refusal(409, "server.no_examination",
                  "this rule names no pressure for the examination; say the one that was agreed "
                  "with the inspector");
  }
  const double si = agreed.examination->value.si();
  if (si <= 0.0 || si > test.si()) {
    throw Refusal(422, "server.examination_outside",
                  "the pressure for the examination must be above zero and at most the test "
                  "pressure");
  }
  return *agreed.examination;
}

facts::SheetIssued issued(const sheet::Sheet& sheet, const Agreed& agreed,
                          const std::string& sha256) {
  facts::SheetIssued fact;
  fact.sheet_sha256 = sha256;
  fact.rule = sheet.rule_id.empty() ? "own_pressure" : sheet.rule_id;
  fact.rule_sha256 = sha256_of_rule(sheet.rule_id);
  fact.program = STEAMWORTHY_VERSION;
  const auto test = measured<units::GaugePressure>(sheet, "rules.test_pressure");
  if (!test) {
    throw Refusal(409, "server.no_test_pressure",
                  "this sheet has no test pressure, so there is nothing to issue");
  }
  fact.test_pressure = *test;
  const auto ceiling = measured<units::GaugePressure>(sheet, "rules.ceiling");
  if (!ceiling) {
    throw Refusal(409, "server.no_ceiling",
                  "the pressure that is never to be passed is not known; say "
                  "it as the ceiling");
  }
  fact.never_above = *ceiling;
  fact.examination_pressure = examination_of(sheet, agreed, test->value);
  fact.safety_valves_in_place_below = agreed.safety_valves_in_place_below;
  fact.coldest = extreme<units::Temperature>(sheet, "rules.temperature_from", true);
  fact.warmest = extreme<units::Temperature>(sheet, "rules.temperature_to", false);
  fact.hold = measured<units::Duration>(sheet, "sheet.hold_time");
  return fact;
}

/// What a file is, by how it begins; only what a browser may show as it is.
std::string type_of_bytes(std::string_view bytes) {
  const auto begins = [&](std::string_view with) { return bytes.substr(0, with.size()) == with; };
  if (begins("\xff\xd8\xff")) return "image/jpeg";
  if (begins("\x89PNG\r\n\x1a\n")) return "image/png";
  if (begins("%PDF-")) return "application/pdf";
  return "application/octet-stream";
}

/// The front of the boiler on one page, its parts, closures and mountings tappable.
std::string screen_drawing(const report::Context& context) {
  const boiler::Drawing view = boiler::drawing(context.boiler, boiler::View::Front);
  constexpr double side_mm = 400.0;
  constexpr double edge_mm = 30.0;
  const report::Scale scale =
      report::scale_to_fit(view.width(), view.height(), side_mm, side_mm, context.us());
  paper::Page page;
  page.width = scale.millimetres(view.width()) + 2 * edge_mm;
  page.height = scale.millimetres(view.height()) + 2 * edge_mm;
  report::ViewOptions options;
  options.tappable = true;
  report::draw_view(context, page, view, scale, {edge_mm, page.height - edge_mm},
                    {0.0, 0.0, page.width, page.height}, options);
  return paper::svg(page, context.boiler.name);
}

/// The facts of a closing, for papers that are filled from them.
service::ClosingSource source_of(const House& house, const record::Uuid& closing) {
  return {house.store_path, {}, text(closing)};
}

Response file_answer(std::string bytes, const std::string& type, const std::string& name) {
  Response response = answer(std::move(bytes), type);
  response.headers.emplace_back("Content-Disposition",
                                fmt::format("inline; filename=\"{}\"", name));
  return response;
}

}  // namespace

Outcome drawing(House& house, const Call& call) {
  const record::Uuid closing = call.closing();
  const KnownBoiler known = house.closings.boiler_of(closing);
  const words::Style words_style = call.style();
  service::PaperStyle style;
  style.system = words_style.print.system;
  Response response;
  response.type = "image/svg+xml";
  response.body = house.closings.drawing(closing, words_style, [&](const service::Ledger& ledger) {
    const report::Filled filled(ledger.fold(), text(closing));
    report::Context context =
        service::paper_context(*known.boiler, {{known.name, known.bytes}}, style);
    context.filled = &filled;
    return screen_drawing(context);
  });
  return response;
}

Outcome paper(House& house, const Call& call) {
  const KnownBoiler known = house.closings.boiler_of(call.closing());
  std::string kind = call.part("kind");
  constexpr std::string_view end = ".pdf";
  if (kind.size() <= end.size() || kind.substr(kind.size() - end.size()) != end) {
    throw Refusal(404, "server.no_paper", "papers end in .pdf");
  }
  kind.resize(kind.size() - end.size());
  const service::Said said = said_in_query(call);
  const paper::Document document = service::make_paper(
      kind, {known.name, known.bytes}, service::request_of(said), service::text_of(said),
      paper_style(call), source_of(house, call.closing()));
  return file_answer(service::files_of(document, service::Format::Pdf).front(), "application/pdf",
                     kind + ".pdf");
}

Outcome record_paper(House& house, const Call& call) {
  const KnownBoiler known = house.closings.boiler_of(call.closing());
  service::TestLog log;
  std::optional<facts::TraceAdded> logger;
  house.closings.read([&](const service::ClosingBook& book) {
    const service::Ledger& ledger = book.ledger(scope_of(call.closing()));
    log = service::entered_log(ledger);
    logger = service::logger_log(ledger);
  });
  const auto hash = logger ? record::from_hex<record::Hash>(logger->trace_sha256) : std::nullopt;
  auto bytes = hash ? house.log.blob(*hash) : std::nullopt;
  if (bytes) {
    log = service::by_logger(std::move(log), *logger, std::move(*bytes));
  } else if (log.readings < 2) {
    throw Refusal(409, "server.no_trace",
                  "no pressure log was taken in and there are not two readings of a gauge yet; the "
                  "record is of one or the other");
  }
  const std::string name = bytes ? hex(*hash).substr(0, 8) + ".csv" : "readings.csv";
  log.read(name);
  const service::Said said = said_in_query(call);
  const paper::Document document =
      service::make_record({known.name, known.bytes}, {name, log.csv}, log.overrules,
                           {log.test, {}}, {}, service::request_of(said), service::text_of(said),
                           paper_style(call), source_of(house, call.closing()));
  return file_answer(service::files_of(document, service::Format::Pdf).front(), "application/pdf",
                     "record.pdf");
}

Outcome export_closing(House& house, const Call& call) {
  const record::Scope scope = scope_of(call.closing());
  house.closings.newest(scope.id);
  const TemporaryFile file;
  // It countersigns first, which stores: the writer's work.
  house.writer.run([&] {
    store::export_log(house.log, file.path(), scope, call.now_ms);
    house.closings.caught_up();
  });
  Response response = answer(file.bytes(), std::string("application/octet-stream"));
  response.headers.emplace_back(
      "Content-Disposition", fmt::format("attachment; filename=\"{}.swexport\"", text(scope.id)));
  return response;
}

Outcome sheet(House& house, const Call& call) {
  const KnownBoiler known = house.closings.boiler_of(call.closing());
  const sheet::Sheet made = sheet::make_sheet(*known.boiler, service::shipped_rules(),
                                              service::request_of(said_in_query(call)));
  return answer(sheet_json(made, call.style()));
}

Outcome issue_sheet(House& house, const Call& call) {
  const record::Scope scope = scope_of(call.closing());
  const KnownBoiler known = house.closings.boiler_of(scope.id);
  const words::Style style = call.style();
  const service::Said said = said_in_form(call.request.body);
  const Agreed agreed = agreed_of(said);
  const sheet::Sheet made =
      sheet::make_sheet(*known.boiler, service::shipped_rules(), service::request_of(said));
  if (made.is_refused()) {
    throw Refusal(
        409, "server.sheet_refused",
        "this test must not be made as it stands: " + sentences(made.stops, style).front());
  }
  const std::string bytes = wire::sheet_json(made, true);
  const facts::SheetIssued fact = issued(made, agreed, hex(record::sha256(bytes)));
  std::int64_t intake_no = 0;
  house.writer.run([&] {
    house.log.add_blob(bytes);
    house.closings.write([&](service::ClosingBook& book) {
      intake_no = service::append(house.log, book,
                                  {service::draft_of(scope, call.caller.person, fact, call.now_ms,
                                                     store::utc_offset_min(call.now_ms))},
                                  call.now_ms)
                      .front()
                      .intake_no;
    });
  });
  return answer(JsonObject()
                    .put("intake_no", intake_no)
                    .put("sheet_sha256", fact.sheet_sha256)
                    .raw("sheet", sheet_json(made, style))
                    .text(),
                201);
}

Outcome add_blob(House& house, const Call& call) {
  house.closings.newest(call.closing());
  const std::string& bytes = call.request.body;
  std::string_view type = call.request.header("content-type");
  type = type.substr(0, type.find(';'));
  if (type_of_bytes(bytes) != type) {
    throw Refusal(415, "server.wrong_type", "what was sent is not of the type that it says");
  }
  const record::Hash hash = house.log.add_blob(bytes);
  return answer(
      JsonObject().put("sha256", hex(hash)).put("bytes", std::uint64_t{bytes.size()}).text(), 201);
}

Outcome blob(House& house, const Call& call) {
  const auto hash = record::from_hex<record::Hash>(call.part("sha256"));
  auto bytes = hash ? house.log.blob(*hash) : std::nullopt;
  if (!bytes) throw Refusal(404, "server.no_blob", "there is no such file here");
  const std::string type = type_of_bytes(*bytes);
  Response response = answer(std::move(*bytes), type);
  response.headers.emplace_back("Cache-Control", "private, max-age=31536000, immutable");
  response.headers.emplace_back("Content-Disposition",
                                type == "application/octet-stream" ? "attachment" : "inline");
  return response;
}

}  // namespace steamworthy::server
