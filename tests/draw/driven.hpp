// Loops for pictures, and what is drawn in them.
#pragma once

#include <string_view>

#include "loopwright/draw/sketch.hpp"
#include "support/built_town.hpp"

namespace loopwright::test {

/// A roundabout A B C D with a road out to each quarter: W, N, E, S. One drives on the right there.
BuiltTown right_driving_ring();

/// A drive over the letters of a town, with nothing but its stretches.
wish::Loop driven(const BuiltTown& town, std::string_view letters);

/// The way that a chance takes, as a drive.
wish::Loop driven(const road::Roads& roads, const road::Chance& chance);

/// The car's way in a picture: the last thick black line before its bar.
std::vector<draw::Spot> way_in(const draw::Picture& picture);

/// Lines drawn in the pale tone.
std::vector<draw::Stroke> pale_in(const draw::Picture& picture);

std::vector<draw::Label> labels_in(const draw::Picture& picture);

/// Pairs of labels that overlap, and labels that leave the picture, in words; empty when all is well.
std::vector<std::string> label_faults(const draw::Picture& picture);

/// Clockwise from up, as seen from the middle of a picture.
double seen_deg(const draw::Picture& picture, draw::Spot spot);

}  // namespace loopwright::test
