// For tests: a file of the source folder as text.
#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>

namespace steamworthy::wire {

/// `name` from the source folder on: "examples/watertube.toml".
inline std::string source_file(const std::string& name) {
  std::ifstream file(std::string(STEAMWORTHY_SOURCE_DIR) + "/" + name, std::ios::binary);
  EXPECT_TRUE(file) << name;
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace steamworthy::wire
