#include "loopwright/base/memory.hpp"

#include <malloc.h>
#include <sys/resource.h>

#include <new>
#include <thread>

namespace loopwright {

void need_memory(std::size_t bytes) {
  // Called by name: a new-expression whose object is never used may be left out by the compiler.
  ::operator delete(::operator new(bytes));
}

void share_scarce_memory() {
  rlimit limit{};
  if (getrlimit(RLIMIT_AS, &limit) == 0 && limit.rlim_cur != RLIM_INFINITY) mallopt(M_ARENA_MAX, 1);
}

void need_thread() {
  std::thread([] {}).join();
}

}  // namespace loopwright
