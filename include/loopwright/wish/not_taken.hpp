// What a shortfall says of streets and junctions that every loop should take.
#pragma once

#include <string_view>

namespace loopwright::wish {

/// How its reason begins to tell what isn't taken, each with its own: "not taken: 'Fore Street': …; 'Mill Lane': …". It
/// stands at the end of the reason.
inline constexpr std::string_view not_taken_because = "not taken: ";

}  // namespace loopwright::wish
