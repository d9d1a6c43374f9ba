// Method: the items along the drive, set into columns, drawn column by column.
#include "loopwright/draw/strip.hpp"

#include <cassert>

#include "draw/strip_columns.hpp"
#include "draw/strip_ink.hpp"

namespace loopwright::draw {

std::vector<Picture> strip_map(const road::Roads& roads, const wish::Loop& loop,
                               const StripAsked& asked, const say::Words& words) {
  assert(asked.width >= 56 && asked.height >= 90);
  constexpr double least_column = 56;
  const auto per_page = static_cast<std::size_t>(asked.width / least_column);
  Across across;
  across.width = asked.width / static_cast<double>(per_page);
  const Strip strip = strip_of(loop, asked, across);
  const auto columns = set_columns(strip, asked.height - head_mm - foot_mm, per_page);
  std::vector<Picture> pages;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (i % per_page == 0) pages.push_back(Picture{asked.width, asked.height});
    const Spot foot{static_cast<double>(i % per_page) * across.width, asked.height - foot_mm};
    draw_column(pages.back(), {roads, loop, words, strip, across, columns, i, per_page}, foot);
  }
  return pages;
}

}  // namespace loopwright::draw
