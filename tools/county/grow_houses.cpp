// Odd numbers on the left of who walks from a street's first Spot; a house stands clear of every other
// road, drive and area.
#include <array>
#include <map>
#include <string>

#include "county/grow_dress.hpp"
#include "county/grow_ground.hpp"

namespace loopwright::county {
namespace {

constexpr double front_m = 9;    // from the middle of the street
constexpr double corner_m = 14;  // from a street's ends
constexpr double clear_m = 5;    // of everything else

bool built_up(const Line& line) {
  const auto lit = line.tags.find("lit");
  return line.grown && line.kind == LineKind::road && rank(line) == 1 && lit != line.tags.end() &&
         lit->second == "yes" && line.tags.contains("name");
}

/// QM and a district by quarter, then a sector and two letters by street. No real code begins with QM.
class Codes {
 public:
  std::string next(const std::string& quarter) {
    const auto [known, is_new] = districts_.try_emplace(quarter, districts_.size() + 2);
    const std::size_t street = streets_[quarter]++;
    static constexpr std::string_view letters = "ABDEFGHJLNPQRSTUWXYZ";
    const std::size_t size = letters.size();
    std::string code = "QM" + std::to_string(known->second) + " ";
    code += static_cast<char>('1' + street / (size * size) % 9);
    code += letters[street / size % size];
    code += letters[street % size];
    return code;
  }

 private:
  std::map<std::string, std::size_t> districts_;
  std::map<std::string, std::size_t> streets_;
};

void number_street(Drawing& county, const Ground& ground, const Line& line, const std::string& code,
                   Dice& dice) {
  const double step = 11 + 7 * dice.share();
  const double size = length_m(line.points);
  int number = 1;
  for (double at_m = corner_m; at_m < size - corner_m; at_m += step, number += 2)
    for (const int side : {1, -1}) {
      const Spot at = along(line.points, at_m, side * front_m);
      if (!ground.clear(at, clear_m) || ground.in_area(at)) continue;
      county.lone.push_back({at,
                             {{"addr:housenumber", std::to_string(side > 0 ? number : number + 1)},
                              {"addr:street", line.tags.at("name")},
                              {"addr:postcode", code}}});
    }
}

}  // namespace

void number_houses(Drawing& county, Dice& dice) {
  std::vector<Spot> all;
  for (const Line& line : county.lines)
    all.insert(all.end(), line.points.begin(), line.points.end());
  if (all.empty()) return;
  const Ground ground(county, all);
  Codes codes;
  for (const Line& line : county.lines)
    if (built_up(line) && dice.below(3) == 0)
      number_street(county, ground, line, codes.next(line.quarter), dice);
}

}  // namespace loopwright::county
