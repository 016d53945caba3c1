#include "boiler/metal.h"

#include "materials/steels.h"

namespace steamworthy::boiler {
namespace {

template <class Q>
void take(materials::Sourced<Q>& into, const std::optional<Q>& own, const std::string& source) {
  if (own) into = {*own, {materials::Trust::User, "", source}};
}

materials::Material completed(const OwnMaterial& own) {
  materials::Material material = materials::generic_boiler_steel();
  material.name = own.name;
  material.other_names.clear();
  material.family.clear();
  take(material.young, own.modulus, own.source);
  take(material.poisson, own.poisson, own.source);
  take(material.expansion, own.expansion, own.source);
  take(material.density, own.density, own.source);
  material.yield.clear();
  if (!own.yield.empty()) {
    materials::YieldCurve curve;
    for (const auto& [temperature, stress] : own.yield) {
      curve.points.push_back({temperature, stress});
    }
    curve.provenance = {materials::Trust::User, "", own.source};
    material.yield.push_back(std::move(curve));
  }
  return material;
}

}  // namespace

Metal metal(const Boiler& boiler, const std::string& name) {
  for (const OwnMaterial& own : boiler.materials) {
    if (own.name == name) return {completed(own), true};
  }
  if (!name.empty()) {
    if (auto shipped = materials::steel(name)) return {*std::move(shipped), true};
  }
  return {materials::generic_boiler_steel(), false};
}

Metal metal(const Boiler& boiler, const Part& part) { return metal(boiler, part.material); }

}  // namespace steamworthy::boiler
