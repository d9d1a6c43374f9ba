// The items of a strip set into columns.
#pragma once

#include <cstddef>
#include <vector>

#include "draw/strip_items.hpp"

namespace loopwright::draw {

/// An item in its column, and the ribbon that leads to it from the one before.
struct SetItem {
  std::size_t item = 0;
  double y = 0;         ///< of its middle, millimetres above the foot of the column
  bool broken = false;  ///< the ribbon to it is shorter than its scale
};

struct StripColumn {
  std::vector<SetItem> items;
  double from_m = 0, to_m = 0;  ///< driven at its foot and at its top
  double top = 0;               ///< length of its ribbon
  bool broken = false;          ///< the ribbon from the last item to the top
};

/// Columns of that height, as many as whole pages of `per_page` need, at the largest scale.
std::vector<StripColumn> set_columns(const Strip& strip, double height, std::size_t per_page);

}  // namespace loopwright::draw
