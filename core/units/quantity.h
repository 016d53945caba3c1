// Quantities and points: what a number in this program may mean.
//
// A Quantity has a dimension (exponents of kilogram, metre, second, kelvin) and
// holds one double in the coherent SI unit. A Point is a place on a scale that
// has its own zero (a temperature, a gauge pressure, a level): the difference of
// two points is a Quantity, and two points cannot be added. Turning a gauge
// pressure into an absolute one takes the barometer; there is no default.
//
// Makers (bars, metres, ...) and readers (in_bars, in_metres, ...) in makers.h
// are the doors for numbers. Text with units is read in parse.h.
#pragma once

#include <cmath>

namespace steamworthy::units {

template <int M, int L, int T, int K>
class Quantity {
 public:
  constexpr Quantity() = default;

  static constexpr Quantity from_si(double value) { return Quantity(value); }
  constexpr double si() const { return value_; }

  constexpr Quantity operator-() const { return Quantity(-value_); }
  constexpr Quantity& operator+=(Quantity other) {
    value_ += other.value_;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    value_ -= other.value_;
    return *this;
  }

  friend constexpr Quantity operator+(Quantity a, Quantity b) {
    return Quantity(a.value_ + b.value_);
  }
  friend constexpr Quantity operator-(Quantity a, Quantity b) {
    return Quantity(a.value_ - b.value_);
  }
  friend constexpr Quantity operator*(double a, Quantity b) { return Quantity(a * b.value_); }
  friend constexpr Quantity operator*(Quantity a, double b) { return Quantity(a.value_ * b); }
  friend constexpr Quantity operator/(Quantity a, double b) { return Quantity(a.value_ / b); }
  friend constexpr bool operator==(Quantity a, Quantity b) { return a.value_ == b.value_; }
  friend constexpr auto operator<=>(Quantity a, Quantity b) { return a.value_ <=> b.value_; }

 private:
  explicit constexpr Quantity(double value) : value_(value) {}
  double value_ = 0.0;
};

/// A plain number when no dimension is left, a Quantity otherwise.
template <int M, int L, int T, int K>
constexpr auto of_dimension(double value) {
  if constexpr (M == 0 && L == 0 && T == 0 && K == 0) {
    return value;
  } else {
    return Quantity<M, L, T, K>::from_si(value);
  }
}

template <int M1, int L1, int T1, int K1, int M2, int L2, int T2, int K2>
constexpr auto operator*(Quantity<M1, L1, T1, K1> a, Quantity<M2, L2, T2, K2> b) {
  return of_dimension<M1 + M2, L1 + L2, T1 + T2, K1 + K2>(a.si() * b.si());
}
template <int M1, int L1, int T1, int K1, int M2, int L2, int T2, int K2>
constexpr auto operator/(Quantity<M1, L1, T1, K1> a, Quantity<M2, L2, T2, K2> b) {
  return of_dimension<M1 - M2, L1 - L2, T1 - T2, K1 - K2>(a.si() / b.si());
}
template <int M, int L, int T, int K>
constexpr auto operator/(double a, Quantity<M, L, T, K> b) {
  return of_dimension<-M, -L, -T, -K>(a / b.si());
}

template <int M, int L, int T, int K>
Quantity<M, L, T, K> abs(Quantity<M, L, T, K> q) {
  return Quantity<M, L, T, K>::from_si(std::fabs(q.si()));
}

/// A place on a scale with its own zero. `Scale` only tells scales apart.
template <class Scale, class Difference>
class Point {
 public:
  constexpr Point() = default;

  static constexpr Point from_si(double value) { return Point(value); }
  constexpr double si() const { return value_; }

  /// How far this point is from its own scale's zero.
  constexpr Difference from_origin() const { return Difference::from_si(value_); }

  friend constexpr Difference operator-(Point a, Point b) {
    return Difference::from_si(a.value_ - b.value_);
  }
  friend constexpr Point operator+(Point a, Difference b) { return Point(a.value_ + b.si()); }
  friend constexpr Point operator+(Difference a, Point b) { return Point(a.si() + b.value_); }
  friend constexpr Point operator-(Point a, Difference b) { return Point(a.value_ - b.si()); }
  friend constexpr bool operator==(Point a, Point b) { return a.value_ == b.value_; }
  friend constexpr auto operator<=>(Point a, Point b) { return a.value_ <=> b.value_; }

 private:
  explicit constexpr Point(double value) : value_(value) {}
  double value_ = 0.0;
};

using Length = Quantity<0, 1, 0, 0>;
using Area = Quantity<0, 2, 0, 0>;
using Volume = Quantity<0, 3, 0, 0>;
using Mass = Quantity<1, 0, 0, 0>;
using Duration = Quantity<0, 0, 1, 0>;
using Density = Quantity<1, -3, 0, 0>;
using SpecificVolume = Quantity<-1, 3, 0, 0>;
using Stress = Quantity<1, -1, -2, 0>;
using PressureDifference = Stress;
using Modulus = Stress;
using Force = Quantity<1, 1, -2, 0>;
using Torque = Quantity<1, 2, -2, 0>;
using Energy = Torque;
using Power = Quantity<1, 2, -3, 0>;
using Compressibility = Quantity<-1, 1, 2, 0>;
using TemperatureDifference = Quantity<0, 0, 0, 1>;
using Expansivity = Quantity<0, 0, 0, -1>;
using SpecificEnthalpy = Quantity<0, 2, -2, 0>;
using SpecificHeat = Quantity<0, 2, -2, -1>;
using HeatCapacity = Quantity<1, 2, -2, -1>;
using Viscosity = Quantity<1, -1, -1, 0>;
using VolumeFlow = Quantity<0, 3, -1, 0>;
using VolumePerPressure = Quantity<-1, 4, 2, 0>;
using VolumePerTemperature = Quantity<0, 3, 0, -1>;
using PressurePerTemperature = Quantity<1, -1, -2, -1>;
using PressureRate = Quantity<1, -1, -3, 0>;
using TemperatureRate = Quantity<0, 0, -1, 1>;

/// Thermodynamic temperature, kelvin inside.
using Temperature = Point<struct TemperatureScale, TemperatureDifference>;
/// Pressure above vacuum, pascal inside.
using AbsolutePressure = Point<struct AbsolutePressureScale, PressureDifference>;
/// Pressure above the atmosphere around the gauge, pascal inside.
using GaugePressure = Point<struct GaugePressureScale, PressureDifference>;
/// Height above the boiler's datum, metre inside.
using Level = Point<struct LevelScale, Length>;

constexpr AbsolutePressure absolute(GaugePressure gauge, AbsolutePressure barometer) {
  return barometer + gauge.from_origin();
}
constexpr GaugePressure gauge(AbsolutePressure absolute, AbsolutePressure barometer) {
  return GaugePressure{} + (absolute - barometer);
}

/// Standard acceleration of free fall, m/s^2, exact by convention [CGPM-1901].
inline constexpr auto standard_gravity = Quantity<0, 1, -2, 0>::from_si(9.80665);
/// The standard atmosphere, exact by convention [CGPM-1954]. Pass it on purpose.
inline constexpr AbsolutePressure standard_atmosphere = AbsolutePressure::from_si(101325.0);

}  // namespace steamworthy::units
