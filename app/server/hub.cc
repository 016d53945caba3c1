#include "server/hub.h"

#include <fmt/format.h>

namespace steamworthy::server {

Hub::Following::~Following() {
  if (hub_ == nullptr) return;
  const std::lock_guard lock(hub_->mutex_);
  const auto [begin, end] = hub_->following_.equal_range(closing_);
  for (auto at = begin; at != end; ++at) {
    if (at->second == this) {
      hub_->following_.erase(at);
      return;
    }
  }
}

std::optional<std::string> Hub::Following::take() {
  const std::lock_guard lock(hub_->mutex_);
  if (resync_) {
    resync_ = false;
    return fmt::format("id: {}\nevent: resync\ndata: {{\"intake_no\":{}}}\n\n", told_, told_);
  }
  const auto news = hub_->news_.find(closing_);
  if (news == hub_->news_.end() || news->second.intake_no <= told_) return std::nullopt;
  told_ = news->second.intake_no;
  return fmt::format("id: {}\nevent: facts\ndata: {}\n\n", told_,
                     us_units_ ? news->second.us : news->second.si);
}

std::unique_ptr<Hub::Following> Hub::follow(const record::Uuid& closing,
                                            std::optional<std::int64_t> after, std::int64_t newest,
                                            bool us_units, std::function<void()> wake) {
  auto following = std::make_unique<Following>();
  following->hub_ = this;
  following->closing_ = closing;
  following->us_units_ = us_units;
  following->wake_ = std::move(wake);
  following->told_ = after.value_or(newest);
  const std::lock_guard lock(mutex_);
  // A number that is not here yet was of another store; one that is far behind is not worth
  // catching up with; and what was not published since the program began is not known here.
  const auto news = news_.find(closing);
  const bool is_told = news != news_.end() && news->second.intake_no >= newest;
  if (following->told_ > newest || newest - following->told_ > too_old ||
      (following->told_ < newest && !is_told)) {
    following->resync_ = true;
    following->told_ = newest;
  }
  following_.emplace(closing, following.get());
  return following;
}

void Hub::publish(const record::Uuid& closing, News news) {
  const std::lock_guard lock(mutex_);
  News& known = news_[closing];
  if (news.intake_no < known.intake_no) return;
  known = std::move(news);
  const auto [begin, end] = following_.equal_range(closing);
  for (auto at = begin; at != end; ++at) at->second->wake_();
}

int Hub::followers() const {
  const std::lock_guard lock(mutex_);
  return static_cast<int>(following_.size());
}

}  // namespace steamworthy::server
