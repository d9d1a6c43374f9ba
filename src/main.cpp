// Picks the command, catches what goes wrong, and turns it into one line and an exit code.
#include <algorithm>
#include <csignal>
#include <iostream>
#include <string_view>

#include "commit.hpp"
#include "loopwright/command/command.hpp"
#include "loopwright/command/version.hpp"
#include "loopwright/store/area.hpp"

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
    return command::version(LOOPWRIGHT_VERSION, loopwright::built_from());
  const auto verbs = command::verbs();
  const auto verb = std::ranges::find(verbs, std::string_view(words[0]), &command::Verb::name);
  if (verb != verbs.end()) return verb->run({words.begin() + 1, words.end()});
  throw loopwright::UsageError("there is no command '" + words[0] +
                               "'; 'loopwright --help' lists them");
}

/// Of an area that was written over meanwhile neither what was answered counts nor what went wrong.
Exit run_undisturbed(const command::Arguments& words) {
  auto code = Exit::could_not;
  try {
    code = run(words);
  } catch (...) {
    loopwright::store::need_unchanged();
    throw;
  }
  loopwright::store::need_unchanged();
  return code;
}

}  // namespace

int main(int count, char** words) {
  std::signal(SIGXFSZ, SIG_IGN);  // a file that may not grow is told by who writes it
  try {
    const Exit code = run_undisturbed({words + std::min(count, 1), words + count});
    if (!std::cout.flush()) throw loopwright::InputError("standard output can't be written");
    return static_cast<int>(code);
  } catch (...) {
    return static_cast<int>(command::tell_failure());
  }
}
