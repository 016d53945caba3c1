#include "wire/node.h"

namespace steamworthy::wire {

const Node* Node::find(std::string_view key) const {
  for (const auto& [name, node] : members) {
    if (name == key) return &node;
  }
  return nullptr;
}

std::string_view noun(Node::Type type) {
  switch (type) {
    case Node::Type::Text:
      return "a text";
    case Node::Type::Integer:
    case Node::Type::Number:
      return "a number";
    case Node::Type::Boolean:
      return "true or false";
    case Node::Type::Date:
      return "a date or time";
    case Node::Type::Table:
      return "a table";
    case Node::Type::List:
      return "a list";
    case Node::Type::Nothing:
      break;
  }
  return "nothing";
}

}  // namespace steamworthy::wire
