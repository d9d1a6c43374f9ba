// Each street of the one name with each of the other. Two streets that are known but don't meet are a
// miss, with streets that do meet the first.
#include <algorithm>
#include <cmath>

#include "place/crossings.hpp"
#include "place/lookup.hpp"

namespace loopwright::place {
namespace {

struct Spelt {
  Street street;
  int edits;
};

Miss no_meeting(const road::Roads& roads, const Street& one, const Street& other) {
  Miss miss{one.name + " and " + other.name + " don't meet on the map", {}};
  for (const std::string& name : streets_meeting(roads, one)) {
    if (miss.instead.size() < most_hints) miss.instead.push_back(one.name + " / " + name);
  }
  return miss;
}

void add_crossings(const road::Roads& roads, Hits& hits, const Spelt& one, const Spelt& other) {
  const int grade = grade::by_edits(one.edits + other.edits);
  for (const Crossing& crossing : crossings_of(roads, one.street, other.street)) {
    const auto apart = static_cast<int>(std::lround(crossing.apart_m));
    const std::string what = crossing.apart_m == 0
                                 ? "crossing"
                                 : "where they come within " + std::to_string(apart) + " m";
    hits.push_back({{crossing.at, Sort::crossing, grade == 0 ? Match::exact : Match::typo, grade,
                     one.street.name + " / " + other.street.name, what, ""},
                    {crossing.at}});
  }
}

}  // namespace

Hits Lookup::crossings(const std::pair<std::string, std::string>& typed, Spelling spelling,
                       std::optional<Miss>& miss) const {
  const auto spelt = [&](const std::string& text) {
    std::vector<Spelt> streets;
    for (StreetsOfName& named : streets_named(text, spelling)) {
      for (Street& street : named.streets) streets.push_back({std::move(street), named.edits});
    }
    return streets;
  };
  const std::vector<Spelt> ones = spelt(typed.first), others = spelt(typed.second);
  Hits hits;
  for (const Spelt& one : ones) {
    for (const Spelt& other : others) {
      if (one.street.name == other.street.name) continue;
      add_crossings(roads_, hits, one, other);
      if (!miss) miss = no_meeting(roads_, one.street, other.street);
    }
  }
  return hits;
}

}  // namespace loopwright::place
