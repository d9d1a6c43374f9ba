// What counting passes takes, for a whole lesson (counting.cpp) and for its parts (part_counts.cpp).
#pragma once

#include <cstdint>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "proof/checks.hpp"

namespace loopwright::proof {

using Found = const FoundPass*;

/// The drive's passes in driving order: by where they begin, then end, then kind.
std::vector<Found> in_order(const Drive& drive);
/// The same in the order of the file's list. Rules: passes_hold.
std::vector<Found> as_listed(const Drive& drive);

std::int64_t begins_ms(const Drive& drive, const FoundPass& found);
/// Asked between the beginnings of two passes that count; none when the wish names no spacing for it.
std::optional<std::int64_t> asked_spacing_ms(const Drive& drive, const wish::Want& want);
/// So many passes of a place count.
int place_cap(road::Kind kind, const Caps& caps);

/// What may be named as practised, and how a false claim begins: "loop 1, part 2".
struct PracticeIn {
  std::string where;
  std::optional<std::size_t> part = {};  ///< passes of this part of the wish alone
};
/// The passes named as practised count for the want and are spaced; named for "max" wants, and no others.
bool are_practised(const Drive& drive, const wish::Met& met, const PracticeIn& in, const Caps& caps,
                   Claims& claims);

/// Of what is welcome and not taken by a want, in milli-units.
std::int64_t welcome_worth(const Drive& drive, const std::set<Found>& taken, const Caps& caps);

}  // namespace loopwright::proof
