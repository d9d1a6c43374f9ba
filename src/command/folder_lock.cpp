#include "command/folder_lock.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

namespace loopwright::command {

FolderLock::FolderLock(const std::filesystem::path& file)
    : folder_(open(file.has_parent_path() ? file.parent_path().c_str() : ".",
                   O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
  if (folder_ >= 0) flock(folder_, LOCK_EX);
}

FolderLock::~FolderLock() {
  if (folder_ >= 0) close(folder_);
}

}  // namespace loopwright::command
