#include "vessel/shapes.h"

#include <fmt/format.h>

#include <cmath>

#include "units/makers.h"
#include "vessel/section.h"

namespace steamworthy::vessel {
namespace {

std::string written(units::Length length) {
  return fmt::format("{:.6g} mm", units::in_millimetres(length));
}

// Gathers faults; `prefix` names the row of a firetube shell.
class Faults {
 public:
  void add(std::string code, std::string field, std::string found, std::string accepted,
           std::string message) {
    list_.push_back({std::move(code), "", 0, prefix + field, std::move(found), std::move(accepted),
                     std::move(message)});
  }

  bool positive(const char* code, const char* field, units::Length length) {
    if (length.si() > 0.0 && std::isfinite(length.si())) return true;
    add(code, field, written(length), "a length above zero", "is not above zero");
    return false;
  }

  void level(const char* field, units::Level level) {
    if (std::isfinite(level.si())) return;
    add("vessel.level", field, fmt::format("{} m", level.si()), "a height above the datum",
        "is not a number");
  }

  void slope(double slope_rad, double least) {
    if (slope_rad >= least && slope_rad <= detail::pi / 2.0) return;
    add("vessel.slope", "slope", fmt::format("{:.6g}°", slope_rad * 180.0 / detail::pi),
        least < 0.0 ? "from -90° (down) to 90° (up)" : "from 0° (lying) to 90° (standing)",
        "is outside its range");
  }

  void wall(const std::optional<units::Length>& wall) {
    if (wall) positive("vessel.wall", "wall", *wall);
  }

  void number(const char* code, const char* field, int value) {
    if (value >= 1) return;
    add(code, field, fmt::format("{}", value), "1 or more", "is less than one");
  }

  // A tube's wall must leave a bore.
  void tube_wall(units::Length outer_diameter, units::Length wall) {
    const bool outer = positive("vessel.outer_diameter", "outer_diameter", outer_diameter);
    if (!positive("vessel.wall", "wall", wall) || !outer || wall * 2.0 < outer_diameter) return;
    add("vessel.wall", "wall", written(wall),
        "less than half the outer diameter, " + written(outer_diameter / 2.0), "leaves no bore");
  }

  std::string prefix;
  std::vector<Problem> take() { return std::move(list_); }

