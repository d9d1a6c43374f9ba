// Method: the items along the drive, set into columns, drawn column by column.
#include "loopwright/draw/strip.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "draw/strip_columns.hpp"
#include "draw/strip_ink.hpp"

namespace loopwright::draw {

std::vector<Picture> strip_map(const road::Roads& roads, const wish::Loop& loop,
                               const StripAsked& asked) {
  assert(asked.width >= 56 && asked.height >= 90);
  constexpr double least_column = 56;
  const double per_page = std::max(1.0, std::floor(asked.width / least_column));
  Across across;
  across.width = asked.width / per_page;
  const Strip strip = strip_of(loop, asked, across);
  const auto columns =
      set_columns(strip, asked.height - head_mm - foot_mm, static_cast<std::size_t>(per_page));
  std::vector<Picture> pages;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const std::size_t place = i % static_cast<std::size_t>(per_page);
    if (place == 0) pages.push_back(Picture{asked.width, asked.height});
    const StripColumnInk ink{roads, loop, strip, across, columns, i};
    draw_column(pages.back(), ink,
                {static_cast<double>(place) * across.width, asked.height - foot_mm});
  }
  return pages;
}

}  // namespace loopwright::draw
