// Method: the kerbs of all pieces of road within reach are asked; each that will do is named by the nearer end of its piece
// at which a road of another name joins.
#include "loopwright/find/begin_places.hpp"

#include <algorithm>
#include <optional>

#include "loopwright/lanes/pull_up.hpp"

namespace loopwright::find {
namespace {

constexpr double near_named_m = 150;  // as a door may be off its road (DEVELOPERS.md)

/// A place of its own on the near kerb of a stretch.
struct Kerb {
  StretchId stretch;
  const road::PullUp* place = nullptr;
};

/// A car's length behind the middle of a place: a drive from its very middle would have it as a place to pull up or not by
/// a hair.
constexpr double past_middle_m = 4;

/// Metres along its piece of where one begins beside a place.
double along_piece_m(const road::Roads& roads, const Kerb& kerb) {
  const double at_m = lanes::stop_at_m(*kerb.place) + past_middle_m;
  return kerb.stretch.against() ? roads.piece(kerb.stretch).length_m - at_m : at_m;
}

/// The place lies beside this spot of the piece.
bool covers(const road::Roads& roads, const Kerb& kerb, double along_m) {
  const double length_m = roads.piece(kerb.stretch).length_m;
  const double at_m = kerb.stretch.against() ? length_m - along_m : along_m;
  return static_cast<double>(kerb.place->from_m) <= at_m &&
         at_m <= static_cast<double>(kerb.place->to_m);
}

/// A road of another name that may be driven at a node; empty when there is none.
std::string other_street(const road::Roads& roads, NodeId node, std::string_view street) {
  for (const StretchId out : roads.leaving(node)) {
    const road::Piece& piece = roads.piece(out);
    const std::string_view name = roads.text(piece.name);
    const bool seen = (piece.flags & road::piece_flag::minor_service) == 0;
    if (seen && !name.empty() && name != street) return std::string(name);
  }
  return {};
}

std::string corner_of(const road::Roads& roads, const Kerb& kerb, double most_m) {
  const road::Piece& piece = roads.piece(kerb.stretch);
  const std::string_view street = roads.text(piece.name);
  const double along_m = along_piece_m(roads, kerb);
  const bool first_is_nearer = along_m <= piece.length_m - along_m;
  for (const bool first : {first_is_nearer, !first_is_nearer}) {
    const double off_m = first ? along_m : piece.length_m - along_m;
    std::string corner = other_street(roads, first ? piece.a : piece.b, street);
    if (off_m <= most_m && !corner.empty()) return corner;
  }
  return {};
}

class BeginSearch {
 public:
  BeginSearch(const road::Roads& roads, const BeginAsk& ask, const hours::Setting& setting)
      : roads_(roads), ask_(ask), setting_(setting) {}

  /// All of a piece.
  void add(std::vector<BeginPlace>& places, PieceId piece) const {
    for (const bool against : {false, true}) {
      const StretchId stretch(piece, against);
      if (!is_public_street(stretch)) continue;
      for (const road::PullUp& place : roads_.pull_ups_of(stretch))
        if (auto one = place_at({stretch, &place})) places.push_back(std::move(*one));
    }
  }

 private:
  /// A learner may drive through, and it has a name to be found by.
  [[nodiscard]] bool is_public_street(StretchId stretch) const {
    const road::Piece& piece = roads_.piece(stretch);
    const auto unfit = road::piece_flag::destination_only | road::piece_flag::no_access |
                       road::piece_flag::minor_service | road::piece_flag::ring;
    return roads_.drivable(stretch) && (piece.flags & unfit) == 0 &&
           !roads_.text(piece.name).empty() && piece.road_class != road::RoadClass::service;
  }

  [[nodiscard]] bool may_stand(const Kerb& kerb) const {
    return static_cast<double>(kerb.place->to_m - kerb.place->from_m) >= ask_.room_m &&
           lanes::may_stop(roads_, *kerb.place, ask_.stay, setting_).verdict ==
               lanes::MayStop::usable;
  }

  [[nodiscard]] std::optional<BeginPlace> place_at(const Kerb& kerb) const {
    if (!may_stand(kerb)) return std::nullopt;
    std::string corner = corner_of(roads_, kerb, ask_.corner_m);
    if (corner.empty()) return std::nullopt;
    const double along_m = along_piece_m(roads_, kerb);
    const Point at = point_along(roads_.shape_of(kerb.stretch.piece()), along_m);
    BeginPlace place{at,
                     distance_m(at, ask_.door),
                     {kerb.stretch},
                     std::string(roads_.text(roads_.piece(kerb.stretch).name)),
                     std::move(corner),
                     lanes::what_to_check(*kerb.place)};
    const StretchId other = kerb.stretch.back();
    for (const road::PullUp& across : roads_.pull_ups_of(other))
      if (roads_.drivable(other) && covers(roads_, {other, &across}, along_m) &&
          may_stand({other, &across}))
        place.alongside.push_back(other);
    return place;
  }

  const road::Roads& roads_;
  const BeginAsk& ask_;
  const hours::Setting& setting_;
};

std::vector<BeginPlace> places_around(const road::Roads& roads, const BeginAsk& ask, Point at,
                                      double radius_m, const hours::Setting& setting) {
  const BeginSearch search(roads, ask, setting);
  std::vector<BeginPlace> places;
  for (const PieceId piece : road::pieces_near(roads, at, radius_m)) search.add(places, piece);
  return places;
}

}  // namespace

std::vector<BeginPlace> places_to_begin(const road::Roads& roads, const BeginAsk& ask,
                                        const hours::Setting& setting) {
  std::vector<BeginPlace> places = places_around(roads, ask, ask.door, ask.to_m, setting);
  std::erase_if(places, [&](const BeginPlace& place) {
    return place.off_m < ask.from_m || place.off_m > ask.to_m;
  });
  std::stable_sort(places.begin(), places.end(),
                   [](const BeginPlace& a, const BeginPlace& b) { return a.off_m < b.off_m; });
  std::vector<BeginPlace> kept;
  for (BeginPlace& place : places) {
    if (kept.size() == ask.most) break;
    const bool apart = std::all_of(kept.begin(), kept.end(), [&](const BeginPlace& one) {
      return distance_m(one.at, place.at) >= ask.apart_m;
    });
    if (apart) kept.push_back(std::move(place));
  }
  return kept;
}

std::vector<BeginPlace> place_to_begin_at(const road::Roads& roads, const BeginAsk& ask, Point at,
                                          const hours::Setting& setting) {
  std::vector<BeginPlace> places = places_around(roads, ask, at, near_named_m, setting);
  const auto off = [&](const BeginPlace& place) { return distance_m(place.at, at); };
  const auto nearest =
      std::min_element(places.begin(), places.end(),
                       [&](const BeginPlace& a, const BeginPlace& b) { return off(a) < off(b); });
  if (nearest == places.end() || off(*nearest) > near_named_m) return {};
  return {std::move(*nearest)};
}

bool stands_beside(const BeginPlace& place, StretchId driven) {
  return std::find(place.alongside.begin(), place.alongside.end(), driven) != place.alongside.end();
}

}  // namespace loopwright::find
