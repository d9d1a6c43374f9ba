// 1. Chances of all forms but runs: what their source says, at their place.
// 2. Places without a chance (no legal way through for a learner): their own source, without a tag;
//    certain only when the kind always is.
// 3. Facts of runs: a row for each way and tag, at the middle of its first piece; the length of
//    pieces that say the same is added up, each piece once.
#include "loopwright/road/findings.hpp"

#include <algorithm>
#include <tuple>

#include "loopwright/road/kind_table.hpp"

namespace loopwright::road {
namespace {

auto key_of(const Finding& f) {
  return std::tuple(f.kind, f.object, f.tag, f.confidence);
}

void add_chances(const Roads& roads, std::vector<Finding>& all) {
  std::vector<bool> has_chance(roads.places.size());
  for (const Chance& chance : roads.chances) {
    if (is_stretch_like(chance.kind)) continue;
    has_chance[chance.place.index()] = true;
    const Place& place = roads.places[chance.place.index()];
    all.push_back({chance.kind, chance.source, chance.tag, chance.confidence, place.at, 0});
  }
  for (std::size_t p = 0; p < roads.places.size(); ++p) {
    const Place& place = roads.places[p];
    if (has_chance[p] || is_stretch_like(place.kind)) continue;
    const bool certain = kind_row(place.kind).sure == "certain";
    all.push_back({place.kind, place.source, TextId{0},
                   certain ? Confidence::certain : Confidence::inferred, place.at, 0});
  }
}

void add_runs(const Roads& roads, std::vector<Finding>& all) {
  for (const RunFact& fact : roads.run_facts) {
    const StretchId stretch = fact.stretch;
    const Piece& piece = roads.piece(stretch);
    const auto other_way = roads.run_facts_of(stretch.back());
    const bool told_by_along =
        stretch.against() && std::ranges::any_of(other_way, [&](const RunFact& other) {
          return std::tuple(other.kind, other.tag, other.confidence) ==
                 std::tuple(fact.kind, fact.tag, fact.confidence);
        });
    if (told_by_along) continue;
    all.push_back({fact.kind,
                   {piece.way, ObjectType::way, {}},
                   fact.tag,
                   fact.confidence,
                   point_along(roads.shape_of(stretch.piece()), piece.length_m / 2),
                   piece.length_m});
  }
}

}  // namespace

std::vector<Finding> findings(const Roads& roads) {
  std::vector<Finding> all;
  add_chances(roads, all);
  add_runs(roads, all);
  std::ranges::stable_sort(all, {}, key_of);
  std::vector<Finding> once;
  for (const Finding& finding : all) {
    if (once.empty() || key_of(once.back()) != key_of(finding)) {
      once.push_back(finding);
    } else {
      once.back().length_m += finding.length_m;
    }
  }
  return once;
}

}  // namespace loopwright::road
