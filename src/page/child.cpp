#include "page/child.hpp"

#include <fcntl.h>
#include <signal.h>  // NOLINT(modernize-deprecated-headers): kill is POSIX's, not of <csignal>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>

#include "loopwright/base/error.hpp"

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

/// What the child's three first files are; every other one of ours is closed.
class Files {
 public:
  explicit Files(const std::filesystem::path& folder) {
    posix_spawn_file_actions_init(&actions_);
    posix_spawn_file_actions_addopen(&actions_, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    constexpr int anew = O_WRONLY | O_CREAT | O_TRUNC;
    posix_spawn_file_actions_addopen(&actions_, STDOUT_FILENO, (folder / "said").c_str(), anew,
                                     0600);
    posix_spawn_file_actions_addopen(&actions_, STDERR_FILENO, (folder / "complained").c_str(),
                                     anew, 0600);
    posix_spawn_file_actions_addclosefrom_np(&actions_, STDERR_FILENO + 1);
  }
  ~Files() { posix_spawn_file_actions_destroy(&actions_); }
  Files(const Files&) = delete;
  Files& operator=(const Files&) = delete;
  [[nodiscard]] const posix_spawn_file_actions_t* actions() const { return &actions_; }

 private:
  posix_spawn_file_actions_t actions_{};
};

}  // namespace

Child::Child(const std::filesystem::path& program, const std::vector<std::string>& words,
             std::filesystem::path folder)
    : folder_(std::move(folder)) {
  std::vector<std::string> all{program.string()};
  all.insert(all.end(), words.begin(), words.end());
  std::vector<char*> pointers;
  pointers.reserve(all.size() + 1);
  for (std::string& word : all) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  const Files files(folder_);
  const int failure =
      posix_spawn(&pid_, program.c_str(), files.actions(), nullptr, pointers.data(), environ);
  if (failure == 0) return;
  pid_ = 0;
  throw InputError(program.string() + ": can't be started (" + std::strerror(failure) + ")");
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
