#include "report/placer.h"

#include <algorithm>

#include "paper/type.h"

namespace steamworthy::report {

using paper::Align;
using paper::Box;
using paper::Point;
using paper::Text;

bool Placer::is_free(const Box& box, const Box& about) const {
  if (!limit_.contains(box)) return false;
  return std::none_of(taken_.begin(), taken_.end(), [&](const Box& other) {
    const bool own = other.x == about.x && other.y == about.y && other.width == about.width &&
                     other.height == about.height;
    return !own && other.overlaps(box);
  });
}

bool Placer::try_at(paper::Page& page, const Box& about, const Text& text) {
  const Box box = paper::bounds(text).inset(-0.15);
  if (!is_free(box, about)) return false;
  page.fill(paper::rectangle(box.inset(0.2)), 0.0);  // lines behind it do not cross the words
  page.add(text);
  taken_.push_back(box);
  return true;
}

bool Placer::put(paper::Page& page, const Box& about, const std::string& words, paper::Font font,
                 bool leaders) {
  const double wide = paper::text_width(words, font);
  const double up = paper::ascent(font);
  const double gap = 0.6;
  const Point c = about.centre();
  if (wide + 1.0 < about.width && up + 0.6 < about.height &&
      try_at(page, about, {{c.x, c.y + 0.36 * up}, words, font, Align::Centre}))
    return true;
  const Text near[] = {
      {{c.x, about.y - gap - 0.3}, words, font, Align::Centre},
      {{c.x, about.bottom() + gap + up}, words, font, Align::Centre},
      {{about.right() + gap, c.y + 0.36 * up}, words, font, Align::Left},
      {{about.x - gap, c.y + 0.36 * up}, words, font, Align::Right},
      {{c.x + 0.36 * up, about.y - gap}, words, font, Align::Left, 90.0},
      {{c.x + 0.36 * up, about.bottom() + gap}, words, font, Align::Right, 90.0},
  };
  for (const Text& text : near) {
    if (try_at(page, about, text)) return true;
  }
  if (!leaders) return false;
  constexpr double turns[][2] = {{0.0, -1.0}, {0.0, 1.0}, {1.0, 0.0},   {-1.0, 0.0},
                                 {0.7, -0.7}, {0.7, 0.7}, {-0.7, -0.7}, {-0.7, 0.7}};
  for (double reach = 3.0; reach <= 40.0; reach += 1.5) {
    for (const auto& turn : turns) {
      const Point from{c.x + turn[0] * about.width / 2.0, c.y + turn[1] * about.height / 2.0};
      const Point to{from.x + turn[0] * reach, from.y + turn[1] * reach};
      const Align align = turn[0] > 0.1    ? Align::Left
                          : turn[0] < -0.1 ? Align::Right
                                           : Align::Centre;
      const double drop = turn[1] < -0.1 ? -0.4 : turn[1] > 0.1 ? up + 0.2 : 0.36 * up;
      const double side = turn[0] > 0.1 ? 0.4 : turn[0] < -0.1 ? -0.4 : 0.0;
      if (try_at(page, about, {{to.x + side, to.y + drop}, words, font, align})) {
        page.add(paper::line(from, to), {0.1, {}, 0.7});
        return true;
      }
    }
  }
  return false;
}

}  // namespace steamworthy::report
