// A whole text file in memory, with one clear line when it isn't there or can't be one of ours.
//
//   const std::string text = load_text("terms.txt", {"file of school terms", {}});
//
// Rules: at most 256 MB, more than any file of ours has. The text is taken as it is, bytes and all.
// Why: a folder, a device or a disk image given by a slip is told in one line, and can't fill the
// memory. Throws InputError.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace loopwright::file {

/// What a file is and what writes it, for messages: "loop file", "loopwright loops"; made_by is empty
/// when people write it.
struct FileSort {
  std::string_view name, made_by;
};

/// Throws InputError: no such file, a folder, unreadable, larger than any of ours.
std::string load_text(const std::filesystem::path& path, const FileSort& sort);

}  // namespace loopwright::file
