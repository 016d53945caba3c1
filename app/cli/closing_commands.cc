#include "cli/closing_commands.h"

#include <fmt/format.h>

#include <cstdio>

#include "cli/open_closing.h"
#include "cli/quantity_option.h"
#include "closing/collector.h"
#include "closing/stage.h"
#include "service/closing_service.h"
#include "store/store.h"
#include "store/surroundings.h"
#include "words/words.h"

namespace steamworthy::cli {
namespace {

constexpr int done = 0;
constexpr int refused = 1;

void say(const std::string& text) { std::fwrite(text.data(), 1, text.size(), stdout); }

words::Style style_of(const LogOptions& options) {
  words::Style style;
  if (options.units == "us") style.print.system = units::System::Us;
  return style;
}

closing::Clearance clearance_of(const LogOptions& options) {
  closing::Clearance clearance;
  clearance.step = facts::value_of<facts::StepName>(options.step).value();
  clearance.subject = options.subject;
  clearance.up_to =
      quantity<units::GaugePressure>(units::Kind::GaugePressure, "--up-to", options.up_to);
  return clearance;
}

std::string step_text(facts::StepName step, const words::Style& style) {
  return words::label("clearance." + std::string(facts::token(step)), style);
}

/// "clear to raise pressure, up to 45.00 bar gauge"
std::string clearance_text(const closing::Clearance& clearance, const words::Style& style) {
  std::string text = step_text(clearance.step, style);
  if (!clearance.subject.empty()) text += ", " + clearance.subject;
  if (clearance.up_to) text += ", up to " + words::text(units::measure(*clearance.up_to), style);
  return text;
}

std::string outstanding_text(const std::vector<closing::Outstanding>& items,
                             const words::Style& style) {
  std::string text;
  for (const closing::Outstanding& item : items) {
    const closing::CheckRow& check = closing::row(item.check);
    text += fmt::format(
        "  - {} {} ({}: {}; {})\n", words::sentence(item.reason, style),
        words::sentence(item.remedy, style),
        closing::rules()[static_cast<std::size_t>(check.rule)].token,
        words::label("role." + std::string(facts::token(item.role)), style),
        check.override_by == closing::nobody ? "nobody may let it pass" : "may be let pass");
  }
  return text;
}

std::string head(const char* title, const std::string& body) {
  return body.empty() ? "" : fmt::format("\n{}\n{}", title, body);
}

std::string alarms_text(const closing::State& state, const words::Style& style) {
  std::string text;
  for (const closing::Alarm& alarm : closing::alarms(state)) {
    text += fmt::format("  - {} [{}]\n", words::sentence(alarm.why, style), alarm.name);
  }
  return text;
}

std::string inside_text(const closing::State& state) {
  std::string text;
  for (const auto& [tag, space] : state.spaces) {
    std::string who;
    for (const auto* tally : {&space.people, &space.things}) {
      for (const std::string& one : closing::inside(*tally)) {
        who += (who.empty() ? "" : ", ") + one;
      }
    }
    if (!who.empty()) text += fmt::format("  - {}: {}\n", tag, who);
  }
  return text;
}

std::string temporaries_text(const closing::State& state) {
  std::string text;
  for (const auto& [number, temporary] : state.temporaries) {
    if (!temporary.was_on || temporary.seen_off.holds) continue;
    text += fmt::format("  - {} on {}{}\n", number, temporary.where,
                        temporary.off.holds ? ": said to be off, not seen off" : "");
  }
  return text;
}

std::string leaks_text(const closing::State& state, const words::Style& style) {
  std::string text;
  for (const auto& [number, leak] : state.leaks) {
    if (closing::is_closed(state, leak)) continue;
    text += fmt::format("  - {}: {} at {}{}\n", number,
                        words::label("leak_kind." + std::string(facts::token(leak.at)), style),
                        leak.place, leak.repaired.holds ? ", repaired, not seen dry" : "");
  }
  return text;
}

std::string clearances_text(const service::Ledger& ledger, std::int64_t now_ms,
                            const words::Style& style) {
  std::string text;
  for (const closing::Standing& one : closing::standing(ledger.state(), ledger.terms(), now_ms)) {
    const closing::Clearance clearance{one.given.step, one.given.subject, one.given.up_to};
    text += fmt::format("  - {}, by {} and {}: {}\n", clearance_text(clearance, style),
                        one.given.by, one.given.second,
                        one.lapsed ? "lapsed. " + words::sentence(one.why, style) : "stands");
  }
  return text;
}

std::string state_text(const service::Ledger& ledger, std::int64_t now_ms,
                       const words::Style& style) {
  const closing::State& state = ledger.state();
  const closing::Clearance next = closing::next_clearance(state, ledger.terms());
  const auto items = ledger.outstanding(next, now_ms);
  const wire::ClosingView view = ledger.view(now_ms, 0);
  std::string text = fmt::format("{}, {}\n{}\n", state.boiler, ledger.terms().boiler().name,
                                 wire::closing_sentence(view, style));
  text += head("ALARMS", alarms_text(state, style));
  text += fmt::format("\nNext: {}\n", clearance_text(next, style));
  text += items.empty() ? "  nothing stands in its way\n" : outstanding_text(items, style);
  text += head("Inside", inside_text(state));
  text += head("Temporaries to come off", temporaries_text(state));
  text += head("Open leaks", leaks_text(state, style));
  text += head("Clearances given", clearances_text(ledger, now_ms, style));
  return text;
}

}  // namespace

int state_command(const LogOptions& options) {
  const OpenClosing open = open_closing(options.store, options.closing, options.boiler);
  store::RealSurroundings world;
  const words::Style style = style_of(options);
  const std::int64_t now_ms = world.now_ms();
  say(options.json ? wire::closing_json(open.ledger().view(now_ms), style)
                   : state_text(open.ledger(), now_ms, style));
  return done;
}

int outstanding_command(const LogOptions& options) {
  const closing::Clearance clearance = clearance_of(options);
  const OpenClosing open = open_closing(options.store, options.closing, options.boiler);
  std::vector<Problem> faults = service::faults_of(clearance, open.ledger().terms());
  if (!faults.empty()) throw BadInput(std::move(faults));
  store::RealSurroundings world;
  const words::Style style = style_of(options);
  const auto items = open.ledger().outstanding(clearance, world.now_ms());
  if (options.json) {
    say(wire::outstanding_json(clearance, items, open.ledger().intake_no(), style));
  } else if (items.empty()) {
    say(fmt::format("Nothing stands in the way: {}.\n", clearance_text(clearance, style)));
  } else {
    say(fmt::format("Still outstanding, {}: {}\n{}", clearance_text(clearance, style), items.size(),
                    outstanding_text(items, style)));
  }
  return done;
}

int clear_command(const LogOptions& options) {
  const closing::Clearance clearance = clearance_of(options);
  store::RealSurroundings world;
  store::Store store(options.store, world);
  store::FactLog& log = store.log();
  service::ClosingBook book = book_for(log.plant(), options.boiler);
  book.catch_up(log);
  const record::Scope scope = closing_in(book, log.plant(), options.closing, options.boiler);
  const words::Style style = style_of(options);
  const service::Clearing clearing = service::give_clearance(
      log, book, scope,
      {clearance, options.person, options.second, book.ledger(scope).view(0, 0).utc_offset_min},
      world.now_ms());
  if (options.json) {
    say(wire::outstanding_json(clearance, clearing.outstanding, book.ledger(scope).intake_no(),
                               style));
  } else if (clearing.is_given()) {
    const std::string step(facts::token(clearance.step));
    working::Message permits{"permits." + step, {}};
    if (!clearance.subject.empty()) permits.values.emplace_back("subject", clearance.subject);
    if (clearance.up_to) permits.values.emplace_back("up_to", units::measure(*clearance.up_to));
    say(fmt::format("Given by {} and {}: {}.\n{}\n{}\n", options.person, options.second,
                    clearance_text(clearance, style), words::sentence(permits, style),
                    words::sentence({"lapses_when." + step, {}}, style)));
  } else {
    say(fmt::format("Refused, {}: {} still outstanding\n{}", clearance_text(clearance, style),
                    clearing.outstanding.size(), outstanding_text(clearing.outstanding, style)));
  }
  return clearing.is_given() ? done : refused;
}

}  // namespace steamworthy::cli
