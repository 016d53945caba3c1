// Taking over: what must be off, back and proved before fire, what is outstanding, who signed.
#include "report/blocks.h"
#include "report/leaks.h"
#include "report/papers.h"
#include "report/standing.h"

namespace steamworthy::report {
namespace {

/// Which entry says that something of the list is done; nothing while it is not.
struct Proof {
  const Filled* filled = nullptr;

  const facts::Fact* seen_off(const std::string& tag) const {
    const auto* now = filled ? at(filled->state().temporaries, tag) : nullptr;
    const bool done = now != nullptr && now->off.holds && now->seen_off.holds;
    return done ? filled->last<facts::TemporarySeenOff>(tag) : nullptr;
  }
  const facts::Fact* line_back(const std::string& tag) const {
    const auto* now = filled ? at(filled->state().isolations, tag) : nullptr;
    const bool done = now != nullptr && !now->how;
    return done ? filled->last<facts::IsolationChanged>(tag) : nullptr;
  }
  const facts::Fact* proved(const std::string& tag) const {
    const auto* now = filled ? at(filled->state().fittings, tag) : nullptr;
    const bool done =
        now != nullptr && now->proved.holds && (!now->was_isolated || now->back.holds);
    return done ? filled->last<facts::MountingProved>(tag) : nullptr;
  }
  const facts::Fact* is_in(const std::string& tag) const {
    const auto* now = filled ? at(filled->state().internals, tag) : nullptr;
    return now != nullptr && now->holds ? filled->last<facts::InternalIn>(tag) : nullptr;
  }
  const facts::Fact* hangers_free() const {
    const bool done = filled != nullptr && filled->state().hangers_free.holds;
    return done ? filled->last<facts::HangersFreed>() : nullptr;
  }
};

struct Ticked {
  std::string what;
  const facts::Fact* by = nullptr;
};

void ticked_list(const Context& context, paper::Flow& flow, const std::vector<Ticked>& what) {
  paper::Table table{{{"", 8.0},
                      {context.say("paper.what")},
                      {context.say("paper.who_and_when"), flow.width() * 0.25}},
                     {}};
  for (const Ticked& one : what) {
    std::string by;
    if (one.by != nullptr) by = one.by->person + ", " + when(*one.by);
    table.rows.push_back({{one.by != nullptr ? tick(true) : paper::tick_box(), {one.what}, {by}},
                          writing_height - 1.0});
  }
  flow.table(table);
}

void still_outstanding(const Context& context, paper::Flow& flow) {
  const Filled& filled = *context.filled;
  flow.heading(context.say("paper.outstanding_for", {{"step", context.say("clearance.steam")}}));
  outstanding_table(context, flow, facts::StepName::Steam);
  std::vector<std::string> look;
  for (const auto& [tag, closure] : filled.state().closures)
    if (closure.look_on_steam) look.push_back(tag);
  if (!look.empty()) {
    flow.heading(context.title("paper.look_on_steam"), 2);
    flow.paragraph(context.say("paper.look_on_steam_at", {{"plates", joined(look)}}));
  }
  flow.heading(context.title("paper.leaks"), 2);
  leak_table(context, flow, false);
}

std::vector<Signed> signers(const Filled& filled) {
  std::vector<Signed> rows;
  const auto& state = filled.state();
  rows.push_back(
      {"paper.given_by", state.given_by.empty() ? nullptr : filled.last<facts::BoilerGiven>()});
  rows.push_back({"paper.received_by",
                  state.received_by.empty() ? nullptr : filled.last<facts::BoilerReceived>()});
  const auto given = signatures_given(filled);
  rows.insert(rows.end(), given.begin(), given.end());
  if (given.empty()) rows.push_back({"paper.sign_inspector"});
  return rows;
}

}  // namespace

paper::Document taking_over_sheet(const Papers& papers) {
  const Context& context = papers.context;
  const boiler::Boiler& boiler = context.boiler;
  paper::Flow flow = begin(context, "taking-over", context.say("paper.kind_taking_over"));
  cautions(context, flow, {"caution.temporaries_off_before_steam", "caution.local_rules"});
  const auto list = [&](const char* title, const std::vector<Ticked>& what) {
    if (what.empty()) return;
    flow.heading(context.title(title), 2);
    ticked_list(context, flow, what);
  };
  const Proof proof{context.filled};
  std::vector<Ticked> off, lines, safety, proved, inside;
  for (const boiler::Temporary& one : boiler.temporaries)
    off.push_back({context.say("paper.off_seen_off", {{"tag", one.tag}, {"name", one.name}}),
                   proof.seen_off(one.tag)});
  for (const boiler::Isolation& one : boiler.isolations)
    lines.push_back({context.say("paper.line_back", {{"tag", one.tag}, {"pipe", one.pipe}}),
                     proof.line_back(one.tag)});
  for (const boiler::Mounting& one : boiler.mountings) {
    const std::string name = named(one.tag, one.name);
    switch (one.kind) {
      case boiler::MountingKind::SafetyValve:
        safety.push_back(
            {one.setting ? context.say("paper.valve_back",
                                       {{"valve", name}, {"setting", units::measure(*one.setting)}})
                         : context.say("paper.valve_back_unset", {{"valve", name}}),
             proof.proved(one.tag)});
        break;
      case boiler::MountingKind::GaugeGlass:
        proved.push_back(
            {context.say("paper.glass_blown", {{"glass", name}}), proof.proved(one.tag)});
        break;
      case boiler::MountingKind::LowWaterCutOut:
        proved.push_back(
            {context.say("paper.cut_out_proved", {{"cut_out", name}}), proof.proved(one.tag)});
        break;
      case boiler::MountingKind::PressureGauge:
        proved.push_back(
            {context.say("paper.gauge_back", {{"gauge", name}}), proof.proved(one.tag)});
        break;
      default:
        break;
    }
  }
  for (const boiler::Internal& one : boiler.internals)
    inside.push_back({context.say("paper.internal_in",
                                  {{"name", named(one.tag, one.name)}, {"held", one.held_by}}),
                      proof.is_in(one.tag)});
  list("trade.temporary", off);
  list("paper.lines", lines);
  list("trade.internals", inside);
  list("paper.safety_valves", safety);
  list("paper.prove", proved);
  list("paper.water_and_fire", {{context.say("paper.refilled")},
                                {context.say("paper.hangers_free"), proof.hangers_free()},
                                {context.say("paper.first_steam_look")},
                                {context.say("paper.open_leaks_none")}});
  if (context.filled != nullptr) still_outstanding(context, flow);
  flow.heading(context.title("paper.certificate"), 2);
  fill_in(context, flow, {"paper.inspector_form", "paper.record_number"});
  if (context.filled != nullptr) {
    signed_by(context, flow, signers(*context.filled));
  } else {
    signatures(context, flow, {"paper.given_by", "paper.received_by", "paper.sign_inspector"});
  }
  return flow.finish();
}

}  // namespace steamworthy::report
