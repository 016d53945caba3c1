// Checks units/parse.h. Expected values: conversion factors of NIST SP 811 (2008), app. B.8
// [NIST-SP811], multiplied out by hand.
#include "units/parse.h"

#include <gtest/gtest.h>

#include <cmath>

#include "units/makers.h"

namespace steamworthy::units {
namespace {

struct Good {
  Kind kind;
  const char* text;
  double si;
};

const double psi_pa = 6894.757293168361;  // 4.4482216152605 N over (0.0254 m)^2
const Good good[] = {
    {Kind::GaugePressure, "650 psi", 650 * psi_pa},
    {Kind::GaugePressure, "650 psig", 650 * psi_pa},
    {Kind::GaugePressure, "650PSIG", 650 * psi_pa},
    {Kind::GaugePressure, "650 lb/in²", 650 * psi_pa},
    {Kind::GaugePressure, "650 lbf/sq in", 650 * psi_pa},
    {Kind::GaugePressure, "45 bar", 45e5},
    {Kind::GaugePressure, "45 Bar g", 45e5},
    {Kind::GaugePressure, "45 bar(g)", 45e5},
    {Kind::GaugePressure, "45 bar (gauge)", 45e5},
    {Kind::GaugePressure, "45 barg", 45e5},
    {Kind::GaugePressure, "45 bar ü", 45e5},
    {Kind::GaugePressure, "4.5 MPa", 4.5e6},
    {Kind::GaugePressure, "4,5 MPa", 4.5e6},
    {Kind::GaugePressure, "4,5 MPag", 4.5e6},
    {Kind::GaugePressure, "4500 kPa", 4.5e6},
    {Kind::GaugePressure, "4 500 kPa", 4.5e6},
    {Kind::GaugePressure, "45.5 kgf/cm2", 45.5 * 98066.5},
    {Kind::GaugePressure, "45.5 kg/cm²", 45.5 * 98066.5},
    {Kind::GaugePressure, "\u22120.03 bar", -3000},
    {Kind::GaugePressure, "0", 0},
    {Kind::AbsolutePressure, "1.013 bara", 101300},
    {Kind::AbsolutePressure, "14.7 psia", 14.7 * psi_pa},
    {Kind::AbsolutePressure, "1013 mbar abs", 101300},
    {Kind::AbsolutePressure, "1013 hPa (abs)", 101300},
    {Kind::AbsolutePressure, "1 ata", 98066.5},
    {Kind::PressureDifference, "0.5 bar", 5e4},
    {Kind::PressureDifference, "10 psid", 10 * psi_pa},
    {Kind::Stress, "118 N/mm2", 118e6},
    {Kind::Stress, "17.5 ksi", 17500 * psi_pa},
    {Kind::Modulus, "200 GPa", 200e9},
    {Kind::Temperature, "70 °F", 294.2611111111111},
    {Kind::Temperature, "70 F", 294.2611111111111},
    {Kind::Temperature, "70 deg F", 294.2611111111111},
    {Kind::Temperature, "20 C", 293.15},
    {Kind::Temperature, "20°C", 293.15},
    {Kind::Temperature, "20 º C", 293.15},
    {Kind::Temperature, "-5 ℃", 268.15},
    {Kind::Temperature, "293 K", 293},
    {Kind::TemperatureDifference, "0,02 K", 0.02},
    {Kind::TemperatureDifference, "9 °F", 5},
    {Kind::TemperatureRate, "36 K/h", 0.01},
    {Kind::TemperatureRate, "100 °F/h", 100 / 1.8 / 3600},
    {Kind::Expansivity, "11.5e-6 /K", 11.5e-6},
    {Kind::Expansivity, "11,5×10⁻⁶ 1/K", 11.5e-6},
    {Kind::Expansivity, "6.4e-6 in/in/°F", 6.4e-6 * 1.8},
    {Kind::Size, "1/16 in", 0.0015875},
    {Kind::Size, "2 1/2\"", 0.0635},
    {Kind::Size, "2½″", 0.0635},
    {Kind::Size, "2-1/2 inches", 0.0635},
    {Kind::Size, "½ in", 0.0127},
    {Kind::Size, ".5 in", 0.0127},
    {Kind::Size, "50 mm", 0.05},
    {Kind::Size, "0,125 in", 0.003175},
    {Kind::Distance, "12 ft 6 in", 3.81},
    {Kind::Distance, "5 ft 3 in", 1.6002},  // not 5 ft3 in
    {Kind::Level, "3 ft 2 in", 0.9652},     // not 3 ft2 in
    {Kind::Distance, "12' 6\"", 3.81},
    {Kind::Distance, "12′6″", 3.81},
    {Kind::Distance, "12'-6 1/2\"", 3.8227},
    {Kind::Distance, "1 m 20 cm", 1.2},
    {Kind::Level, "-1 ft 6 in", -0.4572},
    {Kind::Area, "18 sq in", 18 * 0.00064516},
    {Kind::Area, "18 in^2", 18 * 0.00064516},
    {Kind::Volume, "8 mL", 8e-6},
    {Kind::Volume, "5 gal", 5 * 0.003785411784},
    {Kind::Volume, "5 imp gal", 5 * 0.00454609},
    {Kind::Volume, "20 L", 0.02},
    {Kind::LargeVolume, "3.5 m3", 3.5},
    {Kind::LargeVolume, "3,5 m³", 3.5},
    {Kind::LargeVolume, "12 000 L", 12},
    {Kind::LargeVolume, "125 ft3", 125 * 0.028316846592},
    {Kind::Mass, "120 kg", 120},
    {Kind::Mass, "5 lb 8 oz", 5.5 * 0.45359237},
    {Kind::Mass, "2 t", 2000},
    {Kind::Density, "998.2 kg/m3", 998.2},
    {Kind::Density, "62.37 lb/ft3", 62.37 * 16.018463373960142},
    {Kind::Force, "12 kN", 12e3},
    {Kind::Force, "2700 lbf", 2700 * 4.4482216152605},
    {Kind::Torque, "80 N m", 80},
    {Kind::Torque, "80 N·m", 80},
    {Kind::Torque, "60 ft lbf", 60 * 1.3558179483314004},
    {Kind::Torque, "60 ft-lb", 60 * 1.3558179483314004},
    {Kind::Energy, "5 MJ", 5e6},
    {Kind::Power, "20 kW", 20e3},
    {Kind::SpecificHeat, "4.19 kJ/(kg K)", 4190},
    {Kind::SpecificHeat, "4.19 kJ/kg/K", 4190},
    {Kind::SpecificHeat, "4.19 kJ/kg K", 4190},
    {Kind::SpecificHeat, "1 Btu/(lb °F)", 4186.8},
    {Kind::SpecificEnthalpy, "84 kJ/kg", 84e3},
    {Kind::Viscosity, "1.002 mPa s", 1.002e-3},
    {Kind::Viscosity, "1.002 cP", 1.002e-3},
    {Kind::Compressibility, "0.45 /GPa", 0.45e-9},
    {Kind::Compressibility, "3.1e-6 1/psi", 3.1e-6 / psi_pa},
    {Kind::Flow, "20 L/min", 0.02 / 60},
    {Kind::Flow, "5 gpm", 5 * 0.003785411784 / 60},
    {Kind::Flow, "1.2 m3/h", 1.2 / 3600},
    {Kind::Leakage, "-20 mL/min", -20e-6 / 60},
    {Kind::VolumePerPressure, "1.468 L/bar", 1.468e-8},
    {Kind::VolumePerPressure, "1468 mL/bar", 1.468e-8},
    {Kind::VolumePerPressure, "0.027 US gal/psi", 0.027 * 0.003785411784 / psi_pa},
    {Kind::VolumePerTemperature, "250 mL/K", 250e-6},
    {Kind::PressurePerTemperature, "25 psi/°F", 25 * psi_pa * 1.8},
    {Kind::PressureRate, "50 psi/min", 50 * psi_pa / 60},
    {Kind::Duration, "90 min", 5400},
    {Kind::Duration, "1 h 30 min", 5400},
    {Kind::Duration, "1h30min", 5400},
    {Kind::Duration, "24 hours", 86400},
    {Kind::Percent, "0,5 %", 0.005},
    {Kind::Percent, "90 percent", 0.9},
    {Kind::Fraction, "0.9", 0.9},
    {Kind::Fraction, "3/4", 0.75},
    {Kind::Fraction, "90 %", 0.9},
    {Kind::Count, "23", 23},
};

TEST(ParseMeasure, ReadsWhatPeopleWrite) {
  for (const Good& row : good) {
    const auto parsed = parse_measure(row.kind, row.text);
    ASSERT_TRUE(parsed) << row.text << ": " << sentence(parsed.problem);
    EXPECT_NEAR(parsed.value->si, row.si, 1e-9 * std::fabs(row.si) + 1e-300) << row.text;
    EXPECT_EQ(parsed.value->kind, row.kind);
    EXPECT_FALSE(parsed.unit_assumed);
  }
}

}  // namespace
}  // namespace steamworthy::units