 private:
  std::vector<Problem> list_;
};

void check(Faults& faults, const Cylinder& cylinder) {
  faults.positive("vessel.inner_diameter", "inner_diameter", cylinder.inner_diameter);
  faults.wall(cylinder.wall);
  faults.positive("vessel.length", "length", cylinder.length);
  faults.level("middle", cylinder.middle);
  faults.slope(cylinder.slope_rad, 0.0);
}

void check(Faults& faults, const Head& head) {
  const bool diameter =
      faults.positive("vessel.inner_diameter", "inner_diameter", head.inner_diameter);
  faults.wall(head.wall);
  faults.level("centre", head.centre);
  faults.slope(head.slope_rad, -detail::pi / 2.0);
  if (const auto* form = std::get_if<Ellipsoidal>(&head.form)) {
    if (!(form->ratio > 0.0) || !std::isfinite(form->ratio)) {
      faults.add("vessel.head_ratio", "ratio", fmt::format("{:.6g}", form->ratio),
                 "inner radius over depth, 2 for a 2:1 head", "is not above zero");
    }
  }
  if (const auto* form = std::get_if<Torispherical>(&head.form)) {
    const units::Length radius = head.inner_diameter / 2.0;
    if (diameter && !(form->crown_radius >= radius && std::isfinite(form->crown_radius.si()))) {
      faults.add("vessel.crown_radius", "crown_radius", written(form->crown_radius),
                 "at least half the inner diameter, " + written(radius),
                 "is too small for the diameter");
    }
    if (diameter && !(form->knuckle_radius.si() > 0.0 && form->knuckle_radius < radius)) {
      faults.add("vessel.knuckle_radius", "knuckle_radius", written(form->knuckle_radius),
                 "above zero and less than half the inner diameter, " + written(radius) +
                     " (a hemisphere is its own form)",
                 "does not fit the diameter");
    }
  }
}

void check(Faults& faults, const SquareHeader& header) {
  const bool width = faults.positive("vessel.inner_width", "inner_width", header.inner_width);
  const bool height = faults.positive("vessel.inner_height", "inner_height", header.inner_height);
  faults.wall(header.wall);
  faults.positive("vessel.length", "length", header.length);
  faults.level("middle", header.middle);
  faults.slope(header.slope_rad, 0.0);
  const units::Length least =
      (header.inner_width < header.inner_height ? header.inner_width : header.inner_height) / 2.0;
  if (width && height && !(header.corner_radius.si() >= 0.0 && header.corner_radius <= least)) {
    faults.add("vessel.corner_radius", "corner_radius", written(header.corner_radius),
               "from zero to half the shorter inner side, " + written(least),
               "does not fit the sides");
  }
}

void check(Faults& faults, const TubeBank& bank) {
  faults.number("vessel.tubes", "tubes", bank.tubes);
  faults.tube_wall(bank.outer_diameter, bank.wall);
  faults.positive("vessel.length", "length", bank.length);
  faults.level("bottom", bank.bottom);
  faults.level("top", bank.top);
  if (!(bank.bottom < bank.top)) {
    faults.add(
        "vessel.levels", "top", fmt::format("{:.6g} m", bank.top.si()),
        fmt::format("above the bottom, {:.6g} m; tubes that lie level are a cylinder with a count",
                    bank.bottom.si()),
        "is not above the bottom");
  }
}

void check_row(Faults& faults, const FiretubeShell& shell, const FlueRow& row) {
  faults.number("vessel.tubes", "tubes", row.tubes);
  faults.tube_wall(row.outer_diameter, row.wall);
  faults.level("level", row.level);
  if (row.length && faults.positive("vessel.length", "length", *row.length) &&
      *row.length > shell.length) {
    faults.add("vessel.length", "length", written(*row.length),
               "at most the shell's, " + written(shell.length), "is longer than the shell");
  }
  const units::Length reach = units::abs(row.level - shell.centre) + row.outer_diameter / 2.0;
  if (reach > shell.inner_diameter / 2.0) {
    faults.add(
        "vessel.row_outside_shell", "level", fmt::format("{:.6g} m", row.level.si()),
        fmt::format("a level at which the tube lies within the shell, {:.6g} to {:.6g} m",
                    (shell.centre - shell.inner_diameter / 2.0 + row.outer_diameter / 2.0).si(),
                    (shell.centre + shell.inner_diameter / 2.0 - row.outer_diameter / 2.0).si()),
        "puts the tube through the shell");
  }
}

void check(Faults& faults, const FiretubeShell& shell) {
  const bool diameter =
      faults.positive("vessel.inner_diameter", "inner_diameter", shell.inner_diameter);
  const bool length = faults.positive("vessel.length", "length", shell.length);
  faults.wall(shell.wall);
  faults.level("centre", shell.centre);
  if (!diameter || !length) return;
  double taken = 0.0;
  for (std::size_t i = 0; i < shell.rows.size(); ++i) {
    const FlueRow& row = shell.rows[i];
    faults.prefix = fmt::format("row[{}].", i + 1);
    check_row(faults, shell, row);
    const double d = row.outer_diameter.si();
    taken += row.tubes * d * d * (row.length ? row.length->si() : shell.length.si());
  }
  faults.prefix.clear();
  const double room = shell.inner_diameter.si() * shell.inner_diameter.si() * shell.length.si();
  if (!(taken < room)) {
    faults.add("vessel.rows_fill_shell", "rows",
               fmt::format("{:.3g} % of the shell", 100.0 * taken / room),
               "furnaces and tubes that leave room for water", "leave no room for water");
  }
}

}  // namespace

std::vector<Problem> faults(const Body& body) {
  Faults faults;
  faults.number("vessel.count", "count", body.count);
  std::visit([&](const auto& shape) { check(faults, shape); }, body.shape);
  return faults.take();
}

void require_sound(const Body& body) {
  auto found = faults(body);
  if (!found.empty()) throw BadInput(std::move(found));
}

}  // namespace steamworthy::vessel
