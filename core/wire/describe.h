// The fields of a description, each named once for reading and for writing.
//
// `Io` is ObjectReader, ObjectWriter or ObjectRounder. Only files of `wire` include this header.
#pragma once

#include <type_traits>

#include "boiler/boiler.h"
#include "wire/object_reader.h"
#include "wire/object_rounder.h"
#include "wire/object_writer.h"

namespace steamworthy::wire {

template <class T, class Wanted>
concept Is = std::is_same_v<std::remove_const_t<T>, Wanted>;

using units::Kind;

/// The keys that reading this tree asks for (description_keys.cc).
std::vector<std::string> keys_of(const Tree& tree);

void read_opening(ObjectReader& io, boiler::Opening& opening);
void read_part(ObjectReader& io, boiler::Part& part);
void write_part(ObjectWriter& io, const boiler::Part& part);
void write_part(ObjectRounder& io, boiler::Part& part);

template <class Io, Is<boiler::Section> T>
void fields(Io& io, T& section) {
  io.text("name", section.name, Need::Required);
  io.measure("working_pressure", section.working_pressure, Kind::GaugePressure);
}

template <class Io, Is<boiler::Gasket> T>
void fields(Io& io, T& gasket) {
  io.word("kind", gasket.kind);
  io.measure("thickness", gasket.thickness, Kind::Size);
  io.measure("land_width", gasket.land_width, Kind::Size);
}

/// What a closure and a pattern of closures have in common.
template <class Io, Is<boiler::Closure> T>
void shared_fields(Io& io, T& closure) {
  io.text("part", closure.part, Need::Required);
  io.word("kind", closure.kind);
  io.word("shape", closure.opening.shape);
  if constexpr (Io::reads) {
    read_opening(io, closure.opening);
  } else {
    io.measure("width", closure.opening.width, Kind::Size);
    io.measure("height", closure.opening.height, Kind::Size);
  }
  io.word("side", closure.side);
  optional_table(io, "gasket", closure.gasket);
  io.whole("yokes", closure.yokes);
  io.whole("studs", closure.studs);
  io.flag("inside", closure.inside, Need::Required);
  io.flag("makers_book", closure.makers_book);
}

template <class Io, Is<boiler::Closure> T>
void fields(Io& io, T& closure) {
  io.text("tag", closure.tag, Need::Required);
  shared_fields(io, closure);
  io.measure("level", closure.level, Kind::Level);
  io.measure("position", closure.position, Kind::Distance);
  io.whole("row", closure.row);
  io.whole("column", closure.column);
}

template <class Io, Is<boiler::Space> T>
void fields(Io& io, T& space) {
  io.text("tag", space.tag, Need::Required);
  io.text("name", space.name, Need::Required);
  io.word("side", space.side);
  io.texts("parts", space.parts);
}

template <class Io, Is<boiler::WayIn> T>
void fields(Io& io, T& way_in) {
  io.text("tag", way_in.tag, Need::Required);
  io.text("space", way_in.space, Need::Required);
  io.text("closure", way_in.closure);
  io.text("name", way_in.name);
}

template <class Io, Is<boiler::Internal> T>
void fields(Io& io, T& internal) {
  io.text("tag", internal.tag, Need::Required);
  io.text("name", internal.name, Need::Required);
  io.text("part", internal.part, Need::Required);
  io.whole("order", internal.order);
  io.text("held_by", internal.held_by);
}

template <class Io, Is<boiler::Mounting> T>
void fields(Io& io, T& mounting) {
  io.text("tag", mounting.tag, Need::Required);
  io.text("name", mounting.name);
  io.word("kind", mounting.kind);
  io.text("part", mounting.part, Need::Required);
  io.measure("level", mounting.level, Kind::Level);
  io.measure("opening_level", mounting.opening_level, Kind::Level);
  io.measure("setting", mounting.setting, Kind::GaugePressure);
  io.measure("size", mounting.size, Kind::Size);
  io.text("leads_to", mounting.leads_to);
  io.measure("test_limit", mounting.test_limit, Kind::GaugePressure);
}

template <class Io, Is<boiler::Isolation> T>
void fields(Io& io, T& isolation) {
  io.text("tag", isolation.tag, Need::Required);
  io.text("pipe", isolation.pipe, Need::Required);
  io.text("behind", isolation.behind, Need::Required);
  io.word("how", isolation.how);
  io.text("tell_tale", isolation.tell_tale);
}

template <class Io, Is<boiler::Temporary> T>
void fields(Io& io, T& temporary) {
  io.text("tag", temporary.tag, Need::Required);
  io.text("name", temporary.name);
  io.word("kind", temporary.kind);
  io.text("where", temporary.where, Need::Required);
  io.measure("level", temporary.level, Kind::Level);
  io.word("off_before", temporary.off_before);
}

template <class Io, Is<boiler::Connection> T>
void fields(Io& io, T& connection) {
  io.text("from", connection.from, Need::Required);
  io.text("to", connection.to, Need::Required);
  io.measure("from_level", connection.from_level, Kind::Level);
  io.measure("to_level", connection.to_level, Kind::Level);
}

template <class Io, Is<boiler::PlaceToLook> T>
void fields(Io& io, T& place) {
  io.text("tag", place.tag, Need::Required);
  io.word("kind", place.kind);
  io.text("part", place.part);
  io.text("about", place.about);
  io.text("name", place.name);
  io.measure("level", place.level, Kind::Level);
  io.whole("count", place.count);
}

template <class Io, Is<boiler::Gauge> T>
void fields(Io& io, T& gauge) {
  io.text("tag", gauge.tag, Need::Required);
  io.text("name", gauge.name);
  io.measure("level", gauge.level, Kind::Level);
  io.measure("range", gauge.range, Kind::GaugePressure);
  io.measure("resolution", gauge.resolution, Kind::PressureDifference);
  io.number("accuracy", gauge.accuracy, Kind::Percent);
  io.text("calibrated_until", gauge.calibrated_until);
}

template <class Io, Is<boiler::Thermometer> T>
void fields(Io& io, T& thermometer) {
  io.text("tag", thermometer.tag, Need::Required);
  io.text("name", thermometer.name);
  io.word("on", thermometer.on);
  io.text("part", thermometer.part);
  io.measure("resolution", thermometer.resolution, Kind::TemperatureDifference);
  io.measure("accuracy", thermometer.accuracy, Kind::TemperatureDifference);
}

template <class Io, Is<boiler::Pump> T>
void fields(Io& io, T& pump) {
  io.text("name", pump.name);
  io.measure("stroke", pump.stroke, Kind::Volume);
  io.measure("rate", pump.rate, Kind::Flow);
  io.measure("relief", pump.relief, Kind::GaugePressure);
  io.measure("level", pump.level, Kind::Level);
}

template <class Io, Is<boiler::House> T>
void fields(Io& io, T& house) {
  io.measure("air_temperature", house.air_temperature, Kind::Temperature);
  io.number("relative_humidity", house.relative_humidity, Kind::Percent);
  io.measure("supply_water_temperature", house.supply_water_temperature, Kind::Temperature);
  io.measure("barometer", house.barometer, Kind::AbsolutePressure);
  io.measure("fill_rate", house.fill_rate, Kind::Flow);
}

template <class Io, Is<boiler::Bulk> T>
void fields(Io& io, T& bulk) {
  io.measure("water_content", bulk.water_content, Kind::Volume);
  io.measure("growth", bulk.growth, Kind::VolumePerPressure);
  io.measure("top_level", bulk.top_level, Kind::Level);
  io.measure("bottom_level", bulk.bottom_level, Kind::Level);
}

/// One point of an own material's yield by temperature.
struct YieldEntry {
  units::Temperature at;
  units::Stress stress;
};

template <class Io, Is<YieldEntry> T>
void fields(Io& io, T& entry) {
  io.measure("at", entry.at, Kind::Temperature);
  io.measure("stress", entry.stress, Kind::Stress);
}

template <class Io, Is<boiler::OwnMaterial> T>
void fields(Io& io, T& material) {
  io.text("name", material.name, Need::Required);
  io.measure("modulus", material.modulus, Kind::Modulus);
  io.number("poisson", material.poisson, Kind::Count);
  io.measure("expansion", material.expansion, Kind::Expansivity);
  io.measure("density", material.density, Kind::Density);
  std::vector<YieldEntry> entries;
  if constexpr (!Io::reads) {
    for (const auto& [at, stress] : material.yield) entries.push_back({at, stress});
  }
  list(io, "yield", entries, "at");
  if constexpr (!std::is_const_v<T>) {
    material.yield.clear();
    for (const YieldEntry& entry : entries) material.yield.emplace_back(entry.at, entry.stress);
  }
  io.text("source", material.source, Need::Required);
}

template <class Io, Is<boiler::Place> T>
void fields(Io& io, T& place) {
  io.measure("x", place.x, Kind::Level);  // levels may be negative, lengths may not
  io.measure("y", place.y, Kind::Level);
  io.flag("across", place.across, Need::Required);
  io.measure("spacing", place.spacing, Kind::Distance, Need::Optional);
}

template <class Io, Is<boiler::Part> T>
void fields(Io& io, T& part) {
  if constexpr (Io::reads) {
    read_part(io, part);
  } else {
    write_part(io, part);
  }
}

/// The keys of [boiler].
template <class Io, Is<boiler::Boiler> T>
void particulars(Io& io, T& boiler) {
  io.text("tag", boiler.tag, Need::Required);
  io.text("name", boiler.name, Need::Required);
  io.word("kind", boiler.kind);
  io.text("jurisdiction", boiler.jurisdiction);
  io.pairs("numbers", boiler.numbers);
  io.whole("year", boiler.year);
  io.text("datum", boiler.datum);
  io.measure("reference_level", boiler.reference_level, Kind::Level);
  io.text("note", boiler.note);
  io.texts("retired_tags", boiler.retired_tags);
}

// A list of tables, and a table that may be missing, both ways.
template <class Thing>
void list(ObjectReader& io, const char* key, std::vector<Thing>& things, const char* tag_key) {
  for (ObjectReader& table : io.tables(key, tag_key)) {
    Thing& thing = things.emplace_back();
    fields(table, thing);
    table.refuse_unknown();
  }
}
template <class Thing>
void list(ObjectWriter& io, const char* key, const std::vector<Thing>& things, const char*) {
  if (things.empty()) return;
  Json items = Json::array();
  for (const Thing& thing : things) {
    Json item = Json::object();
    ObjectWriter writer(item);
    fields(writer, thing);
    items.push_back(std::move(item));
  }
  io.json()[key] = std::move(items);
}

template <class Thing>
void list(ObjectRounder& io, const char*, std::vector<Thing>& things, const char*) {
  for (Thing& thing : things) fields(io, thing);
}

template <class Thing>
void optional_table(ObjectReader& io, const char* key, std::optional<Thing>& thing) {
  if (auto table = io.table(key)) {
    fields(*table, thing.emplace());
    table->refuse_unknown();
  }
}
template <class Thing>
void optional_table(ObjectWriter& io, const char* key, const std::optional<Thing>& thing) {
  if (!thing) return;
  Json item = Json::object();
  ObjectWriter writer(item);
  fields(writer, *thing);
  io.json()[key] = std::move(item);
}
template <class Thing>
void optional_table(ObjectRounder& io, const char*, std::optional<Thing>& thing) {
  if (thing) fields(io, *thing);
}

}  // namespace steamworthy::wire
