// The words and derived numbers that writing and reading a loop file share.
#pragma once

#include <optional>
#include <string_view>

#include "loopwright/base/ids.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::file {

inline constexpr std::string_view loop_format = "loopwright-loops";
inline constexpr int loop_version = 1;

std::string_view name(ObjectType type);  // "node", "way", "relation"
std::optional<ObjectType> parse_object_type(std::string_view text);

/// How far the bound lies above the value, as a part of the value, to a millionth: 0.25 for a
/// quarter. Empty when no bound is known, or the value is no measure (zero or less).
std::optional<double> gap_of(const wish::Certificate& certificate);

/// The nearest multiple of 1 / parts, so that every number has few digits and always the same.
double rounded(double value, double parts);

}  // namespace loopwright::file
