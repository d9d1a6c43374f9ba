// Method: each folder holds a file that its program keeps locked (flock): a lock dies with its program, however that ends.
#include "page/scratch.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>  // mkdtemp, which POSIX puts there
#include <cstring>
#include <string>

#include "loopwright/base/error.hpp"

namespace loopwright::page {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view beginning = "loopwright-page-";
constexpr std::string_view lock_name = "alive";

/// -1 when another program holds it, or it isn't ours.
int locked(const fs::path& file, int more_flags) {
  const int opened = open(file.c_str(), O_RDWR | O_CLOEXEC | O_NOFOLLOW | more_flags, 0600);
  if (opened >= 0 && flock(opened, LOCK_EX | LOCK_NB) == 0) return opened;
  if (opened >= 0) close(opened);
  return -1;
}

void delete_left_behind(const fs::path& folder) {
  std::error_code ignored;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder, ignored)) {
    if (!entry.path().filename().string().starts_with(beginning) || !entry.is_directory(ignored))
      continue;
    const int lock = locked(entry.path() / lock_name, 0);
    if (lock < 0) continue;
    fs::remove_all(entry.path(), ignored);
    close(lock);
  }
}

}  // namespace

Scratch::Scratch(const fs::path& folder) {
  delete_left_behind(folder);
  std::string name = (folder / (std::string(beginning) + "XXXXXX")).string();
  if (mkdtemp(name.data()) == nullptr)
    throw InputError(folder.string() + ": no folder can be made there (" + std::strerror(errno) +
                     ")");
  path_ = name;
  lock_ = locked(path_ / lock_name, O_CREAT);
}

Scratch::~Scratch() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
  if (lock_ >= 0) close(lock_);
}

}  // namespace loopwright::page
