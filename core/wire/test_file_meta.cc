// The flat JSON of a `.meta.json`: keys end in their unit, as the simulator wrote them.
#include <algorithm>
#include <array>
#include <cmath>

#include "trace/clock.h"
#include "units/makers.h"
#include "units/number_text.h"
#include "wire/test_file.h"
#include "wire/test_file_checks.h"

namespace steamworthy::wire {
namespace {

using trace::TestFacts;

/// The one gauge and the two thermometers that the flat form speaks of.
struct Meta {
  TestFacts& facts;
  trace::GaugeFact gauge;
  trace::ThermometerFact water;
  trace::ThermometerFact metal;
};

class MetaReader {
 public:
  MetaReader(const Node& root, Reading& reading) : root_(root), reading_(reading) {}

  std::optional<double> number(const char* key) {
    const Node* node = find(key);
    if (node == nullptr) return std::nullopt;
    return number_of(key, *node);
  }
  std::vector<double> numbers(const char* key) {
    std::vector<double> result;
    const Node* node = find(key);
    if (node == nullptr) return result;
    if (node->type != Node::Type::List) {
      wrong_type(key, *node, "a list of numbers");
      return result;
    }
    for (const Node& item : node->items) {
      if (const auto value = number_of(key, item)) result.push_back(*value);
    }
    return result;
  }
  std::optional<std::string> text(const char* key) {
    const Node* node = find(key);
    if (node == nullptr) return std::nullopt;
    if (node->type != Node::Type::Text) {
      wrong_type(key, *node, "a text");
      return std::nullopt;
    }
    return node->text;
  }
  std::optional<bool> flag(const char* key) {
    const Node* node = find(key);
    if (node == nullptr) return std::nullopt;
    if (node->type != Node::Type::Boolean) {
      wrong_type(key, *node, "true or false");
      return std::nullopt;
    }
    return node->boolean;
  }
  std::vector<std::string> texts(const char* key) {
    std::vector<std::string> result;
    const Node* node = find(key);
    if (node == nullptr) return result;
    if (node->type != Node::Type::List) {
      wrong_type(key, *node, "a list of texts");
      return result;
    }
    for (const Node& item : node->items) {
      if (item.type == Node::Type::Text) {
        result.push_back(item.text);
      } else {
        wrong_type(key, item, "a text");
      }
    }
    return result;
  }
  void refuse(std::string code, const char* key, const std::string& found, std::string accepted,
              std::string message) {
    const Node* node = root_.find(key);
    reading_.add(std::move(code), node == nullptr ? 0 : node->line, key, units::quotable(found),
                 std::move(accepted), std::move(message));
  }
  std::vector<std::string> asked;

 private:
  /// Nothing where the key is missing or null: it is not stated.
  const Node* find(const char* key) {
    asked.emplace_back(key);
    const Node* node = root_.find(key);
    if (node == nullptr || node->type == Node::Type::Nothing) return nullptr;
    reading_.stands_at(key, node->line, node->text);
    return node;
  }
  std::optional<double> number_of(const char* key, const Node& node) {
    if (node.type != Node::Type::Integer && node.type != Node::Type::Number) {
      wrong_type(key, node, "a number");
      return std::nullopt;
    }
    if (std::isfinite(node.number)) return node.number;
    refuse("wire.not_finite", key, node.text, "a number", "is not a finite number");
    return std::nullopt;
  }
  void wrong_type(const char* key, const Node& node, std::string accepted) {
    refuse("wire.wrong_type", key, node.text, std::move(accepted),
           "is " + std::string(noun(node.type)));
  }

