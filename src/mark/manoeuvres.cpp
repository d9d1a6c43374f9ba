// Spots for the manoeuvres of a lesson. All are inferred: lines, drives and parked cars decide.
//
// 1. Each pull-up place that no hours, permits or fees concern is tried for each kind; what the kind
//    needs beyond it is in the functions below, the metres in src/rules/pull_ups.txt.
//    move-off: a quiet street. uphill-start: uphill by the table's per cent. parallel-park: quiet
//    and straight. pull-up-right: besides, clear on both sides of a two-way street without parked
//    cars, away from junctions. turn-in-road: such a street with room to turn. emergency-stop: such
//    a street, long, no shops near (every pull-up place keeps off bus stops, schools, crossings).
// 2. Of each kind the longest spot of a stretch, and of a cell of the grid the longest few: more
//    than that nobody needs, and they would fill the area file.
// 3. Place: the middle of the spot; chance: that one stretch.
// Sources: what the trade asks of such places (common practice, no source); Highway Code rules 200 to
// 203 (reversing), 239 to 252 (stopping); numbers ours.
#include "manoeuvres.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <tuple>
#include <unordered_map>
#include <unordered_set>

#include "loopwright/base/equal_rows.hpp"
#include "loopwright/mark/rules.hpp"
#include "loopwright/road/kind_table.hpp"
#include "passing.hpp"

namespace loopwright::mark {
namespace {

namespace piece_flag = road::piece_flag;
using road::Kind;
using road::PullUp;

/// Metres along a piece, from its first node.
struct OnPiece {
  double from_m = 0, to_m = 0;
};

OnPiece on_piece(const road::Roads& roads, StretchId stretch, double from_m, double to_m) {
  if (!stretch.against()) return {from_m, to_m};
  const double length_m = roads.piece(stretch).length_m;
  return {length_m - to_m, length_m - from_m};
}

class Spots {
 public:
  Spots(Draft& draft, const road::Roads& roads, const PullUpRules& rules)
      : draft_(draft),
        roads_(roads),
        rules_(rules),
        quiet_tag_(draft.text("quiet street, no ban mapped")) {
    learn_shops();
  }
  std::vector<PracticeSpot> found();

 private:
  void learn_shops();
  void try_all(const PullUp& place);
  void try_quiet(const PullUp& place);
  void try_both_sides(const PullUp& place);
  void add(Kind kind, const PullUp& place, TextId tag);
  [[nodiscard]] bool is_straight(const PullUp& place) const;
  [[nodiscard]] bool is_crowded(const PullUp& place) const;
  void thin();

