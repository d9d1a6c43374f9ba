// Two pieces of work side by side, on two threads.
//
//   at_once([&] { lay_turns(); }, [&] { lay_practice(); });
//
// Rules: neither writes what the other reads. What is thrown comes out when both have ended; of two the first's.
// Where no thread can be begun, the caller does both.
#pragma once

#include <future>

namespace loopwright {

template <class First, class Second>
void at_once(const First& first, const Second& second) {
  // Deferred where no thread can be begun. It is waited for even when `first` throws.
  std::future<void> other = std::async(std::launch::async | std::launch::deferred, second);
  first();
  other.get();
}

}  // namespace loopwright
