// Random restrictions over ways, held against a plain reading of the rules: whoever looks at the
// whole drive and each rule must come to the same answer as the turn graph.
#include <catch2/catch.hpp>
#include <random>

#include "support/built_town.hpp"

namespace loopwright::read {
namespace {

using test::BuiltTown;

constexpr std::size_t side = 4;  // a town of 4 × 4 junctions, A to P

char letter_at(std::size_t row, std::size_t column) {
  return static_cast<char>('A' + row * side + column);
}

/// Streets between neighbours: w1 AB, w2 AE …
struct Streets {
  std::string drawing;
  std::vector<std::string> ends;  // of way 1, 2, …
};

void add_street(Streets& streets, char from, char to) {
  streets.ends.push_back({from, to});
  streets.drawing += "w" + std::to_string(streets.ends.size()) + " " + streets.ends.back() +
                     " highway=residential\n";
}

Streets grid_town() {
  Streets streets;
  for (std::size_t row = 0; row < side; ++row) {
    for (std::size_t column = 0; column < side; ++column) {
      streets.drawing += letter_at(row, column);
      streets.drawing += ' ';
    }
    streets.drawing += "\n\n";
  }
  for (std::size_t row = 0; row < side; ++row) {
    for (std::size_t column = 0; column < side; ++column) {
      const char here = letter_at(row, column);
      if (column + 1 < side) add_street(streets, here, letter_at(row, column + 1));
      if (row + 1 < side) add_street(streets, here, letter_at(row + 1, column));
    }
  }
  return streets;
}

/// A walk over so many different streets, none twice; empty when it gets stuck.
std::vector<std::size_t> random_walk(const Streets& streets, std::size_t length,
                                     std::mt19937& random) {
  std::vector<std::size_t> walk{random() % streets.ends.size()};
  char at = streets.ends[walk[0]][random() % 2];
  while (walk.size() < length) {
    std::vector<std::size_t> next;
    for (std::size_t s = 0; s < streets.ends.size(); ++s) {
      const bool touches = streets.ends[s].find(at) != std::string::npos;
      if (touches && std::find(walk.begin(), walk.end(), s) == walk.end()) next.push_back(s);
    }
    if (next.empty()) return {};
    walk.push_back(next[random() % next.size()]);
    const std::string& ends = streets.ends[walk.back()];
    at = ends[0] == at ? ends[1] : ends[0];
  }
  return walk;
}

std::string restriction(int id, const std::vector<std::size_t>& walk, bool only) {
  std::string line = "r" + std::to_string(id) + (only ? " only_straight_on" : " no_left_turn");
  line += " from=w" + std::to_string(walk.front() + 1) + " via=";
  for (std::size_t i = 1; i + 1 < walk.size(); ++i) {
    line += (i > 1 ? ",w" : "w") + std::to_string(walk[i] + 1);
  }
  return line + " to=w" + std::to_string(walk.back() + 1) + "\n";
}

/// How many stretches of the path the drive has just driven when its i-th is the path's k-th.
bool drove(std::span<const StretchId> drive, std::size_t end, std::span<const StretchId> path) {
  return end >= path.size() &&
         std::equal(path.begin(), path.end(), drive.begin() + static_cast<long>(end - path.size()));
}

bool breaks(std::span<const StretchId> drive, const road::Roads& roads,
            const road::TurnRule& rule) {
  const auto path = roads.path_of(rule);
  for (std::size_t i = 1; i < drive.size(); ++i) {
    if (rule.only == 0 && drove(drive, i + 1, path)) return true;
    for (std::size_t known = 2; rule.only != 0 && known < path.size(); ++known) {
      if (drove(drive, i, path.first(known)) && drive[i] != path[known]) return true;
    }
  }
  return false;
}

/// A plain reading: every stretch may be driven, none is turned back on, no rule is broken.
bool legal(std::span<const StretchId> drive, const road::Roads& roads) {
  for (std::size_t i = 0; i < drive.size(); ++i) {
    if (!roads.drivable(drive[i])) return false;
    if (i > 0 && drive[i] == drive[i - 1].back()) return false;
  }
  return std::none_of(roads.turn_rules.begin(), roads.turn_rules.end(),
                      [&](const road::TurnRule& rule) { return breaks(drive, roads, rule); });
}

bool graph_allows(std::span<const StretchId> drive, const road::Roads& roads) {
  StateId state{drive[0].index()};
  if (!roads.drivable(drive[0])) return false;
  for (std::size_t i = 1; i < drive.size(); ++i) {
    StateId next;
    for (const road::Turn& turn : roads.turns_from(state)) {
      if (roads.stretch_of(turn.to) == drive[i]) next = turn.to;
    }
    if (!next.known()) return false;
    state = next;
  }
  return true;
}

std::vector<StretchId> random_drive(const road::Roads& roads, std::mt19937& random) {
  std::vector<StretchId> drive{StretchId{random() % roads.stretch_count()}};
  while (drive.size() < 8) {
    const auto leaving = roads.leaving(roads.to_node(drive.back()));
    drive.push_back(leaving[random() % leaving.size()]);
  }
  return drive;
}

}  // namespace

TEST_CASE("the graph allows exactly the drives that break no restriction over ways", "[read]") {
  std::mt19937 random(2026);
  int allowed = 0, banned_by_rule = 0;
  for (int round = 0; round < 40; ++round) {
    Streets streets = grid_town();
    for (int id = 1; id <= 14; ++id) {
      const auto walk = random_walk(streets, 3 + random() % 3, random);
      if (!walk.empty()) streets.drawing += restriction(id, walk, id % 5 == 0);
    }
    const BuiltTown town = test::built_town(streets.drawing);
    const road::Roads roads = town.roads();
    for (int i = 0; i < 1500; ++i) {
      const std::vector<StretchId> drive = random_drive(roads, random);
      for (std::size_t length = 2; length <= drive.size(); ++length) {
        const auto part = std::span(drive).first(length);
        const bool expected = legal(part, roads);
        REQUIRE(graph_allows(part, roads) == expected);
        allowed += expected ? 1 : 0;
        if (!expected) break;
      }
      for (const road::TurnRule& rule : roads.turn_rules)
        banned_by_rule += breaks(drive, roads, rule);
    }
  }
  CHECK(allowed > 10'000);
  CHECK(banned_by_rule > 1'000);
}

}  // namespace loopwright::read
