#include "service/demo_plant.h"

#include <algorithm>

#include "base/error.h"
#include "service/log_service.h"
#include "store/local_time.h"
#include "store/secret.h"
#include "wire/fact_body.h"

namespace steamworthy::service {
namespace {

constexpr std::int64_t minute_ms = 60'000;
constexpr std::int64_t day_ms = 24 * 60 * minute_ms;
constexpr std::int64_t year_ms = 365 * day_ms;

assets::Asset demo_file(std::string_view name) {
  const auto files = assets::demo();
  const auto found = std::find_if(files.begin(), files.end(),
                                  [&](const assets::Asset& file) { return file.name == name; });
  if (found == files.end()) throw NotFound("service.no_demo", "a file of the demo is missing");
  return *found;
}

/// The lines of a script, moved by whole minutes so that the last of them happened then.
wire::FactDrafts lines_until(const assets::Asset& script, std::int64_t last_ms) {
  wire::FactDrafts read =
      wire::read_fact_drafts(script.bytes, std::string(script.name), wire::LogKeys::LeaveOut);
  std::int64_t newest = 0;
  for (const wire::FactDraft& line : read.drafts) {
    newest = std::max(newest, line.happened_at_ms.value_or(0));
  }
  const std::int64_t moved = (last_ms - newest) / minute_ms * minute_ms;
  for (wire::FactDraft& line : read.drafts) {
    if (line.happened_at_ms) *line.happened_at_ms += moved;
    line.utc_offset_min = store::utc_offset_min(line.happened_at_ms.value_or(last_ms));
  }
  return read;
}

void give_pins(const std::vector<wire::FactDraft>& lines, store::AccountBook& accounts,
               std::int64_t now_ms) {
  std::string hash;  // of one PIN, so made once
  for (const wire::FactDraft& line : lines) {
    const wire::ReadBody read =
        wire::read_body(line.kind, line.kind_version, line.body, wire::UnknownKeys::Allow);
    const auto* person = std::get_if<facts::PersonEnrolled>(&read.body);
    if (person == nullptr) continue;
    if (hash.empty()) hash = store::hash_secret(demo_pin);
    accounts.set_secret(person->who, {"pin", hash}, now_ms);
  }
}

}  // namespace

std::vector<assets::Asset> demo_boilers() {
  return {demo_file("examples/watertube.toml"), demo_file("examples/firetube.toml")};
}

void make_demo_plant(store::FactLog& log, store::AccountBook& accounts,
                     store::Surroundings& surroundings) {
  for (const assets::Asset& boiler : demo_boilers()) log.add_blob(std::string(boiler.bytes));
  const std::int64_t now = surroundings.now_ms();
  const auto append = [&](const char* name, std::int64_t last_ms) {
    wire::FactDrafts lines = lines_until(demo_file(name), last_ms);
    give_pins(lines.drafts, accounts, now);
    enter_facts(log, surroundings, std::move(lines), name, "", wire::LogKeys::LeaveOut);
  };
  append("examples/demo-plant.jsonl", now - year_ms - 2 * day_ms);
  append("examples/demo-closing.jsonl", now - year_ms);
  append("examples/demo-mid-work.jsonl", now - 2 * minute_ms);
}

}  // namespace steamworthy::service
