// The pages of a card: its entries, so many to a page.
#pragma once

#include <span>
#include <vector>

#include "card/entry_picture.hpp"
#include "card/page_frame.hpp"

namespace loopwright::card {

/// An entry drawn, with what decides where a page may end.
struct DrawnEntry {
  draw::Picture picture;
  EntryKind kind = EntryKind::row;
  bool joins_previous = false;
  bool independent = false;
};

/// How many entries each page holds. Rules: as many pages as rows and stops need at `rows` a page, bands not
/// counted, unless they are too high for that; what is said in one breath stays together where that costs no
/// page.
std::vector<std::size_t> entries_per_page(std::span<const DrawnEntry> entries, int rows,
                                          double height);

/// Throws InputError when there is no typeface. `name` names a page by its number and their count.
std::vector<draw::Picture> row_pages(
    const PageStyle& style, std::span<const DrawnEntry> entries,
    const std::function<Flow::Room(std::size_t, std::size_t)>& room);

}  // namespace loopwright::card
