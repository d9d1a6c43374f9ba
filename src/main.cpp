// Picks the command, catches what goes wrong, and turns it into one line and an exit code.
#include <algorithm>
#include <iostream>
#include <string_view>

#include "loopwright/base/printable.hpp"
#include "loopwright/command/command.hpp"

namespace {

namespace command = loopwright::command;
using loopwright::Exit;

Exit help() {
  std::cout << "Plans lesson loops for driving instructors from open map data.\n\n"
               "usage: loopwright COMMAND …   (COMMAND --help tells its options)\n\n";
  for (const command::Verb& verb : command::verbs())
    std::cout << "  " << verb.name << '\t' << verb.does << '\n';
  return Exit::done;
}

Exit run(const command::Arguments& words) {
  if (words.empty() || words[0] == "--help" || words[0] == "-h") return help();
  if (words[0] == "--version")
    return (std::cout << "loopwright " LOOPWRIGHT_VERSION "\n"), Exit::done;
  const auto verbs = command::verbs();
  const auto verb = std::ranges::find(verbs, std::string_view(words[0]), &command::Verb::name);
  if (verb != verbs.end()) return verb->run({words.begin() + 1, words.end()});
  throw loopwright::UsageError("there is no command '" + words[0] +
                               "'; 'loopwright --help' lists them");
}

}  // namespace

int main(int count, char** words) {
  auto code = Exit::could_not;
  try {
    code = run({words + std::min(count, 1), words + count});
    if (!std::cout.flush()) throw loopwright::InputError("standard output can't be written");
  } catch (const loopwright::Error& error) {
    std::cerr << "loopwright: " << loopwright::printable(error.what()) << '\n';
    code = error.exit_code();
  } catch (const std::exception& error) {
    std::cerr << "loopwright: " << loopwright::printable(error.what()) << '\n';
  }
  return static_cast<int>(code);
}
