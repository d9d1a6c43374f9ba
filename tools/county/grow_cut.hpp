// Lines cut in two, as a map's ways are where a tag changes.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "county/drawing.hpp"

namespace loopwright::county {

/// Cuts a line at one of its inner Spots: it keeps the part before, the rest becomes the last line of
/// the county, with the same tags. Gives the number of the rest.
/// Why at the end of the list: rings and members of relations name lines by number.
std::size_t cut(Drawing& county, std::size_t line, Spot at);

/// Cuts a line wherever it goes through an outline, but not within 12 m of its ends. Gives the numbers
/// of its parts in their order, the line's own first.
std::vector<std::size_t> cut_at(Drawing& county, std::size_t line, std::span<const Spot> outline);

}  // namespace loopwright::county
