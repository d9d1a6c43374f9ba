// Method:
//   1. Out of reach in the minutes: the hunt has gathered these.
//   2. When the wish or the clock shuts anything, the chances within the minutes are gathered again on a ground
//      where nothing is shut; for each that the hunt lacks, the limits are asked one after the other.
#include "find/left_out.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "find/bans.hpp"
#include "find/keep_off.hpp"
#include "find/reached_chances.hpp"
#include "find/street_caps.hpp"

namespace loopwright::find {

namespace {

enum class Why : std::uint8_t { far, hard, avoided, kept_off, shut, worn_out, behind };
constexpr std::array<std::string_view, 7> words{
    "out of reach in the minutes",
    "too hard",
    "avoided",
    "kept off",
    "shut at that time",
    "on streets driven often enough by the ledger",
    "only to be reached over roads that are avoided, kept off, shut or too hard"};

/// All else of the wish, but nothing that shuts a road.
wish::Wish unlimited(wish::Wish wish) {
  wish.avoids.clear(), wish.keep_offs.clear(), wish.street_use.clear();
  wish.hardest.reset();
  wish.level_given = false;
  return wish;
}

bool shuts_anything(const Ground& ground) {
  const wish::Wish& wish = ground.wish;
  return !wish.avoids.empty() || !wish.keep_offs.empty() || !wish.street_use.empty() ||
         wish.hardest || wish.level_given || !ground.walls.walls().empty();
}

/// What one limit alone shuts.
template <class Apply>
reach::Costs shut_by(const Ground& ground, Apply apply) {
  reach::Costs costs(ground.roads, ground.pace);
  apply(costs);
  return costs;
}

bool is_shut(const road::Roads& roads, const reach::Costs& costs, const road::Chance& chance) {
  const auto path = roads.path_of(chance);
  for (std::size_t i = 0; i < path.size(); ++i) {
    if (!costs.may_drive(path[i])) return true;
    if (i == 0) continue;
    const std::size_t from = path[i - 1].index();
    for (std::uint32_t row = roads.turn_first[from]; row < roads.turn_first[from + 1]; ++row)
      if (roads.stretch_of(roads.turns[row].to) == path[i] && costs.is_banned(row)) return true;
  }
  return false;
}

class Reasons {
 public:
  explicit Reasons(const Ground& ground)
      : ground_(ground),
        kept_off_(shut_by(ground,
                          [&](reach::Costs& costs) {
                            apply_keep_offs(ground.roads, ground.wish, ground.setting, {}, costs);
                          })),
        shut_(
            shut_by(ground, [&](reach::Costs& costs) { ground.walls.apply(ground.roads, costs); })),
        worn_out_(shut_by(ground, [&](reach::Costs& costs) {
          StreetCaps(ground.roads, ground.wish, ground.caps).apply(costs);
        })) {}

  [[nodiscard]] Why why(const road::Chance& chance) const {
    if (is_unwanted(ground_.wish, ground_.caps, chance)) {
      wish::Wish by_kind = ground_.wish;
      by_kind.hardest.reset(), by_kind.level_given = false;
      const bool avoided = is_unwanted(by_kind, ground_.caps, chance);
      return avoided ? Why::avoided : Why::hard;
    }
    if (is_shut(ground_.roads, kept_off_, chance)) return Why::kept_off;
    if (is_shut(ground_.roads, shut_, chance)) return Why::shut;
    if (is_shut(ground_.roads, worn_out_, chance)) return Why::worn_out;
    return Why::behind;
  }

 private:
  const Ground& ground_;
  reach::Costs kept_off_, shut_, worn_out_;
};

/// Chances within the minutes when nothing is shut, ascending, each once.
std::vector<ChanceId> without_limits(const Hunt& hunt) {
  const Ground& ground = hunt.ground;
  const wish::Wish wish = unlimited(ground.wish);
  const ClockWalls walls = ground.walls.with_only({});
  const Ground open(ground.roads, wish, ground.setting, walls);
  std::vector<ChanceId> chances;
  for (const ReachedChance& reached : chances_within(open, wish.wants, hunt.high_ms))
    chances.push_back(reached.chance);
  std::sort(chances.begin(), chances.end());
  chances.erase(std::unique(chances.begin(), chances.end()), chances.end());
  return chances;
}

}  // namespace

std::vector<wish::LeftOut> left_out_of(const Hunt& hunt) {
  std::array<std::int64_t, words.size()> counts{};
  std::vector<ChanceId> known = hunt.too_far;
  counts[static_cast<std::size_t>(Why::far)] = static_cast<std::int64_t>(known.size());
  for (const Candidate& candidate : hunt.candidates) known.push_back(candidate.chance);
  std::sort(known.begin(), known.end());
  if (shuts_anything(hunt.ground)) {
    const Reasons reasons(hunt.ground);
    for (const ChanceId chance : without_limits(hunt))
      if (!std::binary_search(known.begin(), known.end(), chance))
        ++counts[static_cast<std::size_t>(reasons.why(hunt.ground.roads.chances[chance.index()]))];
  }
  std::vector<wish::LeftOut> left_out;
  for (std::size_t k = 0; k < words.size(); ++k)
    if (counts[k] > 0) left_out.push_back({std::string(words[k]), counts[k]});
  return left_out;
}

}  // namespace loopwright::find
