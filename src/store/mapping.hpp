// A file mapped read-only; unmapped with its last owner.
#pragma once

#include <cstddef>
#include <filesystem>
#include <memory>

namespace loopwright::store {

struct Mapping {
  std::shared_ptr<const std::byte> bytes;
  std::size_t length = 0;
};

/// Maps a whole file. Rules: from the first call on, a read in a part of any mapped file that has
/// been cut off ends the program with one line and exit 1 instead of a crash. Throws InputError
/// for a file that is missing, empty, a folder or not readable.
Mapping map_file(const std::filesystem::path& file);

}  // namespace loopwright::store
