// Names that no real place is known by, as far as we know: invented roots and plain endings.
#pragma once

#include <span>
#include <string_view>

namespace loopwright::county {

/// Lists of roots that belong together, such as trees or trades: the streets of a quarter mostly take
/// theirs from one list.
std::span<const std::span<const std::string_view>> street_roots();

std::span<const std::string_view> inn_names();
std::span<const std::string_view> saint_names();
std::span<const std::string_view> shop_names();
std::span<const std::string_view> school_names();  ///< without the word School

}  // namespace loopwright::county
