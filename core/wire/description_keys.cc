// Every key of a description, found by reading one that has a table of every
// kind and no values.
#include "wire/describe.h"
#include "wire/description.h"

namespace steamworthy::wire {
namespace {

Node table(std::vector<Member> members) {
  Node node;
  node.type = Node::Type::Table;
  node.members = std::move(members);
  return node;
}

Node list(std::vector<Node> items) {
  Node node;
  node.type = Node::Type::List;
  node.items = std::move(items);
  return node;
}

Node text(const std::string& value) {
  Node node;
  node.type = Node::Type::Text;
  node.text = value;
  return node;
}

Node head(const char* kind) { return table({{"kind", text(kind)}}); }

Node parts() {
  return list({
      table({{"kind", text("drum")},
             {"axis", text("inclined")},
             {"heads", head("elliptical")},
             {"place", table({})}}),
      table({{"kind", text("drum")},
             {"first_head", head("torispherical")},
             {"second_head", head("flat")}}),
      table({{"kind", text("header")}, {"shape", text("square_header")}}),
      table({{"kind", text("tube_bank")}}),
      table({{"kind", text("shell")}, {"inside", list({table({})})}}),
  });
}

}  // namespace

std::vector<std::string> description_keys(bool json) {
  Tree tree;
  tree.dialect = json ? Dialect::Json : Dialect::Toml;
  tree.root = table({{"boiler", table({})},
                     {"part", parts()},
                     {"house", table({})},
                     {"pump", table({})},
                     {"content", table({})},
                     {"material", list({table({{"yield", list({table({})})}})})},
                     {"closure", list({table({{"gasket", table({})}})})}});
  for (const char* key : {"section", "connection", "space", "way_in", "internal", "mounting",
                          "isolation", "temporary", "place_to_look", "gauge", "thermometer"}) {
    tree.root.members.push_back({key, list({table({})})});
  }
  if (!json) tree.root.members.push_back({"closure_pattern", list({table({})})});
  return keys_of(tree);
}

}  // namespace steamworthy::wire
