// A column of a strip, drawn.
#pragma once

#include "draw/strip_columns.hpp"
#include "loopwright/draw/picture.hpp"

namespace loopwright::draw {

/// Paper above and below each column for where the ribbon comes from and goes on.
inline constexpr double head_mm = 6, foot_mm = 6;

struct StripColumnInk {
  const road::Roads& roads;
  const wish::Loop& loop;
  const say::Words& words;
  const Strip& strip;
  const Across& across;
  const std::vector<StripColumn>& columns;
  std::size_t column = 0;
  std::size_t per_page = 1;  ///< columns
};

/// foot: where the left edge of the column meets the foot of its ribbon.
void draw_column(Picture& page, const StripColumnInk& ink, Spot foot);

}  // namespace loopwright::draw
