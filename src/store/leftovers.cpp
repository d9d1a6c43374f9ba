// A writer holds a lock on its part, which the kernel takes off however the writer ends. So a part
// without a lock is nobody's, save in the moment between making and locking it: who deletes it then
// holds the lock, or its last name is gone when the writer has it; either way the writer makes another.
// Numbers of processes alone wouldn't tell: they are given again, and differ from machine to machine.
// Source: Linux flock(2).
#include "store/leftovers.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cctype>
#include <string>
#include <string_view>
#include <system_error>

namespace loopwright::store {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view ending = ".part";

bool is_number(std::string_view text) {
  return !text.empty() &&
         std::ranges::all_of(text, [](unsigned char c) { return std::isdigit(c) != 0; });
}

/// Whether a name is the target's with ".1234-0.part" behind it.
bool is_part_of(std::string_view name, std::string_view target) {
  if (!name.starts_with(target) || !name.ends_with(ending)) return false;
  name.remove_prefix(target.size());
  if (name.size() <= ending.size() || name.front() != '.') return false;
  name = name.substr(1, name.size() - 1 - ending.size());
  const std::size_t dash = name.find('-');
  return dash != std::string_view::npos && is_number(name.substr(0, dash)) &&
         is_number(name.substr(dash + 1));
}

void delete_if_left(const fs::path& part) {
  const int descriptor = ::open(part.c_str(), O_RDWR | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
  if (descriptor < 0) return;
  if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0) ::unlink(part.c_str());
  ::close(descriptor);
}

}  // namespace

fs::path part_of(const fs::path& target, int attempt) {
  fs::path part = target;
  part += "." + std::to_string(::getpid()) + "-" + std::to_string(attempt);
  part += ending;
  return part;
}

bool lock_part(int descriptor) {
  struct stat about = {};
  // A file system without locks has no tidying either: there the part is ours without one.
  if (::flock(descriptor, LOCK_EX | LOCK_NB) != 0) return errno != EWOULDBLOCK;
  return ::fstat(descriptor, &about) != 0 || about.st_nlink > 0;
}

void tidy_leftovers(const fs::path& target) {
  const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
  const std::string name = target.filename().string();
  std::error_code error;
  fs::directory_iterator entries(folder, fs::directory_options::skip_permission_denied, error);
  for (; !error && entries != fs::directory_iterator(); entries.increment(error))
    if (is_part_of(entries->path().filename().string(), name)) delete_if_left(entries->path());
}

}  // namespace loopwright::store
