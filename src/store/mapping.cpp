// Open, look at the length, map read-only and shared; the descriptor stays open, to be watched for changes.
// Of a country's area a question needs a few pages in each column; what the system reads ahead of each (128 KB and more) is
// many times that. A county's is so small that reading it ahead is the quickest.
#include "store/mapping.hpp"

#include <fcntl.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <optional>
#include <string>
#include <system_error>
#include <utility>

#include "loopwright/base/error.hpp"
#include "store/watched.hpp"

namespace loopwright::store {
namespace {

constexpr std::size_t small_bytes = std::size_t{64} << 20U;

/// A file's descriptor, closed at the end of its scope unless somebody took it.
struct Descriptor {
  int number;
  explicit Descriptor(int opened) : number(opened) {}
  ~Descriptor() {
    if (number >= 0) ::close(number);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  int take() { return std::exchange(number, -1); }
};

/// A file in memory, unmapped at the end.
class Mapped {
 public:
  Mapped(Descriptor& opened, const struct stat& about)
      : length_(static_cast<std::size_t>(about.st_size)),
        start_(::mmap(nullptr, length_, PROT_READ, MAP_SHARED, opened.number, 0)) {
    if (start_ != MAP_FAILED) watched_.emplace(opened.take(), about);
  }
  ~Mapped() {
    if (start_ != MAP_FAILED) ::munmap(start_, length_);
  }
  Mapped(const Mapped&) = delete;
  Mapped& operator=(const Mapped&) = delete;
  /// None when it couldn't be mapped; errno says why.
  [[nodiscard]] const std::byte* bytes() const {
    return start_ == MAP_FAILED ? nullptr : static_cast<const std::byte*>(start_);
  }

  /// Nothing hangs on whether it is heeded.
  void advise(int advice) const { (void)::madvise(start_, length_, advice); }

 private:
  std::size_t length_;
  void* start_;
  std::optional<Watched> watched_;
};

[[noreturn]] void fail(const std::filesystem::path& file) {
  if (errno == ENOENT) {
    throw InputError(file.string() + ": no such file; build it with 'loopwright build'");
  }
  throw InputError(file.string() + ": can't be read (" + std::generic_category().message(errno) +
                   ")");
}

}  // namespace

Mapping map_file(const std::filesystem::path& file, Reading reading) {
  Descriptor opened(::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  struct stat about = {};
  if (opened.number < 0 || ::fstat(opened.number, &about) != 0) fail(file);
  if (!S_ISREG(about.st_mode)) {
    throw InputError(file.string() + ": is not an area file; build one with 'loopwright build'");
  }
  if (about.st_size == 0) {
    throw InputError(file.string() + ": is empty; build it again with 'loopwright build'");
  }
  const auto mapped = std::make_shared<const Mapped>(opened, about);
  if (mapped->bytes() == nullptr) fail(file);
  const auto length = static_cast<std::size_t>(about.st_size);
  if (reading == Reading::in_places && length > small_bytes) mapped->advise(MADV_RANDOM);
  return {{mapped, mapped->bytes()}, length};
}

}  // namespace loopwright::store
