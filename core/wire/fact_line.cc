#include "wire/fact_line.h"

#include <fmt/format.h>

#include "facts/table.h"
#include "units/number_text.h"
#include "wire/fact_body.h"
#include "wire/json.h"
#include "wire/object_reader.h"

namespace steamworthy::wire {
namespace {

constexpr long long last_moment = 253'402'300'799'999;

/// An integer of a line; reports what is none.
std::int64_t integer(ObjectReader& in, const char* key, long long least, long long greatest,
                     std::optional<std::int64_t> otherwise) {
  const Node* node = in.find(key);
  const std::string accepted = fmt::format("a whole number from {} to {}", least, greatest);
  if (node == nullptr) {
    if (!otherwise) in.missing(key, accepted);
    return otherwise.value_or(0);
  }
  if (node->type != Node::Type::Integer || node->integer < least || node->integer > greatest) {
    in.add("wire.wrong_type", key, units::quotable(node->text), accepted, "is not in range");
    return otherwise.value_or(0);
  }
  return node->integer;
}

void read_seen(ObjectReader& in, facts::Fact& fact) {
  const Node* node = in.find("seen");
  if (node == nullptr) return;
  bool good = node->type == Node::Type::Table;
  for (const auto& [device, head] : node->members) {
    good =
        good && head.type == Node::Type::Integer && head.integer >= 1 && head.integer <= 1'000'000;
    if (good) fact.seen.push_back({device, static_cast<int>(head.integer)});
  }
  if (!good) {
    in.add("wire.wrong_type", "seen", "", "an object of devices and numbers",
           "is not a list of heads");
  }
}

void read_envelope(ObjectReader& in, facts::Fact& fact) {
  in.text("id", fact.id);
  in.text("closing", fact.closing, Need::Required);
  in.text("device", fact.device, Need::Required);
  fact.device_seq = static_cast<int>(integer(in, "device_seq", 1, 1'000'000, std::nullopt));
  read_seen(in, fact);
  in.text("person", fact.person, Need::Required);
  fact.happened_at_ms = integer(in, "happened_at_ms", -last_moment, last_moment, std::nullopt);
  fact.recorded_at_ms =
      integer(in, "recorded_at_ms", -last_moment, last_moment, fact.happened_at_ms);
  fact.utc_offset_min = static_cast<int>(integer(in, "utc_offset_min", -1440, 1440, 0));
  std::string precision = "minute";
  in.text("precision", precision);
  if (const auto value = facts::value_of<facts::Precision>(precision)) {
    fact.precision = *value;
  } else {
    in.add("wire.unknown_word", "precision", units::quotable(precision),
           listed(facts::all_words<facts::Precision>()), "is not a word known here");
  }
}

void read_line(std::string_view line, int number, const std::string& file, ReadFacts& into) {
  const auto place = [&](std::vector<Problem> problems) {
    for (Problem& problem : problems) {
      problem.line = number;
      into.problems.push_back(std::move(problem));
    }
  };
  const Tree tree = read_json(line, file);
  if (!tree.problems.empty()) return place(tree.problems);
  Reading reading(Dialect::Json, file);
  ObjectReader in(tree.root, "", "", reading);
  facts::Fact fact;
  read_envelope(in, fact);
  std::string kind;
  in.text("kind", kind, Need::Required);
  fact.version = static_cast<int>(integer(in, "kind_version", 1, 1'000'000, 1));
  const Node* body = in.find("body");
  if (body == nullptr || body->type != Node::Type::Table) in.missing("body", "an object");
  in.refuse_unknown();
  if (!reading.problems().empty()) return place(reading.sorted());
  // The tree does not keep how the body was written; the other reader does.
  const std::string text =
      Json::parse(line)["body"].dump(-1, ' ', false, Json::error_handler_t::replace);
  ReadBody read = read_body(kind, fact.version, text, UnknownKeys::Refuse, file);
  for (Problem& problem : read.problems) {
    if (problem.field != "kind") problem.field = "body." + problem.field;
  }
  place(std::move(read.problems));
  fact.body = std::move(read.body);
  fact.beside = std::move(read.beside);
  into.facts.push_back(std::move(fact));
}

}  // namespace

ReadFacts read_fact_lines(std::string_view text, const std::string& file) {
  ReadFacts result;
  int number = 0;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    ++number;
    if (line.find_first_not_of(" \t\r") == std::string_view::npos || line.front() == '#') continue;
    read_line(line, number, file, result);
  }
  return result;
}

std::string fact_line(const facts::Fact& fact) {
  Json json = Json::object();
  if (!fact.id.empty()) json["id"] = fact.id;
  json["closing"] = fact.closing;
  json["device"] = fact.device;
  json["device_seq"] = fact.device_seq;
  if (!fact.seen.empty()) {
    Json seen = Json::object();
    for (const facts::Head& head : fact.seen) seen[head.device] = head.device_seq;
    json["seen"] = std::move(seen);
  }
  json["person"] = fact.person;
  json["kind"] = std::string(facts::kind_of(fact.body).token);
  json["kind_version"] = fact.version;
  json["happened_at_ms"] = fact.happened_at_ms;
  json["precision"] = std::string(facts::token(fact.precision));
  json["recorded_at_ms"] = fact.recorded_at_ms;
  json["utc_offset_min"] = fact.utc_offset_min;
  json["body"] = Json::parse(body_json(fact.body, fact.beside), nullptr, false);
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace steamworthy::wire
