// An easier and a harder variant of the first loop: what each promises (DEVELOPERS.md, Variants).
//
//   if (const auto wish = variant_wish(answer.wish, first, "easier", above)) …   // a loop of that wish
//
// Rules: of the wish and the loops alone, so that the search, the proof and the card mean the same.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

inline constexpr std::string_view easier_variant = "easier", harder_variant = "harder";

/// The hardness of a loop: that of its hardest pass, and how many passes are as hard. What a lesson does
/// by choice (road::is_of_choice) isn't counted.
struct Hardness {
  int hardest = 0;  ///< 0: it passes nothing
  int passes = 0;
  friend auto operator<=>(const Hardness&, const Hardness&) = default;
};
Hardness hardness_of(const Loop& loop);

/// The wish that a variant of the first loop must meet: the same but for how hard its passes may be.
/// Easier: nothing above one grade below the hardest pass of the first loop. Harder: one grade above
/// what the wish allows, in place of the learner's level, and no less than the first loop has. Empty:
/// the first loop passes nothing above 1, so there is nothing easier. above_level: how far above the
/// learner's level a wish with a level allows (caps.txt).
std::optional<Wish> variant_wish(const Wish& wish, const Loop& first, std::string_view variant,
                                 int above_level);

/// "easier than loop 1: nothing above hardness 2"; empty for a loop that is no variant. Rules: the loop is
/// one of the answer's.
std::string variant_words(const Answer& answer, const Loop& loop);

}  // namespace loopwright::wish
