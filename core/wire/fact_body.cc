#include "wire/fact_body.h"

#include <fmt/format.h>

#include "base/nearest.h"
#include "facts/table.h"
#include "units/number_text.h"
#include "wire/object_reader.h"
#include "wire/object_writer.h"

namespace steamworthy::wire {
namespace {

using facts::Measured;

constexpr long long last_moment = 253'402'300'799'999;  // the end of the year 9999

class BodyReader {
 public:
  explicit BodyReader(ObjectReader& in) : in_(in) {}

  void text(const char* name, std::string& into, const char*) {
    in_.text(name, into, Need::Required);
  }
  void maybe(const char* name, std::string& into, const char*) { in_.text(name, into); }
  void texts(const char* name, std::vector<std::string>& into, const char*) {
    if (!in_.has(name)) in_.missing(name, "a list of texts");
    in_.texts(name, into);
  }
  void flag(const char* name, bool& into, const char*) { in_.flag(name, into, Need::Required); }
  void whole(const char* name, int& into, const char*) {
    in_.whole(name, into, Need::Required);
    if (in_.has(name) && into != boiler::unread && into < 0) {
      in_.add("wire.below_zero", name, fmt::format("{}", into), "0 or more", "is below zero");
    }
  }
  void moment(const char* name, std::int64_t& into, const char*) {
    const Node* node = in_.find(name);
    if (node == nullptr) {
      in_.missing(name, "milliseconds since 1970, UTC");
    } else if (node->type != Node::Type::Integer || node->integer < -last_moment ||
               node->integer > last_moment) {
      in_.add("wire.wrong_type", name, units::quotable(node->text), "milliseconds since 1970, UTC",
              "is no moment");
    } else {
      into = node->integer;
    }
  }
  template <class Enum>
  void word(const char* name, Enum& into, const char*) {
    const std::vector<std::string_view> known = facts::all_words<Enum>();
    if (!in_.has(name)) {
      in_.note(name);
      in_.missing(name, listed(known));
      return;
    }
    std::string written;
    in_.text(name, written, Need::Required);
    if (written.empty()) return;
    if (const auto value = facts::value_of<Enum>(written)) {
      into = *value;
      return;
    }
    const std::string_view near = nearest(written, known);
    in_.add("wire.unknown_word", name, units::quotable(written), listed(known),
            near.empty() ? "is not a word known here"
                         : fmt::format("is not a word known here; \"{}\" may be meant", near));
  }
  template <class Quantity>
  void measure(const char* name, Measured<Quantity>& into, units::Kind kind, const char*) {
    double si = 0.0;
    in_.number(name, si, kind, Need::Required);
    facts::put_si(into.value, si);
    in_.text((std::string(name) + "_as_entered").c_str(), into.as_entered);
  }
  template <class Quantity>
  void maybe_measure(const char* name, std::optional<Measured<Quantity>>& into, units::Kind kind,
                     const char* means) {
    if (in_.has_measure(name, kind)) {
      measure(name, into.emplace(), kind, means);
    } else {
      in_.note_measure(name, kind);
      std::string text;
      in_.text((std::string(name) + "_as_entered").c_str(), text);
    }
  }
  template <class Item>
  void items(const char* name, std::vector<Item>& into, const char*) {
    if (!in_.has(name)) in_.missing(name, "a list of objects");
    for (ObjectReader& table : in_.tables(name, "")) {
      BodyReader inner(table);
      Item::fields(into.emplace_back(), inner);
      if (refuses_unknown) table.refuse_unknown();
    }
  }

  bool refuses_unknown = false;

 private:
  ObjectReader& in_;
};

class BodyWriter {
 public:
  explicit BodyWriter(Json& json) : json_(json), out_(json) {}

