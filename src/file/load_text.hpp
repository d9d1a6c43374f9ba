// A whole text file in memory, with one clear line when it isn't there or can't be one of ours.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace loopwright::file {

/// What a file is and where it comes from, for messages: "loop file", "loopwright loops".
struct FileSort {
  std::string_view name, made_by;
};

/// Throws InputError: no such file, a folder, unreadable, larger than any of ours.
std::string load_text(const std::filesystem::path& path, const FileSort& sort);

}  // namespace loopwright::file
