// Streets in which parked cars leave room for one: one holds back and meets what comes.
//
// 1. Two-way roads limited to 30 mph or 50 km/h at most, residential up to secondary.
// 2. width:effective under 4.8 m, on a carriageway that isn't itself as narrow: certain.
// 3. Cars parked by either tagging scheme leave under 4.8 m of a carriageway that has more; or they
//    stand on both sides of a residential street of unknown width without two lanes beside them:
//    inferred, since the tags say where cars may stand and not that they do.
// 4. A guess, in Great Britain and Ireland: a street of terraces. At least 14 houses in 100 m on
//    each side, or 18 on one, within 25 m: 7.1 m and 5.5 m each leave no room for a drive between
//    them (terraced houses are 4.5 to 6 m wide, semi-detached ones have 8 m or more). Not where the map shows drives, where it
//    says of both sides that no car stands there, where the width is 8 m or more or there are three
//    lanes, nor on secondary roads.
// A road that is narrow by itself is narrow-road; a one-way street meets nobody.
// Sources: Manual for Streets (2007) figure 7.1 for 4.8 m; 8 m = two parked rows of 2 m and a lane
// for each direction of 2 m: ours, as all of step 4.
#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "houses.hpp"
#include "law_days.hpp"
#include "parking.hpp"
#include "road_line.hpp"
#include "shape_runs.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::piece_flag;
using road::Confidence;
using road::RoadClass;

constexpr double two_pass_m = 4.8, wide_m = 8, least_window_m = 100;
constexpr double houses_beside_within_m = 25, least_per_side = 14, least_on_one = 18,
                 most_drives = 2;
constexpr double town_mps = 50 / 3.6 + 0.01;
constexpr std::uint8_t many_lanes = 3, two_lanes = 2;

struct Reason {
  std::string tag;
  Confidence confidence = Confidence::inferred;
};

bool is_street(const road::Piece& piece) {
  constexpr std::array classes{RoadClass::residential, RoadClass::unclassified, RoadClass::tertiary,
                               RoadClass::secondary};
  return std::ranges::find(classes, piece.road_class) != classes.end() &&
         (piece.flags & flag::one_way) == 0;
}

bool is_british_isles(const Region& region) {
  return region.code.starts_with("GB-") || region.code == "IE";
}

class MeetingTraffic {
 public:
  explicit MeetingTraffic(Draft& draft);
  std::vector<RunMember> find();

 private:
  [[nodiscard]] Reason reason_of(PieceId id) const;
  [[nodiscard]] Reason by_tags(PieceId id) const;
  [[nodiscard]] Reason by_parked(PieceId id, const Parked& parked) const;
  [[nodiscard]] Reason by_terraces(PieceId id) const;
  [[nodiscard]] bool may_be_terrace(PieceId id) const;
  [[nodiscard]] double drives_on(PieceId id) const;
  [[nodiscard]] const road::Piece& row(PieceId id) const {
    return draft_.tables.pieces[id.index()];
  }

  Draft& draft_;
  road::Roads roads_;  // its texts are not read
  Houses houses_;
  std::vector<std::int64_t> drive_ends_;  // map nodes at which a drive begins or ends, ascending
};

MeetingTraffic::MeetingTraffic(Draft& draft)
    : draft_(draft), roads_(draft.roads()), houses_(draft.raw) {
  for (const RawWay& way : draft.raw.ways) {
    if (!way.tags.is("service", "driveway") || way.nodes.empty()) continue;
    drive_ends_.push_back(way.nodes.front());
    drive_ends_.push_back(way.nodes.back());
  }
  std::ranges::sort(drive_ends_);
}

Reason MeetingTraffic::by_parked(PieceId id, const Parked& parked) const {
  const road::Piece& piece = row(id);
  if (parked.total_m() == 0) return {};
  if (piece.width_m >= two_pass_m) {
    if (piece.usable_width_m >= two_pass_m) return {};
    return {std::string(draft_.text(piece.width_source))};
  }
  const bool full = parked.both() && piece.width_m == 0 && piece.lanes < two_lanes &&
                    piece.road_class != RoadClass::secondary;
  return full ? Reason{parked.tag, Confidence::inferred} : Reason{};
}

