// Layout: the boiler to scale as seen from one side: parts, tube banks, closures
// and mountings as lines in metres, ready to be drawn at any size.
//
// What the description does not say is drawn all the same, and said: a part
// without a place in plan, a closure without a position along its part, and every
// mounting, of which only the level is described, carry `assumed`. Tubes are drawn
// as banks: some of their lines, not each tube.
//
// Each closure and each mounting is in exactly one of the four views. Start
// reading at drawing().
#pragma once

#include <string>
#include <vector>

#include "boiler/boiler.h"

namespace steamworthy::boiler {

/// From where one looks. Right and Left are sides as seen from the front: from the right,
/// the front is at the left hand.
enum class View { Front, Right, Rear, Left };

/// A point of a view, in metres: `across` to the right, `level` above the datum.
struct Spot {
  double across = 0.0;
  double level = 0.0;
};

struct DrawnLine {
  std::vector<Spot> points;
  bool closed = false;
};

struct DrawnPart {
  std::string tag;
  std::vector<DrawnLine> outline;  ///< of the metal
  std::vector<DrawnLine> thin;     ///< tubes of a bank, what stands inside a shell
  Spot label;                      ///< where its tag may stand
  bool assumed = false;
};

struct DrawnClosure {
  std::string tag;
  std::string part;
  Spot centre;
  double width = 0.0;   ///< as seen, metres
  double height = 0.0;  ///< as seen; a fraction of the width where it is seen from its edge
  OpeningShape shape = OpeningShape::Oval;
  bool edge_on = false;  ///< in the top or bottom of its part
  bool assumed = false;
};

struct DrawnMounting {
  std::string tag;
  std::string part;
  Spot at;    ///< of the valve or instrument
  Spot root;  ///< where its branch leaves the part
  bool assumed = true;
};

struct Drawing {
  View view = View::Front;
  std::vector<DrawnPart> parts;
  std::vector<DrawnClosure> closures;
  std::vector<DrawnMounting> mountings;
  Spot lower_left;  ///< of everything drawn
  Spot upper_right;

  double width() const { return upper_right.across - lower_left.across; }
  double height() const { return upper_right.level - lower_left.level; }
};

/// The view of a boiler. A boiler without parts has nothing to draw: the drawing is then empty
/// but for a frame from its lowest to its highest water.
Drawing drawing(const Boiler& boiler, View view);

/// One part alone from that side, as drawing() shows it, with what is on it.
Drawing part_drawing(const Boiler& boiler, const std::string& part, View view);

/// The sides from which closures or mountings of the part are seen.
std::vector<View> views_of(const Boiler& boiler, const std::string& part);

/// The side from which one reaches the part: the view in which its length is seen from the nearer
/// side. Front for a part that the boiler has not.
View side_of(const Boiler& boiler, const std::string& part);

}  // namespace steamworthy::boiler
