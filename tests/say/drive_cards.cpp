// usage: loopwright_cards MAP REGION COUNT [FIRST]
// Drives the cards of so many random loops over a map blind, in both ways of naming the sides in
// turn, and every way through each of its roundabouts; prints "cards driven 50, cards right 50". What
// fails is told before. Exit 3 when anything does.
#include <cstdlib>
#include <iostream>
#include <map>

#include "loopwright/read/build.hpp"
#include "say/cards.hpp"

namespace loopwright::test {
namespace {

/// Every way through every roundabout and mini, on its own: how many lead elsewhere.
std::size_t wrong_rings(const road::Roads& roads, const Cards& cards) {
  std::size_t ways = 0, wrong = 0;
  for (const road::Chance& chance : roads.chances) {
    const bool ring = road::meets(chance.kind, road::Kind::roundabout) ||
                      chance.kind == road::Kind::mini_roundabout;
    if (!ring) continue;
    ++ways;
    const std::string fault = cards.fault_at(chance);
    wrong += fault.empty() ? 0 : 1;
    if (!fault.empty())
      std::cout << "ring at node " << roads.nodes[roads.to_node(chance.entry).index()].osm_id
                << ": " << fault << '\n';
  }
  std::cout << ways << " ways through roundabouts and minis, " << wrong << " of them wrong\n";
  return wrong;
}

int drive_cards(const std::string& map, const std::string& region, std::uint32_t count,
                std::uint32_t first) {
  road::Report report;
  read::BuildOptions options;
  options.region = find_region(region).value();
  const read::Built built = read::build_area(map, options, report, {});
  const road::Roads roads = road::view_of(built.tables, built.info);
  const Cards cards(roads);
  const std::size_t rings = wrong_rings(roads, cards);
  std::uint32_t right = 0;
  std::size_t rows = 0, crowded = 0;
  for (std::uint32_t number = first; number < first + count; ++number) {
    const say::Sides sides = number % 4 == 0 ? say::Sides::my_your : say::Sides::left_right;
    const JudgedCard card = cards.judge(number, sides);
    right += card.fault.empty() ? 1 : 0, rows += card.rows, crowded += card.crowded;
    if (!card.fault.empty()) std::cout << "card " << number << ": " << card.fault << '\n';
  }
  std::cout << rows << " rows, " << crowded << " of them the fourth or later in one breath\n";
  std::cout << map.substr(map.rfind('/') + 1) << ": cards driven " << count << ", cards right "
            << right << '\n';
  return right == count && rings == 0 ? 0 : 3;
}

}  // namespace
}  // namespace loopwright::test

int main(int argc, char** argv) {
  if (argc < 4) {
    std::cerr << "usage: loopwright_cards MAP REGION COUNT [FIRST]\n";
    return 2;
  }
  const auto number = [](const char* text) {
    return static_cast<std::uint32_t>(std::strtoul(text, nullptr, 10));
  };
  return loopwright::test::drive_cards(argv[1], argv[2], number(argv[3]),
                                       argc > 4 ? number(argv[4]) : 1);
}
