// Picks the command, catches what goes wrong, and turns it into one line and an exit code.
#include <algorithm>
#include <array>
#include <iostream>
#include <string_view>

#include "loopwright/command/command.hpp"

namespace {

namespace command = loopwright::command;
using loopwright::Exit;

struct Verb {
  std::string_view name, does;
  Exit (*run)(const command::Arguments&);
};

constexpr std::array verbs{
    Verb{"build", "make an area file from a map extract", command::build},
    Verb{"loops", "find lesson loops from the door and back", command::loops},
    Verb{"near", "find the nearest places to practise something", command::near},
    Verb{"card", "write a loop as a route card, GPX or GeoJSON", command::card},
    Verb{"lanes", "tell which bus lanes of a loop may be used when we pass", command::lanes},
    Verb{"proof", "check every claim of a loop file against the area", command::proof},
    Verb{"look", "tell what the map says at a place, and why", command::look},
};

Exit help() {
  std::cout << "Plans lesson loops for driving instructors from open map data.\n\n"
               "usage: loopwright COMMAND …   (COMMAND --help tells its options)\n\n";
  for (const Verb& verb : verbs) std::cout << "  " << verb.name << '\t' << verb.does << '\n';
  return Exit::done;
}

Exit run(const command::Arguments& words) {
  if (words.empty() || words[0] == "--help" || words[0] == "-h") return help();
  if (words[0] == "--version")
    return (std::cout << "loopwright " LOOPWRIGHT_VERSION "\n"), Exit::done;
  const auto verb = std::ranges::find(verbs, std::string_view(words[0]), &Verb::name);
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
    std::cerr << "loopwright: " << error.what() << '\n';
    code = error.exit_code();
  } catch (const std::exception& error) {
    std::cerr << "loopwright: " << error.what() << '\n';
  }
  return static_cast<int>(code);
}
