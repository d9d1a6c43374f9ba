// Drawn towns as chance makes them, for what must hold of any town.
//
//   Dice dice(seed);   const std::string drawing = random_town(dice);   built_town(draw_town(drawing, 60));
#pragma once

#include <string>

#include "loopwright/base/dice.hpp"

namespace loopwright::test {

/// The nodes of every random town: a square of four by four.
inline constexpr std::string_view random_town_nodes = "ABCDEFGHIJKLMNOP";

/// Most streets between neighbours of the square are there, each of a class, a speed and a sense of its own, and
/// some turns are banned. Streets that can't be reached or left may be among them. The same dice, the same town.
std::string random_town(Dice& dice);

}  // namespace loopwright::test
