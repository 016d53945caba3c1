// Making a fact from what somebody typed and tapped.
#include <algorithm>

#include "facts/table.h"
#include "record/envelope.h"
#include "record/sha256.h"
#include "units/parse.h"
#include "wire/fact_body.h"
#include "wire/tablet.h"
#include "wire/tablet_request.h"

namespace steamworthy::wire {
namespace {

/// Walks the fields of a kind and puts numbers with their suffix where somebody typed a text.
class TypedReader {
 public:
  TypedReader(Json& fields, units::System system, std::vector<Problem>& problems)
      : fields_(fields), system_(system), problems_(problems) {}

  void text(const char*, const std::string&, const char*) {}
  void maybe(const char*, const std::string&, const char*) {}
  void texts(const char*, const std::vector<std::string>&, const char*) {}
  void flag(const char*, bool, const char*) {}
  void whole(const char*, int, const char*) {}
  void moment(const char*, std::int64_t, const char*) {}
  template <class Enum>
  void word(const char*, const Enum&, const char*) {}
  template <class Quantity>
  void measure(const char* name, const Quantity&, units::Kind kind, const char*) {
    read(name, kind);
  }
  template <class Quantity>
  void maybe_measure(const char* name, const Quantity&, units::Kind kind, const char*) {
    read(name, kind);
  }
  template <class Item>
  void items(const char* name, const std::vector<Item>&, const char*) {
    const auto at = fields_.find(name);
    if (at == fields_.end() || !at->is_array()) return;
    for (Json& one : *at) {
      if (!one.is_object()) continue;
      TypedReader inner(one, system_, problems_);
      const Item empty;
      Item::fields(empty, inner);
    }
  }

 private:
  void read(const std::string& name, units::Kind kind) {
    const auto at = fields_.find(name);
    if (at == fields_.end() || !at->is_string()) return;
    const std::string typed = at->get<std::string>();
    const std::string_view unit = units::unit(kind, system_);
    const units::Parsed<units::Measure> parsed = units::parse_measure(kind, typed, {unit});
    if (!parsed) {
      problems_.push_back(parsed.problem);
      problems_.back().field = name;
      return;
    }
    fields_.erase(at);
    fields_[name + std::string(units::info(kind).suffix)] = units::at_border(*parsed.value);
    fields_[name + "_as_entered"] = parsed.unit_assumed ? typed + " " + std::string(unit) : typed;
  }

  Json& fields_;
  units::System system_;
  std::vector<Problem>& problems_;
};

std::string make_body(TabletRequest& request, const std::string& kind, int& version) {
  Json fields = Json::object();
  if (const auto at = request.json().find("fields"); at != request.json().end()) fields = *at;
  if (!fields.is_object()) {
    request.refuse("fields", fields.dump(), "a JSON object");
    return {};
  }
  if (const facts::Row* row = facts::find_kind(kind)) {
    version = row->kind.version;
    std::vector<Problem> problems;
    TypedReader typed(fields, request.system(), problems);
    std::visit(
        [&](const auto& body) {
          using T = std::decay_t<decltype(body)>;
          if constexpr (!std::is_same_v<T, facts::Unread>) T::fields(body, typed);
        },
        row->empty);
    for (Problem& problem : problems) request.add(std::move(problem));
    if (!problems.empty()) return {};
  }
  const ReadBody read = read_body(kind, version, text(fields), UnknownKeys::Refuse);
  for (const Problem& problem : read.problems) request.add(problem);
  return read.problems.empty() ? body_json(read.body, read.beside) : std::string();
}

record::Uuid uuid_of(TabletRequest& request, const char* key, const std::string& written) {
  const auto uuid = record::read_uuid(written);
  if (!uuid) request.refuse(key, written, "a UUID");
  return uuid.value_or(record::Uuid{});
}

record::Scope scope_of(TabletRequest& request) {
  const std::string kind = request.text("scope");
  if (kind != "closing" && kind != "plant") {
    request.refuse("scope", kind, "\"closing\" or \"plant\"");
  }
  return {kind == "plant" ? record::ScopeKind::Plant : record::ScopeKind::Closing,
          uuid_of(request, "scope_id", request.text("scope_id"))};
}

record::Uuid make_id(TabletRequest& request, std::int64_t now_ms) {
  if (const std::string id = request.maybe("id"); !id.empty()) return uuid_of(request, "id", id);
  const std::string random = request.text("random");
  record::RandomForUuid bytes{};
  if (!record::read_hex(random, bytes.data(), bytes.size())) {
    request.refuse("random", random, "20 hexadecimal digits");
  }
  const std::string previous = request.maybe("previous_id");
  if (previous.empty()) return record::uuid7(now_ms, bytes);
  return record::uuid7_after(uuid_of(request, "previous_id", previous), now_ms, bytes);
}

void read_heads(TabletRequest& request, record::Envelope& envelope) {
  for (const Json& one : request.list("seen")) {
    TabletRequest head(text(one));
    envelope.seen.push_back({head.hex<record::DeviceId>("device"),
                             static_cast<std::uint64_t>(head.whole("device_seq")),
                             head.hex<record::Hash>("hash")});
    head.settle();
  }
  std::sort(envelope.seen.begin(), envelope.seen.end(),
            [](const record::Head& a, const record::Head& b) { return a.device < b.device; });
  for (const Json& one : request.list("blobs")) {
    envelope.blobs.push_back(request.hex_of<record::Hash>(
        "blobs", one.is_string() ? one.get<std::string>() : one.dump()));
  }
  std::sort(envelope.blobs.begin(), envelope.blobs.end());
}

}  // namespace

std::string make_fact(std::string_view json) {
  TabletRequest request(json);
  record::Envelope envelope;
  envelope.scope = scope_of(request);
  envelope.device = request.hex<record::DeviceId>("device");
  envelope.device_seq = static_cast<std::uint64_t>(request.whole("device_seq"));
  envelope.prev_hash = request.hex<record::Hash>("prev_hash");
  read_heads(request, envelope);
  envelope.person = request.text("person");
  envelope.kind = request.text("kind");
  envelope.happened_at_ms = request.whole("happened_at_ms");
  envelope.happened_precision_ms =
      static_cast<std::uint32_t>(request.whole("happened_precision_ms"));
  envelope.recorded_at_ms = request.whole("recorded_at_ms");
  envelope.utc_offset_min = static_cast<std::int16_t>(request.whole("utc_offset_min"));
  envelope.id = make_id(request, envelope.recorded_at_ms);
  int version = 1;
  const std::string body = make_body(request, envelope.kind, version);
  envelope.kind_version = static_cast<std::uint16_t>(version);
  request.settle();
  const std::string bytes = record::encode(envelope, body);
  return text(Json{{"id", record::text(envelope.id)},
                   {"bytes", record::hex(bytes)},
                   {"header_size", bytes.size() - body.size() - 4},
                   {"hash", record::hex(record::sha256(bytes))},
                   {"body", body}});
}

}  // namespace steamworthy::wire
