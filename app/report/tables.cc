#include "report/tables.h"

#include "boiler/places.h"
#include "boiler/tokens.h"
#include "report/blocks.h"
#include "report/sheet_sections.h"

namespace steamworthy::report {
namespace {

using paper::SheetCell;
using paper::SheetTable;

SheetCell number(const Context& context, const units::Measure& measure) {
  return units::in_unit(measure, context.style.print.system);
}

template <class Quantity>
SheetCell number_or_nothing(const Context& context, const std::optional<Quantity>& quantity,
                            units::Measure (*measure)(Quantity)) {
  return quantity ? number(context, measure(*quantity)) : SheetCell{};
}

units::Measure as_size(units::Length length) { return units::measure_size(length); }
units::Measure as_gauge(units::GaugePressure pressure) { return units::measure(pressure); }

SheetTable figures(const Papers& papers) {
  const Context& context = papers.context;
  SheetTable table{
      context.say("paper.figures"),
      {context.say("paper.section"), context.say("paper.figure"), context.say("paper.about"),
       context.say("paper.value"), context.say("paper.unit"), context.say("paper.as_printed"),
       context.say("paper.working")},
      {}};
  for (const sheet::Section& section : papers.sheet.sections) {
    for (const working::Figure& one : section.figures) {
      const std::string subject =
          one.subject.rfind("sheet.", 0) == 0 ? context.say(one.subject) : one.subject;
      table.rows.push_back({context.say(section.key), context.say(one.key), subject,
                            one.value ? number(context, *one.value) : SheetCell{},
                            one.value ? SheetCell{context.unit(one.value->kind)} : SheetCell{},
                            value_text(context, one), one.working.formula});
    }
  }
  return table;
}

SheetTable closures(const Context& context) {
  using units::Kind;
  SheetTable table{
      context.say("paper.closures"),
      {context.say("trade.closure"), context.say("trade.part"), context.say("paper.kind"),
       context.say("paper.shape"), head(context, "paper.width", Kind::Size),
       head(context, "paper.height", Kind::Size), head(context, "paper.level", Kind::Level),
       head(context, "paper.position", Kind::Distance), context.say("paper.side_of"),
       context.say("trade.gasket"), head(context, "paper.thickness", Kind::Size),
       head(context, "paper.land", Kind::Size), context.say("paper.yokes"),
       context.say("paper.studs")},
      {}};
  for (const boiler::Closure& one : context.boiler.closures) {
    table.rows.push_back(
        {one.tag, one.part, kind(context, boiler::token(one.kind)),
         kind(context, boiler::token(one.opening.shape)),
         number(context, units::measure_size(one.opening.width)),
         number(context, units::measure_size(one.opening.height)),
         number(context, units::measure(one.level)),
         one.position ? number(context, units::measure_distance(*one.position)) : SheetCell{},
         kind(context, boiler::token(one.side)),
         one.gasket ? SheetCell{kind(context, boiler::token(one.gasket->kind))} : SheetCell{},
         one.gasket ? number_or_nothing(context, one.gasket->thickness, as_size) : SheetCell{},
         one.gasket ? number_or_nothing(context, one.gasket->land_width, as_size) : SheetCell{},
         static_cast<double>(one.yokes), static_cast<double>(one.studs)});
  }
  return table;
}

SheetTable fittings(const Context& context) {
  using units::Kind;
  SheetTable table{
      context.say("paper.fittings"),
      {context.say("paper.tag"), context.say("paper.what"), context.say("trade.part"),
       head(context, "paper.level", Kind::Level),
       head(context, "paper.setting", Kind::GaugePressure), head(context, "paper.size", Kind::Size),
       head(context, "paper.test_limit", Kind::GaugePressure), context.say("paper.leads_to")},
      {}};
  for (const boiler::Mounting& one : context.boiler.mountings) {
    table.rows.push_back({one.tag, one.name, one.part, number(context, units::measure(one.level)),
                          number_or_nothing(context, one.setting, as_gauge),
                          number_or_nothing(context, one.size, as_size),
                          number_or_nothing(context, one.test_limit, as_gauge), one.leads_to});
  }
  return table;
}

SheetTable places(const Papers& papers) {
  using units::Kind;
  const Context& context = papers.context;
  SheetTable table{
      context.say("paper.places"),
      {context.say("trade.place_to_look"), context.say("paper.kind"), context.say("trade.part"),
       context.say("paper.how_many"), head(context, "paper.level", Kind::Level),
       head(context, "paper.pressure", Kind::GaugePressure)},
      {}};
  for (const boiler::PlaceToLook& one : boiler::places_to_look(context.boiler)) {
    const auto* figure = sheet::find_figure(papers.sheet, "sheet.place_pressure", one.tag);
    table.rows.push_back({one.tag, kind(context, boiler::token(one.kind)), one.part,
                          static_cast<double>(one.count),
                          number(context, units::measure(one.level)),
                          figure && figure->value ? number(context, *figure->value) : SheetCell{}});
  }
  return table;
}

SheetTable parts(const Context& context) {
  using units::Kind;
  SheetTable table{
      context.say("paper.parts_sheet"),
      {context.say("trade.part"), context.say("paper.what"), context.say("paper.how_many"),
       head(context, "paper.outer_diameter", Kind::Size), head(context, "paper.wall", Kind::Size),
       head(context, "paper.length", Kind::Distance),
       head(context, "paper.lowest_water", Kind::Level),
       head(context, "paper.highest_water", Kind::Level),
       head(context, "input.working_pressure", Kind::GaugePressure), context.say("paper.material")},
      {}};
  for (const boiler::Part& one : context.boiler.parts) {
    table.rows.push_back(
        {one.tag, one.name, static_cast<double>(one.count),
         number(context, units::measure_size(boiler::outer_diameter(one))),
         number(context, units::measure_size(boiler::wall_in_use(one))),
         number(context, units::measure_distance(boiler::length(one))),
         number(context, units::measure(boiler::lowest(one))),
         number(context, units::measure(boiler::highest(one))),
         number_or_nothing(context, boiler::working_pressure(context.boiler, one), as_gauge),
         one.material});
  }
  return table;
}

}  // namespace

paper::Workbook workbook(const Papers& papers) {
  const Context& context = papers.context;
  paper::Workbook book;
  book.title = context.boiler.tag + ", " + context.boiler.name;
  book.subject = context.say("paper.foot_hash", {{"hash", short_hash(context)}});
  book.creator = "Steamworthy " + context.version;
  book.tables = {figures(papers), closures(context), fittings(context), places(papers),
                 parts(context)};
  return book;
}

}  // namespace steamworthy::report
