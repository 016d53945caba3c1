#include "cli/request.h"

#include <fmt/format.h>

#include "cli/quantity_option.h"
#include "units/makers.h"

namespace steamworthy::cli {
sheet::Request read_request(const SheetOptions& options) {
  using units::Kind;
  sheet::Request request;
  if (!options.rule.empty()) request.rule_id = options.rule;
  if (!options.work.empty()) {
    request.work = rules::work_of(options.work);
    if (!request.work) {
      std::string words;
      for (const auto token : rules::work_tokens())
        words += (words.empty() ? "" : ", ") + std::string(token);
      throw Usage{
          fmt::format("--work: \"{}\" is no kind of work; accepted: {}", options.work, words)};
    }
  }
  request.authority = options.authority;
  request.picked = quantity<units::GaugePressure>(Kind::GaugePressure, "--pick", options.pick);
  request.stated_ceiling =
      quantity<units::GaugePressure>(Kind::GaugePressure, "--ceiling", options.ceiling);
  request.water = quantity<units::Temperature>(Kind::Temperature, "--water", options.water);
  request.metal = quantity<units::Temperature>(Kind::Temperature, "--metal", options.metal);
  request.hold = quantity<units::Duration>(Kind::Duration, "--hold", options.hold);
  request.heater = quantity<units::Power>(Kind::Power, "--heater", options.heater);
  if (const auto own = quantity<units::GaugePressure>(Kind::GaugePressure, "--own-pressure",
                                                      options.own_pressure)) {
    request.own_pressure = rules::OwnPressure{*own, options.reason};
  }
  for (const std::string& given : options.traits) {
    const std::size_t equals = given.find('=');
    const auto trait = rules::trait_of(given.substr(0, equals));
    const std::string answer = equals == std::string::npos ? "yes" : given.substr(equals + 1);
    if (!trait || (answer != "yes" && answer != "no")) {
      std::string words;
      for (const auto token : rules::trait_tokens())
        words += (words.empty() ? "" : ", ") + std::string(token);
      throw Usage{
          fmt::format("--trait: found \"{}\"; accepted: one of {} and =yes or =no", given, words)};
    }
    request.traits[*trait] = answer == "yes";
  }
  return request;
}

std::string said(const SheetOptions& options) {
  std::string text;
  const auto add = [&](const char* name, const std::string& value) {
    if (!value.empty()) text += std::string(name) + "=" + value + "\n";
  };
  add("rule", options.rule);
  add("work", options.work);
  add("authority", options.authority);
  add("pick", options.pick);
  add("own-pressure", options.own_pressure);
  add("reason", options.reason);
  add("ceiling", options.ceiling);
  add("water", options.water);
  add("metal", options.metal);
  add("hold", options.hold);
  add("heater", options.heater);
  for (const std::string& trait : options.traits) add("trait", trait);
  return text;
}

}  // namespace steamworthy::cli
