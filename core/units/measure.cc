#include "units/measure.h"

#include <array>
#include <cassert>

namespace steamworthy::units {
namespace {

constexpr std::array rows = {
    KindInfo{Kind::GaugePressure, "gauge_pressure", "_bar_gauge", 1e5, 0.0},
    KindInfo{Kind::AbsolutePressure, "absolute_pressure", "_bar_abs", 1e5, 0.0},
    KindInfo{Kind::PressureDifference, "pressure_difference", "_bar", 1e5, 0.0},
    KindInfo{Kind::Stress, "stress", "_mpa", 1e6, 0.0},
    KindInfo{Kind::Modulus, "modulus", "_mpa", 1e6, 0.0},
    KindInfo{Kind::Temperature, "temperature", "_celsius", 1.0, 273.15},
    KindInfo{Kind::TemperatureDifference, "temperature_difference", "_k", 1.0, 0.0},
    KindInfo{Kind::TemperatureRate, "temperature_rate", "_k_per_h", 1.0 / 3600.0, 0.0},
    KindInfo{Kind::Expansivity, "expansivity", "_per_k", 1.0, 0.0},
    KindInfo{Kind::Size, "size", "_mm", 1e-3, 0.0},
    KindInfo{Kind::Distance, "distance", "_m", 1.0, 0.0},
    KindInfo{Kind::Level, "level", "_m", 1.0, 0.0},
    KindInfo{Kind::Area, "area", "_mm2", 1e-6, 0.0},
    KindInfo{Kind::Volume, "volume", "_l", 1e-3, 0.0},
    KindInfo{Kind::LargeVolume, "large_volume", "_m3", 1.0, 0.0},
    KindInfo{Kind::Mass, "mass", "_kg", 1.0, 0.0},
    KindInfo{Kind::Density, "density", "_kg_per_m3", 1.0, 0.0},
    KindInfo{Kind::Force, "force", "_kn", 1e3, 0.0},
    KindInfo{Kind::Torque, "torque", "_nm", 1.0, 0.0},
    KindInfo{Kind::Energy, "energy", "_mj", 1e6, 0.0},
    KindInfo{Kind::Power, "power", "_kw", 1e3, 0.0},
    KindInfo{Kind::SpecificHeat, "specific_heat", "_j_per_kg_k", 1.0, 0.0},
    KindInfo{Kind::SpecificEnthalpy, "specific_enthalpy", "_kj_per_kg", 1e3, 0.0},
    KindInfo{Kind::Viscosity, "viscosity", "_mpa_s", 1e-3, 0.0},
    KindInfo{Kind::Compressibility, "compressibility", "_per_gpa", 1e-9, 0.0},
    KindInfo{Kind::Flow, "flow", "_l_per_min", 1e-3 / 60.0, 0.0},
    KindInfo{Kind::Leakage, "leakage", "_ml_per_min", 1e-6 / 60.0, 0.0},
    KindInfo{Kind::VolumePerPressure, "volume_per_pressure", "_ml_per_bar", 1e-11, 0.0},
    KindInfo{Kind::VolumePerTemperature, "volume_per_temperature", "_ml_per_k", 1e-6, 0.0},
    KindInfo{Kind::PressurePerTemperature, "pressure_per_temperature", "_bar_per_k", 1e5, 0.0},
    KindInfo{Kind::PressureRate, "pressure_rate", "_bar_per_min", 1e5 / 60.0, 0.0},
    KindInfo{Kind::Duration, "duration", "_s", 1.0, 0.0},
    KindInfo{Kind::Percent, "percent", "_percent", 0.01, 0.0},
    KindInfo{Kind::Fraction, "fraction", "_fraction", 1.0, 0.0},
    KindInfo{Kind::Count, "count", "", 1.0, 0.0},
};

constexpr bool in_order() {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (static_cast<std::size_t>(rows[i].kind) != i) return false;
  }
  return rows.size() == static_cast<std::size_t>(Kind::Count) + 1;
}
static_assert(in_order(), "one row a kind, in the order of the enumeration");

}  // namespace

const KindInfo& info(Kind kind) { return rows[static_cast<std::size_t>(kind)]; }

double at_border(const Measure& measure) {
  const KindInfo& row = info(measure.kind);
  return measure.si / row.si_per_unit - row.offset;
}

Measure from_border(Kind kind, double value) {
  const KindInfo& row = info(kind);
  return {kind, (value + row.offset) * row.si_per_unit};
}

}  // namespace steamworthy::units
