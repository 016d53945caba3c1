#include "boiler/circuit.h"

#include <algorithm>
#include <map>

#include "boiler/content.h"
#include "boiler/filling.h"

namespace steamworthy::boiler {
namespace {

using units::Level;
using units::Volume;

constexpr double tolerance = 1e-3;  // level_tolerance, in metres

/// One body of water in which air rises and water falls freely: a part, or one
/// leg of a loop. Plain metres inside.
struct Node {
  std::size_t part;
  double bottom;  // of its water, ends of tubes taken at their holes
  double top;
  double share;  // of the part's volume
};

struct Edge {
  std::size_t a;
  std::size_t b;
  double water_sill;  // water must stand above this to pass
  double air_sill;    // air must reach below this to pass
};

/// A vent or drain: a hole to the outside.
struct Outlet {
  std::size_t node;
  double level;
  std::string mounting;
};

struct Network {
  std::vector<Node> nodes;
  std::vector<Edge> edges;
  std::vector<Outlet> vents;
  std::vector<Outlet> drains;
  std::vector<std::vector<std::size_t>> nodes_of_part;
};

bool is_drain(MountingKind kind) {
  return kind == MountingKind::Drain || kind == MountingKind::Blowdown;
}

/// The level of a stated hole, kept within the part that it is in.
double within(const Part& part, Level level) {
  return std::clamp(level.si(), lowest(part).si(), highest(part).si());
}

class Builder {
 public:
  explicit Builder(const Boiler& boiler) : boiler_(boiler) {
    for (std::size_t i = 0; i < boiler.parts.size(); ++i) index_[boiler.parts[i].tag] = i;
    network_.nodes_of_part.resize(boiler.parts.size());
    for (std::size_t i = 0; i < boiler.parts.size(); ++i) add_nodes(i);
    for (std::size_t i = 0; i < boiler.parts.size(); ++i) join_tubes(i);
    for (const Connection& connection : boiler.connections) join(connection);
    for (const Mounting& mounting : boiler.mountings) add_outlet(mounting);
  }

  Network take() { return std::move(network_); }

 private:
  const std::size_t* find(const std::string& tag) const {
    const auto found = index_.find(tag);
    return found == index_.end() ? nullptr : &found->second;
  }

  void add_node(std::size_t part, double bottom, double top, double share) {
    network_.nodes_of_part[part].push_back(network_.nodes.size());
    network_.nodes.push_back({part, bottom, std::max(bottom, top), share});
  }

  void add_nodes(std::size_t i) {
    const Part& part = boiler_.parts[i];
    double bottom = lowest(part).si();
    double top = highest(part).si();
    const auto* tubes = std::get_if<Tubes>(&part.shape);
    if (tubes == nullptr) {
      add_node(i, bottom, top, 1.0);
      return;
    }
    const std::size_t* from = find(tubes->from);
    const std::size_t* to = find(tubes->to);
    const double from_level =
        from ? within(boiler_.parts[*from], tubes->from_level) : tubes->from_level.si();
    const double to_level = to ? within(boiler_.parts[*to], tubes->to_level) : tubes->to_level.si();
    switch (tubes->run) {
      case Run::Straight:
        if (from != nullptr) bottom = std::max(bottom, from_level);
        if (to != nullptr) top = std::min(top, to_level);
        add_node(i, bottom, top, 1.0);
        return;
      case Run::Hanging:
        add_node(i, bottom, from ? std::min(top, from_level) : top, 0.5);
        add_node(i, bottom, to ? std::min(top, to_level) : top, 0.5);
        return;
      case Run::Standing:
        add_node(i, from ? std::max(bottom, from_level) : bottom, top, 0.5);
        add_node(i, to ? std::max(bottom, to_level) : bottom, top, 0.5);
        return;
    }
  }

  void join_tubes(std::size_t i) {
    const Part& part = boiler_.parts[i];
    const auto* tubes = std::get_if<Tubes>(&part.shape);
    if (tubes == nullptr) return;
    const std::vector<std::size_t>& nodes = network_.nodes_of_part[i];
    if (nodes.size() == 2) {
      const double bend =
          (tubes->run == Run::Hanging ? tubes->bottom_level : tubes->top_level).si();
      network_.edges.push_back({nodes[0], nodes[1], bend, bend});
    }
    join_end(nodes.front(), tubes->from, tubes->from_level);
    join_end(nodes.back(), tubes->to, tubes->to_level);
  }

  void join_end(std::size_t node, const std::string& tag, Level level) {
    const std::size_t* other = find(tag);
    if (other == nullptr) return;
    const double hole = within(boiler_.parts[*other], level);
    network_.edges.push_back({node, first_node(*other), hole, hole});
  }

  void join(const Connection& connection) {
    const std::size_t* from = find(connection.from);
    const std::size_t* to = find(connection.to);
    if (from == nullptr || to == nullptr) return;
    const double a = within(boiler_.parts[*from], connection.from_level);
    const double b = within(boiler_.parts[*to], connection.to_level);
    network_.edges.push_back({first_node(*from), first_node(*to), std::max(a, b), std::min(a, b)});
  }

  void add_outlet(const Mounting& mounting) {
    const bool vent = mounting.kind == MountingKind::Vent;
    if (!vent && !is_drain(mounting.kind)) return;
    const std::size_t* part = find(mounting.part);
    if (part == nullptr) return;
    const double level = opening_level(boiler_, mounting).si();
    (vent ? network_.vents : network_.drains).push_back({first_node(*part), level, mounting.tag});
  }

  /// Of the two legs of a loop, the first: a hole into a loop is rare, and one at
  /// the bend serves both legs by way of it.
  std::size_t first_node(std::size_t part) const { return network_.nodes_of_part[part].front(); }