  const Node& root_;
  Reading& reading_;
};

template <class Quantity, class Make>
void take(MetaReader& io, const char* key, std::optional<Quantity>& into, Make make) {
  if (const auto value = io.number(key)) into = make(*value);
}

void take_number(MetaReader& io, const char* key, std::optional<double>& into) {
  if (const auto value = io.number(key)) into = *value;
}

void read_boiler(MetaReader& io, TestFacts& facts) {
  take(io, "volume_m3_nominal", facts.boiler.volume, units::cubic_metres);
  take(io, "shell_compliance_per_Pa_nominal", facts.boiler.growth, units::per_pascal);
  take_number(io, "volume_sd_rel", facts.boiler.volume_sd_fraction);
  take_number(io, "compliance_sd_rel", facts.boiler.growth_sd_fraction);
}

void read_times(MetaReader& io, TestFacts& facts) {
  if (const auto start = io.number("hold_start_s"))
    facts.hold_began = trace::Moment{*start, {}, {}};
  take(io, "hold_s", facts.hold, units::seconds);
  for (const double changed : io.numbers("gauge_changed_s")) {
    facts.gauge_changed.push_back({changed, {}, {}});
  }
  if (const auto zero = io.text("clock_zero")) {
    if (const auto clock = trace::read_clock(*zero, {})) {
      facts.clock_zero_s = clock->clock_s;
    } else {
      io.refuse("wire.not_a_moment", "clock_zero", *zero, "a time of day such as \"07:00\"",
                "is no time of day");
    }
  }
}

void read_instruments(MetaReader& io, Meta& meta) {
  take(io, "gauge_resolution_bar", meta.gauge.resolution, units::bars);
  take(io, "gauge_noise_sd_bar", meta.gauge.noise_sd, units::bars);
  if (const auto zero = io.text("pressure_is")) {
    if (*zero == "gauge" || *zero == "absolute") {
      meta.gauge.absolute = *zero == "absolute";
    } else {
      io.refuse("wire.unknown_word", "pressure_is", *zero, "\"gauge\" or \"absolute\"",
                "is not a word known here");
    }
  }
  for (trace::ThermometerFact* thermometer : {&meta.water, &meta.metal}) {
    take(io, "temp_resolution_K", thermometer->resolution, units::kelvin_difference);
    take(io, "temp_noise_sd_K", thermometer->noise_sd, units::kelvin_difference);
  }
  meta.water.of = trace::Meaning::Water;
  meta.metal.of = trace::Meaning::Metal;
  meta.water.sits = io.text("water_sensor_in").value_or("");
  meta.metal.sits = io.text("metal_sensor_on").value_or("");
  take(io, "stroke_mL", meta.facts.pump.stroke, units::millilitres);
  take_number(io, "pump_calibration_sd_rel", meta.facts.pump.calibration_sd_fraction);
}

void read_all(MetaReader& io, TestFacts& facts) {
  Meta meta{facts, {}, {}, {}};
  facts.log = io.text("file").value_or("");
  read_boiler(io, facts);
  take(io, "test_pressure_barg", facts.test_pressure, units::bars_gauge);
  for (const double stage : io.numbers("stages_barg")) {
    facts.stages.push_back(units::bars_gauge(stage));
  }
  read_times(io, facts);
  read_instruments(io, meta);
  take(io, "air_pocket_below_gauge_m", facts.pocket_below_gauge, units::metres);
  take(io, "leak_of_concern_mL_min", facts.leak_of_concern, units::millilitres_per_minute);
  facts.test_valve_shut = io.flag("test_valve_shut");
  facts.pump_side_hung_open = io.flag("pump_side_hung_open");
  facts.notes = io.texts("notes");
  facts.gauges.push_back(meta.gauge);
  facts.thermometers.push_back(meta.water);
  facts.thermometers.push_back(meta.metal);
}

}  // namespace

void read_meta(const Node& root, Reading& reading, TestFacts& facts,
               std::vector<std::string>& unread) {
  MetaReader io(root, reading);
  read_all(io, facts);
  for (const auto& [name, node] : root.members) {
    if (std::find(io.asked.begin(), io.asked.end(), name) == io.asked.end()) unread.push_back(name);
  }
}

std::string meta_name(const std::string& field) {
  struct Name {
    std::string_view table;
    std::string_view key;
    std::string_view theirs;
  };
  static constexpr std::array<Name, 14> names = {
      {{"boiler", "volume", "volume_m3_nominal"},
       {"boiler", "growth", "shell_compliance_per_Pa_nominal"},
       {"boiler", "volume_doubt", "volume_sd_rel"},
       {"boiler", "growth_doubt", "compliance_sd_rel"},
       {"test", "pressure", "test_pressure_barg"},
       {"test", "stages", "stages_barg"},
       {"test", "leak_of_concern", "leak_of_concern_mL_min"},
       {"hold", "lasts", "hold_s"},
       {"gauge[#1]", "resolution", "gauge_resolution_bar"},
       {"gauge[#1]", "noise", "gauge_noise_sd_bar"},
       {"thermometer[#1]", "resolution", "temp_resolution_K"},
       {"thermometer[#1]", "noise", "temp_noise_sd_K"},
       {"pump", "stroke", "stroke_mL"},
       {"pump", "calibration_doubt", "pump_calibration_sd_rel"}}};
  for (const Name& name : names) {
    if (field == std::string(name.table) + "." + std::string(name.key)) {
      return std::string(name.theirs);
    }
  }
  // The second thermometer shares the keys of the first.
  if (field.rfind("thermometer[#2].", 0) == 0)
    return meta_name("thermometer[#1]." + field.substr(16));
  return field;
}

std::vector<std::string> meta_keys() {
  Node root;
  root.type = Node::Type::Table;
  Reading reading(Dialect::Json, "");
  MetaReader io(root, reading);
  TestFacts facts;
  read_all(io, facts);
  std::sort(io.asked.begin(), io.asked.end());
  io.asked.erase(std::unique(io.asked.begin(), io.asked.end()), io.asked.end());
  return io.asked;
}

}  // namespace steamworthy::wire
