// Metal: what is known of the metal that a part is made of.
#pragma once

#include <string>

#include "boiler/boiler.h"
#include "materials/material.h"

namespace steamworthy::boiler {

struct Metal {
  materials::Material material;
  bool known =
      false;  ///< false: nobody named it, or we have no such grade; an ordinary steel stands in
};

/// The metal of that name: the description's own materials first, then the
/// shipped grades. Where neither has it, an ordinary boiler steel stands in for
/// growth, weight and heat; it states no yield, so strength cannot be told.
///
/// What an own material leaves out (its density, say) is taken from ordinary
/// boiler steel and keeps that provenance, "from memory".
Metal metal(const Boiler& boiler, const std::string& name);

/// The same for a part.
Metal metal(const Boiler& boiler, const Part& part);

}  // namespace steamworthy::boiler
