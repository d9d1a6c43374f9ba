// What goes wrong, as one line for the person at the keyboard. Where memory is short the line is a text that is
// there already, and nothing is put together.
#include <iostream>
#include <new>
#include <system_error>

#include "loopwright/base/error.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/command/command.hpp"

namespace loopwright::command {
namespace {

constexpr const char* too_little =
    "loopwright: too little memory, or too many programs; close some, or give it more\n";

}  // namespace

Exit tell_failure() {
  try {
    throw;
  } catch (const Error& error) {
    std::cerr << "loopwright: " << printable(error.what()) << '\n';
    return error.exit_code();
  } catch (const std::bad_alloc&) {
    std::cerr << too_little;
  } catch (const std::system_error& error) {
    // What of the system isn't told with a file's name: no thread can be begun.
    const bool no_thread = error.code() == std::errc::resource_unavailable_try_again;
    std::cerr << (no_thread ? too_little : "loopwright: the system failed; try again\n");
  } catch (const std::exception& error) {
    std::cerr << "loopwright: " << printable(error.what()) << '\n';
  }
  return Exit::could_not;
}

}  // namespace loopwright::command
