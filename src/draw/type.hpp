// Words laid out by Pango, in the typeface of all our sheets.
#pragma once

#include <pango/pangocairo.h>

#include <memory>

#include "loopwright/draw/picture.hpp"

namespace loopwright::draw {

inline constexpr double mm_per_inch = 25.4;
inline constexpr double points_per_inch = 72;
inline constexpr double mm_per_point = mm_per_inch / points_per_inch;

struct LayoutCloser {
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
};
using Layout = std::unique_ptr<PangoLayout, LayoutCloser>;

struct LaidOut {
  Layout layout;     ///< in points
  double scale = 1;  ///< so many times as large are the words
};
/// The words of a label as Pango lays them out, to be measured or drawn. Throws InputError.
LaidOut layout_of(const Label& label);

}  // namespace loopwright::draw
