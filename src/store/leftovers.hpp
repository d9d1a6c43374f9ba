// Files beside a file that a program which was killed left behind.
#pragma once

#include <filesystem>

namespace loopwright::store {

/// Name of the file in which `target` is written first: "n.area.1234-0.part" of process 1234.
std::filesystem::path part_of(const std::filesystem::path& target, int attempt);

/// Locks a part that was opened for writing, for as long as it is open. False when somebody took it for a
/// leftover in the moment before: it is deleted then, and another is to be made.
[[nodiscard]] bool lock_part(int descriptor);

/// Deletes parts of `target` that no running program has locked. What can't be deleted stays: it harms nobody.
void tidy_leftovers(const std::filesystem::path& target);

}  // namespace loopwright::store
