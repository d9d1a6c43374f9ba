// Keeps others out of a file of one's own while it is read, changed and written again.
//
//   const FolderLock lock(path);   …   store::write_whole(path, text);
//
// Why the folder: the file itself is renamed over when it is written.
#pragma once

#include <filesystem>

namespace loopwright::command {

/// Waits until no other holds it. Rules: a folder that can't be opened isn't locked; writing the file tells why.
class FolderLock {
 public:
  /// file: whose folder is locked; "." when its name has none.
  explicit FolderLock(const std::filesystem::path& file);
  ~FolderLock();
  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;
  FolderLock(FolderLock&&) = delete;
  FolderLock& operator=(FolderLock&&) = delete;

 private:
  int folder_;
};

}  // namespace loopwright::command
