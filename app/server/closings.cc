#include "server/closings.h"

#include <fmt/format.h>

#include "base/error.h"
#include "closing/stage.h"
#include "record/sha256.h"
#include "service/closing_service.h"
#include "service/sheet_service.h"
#include "wire/closing_json.h"
#include "wire/json_text.h"

namespace steamworthy::server {
namespace {

constexpr std::int64_t view_ms = 1000;

/// Line ends between the members of JSON; within texts they are escaped.
std::string on_one_line(std::string json) {
  std::erase(json, '\n');
  return json;
}

std::string news_json(const service::Ledger& ledger, const words::Style& style) {
  return wire::JsonObject()
      .put("closing", ledger.closing())
      .put("intake_no", ledger.intake_no())
      .put("stage", closing::token(closing::stage(ledger.state(), ledger.terms())))
      .raw("alarms", on_one_line(wire::alarms_json(ledger.state(), style)))
      .text();
}

words::Style us() {
  words::Style style;
  style.print.system = units::System::Us;
  return style;
}

}  // namespace

Closings::Closings(store::FactLog& log, Hub& hub, store::Surroundings& world)
    : log_(log),
      hub_(hub),
      world_(world),
      book_(log.plant(), [this](const std::string& sha256) { return described(sha256); }) {}

void Closings::add_boiler(const std::string& name, const std::string& bytes) {
  KnownBoiler known;
  known.name = name;
  known.bytes = bytes;
  known.boiler = std::make_shared<const boiler::Boiler>(service::read_description(bytes, name));
  known.sha256 = hex(log_.add_blob(bytes));
  const std::lock_guard lock(mutex_);
  descriptions_[known.sha256] = known;
  boilers_[known.boiler->tag] = std::move(known);
}

std::vector<std::pair<std::string, KnownBoiler>> Closings::boilers() const {
  const std::lock_guard lock(mutex_);
  return {boilers_.begin(), boilers_.end()};
}

std::shared_ptr<const boiler::Boiler> Closings::described(const std::string& sha256) {
  const auto known = descriptions_.find(sha256);
  if (known != descriptions_.end()) return known->second.boiler;
  const auto hash = record::from_hex<record::Hash>(sha256);
  const auto bytes = hash ? log_.blob(*hash) : std::nullopt;
  if (!bytes) return nullptr;
  try {
    KnownBoiler read{sha256, sha256.substr(0, 8), *bytes,
                     std::make_shared<const boiler::Boiler>(
                         service::read_description(*bytes, sha256.substr(0, 8)))};
    return descriptions_.emplace(sha256, std::move(read)).first->second.boiler;
  } catch (const BadInput&) {
    return nullptr;  // a blob that is no description: the closing is shown as
                     // not described
  }
}

KnownBoiler Closings::boiler_of(const record::Uuid& closing) const {
  const std::lock_guard lock(mutex_);
  const auto known = descriptions_.find(book_.ledger(scope_of(closing)).state().description_sha256);
  if (known == descriptions_.end()) {
    throw NotFound("server.no_boiler", "the description of this closing's boiler is not here");
  }
  return known->second;
}

std::vector<store::Received> Closings::take_in(const std::vector<record::SealedFact>& facts) {
  std::vector<store::Received> received = log_.receive(facts);
  caught_up();
  return received;
}

void Closings::caught_up() {
  const std::lock_guard lock(mutex_);
  service::raise_alarms(log_, book_, world_.now_ms());
  tell();
}

void Closings::write(const std::function<void(service::ClosingBook&)>& work) {
  const std::lock_guard lock(mutex_);
  work(book_);
  service::raise_alarms(log_, book_, world_.now_ms());
  tell();
}

void Closings::tell() {
  {
    const std::lock_guard lock(plant_mutex_);
    plant_ = book_.plant_now();
  }
  for (const record::Scope& scope : book_.closings()) {
    const service::Ledger& ledger = book_.ledger(scope);
    std::int64_t& told = told_[scope.id];
    if (ledger.intake_no() == told) continue;
    told = ledger.intake_no();
    hub_.publish(scope.id, {told, news_json(ledger, {}), news_json(ledger, us())});
  }
}

std::shared_ptr<const service::Plant> Closings::plant() const {
  const std::lock_guard lock(plant_mutex_);
  return plant_;
}

void Closings::read(const std::function<void(const service::ClosingBook&)>& read) const {
  const std::lock_guard lock(mutex_);
  read(book_);
}

std::shared_ptr<const std::string> Closings::view(const record::Uuid& closing,
                                                  const words::Style& style) const {
  const std::int64_t now = world_.now_ms();
  const std::lock_guard lock(mutex_);
  const service::Ledger& ledger = book_.ledger(scope_of(closing));
  Shown& shown = shown_[{closing, style.print.system == units::System::Us}];
  const bool is_new = shown.json && shown.intake_no == ledger.intake_no() &&
                      shown.plant_no == book_.intake_no() && now - shown.at_ms < view_ms;
  if (!is_new) {
    shown = {ledger.intake_no(), book_.intake_no(), now,
             std::make_shared<const std::string>(wire::closing_json(ledger.view(now), style))};
  }
  return shown.json;
}

std::shared_ptr<const std::string> Closings::drawing(
    const record::Uuid& closing, const words::Style& style,
    const std::function<std::string(const service::Ledger&)>& draw) const {
  const std::lock_guard lock(mutex_);
  const service::Ledger& ledger = book_.ledger(scope_of(closing));
  Shown& drawn = drawn_[{closing, style.print.system == units::System::Us}];
  if (!drawn.json || drawn.intake_no != ledger.intake_no()) {
    drawn = {ledger.intake_no(), 0, 0, std::make_shared<const std::string>(draw(ledger))};
  }
  return drawn.json;
}

std::int64_t Closings::newest(const record::Uuid& closing) const {
  const std::lock_guard lock(mutex_);
  return book_.ledger(scope_of(closing)).intake_no();
}

std::int64_t Closings::newest() const {
  const std::lock_guard lock(mutex_);
  return book_.intake_no();
}

}  // namespace steamworthy::server
