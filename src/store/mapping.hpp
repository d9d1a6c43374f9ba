// A file mapped read-only; unmapped with its last owner.
#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <memory>

namespace loopwright::store {

struct Mapping {
  std::shared_ptr<const std::byte> bytes;
  std::size_t length = 0;
};

/// How a mapped file will be read.
enum class Reading : std::uint8_t {
  in_places,  ///< here and there: of a large file the system then fetches no more than what is asked for
  whole       ///< from beginning to end
};

/// Maps a whole file and watches it (watched.hpp) until its last owner goes. Throws InputError for a file that
/// is missing, empty, a folder or not readable.
Mapping map_file(const std::filesystem::path& file, Reading reading);

}  // namespace loopwright::store
