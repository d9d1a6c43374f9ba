// What stands along a strip, in driving order, and how much of the ribbon each takes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "draw/lines.hpp"
#include "loopwright/draw/strip.hpp"

namespace loopwright::draw {

/// Where things are across a column, in millimetres from its left edge.
struct Across {
  double number = 8;   ///< right edge of row numbers
  double ribbon = 19;  ///< middle of the road
  double words = 30;   ///< left edge of words
  double width = 60;   ///< of the column
  [[nodiscard]] double words_width() const { return width - words - 3; }
};

inline constexpr double shape_width = 19, shape_height = 16;

struct StripItem {
  double at_m = 0;                ///< driven since the first corner
  double half = 0;                ///< of the ribbon it hides on either side of its middle
  double above = 0, below = 0;    ///< paper it needs from its middle
  const StripRow* row = nullptr;  ///< else a mark
  StripMark mark;
};

struct Strip {
  std::vector<StripItem> items;
  std::vector<double> ends_m;  ///< driven at the end of each stretch
  double length_m = 0;
};

/// Likely seconds since the start when so many metres are driven.
double seconds_at(const Strip& strip, const wish::Loop& loop, double at_m);

/// Rules: the items point into `asked`.
Strip strip_of(const wish::Loop& loop, const StripAsked& asked, const Across& across);

Label row_words(const StripItem& item, const Across& across);
Label mark_words(const StripItem& item, const Across& across);

}  // namespace loopwright::draw
