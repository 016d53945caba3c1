#include "wire/fact_draft.h"

#include <fmt/format.h>

#include "facts/table.h"
#include "units/number_text.h"
#include "wire/fact_body.h"
#include "wire/json.h"
#include "wire/object_reader.h"

namespace steamworthy::wire {
namespace {

constexpr long long last_moment = 253'402'300'799'999;

std::optional<std::int64_t> integer(ObjectReader& in, const char* key, long long least,
                                    long long greatest) {
  const Node* node = in.find(key);
  if (node == nullptr) return std::nullopt;
  if (node->type != Node::Type::Integer || node->integer < least || node->integer > greatest) {
    in.add("wire.wrong_type", key, units::quotable(node->text),
           fmt::format("a whole number from {} to {}", least, greatest), "is not in range");
    return std::nullopt;
  }
  return node->integer;
}

void read_fields(ObjectReader& in, FactDraft& draft, LogKeys log_keys) {
  in.text("closing", draft.closing);
  in.text("person", draft.person, Need::Required);
  in.text("kind", draft.kind, Need::Required);
  draft.kind_version = static_cast<int>(integer(in, "kind_version", 1, 65535).value_or(1));
  draft.happened_at_ms = integer(in, "happened_at_ms", -62'135'596'800'000, last_moment);
  draft.utc_offset_min = static_cast<int>(integer(in, "utc_offset_min", -1080, 1080).value_or(0));
  std::string precision = "minute";
  in.text("precision", precision);
  if (const auto value = facts::value_of<facts::Precision>(precision)) {
    draft.precision = *value;
  } else {
    in.add("wire.unknown_word", "precision", units::quotable(precision),
           listed(facts::all_words<facts::Precision>()), "is not a word known here");
  }
  if (log_keys == LogKeys::LeaveOut) {
    for (const char* key : {"id", "device", "device_seq", "seen", "recorded_at_ms"}) in.find(key);
  }
}

void read_line(std::string_view line, int number, const std::string& file, LogKeys log_keys,
               FactDrafts& into) {
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
  FactDraft draft;
  draft.line = number;
  read_fields(in, draft, log_keys);
  const Node* body = in.find("body");
  if (body == nullptr || body->type != Node::Type::Table) in.missing("body", "an object");
  in.refuse_unknown();
  if (!reading.problems().empty()) return place(reading.sorted());
  const std::string text =
      Json::parse(line)["body"].dump(-1, ' ', false, Json::error_handler_t::replace);
  ReadBody read = read_body(draft.kind, draft.kind_version, text, UnknownKeys::Refuse, file);
  for (Problem& problem : read.problems) {
    if (problem.field != "kind") problem.field = "body." + problem.field;
  }
  place(std::move(read.problems));
  draft.body = body_json(read.body, read.beside);
  draft.photos = read.beside.photos;
  into.drafts.push_back(std::move(draft));
}

}  // namespace

FactDrafts read_fact_drafts(std::string_view text, const std::string& file, LogKeys log_keys) {
  FactDrafts result;
  int number = 0;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    ++number;
    if (line.find_first_not_of(" \t\r") == std::string_view::npos || line.front() == '#') continue;
    read_line(line, number, file, log_keys, result);
  }
  return result;
}

}  // namespace steamworthy::wire
