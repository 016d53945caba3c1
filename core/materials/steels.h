// Steels that we ship, by generic grade. The table is steels.cc; its sources are in
// docs/methods/materials.md.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "materials/material.h"

namespace steamworthy::materials {

/// The steel of that grade; capitals, spaces, hyphens, dots and slashes do not matter:
/// "sa516 gr 70" finds SA-516-70. Nothing is guessed: an unknown name finds nothing.
std::optional<Material> steel(std::string_view name);

/// Names of all shipped grades, as shown to users, in the order of the table.
std::vector<std::string> steel_names();

/// "boiler steel": unalloyed steel for elastic growth, weight and heat only: E 200 GPa, nu 0.3,
/// expansion 11.5e-6 /K, density 7850 kg/m^3, specific heat 470 J/(kg K), all from memory. It
/// states no yield strength, so strength cannot be told from it.
Material generic_boiler_steel();

}  // namespace steamworthy::materials