Reason MeetingTraffic::by_tags(PieceId id) const {
  const Tags& tags = draft_.way_tags(id);
  const auto effective = read_width(tags.get("width:effective"));
  if (effective && *effective > 0) {
    const bool wider = row(id).width_m == 0 || row(id).width_m >= two_pass_m;
    if (!wider || *effective >= two_pass_m) return {};
    return {tag_text(tags, "width:effective"), Confidence::certain};
  }
  return by_parked(id, parked_on(tags));
}

/// Drives of houses that meet the street, for each 100 m.
double MeetingTraffic::drives_on(PieceId id) const {
  const RawWay& way = draft_.way(id);
  double drives = 0;
  for (std::size_t i = row(id).from_index; i <= row(id).to_index; ++i) {
    if (std::ranges::binary_search(drive_ends_, way.nodes[i])) ++drives;
  }
  return drives * 100 / std::max(row(id).length_m, least_window_m);
}

bool MeetingTraffic::may_be_terrace(PieceId id) const {
  const road::Piece& piece = row(id);
  if (!is_british_isles(draft_.info.region) || piece.road_class == RoadClass::secondary) {
    return false;
  }
  const Tags& tags = draft_.way_tags(id);
  if (tags.has("width:effective") || piece.width_m >= wide_m || piece.lanes >= many_lanes) {
    return false;
  }
  const bool narrow_itself = piece.width_m > 0 && piece.width_m < two_pass_m;
  const Parked parked = parked_on(tags);
  return !narrow_itself && !(parked.left_free && parked.right_free) && drives_on(id) <= most_drives;
}

Reason MeetingTraffic::by_terraces(PieceId id) const {
  if (!may_be_terrace(id)) return {};
  const double beyond = std::max(0.0, (least_window_m - row(id).length_m) / 2);
  const RoadLine line = road_line(draft_, roads_, id, {beyond, 0});
  const double hundreds = length_m(line.points) / 100;
  const double fewest = std::min(2 * least_per_side, least_on_one) * hundreds;
  const auto houses =
      houses_.beside(line.points, {houses_beside_within_m, draft_.text(row(id).name), fewest});
  const auto left = static_cast<double>(std::ranges::count(houses, true, &HouseBeside::left));
  const double right = static_cast<double>(houses.size()) - left;
  const bool both = std::min(left, right) >= least_per_side * hundreds;
  const bool one = std::max(left, right) >= least_on_one * hundreds;
  if (hundreds * 100 < least_window_m / 2 || (!both && !one)) return {};
  const auto in_100_m = std::lround(static_cast<double>(houses.size()) / hundreds);
  return {std::to_string(in_100_m) + " houses in 100 m, no drives mapped: cars likely parked"};
}

Reason MeetingTraffic::reason_of(PieceId id) const {
  if (!may_be_run(row(id)) || !is_street(row(id)) || limit_mps(draft_, id) > town_mps) return {};
  Reason reason = by_tags(id);
  return reason.tag.empty() ? by_terraces(id) : reason;
}

std::vector<RunMember> MeetingTraffic::find() {
  std::vector<RunMember> members;
  const auto ask = [&](std::size_t row) { return reason_of(PieceId{row}); };
  each_in_order(roads_.pieces.size(), ask, [&](std::size_t row, Reason&& reason) {
    if (reason.tag.empty()) return;
    add_both_ways(draft_, members,
                  {{PieceId{row}, false},
                   road::Kind::meeting_traffic,
                   reason.confidence,
                   draft_.text(reason.tag)});
  });
  return members;
}

}  // namespace

std::vector<RunMember> meeting_traffic_members(Draft& draft) {
  return MeetingTraffic(draft).find();
}

}  // namespace loopwright::mark