  void text(const char* name, const std::string& value, const char*) { json_[name] = value; }
  void maybe(const char* name, const std::string& value, const char*) { out_.text(name, value); }
  void texts(const char* name, const std::vector<std::string>& values, const char*) {
    json_[name] = values;
  }
  void flag(const char* name, bool value, const char*) { json_[name] = value; }
  void whole(const char* name, int value, const char*) { json_[name] = value; }
  void moment(const char* name, std::int64_t value, const char*) { json_[name] = value; }
  template <class Enum>
  void word(const char* name, const Enum& value, const char*) {
    json_[name] = std::string(facts::token(value));
  }
  template <class Quantity>
  void measure(const char* name, const Measured<Quantity>& value, units::Kind kind, const char*) {
    out_.number(name, facts::si_of(value.value), kind);
    out_.text((std::string(name) + "_as_entered").c_str(), value.as_entered);
  }
  template <class Quantity>
  void maybe_measure(const char* name, const std::optional<Measured<Quantity>>& value,
                     units::Kind kind, const char* means) {
    if (value) measure(name, *value, kind, means);
  }
  template <class Item>
  void items(const char* name, const std::vector<Item>& values, const char*) {
    Json list = Json::array();
    for (const Item& item : values) {
      Json one = Json::object();
      BodyWriter writer(one);
      Item::fields(item, writer);
      list.push_back(std::move(one));
    }
    json_[name] = std::move(list);
  }

 private:
  Json& json_;
  ObjectWriter out_;
};

void read_beside(ObjectReader& in, facts::Beside& beside) {
  in.text("note", beside.note);
  in.texts("photos", beside.photos);
}

facts::Unread unread(std::string_view kind, int version, std::string_view json, const char* why) {
  return {std::string(kind), version, std::string(json), why};
}

}  // namespace

ReadBody read_body(std::string_view kind, int version, std::string_view json, UnknownKeys unknown,
                   const std::string& file) {
  ReadBody result;
  const facts::Row* row = facts::find_kind(kind);
  const auto refuse = [&](const char* code, std::string found, std::string accepted,
                          std::string message) {
    result.problems = {
        {code, file, 0, "kind", std::move(found), std::move(accepted), std::move(message)}};
    result.body = unread(kind, version, json, code);
    return result;
  };
  if (row == nullptr) {
    std::vector<std::string_view> known;
    for (const facts::Row& one : facts::table()) known.push_back(one.kind.token);
    const std::string_view near = nearest(kind, known);
    return refuse(
        "facts.unknown_kind", units::quotable(std::string(kind)), "a kind of docs/formats/facts.md",
        near.empty() ? "is not a kind known here"
                     : fmt::format("is not a kind known here; \"{}\" may be meant", near));
  }
  if (version < 1) {
    return refuse("facts.bad_version", fmt::format("{}", version), "1 or more",
                  "is not a version of a kind");
  }
  Tree tree = read_json(json, file);
  result.problems = std::move(tree.problems);
  if (result.problems.empty()) {
    Reading reading(Dialect::Json, file);
    ObjectReader in(tree.root, "", "", reading);
    BodyReader reader(in);
    // A body of a later version may have grown.
    const bool refuses = unknown == UnknownKeys::Refuse && version <= row->kind.version;
    reader.refuses_unknown = refuses;
    result.body = row->empty;
    std::visit(
        [&](auto& body) {
          using T = std::decay_t<decltype(body)>;
          if constexpr (!std::is_same_v<T, facts::Unread>) T::fields(body, reader);
        },
        result.body);
    read_beside(in, result.beside);
    if (refuses) in.refuse_unknown();
    result.problems = reading.sorted();
  }
  if (!result.problems.empty()) {
    result.body = unread(kind, version, json, "facts.bad_body");
    result.beside = {};
  }
  return result;
}

std::string body_json(const facts::Body& body, const facts::Beside& beside) {
  if (const auto* verbatim = std::get_if<facts::Unread>(&body)) return verbatim->json;
  Json json = Json::object();
  BodyWriter writer(json);
  std::visit(
      [&](const auto& one) {
        using T = std::decay_t<decltype(one)>;
        if constexpr (!std::is_same_v<T, facts::Unread>) T::fields(one, writer);
      },
      body);
  ObjectWriter out(json);
  out.text("note", beside.note);
  out.texts("photos", beside.photos);
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace steamworthy::wire
