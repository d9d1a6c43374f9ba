// 1. Variants stand behind all other loops, the easier before the harder, each once; a wish that isn't met
//    for lack of a pass or a place to stop has none.
// 2. Each is checked as a loop of the wish it must meet (wish/variant.hpp), which caps its hardness; the
//    harder one is harder than the first loop.
#include "loopwright/wish/variant.hpp"

#include <algorithm>

#include "proof/checks.hpp"

namespace loopwright::proof {

std::optional<wish::Wish> wish_of_loop(const wish::Answer& answer, const wish::Loop& loop,
                                       const Caps& caps) {
  if (loop.variant.empty()) return answer.wish;
  return wish::variant_wish(answer.wish, answer.loops.front(), loop.variant,
                            caps.hardness_above_level);
}

bool variants_hold(const wish::Answer& answer, Claims& claims) {
  std::string_view before;  // "", "easier", "harder": in this order
  for (const wish::Loop& loop : answer.loops) {
    const std::string where = "loop " + std::to_string(loop.id);
    if (loop.variant.empty() && before.empty()) continue;
    const bool first = &loop == &answer.loops.front();
    const bool in_place = !loop.variant.empty() && !first && before < loop.variant;
    if (!claims.hold(in_place, [&] {
          return where + ": variants stand behind all other loops, the easier one first, each once";
        }))
      return false;
    before = loop.variant;
    const bool met =
        !answer.shortfall || (answer.shortfall->missing.empty() && answer.shortfall->stops.empty());
    if (!claims.hold(met,
                     [&] { return where + ": it is a variant of a loop that isn't as wished"; }))
      return false;
    const bool harder = wish::hardness_of(loop) > wish::hardness_of(answer.loops.front());
    if (!claims.hold(loop.variant != wish::harder_variant || harder,
                     [&] { return where + ": it isn't harder than the first loop"; }))
      return false;
    if (!claims.hold(loop.certificate.state == "searched" && !loop.certificate.bound, [&] {
          return where + ": nothing is known of how good a variant is but that it was searched for";
        }))
      return false;
  }
  return true;
}

}  // namespace loopwright::proof
