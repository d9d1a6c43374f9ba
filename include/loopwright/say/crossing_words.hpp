// The kind of a level crossing in words.
//
//   crossing_words(words, "railway=level_crossing crossing:barrier=half crossing:light=yes")
//   // "half barriers, lights"
#pragma once

#include <string>
#include <string_view>

#include "loopwright/say/words.hpp"

namespace loopwright::say {

/// tags: the tag that a pass or chance carries, "key=value" parted by blanks (OpenStreetMap wiki,
/// Tag:railway=level_crossing). Never empty: what isn't mapped is said of barriers.
std::string crossing_words(const Words& words, std::string_view tags);

}  // namespace loopwright::say
