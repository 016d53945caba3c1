#include "wire/object_writer.h"

#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include <cmath>
#include <limits>

#include "base/error.h"

namespace steamworthy::wire {

void ObjectWriter::put_exact(const char* key, const units::Measure& measure) {
  const std::string name = key + std::string(units::info(measure.kind).suffix);
  const double plain = units::at_border(measure);
  if (!std::isfinite(plain)) {
    throw OutOfRange("wire.not_finite",
                     fmt::format("{} is {}, and only finite numbers may be written", name, plain));
  }
  const auto gives_same_bits = [&](double candidate) {
    return units::from_border(measure.kind, candidate).si == measure.si;
  };
  for (const int digits : {6, 9, 12, 15}) {
    const std::string written = fmt::format("{:.{}g}", plain, digits);
    double shorter = 0.0;
    fast_float::from_chars(written.data(), written.data() + written.size(), shorter);
    if (gives_same_bits(shorter)) {
      json_[name] = shorter;
      return;
    }
  }
  // What was rounded to the border (ObjectRounder) lies within a few last bits.
  double below = plain;
  double above = plain;
  for (int step = 0; step < 4; ++step) {
    for (const double candidate : {below, above}) {
      if (gives_same_bits(candidate)) {
        json_[name] = candidate;
        return;
      }
    }
    below = std::nextafter(below, -std::numeric_limits<double>::infinity());
    above = std::nextafter(above, std::numeric_limits<double>::infinity());
  }
  json_[name] = plain;
}

}  // namespace steamworthy::wire
