// Loaded before the C library (LD_PRELOAD), to take threads away or to set the clock:
//   FAULT_NO_THREADS=1   no thread can be begun (EAGAIN, pthread_create(3))
//   FAULT_CLOCK=SECONDS  it is so many seconds since 1970
#include <dlfcn.h>
#include <pthread.h>

#include <cerrno>
#include <cstdlib>
#include <ctime>

namespace {

/// The function that the C library has under this name.
template <class Function>
Function next(const char* name) {
  return reinterpret_cast<Function>(dlsym(RTLD_NEXT, name));
}

using Run = void* (*)(void*);
using Create = int (*)(pthread_t*, const pthread_attr_t*, Run, void*);
using Get = int (*)(clockid_t, timespec*);

}  // namespace

extern "C" int pthread_create(pthread_t* thread, const pthread_attr_t* attributes, Run run,
                              void* of) {
  if (std::getenv("FAULT_NO_THREADS") != nullptr) return EAGAIN;
  return next<Create>("pthread_create")(thread, attributes, run, of);
}

extern "C" int clock_gettime(clockid_t clock, timespec* now) {
  const int code = next<Get>("clock_gettime")(clock, now);
  const char* set = std::getenv("FAULT_CLOCK");
  if (set != nullptr && clock == CLOCK_REALTIME) now->tv_sec = std::atoll(set);
  return code;
}
