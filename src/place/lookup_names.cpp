// 1. Names spelled as typed; or those the words are a part of, then those a typo away.
// 2. A street is a hit for each place where it lies. Houses of a street the map lacks stand for it;
//    a postcode is the house nearest to the middle of its houses.
// 3. A named spot beside the street it shares its name with ("Stow Hill") is the street; two drawn
//    for one thing (a building and a point in it) are one.
#include <algorithm>
#include <array>
#include <limits>

#include "loopwright/place/spelling.hpp"
#include "place/lookup.hpp"

namespace loopwright::place {
namespace {

// Ours: a quarter and its street are one, two pubs of one name are not nearer than two streets.
constexpr double same_as_street_m = 500, same_spot_m = 200;

bool is_near(const Hit& hit, Point at, double within_m) {
  return std::ranges::any_of(hit.extent,
                             [&](Point point) { return distance_m(point, at) <= within_m; });
}

bool is_known_spot(const Hits& hits, const Candidate& spot) {
  return std::ranges::any_of(hits, [&](const Hit& hit) {
    if (squeezed(key_of(hit.candidate.name)) != squeezed(key_of(spot.name))) return false;
    if (hit.candidate.sort == Sort::street) return is_near(hit, spot.at, same_as_street_m);
    return hit.candidate.sort == Sort::spot && is_near(hit, spot.at, same_spot_m);
  });
}

Match match_of(int grade) {
  if (grade < grade::part) return Match::exact;
  return grade < grade::typo ? Match::part : Match::typo;
}

/// The address nearest to the middle of all these.
const road::Address& middle_one(const std::vector<const road::Address*>& addresses) {
  double lat = 0, lon = 0;
  for (const road::Address* address : addresses) lat += address->at.lat(), lon += address->at.lon();
  const auto count = static_cast<double>(addresses.size());
  const Point middle = point_from_degrees(lat / count, lon / count);
  return **std::ranges::min_element(addresses, {}, [middle](const road::Address* address) {
    return distance_m(address->at, middle);
  });
}

std::string houses_text(std::size_t count) {
  return count == 1 ? "its one house" : "middle of its " + std::to_string(count) + " houses";
}

}  // namespace

bool is_settlement(std::string_view what) {
  constexpr std::array<std::string_view, 7> words{
      "place=city",   "place=town",    "place=village",      "place=hamlet",
      "place=suburb", "place=quarter", "place=neighbourhood"};
  return std::ranges::find(words, what) != words.end();
}

std::string Lookup::written(const Name& name) const {
  const std::size_t row =
      name.rows.empty() ? std::numeric_limits<std::size_t>::max() : name.rows.front();
  const auto text = [this](TextId id) { return std::string(roads_.text(id)); };
  if (name.sort == NameSort::street && row < roads_.pieces.size()) {
    return text(roads_.pieces[row].name);
  }
  if (name.sort == NameSort::spot && row < roads_.named_spots.size()) {
    return text(roads_.named_spots[row].name);
  }
  const bool is_address = name.sort == NameSort::houses || name.sort == NameSort::postcode;
  if (!is_address || row >= roads_.addresses.size()) return name.key;
  const road::Address& address = roads_.addresses[row];
  return text(name.sort == NameSort::houses ? address.street : address.postcode);
}

std::vector<std::string> Lookup::spelled_like(std::string_view text) const {
  const std::string key = key_of(text);
  const auto most_edits = static_cast<int>(squeezed(key).size() / 2);  // else it helps nobody
  std::vector<std::string> hints;
  for (const Name& name : names_.like(key)) {
    if (name.sort == NameSort::outward || name.edits > most_edits) continue;
    const std::string hint = written(name);
    if (std::ranges::find(hints, hint) == hints.end()) hints.push_back(hint);
    if (hints.size() == most_hints) break;
  }
  return hints;
}

void Lookup::add_streets(Hits& hits, const Name& name, int grade) const {
  for (const Street& street : streets_of(roads_, name)) {
    Hit hit;
    hit.candidate = {
        middle_of(roads_, street), Sort::street, match_of(grade), grade, street.name, "street", ""};
    hit.extent = shape_of(roads_, street);
    hits.push_back(std::move(hit));
  }
}

void Lookup::add_addresses(Hits& hits, const Name& name, int grade) const {
  std::vector<const road::Address*> addresses;
  Hit hit;
  for (const std::uint32_t row : name.rows) {
    if (row >= roads_.addresses.size()) continue;
    addresses.push_back(&roads_.addresses[row]);
    hit.extent.push_back(addresses.back()->at);
  }
  if (addresses.empty()) return;
  const road::Address& middle = middle_one(addresses);
  const bool by_street = name.sort == NameSort::houses;
  std::string written_name(roads_.text(by_street ? middle.street : middle.postcode));
  if (name.sort == NameSort::outward) written_name.resize(written_name.find(' '));
  if (by_street && std::ranges::any_of(hits, [&](const Hit& known) {
        return known.candidate.sort == Sort::street &&
               squeezed(key_of(known.candidate.name)) == squeezed(name.key);
      })) {
    return;
  }
  hit.candidate = {
      middle.at,
      by_street ? Sort::street : Sort::postcode,
      match_of(grade),
      grade,
      written_name,
      (by_street ? "street the map lacks, " : "postcode, ") + houses_text(addresses.size()),
      ""};
  hits.push_back(std::move(hit));
}

void Lookup::add_spots(Hits& hits, const Name& name, int grade) const {
  std::vector<const road::NamedSpot*> spots;
  for (const std::uint32_t row : name.rows) {
    if (row < roads_.named_spots.size()) spots.push_back(&roads_.named_spots[row]);
  }
  const auto is_lesser = [this](const road::NamedSpot* spot) {
    return !is_settlement(roads_.text(spot->what));
  };
  std::ranges::stable_sort(spots, {}, is_lesser);
  for (const road::NamedSpot* spot : spots) {
    Hit hit;
    const int own = grade == grade::exact && is_lesser(spot) ? grade::exact_spot : grade;
    hit.candidate = {spot->at,
                     Sort::spot,
                     match_of(own),
                     own,
                     std::string(roads_.text(spot->name)),
                     std::string(roads_.text(spot->what)),
                     ""};
    hit.extent = {spot->at};
    if (!is_known_spot(hits, hit.candidate)) hits.push_back(std::move(hit));
  }
}

void Lookup::add_name(Hits& hits, const Name& name, int grade) const {
  if (name.sort == NameSort::street) return add_streets(hits, name, grade);
  if (name.sort == NameSort::spot) return add_spots(hits, name, grade);
  add_addresses(hits, name, grade);
}

Hits Lookup::settlements(std::string_view text, Spelling spelling) const {
  const std::string key = key_of(text);
  const int allowed = spelling == Spelling::exact ? 0 : allowed_edits(key);
  Hits hits;
  for (const Name& name : names_.like(key)) {
    if (name.sort != NameSort::spot || name.edits > allowed) continue;
    add_spots(hits, name, grade::by_edits(name.edits));
  }
  std::erase_if(hits, [](const Hit& hit) { return !is_settlement(hit.candidate.what); });
  return hits;
}

Hits Lookup::named(std::string_view text, Spelling spelling) const {
  const std::string key = key_of(text);
  const int allowed = allowed_edits(key);
  Hits hits;
  for (const Name& name : names_.like(key)) {
    const bool is_code = name.sort == NameSort::postcode || name.sort == NameSort::outward;
    if (spelling == Spelling::exact) {
      if (name.edits == 0) add_name(hits, name, grade::exact);
    } else if (is_code) {
      continue;  // another postcode is another place, however near its letters are
    } else if (is_part_of(key, name.key)) {
      add_name(hits, name, grade::part);
    } else if (name.edits <= allowed) {
      add_name(hits, name, grade::typo + name.edits);
    }
  }
  return hits;
}

}  // namespace loopwright::place
