// Tokens: the written word of each enumeration of a description, one for ever:
// "safety_valve". They stand in files and JSON; `words` has what people read.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "boiler/boiler.h"

namespace steamworthy::boiler {

// token(value) is its word; Words<Enum>::value_of() reads one (blanks and hyphens
// stand for underscores, capitals do not count); Words<Enum>::all() lists them.
template <class Enum>
struct Words;

#define STEAMWORTHY_TOKENS(Enum)                                   \
  std::string_view token(Enum value);                              \
  template <>                                                      \
  struct Words<Enum> {                                             \
    static std::optional<Enum> value_of(std::string_view written); \
    static std::vector<std::string_view> all();                    \
  }

STEAMWORTHY_TOKENS(BoilerKind);
STEAMWORTHY_TOKENS(PartKind);
STEAMWORTHY_TOKENS(HeadKind);
STEAMWORTHY_TOKENS(Axis);
STEAMWORTHY_TOKENS(Run);
STEAMWORTHY_TOKENS(InsideKind);
STEAMWORTHY_TOKENS(ThermalGroup);
STEAMWORTHY_TOKENS(ClosureKind);
STEAMWORTHY_TOKENS(OpeningShape);
STEAMWORTHY_TOKENS(GasketKind);
STEAMWORTHY_TOKENS(Side);
STEAMWORTHY_TOKENS(SpaceSide);
STEAMWORTHY_TOKENS(MountingKind);
STEAMWORTHY_TOKENS(IsolationKind);
STEAMWORTHY_TOKENS(TemporaryKind);
STEAMWORTHY_TOKENS(OffBefore);
STEAMWORTHY_TOKENS(PlaceKind);
STEAMWORTHY_TOKENS(ThermometerOn);

#undef STEAMWORTHY_TOKENS

}  // namespace steamworthy::boiler
