// Whole small files of the county's programs.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace loopwright::county {

/// Throws InputError when it can't be read.
std::string read_file(const std::filesystem::path& file);
/// Writes beside the file and renames, so that it is there whole or as it was. Throws InputError.
void write_file(const std::filesystem::path& file, std::string_view bytes);

}  // namespace loopwright::county
