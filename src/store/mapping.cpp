// 1. Open, look at the length, map read-only and shared, close (the mapping stays).
// 2. The handler of SIGBUS: the kernel sends it when a mapped page lies behind the file's end
//    (BUS_ADRERR). Only async-signal-safe calls in it: write, _exit, signal. Source: POSIX.
#include "store/mapping.hpp"

#include <fcntl.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <string>
#include <string_view>
#include <system_error>

#include "loopwright/base/error.hpp"

namespace loopwright::store {
namespace {

constexpr std::string_view cut_line =
    "loopwright: the area file was cut short while in use; "
    "build it again with 'loopwright build'\n";

void on_bus_error(int, siginfo_t* about, void*) {
  if (about->si_code == BUS_ADRERR) {
    [[maybe_unused]] const ssize_t written =
        ::write(STDERR_FILENO, cut_line.data(), cut_line.size());
    ::_exit(static_cast<int>(Exit::could_not));
  }
  ::signal(SIGBUS, SIG_DFL);  // another cause: the faulting read comes again and ends us
}

void watch_for_cuts() {
  struct sigaction action = {};
  action.sa_sigaction = on_bus_error;
  action.sa_flags = SA_SIGINFO;
  ::sigaction(SIGBUS, &action, nullptr);
}

/// Closes a file descriptor at the end of its scope.
struct Descriptor {
  int number;
  explicit Descriptor(int opened) : number(opened) {}
  ~Descriptor() {
    if (number >= 0) ::close(number);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
};

[[noreturn]] void fail(const std::filesystem::path& file) {
  if (errno == ENOENT) {
    throw InputError(file.string() + ": no such file; build it with 'loopwright build'");
  }
  throw InputError(file.string() + ": can't be read (" + std::generic_category().message(errno) +
                   ")");
}

}  // namespace

Mapping map_file(const std::filesystem::path& file) {
  const Descriptor opened(::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  struct stat about = {};
  if (opened.number < 0 || ::fstat(opened.number, &about) != 0) fail(file);
  if (!S_ISREG(about.st_mode)) {
    throw InputError(file.string() + ": is not an area file; build one with 'loopwright build'");
  }
  if (about.st_size == 0) {
    throw InputError(file.string() + ": is empty; build it again with 'loopwright build'");
  }
  const auto length = static_cast<std::size_t>(about.st_size);
  void* const start = ::mmap(nullptr, length, PROT_READ, MAP_SHARED, opened.number, 0);
  if (start == MAP_FAILED) fail(file);
  watch_for_cuts();
  return {std::shared_ptr<const std::byte>(
              static_cast<const std::byte*>(start),
              [length, start](const std::byte*) { ::munmap(start, length); }),
          length};
}

}  // namespace loopwright::store
