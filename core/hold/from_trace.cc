#include "hold/from_trace.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/error.h"
#include "boiler/content.h"
#include "trace/moment.h"

namespace steamworthy::hold {

namespace {

using trace::Channel;
using trace::GaugeFact;
using trace::TestFacts;
using trace::Trace;

const Channel* named(const std::vector<Channel>& channels, const std::string& column) {
  for (const Channel& c : channels) {
    if (c.name == column || std::to_string(c.column) == column) return &c;
  }
  return nullptr;
}

const Channel& main_gauge(const Trace& trace, const GaugeFact* gauge) {
  if (gauge == nullptr || gauge->column.empty()) return trace.pressures.front();
  if (const Channel* found = named(trace.pressures, gauge->column)) return *found;
  throw NotFound("hold.no_such_gauge",
                 fmt::format("the test file's gauge reads column \"{}\", and the log has no "
                             "pressure of that name or number",
                             gauge->column));
}

// Adds a channel's values at every row, by the straight line between those that are there.
void add_filled(const Channel& channel, const std::vector<double>& seconds,
                std::vector<double>& sum) {
  std::optional<std::size_t> last;
  for (std::size_t i = 0; i < seconds.size(); ++i) {
    if (!channel.values.has(i)) continue;
    const double here = channel.values.si(i);
    const double before = last ? channel.values.si(*last) : here;
    const double span = last ? seconds[i] - seconds[*last] : 0.0;
    for (std::size_t k = last ? *last + 1 : 0; k < i; ++k) {
      const double share = span > 0.0 ? (seconds[k] - seconds[*last]) / span : 0.0;
      sum[k] += before + share * (here - before);
    }
    sum[i] += here;
    last = i;
  }
  for (std::size_t k = last ? *last + 1 : seconds.size(); k < seconds.size(); ++k) {
    sum[k] += channel.values.si(*last);
  }
}

// The mean of several thermometers of one kind; empty where none has a reading.
std::vector<double> mean_of(const std::vector<Channel>& channels,
                            const std::vector<double>& seconds) {
  std::vector<double> sum;
  const auto count = std::count_if(channels.begin(), channels.end(),
                                   [](const Channel& c) { return c.values.known() > 0; });
  if (count == 0) return sum;
  sum.resize(seconds.size(), 0.0);
  for (const Channel& c : channels) {
    if (c.values.known() > 0) add_filled(c, seconds, sum);
  }
  for (double& x : sum) x /= static_cast<double>(count);
  return sum;
}

// A running total stands until the next reading of it.
std::vector<double> standing(const Channel& channel, double unit) {
  std::vector<double> out;
  if (channel.values.known() == 0) return out;
  double last = 0.0;
  for (std::size_t i = 0; i < channel.values.size(); ++i) {
    if (channel.values.has(i)) last = channel.values.si(i) * unit;
    out.push_back(last);
  }
  return out;
}

std::vector<double> pumped_of(const Trace& trace, const TestFacts& facts, HoldInput& input) {
  if (trace.pumped) return standing(*trace.pumped, 1.0);
  if (!trace.strokes) return {};
  if (!facts.pump.stroke) {
    input.notes.push_back({"hold.stroke_not_stated", {}});
    return {};
  }
  return standing(*trace.strokes, facts.pump.stroke->si());
}

BoilerKnown boiler_of(const TestFacts& facts, const boiler::Boiler* description) {
  BoilerKnown known;
  const auto& stated = facts.boiler;
  std::optional<units::Volume> volume = stated.volume;
  std::optional<units::VolumePerPressure> growth;
  if (description != nullptr) {
    if (!volume) volume = boiler::water_content(*description);
    growth = boiler::growth(*description).value;
    if (const auto per_kelvin = boiler::growth_per_kelvin(*description)) {
      known.steel_expansion = units::Expansivity::from_si(per_kelvin->si() / 3.0 /
                                                          boiler::water_content(*description).si());
    }
  }
  if (stated.growth_volume) growth = stated.growth_volume;
  if (stated.growth && volume) {
    growth = units::VolumePerPressure::from_si(stated.growth->si() * volume->si());
  }
  if (!volume || !growth) {
    throw NotFound("hold.no_boiler",
                   "the water space is not known: name a boiler's description, or state its "
                   "volume and its growth under pressure");
  }
  known.volume = *volume;
  known.growth = units::Compressibility::from_si(growth->si() / volume->si());
  if (stated.volume_sd_fraction) known.volume_sd_fraction = *stated.volume_sd_fraction;
  if (stated.growth_sd_fraction) known.growth_sd_fraction = *stated.growth_sd_fraction;
  return known;
}

void read_thermometers(const TestFacts& facts, HoldInput& input) {
  std::optional<std::string> in_water, on_metal;
  for (const trace::ThermometerFact& t : facts.thermometers) {
    const bool water = t.of == trace::Meaning::Water;
    if (!water && t.of != trace::Meaning::Metal) continue;
    if (!t.sits.empty()) (water ? in_water : on_metal) = t.sits;
    if (water || !input.thermometers.resolution) {
      if (t.resolution) input.thermometers.resolution = t.resolution;
      if (t.noise_sd) input.thermometers.noise = t.noise_sd;
    }
  }
  if (in_water && on_metal) input.thermometers.in_one_space = *in_water == *on_metal;
}

std::optional<double> seconds_of(const Trace& trace, const TestFacts& facts,
                                 const std::optional<trace::Moment>& moment) {
  if (!moment) return std::nullopt;
  return trace::seconds_at(trace, *moment, facts.clock_zero_s);
}

void read_times(const Trace& trace, const TestFacts& facts, HoldInput& input) {
  input.hold_start_s = seconds_of(trace, facts, facts.hold_began);
  if (facts.hold_began && !input.hold_start_s) {
    input.notes.push_back({"hold.start_not_on_the_log", {}});
  }
  input.hold_end_s = seconds_of(trace, facts, facts.hold_ended);
  if (!input.hold_end_s && input.hold_start_s && facts.hold) {
    input.hold_end_s = *input.hold_start_s + facts.hold->si();
  }
  for (const trace::Moment& moment : facts.gauge_changed) {
    if (const auto at = seconds_of(trace, facts, moment)) {
      input.gauge.changed_at_s.push_back(*at);
    } else {
      input.notes.push_back({"hold.change_not_on_the_log", {}});
    }
  }
}

void read_pocket(const TestFacts& facts, const GaugeFact* gauge, const boiler::Boiler* description,
                 HoldInput& input) {
  if (facts.pocket_below_gauge) {
    input.pocket_below_gauge = *facts.pocket_below_gauge;
    return;
  }
  if (gauge == nullptr || !gauge->level) return;
  if (facts.pocket_level) {
    input.pocket_below_gauge = *gauge->level - *facts.pocket_level;
  } else if (description != nullptr) {  // under the highest water, where nobody says otherwise
    input.pocket_below_gauge = *gauge->level - boiler::highest(*description);
  }
}

}  // namespace

HoldInput input_from(const Trace& trace, const TestFacts& facts,
                     const boiler::Boiler* description) {
  HoldInput input;
  if (trace.pressures.empty()) {
    throw NotFound("hold.no_such_gauge", "the log has no column of pressure");
  }
  const GaugeFact* gauge = facts.gauges.empty() ? nullptr : &facts.gauges.front();
  const Channel& pressure = main_gauge(trace, gauge);
  if (facts.barometer) input.barometer = *facts.barometer;
  input.boiler = boiler_of(facts, description);

  const std::vector<double> water = mean_of(trace.water, trace.seconds);
  const std::vector<double> metal = mean_of(trace.metal, trace.seconds);
  const std::vector<double> pumped = pumped_of(trace, facts, input);
  const double zero_pa = pressure.absolute ? 0.0 : input.barometer.si();
  for (std::size_t i = 0; i < trace.rows(); ++i) {
    if (!pressure.values.has(i)) continue;
    input.record.seconds.push_back(trace.seconds[i]);
    input.record.pressure_pa_abs.push_back(pressure.values.si(i) + zero_pa);
    if (!water.empty()) input.record.water_temperature_k.push_back(water[i]);
    if (!metal.empty()) input.record.metal_temperature_k.push_back(metal[i]);
    if (!pumped.empty()) input.record.pumped_m3.push_back(pumped[i]);
  }
  if (gauge != nullptr) {
    input.gauge.resolution = gauge->resolution;
    input.gauge.noise = gauge->noise_sd;
  }
  read_thermometers(facts, input);
  read_times(trace, facts, input);
  read_pocket(facts, gauge, description, input);
  input.pump.supply = facts.pump.supply;
  if (facts.pump.calibration_sd_fraction) {
    input.pump.calibration_sd_fraction = *facts.pump.calibration_sd_fraction;
  }
  input.valves = {facts.valve_is_shut(), facts.pump_side_is_open()};
  for (const trace::TellTale& t : facts.tell_tales) {
    if (t.dry && !*t.dry) input.notes.push_back({"hold.tell_tale_runs", {{"tag", t.tag}}});
  }
  input.leak_of_concern = facts.leak_of_concern;
  if (facts.allowed_drop) {
    input.allowed_fall = AllowedFall{facts.allowed_drop->drop, facts.allowed_drop->within};
  }
  return input;
}

}  // namespace steamworthy::hold
