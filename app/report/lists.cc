// Lists: the register of blanks, gags and test gear, the isolations.
#include <algorithm>

#include "boiler/tokens.h"
#include "report/blocks.h"
#include "report/papers.h"

namespace steamworthy::report {
namespace {

/// How a line is isolated and what was seen of that, who made it and who moved it. There must be an
/// entry that made it.
void isolated(const Context& context, const closing::Isolation& now, const std::string& tag,
              paper::Row& row) {
  const Filled& filled = *context.filled;
  const facts::Fact* made = filled.last<facts::IsolationMade>(tag);
  const facts::Fact* seen = filled.last<facts::TellTaleSeen>(tag);
  const auto& body = std::get<facts::IsolationMade>(made->body);
  // After it was moved nothing of it holds until it is made anew.
  const bool stands = now.how.has_value();
  const bool two = stands && body.how == facts::IsolatedHow::TwoValvesAndTellTale;
  const bool one = stands && body.how == facts::IsolatedHow::OneValve;
  std::string how = context.say("isolated_how." + std::string(facts::token(body.how)));
  if (!made->beside.note.empty()) how += "; " + made->beside.note;
  std::string tell_tale;
  if (two && seen != nullptr) {
    const bool dry = std::get<facts::TellTaleSeen>(seen->body).dry;
    tell_tale = context.say(dry ? "paper.dry" : "paper.not_dry") + "\n" + when(*seen);
  }
  row.cells.push_back({how});
  row.cells.push_back(tick(two || one));
  row.cells.push_back(tick(two));
  row.cells.push_back({tell_tale});
  row.cells.push_back({body.lock});
  row.cells.push_back(now.tried.holds ? done(true, filled.last<facts::IsolationTried>(tag))
                                      : paper::tick_box());
  row.cells.push_back({who_when(made)});
  row.cells.push_back(done(!stands, filled.last<facts::IsolationChanged>(tag)));
}

}  // namespace

paper::Document temporaries_register(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "temporaries", context.say("paper.kind_temporaries"), true);
  cautions(context, flow, {"caution.gags", "caution.temporaries_off_before_steam"});
  paper::Table table{{{context.say("paper.tag"), 18.0},
                      {context.say("paper.what")},
                      {context.say("paper.where"), 20.0},
                      {head(context, "paper.level", units::Kind::Level), 18.0, paper::Align::Right},
                      {context.say("paper.off_before"), 28.0},
                      {context.say("paper.on_by_at"), 40.0},
                      {context.say("paper.photo"), 14.0},
                      {context.say("paper.off_by_at"), 40.0},
                      {context.say("paper.seen_off_by"), 34.0}},
                     {}};
  table.ruled = true;
  const Filled* filled = context.filled;
  const auto row = [&](const std::string& tag, std::vector<paper::Cell> cells) {
    const closing::Temporary* now = filled ? at(filled->state().temporaries, tag) : nullptr;
    if (now != nullptr && now->was_on) {
      const facts::Fact* on = filled->last<facts::TemporaryOn>(tag);
      if (!now->where.empty()) cells[2].text = now->where;
      cells.push_back({who_when(on)});
      cells.push_back(tick(on != nullptr && !on->beside.photos.empty()));
      cells.push_back(done(now->off.holds, filled->last<facts::TemporaryOff>(tag)));
      cells.push_back(done(now->seen_off.holds, filled->last<facts::TemporarySeenOff>(tag)));
    } else if (filled != nullptr) {
      cells.insert(cells.end(), {{context.say("paper.not_fitted")}, {}, {}, {}});
    } else {
      cells.insert(cells.end(), {{}, paper::tick_box(), {}, {}});
    }
    table.rows.push_back({std::move(cells), writing_height + 1.0});
  };
  for (const boiler::Temporary& one : context.boiler.temporaries) {
    row(one.tag, {{one.tag, true},
                  {kind(context, boiler::token(one.kind)) + ": " + one.name},
                  {one.where},
                  {context.number(units::measure(one.level))},
                  {kind(context, "before_" + std::string(boiler::token(one.off_before)))}});
  }
  if (filled != nullptr) {
    for (const auto& [tag, now] : filled->state().temporaries) {
      const auto& known = context.boiler.temporaries;
      if (std::none_of(known.begin(), known.end(),
                       [&, &tag = tag](const auto& one) { return one.tag == tag; }))
        row(tag, {{tag, true}, {context.say("paper.not_described")}, {now.where}, {}, {}});
    }
  }
  const int blank = std::max<int>(4, 9 - static_cast<int>(context.boiler.temporaries.size()));
  const int spare = filled ? spare_rows(context, table.rows.size(), 0) : blank;
  for (int i = 0; i < spare; ++i) {
    table.rows.push_back(
        {{{}, {}, {}, {}, {}, {}, paper::tick_box(), {}, {}}, writing_height + 1.0});
  }
  flow.table(table);
  signatures(context, flow, {"paper.sign_gag_holder", "paper.sign_all_off"});
  return flow.finish();
}

paper::Document isolation_list(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "isolations", context.say("paper.kind_isolations"), true);
  cautions(context, flow, {"caution.isolation"});
  paper::Table table{{{context.say("paper.tag"), 16.0},
                      {context.say("paper.line")},
                      {context.say("paper.behind")},
                      {context.say("paper.how_isolated")},
                      {context.say("paper.first_valve"), context.filled ? 17.0 : 20.0},
                      {context.say("paper.second_valve"), context.filled ? 19.0 : 20.0},
                      {context.say("trade.tell_tale"), context.filled ? 27.0 : 20.0},
                      {context.say("paper.lock"), 22.0},
                      {context.say("paper.tried"), context.filled ? 27.0 : 14.0},
                      {context.say("paper.on_by_at"), context.filled ? 27.0 : 30.0},
                      {context.say("paper.off_by_at"), context.filled ? 27.0 : 30.0}},
                     {},
                     {8.0, false}};
  table.ruled = true;
  const paper::Cell box = paper::tick_box();
  const Filled* filled = context.filled;
  for (const boiler::Isolation& one : context.boiler.isolations) {
    const bool two = one.how == boiler::IsolationKind::TwoValvesAndTellTale;
    std::string how = kind(context, boiler::token(one.how));
    if (!one.tell_tale.empty()) how += ": " + one.tell_tale;
    paper::Row row{{{one.tag, true}, {one.pipe}, {one.behind}}, writing_height + 1.0};
    const closing::Isolation* now = filled ? at(filled->state().isolations, one.tag) : nullptr;
    if (now != nullptr && filled->last<facts::IsolationMade>(one.tag) != nullptr) {
      isolated(context, *now, one.tag, row);
    } else {
      const paper::Cell valve = two ? box : paper::Cell{};
      row.cells.insert(row.cells.end(), {{how}, valve, valve, valve, {}, box, {}, {}});
    }
    table.rows.push_back(std::move(row));
  }
  const int spare = filled ? spare_rows(context, table.rows.size(), 0) : 3;
  for (int i = 0; i < spare; ++i)
    table.rows.push_back({{{}, {}, {}, {}, box, box, box, {}, box, {}, {}}, writing_height + 1.0});
  flow.table(table);
  signatures(context, flow, {"paper.sign_isolated", "paper.sign_checked"});
  return flow.finish();
}

}  // namespace steamworthy::report
