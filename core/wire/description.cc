#include "wire/description.h"

#include <algorithm>
#include <cmath>

#include "boiler/check.h"
#include "boiler/pattern.h"
#include "boiler/tube_ends.h"
#include "units/number_text.h"
#include "wire/describe.h"

namespace steamworthy::wire {

/// TOML: `size` = "305 x 406 mm", or "80 mm" for a circle. JSON: width and height.
void read_opening(ObjectReader& io, boiler::Opening& opening) {
  constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
  if (io.dialect() == Dialect::Json) {
    io.measure("width", opening.width, Kind::Size);
    io.measure("height", opening.height, Kind::Size);
    return;
  }
  opening.width = opening.height = units::Length::from_si(not_a_number);
  std::string written;
  io.text("size", written, Need::Required);
  if (written.empty()) return;
  const std::string plain = units::plain_characters(written);
  const std::size_t cross = plain.find(" x ");
  const std::string first = plain.substr(0, cross);
  const std::string second = cross == std::string::npos ? first : plain.substr(cross + 3);
  const auto refuse = [&](const Problem& problem) {
    io.add(problem.code, "size", units::quotable(written),
           "a size such as \"305 x 406 mm\" or \"80 mm\"", problem.message);
  };
  const auto b = units::parse_length(second);
  if (!b) return refuse(b.problem);
  // "12 x 16 in": the unit of the second stands for the first as well.
  auto a = units::parse_length(first);
  if (!a && a.problem.code == "units.no_unit") {
    const std::size_t unit = second.find_first_not_of("0123456789 .,/");
    a = units::parse_length(first + " " + second.substr(std::min(unit, second.size())));
  }
  if (!a) return refuse(a.problem);
  opening.width = std::max(*a.value, *b.value);
  opening.height = std::min(*a.value, *b.value);
}

namespace {

void read_patterns(ObjectReader& io, boiler::Boiler& boiler) {
  for (ObjectReader& table : io.tables("closure_pattern", "prefix")) {
    const std::size_t known = table.reading().problems().size();
    boiler::ClosurePattern pattern;
    table.text("prefix", pattern.prefix, Need::Required);
    shared_fields(table, pattern.each);
    table.whole("rows", pattern.rows);
    table.whole("per_row", pattern.per_row, Need::Required);
    table.measure("pitch", pattern.pitch, Kind::Distance);
    table.measure("first_offset", pattern.first_offset, Kind::Distance);
    table.text("row_letters", pattern.row_letters);
    table.whole("first_number", pattern.first_number);
    if (table.has_measure("level", Kind::Level)) {
      table.note("row_levels");
      table.measure("level", pattern.row_levels.emplace_back(), Kind::Level);
    } else {
      table.note("level");
      table.measures("row_levels", pattern.row_levels, Kind::Level);
      if (!table.has("row_levels")) table.missing("level", "level, or row_levels with one a row");
    }
    table.texts("skip", pattern.skip);
    table.refuse_unknown();

    Reading& reading = table.reading();
    if (reading.problems().size() != known) continue;
    std::vector<Problem> problems;
    std::vector<boiler::Closure> closures = expand(pattern, table.path(), problems);
    if (problems.empty()) check_fit(pattern, boiler, table.path(), problems);
    if (!problems.empty()) closures.clear();
    for (Problem& problem : problems) reading.add_located(std::move(problem));
    for (boiler::Closure& closure : closures) {
      reading.stands_at("closure[" + closure.tag + "]", table.line(), "");
      boiler.closures.push_back(std::move(closure));
    }
  }
}

/// Orders that were not stated: the usual one, where the name has one.
void complete_orders(ObjectReader& io, boiler::Boiler& boiler) {
  for (boiler::Internal& internal : boiler.internals) {
    if (internal.order != 0) continue;
    if (const auto usual = boiler::usual_order(internal.name)) {
      internal.order = *usual;
      continue;
    }
    Problem problem{"wire.missing",
                    "",
                    0,
                    "internal[" + internal.tag + "].order",
                    "",
                    "a whole number from 1; only internal feed pipe, desuperheater, dry pipe and "
                    "steam baffles have a usual place",
                    "is missing"};
    io.reading().add_located(std::move(problem));
  }
}

void read_format(ObjectReader& io) {
  std::string format;
  io.text("format", format, Need::Optional);
  if (format.empty() && !io.has("format")) {
    io.missing("format", fmt::format("format = \"{}\"", description_format));
  } else if (!format.empty() && format != description_format) {
    io.add("wire.format", "format", units::quotable(format),
           fmt::format("\"{}\"", description_format), "is not a format that this program reads");
  }
}

/// Every list of tables but the patterns, which JSON has no use for.
template <class Io, Is<boiler::Boiler> T>
void lists(Io& io, T& boiler) {
  list(io, "section", boiler.sections, "name");
  list(io, "material", boiler.materials, "name");
  list(io, "part", boiler.parts, "tag");
  list(io, "connection", boiler.connections, "tag");
  list(io, "space", boiler.spaces, "tag");
  list(io, "way_in", boiler.ways_in, "tag");
  list(io, "closure", boiler.closures, "tag");
  list(io, "internal", boiler.internals, "tag");
  list(io, "mounting", boiler.mountings, "tag");
  list(io, "isolation", boiler.isolations, "tag");
  list(io, "temporary", boiler.temporaries, "tag");
  list(io, "place_to_look", boiler.stated_places, "tag");
  list(io, "gauge", boiler.gauges, "tag");
  list(io, "thermometer", boiler.thermometers, "tag");
  optional_table(io, "pump", boiler.pump);
  optional_table(io, "content", boiler.bulk);
}

void read_all(ObjectReader& io, boiler::Boiler& boiler) {
  read_format(io);
  if (auto table = io.table("boiler", Need::Required)) {
    particulars(*table, boiler);
    table->refuse_unknown();
  }
  lists(io, boiler);
  if (io.dialect() == Dialect::Toml) read_patterns(io, boiler);
  if (auto table = io.table("house")) {
    fields(*table, boiler.house);
    table->refuse_unknown();
  }
  io.refuse_unknown();
}

Description read(const Tree& tree) {
  Description result;
  if (!tree.problems.empty()) {
    result.problems = tree.problems;
    return result;
  }
  Reading reading(tree.dialect, tree.file);
  ObjectReader io(tree.root, "", "", reading);
  boiler::Boiler boiler;
  read_all(io, boiler);
  complete_orders(io, boiler);
  complete_tube_ends(boiler);
  for (Problem& problem : faults(boiler)) reading.add_located(std::move(problem));
  result.problems = reading.sorted();
  if (!result.problems.empty()) return result;
  ObjectRounder rounder;
  particulars(rounder, boiler);
  lists(rounder, boiler);
  fields(rounder, boiler.house);
  result.boiler = std::move(boiler);
  return result;
}

}  // namespace

std::vector<std::string> keys_of(const Tree& tree) {
  Reading reading(tree.dialect, tree.file);
  ObjectReader io(tree.root, "", "", reading);
  boiler::Boiler boiler;
  read_all(io, boiler);
  std::sort(reading.keys.begin(), reading.keys.end());
  reading.keys.erase(std::unique(reading.keys.begin(), reading.keys.end()), reading.keys.end());
  return reading.keys;
}

Description read_boiler_toml(std::string_view text, const std::string& file) {
  return read(read_toml(text, file));
}

Description read_boiler_json(std::string_view text, const std::string& file) {
  return read(read_json(text, file));
}

std::string boiler_json(const boiler::Boiler& boiler) {
  Json json = Json::object();
  json["format"] = description_format;
  Json table = Json::object();
  ObjectWriter writer(table);
  particulars(writer, boiler);
  json["boiler"] = std::move(table);
  ObjectWriter io(json);
  lists(io, boiler);
  if (!(boiler.house == boiler::House{})) {
    Json house = Json::object();
    ObjectWriter house_writer(house);
    fields(house_writer, boiler.house);
    json["house"] = std::move(house);
  }
  return wire::text(json);
}

}  // namespace steamworthy::wire