  Draft& draft_;
  const road::Roads& roads_;
  const PullUpRules& rules_;
  TextId quiet_tag_;
  std::set<PieceId> near_shops_;
  std::vector<PracticeSpot> spots_;
};

bool Spots::is_straight(const PullUp& place) const {
  const OnPiece part = on_piece(roads_, place.stretch, place.from_m, place.to_m);
  const auto shape = roads_.shape_of(place.stretch.piece());
  const double direct_m =
      loopwright::distance_m(point_along(shape, part.from_m), point_along(shape, part.to_m));
  return direct_m >= rules_.at("straight") * (part.to_m - part.from_m);
}

/// Cars stand along the street, by the map or by its terraces: no room for more than stopping.
bool Spots::is_crowded(const PullUp& place) const {
  const std::uint64_t runs = roads_.stretch(place.stretch).runs;
  return (place.flags & road::pull_up_flag::parked) != 0 ||
         (runs & road::bit(Kind::meeting_traffic)) != 0;
}

/// Learns the long roads that a shop lies near.
void Spots::learn_shops() {
  const double near_m = rules_.at("shops"), least_m = rules_.at("emergency stop");
  for (const RawFeature& feature : draft_.raw.features) {
    if (!feature.tags.has("shop")) continue;
    for (const PieceId piece : road::pieces_near(roads_, feature.at, near_m)) {
      if (roads_.pieces[piece.index()].length_m < least_m) continue;
      if (nearest_on_line(roads_.shape_of(piece), feature.at).off_m <= near_m)
        near_shops_.insert(piece);
    }
  }
}

void Spots::add(Kind kind, const PullUp& place, TextId tag) {
  spots_.push_back({kind, place.stretch, place.from_m, place.to_m, tag});
}

/// Kinds that need a quiet street, but nothing of its other side.
void Spots::try_quiet(const PullUp& place) {
  const double metres = place.to_m - place.from_m;
  const road::Piece& piece = roads_.piece(place.stretch);
  const bool has_room = (piece.flags & piece_flag::one_way) == 0 && !is_crowded(place);
  if (metres >= rules_.at("move off")) add(Kind::move_off, place, quiet_tag_);
  if (!is_straight(place)) return;
  if (metres >= rules_.at("parallel park")) add(Kind::parallel_park, place, quiet_tag_);
  const bool wide = piece.usable_width_m == 0 || piece.usable_width_m >= rules_.at("turn width");
  if (has_room && wide && metres >= rules_.at("turn in road"))
    add(Kind::turn_in_road, place, quiet_tag_);
  if (has_room && metres >= rules_.at("emergency stop") &&
      !near_shops_.contains(place.stretch.piece()))
    add(Kind::emergency_stop, place, quiet_tag_);
}

/// Pulling up on the right: what is clear on both sides, and farther from junctions than the law.
void Spots::try_both_sides(const PullUp& place) {
  const double length_m = roads_.piece(place.stretch).length_m;
  const double clear_m = rules_.at("right clear");
  PullUp both = place;
  both.from_m = std::max(place.from_m, static_cast<float>(clear_m));
  both.to_m = std::min(place.to_m, static_cast<float>(length_m - clear_m));
  const auto opposite = equal_rows(draft_.tables.pull_ups, place.stretch.back(), &PullUp::stretch);
  for (const PullUp& other : opposite) {
    constexpr std::uint16_t bars = road::pull_up_flag::hours | road::pull_up_flag::residents |
                                   road::pull_up_flag::fee | road::pull_up_flag::lane;
    const auto from_m = std::max(both.from_m, static_cast<float>(length_m - other.to_m));
    const auto to_m = std::min(both.to_m, static_cast<float>(length_m - other.from_m));
    if ((other.flags & bars) != 0 || to_m - from_m < rules_.at("pull up right")) continue;
    both.from_m = from_m, both.to_m = to_m;
    if (is_straight(both)) add(Kind::pull_up_right, both, quiet_tag_);
    return;
  }
}

void Spots::try_all(const PullUp& place) {
  constexpr std::uint16_t bars = road::pull_up_flag::hours | road::pull_up_flag::residents |
                                 road::pull_up_flag::fee | road::pull_up_flag::lane;
  if ((place.flags & bars) != 0) return;
  const road::Piece& piece = roads_.piece(place.stretch);
  const int up_tenths = place.stretch.against() ? -piece.gradient_tenths : piece.gradient_tenths;
  if (up_tenths >= 10 * rules_.at("uphill") &&
      place.to_m - place.from_m >= rules_.at("uphill start"))
    add(Kind::uphill_start, place, piece.gradient_source);
  if ((piece.flags & piece_flag::quiet) == 0 || (place.flags & road::pull_up_flag::lay_by) != 0)
    return;
  try_quiet(place);
  if (!is_crowded(place)) try_both_sides(place);
}

/// The longest of a kind on a stretch, and the longest few of a cell.
void Spots::thin() {
  std::ranges::stable_sort(spots_, [](const PracticeSpot& a, const PracticeSpot& b) {
    return std::tuple(-a.metres(), a.stretch) < std::tuple(-b.metres(), b.stretch);
  });
  const auto most = static_cast<int>(rules_.at("spots"));
  constexpr std::uint64_t kinds = 64;  // road::bit() has room for no more
  std::unordered_map<std::uint64_t, int> in_cell;
  std::unordered_set<std::uint64_t> on_stretch;
  std::erase_if(spots_, [&](const PracticeSpot& spot) {
    const auto kind = static_cast<std::uint64_t>(spot.kind);
    if (!on_stretch.insert(spot.stretch.value * kinds + kind).second) return true;
    const Point at = point_along(roads_.shape_of(spot.stretch.piece()), spot.from_m);
    return ++in_cell[road::grid_cell(at) * kinds + kind] > most;
  });
  std::ranges::stable_sort(spots_, {},
                           [](const PracticeSpot& s) { return std::tuple(s.stretch, s.kind); });
}

std::vector<PracticeSpot> Spots::found() {
  for (const PullUp& place : draft_.tables.pull_ups) try_all(place);
  thin();
  return spots_;
}

}  // namespace

void add_spot(Draft& draft, const road::Roads& roads, const PracticeSpot& spot) {
  const PieceId piece = spot.stretch.piece();
  const OnPiece part = on_piece(roads, spot.stretch, spot.from_m, spot.to_m);
  road::Place place;
  place.kind = spot.kind;
  place.source = way_object(roads.pieces[piece.index()].way);
  place.at = point_along(roads.shape_of(piece), (part.from_m + part.to_m) / 2);
  place.length_m = static_cast<float>(spot.metres());
  road::Chance chance;
  chance.place = draft.add_place(place, {}, std::array{piece});
  chance.entry = chance.exit = spot.stretch;
  chance.kind = spot.kind;
  chance.hardness = static_cast<std::uint8_t>(road::hardness_of(spot.kind, road::Movement::none));
  chance.confidence = road::Confidence::inferred;
  chance.tag = spot.tag;
  chance.source = place.source;
  draft.add_chance(chance, std::array{spot.stretch});
}

void mark_manoeuvres(Draft& draft) {
  const PullUpRules rules;
  const road::Roads graph = draft.roads();
  for (const PracticeSpot& spot : Spots(draft, graph, rules).found()) add_spot(draft, graph, spot);
  mark_car_parks(draft, graph, rules);
  for (const Kind kind : road::all_kinds()) {
    if (road::form_of(kind) != road::KindForm::manoeuvre) continue;
    draft.report.count("places: " + std::string(road::name(kind)),
                       std::ranges::count(draft.tables.places, kind, &road::Place::kind));
  }
}

}  // namespace loopwright::mark
