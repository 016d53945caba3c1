#include "report/body_texts.h"

#include <variant>

namespace steamworthy::report {
namespace {

/// A visitor of fields (facts/body.h) that hears only texts.
struct Texts {
  const std::function<void(std::string_view, const std::string&)>& use;

  void text(std::string_view name, const std::string& value, const char*) { use(name, value); }
  template <class... Rest>
  void maybe(Rest&&...) {}
  template <class... Rest>
  void texts(Rest&&...) {}
  template <class... Rest>
  void flag(Rest&&...) {}
  template <class... Rest>
  void whole(Rest&&...) {}
  template <class... Rest>
  void word(Rest&&...) {}
  template <class... Rest>
  void moment(Rest&&...) {}
  template <class... Rest>
  void items(Rest&&...) {}
  template <class... Rest>
  void measure(Rest&&...) {}
  template <class... Rest>
  void maybe_measure(Rest&&...) {}
};

}  // namespace

void for_each_text(const facts::Body& body,
                   const std::function<void(std::string_view, const std::string&)>& use) {
  std::visit(
      [&](const auto& one) {
        using One = std::decay_t<decltype(one)>;
        Texts texts{use};
        if constexpr (!std::is_same_v<One, facts::Unread>) One::fields(one, texts);
      },
      body);
}

}  // namespace steamworthy::report
