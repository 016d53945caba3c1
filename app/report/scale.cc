// Scales and their bars.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "paper/type.h"
#include "report/elevation.h"

namespace steamworthy::report {
namespace {

constexpr double metres_per_foot = 0.3048;

std::vector<Scale> metric() {
  std::vector<Scale> all;
  for (const int of : {1, 2, 5, 10, 15, 20, 25, 30, 40, 50, 75, 100, 125, 150, 200, 250, 500})
    all.push_back({static_cast<double>(of), fmt::format("1:{}", of)});
  return all;
}

std::vector<Scale> customary() {
  return {{1.0, "1:1"},
          {2.0, "6 in = 1 ft (1:2)"},
          {4.0, "3 in = 1 ft (1:4)"},
          {8.0, "1 1/2 in = 1 ft (1:8)"},
          {12.0, "1 in = 1 ft (1:12)"},
          {16.0, "3/4 in = 1 ft (1:16)"},
          {24.0, "1/2 in = 1 ft (1:24)"},
          {32.0, "3/8 in = 1 ft (1:32)"},
          {48.0, "1/4 in = 1 ft (1:48)"},
          {64.0, "3/16 in = 1 ft (1:64)"},
          {96.0, "1/8 in = 1 ft (1:96)"},
          {128.0, "3/32 in = 1 ft (1:128)"},
          {192.0, "1/16 in = 1 ft (1:192)"},
          {384.0, "1/32 in = 1 ft (1:384)"}};
}

}  // namespace

const std::vector<Scale>& scales(bool us) {
  static const std::vector<Scale> in_metres = metric(), in_feet = customary();
  return us ? in_feet : in_metres;
}

Scale scale_to_fit(double width_m, double height_m, double width_mm, double height_mm, bool us) {
  for (const Scale& scale : scales(us)) {
    if (scale.millimetres(width_m) <= width_mm && scale.millimetres(height_m) <= height_mm)
      return scale;
  }
  const double need = 1000.0 * std::max(width_m / width_mm, height_m / height_mm);
  const double of = std::ceil(need / 100.0) * 100.0;
  return {of, fmt::format("1:{:.0f}", of)};
}

double bar_length(const Scale& scale, bool us) {
  const double unit = us ? metres_per_foot : 1.0;
  double best = 0.0;
  for (double decade = us ? 1.0 / 12.0 : 0.001; decade < 2000.0; decade *= us ? 12.0 : 10.0) {
    for (const double step : {1.0, 2.0, 5.0}) {
      const double length = decade * step * unit;
      if (scale.millimetres(length) <= 75.0) best = std::max(best, length);
    }
    if (us && decade >= 1.0) {  // feet go on by tens
      for (const double feet : {10.0, 20.0, 50.0, 100.0, 200.0, 500.0}) {
        const double length = feet * unit;
        if (scale.millimetres(length) <= 75.0) best = std::max(best, length);
      }
      break;
    }
  }
  return best;
}

paper::Box draw_scale_bar(const Context& context, paper::Page& page, paper::Point at,
                          const Scale& scale) {
  const paper::Font font{7.5, false};
  const double length = bar_length(scale, context.us());
  const double wide = scale.millimetres(length);
  constexpr double high = 1.6;
  page.add(paper::rectangle({at.x, at.y - high, wide, high}), {0.2});
  page.fill(paper::rectangle({at.x, at.y - high, wide / 2.0, high}), 1.0);
  const std::string words = context.say(
      "paper.scale_bar",
      {{"length", units::Measure{units::Kind::Distance, length}}, {"scale", scale.words}});
  page.add(paper::Text{{at.x + wide + 2.0, at.y}, words, font});
  return {at.x, at.y - 3.0, wide + 2.0 + paper::text_width(words, font), 3.6};
}

}  // namespace steamworthy::report
