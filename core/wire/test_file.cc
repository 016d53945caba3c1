#include "wire/test_file.h"

#include <algorithm>
#include <array>

#include "trace/clock.h"
#include "units/number_text.h"
#include "wire/test_file_checks.h"

namespace steamworthy::wire {
namespace {

using trace::TestFacts;
using units::Kind;

void read_flag(ObjectReader& io, const char* key, std::optional<bool>& into) {
  bool value = false;
  io.flag(key, value);
  if (io.has(key)) into = value;
}

constexpr std::string_view moment_example = "a time such as \"07:25\" or \"2026-11-25 07:25:30\"";

std::optional<trace::Moment> moment_of(ObjectReader& io, const char* key,
                                       const std::string& written) {
  const auto moment = trace::read_moment(written);
  if (!moment) {
    io.add("wire.not_a_moment", key, units::quotable(written), std::string(moment_example),
           "is no time of day");
  }
  return moment;
}

/// A point of time: `key` as a clock, or `key`_after as a time since the log's zero.
void read_moment(ObjectReader& io, const char* key, const char* after_key,
                 std::optional<trace::Moment>& into) {
  std::string written;
  io.text(key, written);
  if (!written.empty()) into = moment_of(io, key, written);
  std::optional<units::Duration> after;
  io.measure(after_key, after, Kind::Duration);
  if (!after) return;
  if (io.has(key)) {
    io.add("wire.one_of_two", after_key, "", std::string(key) + " or " + after_key,
           "is said twice");
  }
  into = trace::Moment{after->si(), std::nullopt, std::nullopt};
}

/// A word of a short list.
template <class Value, std::size_t N>
void read_word(ObjectReader& io, const char* key, Need need, Value& into,
               const std::array<std::pair<std::string_view, Value>, N>& words) {
  std::string written;
  io.text(key, written);
  std::vector<std::string_view> known;
  for (const auto& [word, value] : words) {
    if (word == written) {
      into = value;
      return;
    }
    known.push_back(word);
  }
  if (!io.has(key) && need == Need::Required) io.missing(key, listed(known));
  if (written.empty()) return;
  io.add("wire.unknown_word", key, units::quotable(written), listed(known),
         "is not a word known here");
}

void read_known_boiler(ObjectReader& io, trace::KnownBoiler& boiler) {
  io.measure("volume", boiler.volume, Kind::LargeVolume);
  io.number("volume_doubt", boiler.volume_sd_fraction, Kind::Percent);
  io.measure("growth", boiler.growth, Kind::Compressibility);
  io.measure("growth_volume", boiler.growth_volume, Kind::VolumePerPressure);
  io.number("growth_doubt", boiler.growth_sd_fraction, Kind::Percent);
}

void read_test(ObjectReader& io, TestFacts& facts) {
  io.measure("pressure", facts.test_pressure, Kind::GaugePressure);
  io.measures("stages", facts.stages, Kind::GaugePressure);
  io.measure("leak_of_concern", facts.leak_of_concern, Kind::Leakage);
}

void read_allowed_drop(ObjectReader& io, TestFacts& facts) {
  trace::AllowedDrop allowed;
  io.measure("drop", allowed.drop, Kind::PressureDifference, Need::Required);
  io.measure("within", allowed.within, Kind::Duration);
  io.text("rule", allowed.rule);
  facts.allowed_drop = allowed;
}

void read_hold(ObjectReader& io, TestFacts& facts) {
  read_moment(io, "began", "began_after", facts.hold_began);
  read_moment(io, "ended", "ended_after", facts.hold_ended);
  io.measure("lasts", facts.hold, Kind::Duration);
  std::vector<std::string> changed;
  io.texts("gauge_changed", changed);
  for (const std::string& written : changed) {
    if (const auto moment = moment_of(io, "gauge_changed", written)) {
      facts.gauge_changed.push_back(*moment);
    }
  }
  std::vector<units::Duration> changed_after;
  io.measures("gauge_changed_after", changed_after, Kind::Duration);
  for (const units::Duration after : changed_after) {
    facts.gauge_changed.push_back({after.si(), std::nullopt, std::nullopt});
  }
  std::string zero;
  io.text("clock_zero", zero);
  if (zero.empty()) return;
  if (const auto clock = trace::read_clock(zero, {})) {
    facts.clock_zero_s = clock->clock_s;
  } else {
    io.add("wire.not_a_moment", "clock_zero", units::quotable(zero),
           "a time of day such as \"07:00\"", "is no time of day");
  }
}

void read_gauge(ObjectReader& io, trace::GaugeFact& gauge) {
  io.text("tag", gauge.tag);
  io.text("column", gauge.column);
  io.measure("range_from", gauge.range_low, Kind::GaugePressure);
  io.measure("range", gauge.range_high, Kind::GaugePressure);
  io.measure("resolution", gauge.resolution, Kind::PressureDifference);
  io.measure("accuracy", gauge.accuracy, Kind::PressureDifference);
  io.number("accuracy_of_span", gauge.accuracy_of_span_fraction, Kind::Percent);
  io.measure("noise", gauge.noise_sd, Kind::PressureDifference);
  io.measure("level", gauge.level, Kind::Level);
  static constexpr std::array<std::pair<std::string_view, std::optional<bool>>, 2> zeros = {
      {{"gauge", false}, {"absolute", true}}};
  read_word(io, "reads", Need::Optional, gauge.absolute, zeros);
}

void read_thermometer(ObjectReader& io, trace::ThermometerFact& thermometer) {
  using trace::Meaning;
  static constexpr std::array<std::pair<std::string_view, Meaning>, 4> seats = {
      {{"water", Meaning::Water},
       {"metal", Meaning::Metal},
       {"air", Meaning::Ambient},
       {"supply", Meaning::Supply}}};
  io.text("tag", thermometer.tag);
  io.text("column", thermometer.column);
  read_word(io, "on", Need::Required, thermometer.of, seats);
  io.text("part", thermometer.sits);
  io.measure("resolution", thermometer.resolution, Kind::TemperatureDifference);
  io.measure("accuracy", thermometer.accuracy, Kind::TemperatureDifference);
  io.measure("noise", thermometer.noise_sd, Kind::TemperatureDifference);
}

void read_pump(ObjectReader& io, trace::PumpFact& pump) {
  io.text("tag", pump.tag);
  io.measure("stroke", pump.stroke, Kind::Volume);
  io.number("calibration_doubt", pump.calibration_sd_fraction, Kind::Percent);
  io.measure("supply_water", pump.supply, Kind::Temperature);
}

void read_format(ObjectReader& io) {
  std::string format;
  io.text("format", format);
  if (!io.has("format")) {
    io.missing("format", "format = \"" + std::string(test_file_format) + "\"");
  } else if (!format.empty() && format != test_file_format) {
    io.add("wire.format", "format", units::quotable(format),
           "\"" + std::string(test_file_format) + "\"", "is not a format that this program reads");
  }
}

template <class Read>
void in_table(ObjectReader& io, const char* key, Read read) {
  if (auto table = io.table(key)) {
    read(*table);
    table->refuse_unknown();
  }
}

template <class Item>
void in_tables(ObjectReader& io, const char* key, std::vector<Item>& into,
               void (*read)(ObjectReader&, Item&)) {
  for (ObjectReader& table : io.tables(key, "tag")) {
    read(table, into.emplace_back());
    table.refuse_unknown();
  }
}

void read_tell_tale(ObjectReader& io, trace::TellTale& tell_tale) {
  io.text("tag", tell_tale.tag, Need::Required);
  read_flag(io, "dry", tell_tale.dry);
}

void read_all(ObjectReader& io, TestFacts& facts) {
  read_format(io);
  io.text("log", facts.log);
  io.text("description", facts.description);
  in_table(io, "boiler", [&](ObjectReader& table) { read_known_boiler(table, facts.boiler); });
  in_table(io, "test", [&](ObjectReader& table) { read_test(table, facts); });
  in_table(io, "allowed_drop", [&](ObjectReader& table) { read_allowed_drop(table, facts); });
  in_table(io, "hold", [&](ObjectReader& table) { read_hold(table, facts); });
  in_tables(io, "gauge", facts.gauges, read_gauge);
  in_tables(io, "thermometer", facts.thermometers, read_thermometer);
  in_tables(io, "tell_tale", facts.tell_tales, read_tell_tale);
  in_table(io, "pump", [&](ObjectReader& table) { read_pump(table, facts.pump); });
  in_table(io, "house", [&](ObjectReader& table) {
    table.measure("barometer", facts.barometer, Kind::AbsolutePressure);
  });
  in_table(io, "pocket", [&](ObjectReader& table) {
    table.measure("level", facts.pocket_level, Kind::Level);
    table.measure("below_gauge", facts.pocket_below_gauge, Kind::Distance);
  });
  in_table(io, "done", [&](ObjectReader& table) {
    read_flag(table, "test_valve_shut", facts.test_valve_shut);
    read_flag(table, "pump_side_hung_open", facts.pump_side_hung_open);
  });
  io.texts("notes", facts.notes);
  io.refuse_unknown();
}

std::string_view after_blanks(std::string_view text) {
  if (text.substr(0, 3) == "\xef\xbb\xbf") text.remove_prefix(3);
  const std::size_t begin = text.find_first_not_of(" \t\r\n");
  return begin == std::string_view::npos ? std::string_view() : text.substr(begin);
}

}  // namespace

TestFile read_test_file(std::string_view text, const std::string& file) {
  TestFile result;
  const std::string_view bare = after_blanks(text);
  const bool json = !bare.empty() && bare.front() == '{';
  const Tree tree = json ? read_json(text, file) : read_toml(text, file);
  if (!tree.problems.empty()) {
    result.problems = tree.problems;
    return result;
  }
  Reading reading(tree.dialect, tree.file);
  TestFacts facts;
  const bool meta = json && tree.root.find("format") == nullptr;
  if (meta) {
    read_meta(tree.root, reading, facts, result.unread);
  } else {
    ObjectReader io(tree.root, "", "", reading);
    read_all(io, facts);
  }
  check_test_facts(facts, reading, meta ? meta_name : nullptr);
  result.problems = reading.sorted();
  if (result.problems.empty()) result.facts = std::move(facts);
  return result;
}

std::vector<std::string> test_file_keys() {
  const auto table = [](std::vector<Member> members) {
    Node node;
    node.type = Node::Type::Table;
    node.members = std::move(members);
    return node;
  };
  Tree tree;
  tree.root = table({});
  for (const char* key :
       {"boiler", "test", "allowed_drop", "hold", "pump", "house", "pocket", "done"}) {
    tree.root.members.push_back({key, table({})});
  }
  for (const char* key : {"gauge", "thermometer", "tell_tale"}) {
    Node list;
    list.type = Node::Type::List;
    list.items.push_back(table({}));
    tree.root.members.push_back({key, list});
  }
  Reading reading(Dialect::Toml, "");
  ObjectReader io(tree.root, "", "", reading);
  TestFacts facts;
  read_all(io, facts);
  std::sort(reading.keys.begin(), reading.keys.end());
  reading.keys.erase(std::unique(reading.keys.begin(), reading.keys.end()), reading.keys.end());
  return reading.keys;
}

}  // namespace steamworthy::wire
