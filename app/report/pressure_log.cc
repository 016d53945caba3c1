// The pressure log: a row a reading, stage by stage.
#include <algorithm>
#include <map>

#include "boiler/tokens.h"
#include "report/blocks.h"
#include "report/papers.h"
#include "report/sheet_sections.h"
#include "report/standing.h"

namespace steamworthy::report {
namespace {

/// For each gauge: go to, never above. Nothing where no gauge is described.
void gauge_figures(const Papers& papers, paper::Flow& flow) {
  const Context& context = papers.context;
  paper::Table table{{{context.say("paper.gauge")},
                      {context.say("sheet.gauge_go_to"), 0.0, paper::Align::Right},
                      {context.say("sheet.gauge_never_above"), 0.0, paper::Align::Right}},
                     {},
                     {10.0, false}};
  for (const boiler::Gauge& gauge : context.boiler.gauges) {
    paper::Row row{{{gauge.tag + ", " + gauge.name}}};
    for (const char* key : {"sheet.gauge_go_to", "sheet.gauge_never_above"}) {
      const working::Figure* one = sheet::find_figure(papers.sheet, key, gauge.tag);
      row.cells.push_back({one ? value_text(context, *one) : "", true});
    }
    table.rows.push_back(std::move(row));
  }
  flow.table(table);
}

/// Where in a row each instrument's reading goes.
struct Columns {
  std::map<std::string, std::size_t> gauges, thermometers;
  std::size_t happened = 0, who = 0;
  std::size_t count() const { return who + 1; }
};

Columns head_of(const Context& context, paper::Table& table) {
  Columns columns;
  table.ruled = true;
  const bool filled = context.filled != nullptr;
  const auto add = [&](const std::string& words, double width) {
    table.columns.push_back({words, width});
    return table.columns.size() - 1;
  };
  add(context.say("paper.time"), filled ? 17.0 : 15.0);
  for (const boiler::Gauge& gauge : context.boiler.gauges)
    columns.gauges[gauge.tag] =
        add(gauge.tag + ", " + context.unit(units::Kind::GaugePressure), 22.0);
  if (context.boiler.gauges.empty())
    add(head(context, "paper.pressure", units::Kind::GaugePressure), 22.0);
  const std::string degrees = context.unit(units::Kind::Temperature);
  if (context.boiler.thermometers.empty())
    add(head(context, "paper.water", units::Kind::Temperature), 18.0);
  for (const boiler::Thermometer& one : context.boiler.thermometers)
    columns.thermometers[one.tag] = add(
        one.tag + " " + context.say("kind." + std::string(boiler::token(one.on))) + ", " + degrees,
        18.0);
  if (!filled) {
    add(context.say("sheet.strokes_to_stage"), 17.0);
    add(head(context, "paper.pumped", units::Kind::Volume), 18.0);
  }
  columns.happened = add(context.say("paper.what_happened"), 0.0);
  columns.who = add(context.say(filled ? "paper.name" : "paper.initials"), filled ? 24.0 : 14.0);
  return columns;
}

void blank_rows(const Papers& papers, paper::Table& table) {
  const Context& context = papers.context;
  const auto rows = [&](const std::string& band, int count) {
    table.rows.push_back({{}, 0.0, band});
    for (int i = 0; i < count; ++i) table.rows.push_back(empty_row(table.columns.size()));
  };
  bool any = false;
  for (const sheet::Section& section : papers.sheet.sections) {
    for (const working::Figure& one : section.figures) {
      if (one.key != "sheet.stage_pressure") continue;
      any = true;
      rows(context.say("paper.raising_to",
                       {{"stage", working::Term{one.subject}}, {"pressure", *one.value}}),
           4);
    }
  }
  if (!any) rows(context.say("trade.pump_up"), 12);
  rows(context.say("trade.hold"), 18);
  rows(context.say("paper.letting_down"), 4);
}

template <class... Kinds>
bool is_one_of(const facts::Body& body) {
  return (std::holds_alternative<Kinds>(body) || ...);
}

/// What belongs into a log of the pressure beside the readings.
bool is_told(const facts::Body& body) {
  return is_one_of<facts::RaisingStarted, facts::RaisingStopped, facts::TestValveShut,
                   facts::TestValveOpened, facts::PumpSideHungOpen, facts::HoldStarted,
                   facts::HoldEnded, facts::ReliefTried, facts::TestStopped, facts::BoilerLetDown,
                   facts::ContactLost, facts::ContactRegained, facts::LeakFound, facts::TraceAdded,
                   facts::ResultAccepted, facts::BoilerLeftFull, facts::BoilerLeftSafe,
                   facts::SteamLookedRound>(body);
}

/// The heading under which this entry and those after it stand; empty: as before.
std::string band_of(const Context& context, const facts::Fact& fact) {
  if (const auto* raising = std::get_if<facts::RaisingStarted>(&fact.body)) {
    return context.say("paper.raising_from",
                       {{"pressure", units::measure(raising->to.value)}, {"time", when(fact)}});
  }
  if (const auto* hold = std::get_if<facts::HoldStarted>(&fact.body)) {
    return context.say("paper.hold_at",
                       {{"pressure", units::measure(hold->pressure.value)}, {"time", when(fact)}});
  }
  if (std::holds_alternative<facts::HoldEnded>(fact.body))
    return context.say("paper.after_hold", {{"time", when(fact)}});
  if (std::holds_alternative<facts::BoilerLetDown>(fact.body))
    return context.say("paper.let_down_at", {{"time", when(fact)}});
  return "";
}

/// A row a minute and person, as long as no cell is written twice.
class Rows {
 public:
  Rows(paper::Table& table, const Columns& columns) : table_(table), columns_(columns) {}

