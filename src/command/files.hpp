// The files commands share: where results go, and a loop file that belongs to the area at hand.
#pragma once

#include <filesystem>
#include <string>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// Throws InputError when a file could not be made there, so that no work is done in vain.
void need_folder_of(const std::filesystem::path& file);

/// What a loop file says of the area it was made with.
wish::AreaName name_of(const road::AreaInfo& info, const std::filesystem::path& file);

/// Reads a loop file made with this area. Throws InputError when it was made with another.
wish::Answer answer_in(const road::Roads& roads, const std::filesystem::path& file);

/// The same, its loops tied to the area's roads.
wish::Answer loops_of(const road::Roads& roads, const std::filesystem::path& file);

/// The loop of that number. Throws UsageError naming the numbers there are.
const wish::Loop& loop_numbered(const wish::Answer& answer, int number,
                                const std::filesystem::path& file);

}  // namespace loopwright::command
