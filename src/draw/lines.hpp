// Lines of spots: lengths, parts, shifts to a side, curves between two of them.
//
// Rules: y grows downwards, so that left of a line that goes up is the smaller x.
#pragma once

#include <cmath>
#include <vector>

#include "loopwright/draw/picture.hpp"

namespace loopwright::draw {

using Line = std::vector<Spot>;

inline Spot operator+(Spot a, Spot b) {
  return {a.x + b.x, a.y + b.y};
}
inline Spot operator-(Spot a, Spot b) {
  return {a.x - b.x, a.y - b.y};
}
inline Spot operator*(double factor, Spot a) {
  return {factor * a.x, factor * a.y};
}
// Not std::hypot, which guards against numbers no sheet has at several times the cost.
inline double length_of(Spot a) {
  return std::sqrt(a.x * a.x + a.y * a.y);
}
/// Of length 1; none of a vector of no length: then up the page.
Spot unit(Spot a);
/// Of length 1, a quarter turn to the left.
Spot left_of(Spot direction);
/// Towards an angle, clockwise from up the page, in degrees.
Spot towards_deg(double clockwise_from_up);
/// The angle of a direction, clockwise from up the page, 0 to 360.
double angle_deg(Spot direction);

double length_of(const Line& line);
/// The spot so far along a line, its ends when it is shorter.
Spot along(const Line& line, double length);
/// The direction of a line there, of length 1.
Spot direction_at(const Line& line, double length);
/// A spot of a line, and the direction of the line there, of length 1.
struct Step {
  Spot at, towards;
};
/// From its first spot in steps of this length, and its last spot; at each corner of it the direction that follows.
std::vector<Step> steps_along(const Line& line, double step);
/// The part between two lengths; at least two spots.
Line part_of(const Line& line, double from, double to);
Line reversed(Line line);
/// Moved sideways, to the left when positive; corners are mitred, at most three times as far.
Line shifted(const Line& line, double to_left);
/// Every spot times a factor, then moved.
Line scaled(Line line, double factor, Spot by = {});
/// Without the spots that lie within `off` of the line through the others.
Line simplified(const Line& line, double off);
/// A curve that leaves `a` in one direction and comes into `b` in another, without its ends.
Line curve(Spot a, Spot from, Spot b, Spot into);
/// Corners rounded, as far as their legs allow.
Line rounded(const Line& line, double radius);
/// A circle's arc, clockwise for positive degrees, from an angle from up.
Line arc(Spot middle, double radius, double from_deg, double turn_deg);
/// From its first spot to where it leaves a circle round `middle`; all of it when it doesn't.
Line up_to_circle(const Line& line, Spot middle, double radius);
void append(Line& line, const Line& more);

}  // namespace loopwright::draw