  void band(const std::string& words) {
    table_.rows.push_back({{}, 0.0, words});
    last_.clear();
  }

  void put(const facts::Fact& fact, std::size_t column, const std::string& text) {
    const std::string time = when(fact);
    const std::string key = time + fact.person;
    if (time.substr(0, 10) != day_) {
      day_ = time.substr(0, 10);
      band(day_);
    }
    if (key != last_ || (column != columns_.happened && !cell(column).text.empty())) {
      table_.rows.push_back(empty_row(columns_.count(), 5.6));
      table_.rows.back().cells[0].text = time.substr(11);
      table_.rows.back().cells[columns_.who].text = fact.person;
      last_ = key;
    }
    paper::Cell& into = cell(column);
    into.text += (into.text.empty() ? "" : "; ") + text;
  }

 private:
  paper::Cell& cell(std::size_t column) { return table_.rows.back().cells[column]; }

  paper::Table& table_;
  const Columns& columns_;
  std::string last_, day_;
};

void filled_rows(const Context& context, const Columns& columns, paper::Table& table) {
  Rows rows(table, columns);
  for (const facts::Fact* fact : context.filled->facts()) {
    const auto* reading = std::get_if<facts::ReadingTaken>(&fact->body);
    const auto* temperature = std::get_if<facts::TemperatureTaken>(&fact->body);
    if (reading == nullptr && temperature == nullptr && !is_told(fact->body)) continue;
    if (const std::string words = band_of(context, *fact); !words.empty()) rows.band(words);
    if (reading != nullptr) {
      const auto found = columns.gauges.find(reading->gauge);
      if (found != columns.gauges.end()) {
        rows.put(*fact, found->second, context.number(units::measure(reading->pressure.value)));
        continue;
      }
    }
    if (temperature != nullptr) {
      const auto found = columns.thermometers.find(temperature->thermometer);
      if (found != columns.thermometers.end()) {
        rows.put(*fact, found->second,
                 context.number(units::measure(temperature->temperature.value)));
        continue;
      }
    }
    std::string text = words::phrase(facts::tell(*fact), context.style);
    if (!fact->beside.note.empty()) text += ": " + fact->beside.note;
    rows.put(*fact, columns.happened, text);
  }
  for (int i = spare_rows(context, table.rows.size(), 0); i > 0; --i)
    table.rows.push_back(empty_row(columns.count()));
}

/// Who pumped, who read, who signed.
std::vector<Signed> people(const Filled& filled) {
  std::vector<Signed> rows;
  const auto add = [&](const char* key, const facts::Fact* fact, const std::string& who) {
    const bool there = std::any_of(rows.begin(), rows.end(), [&](const Signed& one) {
      return one.key == key && one.name == who;
    });
    if (!there) rows.push_back({key, fact, who});
  };
  for (const facts::Fact* fact : filled.all<facts::PostTaken>()) {
    const auto& post = std::get<facts::PostTaken>(fact->body);
    if (post.post == facts::Post::Pump) add("paper.pump_hand_name", fact, post.who);
  }
  for (const facts::Fact* fact : filled.all<facts::ReadingTaken>())
    add("paper.gauge_reader", fact, fact->person);
  for (Signed& one : signatures_given(filled)) rows.push_back(std::move(one));
  if (rows.empty()) return {{"paper.pump_hand_name"}, {"paper.gauge_reader"}};
  return rows;
}

}  // namespace

paper::Document pressure_log(const Papers& papers) {
  const Context& context = papers.context;
  paper::Flow flow = begin(context, "pressure-log", context.say("paper.kind_pressure_log"), true);
  gauge_figures(papers, flow);
  if (context.filled != nullptr) {
    signed_by(context, flow, people(*context.filled));
  } else {
    fill_in(context, flow, {"paper.day", "paper.barometer_read"});
    signatures(context, flow, {"paper.pump_hand_name", "paper.gauge_reader", "paper.sign_witness"});
  }
  cautions(context, flow,
           {"caution.pump_attended", "caution.pump_side_hung_open", "caution.yielding"});
  paper::Table table;
  const Columns columns = head_of(context, table);
  if (context.filled != nullptr) {
    filled_rows(context, columns, table);
  } else {
    blank_rows(papers, table);
  }
  flow.table(table);
  return flow.finish();
}

}  // namespace steamworthy::report
