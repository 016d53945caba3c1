#include "facts/table.h"

#include <algorithm>

namespace steamworthy::facts {
namespace {

/// Lists the fields of a kind; reads and writes nothing.
class Lister {
 public:
  std::vector<Field> fields;

  void text(const char* name, const std::string&, const char* means) {
    put(name, "text", true, means);
  }
  void maybe(const char* name, const std::string&, const char* means) {
    put(name, "text", false, means);
  }
  void texts(const char* name, const std::vector<std::string>&, const char* means) {
    put(name, "list of texts", true, means);
  }
  void flag(const char* name, bool, const char* means) { put(name, "yes or no", true, means); }
  void whole(const char* name, int, const char* means) { put(name, "whole number", true, means); }
  void moment(const char* name, std::int64_t, const char* means) {
    put(name, "moment", true, means);
  }
  template <class Enum>
  void word(const char* name, const Enum&, const char* means) {
    put(name, "word of " + std::string(Words<Enum>::family), true, means);
  }
  template <class Quantity>
  void measure(const char* name, const Measured<Quantity>&, units::Kind kind, const char* means) {
    measured(name, kind, true, means);
  }
  template <class Quantity>
  void maybe_measure(const char* name, const std::optional<Measured<Quantity>>&, units::Kind kind,
                     const char* means) {
    measured(name, kind, false, means);
  }
  template <class Item>
  void items(const char* name, const std::vector<Item>&, const char* means) {
    put(name, "list of objects", true, means);
    Lister inner;
    const Item item;
    Item::fields(item, inner);
    for (Field field : inner.fields) {
      field.name = std::string(name) + "." + field.name;
      fields.push_back(std::move(field));
    }
  }

 private:
  void put(std::string name, std::string type, bool needed, std::string means) {
    fields.push_back({std::move(name), std::move(type), needed, std::move(means)});
  }
  void measured(const char* name, units::Kind kind, bool needed, const char* means) {
    put(name + std::string(units::info(kind).suffix), "number", needed, means);
    put(std::string(name) + "_as_entered", "text", false, "the same as somebody entered it");
  }
};

std::vector<Row> make_table() {
  std::vector<Row> rows;
  for_each_kind([&](auto* type) {
    using T = std::remove_pointer_t<decltype(type)>;
    const T empty{};
    Lister lister;
    T::fields(empty, lister);
    rows.push_back({T::kind, std::move(lister.fields), Body(empty)});
  });
  std::sort(rows.begin(), rows.end(),
            [](const Row& a, const Row& b) { return a.kind.token < b.kind.token; });
  return rows;
}

template <class Enum>
std::pair<std::string_view, std::vector<std::string_view>> family() {
  return {Words<Enum>::family, all_words<Enum>()};
}

}  // namespace

const std::vector<Row>& table() {
  static const std::vector<Row> rows = make_table();
  return rows;
}

const Row* find_kind(std::string_view token) {
  const std::vector<Row>& rows = table();
  const auto it =
      std::lower_bound(rows.begin(), rows.end(), token,
                       [](const Row& row, std::string_view t) { return row.kind.token < t; });
  return it == rows.end() || it->kind.token != token ? nullptr : &*it;
}

Kind kind_of(const Body& body) {
  return std::visit(
      [](const auto& one) -> Kind {
        using T = std::decay_t<decltype(one)>;
        if constexpr (std::is_same_v<T, Unread>) {
          return {one.token, one.version, Undo::Never, ""};
        } else {
          return T::kind;
        }
      },
      body);
}

std::vector<std::pair<std::string_view, std::vector<std::string_view>>> families() {
  return {family<IsolatedHow>(), family<LookedWith>(), family<BallResult>(), family<Severity>(),
          family<Disposition>(), family<TouchedHow>(), family<GapVerdict>(), family<LeakKind>(),
          family<Passing>(),     family<Thing>(),      family<Post>(),       family<GaugeAnswer>(),
          family<RoleName>(),    family<StepName>(),   family<LaidUp>(),     family<Precision>()};
}

}  // namespace steamworthy::facts
