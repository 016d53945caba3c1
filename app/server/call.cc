#include "server/call.h"

#include <fmt/format.h>

#include <charconv>

#include "units/parse.h"
#include "wire/node.h"

namespace steamworthy::server {
namespace {

[[noreturn]] void bad_query(std::string_view name, const std::string& found,
                            const std::string& accepted) {
  throw Refusal(400, "server.bad_query", fmt::format("{}: \"{}\" is not {}", name, found, accepted),
                {{"server.bad_query", "", 0, std::string(name), found, accepted,
                  "is not what is accepted here"}});
}

}  // namespace

std::optional<std::string> Call::asked(std::string_view name) const {
  const auto item = query.find(name);
  if (item == query.end()) return std::nullopt;
  return item->second;
}

std::int64_t Call::whole(std::string_view name, std::int64_t otherwise, std::int64_t least,
                         std::int64_t greatest) const {
  const auto text = asked(name);
  if (!text) return otherwise;
  std::int64_t value = 0;
  const char* end = text->data() + text->size();
  const auto read = std::from_chars(text->data(), end, value);
  if (read.ec != std::errc() || read.ptr != end || value < least || value > greatest) {
    bad_query(name, *text, fmt::format("a whole number from {} to {}", least, greatest));
  }
  return value;
}

std::optional<double> Call::number(std::string_view name) const {
  const auto text = asked(name);
  if (!text) return std::nullopt;
  const auto read = units::parse_measure(units::Kind::Count, *text);
  if (!read) bad_query(name, *text, "a number");
  return read.value->si;
}

bool Call::flag(std::string_view name) const {
  const auto text = asked(name);
  if (!text || *text == "false") return false;
  if (*text != "true") bad_query(name, *text, "true or false");
  return true;
}

words::Style Call::style() const {
  words::Style style;
  const std::string system = asked("units").value_or("si");
  if (system != "si" && system != "us") bad_query("units", system, "si or us");
  if (system == "us") style.print.system = units::System::Us;
  const std::string language = asked("language").value_or("en");
  if (language != "en") bad_query("language", language, "en");
  return style;
}

record::Uuid Call::closing() const {
  const auto id = record::read_uuid(part("closing"));
  if (!id || !record::is_uuid7(*id)) {
    throw Refusal(404, "server.no_closing", "there is no closing of this id");
  }
  return *id;
}

void read_form(const std::string& body, const std::function<void(wire::ObjectReader&)>& read) {
  const wire::Tree tree = wire::read_json(body, "");
  std::vector<Problem> problems = tree.problems;
  if (problems.empty()) {
    wire::Reading reading(wire::Dialect::Json, "");
    wire::ObjectReader form(tree.root, "", "form", reading);
    read(form);
    form.refuse_unknown();
    problems = reading.sorted();
  }
  if (problems.empty()) return;
  throw Refusal(400, problems.front().code, sentence(problems.front()), problems);
}

}  // namespace steamworthy::server
