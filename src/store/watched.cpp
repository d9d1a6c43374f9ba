// 1. What is watched stands in slots of plain numbers, since a handler of signals may read nothing else.
// 2. A read behind the end of a cut file is SIGBUS (BUS_ADRERR); rows of another content lead anywhere:
//    SIGSEGV, SIGABRT, SIGFPE. The handler asks fstat whether a watched file is still as it was; if not,
//    that is the reason. If so, it is a fault of ours, and goes to whoever handled the signal before.
// Only async-signal-safe calls in it: fstat, write, _exit, sigaction, raise. Source: POSIX.
#include "store/watched.hpp"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <csignal>
#include <mutex>
#include <string_view>

#include "loopwright/base/error.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::store {
namespace {

enum class State { as_it_was, cut, changed };

constexpr std::string_view cut_text =
    "the area file was cut short while in use; build it again with 'loopwright build'";
constexpr std::string_view changed_text =
    "the area file was changed while in use; give the command again";
constexpr std::string_view name = "loopwright: ";

/// A file and what it was like; slots without a file have a descriptor below 0.
struct Slot {
  std::atomic<int> descriptor{-1};
  off_t length = 0;
  timespec written = {};

  [[nodiscard]] State state() const {
    struct stat now = {};
    const int file = descriptor;
    if (file < 0 || ::fstat(file, &now) != 0) return State::as_it_was;
    if (now.st_size < length) return State::cut;
    const bool same = now.st_size == length && now.st_mtim.tv_sec == written.tv_sec &&
                      now.st_mtim.tv_nsec == written.tv_nsec;
    return same ? State::as_it_was : State::changed;
  }
};

constexpr std::array signals{SIGBUS, SIGSEGV, SIGABRT, SIGFPE};

// Of the process, as its signals are: a handler can be given nothing.
// NOLINTBEGIN(cppcoreguidelines-avoid-non-const-global-variables)
std::array<Slot, 16> slots;
std::array<struct sigaction, signals.size()> before;
std::atomic<State> worst_of_the_gone = State::as_it_was;
// NOLINTEND(cppcoreguidelines-avoid-non-const-global-variables)

State worst_state() {
  State worst = worst_of_the_gone;
  for (const Slot& slot : slots) worst = std::max(worst, slot.state());
  return worst;
}

void say(std::string_view text) {
  [[maybe_unused]] const ssize_t written = ::write(STDERR_FILENO, text.data(), text.size());
}

void on_signal(int number, siginfo_t* /*about*/, void* /*context*/) {
  const State state = worst_state();
  if (state != State::as_it_was) {
    say(name);
    say(state == State::cut ? cut_text : changed_text);
    say("\n");
    ::_exit(static_cast<int>(Exit::could_not));
  }
  for (std::size_t i = 0; i < signals.size(); ++i)
    if (signals[i] == number) ::sigaction(number, &before[i], nullptr);
  if (number == SIGABRT) ::raise(number);  // the others come again with the read that failed
}

void handle_signals() {
  static std::once_flag once;
  std::call_once(once, [] {
    struct sigaction action = {};
    action.sa_sigaction = on_signal;
    action.sa_flags = SA_SIGINFO;
    for (std::size_t i = 0; i < signals.size(); ++i) ::sigaction(signals[i], &action, &before[i]);
  });
}

/// Guards who takes and frees slots; the handler only reads them.
std::mutex& slots_mutex() {
  static std::mutex mutex;
  return mutex;
}

}  // namespace

Watched::Watched(int descriptor, const struct stat& about) : descriptor_(descriptor) {
  handle_signals();
  const std::lock_guard lock(slots_mutex());
  const auto free =
      std::ranges::find_if(slots, [](const Slot& slot) { return slot.descriptor < 0; });
  if (free == slots.end()) return;
  free->length = about.st_size;
  free->written = about.st_mtim;
  free->descriptor = descriptor;
}

Watched::~Watched() {
  {
    const std::lock_guard lock(slots_mutex());
    worst_of_the_gone = worst_state();
    for (Slot& slot : slots)
      if (slot.descriptor == descriptor_) slot.descriptor = -1;
  }
  ::close(descriptor_);
}

void need_unchanged() {
  const State state = worst_state();
  if (state == State::as_it_was) return;
  throw InputError(std::string(state == State::cut ? cut_text : changed_text));
}

}  // namespace loopwright::store
