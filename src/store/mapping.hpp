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

/// Maps a whole file and watches it (watched.hpp) until its last owner goes. Throws InputError for a file that
/// is missing, empty, a folder or not readable.
Mapping map_file(const std::filesystem::path& file);

}  // namespace loopwright::store
