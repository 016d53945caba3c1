// Files that are compiled into the program: rules, example boilers, schema.
#pragma once

#include <span>
#include <string_view>

namespace steamworthy::assets {

struct Asset {
  std::string_view name;  ///< path below the source folder: "rules/us-marine.toml"
  std::string_view bytes;
};

/// The rules that ship with the program, by file name.
std::span<const Asset> rules();

/// The invented plant: its boilers' descriptions, its people, two closings.
std::span<const Asset> demo();

/// The description of the API: one file.
std::span<const Asset> openapi();

/// The page as it was last built, "web/dist/index.html" and the others; empty if it was not.
std::span<const Asset> pages();

}  // namespace steamworthy::assets
