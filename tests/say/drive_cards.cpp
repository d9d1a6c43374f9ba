// usage: loopwright_cards MAP REGION COUNT [FIRST]
// Drives the cards of so many random loops over a map blind, in both ways of naming the sides in
// turn, and prints "cards driven 50, cards right 50"; what fails is told before. Exit 3 when any does.
#include <cstdlib>
#include <iostream>
#include <map>

#include "loopwright/read/build.hpp"
#include "say/cards.hpp"

namespace loopwright::test {
namespace {

int drive_cards(const std::string& map, const std::string& region, std::uint32_t count,
                std::uint32_t first) {
  road::Report report;
  read::BuildOptions options;
  options.region = find_region(region).value();
  const read::Built built = read::build_area(map, options, report, {});
  const Cards cards(road::view_of(built.tables, built.info));
  std::uint32_t right = 0;
  for (std::uint32_t number = first; number < first + count; ++number) {
    const say::Sides sides = number % 4 == 0 ? say::Sides::my_your : say::Sides::left_right;
    const std::string fault = cards.fault_of(number, sides);
    right += fault.empty() ? 1 : 0;
    if (!fault.empty()) std::cout << "card " << number << ": " << fault << '\n';
  }
  std::cout << map.substr(map.rfind('/') + 1) << ": cards driven " << count << ", cards right "
            << right << '\n';
  return right == count ? 0 : 3;
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
