// Series: one column of a long log, kept small.
//
// Loggers write a few digits. A cell is kept as the whole number of its digits,
// 4 bytes, with one power of ten for the column, and divided out when it is asked
// for: mantissa / 10^n with both exact is the double nearest to what was written
// [Clinger-1990]. A column whose cells do not fit (more than nine digits, an exponent, cells in
// units that change) is kept as doubles instead, 8 bytes. There are no NaN:
// ask has() first.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace steamworthy::trace {

/// A number as written: digits / 10^decimals if `exact`, else `value` alone.
struct Written {
  double value = 0.0;
  std::int32_t digits = 0;  ///< with its sign
  int decimals = 0;
  bool exact = false;
};

class Series {
 public:
  /// The column's unit: si = number * factor + offset. Set before the first cell.
  Series(double factor, double offset) : factor_(factor), offset_(offset) {}
  Series() = default;

  std::size_t size() const { return wide_ ? doubles_.size() : digits_.size(); }
  bool empty() const { return size() == 0; }
  /// Whether row `i` has a value; i < size().
  bool has(std::size_t i) const;
  /// The value of row `i` in the coherent SI unit (K for temperatures). Only where has(i).
  double si(std::size_t i) const { return number(i) * factor_ + offset_; }
  /// The number of row `i` as written, in the column's own unit. Only where has(i).
  double number(std::size_t i) const;
  /// How many rows have a value.
  std::size_t known() const { return known_; }
  /// Most decimals of any cell so far: 2 for "15.84". A hint of the resolution.
  int decimals() const { return decimals_; }
  /// One step of the last decimal, in SI.
  double last_digit_si() const;

  void push(const Written& cell);
  /// A cell in another unit, given in SI.
  void push_si(double si);
  void push_missing();
  void pop();
  void reserve(std::size_t rows);
  void reverse();
  /// Bytes held for the cells.
  std::size_t bytes() const;

 private:
  void widen();
  bool rescale(int decimals);

  double factor_ = 1.0;
  double offset_ = 0.0;
  int decimals_ = 0;
  bool wide_ = false;
  std::size_t known_ = 0;
  std::vector<std::int32_t> digits_;
  std::vector<double> doubles_;  ///< instead of digits_, once wide_
  std::vector<bool> is_known_;   ///< beside doubles_
};

}  // namespace steamworthy::trace
