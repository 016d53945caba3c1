#include "hold/water_filled.h"

#include <cmath>
#include <string>

#include <fmt/format.h>

#include "base/error.h"
#include "units/makers.h"
#include "water/water.h"

namespace steamworthy::hold {
namespace {

constexpr auto drawing_temperature = units::celsius(20.0);
constexpr double highest_pressure_pa = 400e5;

double density(units::AbsolutePressure pressure, units::Temperature temperature) {
  return water::density({temperature, pressure}).si();
}

/// Moist volume of the trapped air: ideal gas above saturated vapour.
double air_volume(const FilledBoiler& boiler, units::AbsolutePressure at_air,
                  units::Temperature temperature) {
  const TrappedAir& air = *boiler.air;
  const double dry_at_vent =
      boiler.barometer.si() - water::saturation_pressure(air.temperature_at_vent).si();
  const double dry = at_air.si() - water::saturation_pressure(temperature).si();
  if (!(dry > 0.0) || !(dry_at_vent > 0.0)) {
    throw OutOfRange("hold.water_filled",
                     fmt::format("air at {} kPa absolute is below the vapour pressure of its water",
                                 at_air.si() / 1e3));
  }
  return air.at_vent.si() * dry_at_vent / dry * temperature.si() / air.temperature_at_vent.si();
}

void require_pieces(const FilledBoiler& boiler) {
  if (boiler.pieces.empty()) {
    throw OutOfRange("hold.water_filled", "a boiler without any water space cannot be filled");
  }
}

/// Finds where a rising function passes zero. The mass rises so evenly with pressure that
/// secant steps converge at once; every third step halves, so that it always ends.
template <class Function>
double rising_root(Function f, double low, double high) {
  double f_low = f(low);
  double f_high = f(high);
  if (f_low > 0.0 || f_high < 0.0) {
    throw OutOfRange(
        "hold.water_filled",
        fmt::format("no pressure between {} bar and {} bar absolute holds that much water",
                    low / 1e5, high / 1e5));
  }
  double x = 0.5 * (low + high);
  for (int step = 0; step < 200 && high - low > 1e-6; ++step) {
    const double secant = low - f_low * (high - low) / (f_high - f_low);
    x = step % 3 == 2 || !(secant > low && secant < high) ? 0.5 * (low + high) : secant;
    const double f_x = f(x);
    if (f_x == 0.0) return x;
    if (f_x < 0.0) {
      low = x;
      f_low = f_x;
    } else {
      high = x;
      f_high = f_x;
    }
  }
  return x;
}

}  // namespace

units::Mass water_mass(const FilledBoiler& boiler, const FilledState& state) {
  require_pieces(boiler);
  const double rho_gauge = density(state.at_gauge, state.water);
  const double g = units::standard_gravity.si();
  const double swell =
      1.0 + 3.0 * boiler.steel_expansion.si() * (state.steel - drawing_temperature).si();
  double mass = 0.0;
  for (const WaterPiece& piece : boiler.pieces) {
    const double p = state.at_gauge.si() + rho_gauge * g * (boiler.gauge - piece.centroid).si();
    const double volume =
        piece.volume_at_20_celsius.si() * swell + piece.growth.si() * (p - boiler.barometer.si());
    mass += volume * density(units::pascals_absolute(p), state.water);
  }
  if (boiler.air) {
    const double p = state.at_gauge.si() + rho_gauge * g * (boiler.gauge - boiler.air->level).si();
    mass -= rho_gauge * air_volume(boiler, units::pascals_absolute(p), state.water);
  }
  return units::kilograms(mass);
}

units::Volume water_space(const FilledBoiler& boiler, const FilledState& state) {
  require_pieces(boiler);
  const double rho_gauge = density(state.at_gauge, state.water);
  const double swell =
      1.0 + 3.0 * boiler.steel_expansion.si() * (state.steel - drawing_temperature).si();
  double volume = 0.0;
  for (const WaterPiece& piece : boiler.pieces) {
    const double p = state.at_gauge.si() + rho_gauge * units::standard_gravity.si() *
                                               (boiler.gauge - piece.centroid).si();
    volume +=
        piece.volume_at_20_celsius.si() * swell + piece.growth.si() * (p - boiler.barometer.si());
  }
  return units::cubic_metres(volume);
}

units::Volume water_to_pump(const FilledBoiler& boiler, units::AbsolutePressure from,
                            units::AbsolutePressure to, units::Temperature temperature,
                            units::Temperature supply) {
  const units::Mass pumped = water_mass(boiler, {to, temperature, temperature}) -
                             water_mass(boiler, {from, temperature, temperature});
  return pumped / water::density({supply, boiler.barometer});
}

units::AbsolutePressure pressure_at_mass(const FilledBoiler& boiler, units::Mass mass,
                                         units::Temperature water, units::Temperature steel) {
  // The highest piece must still be liquid, and any air above its vapour pressure.
  double lowest = water::saturation_pressure(water).si() * 1.0001;
  for (const WaterPiece& piece : boiler.pieces) {
    const double head =
        1000.0 * units::standard_gravity.si() * (piece.centroid - boiler.gauge).si();
    lowest = std::fmax(lowest, water::saturation_pressure(water).si() * 1.0001 + head);
  }
  if (boiler.air) {
    const double head =
        1000.0 * units::standard_gravity.si() * (boiler.air->level - boiler.gauge).si();
    lowest = std::fmax(lowest, water::saturation_pressure(water).si() * 1.01 + head + 1.0);
  }
  return units::pascals_absolute(rising_root(
      [&](double p) {
        return (water_mass(boiler, {units::pascals_absolute(p), water, steel}) - mass).si();
      },
      lowest, highest_pressure_pa));
}

units::AbsolutePressure pressure_after_pumping(const FilledBoiler& boiler,
                                               units::AbsolutePressure from, units::Volume pumped,
                                               units::Temperature temperature,
                                               units::Temperature supply) {
  const units::Mass mass = water_mass(boiler, {from, temperature, temperature}) +
                           pumped * water::density({supply, boiler.barometer});
  return pressure_at_mass(boiler, mass, temperature, temperature);
}

units::PressurePerTemperature pressure_per_kelvin(const FilledBoiler& boiler,
                                                  const FilledState& state, Warming warming) {
  const units::Mass mass = water_mass(boiler, state);
  const auto step = units::kelvin_difference(0.01);
  const bool both = warming == Warming::WaterAndSteel;
  const auto warmer =
      pressure_at_mass(boiler, mass, state.water + step, both ? state.steel + step : state.steel);
  const auto colder =
      pressure_at_mass(boiler, mass, state.water - step, both ? state.steel - step : state.steel);
  return (warmer - colder) / (2.0 * step);
}

units::VolumePerPressure volume_per_pressure(const FilledBoiler& boiler, const FilledState& state) {
  const auto half = units::bars(0.5);
  const units::Mass gained = water_mass(boiler, {state.at_gauge + half, state.water, state.steel}) -
                             water_mass(boiler, {state.at_gauge - half, state.water, state.steel});
  return gained / water::density({state.water, state.at_gauge}) / (2.0 * half);
}

units::VolumePerTemperature volume_per_kelvin(const FilledBoiler& boiler,
                                              const FilledState& state) {
  return volume_per_pressure(boiler, state) * pressure_per_kelvin(boiler, state);
}

std::optional<units::Temperature> temperature_of_no_effect(units::AbsolutePressure pressure,
                                                           units::Expansivity steel_expansion) {
  const auto excess = [&](double t) {
    return water::thermal_expansivity({units::celsius(t), pressure}).si() -
           3.0 * steel_expansion.si();
  };
  double low = 0.01;
  double high = 30.0;
  if (excess(low) > 0.0 || excess(high) < 0.0) return std::nullopt;
  for (int step = 0; step < 60; ++step) {
    const double middle = 0.5 * (low + high);
    (excess(middle) < 0.0 ? low : high) = middle;
  }
  return units::celsius(0.5 * (low + high));
}

units::TemperatureDifference heat_of_compression(units::AbsolutePressure from,
                                                 units::AbsolutePressure to,
                                                 units::Temperature water) {
  const water::State state{water, to};
  const double per_pascal =
      water::thermal_expansivity(state).si() * water.si() /
      (water::density(state).si() * water::isobaric_heat_capacity(state).si());
  return units::kelvin_difference(per_pascal * (to - from).si());
}

}  // namespace steamworthy::hold
