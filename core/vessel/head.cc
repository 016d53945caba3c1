// Heads: chooses among the forms. docs/methods/vessel-heads.md.
#include <type_traits>

#include "units/makers.h"
#include "vessel/head_forms.h"
#include "vessel/parts.h"

namespace steamworthy::vessel::detail {
namespace {

using Solid = std::variant<EllipsoidalHead, TorisphericalHead>;

double radius(const Head& head) { return head.inner_diameter.si() / 2.0; }

// The water space of a head, or that of a head whose every size is larger by `extra`.
std::optional<Solid> solid(const Head& head, double extra = 0.0) {
  const double R = radius(head);
  if (const auto* form = std::get_if<Ellipsoidal>(&head.form)) {
    return EllipsoidalHead{R + extra, R / form->ratio + extra};
  }
  if (const auto* form = std::get_if<Torispherical>(&head.form)) {
    return TorisphericalHead{R + extra, form->crown_radius.si() + extra,
                             form->knuckle_radius.si() + extra};
  }
  if (std::holds_alternative<Hemispherical>(head.form))
    return EllipsoidalHead{R + extra, R + extra};
  return std::nullopt;  // flat: no depth
}

template <class F>
double of_solid(const Head& head, double flat, F f) {
  const auto form = solid(head);
  return form ? std::visit(f, *form) : flat;
}

Growth flat_growth(const Head& head, PlateEdge edge, const materials::Elasticity& steel) {
  Growth growth;
  growth.method = "vessel-heads";
  if (edge == PlateEdge::Stayed) {
    growth.formula = "dV/dp = 0";
    growth.value = units::VolumePerPressure{};
    growth.remark = GrowthRemark::StayedPlateRigid;
    return growth;
  }
  growth.formula = edge == PlateEdge::Clamped
                       ? "dV/dp = pi R^6 / (192 D), D = E t^3 / [12 (1 - nu^2)]"
                       : "dV/dp = pi R^6 / (192 D) (7 + nu)/(1 + nu), D = E t^3 / [12 (1 - nu^2)]";
  growth.remark = GrowthRemark::HingedOrClamped;
  const double R = radius(head);
  const double t = head.wall->si();
  const double nu = steel.poisson;
  const double D = steel.young.si() * t * t * t / (12.0 * (1.0 - nu * nu));
  const double clamped = pi * R * R * R * R * R * R / (192.0 * D);
  growth.value = units::cubic_metres_per_pascal(
      edge == PlateEdge::Clamped ? clamped : clamped * (7.0 + nu) / (1.0 + nu));
  return growth;
}

}  // namespace

double volume(const Head& head) {
  return of_solid(head, 0.0, [](const auto& form) { return form.volume(); });
}

double below(const Head& head, double level) {
  const Slope slope = slope_of(head.slope_rad);
  return of_solid(head, 0.0,
                  [&](const auto& form) { return form.below(slope, level - head.centre.si()); });
}

double surface(const Head& head, double level) {
  const Slope slope = slope_of(head.slope_rad);
  return of_solid(head, 0.0,
                  [&](const auto& form) { return form.surface(slope, level - head.centre.si()); });
}

Span span(const Head& head) {
  const Slope slope = slope_of(head.slope_rad);
  const auto form = solid(head);
  const double rim = radius(head) * slope.c;
  const Span own =
      form ? std::visit([&](const auto& f) { return f.span(slope); }, *form) : Span{-rim, rim};
  return {head.centre.si() + own.bottom, head.centre.si() + own.top};
}

double centroid(const Head& head) {
  const Slope slope = slope_of(head.slope_rad);
  return head.centre.si() +
         of_solid(head, 0.0, [&](const auto& form) { return form.centroid(slope); });
}

double wetted(const Head& head) {
  return of_solid(head, pi * radius(head) * radius(head),
                  [](const auto& form) { return form.area(); });
}

std::optional<double> metal(const Head& head) {
  if (!head.wall) return std::nullopt;
  const double t = head.wall->si();
  const auto outer = solid(head, t);
  if (!outer) return pi * radius(head) * radius(head) * t;
  return std::visit([](const auto& form) { return form.volume(); }, *outer) - volume(head);
}

Growth growth(const Head& head, const materials::Elasticity& steel) {
  const auto* flat = std::get_if<Flat>(&head.form);
  if (!head.wall && !(flat != nullptr && flat->edge == PlateEdge::Stayed)) {
    return {std::nullopt, "", "vessel-heads", GrowthRemark::WallNotStated};
  }
  if (flat != nullptr) return flat_growth(head, flat->edge, steel);
  const double R = radius(head);
  const double t = head.wall->si();
  Growth growth;
  growth.method = "vessel-heads";
  if (const auto* form = std::get_if<Ellipsoidal>(&head.form)) {
    const double middle = R + t / 2.0;
    growth.formula = "dV/dp = k pi R_m^4 / (E t)";
    growth.value =
        units::cubic_metres_per_pascal(ellipsoidal_head_factor(form->ratio, steel.poisson) * pi *
                                       middle * middle * middle * middle / (steel.young.si() * t));
  } else if (std::holds_alternative<Hemispherical>(head.form)) {
    growth.formula = "dV/dp = V 3[2(1 - 2 nu) a^3 + (1 + nu) b^3] / [2 E (b^3 - a^3)]";
    growth.value = units::cubic_metres(volume(head)) *
                   sphere_growth(units::metres(R), units::metres(R + t), steel);
  } else {
    growth.formula =
        "dV/dp = integral of (N_phi^2 + N_theta^2 - 2 nu N_phi N_theta) dA / (p^2 E t)";
    growth.remark = GrowthRemark::KnuckleByMembrane;
    growth.value = units::cubic_metres_per_pascal(
        std::get<TorisphericalHead>(*solid(head, t / 2.0)).growth(t, steel));
  }
  return growth;
}

}  // namespace steamworthy::vessel::detail
