// For tests of this room: the example boilers, and one with 600 closures.
#pragma once

#include <string>

#include "testing/examples_test.h"
#include "units/makers.h"

namespace steamworthy::report {

/// The water-tube example with its header openings multiplied: 50 more a header, in three rows.
inline boiler::Boiler with_many_closures(std::size_t wanted) {
  boiler::Boiler boiler = testing::example_boiler("watertube");
  const std::vector<std::string> headers = {"FH", "RH", "LL", "RL", "LU", "RU", "SI", "SO"};
  std::erase_if(boiler.closures, [&](const boiler::Closure& one) {
    return std::find(headers.begin(), headers.end(), one.part) != headers.end();
  });
  const std::size_t per_header = (wanted - boiler.closures.size() + 7) / 8;
  for (std::size_t h = 0; h < headers.size(); ++h) {
    const boiler::Part& part = boiler::part(boiler, headers[h]);
    const boiler::Side sides[] = {boiler::Side::Front, boiler::Side::Rear, boiler::Side::Left,
                                  boiler::Side::Right, boiler::Side::Left, boiler::Side::Right,
                                  boiler::Side::Front, boiler::Side::Rear};
    const double length = part.shape.index() == 0 ? boiler::length(part).si() : 1.0;
    for (std::size_t i = 0; i < per_header && boiler.closures.size() < wanted; ++i) {
      boiler::Closure one;
      one.tag = headers[h] + "-" + static_cast<char>('A' + i % 2) + std::to_string(101 + i / 2);
      one.part = headers[h];
      one.opening = {boiler::OpeningShape::Oval, units::millimetres(80), units::millimetres(60)};
      const double up = i % 2 == 0 ? 0.045 : -0.045;
      one.level = boiler::middle(part) + units::metres(up);
      const std::size_t columns = (per_header + 1) / 2;
      one.position =
          units::metres(length * (static_cast<double>(i / 2) + 0.5) / static_cast<double>(columns));
      one.side = sides[h];
      one.row = static_cast<int>(i % 2) + 1;
      one.column = static_cast<int>(i / 2) + 1;
      one.yokes = one.studs = 1;
      boiler.closures.push_back(one);
    }
  }
  return boiler;
}

inline boiler::Boiler testing_boiler(const std::string& name) {
  return name == "600 closures" ? with_many_closures(600) : testing::example_boiler(name);
}

}  // namespace steamworthy::report
