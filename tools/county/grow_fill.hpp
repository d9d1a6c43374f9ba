// Fills a patch of ground with streets that start at the roads round it and in it.
//
//   fill(ground, {.name = …, .outline = …, .figures = figures_of(Style::avenues), .tags = …}, dice);
#pragma once

#include <string>
#include <vector>

#include "county/grow.hpp"
#include "county/grow_trace.hpp"

namespace loopwright::county {

/// What makes the streets of one style look as they do. Metres, chances from 0 to 1, radians.
struct Figures {
  double along_gap_m = 80;
  double across_gap_m = 170;
  double follow = 0.5;
  double wobble = 0.05;
  double bow = 0;
  double sway = 0.3;    ///< how far the grain turns from place to place
  double closed = 0.2;  ///< chance that a street is meant as a cul-de-sac
  double cross = 0.1;
  double entry_m = 170;  ///< between streets that lead in from the roads round it
  double longest_m = 600;
  double closed_m = 110;  ///< usual length of a cul-de-sac
  double close_m = 22;
  double loose = 0.3;  ///< chance that a street which finds nothing to join is kept
  double hole_m = 60;  ///< a place this far from every street gets a cul-de-sac
};
Figures figures_of(Style style);

struct Patch {
  std::string name;
  std::vector<Spot> outline;
  Figures figures;
  Tags tags;                                                                  ///< of every street
  std::function<Tags(bool closed, double length, Dice& dice)> street_tags{};  ///< of one
  int schools = 0;    ///< grounds to find room for
  int rank = 1;       ///< joins no road less important than this
  bool fast = false;  ///< may join roads of the national limit
};
void fill(Ground& ground, const Patch& patch, Dice& dice);

/// An angle that changes smoothly over the ground, within sway of the base.
std::function<double(Spot)> grain_of(double base, double sway, std::uint64_t seed);
/// Of an outline's longest side.
double longest_side(const std::vector<Spot>& outline);

}  // namespace loopwright::county
