// Country roads: at the national limit, on one carriageway, outside built-up streets.
//
// 1. Trunk roads down to unclassified ones; no slip roads, no one-way roads, no half of a dual
//    carriageway. A mere residential street is none, whatever its limit.
// 2. The limit is the national one of a single carriageway (elsewhere: that outside towns), or a
//    sign with at least that number.
// 3. Built up when 20 houses or more a kilometre stand within 40 m: then it is none.
// 4. Certain when a tag gives the limit. Else there must be no lamps, no pavement and no house
//    mapped along it, and where not even lit=no is said, it must lie in open country
//    (open_country.cpp): then it is inferred.
// Houses are often not mapped, so that few of them prove little; steps 3 and 4 only ever take away.
// Sources: Highway Code rules 124 and 154; figures of steps 3 and 4 are ours.
#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "houses.hpp"
#include "law_days.hpp"
#include "open_country.hpp"
#include "shape_runs.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::piece_flag;
using road::Confidence;
using road::LimitConfidence;
using road::LimitFact;
using road::LimitRule;
using road::RoadClass;

constexpr double built_up_per_km = 20, houses_within_m = 40;

bool may_be_country_road(const road::Piece& piece) {
  constexpr std::array classes{RoadClass::trunk, RoadClass::primary, RoadClass::secondary,
                               RoadClass::tertiary, RoadClass::unclassified};
  return std::ranges::find(classes, piece.road_class) != classes.end() &&
         (piece.flags & (flag::dual | flag::dual_inferred | flag::one_way)) == 0;
}

bool has_pavement(const Tags& tags) {
  constexpr std::array<std::string_view, 5> there{"both", "left", "right", "yes", "separate"};
  return one_of(tags.get("sidewalk"), there) || one_of(tags.get("sidewalk:both"), there) ||
         one_of(tags.get("sidewalk:left"), there) || one_of(tags.get("sidewalk:right"), there);
}

class CountryRoads {
 public:
  explicit CountryRoads(Draft& draft)
      : draft_(draft), roads_(draft.roads()), houses_(draft.raw), country_(roads_) {}
  std::vector<RunMember> find() {
    for_each_road(draft_, [&](PieceId id) {
      if (may_be_country_road(row(id))) judge(id);
    });
    return std::move(members_);
  }

 private:
  void judge(PieceId id);
  [[nodiscard]] const road::Piece& row(PieceId id) const { return roads_.pieces[id.index()]; }
  [[nodiscard]] bool is_national(const LimitFact& fact) const;
  [[nodiscard]] std::size_t houses_along(PieceId id) const;
  [[nodiscard]] bool may_be_guessed(PieceId id, std::size_t houses) const;

  Draft& draft_;
  road::Roads roads_;  // its texts are not read
  Houses houses_;
  OpenCountry country_;
  std::vector<RunMember> members_;
};

bool CountryRoads::is_national(const LimitFact& fact) const {
  constexpr std::array rules{LimitRule::national_single, LimitRule::rural, LimitRule::rural_minor};
  if (std::ranges::find(rules, fact.rule) != rules.end()) return true;
  if (fact.rule != LimitRule::signed_value) return false;
  const bool british = draft_.info.region.code.starts_with("GB-");
  LimitFact national;
  national.rule = british ? LimitRule::national_single : LimitRule::rural;
  return draft_.law.on(fact, newest_day).metres_per_second() >=
         draft_.law.on(national, newest_day).metres_per_second();
}

std::size_t CountryRoads::houses_along(PieceId id) const {
  return houses_.beside(roads_.shape_of(id), {houses_within_m, {}, 0}).size();
}

/// Step 4, for a limit that no tag gives.
bool CountryRoads::may_be_guessed(PieceId id, std::size_t houses) const {
  const Tags& tags = draft_.way_tags(id);
  if (houses > 0 || (row(id).flags & flag::lit) != 0 || has_pavement(tags)) return false;
  return tags.is("lit", "no") || country_.holds(id);
}

void CountryRoads::judge(PieceId id) {
  const StretchId along{id, false};
  const LimitFact& fact = roads_.stretch(along).limit;
  if (!is_national(fact) || !is_national(roads_.stretch(along.back()).limit)) return;
  const std::size_t houses = houses_along(id);
  const double a_km = std::max(row(id).length_m, 100.0) / 1000;
  if (static_cast<double>(houses) >= built_up_per_km * a_km) return;
  const bool certain = fact.confidence == LimitConfidence::certain;
  if (!certain && !may_be_guessed(id, houses)) return;
  const std::string source(draft_.text(fact.source));
  add_both_ways(
      draft_, members_,
      {along, road::Kind::country_road, certain ? Confidence::certain : Confidence::inferred,
       draft_.text(certain ? source : source + ", no houses mapped along it")});
}

}  // namespace

std::vector<RunMember> country_road_members(Draft& draft) {
  return CountryRoads(draft).find();
}

}  // namespace loopwright::mark
