// What goes wrong, as one line for the person at the keyboard. Where memory is short the line is a text that is
// there already, and nothing is put together.
#include <algorithm>
#include <iostream>
#include <new>
#include <string>
#include <string_view>
#include <system_error>

#include "command/folded.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/command/command.hpp"

namespace loopwright::command {
namespace {

constexpr const char* too_little =
    "loopwright: too little memory, or too many programs; close some, or give it more\n";

/// A line that is read: of a word that nobody types, and of a text of many, only the beginning is said again.
std::string shortened(const std::string& whole) {
  constexpr std::size_t most_word = 300, kept_word = 60, most_line = 1200, kept_line = 900;
  std::string text;
  for (std::size_t begin = 0; begin < whole.size();) {
    const std::size_t end = std::min(whole.find(' ', begin), whole.size());
    const std::string_view word = std::string_view(whole).substr(begin, end - begin);
    const bool too_long = word.size() > most_word;
    text += word.substr(0, too_long ? bytes_of(word, kept_word) : word.size());
    if (too_long) text += "…" + std::string(word.substr(word.find_last_not_of("':;,") + 1));
    if (end < whole.size()) text += ' ';
    begin = end + 1;
  }
  if (text.size() <= most_line) return text;
  return text.substr(0, bytes_of(text, kept_line)) + "…";
}

}  // namespace

Exit tell_failure() {
  try {
    throw;
  } catch (const Error& error) {
    std::cerr << "loopwright: " << shortened(printable(error.what())) << '\n';
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
