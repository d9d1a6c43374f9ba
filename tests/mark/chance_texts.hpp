// What a build found, as short texts that a test can compare.
//
//   chances(town, Kind::roundabout)   // {"ScdW left 1", "ScdaN ahead 2", …}
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "support/built_town.hpp"

namespace loopwright::test {

using Texts = std::vector<std::string>;

/// Every chance of a kind: the letters of the nodes driven over, the movement, the exit's number.
/// In alphabetical order.
Texts chances(const BuiltTown& town, road::Kind kind);

/// Every place of a kind, by the object that says so ("w1", "nA").
Texts places(const BuiltTown& town, road::Kind kind);

/// What the runs of a kind are made of, by stretch: "AB certain width=4.5". In alphabetical order.
Texts run_facts(const BuiltTown& town, road::Kind kind);

/// Names of the places of a kind, in alphabetical order.
Texts place_names(const BuiltTown& town, road::Kind kind);

/// The arms of the first place of a kind in driving order, by the letters at their far ends:
/// "in C out D"; "-" for a way there isn't, "(private)" behind one that isn't public.
Texts arms(const BuiltTown& town, road::Kind kind);

/// Confidence and tag of all chances of a kind, each once: "certain highway=give_way nB".
Texts reasons(const BuiltTown& town, road::Kind kind);

/// All oddities of the report: "w1 roundabout isn't closed".
Texts oddities(const BuiltTown& town);

/// The control of the turn over the middle one of three nodes.
std::string_view control(const BuiltTown& town, std::string_view three_letters);

}  // namespace loopwright::test
