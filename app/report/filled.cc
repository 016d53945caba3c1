#include "report/filled.h"

#include <limits>
#include <optional>

#include "facts/moment.h"
#include "report/body_texts.h"

namespace steamworthy::report {
namespace {

/// The first text of a body: the tag that it is about.
std::string tag_of(const facts::Body& body) {
  std::optional<std::string> found;
  for_each_text(body, [&](std::string_view, const std::string& value) {
    if (!found) found = value;
  });
  return found.value_or("");
}

/// Of a device in a store, whose name is 32 digits, the first eight tell it from others.
std::string short_device(const std::string& device) {
  constexpr std::size_t long_name = 32, short_name = 8;
  return device.size() == long_name ? device.substr(0, short_name) : device;
}

}  // namespace

Filled::Filled(const closing::Fold& fold, std::string closing, std::vector<FeedHead> heads)
    : fold_(fold), closing_(std::move(closing)), heads_(std::move(heads)) {
  std::int64_t latest = std::numeric_limits<std::int64_t>::min();
  for (const facts::Fact* fact : fold.in_order()) {
    if (fact->recorded_at_ms >= latest) {
      latest = fact->recorded_at_ms;
      utc_offset_min_ = fact->utc_offset_min;
    }
    if (fold.is_withdrawn(*fact)) continue;
    facts_.push_back(fact);
    about_[{fact->body.index(), tag_of(fact->body)}].push_back(fact);
  }
}

const std::vector<const facts::Fact*>& Filled::about(std::size_t kind, std::string_view tag) const {
  static const std::vector<const facts::Fact*> none;
  const auto found = about_.find({kind, std::string(tag)});
  return found == about_.end() ? none : found->second;
}

std::string Filled::now() const { return facts::date_and_time(now_ms(), utc_offset_min_); }

std::string when(const facts::Fact& fact) {
  return facts::date_and_time(fact.happened_at_ms, fact.utc_offset_min);
}

std::string who_when(const facts::Fact* fact) {
  return fact == nullptr ? "" : fact->person + "\n" + when(*fact);
}

std::string entry_name(const facts::Fact& fact) {
  return short_device(fact.device) + "/" + std::to_string(fact.device_seq);
}

std::string entry_name(const FeedHead& head) {
  return short_device(head.device) + "/" + std::to_string(head.device_seq);
}

}  // namespace steamworthy::report
