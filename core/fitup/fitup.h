// Fit-up: how a manway plate sits in its opening, from the gaps round its shoulder.
//
// The gap between the edge of the opening and the shoulder of the plate is felt with feelers at
// four places or more. From these judge_fit() says how far the plate sits off the middle and which
// way, how much smaller it is than its opening, and whether it is good, good once moved, to be
// reported, or not to be told apart with this feeler.
//
// A plate smaller than its opening by the same gap c all round, shifted by u, leaves
//
//   g(place) = c - u . n(place)
//
// where n is the outward normal of the edge: cosine and sine of the bearing for a circle, those of
// the ellipse's normal for an oval. A feeler of thickness g that goes in where the next, thicker by
// `step`, does not, says that the gap lies between g and g + step.
//
// Method, derivation and worked example: docs/methods/fitup.md.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fitup/opening.h"
#include "units/quantity.h"
#include "working/figure.h"

namespace steamworthy::fitup {

/// One place felt.
struct GapReading {
  double clock = 12.0;  ///< 0 to 12, facing the closure from outside; 1.5 is half past one
  units::Length gap;    ///< the thickest feeler that goes in; nothing: none does
  units::Length step;   ///< to the next thicker one, which does not go in
};

struct FitRequest {
  std::string closure;  ///< tag, for the figures
  Outline outline;
  std::vector<GapReading> readings;
  std::optional<units::Length> makers_limit;  ///< greatest gap by the maker's book; else 1/16 in
};

enum class FitVerdict {
  GoodAsItStands,
  GoodOnceMoved,
  Report,      ///< no place of the plate brings every gap within the limit
  CannotTell,  ///< within the feeler's step, or the places do not reach all round
};
/// "good_as_it_stands", ...
std::string_view token(FitVerdict verdict);

struct FitAnswer {
  FitVerdict verdict = FitVerdict::CannotTell;
  working::Message sentence;             ///< the verdict, with what to do
  std::vector<working::Message> notes;   ///< what else to know
  std::vector<working::Figure> figures;  ///< "fitup.off_centre", "fitup.clearance", ...

  // The same in plain numbers, millimetres, for drawing it on the plate.
  Plane off_centre;      ///< of the plate against its opening, best estimate
  Plane off_centre_sd;   ///< one standard deviation of each component
  double clearance = 0;  ///< c: the gap all round when centred
  double clearance_sd = 0;
  Plane move;             ///< what to move it by; nothing unless GoodOnceMoved or Report
  double worst_now = 0;   ///< the most that any gap felt can be, as it stands
  double worst_then = 0;  ///< the most that any of them can be after the move
};

/// The greatest gap all round: 1/16 in, common practice, no source.
inline constexpr units::Length usual_limit = units::Length::from_si(0.0254 / 16.0);
inline constexpr std::size_t fewest_readings = 4;
inline constexpr std::size_t most_readings = 60;

/// Judges a plate.
///
/// GoodAsItStands, GoodOnceMoved
///          every gap felt, taken at its greatest (g + step), is within the limit, and so is the
///          gap that the fit gives all round, with two standard deviations.
/// Report   even at their least (g) the gaps cannot all be brought within the limit by moving the
///          plate: the least greatest gap over all moves is above it.
/// CannotTell  anything between, and places that leave more than a third of the way round unfelt.
///
/// Range    shifts small against the opening: g(place) is linear in u to u^2 / (2 a).
/// Throws   BadInput "fitup.too_few_readings", "fitup.too_many_readings", "fitup.bad_reading",
///          "fitup.bad_opening", "fitup.bad_limit": all faults at once.
/// Source   the limit: common practice, no source. The rest is derived in the method's page.
/// Checked  fitup_test.cc: made-up plates whose gaps are computed exactly, not by the linear form.
FitAnswer judge_fit(const FitRequest& request);

}  // namespace steamworthy::fitup
