// Method:
//   1. Stretch-like kinds: every stretch with an unwanted fact is shut. A run shorter than a pass
//      carries no fact, so nothing is shut without reason.
//   2. What lies beside a stretch shuts it. A manoeuvre shuts nothing: it is only done when asked
//      for.
//   3. A junction passed over one node: the very turn is shut.
//   4. A junction with road inside (roundabout, signal cluster): when its kind is avoided, the turn
//      into it is shut; when only some movements are avoided or too hard, the last turn out of it is,
//      which may shut another movement that leaves by the same road: a loop is then lost, never a rule.
#include "find/bans.hpp"

#include <algorithm>

#include "find/turn_bans.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::find {

namespace {

/// By this movement; of a junction kind `none` asks whether it is by all of them.
bool is_avoided(const wish::Wish& wish, road::Kind kind, road::Movement movement) {
  return std::any_of(wish.avoids.begin(), wish.avoids.end(), [&](const wish::Avoid& avoid) {
    return wish::is_avoided(avoid, kind, movement);
  });
}

bool is_too_hard(const wish::Wish& wish, const Caps& caps, road::Kind kind, int hardness) {
  if (road::is_of_choice(kind)) return false;
  if (wish.hardest && hardness > *wish.hardest) return true;
  if (!wish.level_given) return false;
  if (hardness <= wish.level + caps.hardness_above_level) return false;
  return std::none_of(wish.wants.begin(), wish.wants.end(),
                      [&](const wish::Want& w) { return road::meets(kind, w.kind); });
}

}  // namespace

bool is_unwanted(const wish::Wish& wish, const Caps& caps, const road::Chance& chance) {
  return is_avoided(wish, chance.kind, chance.movement) ||
         is_too_hard(wish, caps, chance.kind, chance.hardness);
}

bool is_unwanted(const wish::Wish& wish, const Caps& caps, const road::RunFact& fact) {
  return is_avoided(wish, fact.kind, road::Movement::none) ||
         is_too_hard(wish, caps, fact.kind, fact.hardness);
}

void apply_bans(const road::Roads& roads, const wish::Wish& wish, const Caps& caps,
                reach::Costs& costs) {
  if (wish.avoids.empty() && !wish.level_given && !wish.hardest) return;
  for (const road::RunFact& fact : roads.run_facts)
    if (is_unwanted(wish, caps, fact)) costs.shut(fact.stretch);
  TurnBans bans(roads, costs);
  for (const road::Chance& chance : roads.chances) {
    const road::KindForm form = road::form_of(chance.kind);
    if (form == road::KindForm::run || form == road::KindForm::manoeuvre ||
        !is_unwanted(wish, caps, chance))
      continue;
    const auto path = roads.path_of(chance);
    if (path.size() == 1)
      costs.shut(path[0]);
    else if (path.size() == 2 || is_avoided(wish, chance.kind, road::Movement::none))
      bans.shut(path[0], path[1]);
    else
      bans.shut(path[path.size() - 2], path.back());
  }
}

}  // namespace loopwright::find
