#include <fmt/format.h>

#include <algorithm>

#include "facts/fact.h"
#include "facts/moment.h"

namespace steamworthy::facts {
namespace {

/// Puts each field of a body into a message.
class Teller {
 public:
  Teller(working::Message& message, int utc_offset_min)
      : message_(message), utc_offset_min_(utc_offset_min) {}

  void text(const char* name, const std::string& value, const char*) { put(name, value); }
  void maybe(const char* name, const std::string& value, const char*) {
    if (!value.empty()) put(name, value);
  }
  void texts(const char* name, const std::vector<std::string>& values, const char*) {
    for (std::size_t i = 0; i < values.size(); ++i) {
      put(fmt::format("{}_{}", name, i + 1), values[i]);
    }
  }
  void flag(const char* name, bool value, const char*) {
    put(name, working::Term{value ? "answer.yes" : "answer.no"});
  }
  void whole(const char* name, int value, const char*) { put(name, units::measure_count(value)); }
  void moment(const char* name, std::int64_t value, const char*) {
    put(name, date_and_time(value, utc_offset_min_));
  }
  template <class Enum>
  void word(const char* name, const Enum& value, const char*) {
    put(name, working::Term{fmt::format("{}.{}", Words<Enum>::family, token(value))});
  }
  template <class Quantity>
  void measure(const char* name, const Measured<Quantity>& value, units::Kind kind, const char*) {
    put(name, units::Measure{kind, si_of(value.value)});
  }
  template <class Quantity>
  void maybe_measure(const char* name, const std::optional<Measured<Quantity>>& value,
                     units::Kind kind, const char* means) {
    if (value) measure(name, *value, kind, means);
  }
  template <class Item>
  void items(const char* name, const std::vector<Item>& values, const char*) {
    put(name, units::measure_count(static_cast<double>(values.size())));
  }

 private:
  void put(std::string name, working::Value value) {
    message_.values.emplace_back(std::move(name), std::move(value));
  }

  working::Message& message_;
  int utc_offset_min_;
};

/// The value of that name; the body has such a field.
working::Value& value_of(working::Message& message, std::string_view name) {
  return std::find_if(message.values.begin(), message.values.end(),
                      [&](const auto& entry) { return entry.first == name; })
      ->second;
}

/// "flexible_graphite" as people read it; what somebody wrote in words of their own stays.
std::string in_words(std::string token) {
  std::replace(token.begin(), token.end(), '_', ' ');
  return token;
}

}  // namespace

working::Message tell(const Fact& fact) {
  working::Message message;
  std::visit(
      [&](const auto& body) {
        using T = std::decay_t<decltype(body)>;
        if constexpr (std::is_same_v<T, Unread>) {
          message = {"facts.cannot_read", {{"kind", body.token}, {"person", fact.person}}};
        } else {
          message.key = std::string(T::kind.token);
          Teller teller(message, fact.utc_offset_min);
          T::fields(body, teller);
          if constexpr (std::is_same_v<T, AlarmRaised>) {
            if (body.why.rfind("alarm.", 0) == 0) {
              value_of(message, "why") = working::Term{body.why + ".before"};
            }
          } else if constexpr (std::is_same_v<T, GasketFitted>) {
            value_of(message, "gasket") = in_words(body.gasket);
          }
          // Empty where a device speaks by itself.
          if (!fact.person.empty()) message.values.emplace_back("person", fact.person);
        }
      },
      fact.body);
  return message;
}

namespace {

/// Spells out each field.
class Speller {
 public:
  std::string out;

  void text(const char*, const std::string& value, const char*) { put(value); }
  void maybe(const char*, const std::string& value, const char*) { put(value); }
  void texts(const char*, const std::vector<std::string>& values, const char*) { put(values); }
  void flag(const char*, bool value, const char*) { put(value ? 1 : 0); }
  void whole(const char*, int value, const char*) { put(value); }
  void moment(const char*, std::int64_t value, const char*) { put(value); }
  template <class Enum>
  void word(const char*, const Enum& value, const char*) {
    put(std::string(token(value)));
  }
  template <class Quantity>
  void measure(const char*, const Measured<Quantity>& value, units::Kind, const char*) {
    put(fmt::format("{:.17g}", si_of(value.value)));
    put(value.as_entered);
  }
  template <class Quantity>
  void maybe_measure(const char* name, const std::optional<Measured<Quantity>>& value,
                     units::Kind kind, const char* means) {
    put(value ? 1 : 0);
    if (value) measure(name, *value, kind, means);
  }
  template <class Item>
  void items(const char*, const std::vector<Item>& values, const char*) {
    put(static_cast<std::int64_t>(values.size()));
    for (const Item& item : values) Item::fields(item, *this);
  }

  // Each with its length, so that no two lists of texts look alike.
  void put(const std::string& value) { out += fmt::format("{}:{};", value.size(), value); }
  void put(std::int64_t value) { out += fmt::format("{};", value); }
  void put(const std::vector<std::string>& values) {
    put(static_cast<std::int64_t>(values.size()));
    for (const std::string& value : values) put(value);
  }
};

}  // namespace

std::string spell(const Fact& fact) {
  Speller speller;
  for (const std::string* text : {&fact.id, &fact.closing, &fact.device, &fact.person}) {
    speller.put(*text);
  }
  for (const std::int64_t number :
       {std::int64_t{fact.device_seq}, fact.happened_at_ms, fact.recorded_at_ms,
        std::int64_t{fact.utc_offset_min}, std::int64_t{fact.version},
        static_cast<std::int64_t>(fact.precision), static_cast<std::int64_t>(fact.body.index())}) {
    speller.put(number);
  }
  for (const Head& head : fact.seen) {
    speller.put(head.device);
    speller.put(head.device_seq);
  }
  std::visit(
      [&](const auto& body) {
        using T = std::decay_t<decltype(body)>;
        if constexpr (std::is_same_v<T, Unread>) {
          for (const std::string* text : {&body.token, &body.json, &body.why}) speller.put(*text);
          speller.put(body.version);
        } else {
          T::fields(body, speller);
        }
      },
      fact.body);
  speller.put(fact.beside.note);
  speller.put(fact.beside.photos);
  return speller.out;
}

}  // namespace steamworthy::facts
