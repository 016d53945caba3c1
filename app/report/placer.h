// Placer: puts tags beside what they name, clear of each other.
#pragma once

#include <string>
#include <vector>

#include "paper/display.h"

namespace steamworthy::report {

class Placer {
 public:
  explicit Placer(paper::Box limit) : limit_(limit) {}

  /// Nothing is to be put here.
  void block(const paper::Box& box) { taken_.push_back(box); }

  /// Puts the words inside, beside, above or below the box, upright or turned, else at the end of a
  /// thin line from it, if `leaders` says so. False, and nothing drawn, if there is no room.
  bool put(paper::Page& page, const paper::Box& about, const std::string& words, paper::Font font,
           bool leaders = true);

 private:
  bool is_free(const paper::Box& box, const paper::Box& about) const;
  bool try_at(paper::Page& page, const paper::Box& about, const paper::Text& text);

  paper::Box limit_;
  std::vector<paper::Box> taken_;
};

}  // namespace steamworthy::report
