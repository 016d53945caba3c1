#include "report/context.h"

#include <fmt/format.h>

#include "paper/digest.h"

namespace steamworthy::report {

std::string short_hash(const Context& context) {
  std::string text;
  for (const Source& source : context.sources) text += source.name + " " + source.sha256 + "\n";
  return paper::sha256(text + context.said).substr(0, 12);
}

paper::Flow begin(const Context& context, const std::string& kind, const std::string& title,
                  bool landscape) {
  const std::string hash = short_hash(context);
  std::string files;
  for (const Source& source : context.sources) files += (files.empty() ? "" : ", ") + source.name;
  paper::Furniture furniture;
  furniture.title = title;
  furniture.subject = context.boiler.tag + ", " + context.boiler.name;
  furniture.foot.push_back(
      context.rule.empty()
          ? context.say("paper.foot_no_rule")
          : context.say("paper.foot_rule", {{"title", context.rule_title}, {"id", context.rule}}));
  if (!context.rule_source.empty())
    furniture.foot.push_back(context.say("paper.foot_source", {{"source", context.rule_source}}));
  furniture.foot.push_back(
      context.say("paper.foot_made", {{"version", context.version}, {"files", files}}));
  if (context.filled != nullptr) {
    furniture.foot.push_back(context.say(
        "paper.foot_hash_filled",
        {{"hash", hash}, {"closing", context.filled->closing()}, {"time", context.filled->now()}}));
  } else {
    furniture.foot.push_back(
        context.date.empty()
            ? context.say("paper.foot_hash", {{"hash", hash}})
            : context.say("paper.foot_hash_date", {{"hash", hash}, {"date", context.date}}));
  }
  furniture.code =
      fmt::format("steamworthy {} {} {} {} {}", context.version, kind, context.boiler.tag, hash,
                  context.rule.empty() ? "no-rule" : context.rule);
  paper::Document properties;
  properties.title = title + ": " + furniture.subject;
  properties.subject = furniture.foot.front();
  properties.keywords = kind + ", " + context.boiler.tag + ", " + hash;
  properties.creator = "Steamworthy " + context.version;
  properties.date = context.date;
  paper::Flow flow({context.size, landscape}, std::move(furniture), std::move(properties));
  if (context.filled != nullptr && context.filled->is_described_otherwise())
    flow.paragraph(context.say("paper.described_otherwise"), {9.0, true}, "!");
  return flow;
}

}  // namespace steamworthy::report
