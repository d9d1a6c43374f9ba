#include "command/deeds.hpp"

#include <iostream>
#include <string>

namespace loopwright::command {
namespace {

/// "add|list"
std::string names_of(std::span<const Deed> deeds, std::string_view between, std::string_view last) {
  std::string names;
  for (std::size_t k = 0; k < deeds.size(); ++k)
    names.append(k == 0 ? "" : k + 1 == deeds.size() ? last : between).append(deeds[k].name);
  return names;
}

}  // namespace

Exit run_deed(std::string_view verb, std::string_view does, std::span<const Deed> deeds,
              const Arguments& words) {
  if (words.empty() || words[0] == "--help" || words[0] == "-h") {
    std::cout << does << "\n\nusage: loopwright " << verb << ' ' << names_of(deeds, "|", "|")
              << " …   (each with --help)\n\n";
    for (const Deed& deed : deeds) std::cout << "  " << deed.name << '\t' << deed.does << '\n';
    return Exit::done;
  }
  for (const Deed& deed : deeds)
    if (deed.name == words[0]) return deed.run({words.begin() + 1, words.end()});
  throw UsageError(std::string(verb) + " takes " + names_of(deeds, ", ", " or ") + ", not '" +
                   words[0] + "'");
}

}  // namespace loopwright::command
