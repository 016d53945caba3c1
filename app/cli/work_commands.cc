#include "cli/work_commands.h"

#include <fmt/format.h>

#include "cli/files.h"
#include "cli/open_closing.h"
#include "cli/quantity_option.h"
#include "cli/section_text.h"
#include "raising/before_fire.h"
#include "raising/first_steam.h"
#include "service/sheet_service.h"
#include "service/work_service.h"
#include "wire/fitup_json.h"
#include "wire/raising_json.h"
#include "wire/repair_json.h"

namespace steamworthy::cli {
namespace {

using units::Kind;

words::Style style_of(const WorkOptions& options) {
  words::Style style;
  if (options.units == "us") style.print.system = units::System::Us;
  return style;
}

std::string sentences(const std::vector<working::Message>& messages, const words::Style& style) {
  std::string text;
  for (const working::Message& one : messages) text += "  - " + words::sentence(one, style) + "\n";
  return text;
}

std::string figures_text(const std::vector<working::Figure>& figures, const words::Style& style,
                         bool with_working) {
  std::string text;
  for (const working::Figure& figure : figures) {
    text += "  " + words::render_figure(figure, style) + "\n";
    if (with_working) text += words::render_working(figure, style);
  }
  return text;
}

/// "12=0.8 mm": where on the clock, and the thickest feeler that goes in.
fitup::GapReading gap_reading(const std::string& text, units::Length step) {
  const std::size_t equals = text.find('=');
  const auto clock = units::parse_measure(Kind::Count, text.substr(0, equals));
  if (equals == std::string::npos || !clock) {
    throw Usage{
        fmt::format("--gap: found \"{}\"; accepted: where on the clock and the gap, as in "
                    "12=\"0.8 mm\" or 1.5=\"1/32 in\"",
                    text)};
  }
  const auto gap = quantity<units::Length>(Kind::Size, "--gap", text.substr(equals + 1));
  if (!gap) throw Usage{fmt::format("--gap: \"{}\" names no gap", text)};
  return {clock.value->si, *gap, step};
}

repair::Cure cure_named(const std::string& text, const std::string& word) {
  std::string accepted;
  for (int i = 0; i <= static_cast<int>(repair::Cure::FindWhatPassesIn); ++i) {
    const auto cure = static_cast<repair::Cure>(i);
    if (repair::token(cure) == word) return cure;
    accepted += (accepted.empty() ? "" : ", ") + std::string(repair::token(cure));
  }
  throw Usage{fmt::format("--cure: found \"{}\"; accepted: the leak's number, = and one of {}",
                          text, accepted)};
}

void choose(std::vector<repair::Leak>& leaks, const std::string& text) {
  const std::size_t equals = text.find('=');
  const std::string number = text.substr(0, equals);
  const repair::Cure cure =
      cure_named(text, equals == std::string::npos ? "" : text.substr(equals + 1));
  for (repair::Leak& leak : leaks) {
    if (leak.number != number) continue;
    leak.chosen = cure;
    return;
  }
  throw Usage{fmt::format("--cure: \"{}\" is no open leak of this closing", number)};
}

repair::PlanRequest plan_request(const WorkOptions& options, const closing::State& state) {
  repair::PlanRequest request;
  request.leaks = service::open_leaks(state);
  for (const std::string& cure : options.cures) choose(request.leaks, cure);
  request.drain_rate = quantity<units::VolumeFlow>(Kind::Flow, "--drain-rate", options.drain_rate);
  request.fill_rate = quantity<units::VolumeFlow>(Kind::Flow, "--fill-rate", options.fill_rate);
  if (const auto margin = quantity<units::Length>(Kind::Size, "--margin", options.margin)) {
    request.margin = *margin;
  }
  const auto hours = [](const char* option, const std::string& text) {
    return quantity<units::Duration>(Kind::Duration, option, text);
  };
  request.hours.let_down = hours("--let-down", options.let_down);
  request.hours.repairs = hours("--repairs", options.repairs);
  request.hours.raise_and_hold = hours("--raise-and-hold", options.raise_and_hold);
  request.hours.walkdown = hours("--walkdown", options.walkdown);
  request.hours.walkdown_left = hours("--walkdown-left", options.walkdown_left);
  return request;
}

std::string leak_text(const repair::LeakPlan& one, const words::Style& style) {
  std::string text = fmt::format(
      "\nLeak {}: {} at {}\n", one.leak.number,
      words::label("leak_kind." + std::string(facts::token(one.leak.at)), style), one.leak.place);
  std::string cures;
  for (const repair::Cure cure : one.cures) {
    cures += (cures.empty() ? "" : "; ") +
             words::label("repair.cure." + std::string(repair::token(cure)), style);
  }
  text += fmt::format("  planned: {}\n  may be: {}\n",
                      words::label("repair.cure." + std::string(repair::token(one.cure)), style),
                      cures);
  if (one.needs_drop) {
    text += fmt::format("  the water must be dropped; out for this one alone: {}\n",
                        words::text(units::measure(one.out_alone), style));
  }
  if (!one.above.empty()) {
    std::string above;
    for (const std::string& number : one.above) above += (above.empty() ? "" : ", ") + number;
    text += fmt::format("  comes free with it: {}\n", above);
  }
  return text + sentences(one.notes, style);
}

std::string plan_text(const repair::Plan& plan, const words::Style& style, bool with_working) {
  if (plan.leaks.empty()) return "No open leak.\n";
  std::string text = "Leaks, in the order of work\n";
  for (const repair::LeakPlan& one : plan.leaks) text += leak_text(one, style);
  if (!plan.drop.open.empty()) {
    std::string open;
    for (const std::string& tag : plan.drop.open) open += (open.empty() ? "" : ", ") + tag;
    text += fmt::format("\nDrop the water by {}\n", open);
  }
  return text + figures_text(plan.figures, style, with_working) + sentences(plan.notes, style);
}

std::string items_text(const std::vector<raising::Item>& items, const words::Style& style) {
  std::string text;
  for (const raising::Item& item : items) {
    const std::string what =
        words::label("raising.task." + std::string(raising::token(item.task)), style);
    text += fmt::format("  [{}] {}{}{}", item.done ? "x" : " ", what,
                        item.subject.empty() ? "" : " ", item.subject);
    if (!item.where.empty()) text += fmt::format(" ({})", item.where);
    if (!item.done) {
      text += fmt::format(": {} {}", words::sentence(item.reason, style),
                          words::sentence(item.remedy, style));
    }
    text += "\n";
  }
  return text;
}

std::string rounds_text(const raising::FirstSteam& steam, const words::Style& style,
                        bool with_working) {
  std::string text;
  for (const raising::Round& round : steam.rounds) {
    text += figures_text({round.pressure}, style, with_working);
    for (const raising::ToLook& place : round.places) {
      text += fmt::format(
          "    - {}{}: {}\n", place.subject, place.leak.empty() ? "" : ", leak " + place.leak,
          words::label("raising.look." + std::string(raising::token(place.why)), style));
    }
  }
  return text + sentences(steam.notes, style);
}

/// A text of JSON within an object.
std::string member(const char* name, std::string json) {
  while (!json.empty() && json.back() == '\n') json.pop_back();
  return fmt::format("\"{}\": {}", name, json);
}

}  // namespace

std::string fitup_command(const WorkOptions& options) {
  const boiler::Boiler boiler =
      service::read_description(read_file(options.boiler), base_name(options.boiler));
  service::PlateFelt felt;
  felt.closure = options.closure;
  felt.is_standing = options.standing;
  felt.makers_limit = quantity<units::Length>(Kind::Size, "--makers-limit", options.makers_limit);
  const auto step = quantity<units::Length>(Kind::Size, "--step", options.step);
  for (const std::string& gap : options.gaps) felt.readings.push_back(gap_reading(gap, *step));
  const fitup::FitAnswer answer = service::judge_plate(boiler, felt);
  if (options.json) return wire::fitup_json(answer, options.with_working);
  const words::Style style = style_of(options);
  return words::sentence(answer.sentence, style) + "\n" +
         figures_text(answer.figures, style, options.with_working) + sentences(answer.notes, style);
}

std::string repair_command(const WorkOptions& options) {
  const OpenClosing open = open_closing(options.store, options.closing, options.boiler);
  const closing::Terms& terms = open.ledger().terms();
  const repair::Plan plan =
      repair::plan(terms.boiler(), plan_request(options, open.ledger().state()));
  return options.json ? wire::repair_json(plan, options.with_working)
                      : plan_text(plan, style_of(options), options.with_working);
}

std::string raising_command(const WorkOptions& options) {
  const auto level = quantity<units::Level>(Kind::Level, "--level", options.level);
  const OpenClosing open = open_closing(options.store, options.closing, options.boiler);
  const closing::Terms& terms = open.ledger().terms();
  const auto items = raising::before_fire(terms, open.ledger().state());
  const auto steam = raising::first_steam(terms, open.ledger().state());
  const auto start = raising::start_level(terms.boiler(), level);
  if (options.json) {
    return "{" + member("before_fire", wire::before_fire_json(items)) + ",\n" +
           member("first_steam", wire::first_steam_json(steam, options.with_working)) + ",\n" +
           member("start_level", wire::start_level_json(start, options.with_working)) + "}\n";
  }
  const words::Style style = style_of(options);
  return fmt::format("Before fire: {} of {} still to do\n", raising::still_to_do(items).size(),
                     items.size()) +
         items_text(items, style) + "\nThe water to start with\n" +
         figures_text(start.figures, style, options.with_working) + sentences(start.stops, style) +
         sentences(start.notes, style) + "\nRounds of first steam\n" +
         rounds_text(steam, style, options.with_working);
}

}  // namespace steamworthy::cli
