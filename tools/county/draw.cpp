#include "county/draw.hpp"

#include "county/draft.hpp"
#include "county/faces.hpp"
#include "county/ground.hpp"
#include "county/grow.hpp"
#include "county/grow_dress.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::county {
namespace {

/// Dice of its own for each thing that is grown, so that a change of one leaves the others as they
/// were. FNV-1a (Fowler, Noll and Vo) over the name.
Dice dice_for(std::uint64_t seed, std::string_view name) {
  std::uint64_t hash = 0xcbf29ce484222325ULL;
  for (const char c : name) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
  return Dice(seed ^ hash);
}

void grow(Draft& draft, const PlanGrowth& growth, Dice& dice) {
  Drawing& county = draft.county;
  switch (growth.what) {
    case Grow::quarter:
      return grow_quarter(county, growth.ground, dice);
    case Grow::infill:
      return grow_infill(county, growth.ground, dice);
    case Grow::village:
      return grow_village(county, growth.settlement, dice);
    case Grow::town:
      return grow_town(county, growth.settlement, dice);
    case Grow::lanes:
      return grow_lanes(county, growth.ground, dice);
  }
}

void grow_all(Draft& draft, const Plan& plan, std::uint64_t seed) {
  for (const PlanGrowth& growth : plan.growth) {
    Dice dice = dice_for(seed, growth.ground.name + growth.settlement.name);
    grow(draft, growth, dice);
  }
  if (plan.growth.empty()) return;  // a plan that grows nothing is drawn just as it stands
  Dice services = dice_for(seed, "services");
  grow_services(draft.county, services);
  Dice dress = dice_for(seed, "dress");
  dress_streets(draft.county, dress);
}

}  // namespace

Drawing draw(const Plan& plan, std::uint64_t seed) {
  Draft draft;
  Drawing& county = draft.county;
  county.origin_lat = plan.origin_lat;
  county.origin_lon = plan.origin_lon;
  county.hills = plan.hills;
  county.areas = plan.areas;
  county.lone = plan.lone;
  draw_lines(draft, plan);
  join(draft, plan);
  put_rounds(draft, plan);
  if (!county.troubles.empty()) return county;
  grow_all(draft, plan, seed);
  put_late(draft, plan);
  resolve_turns(draft, plan);
  if (!plan.growth.empty()) {
    Dice bans = dice_for(seed, "bans");
    ban_turns(county, bans);
  }
  put_inclines(county);
  return county;
}

}  // namespace loopwright::county
