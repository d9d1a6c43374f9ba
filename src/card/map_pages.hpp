// What is asked of the maps of a pack: which numbers and marks they carry.
#pragma once

#include <vector>

#include "card/entries.hpp"
#include "loopwright/draw/overview.hpp"
#include "loopwright/draw/strip.hpp"

namespace loopwright::card {

/// The numbers of the rows; to fill a box.
draw::OverviewAsked overview_asked(const std::vector<Entry>& entries, const Subject& subject,
                                   const draw::Box& box);

/// The rows; planned stops, level crossings, limits.
draw::StripAsked strip_asked(const std::vector<Entry>& entries, const Subject& subject,
                             const draw::Box& box);

}  // namespace loopwright::card
