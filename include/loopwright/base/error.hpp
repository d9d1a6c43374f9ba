// What goes wrong outside the program's own making, as one line for the person at the keyboard.
//
//   throw InputError("out/n.area: cut short at byte 4096; build it again with 'loopwright build'");
//
// Rules: the text says what, where (OSM id, or file and byte) and what to do, in one line without
// a final stop. A caller's mistake is an assert, "nothing suitable" is a value; neither is thrown.
// Exit codes (exit_code) are those README lists.
#pragma once

#include <stdexcept>
#include <string>

namespace loopwright {

enum class Exit : int {
  done = 0,
  could_not = 1,  ///< input, files, system
  wrong_arguments = 2,
  false_claim = 3,   ///< a proof found one
  wish_not_met = 4,  ///< files are written, with what falls short
};

class Error : public std::runtime_error {
 public:
  Error(Exit code, const std::string& text) : std::runtime_error(text), code_(code) {}
  [[nodiscard]] Exit exit_code() const { return code_; }

 private:
  Exit code_;
};

/// A file or the system is not as it should be.
class InputError : public Error {
 public:
  explicit InputError(const std::string& text) : Error(Exit::could_not, text) {}
};

/// An argument can't be used.
class UsageError : public Error {
 public:
  explicit UsageError(const std::string& text) : Error(Exit::wrong_arguments, text) {}
};

}  // namespace loopwright
