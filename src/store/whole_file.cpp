// 1. Follow symbolic links, so that the link stays and the file behind it is replaced.
// 2. Delete what killed writers of that file left; make a new file in the same folder (a rename works
//    within one file system only) and lock it, so that nobody takes it for a leftover.
// 3. keep(): bytes to the disk, then the rename, then the folder to the disk; after a power cut
//    there is the old file or the new one, never a part. The lock is held until the rename is done.
// Source: POSIX rename() ("the link shall remain visible … and refer either to the old or new").
#include "store/whole_file.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <string>
#include <string_view>
#include <system_error>

#include "loopwright/base/error.hpp"
#include "loopwright/store/area.hpp"
#include "store/leftovers.hpp"

namespace loopwright::store {
namespace {

std::filesystem::path folder_of(const std::filesystem::path& file) {
  const std::filesystem::path folder = file.parent_path();
  return folder.empty() ? std::filesystem::path(".") : folder;
}

void sync_folder(const std::filesystem::path& folder) {
  const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return;  // the file itself is safe; some systems sync no folders
  ::fsync(descriptor);
  ::close(descriptor);
}

}  // namespace

WholeFile::WholeFile(const std::filesystem::path& target) : named_(target), target_(target) {
  namespace fs = std::filesystem;
  std::error_code error;
  const fs::file_status status = fs::status(target, error);
  if (fs::is_directory(status)) {
    throw InputError(named_.string() + ": is a folder; name a file in it");
  }
  if (fs::exists(status) && !fs::is_regular_file(status)) {
    descriptor_ = ::open(target.c_str(), O_WRONLY | O_CLOEXEC);
    if (descriptor_ < 0) fail("can't be opened for writing");
    return;
  }
  const fs::path behind_links = fs::canonical(target, error);  // empty for a new file
  if (!behind_links.empty()) target_ = behind_links;
  if (fs::status(folder_of(target_), error).type() == fs::file_type::not_found) {
    throw InputError(named_.string() + ": there is no folder " + folder_of(target_).string() +
                     "; make it first");
  }
  tidy_leftovers(target_);
  open_beside();
}

WholeFile::~WholeFile() {
  if (!beside_.empty()) ::unlink(beside_.c_str());
  if (descriptor_ >= 0) ::close(descriptor_);
}

void WholeFile::open_beside() {
  for (int attempt = 0; descriptor_ < 0; ++attempt) {
    const std::filesystem::path part = part_of(target_, attempt);
    const int opened = ::open(part.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (opened < 0 && errno != EEXIST) fail("can't be written");
    if (opened < 0) continue;
    if (!lock_part(opened)) {
      ::close(opened);
      continue;
    }
    beside_ = part;
    descriptor_ = opened;
  }
}

void WholeFile::write(const void* bytes, std::size_t count) {
  const char* next = static_cast<const char*>(bytes);
  while (count > 0) {
    const ssize_t written = ::write(descriptor_, next, count);
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) fail("can't be written");
    next += written;
    count -= static_cast<std::size_t>(written);
  }
}

void WholeFile::keep() {
  if (!beside_.empty()) {
    need_unchanged();
    if (::fsync(descriptor_) != 0) fail("can't be written");
    if (::rename(beside_.c_str(), target_.c_str()) != 0) fail("can't be put in place");
    beside_.clear();
    sync_folder(folder_of(target_));
  }
  close_file();
}

void WholeFile::close_file() {
  const int descriptor = descriptor_;
  descriptor_ = -1;
  if (::close(descriptor) != 0) fail("can't be written");
}

void WholeFile::fail(const char* what) const {
  throw InputError(named_.string() + ": " + what + " (" + std::generic_category().message(errno) +
                   ")");
}

void write_whole(const std::filesystem::path& file, std::string_view text) {
  WholeFile out(file);
  out.write(text.data(), text.size());
  out.keep();
}

}  // namespace loopwright::store
