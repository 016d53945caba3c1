// Parts: what each shape answers, in plain SI numbers, for one body. Internal to the room;
// volume.cc and growth.cc choose among these and multiply by the count.
#pragma once

#include "vessel/growth.h"
#include "vessel/shapes.h"

namespace steamworthy::vessel::detail {

struct Span {
  double bottom;
  double top;
};

double volume(const Cylinder& cylinder);
double below(const Cylinder& cylinder, double level);
double surface(const Cylinder& cylinder, double level);
Span span(const Cylinder& cylinder);
double centroid(const Cylinder& cylinder);
double wetted(const Cylinder& cylinder);
std::optional<double> metal(const Cylinder& cylinder);
Growth growth(const Cylinder& cylinder, const materials::Elasticity& steel);

double volume(const Head& head);
double below(const Head& head, double level);
double surface(const Head& head, double level);
Span span(const Head& head);
double centroid(const Head& head);
double wetted(const Head& head);
std::optional<double> metal(const Head& head);
Growth growth(const Head& head, const materials::Elasticity& steel);

double volume(const SquareHeader& header);
double below(const SquareHeader& header, double level);
double surface(const SquareHeader& header, double level);
Span span(const SquareHeader& header);
double centroid(const SquareHeader& header);
double wetted(const SquareHeader& header);
std::optional<double> metal(const SquareHeader& header);
Growth growth(const SquareHeader& header, const materials::Elasticity& steel);

double volume(const TubeBank& bank);
double below(const TubeBank& bank, double level);
double surface(const TubeBank& bank, double level);
Span span(const TubeBank& bank);
double centroid(const TubeBank& bank);
double wetted(const TubeBank& bank);
std::optional<double> metal(const TubeBank& bank);
Growth growth(const TubeBank& bank, const materials::Elasticity& steel);

double volume(const FiretubeShell& shell);
double below(const FiretubeShell& shell, double level);
double surface(const FiretubeShell& shell, double level);
Span span(const FiretubeShell& shell);
double centroid(const FiretubeShell& shell);
double wetted(const FiretubeShell& shell);
std::optional<double> metal(const FiretubeShell& shell);
Growth growth(const FiretubeShell& shell, const materials::Elasticity& steel);

}  // namespace steamworthy::vessel::detail
