// How deep lists and objects of a JSON text lie in each other, before it becomes a tree.
//
//   if (nests_deeper(text, 100)) refuse();
//
// Why: trees are copied and written level by level, each a call within a call; a text of a few hundred kilobytes that is
// nothing but brackets would leave no stack. RFC 8259, section 9, lets a reader limit the depth.
#pragma once

#include <string_view>

namespace loopwright {

/// More than any file or request of ours needs: GeoJSON has eight.
inline constexpr int most_nested = 100;

/// Whether some bracket lies within more than `levels` others. Rules: any bytes; of what is no JSON the answer may be either.
bool nests_deeper(std::string_view json, int levels);

}  // namespace loopwright
