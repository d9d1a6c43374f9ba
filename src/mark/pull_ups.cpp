// Pull-up places: where nothing the map knows forbids a car to stop beside its near side.
//
// 1. Roads: a learner may drive there; residential, unclassified or tertiary (on bigger roads only
//    where the map says that cars stand); within the table's limit; no ring, link, bridge, tunnel,
//    ford or service road; not narrow (runs, lanes, usable width), no brow.
// 2. The kerb: what its tags forbid (kerb.cpp). A bus lane along it forbids it while in force: with
//    hours it is kept by them, without (or against the traffic, or doubtful) it is no place.
// 3. Clear parts (clear_kerb.cpp) of at least a car's length and room to pull in: the longest of
//    each stretch.
// 4. Lay-bys and street-side bays mapped beside a road (lay_bys.cpp) are added; these may lie on
//    bigger and faster roads.
// A place is inferred, never certain: most lines and signs aren't in the map. What users are told:
// "no ban mapped: check lines, signs and drives".
// Source: Highway Code rules 239 to 252; numbers and reasons in src/rules/pull_ups.txt.
#include <algorithm>
#include <array>
#include <string>
#include <tuple>

#include "clear_kerb.hpp"
#include "kerb.hpp"
#include "law_days.hpp"
#include "lay_bys.hpp"
#include "loopwright/base/equal_rows.hpp"
#include "loopwright/mark/rules.hpp"
#include "pull_up_rules.hpp"

namespace loopwright::mark {
namespace {

namespace piece_flag = road::piece_flag;
namespace flag = road::pull_up_flag;
using road::Kind;
using road::PullUp;
using road::RoadClass;

class PullUps {
 public:
  PullUps(Draft& draft, const road::Roads& roads)
      : draft_(draft), roads_(roads), clear_(draft, roads, rules_) {}
  std::vector<PullUp> found();

 private:
  [[nodiscard]] bool may_hold_one(StretchId stretch) const;
  [[nodiscard]] bool is_slow(StretchId stretch) const;
  [[nodiscard]] bool is_narrow(StretchId stretch) const;
  [[nodiscard]] Kerb kerb_beside(StretchId stretch) const;
  void add_parts(StretchId stretch, const Kerb& kerb, std::vector<PullUp>& found);
  [[nodiscard]] std::string why(const Kerb& kerb, StretchId stretch, const KerbPart& part) const;

