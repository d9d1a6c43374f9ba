#include "page/child.hpp"

#include <fcntl.h>
#include <signal.h>  // NOLINT(modernize-deprecated-headers): kill is POSIX's, not of <csignal>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <string_view>
#include <utility>

#include "loopwright/base/error.hpp"
#include "loopwright/page/scratch_variable.hpp"

namespace loopwright::page {
namespace {

constexpr std::size_t most_said_bytes = 1 << 20;

std::string beginning_of(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::string text(most_said_bytes, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  text.resize(static_cast<std::size_t>(in.gcount()));
  return text;
}

/// A pipe that a child which becomes another program closes, and one that can't writes why into.
struct NotBegun {
  NotBegun() {
    if (pipe2(ends, O_CLOEXEC) != 0)
      throw InputError(std::string("no more files can be used (") + std::strerror(errno) + ")");
  }
  ~NotBegun() {
    close(ends[0]);
    if (ends[1] >= 0) close(ends[1]);
  }
  NotBegun(const NotBegun&) = delete;
  NotBegun& operator=(const NotBegun&) = delete;
  /// errno of the child; 0: it is another program now.
  int read() {
    close(std::exchange(ends[1], -1));
    int failure = 0;
    while (::read(ends[0], &failure, sizeof failure) < 0 && errno == EINTR) {
    }
    return failure;
  }
  int ends[2] = {-1, -1};
};

/// What becomes of a child; all of it allocated beforehand.
struct Start {
  const char *program, *said, *complained;
  char *const *words, *const *environment;
  pid_t page;
};

/// The child's part up to the other program: only what may be called after fork in a program of several threads (POSIX,
/// async-signal-safe). It dies with the page, however that ends.
[[noreturn]] void become(const Start& start, int failure) {
  constexpr int anew = O_WRONLY | O_CREAT | O_TRUNC;
  const auto put = [](const char* file, int flags, int as) {
    const int opened = open(file, flags, 0600);
    return opened >= 0 && dup2(opened, as) >= 0;
  };
  sigset_t none;
  sigemptyset(&none);
  const bool ready =
      prctl(PR_SET_PDEATHSIG, SIGKILL) == 0 && getppid() == start.page &&
      put("/dev/null", O_RDONLY, STDIN_FILENO) && put(start.said, anew, STDOUT_FILENO) &&
      put(start.complained, anew, STDERR_FILENO) && fcntl(failure, F_SETFD, FD_CLOEXEC) == 0 &&
      close_range(STDERR_FILENO + 1, ~0U, CLOSE_RANGE_CLOEXEC) == 0 &&
      sigprocmask(SIG_SETMASK, &none, nullptr) == 0;
  if (ready) execve(start.program, start.words, start.environment);
  const int why = errno;
  (void)!write(failure, &why, sizeof why);
  _exit(127);
}

std::vector<char*> pointers_to(std::vector<std::string>& words) {
  std::vector<char*> pointers;
  pointers.reserve(words.size() + 1);
  for (std::string& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  return pointers;
}

/// Ours, and where the page hands files on from.
std::vector<std::string> environment_with(const std::filesystem::path& folder) {
  std::vector<std::string> all;
  const std::string scratch = std::string(scratch_variable) + "=";
  for (char** each = environ; *each != nullptr; ++each)
    if (!std::string_view(*each).starts_with(scratch)) all.emplace_back(*each);
  all.push_back(scratch + folder.string());
  return all;
}

}  // namespace

Child::Child(const std::filesystem::path& program, const std::vector<std::string>& words,
             std::filesystem::path folder)
    : folder_(std::move(folder)) {
  std::vector<std::string> all{program.string()};
  all.insert(all.end(), words.begin(), words.end());
  std::vector<std::string> environment = environment_with(folder_);
  const std::vector<char*> of_words = pointers_to(all), of_environment = pointers_to(environment);
  const std::string said = folder_ / "said", complained = folder_ / "complained";
  const Start start{program.c_str(), said.c_str(),          complained.c_str(),
                    of_words.data(), of_environment.data(), getpid()};
  NotBegun failure;
  pid_ = fork();
  if (pid_ == 0) become(start, failure.ends[1]);
  const int why = pid_ < 0 ? errno : failure.read();
  if (why == 0) return;
  if (pid_ > 0) wait();
  pid_ = 0;
  throw InputError(program.string() + ": can't be started (" + std::strerror(why) + ")");
}

Child::~Child() {
  kill();
  wait();
}

End Child::wait() {
  pid_t pid = 0;
  {
    const std::lock_guard lock(living_);
    pid = pid_;
  }
  if (pid == 0) return {.code = 0, .killed = true};
  siginfo_t how{};
  // Its number stays its own until it is reaped, which is done under the lock: kill may come at any time.
  while (waitid(P_PID, static_cast<id_t>(pid), &how, WEXITED | WNOWAIT) != 0 && errno == EINTR) {
  }
  const std::lock_guard lock(living_);
  int status = 0;
  while (waitpid(pid, &status, 0) < 0 && errno == EINTR) {
  }
  pid_ = 0;
  return {.code = WIFEXITED(status) ? WEXITSTATUS(status) : 0, .killed = !WIFEXITED(status)};
}

void Child::kill() {
  const std::lock_guard lock(living_);
  if (pid_ != 0) ::kill(pid_, SIGKILL);
}

std::string Child::said() const {
  return beginning_of(folder_ / "said");
}

std::string Child::complained() const {
  return beginning_of(folder_ / "complained");
}

}  // namespace loopwright::page
