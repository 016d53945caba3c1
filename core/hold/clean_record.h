// A record made fit for fitting: in order of time, one row a second, within range.
#pragma once

#include <optional>
#include <vector>

#include "hold/input.h"

namespace steamworthy::hold {

/// Columns in SI, rows by rising time. `water_k` and `metal_k` always have values: the
/// crew's thermometers, or what stands in for them (see `water` and `metal`).
struct CleanRecord {
  enum class Source { Measured, Metal, Constant };

  std::vector<double> seconds;
  std::vector<double> pressure_pa;  ///< absolute
  std::vector<double> water_k;
  std::vector<double> metal_k;
  std::vector<double> pumped_m3;  ///< empty where unknown or where its total falls
  Source water = Source::Measured;
  bool metal_measured = true;
  int out_of_range = 0;       ///< rows left out
  bool pumped_falls = false;  ///< a running total that falls is none

  std::size_t size() const { return seconds.size(); }
};

/// Sorts, averages rows of one second, leaves out rows outside the range of the water
/// formulation (273.16 to 368.15 K, above the vapour pressure, to 400 bar), and fills in
/// for thermometers that are not there: metal for water, else 20 °C throughout.
///
/// Throws  OutOfRange "hold.record".
CleanRecord clean(const Record& record);

/// The smallest step between different values of a column, zero if all are equal:
/// what stands in for a resolution that nobody stated.
double smallest_step(std::vector<double> values);

/// Standard deviation of one reading from second differences, by their median: what
/// stands in for a noise that nobody stated. Zero below five values.
double noise_of(const std::vector<double>& values);

/// When pumping ended for the last time before the pressure was held: the last rise of
/// the pumped total, or, without one, the instant of the highest pressure.
double inferred_hold_start(const CleanRecord& record);

}  // namespace steamworthy::hold
