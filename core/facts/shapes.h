// Shapes: bodies that many kinds share, so that each kind is one line.
#pragma once

#include <string>

#include "facts/kind.h"
#include "facts/words.h"

namespace steamworthy::facts {

#define STEAMWORTHY_ONE_TEXT(Shape, field, means)                 \
  struct Shape {                                                  \
    std::string field;                                            \
    template <class Self, class Visitor>                          \
    static void fields(Self& self, Visitor& v) {                  \
      v.text(#field, self.field, means);                          \
    }                                                             \
    friend bool operator==(const Shape&, const Shape&) = default; \
  }

STEAMWORTHY_ONE_TEXT(OfClosure, closure, "tag of the closure");
STEAMWORTHY_ONE_TEXT(OfWayIn, way_in, "tag of the way in");
STEAMWORTHY_ONE_TEXT(OfSpace, space, "tag of the space");
STEAMWORTHY_ONE_TEXT(OfPart, part, "tag of the part");
STEAMWORTHY_ONE_TEXT(OfInternal, internal, "tag of the internal");
STEAMWORTHY_ONE_TEXT(OfMounting, mounting, "tag of the mounting");
STEAMWORTHY_ONE_TEXT(OfIsolation, isolation, "tag of the line of the isolation list");
STEAMWORTHY_ONE_TEXT(OfTemporary, temporary, "number of the temporary");
STEAMWORTHY_ONE_TEXT(OfGauge, gauge, "tag of the gauge");
STEAMWORTHY_ONE_TEXT(OfPlace, place, "tag of the place to look");
STEAMWORTHY_ONE_TEXT(OfLeak, leak, "number of the leak");
STEAMWORTHY_ONE_TEXT(OfDevice, device, "the device");

#undef STEAMWORTHY_ONE_TEXT

/// A body without fields of its own.
struct Bare {
  template <class Self, class Visitor>
  static void fields(Self&, Visitor&) {}
  friend bool operator==(const Bare&, const Bare&) = default;
};

}  // namespace steamworthy::facts
