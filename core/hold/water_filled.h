// A water-filled boiler: how much water it holds at a pressure and a temperature.
//
// One equation of state carries everything that the test sheet says about
// pumping and warming: litres to a pressure, bar per kelvin, millilitres per bar.
//
//   m = sum_i V_i [1 + 3 alpha_s (T_s - 20 C)] rho(P_i, T) + sum_i K_i (P_i - P_atm) rho(P_i, T)
//       - rho(P_g, T) V_air,    P_i = P_g + rho(P_g, T) g (z_g - z_i)
//
//   V_i, K_i, z_i  volume at 20 C, growth of volume per pressure, level of the
//                  centroid of piece i       P_g, z_g  absolute pressure at the gauge, its level
//   alpha_s        linear expansion of the steel
//   V_air          n R T / (P_air - p_v), p_v saturation pressure: air, saturated with vapour
//
// Derivation and worked example: docs/methods/water-filled.md. Range: liquid
// water of [IAPWS-R7-97] region 1; elastic steel. Errors of the water room pass
// through; nothing is clamped.
#pragma once

#include <optional>
#include <vector>

#include "units/quantity.h"

namespace steamworthy::hold {

/// A part of the water space, or all of it where no drawing is to hand.
struct WaterPiece {
  units::Volume volume_at_20_celsius;
  units::VolumePerPressure growth;  ///< dV/dp of the steel around it
  units::Level centroid;            ///< of its volume
};

/// Air that filling left behind.
struct TrappedAir {
  units::Volume at_vent;  ///< moist volume at the barometer's pressure, when the vent was shut
  units::Temperature temperature_at_vent;
  units::Level level;  ///< where it sits
};

struct FilledBoiler {
  std::vector<WaterPiece> pieces;
  units::Level gauge;                  ///< level of the gauge that the pressures are read on
  units::Expansivity steel_expansion;  ///< linear, 1/K
  units::AbsolutePressure barometer = units::standard_atmosphere;
  std::optional<TrappedAir> air = {};
};

/// Pressure at the gauge and the temperatures of water and steel.
struct FilledState {
  units::AbsolutePressure at_gauge;
  units::Temperature water;
  units::Temperature steel;
};

/// Mass of water inside: the equation at the head of this file.
///
/// Throws    OutOfRange "hold.water_filled" without pieces, or with air at a
///           pressure below its vapour pressure.
/// Checked   water_filled_test.cc against the independent reference table.
units::Mass water_mass(const FilledBoiler& boiler, const FilledState& state);

/// Volume of the water space in that state, water and air.
units::Volume water_space(const FilledBoiler& boiler, const FilledState& state);

/// Water to pump to go from one gauge pressure to another at one temperature,
/// measured as the pump draws it: at the barometer's pressure and `supply`.
///
///   V = [m(to) - m(from)] / rho(P_atm, T_supply)
units::Volume water_to_pump(const FilledBoiler& boiler, units::AbsolutePressure from,
                            units::AbsolutePressure to, units::Temperature temperature,
                            units::Temperature supply);

/// The pressure at the gauge at which that mass of water is inside.
///
/// By secant steps and halving between the lowest pressure at which everything is liquid
/// and 400 bar.
/// Throws    OutOfRange "hold.water_filled" when no such pressure exists there.
units::AbsolutePressure pressure_at_mass(const FilledBoiler& boiler, units::Mass mass,
                                         units::Temperature water, units::Temperature steel);

/// The pressure that pumping so much water (as the pump draws it) leads to:
/// the inverse of water_to_pump().
units::AbsolutePressure pressure_after_pumping(const FilledBoiler& boiler,
                                               units::AbsolutePressure from, units::Volume pumped,
                                               units::Temperature temperature,
                                               units::Temperature supply);

/// Who warms: water and steel together, or the water alone.
enum class Warming { WaterAndSteel, WaterOnly };

/// Rise of pressure per kelvin with nothing let out, at constant mass.
///
/// Central difference over 0.02 K of pressure_at_mass(); its sign changes near 5 C.
units::PressurePerTemperature pressure_per_kelvin(const FilledBoiler& boiler,
                                                  const FilledState& state,
                                                  Warming warming = Warming::WaterAndSteel);

/// Volume of water, at the state's own density, whose loss lowers the gauge by one unit.
///
///   K = (dm/dP) / rho(P_g, T), central difference over 1 bar
units::VolumePerPressure volume_per_pressure(const FilledBoiler& boiler, const FilledState& state);

/// Loss of water that looks like one kelvin of cooling of water and steel:
/// volume_per_pressure() x pressure_per_kelvin().
units::VolumePerTemperature volume_per_kelvin(const FilledBoiler& boiler, const FilledState& state);

/// The temperature at which warming leaves the pressure alone: the water swells
/// as the steel does.
///
///   alpha(P, T) = 3 alpha_s
///
/// Nothing when there is none between 0.01 C and 30 C at this pressure.
std::optional<units::Temperature> temperature_of_no_effect(units::AbsolutePressure pressure,
                                                           units::Expansivity steel_expansion);

/// How much pumping up warms the water: heat of compression, no heat lost.
///
///   dT = alpha T / (rho c_p) (to - from), properties at `to`
units::TemperatureDifference heat_of_compression(units::AbsolutePressure from,
                                                 units::AbsolutePressure to,
                                                 units::Temperature water);

}  // namespace steamworthy::hold
