#include "rules/circumstances.h"

namespace steamworthy::rules {

std::optional<units::GaugePressure> pressure_of(Reference reference,
                                                const Circumstances& circumstances) {
  switch (reference) {
    case Reference::WorkingPressure:
      return circumstances.working_pressure;
    case Reference::OperatingPressure:
      return circumstances.operating_pressure;
    case Reference::LowestSafetyValve:
      return circumstances.lowest_safety_valve;
    case Reference::HighestSafetyValve:
      return circumstances.highest_safety_valve;
    case Reference::LesserOfWorkingAndHighestSafetyValve: {
      const auto working = circumstances.working_pressure;
      const auto valve = circumstances.highest_safety_valve;
      if (!working || !valve) return std::nullopt;
      return *working < *valve ? working : valve;
    }
    case Reference::DesignPressure:
      return circumstances.design_pressure;
    case Reference::ServiceLoading:
      return circumstances.service_loading;
    case Reference::BoilerTestPressure:
      return circumstances.boiler_test_pressure;
    case Reference::RetestPressure:
      return circumstances.retest_pressure;
    case Reference::OriginalTestPressure:
      return circumstances.original_test_pressure;
  }
  return std::nullopt;
}

std::optional<bool> known_trait(Trait trait, const Circumstances& circumstances) {
  const auto it = circumstances.traits.find(trait);
  if (it == circumstances.traits.end()) return std::nullopt;
  return it->second;
}

}  // namespace steamworthy::rules
