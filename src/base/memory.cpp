#include "loopwright/base/memory.hpp"

#include <new>
#include <thread>

namespace loopwright {

void need_memory(std::size_t bytes) {
  // Called by name: a new-expression whose object is never used may be left out by the compiler.
  ::operator delete(::operator new(bytes));
}

void need_thread() {
  std::thread([] {}).join();
}

}  // namespace loopwright