  const Boiler& boiler_;
  std::map<std::string, std::size_t> index_;
  Network network_;
};

using Sills = std::vector<std::optional<double>>;

/// For each node the least sill over all paths to the outlets: minimax by
/// relaxation until nothing changes. `sign` -1 turns everything upside down.
Sills least_sills(const Network& network, const std::vector<Outlet>& outlets, double sign) {
  Sills sills(network.nodes.size());
  for (const Outlet& outlet : outlets) {
    std::optional<double>& at = sills[outlet.node];
    const double level = sign * outlet.level;
    if (!at || level < *at) at = level;
  }
  for (bool changed = true; changed;) {
    changed = false;
    for (const Edge& edge : network.edges) {
      const double sill = sign * (sign > 0.0 ? edge.water_sill : edge.air_sill);
      const auto relax = [&](std::size_t from, std::size_t to) {
        if (!sills[from]) return;
        const double through = std::max(sill, *sills[from]);
        if (!sills[to] || through < *sills[to]) {
          sills[to] = through;
          changed = true;
        }
      };
      relax(edge.a, edge.b);
      relax(edge.b, edge.a);
    }
  }
  return sills;
}

/// The outlets by which a part's water (sign 1) or air (-1) leaves as far as by
/// any; of these the nearest, by the number of holes passed.
std::vector<std::string> serving(const Network& network, std::size_t part,
                                 const std::vector<Outlet>& outlets, const Sills& best,
                                 double sign) {
  std::vector<std::size_t> at = network.nodes_of_part[part];
  std::vector<bool> seen(network.nodes.size(), false);
  double enough = -1e300;
  for (std::size_t node : at) {
    const Node& n = network.nodes[node];
    enough = std::max({enough, *best[node], sign > 0.0 ? n.bottom : -n.top});
    seen[node] = true;
  }
  enough += tolerance;
  while (!at.empty()) {
    std::vector<std::string> result;
    for (const Outlet& outlet : outlets) {
      const bool here = std::find(at.begin(), at.end(), outlet.node) != at.end();
      if (here && sign * outlet.level <= enough) result.push_back(outlet.mounting);
    }
    if (!result.empty()) return result;
    std::vector<std::size_t> next;
    for (const Edge& edge : network.edges) {
      if (sign * (sign > 0.0 ? edge.water_sill : edge.air_sill) > enough) continue;
      for (const auto& [from, to] : {std::pair{edge.a, edge.b}, std::pair{edge.b, edge.a}}) {
        if (!seen[to] && std::find(at.begin(), at.end(), from) != at.end()) {
          seen[to] = true;
          next.push_back(to);
        }
      }
    }
    at = std::move(next);
  }
  return {};
}

class Judge {
 public:
  Judge(const Boiler& boiler, const Network& network)
      : boiler_(boiler),
        network_(network),
        air_(least_sills(network, network.vents, -1.0)),
        water_(least_sills(network, network.drains, 1.0)) {}

  PartCircuit judge(std::size_t i) const {
    const Part& part = boiler_.parts[i];
    PartCircuit result;
    result.part = part.tag;
    const Volume all = water_content(part);
    bool air_reached = true;
    bool water_reached = true;
    for (std::size_t node : network_.nodes_of_part[i]) {
      const Node& n = network_.nodes[node];
      if (!air_[node]) {
        air_reached = false;
        result.trapped_air += n.share * all;
      } else if (const double above = -*air_[node]; above < n.top - tolerance) {
        result.trapped_air += n.share * (all - volume_below(part, Level::from_si(above)));
      }
      if (!water_[node]) {
        water_reached = false;
        result.held_water += n.share * all;
      } else if (const double below = *water_[node]; below > n.bottom + tolerance) {
        result.held_water += n.share * volume_below(part, Level::from_si(below));
      }
    }
    if (air_reached) {
      result.air_above = extreme(i, air_, -1.0);
      result.vents = serving(network_, i, network_.vents, air_, -1.0);
    }
    if (water_reached) {
      result.water_below = extreme(i, water_, 1.0);
      result.drains = serving(network_, i, network_.drains, water_, 1.0);
    }
    const auto* tubes = std::get_if<Tubes>(&part.shape);
    result.fills_by_spilling = tubes != nullptr && tubes->run == Run::Hanging;
    return result;
  }

 private:
  /// The worse of the part's nodes.
  Level extreme(std::size_t part, const Sills& sills, double sign) const {
    double worst = -1e300;
    for (std::size_t node : network_.nodes_of_part[part]) worst = std::max(worst, *sills[node]);
    return Level::from_si(sign * worst);
  }

  const Boiler& boiler_;
  const Network& network_;
  Sills air_;
  Sills water_;
};

}  // namespace

Level opening_level(const Boiler& boiler, const Mounting& mounting) {
  if (mounting.opening_level) return *mounting.opening_level;
  const Part* part = find_part(boiler, mounting.part);
  return part == nullptr ? mounting.level : Level::from_si(within(*part, mounting.level));
}

Circuit circuit(const Boiler& boiler) {
  Circuit result;
  const Network network = Builder(boiler).take();
  const bool joined = boiler.parts.size() == 1 || !network.edges.empty();
  result.described = joined && !(network.vents.empty() && network.drains.empty());
  if (!result.described) return result;
  const Judge judge(boiler, network);
  for (std::size_t i = 0; i < boiler.parts.size(); ++i) result.parts.push_back(judge.judge(i));
  result.filling = filling_order(boiler);
  return result;
}

}  // namespace steamworthy::boiler
