#include "support/random_town.hpp"

#include <array>
#include <vector>

namespace loopwright::test {
namespace {

constexpr std::size_t side = 4;
constexpr std::array classes{"residential", "residential", "tertiary", "secondary", "unclassified"};
constexpr std::array speeds{"20_mph", "30_mph", "30_mph", "40_mph"};
constexpr std::array bans{"no_left_turn", "no_right_turn", "no_straight_on", "no_u_turn",
                          "only_straight_on"};

struct Street {
  int way = 0;
  char from = ' ', to = ' ';
};

/// The letters, 500 m apart with 100 m a character.
std::string plan_of_square() {
  std::string plan = "\n";
  for (std::size_t row = 0; row < side; ++row) {
    for (std::size_t column = 0; column < side; ++column)
      plan += std::string("    ") + random_town_nodes[side * row + column];
    plan += "\n\n\n\n\n";
  }
  return plan;
}

std::string line_of(const Street& street, Dice& dice) {
  std::string line = "  w" + std::to_string(street.way) + " " + street.from + street.to;
  line += std::string(" highway=") + classes[dice.below(classes.size())];
  line += std::string(" name=Street_") + std::to_string(street.way % 7);
  line += std::string(" maxspeed=") + speeds[dice.below(speeds.size())];
  if (dice.below(7) == 0) line += dice.below(2) == 0 ? " oneway=yes" : " oneway=-1";
  return line + "\n";
}

void add_street(std::size_t from, std::size_t to, Dice& dice, std::vector<Street>& streets) {
  constexpr std::size_t missing_of_ten = 2;
  if (dice.below(10) < missing_of_ten) return;
  streets.push_back(
      {static_cast<int>(streets.size()) + 1, random_town_nodes[from], random_town_nodes[to]});
}

std::string bans_of(const std::vector<Street>& streets, Dice& dice) {
  std::string lines;
  int relation = 0;
  for (const Street& a : streets)
    for (const Street& b : streets) {
      if (a.to != b.from || dice.below(6) != 0) continue;
      lines += "  r" + std::to_string(++relation) + " " + bans[dice.below(bans.size())] +
               " from=w" + std::to_string(a.way) + " via=" + a.to + " to=w" +
               std::to_string(b.way) + "\n";
    }
  return lines;
}

}  // namespace

std::string random_town(Dice& dice) {
  std::vector<Street> streets;
  for (std::size_t at = 0; at < side * side; ++at) {
    if (at % side + 1 < side) add_street(at, at + 1, dice, streets);
    if (at + side < side * side) add_street(at, at + side, dice, streets);
  }
  std::string drawing = plan_of_square();
  for (const Street& street : streets) drawing += line_of(street, dice);
  return drawing + bans_of(streets, dice);
}

}  // namespace loopwright::test
