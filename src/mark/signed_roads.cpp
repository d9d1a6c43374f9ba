// Roads along which one can follow the signs: to a place, or along a road number.
//
// 1. Signs: destination and destination:ref, with :forward or :backward; without them only on a
//    one-way road, since on another nobody can tell which way they lead. Signs of single lanes
//    (destination:lanes) aren't read: they lead whoever is in that lane only.
// 2. What a stretch follows is one thing: the number of its road (motorway, trunk, primary,
//    secondary; those are signed in Britain by rule, so inferred, and certain where a sign names
//    it); else the first number its signs name, else the first place (certain). Links go by their
//    signs alone.
// 3. A ring without a number belongs to the number that most of its roads carry, so that a road can
//    be followed through its roundabouts.
// 4. Each number and each place is a family of runs of its own: a kilometre of the one isn't made
//    of two halves of two.
// Sources: OSM wiki, pages Key:destination and Key:destination:ref; Traffic Signs Manual chapter 2
// for numbers on direction signs (from memory).
#include <algorithm>
#include <map>
#include <string>

#include "loopwright/base/text.hpp"
#include "run_rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;
using road::RoadClass;

/// The first of a list: "A48;A4042" is followed as the A48.
std::string first_of(std::string_view list) {
  return std::string(list.substr(0, list.find(';')));
}

bool lists(std::string_view list, std::string_view word) {
  const auto words = split(list, ';');
  return std::ranges::find(words, word) != words.end();
}

bool is_numbered(RoadClass road_class) {
  return road_class == RoadClass::motorway || road_class == RoadClass::trunk ||
         road_class == RoadClass::primary || road_class == RoadClass::secondary;
}

/// What is followed, and what says so.
struct Followed {
  std::string what, tag;
  Confidence confidence = Confidence::inferred;
};

/// The keys of one sign: of a way driven in one direction only, and of each direction.
struct SignKeys {
  std::string_view plain, along, against;
};
constexpr SignKeys to_place{"destination", "destination:forward", "destination:backward"};
constexpr SignKeys to_number{"destination:ref", "destination:ref:forward",
                             "destination:ref:backward"};

class SignedRoads {
 public:
  explicit SignedRoads(Draft& draft) : draft_(draft), roads_(draft.roads()) {}
  std::vector<RunFamily> find();

 private:
  [[nodiscard]] std::string_view key_of(StretchId stretch, const SignKeys& keys) const;
  void read_signs(StretchId stretch);
  void number_rings();
  [[nodiscard]] std::string number_of(StretchId stretch) const;
  [[nodiscard]] Followed followed_by(StretchId stretch) const;

  Draft& draft_;
  road::Roads roads_;
  std::map<PieceId, std::string> ring_numbers_;
};

/// The key that speaks of this direction of the way; empty when none does.
std::string_view SignedRoads::key_of(StretchId stretch, const SignKeys& keys) const {
  const Tags& tags = draft_.way_tags(stretch.piece());
  const std::string_view own = stretch.against() ? keys.against : keys.along;
  if (tags.has(own)) return own;
  const bool one_way = (roads_.piece(stretch).flags & road::piece_flag::one_way) != 0;
  return one_way && tags.has(keys.plain) ? keys.plain : std::string_view();
}

void SignedRoads::read_signs(StretchId stretch) {
  const Tags& tags = draft_.way_tags(stretch.piece());
  const std::string_view place = key_of(stretch, to_place);
  const std::string_view number = key_of(stretch, to_number);
  if (place.empty() && number.empty()) return;
  draft_.tables.signs.push_back(
      {stretch, draft_.text(tags.get(place)), draft_.text(tags.get(number))});
}

/// Step 3.
void SignedRoads::number_rings() {
  for (std::size_t row = 0; row < roads_.places.size(); ++row) {
    const PlaceId place{row};
    if (!road::meets(roads_.places[row].kind, Kind::roundabout)) continue;
    std::map<std::string, int> roads_of;
    for (const NodeId node : roads_.nodes_of(place)) {
      for (const StretchId away : roads_.leaving(node)) ++roads_of[number_of(away)];
    }
    roads_of.erase("");
    const auto most =
        std::ranges::max_element(roads_of, {}, [](const auto& road) { return road.second; });
    if (most == roads_of.end()) continue;
    for (const PieceId piece : roads_.pieces_of(place)) ring_numbers_[piece] = most->first;
  }
}

/// The number of the road itself; empty when it has none that is signed.
std::string SignedRoads::number_of(StretchId stretch) const {
  if (!is_numbered(roads_.piece(stretch).road_class)) return {};
  return first_of(draft_.way_tags(stretch.piece()).get("ref"));
}

Followed SignedRoads::followed_by(StretchId stretch) const {
  const Tags& tags = draft_.way_tags(stretch.piece());
  const std::string_view number_key = key_of(stretch, to_number);
  const std::string_view numbers = tags.get(number_key);
  if (const std::string own = number_of(stretch); !own.empty()) {
    if (lists(numbers, own)) return {own, tag_text(tags, number_key), Confidence::certain};
    return {own, "ref=" + own, Confidence::inferred};
  }
  const auto ring = ring_numbers_.find(stretch.piece());
  if (ring != ring_numbers_.end()) return {ring->second, "ref=" + ring->second + " on its roads"};
  if (!numbers.empty()) {
    return {first_of(numbers), tag_text(tags, number_key), Confidence::certain};
  }
  const std::string_view place_key = key_of(stretch, to_place);
  if (place_key.empty()) return {};
  return {first_of(tags.get(place_key)), tag_text(tags, place_key), Confidence::certain};
}

std::vector<RunFamily> SignedRoads::find() {
  number_rings();
  std::map<std::string, RunFamily> families;
  for (std::size_t row = 0; row < roads_.stretch_count(); ++row) {
    const StretchId stretch{row};
    if (!roads_.drivable(stretch)) continue;
    read_signs(stretch);
    const Followed followed = followed_by(stretch);
    if (followed.what.empty()) continue;
    RunFamily& family = families[followed.what];
    family.kind = Kind::independent_stretch;
    family.members.push_back(
        {stretch, Kind::independent_stretch, followed.confidence, draft_.text(followed.tag)});
  }
  std::vector<RunFamily> in_order;
  for (auto& [what, family] : families) {
    family.name = draft_.text(what);
    in_order.push_back(std::move(family));
  }
  return in_order;
}

}  // namespace

std::vector<RunFamily> independent_runs(Draft& draft) {
  return SignedRoads(draft).find();
}

}  // namespace loopwright::mark
