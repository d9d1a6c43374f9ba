// Roads, practice chances and turn rules in a few words, each with what says so.
#pragma once

#include <string>

#include "loopwright/road/roads.hpp"

namespace loopwright::command {

/// " (text)", or nothing when there is no text.
std::string in_brackets(std::string_view text);

/// "Osk Road (A7904)", "unnamed road"
std::string road_name(const road::Roads& roads, const road::Piece& piece);

/// "roundabout:right, exit 3"
std::string practice_name(const road::Chance& chance);

/// "roundabout:right, exit 3, hardness 3, certain: junction=roundabout (way/5)"
std::string chance_text(const road::Roads& roads, const road::Chance& chance);

/// Where a chance lies: its place, or for a run of road the point where one enters it.
Point point_of(const road::Roads& roads, const road::Chance& chance);

/// A junction by its own name when it has one; a run of road by the street one enters it on.
std::string street_of(const road::Roads& roads, const road::Chance& chance);

/// "restriction=no_right_turn: from Osk Road not into Mill Street (relation/7)"
std::string rule_text(const road::Roads& roads, const road::TurnRule& rule);

}  // namespace loopwright::command
