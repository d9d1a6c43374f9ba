// The wishes that the search is timed on: a table of text.
//
//   county | roundabouts, most | 54.2973,2.5988 | 60 | --want roundabout=max --spacing roundabout=3
//
// Rules: words as those of `loopwright loops`, of these only the ones named in wish_lines.cpp.
#pragma once

#include <istream>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::bench {

struct NamedWish {
  std::string name;
  wish::Wish wish;
};

/// The wishes of one area, by the name in the first column. Throws InputError or UsageError.
std::vector<NamedWish> wishes_of(std::istream& table, std::string_view area,
                                 const road::AreaInfo& info);

}  // namespace loopwright::bench
