// Node: a TOML or JSON text as one small tree, so that what reads a description
// need not know from which of the two it came.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"

namespace steamworthy::wire {

struct Member;

struct Node {
  enum class Type { Nothing, Text, Integer, Number, Boolean, Date, Table, List };

  Type type = Type::Nothing;
  std::string text;  ///< Text: itself; numbers, booleans, dates: as written or printed
  long long integer = 0;
  double number = 0.0;  ///< also set for an Integer
  bool boolean = false;
  std::vector<Member> members;  ///< Table, in the order of the text
  std::vector<Node> items;      ///< List
  int line = 0;                 ///< counted from 1; 0 where it is not known

  const Node* find(std::string_view key) const;
};

/// A key of a table and what stands behind it.
struct Member {
  std::string name;
  Node node;
};

/// "a text", "a table": for messages.
std::string_view noun(Node::Type type);

/// What a tree was read from.
enum class Dialect { Toml, Json };

struct Tree {
  Node root;  ///< a Table; empty if there are problems
  Dialect dialect = Dialect::Toml;
  std::string file;
  std::vector<Problem> problems;  ///< of syntax
};

/// Longest text that is read; a description of 600 closures has about 100 kB.
inline constexpr std::size_t greatest_text = std::size_t{8} << 20;
/// Deepest nesting of tables and lists that is read.
inline constexpr int greatest_depth = 64;

/// Reads TOML. On a fault of syntax reading goes on with the next lines where
/// that makes sense, so that several are reported at once.
///
/// Codes  wire.syntax, wire.not_utf8, wire.too_large, wire.too_deep.
Tree read_toml(std::string_view text, const std::string& file);

/// Reads JSON. A key that stands twice in one object is a fault.
///
/// Codes  as read_toml(), and wire.doubled_key.
Tree read_json(std::string_view text, const std::string& file);

}  // namespace steamworthy::wire
