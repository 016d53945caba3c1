// Growth: how much more a body holds under inner pressure and when its metal warms.
//
// Elastic, small strains, metal at one temperature. Edge effects where head meets shell are left
// out; what that means for each shape is in docs/methods/vessel-*.md.
#pragma once

#include <optional>
#include <string_view>

#include "materials/material.h"
#include "units/quantity.h"
#include "vessel/shapes.h"

namespace steamworthy::vessel {

enum class GrowthRemark {
  None,
  WallNotStated,      ///< no value
  StayedPlateRigid,   ///< the value is zero because stays are taken as rigid
  HingedOrClamped,    ///< an unstayed flat plate: the two ways of holding it differ fourfold
  KnuckleByMembrane,  ///< membrane theory: overstates the knuckle of a thin dished head
  FramePerLength,     ///< a square header as a long frame: its ends are not counted
  PlatesMoveAsOne,    ///< firetube: end plates flat and rigid, shell and tubes stretch alike
};

struct Growth {
  std::optional<units::VolumePerPressure> value;
  std::string_view formula;  ///< in plain characters, symbols as in the method page
  std::string_view method;   ///< page of docs/methods
  GrowthRemark remark = GrowthRemark::None;
};

/// How much the water space grows for each unit of pressure inside above that outside.
Growth growth_per_pressure(const Body& body, const materials::Elasticity& metal);

/// How much a volume grows with its metal, for each kelvin: 3 alpha V.
units::VolumePerTemperature growth_per_kelvin(units::Volume volume, units::Expansivity alpha);

/// (1/V) dV/dp of a thick cylinder by Lamé, for a bore of radius a and an outer radius b:
///
///   closed    [3(1 - 2 nu) a^2 + 2(1 + nu) b^2] / [E (b^2 - a^2)]
///   anchored  2(1 + nu)[(1 - 2 nu) a^2 + b^2] / [E (b^2 - a^2)]
///   open      2[(1 - nu) a^2 + (1 + nu) b^2] / [E (b^2 - a^2)]   (the bore alone; its length is
///   not counted)
///
/// Range    b > a > 0.
/// Throws   OutOfRange "vessel.radii".
/// Source   Lamé's stresses and Hooke's law [Timoshenko-II]; docs/methods/vessel-cylinder.md.
/// Checked  growth_test.cc: thin wall, thick wall, endless block 2(1 + nu)/E, printed cases.
units::Compressibility cylinder_growth(units::Length inner_radius, units::Length outer_radius,
                                       Ends ends, const materials::Elasticity& metal);

/// The same for a thick sphere: 3[2(1 - 2 nu) a^3 + (1 + nu) b^3] / [2 E (b^3 - a^3)].
units::Compressibility sphere_growth(units::Length inner_radius, units::Length outer_radius,
                                     const materials::Elasticity& metal);

/// k in dV/dp = k pi R^4 / (E t) for one ellipsoidal head of mean radius R and depth R/ratio, by
/// the membrane's strain energy (dV = 2U/p). k(2, 0.3) = 1.23217.
///
/// Range    ratio > 0.
/// Throws   OutOfRange "vessel.head_ratio".
/// Checked  growth_test.cc: numerical integration; a hemisphere gives the thin sphere.
double ellipsoidal_head_factor(double ratio, double poisson);

}  // namespace steamworthy::vessel
