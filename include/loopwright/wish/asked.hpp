// More words of a wish, and which passes of a drive count for a want.
//
//   wish.welcome.push_back(read_welcome("zebra"));   wish.spacings.push_back(read_spacing("signals=4"));
//   counts_for(3, loop.passes, want);                // a joined want asks what comes after, too
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

/// Reads a kind that is welcome. Throws UsageError as read_want does, and for manoeuvres.
road::Kind read_welcome(std::string_view text);

/// Reads "roundabout=5": a kind, and 1 to 60 minutes. Throws UsageError.
Spacing read_spacing(std::string_view text);
/// "roundabout=5"
std::string write_spacing(const Spacing& spacing);

/// The greatest spacing that the wish asks of the kind of a want; empty: it asks none.
std::optional<int> spacing_s(const Wish& wish, const Want& want);

/// True when `first` leads into `second`: that covers the stretch on which the first one ends.
bool leads_into(const Pass& first, const Pass& second);

/// True when the pass of that number counts for the want; for a joined one only when it leads into
/// another pass of the kind it is joined to. Rules: number < passes.size().
bool counts_for(std::size_t number, std::span<const Pass> passes, const Want& want);

}  // namespace loopwright::wish
