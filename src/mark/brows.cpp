// Brows: where the road beyond a crest, a hump bridge or a dip isn't seen.
//
// 1. By tag, certain: bridge=humpback or bridge:structure=humpback on the way; a hazard of such a
//    kind, or the British sign of a hump bridge, on the way or on one of its nodes. The sign of a
//    bend, of animals … is none.
// 2. By the elevation grid, inferred: the road rises before a point and falls after it, over 150 m
//    each, and the whole change is at least 10 % (three times the error of a grid's slopes). Taken
//    as a vertical curve as long as from the middle of the one to the middle of the other, it has
//    K = 150 m / change, and a driver sees over it S = sqrt(471 K) metres (eyes at 1.05 m, thing in
//    the road 0.26 m high). It is a brow when that is less than the stopping distance at the limit.
// A sharper crest between the grid's points is not found; so only fast roads get brows by it.
// Sources: OSM wiki, pages Key:bridge:structure, Key:hazard (none of its documented values is a
// brow: the words below are those one would use); sign 528 from memory. DMRB CD 109 (before: TD 9)
// for eye and object height and the meaning of K, from memory: its K of 100 at 100 km/h and 30 at
// 70 km/h follow from the formula with its sight distances of 215 and 120 m. Highway Code rule 126:
// 23 m at 30 mph, 73 m at 60, 96 m at 70: v feet to think and v * v / 20 feet to brake.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string>

#include "height_profile.hpp"
#include "loopwright/base/text.hpp"
#include "shape_runs.hpp"
#include "tag_words.hpp"
#include "units.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;

constexpr double side_m = 150, least_side_m = 120, profile_step_m = 30;
constexpr double least_change_percent = 10;
constexpr double sight2_per_k = 471;  // 200 * (sqrt(1.05) + sqrt(0.26))^2
constexpr double least_sight_m = 31;  // at the greatest change there can be, 70 %; 30 mph need 23 m

bool is_brow_hazard(std::string_view hazard) {
  constexpr std::array<std::string_view, 7> words{
      "blind_summit", "summit", "brow", "crest", "hump_bridge", "humpback_bridge", "dip"};
  return one_of(hazard, words);
}

/// The tag that tells of a brow on a way or node; empty when none does.
std::string brow_tag(const Tags& tags) {
  constexpr std::array<std::string_view, 2> bridges{"bridge:structure", "bridge"};
  for (const std::string_view key : bridges) {
    if (tags.is(key, "humpback")) return tag_text(tags, key);
  }
  if (tags.has("hazard") && std::ranges::any_of(split(tags.get("hazard"), ';'), is_brow_hazard)) {
    return tag_text(tags, "hazard");
  }
  if (!tags.has("traffic_sign")) return {};
  const auto signs = split(tags.get("traffic_sign"), ';');
  return std::ranges::count(signs, "GB:528") > 0 ? tag_text(tags, "traffic_sign") : std::string();
}

/// Highway Code stopping distance at a speed.
double stopping_m(double mph) {
  return (mph + mph * mph / 20) * feet_m;
}

class Brows {
 public:
  explicit Brows(Draft& draft) : draft_(draft), roads_(draft.roads()) {
    for (const auto& [id, tags] : draft.raw.node_tags) {
      if (std::string tag = brow_tag(tags); !tag.empty()) nodes_[id] = std::move(tag);
    }
  }
  std::vector<RunMember> find() {
    for_each_road(draft_, [&](PieceId id) { judge(id); });
    return std::move(members_);
  }

 private:
  void judge(PieceId id);
  [[nodiscard]] std::string tag_on(PieceId id) const;
  [[nodiscard]] double sight_over_m(PieceId id) const;

  Draft& draft_;
  road::Roads roads_;  // its texts are not read
  std::map<std::int64_t, std::string> nodes_;
  std::vector<RunMember> members_;
};

std::string Brows::tag_on(PieceId id) const {
  const RawWay& way = draft_.way(id);
  const road::Piece& piece = draft_.tables.pieces[id.index()];
  std::string tag = brow_tag(way.tags);
  if (nodes_.empty()) return tag;
  for (std::size_t i = piece.from_index; i <= piece.to_index && tag.empty(); ++i) {
    if (const auto node = nodes_.find(way.nodes[i]); node != nodes_.end()) {
      tag = tag_on_node(node->second, node->first);
    }
  }
  return tag;
}

/// Metres one sees over the sharpest crest of the piece; 0 when it has none.
double Brows::sight_over_m(PieceId id) const {
  const HeightProfile profile(draft_, roads_, id);
  double change = 0;
  const double steps = std::max(1.0, std::ceil(profile.length_m() / profile_step_m));
  for (int i = 0; i <= static_cast<int>(steps); ++i) {
    const double at = profile.length_m() * i / steps;
    const auto before = profile.slope_percent(at - side_m, at, least_side_m);
    const auto after = profile.slope_percent(at, at + side_m, least_side_m);
    if (before && after && *before > 0 && *after < 0) change = std::max(change, *before - *after);
  }
  return change < least_change_percent ? 0 : std::sqrt(sight2_per_k * side_m / change);
}

void Brows::judge(PieceId id) {
  if (const std::string tag = tag_on(id); !tag.empty()) {
    add_both_ways(draft_, members_,
                  {{id, false}, Kind::brow, Confidence::certain, draft_.text(tag)});
    return;
  }
  const double stopping = stopping_m(limit_mps(draft_, id) / mps_per_mph);
  if (!draft_.heights || stopping < least_sight_m) return;
  const double sight_m = sight_over_m(id);
  if (sight_m == 0 || sight_m >= stopping) return;
  const std::string text =
      "elevation grid: about " + std::to_string(std::lround(sight_m)) + " m seen over the crest";
  add_both_ways(draft_, members_,
                {{id, false}, Kind::brow, Confidence::inferred, draft_.text(text)});
}

}  // namespace

std::vector<RunMember> brow_members(Draft& draft) {
  return Brows(draft).find();
}

}  // namespace loopwright::mark
