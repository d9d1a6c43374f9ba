// A quarter begins somewhere in one list of roots and goes on to the next list when it is used up;
// the ending tells a cul-de-sac, a bent street, a straight one and a country lane apart.
#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "county/grow_dress.hpp"
#include "county/grow_ground.hpp"
#include "county/names.hpp"

namespace loopwright::county {
namespace {

using Word = std::string_view;
constexpr auto closed_endings =
    std::to_array<Word>({"Close", "Close", "Court", "Mews", "Gardens", "End", "Croft", "Nook"});
constexpr auto bent_endings =
    std::to_array<Word>({"Crescent", "Drive", "Way", "Rise", "Drive", "View", "Bank"});
constexpr auto straight_endings =
    std::to_array<Word>({"Street", "Road", "Avenue", "Street", "Road", "Row", "Grove", "Place"});
constexpr auto lane_endings =
    std::to_array<Word>({"Lane", "Lane", "Lane", "Road", "Hill", "Drove"});
constexpr auto wide_endings = std::to_array<Word>({"Road", "Way", "Road"});
constexpr double bent = 1.06;  // length over the straight distance of its ends

std::span<const Word> endings_for(const Line& line) {
  const auto lit = line.tags.find("lit");
  if (lit != line.tags.end() && lit->second == "no") return lane_endings;
  if (rank(line) > 1) return wide_endings;
  if (line.ends[1] == End::turning_circle) return closed_endings;
  const double straight = apart(line.points.front(), line.points.back());
  return length_m(line.points) > bent * straight ? std::span<const Word>(bent_endings)
                                                 : std::span<const Word>(straight_endings);
}

class Namer {
 public:
  Namer(const Drawing& county, Dice& dice) : dice_(dice) {
    for (const Line& line : county.lines)
      if (const auto name = line.tags.find("name"); name != line.tags.end())
        used_.insert(name->second);
    for (const auto list : street_roots()) roots_.insert(roots_.end(), list.begin(), list.end());
  }

  std::string name(const Line& line) {
    const std::span<const Word> endings = endings_for(line);
    std::size_t& next = next_root(line.quarter);
    for (std::size_t tries = 0; tries < 4 * roots_.size(); ++tries) {
      std::string name(roots_[next++ % roots_.size()]);
      name += ' ';
      name += endings[dice_.below(endings.size())];
      if (used_.insert(name).second) return name;
    }
    std::string numbered = "Street " + std::to_string(used_.size());
    used_.insert(numbered);
    return numbered;
  }

 private:
  /// Where in the roots a quarter goes on; it begins at the head of a list.
  std::size_t& next_root(const std::string& quarter) {
    const auto known = next_.find(quarter);
    if (known != next_.end()) return known->second;
    std::size_t start = 0;
    const std::size_t list = dice_.below(street_roots().size());
    for (std::size_t i = 0; i < list; ++i) start += street_roots()[i].size();
    return next_[quarter] = start;
  }

  Dice& dice_;
  std::set<std::string> used_;
  std::vector<Word> roots_;
  std::map<std::string, std::size_t> next_;
};

/// A lane's parts before, on and after a bridge are one road.
bool goes_on(const Line& before, const Line& line) {
  return before.grown && before.quarter == line.quarter && !before.points.empty() &&
         before.points.back() == line.points.front() && (before.layer != 0 || line.layer != 0);
}

}  // namespace

void name_streets(Drawing& county, Dice& dice) {
  Namer namer(county, dice);
  for (std::size_t n = 0; n < county.lines.size(); ++n) {
    Line& line = county.lines[n];
    if (!line.grown || line.kind != LineKind::road || line.tags.contains("name")) continue;
    if (n > 0 && goes_on(county.lines[n - 1], line))
      line.tags["name"] = county.lines[n - 1].tags["name"];
    else
      line.tags["name"] = namer.name(line);
  }
}

}  // namespace loopwright::county