  Draft& draft_;
  const road::Roads& roads_;
  const PullUpRules rules_;
  ClearKerb clear_;
};

bool PullUps::is_slow(StretchId stretch) const {
  const road::LimitOnDay limit = draft_.law.on(roads_.stretch(stretch).limit, newest_day);
  const double most = rules_.at(limit.unit == SpeedUnit::mph ? "most mph" : "most km/h");
  return limit.value > 0 && limit.value <= most;
}

bool PullUps::is_narrow(StretchId stretch) const {
  constexpr std::uint64_t narrow =
      road::bit(Kind::narrow_road) | road::bit(Kind::single_track) | road::bit(Kind::brow);
  const road::Piece& piece = roads_.piece(stretch);
  const bool two_way = (piece.flags & piece_flag::one_way) == 0;
  return (roads_.stretch(stretch).runs & narrow) != 0 || (two_way && piece.lanes == 1) ||
         (piece.usable_width_m > 0 && piece.usable_width_m < rules_.at("usable width"));
}

bool PullUps::may_hold_one(StretchId stretch) const {
  constexpr std::array classes{RoadClass::trunk,        RoadClass::primary,
                               RoadClass::secondary,    RoadClass::tertiary,
                               RoadClass::unclassified, RoadClass::residential};
  constexpr std::uint32_t no_place = piece_flag::ring | piece_flag::bridge | piece_flag::tunnel;
  const road::Piece& piece = roads_.piece(stretch);
  return roads_.drivable(stretch) && (piece.flags & no_place) == 0 &&
         std::ranges::find(classes, piece.road_class) != classes.end() && is_slow(stretch) &&
         !is_narrow(stretch) && !draft_.way_tags(stretch.piece()).is("ford", "yes");
}

Kerb PullUps::kerb_beside(StretchId stretch) const {
  using road::LaneDirection;
  Kerb kerb = kerb_of(draft_.way_tags(stretch.piece()), near_side(draft_.side(), stretch));
  const auto lanes = equal_rows(draft_.tables.bus_lanes, stretch.piece(), &road::BusLane::piece);
  const auto ours = stretch.against() ? LaneDirection::against : LaneDirection::along;
  const auto near = draft_.side() == Side::left ? road::LaneSide::left : road::LaneSide::right;
  for (const road::BusLane& lane : lanes) {
    const bool sure = lane.contraflow == 0 && lane.direction != LaneDirection::unknown;
    const bool elsewhere =
        lane.direction != ours || (lane.side != near && lane.side != road::LaneSide::unknown);
    if (sure && elsewhere) continue;
    const std::string_view source = draft_.text(lane.source);
    if (sure && lane.doubtful == 0) {
      add_hours(kerb, draft_.text(lane.hours), source);
      kerb.flags |= flag::lane;
    } else {
      kerb.forbidden_by = source;
    }
  }
  return kerb;
}

/// Metres the part is clear of junctions, rounded down to a number easily said.
int clear_of_junctions_m(double length_m, const KerbPart& part) {
  constexpr std::array steps{100, 75, 50, 40, 30, 25, 20, 15};
  const double clear_m = std::min(part.from_m, length_m - part.to_m);
  const auto step = std::ranges::find_if(steps, [&](int metres) { return metres <= clear_m; });
  return step == steps.end() ? 0 : *step;
}

std::string PullUps::why(const Kerb& kerb, StretchId stretch, const KerbPart& part) const {
  const int clear_m = clear_of_junctions_m(roads_.piece(stretch).length_m, part);
  const std::string_view no_ban = kerb.hours.empty() ? "no ban mapped" : "a ban by the hour";
  std::string text =
      kerb.allowed_by.empty() ? std::string(no_ban) : "cars stand here: " + kerb.allowed_by;
  if (clear_m > 0) text += "; " + std::to_string(clear_m) + " m clear of junctions";
  return text;
}

void PullUps::add_parts(StretchId stretch, const Kerb& kerb, std::vector<PullUp>& found) {
  std::vector<KerbPart> parts = clear_.parts(stretch.piece());
  std::erase_if(parts, [&](const KerbPart& p) { return p.metres() < rules_.at("least length"); });
  std::ranges::stable_sort(parts, std::greater{}, &KerbPart::metres);
  if (const auto most = static_cast<std::size_t>(rules_.at("parts")); parts.size() > most)
    parts.resize(most);
  const road::Piece& piece = roads_.piece(stretch);
  const double hill_tenths = 10 * rules_.at("hill");
  for (const KerbPart& part : parts) {
    PullUp place;
    place.stretch = stretch;
    const double length_m = piece.length_m;
    place.from_m = static_cast<float>(stretch.against() ? length_m - part.to_m : part.from_m);
    place.to_m = static_cast<float>(stretch.against() ? length_m - part.from_m : part.to_m);
    place.why = draft_.text(why(kerb, stretch, part));
    place.hours = draft_.text(kerb.hours);
    place.flags = kerb.flags;
    if (std::abs(piece.gradient_tenths) >= hill_tenths) place.flags |= flag::hill;
    found.push_back(place);
  }
}

std::vector<PullUp> PullUps::found() {
  constexpr int tertiary = 4;
  std::vector<PullUp> found;
  for (std::size_t row = 0; row < roads_.stretches.size(); ++row) {
    const StretchId stretch{row};
    if (!may_hold_one(stretch)) continue;
    const Kerb kerb = kerb_beside(stretch);
    if (!kerb.forbidden_by.empty()) continue;
    const bool big = road::rank(roads_.piece(stretch).road_class) < tertiary;
    if (!big || !kerb.allowed_by.empty()) add_parts(stretch, kerb, found);
  }
  return found;
}

}  // namespace

void mark_pull_ups(Draft& draft) {
  const road::Roads graph = draft.roads();
  std::vector<PullUp> found = PullUps(draft, graph).found();
  add_lay_bys(draft, graph, found);
  std::ranges::stable_sort(found, {},
                           [](const PullUp& p) { return std::tuple(p.stretch, p.from_m); });
  const auto count = [&](std::string_view what, std::uint16_t bits) {
    draft.report.count("pull-up places" + std::string(what),
                       std::ranges::count_if(found, [&](const PullUp& p) {
                         return bits == 0 || (p.flags & bits) != 0;
                       }));
  };
  count("", 0);
  count(": by the hour", flag::hours | flag::lane);
  count(": lay-bys", flag::lay_by);
  draft.tables.pull_ups = std::move(found);
}

}  // namespace loopwright::mark
