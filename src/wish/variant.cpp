#include "loopwright/wish/variant.hpp"

#include <algorithm>

#include "loopwright/road/kind_table.hpp"

namespace loopwright::wish {
namespace {

constexpr int hardest_there_is = 5;

int allowed_by(const Wish& wish, int above_level) {
  const int by_level = wish.level_given ? wish.level + above_level : hardest_there_is;
  return std::min(wish.hardest.value_or(hardest_there_is), by_level);
}

}  // namespace

Hardness hardness_of(const Loop& loop) {
  Hardness hardness;
  for (const Pass& pass : loop.passes) {
    if (road::is_of_choice(pass.kind) || pass.hardness < hardness.hardest) continue;
    if (pass.hardness > hardness.hardest) hardness = {pass.hardness, 0};
    ++hardness.passes;
  }
  return hardness;
}

std::optional<Wish> variant_wish(const Wish& wish, const Loop& first, std::string_view variant,
                                 int above_level) {
  const int has = hardness_of(first).hardest;
  Wish other = wish;
  other.alternatives = 1;
  if (variant == easier_variant) {
    if (has <= 1) return std::nullopt;
    other.hardest = has - 1;
    return other;
  }
  other.hardest = std::min(hardest_there_is, std::max(allowed_by(wish, above_level) + 1, has));
  other.level_given = false;
  return other;
}

std::string variant_words(const Answer& answer, const Loop& loop) {
  if (loop.variant.empty()) return "";
  const Loop& first = answer.loops.front();
  const Hardness of_first = hardness_of(first), own = hardness_of(loop);
  const std::string text = loop.variant + " than loop " + std::to_string(first.id) + ": ";
  if (loop.variant == easier_variant)
    return text + "nothing above hardness " + std::to_string(of_first.hardest - 1);
  if (own.hardest > of_first.hardest)
    return text + "hardness up to " + std::to_string(own.hardest) + ", not " +
           std::to_string(of_first.hardest);
  return text + std::to_string(own.passes) + " passes of hardness " + std::to_string(own.hardest) +
         ", not " + std::to_string(of_first.passes);
}

}  // namespace loopwright::wish
