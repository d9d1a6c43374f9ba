// 1. Streets by name with the houses counted by them; each house belongs to the nearest street of
//    its name within 500 m, or to none (the map's edge cuts streets off).
// 2. The number in each of them. One house mapped twice (a building and a shop in it) is one.
// 3. A street without any mapped number gives its middle and says so; one with numbers but not this
//    one is a miss that names the nearest, since another house would be the wrong door.
#include <algorithm>
#include <limits>
#include <map>

#include "loopwright/place/spelling.hpp"
#include "place/houses.hpp"
#include "place/lookup.hpp"

namespace loopwright::place {
namespace {

// Ours: further from its street no house is; nearer than a few house fronts two are one.
constexpr double house_of_street_m = 500, same_house_m = 100;

using Houses = std::vector<const road::Address*>;

/// Row of the street a house stands on; as many as there are streets when on none.
std::size_t street_at(const road::Roads& roads, const std::vector<Street>& streets, Point at) {
  std::size_t nearest = streets.size();
  double nearest_m = house_of_street_m;
  for (const PieceId piece : road::pieces_near(roads, at, house_of_street_m)) {
    for (std::size_t i = 0; i < streets.size(); ++i) {
      if (!std::ranges::binary_search(streets[i].pieces, piece)) continue;
      const double off_m = nearest_on_line(roads.shape_of(piece), at).off_m;
      if (off_m < nearest_m) nearest = i, nearest_m = off_m;
    }
  }
  return nearest;
}

std::string with_number(std::string_view number, const std::string& street) {
  const bool is_name = !looks_like_house_number(number.substr(0, number.find_first_of("-;/ ")));
  return std::string(number) + (is_name ? ", " : " ") + street;
}

/// Houses of one number on one street, as hits.
class HouseHits {
 public:
  HouseHits(const road::Roads& roads, Hits& hits, int edits)
      : roads_(roads), hits_(hits), edits_(edits) {}

  void add(const HouseAnswer& answer, const std::string& street, std::string_view number) {
    for (const road::Address* house : answer.houses) {
      const std::string_view mapped = roads_.text(house->number);
      const bool same = read_house_number(mapped).text == read_house_number(number).text;
      add(house->at, with_number(mapped, street), same ? Match::exact : Match::inferred,
          same ? "house" : "house, mapped as " + std::string(mapped));
    }
    if (!answer.between) return;
    add(*answer.between, with_number(number, street), Match::inferred,
        "inferred between the mapped " + std::string(roads_.text(answer.nearest[0]->number)) +
            " and " + std::string(roads_.text(answer.nearest[1]->number)));
  }

 private:
  void add(Point at, std::string name, Match match, std::string what) {
    const bool known = std::ranges::any_of(hits_, [&](const Hit& hit) {
      return hit.candidate.name == name && distance_m(hit.candidate.at, at) <= same_house_m;
    });
    if (known) return;
    hits_.push_back({{at, Sort::house, edits_ > 0 ? Match::typo : match, grade::by_edits(edits_),
                      std::move(name), std::move(what), ""},
                     {at}});
  }

  const road::Roads& roads_;
  Hits& hits_;
  int edits_;
};

std::vector<std::string> hints_for(const road::Roads& roads, const Houses& nearest,
                                   const std::string& street) {
  std::vector<std::string> hints;
  for (const road::Address* house : nearest) {
    hints.push_back(with_number(roads.text(house->number), street));
  }
  hints.push_back(street);
  return hints;
}

}  // namespace

std::vector<Lookup::StreetsOfName> Lookup::streets_named(std::string_view text,
                                                         Spelling spelling) const {
  const std::string key = key_of(text);
  const int allowed = spelling == Spelling::exact ? 0 : allowed_edits(key);
  std::map<std::pair<int, std::string>, StreetsOfName> found;
  for (const Name& name : names_.like(key)) {
    const bool is_street = name.sort == NameSort::street || name.sort == NameSort::houses;
    if (!is_street || name.edits > allowed) continue;
    StreetsOfName& all = found[{name.edits, squeezed(name.key)}];
    all.edits = name.edits;
    if (name.sort == NameSort::street) {
      all.streets = streets_of(roads_, name);
      continue;
    }
    for (const std::uint32_t row : name.rows) {
      if (row < roads_.addresses.size()) all.houses.push_back(&roads_.addresses[row]);
    }
  }
  std::vector<StreetsOfName> names;
  for (auto& [order, streets] : found) names.push_back(std::move(streets));
  return names;
}

void Lookup::add_houses(Hits& hits, const StreetsOfName& found, std::string_view number,
                        std::optional<Miss>& miss) const {
  std::vector<Houses> houses(found.streets.size() + 1);
  for (const road::Address* house : found.houses) {
    houses[street_at(roads_, found.streets, house->at)].push_back(house);
  }
  HouseHits house_hits(roads_, hits, found.edits);
  const std::size_t before = hits.size();
  for (std::size_t i = 0; i < houses.size(); ++i) {
    if (houses[i].empty()) continue;
    const bool on_street = i < found.streets.size();
    const std::string street =
        on_street ? found.streets[i].name : std::string(roads_.text(houses[i][0]->street));
    const HouseAnswer answer = house_numbered(
        roads_, on_street ? found.streets[i] : Street{street, {}}, houses[i], number);
    house_hits.add(answer, street, number);
    if (!miss) {
      miss = Miss{street + " has no " + std::string(number) + " on the map",
                  hints_for(roads_, answer.nearest, street)};
    }
  }
  if (hits.size() > before || !found.houses.empty()) return;
  for (const Street& street : found.streets) {
    hits.push_back(
        {{middle_of(roads_, street), Sort::street, Match::inferred, grade::by_edits(found.edits),
          street.name, "street, of which no house numbers are mapped", ""},
         shape_of(roads_, street)});
  }
}

Hits Lookup::houses(const NumberAndStreet& typed, Spelling spelling,
                    std::optional<Miss>& miss) const {
  Hits hits;
  for (const StreetsOfName& found : streets_named(typed.street, spelling)) {
    add_houses(hits, found, typed.number, miss);
  }
  return hits;
}

}  // namespace loopwright::place
