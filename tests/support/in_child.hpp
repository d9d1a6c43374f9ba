// What ends the program is tested in a process of its own.
#pragma once

#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <string>

namespace loopwright::test {

struct Ended {
  int exit_code = -1;  ///< -1: ended by a signal
  std::string said;    ///< on standard error
};

/// Runs `act` in a child; one that comes to its end has exit code 99.
template <class Act>
Ended in_child(Act act) {
  int ends[2] = {};
  REQUIRE(::pipe(ends) == 0);
  const pid_t child = ::fork();
  if (child == 0) {
    ::dup2(ends[1], STDERR_FILENO);
    act();
    ::_exit(99);
  }
  ::close(ends[1]);
  Ended ended;
  char letter = 0;
  while (::read(ends[0], &letter, 1) == 1) ended.said += letter;
  ::close(ends[0]);
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  if (WIFEXITED(status)) ended.exit_code = WEXITSTATUS(status);
  return ended;
}

}  // namespace loopwright::test
