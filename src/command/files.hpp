// The files commands share: where results go, and a loop file that belongs to the area at hand.
#pragma once

#include <filesystem>
#include <initializer_list>
#include <string>

#include "command/ground.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// Throws InputError when a file could not be made there, so that no work is done in vain.
void need_folder_of(const std::filesystem::path& file);

/// Throws UsageError when a file to be written is one of those the command reads (empty names don't
/// count), so that none is lost to a slip of the pen.
void need_own_file(const std::filesystem::path& output,
                   std::initializer_list<std::filesystem::path> read);

/// Throws UsageError when two files to be written are one; empty names don't count.
void need_two_files(const std::filesystem::path& output, const std::filesystem::path& other);

/// The same place whatever folder one is in; empty stays empty.
std::filesystem::path absolute_path(const std::filesystem::path& file);

/// What a loop file says of the area it was made with.
wish::AreaName name_of(const road::AreaInfo& info, const std::filesystem::path& file);

/// Reads a loop file made with this area and these notes, and lays the notes for its lesson. Throws
/// InputError when it was made with others.
wish::Answer answer_in(Ground& ground, const std::filesystem::path& file);

/// A loop file tied to the roads it was made on. Valid while the ground is.
struct TiedLoops {
  const road::Roads& roads;
  hours::Setting setting;
  wish::Answer answer;
};
TiedLoops loops_of(Ground& ground, const std::filesystem::path& file);
/// The same of a loop file's text that is kept elsewhere; name: for messages.
TiedLoops loops_in(Ground& ground, std::string_view text, const std::string& name);

/// The loop of that number. Throws UsageError naming the numbers there are.
const wish::Loop& loop_numbered(const wish::Answer& answer, int number,
                                const std::filesystem::path& file);

}  // namespace loopwright::command
