#include "command/deeds.hpp"

#include <iostream>
#include <string>

#include "command/described.hpp"

namespace loopwright::command {
namespace {

/// "add|list"
std::string names_of(std::span<const Deed> deeds, std::string_view between, std::string_view last) {
  std::string names;
  for (std::size_t k = 0; k < deeds.size(); ++k)
    names.append(k == 0 ? "" : k + 1 == deeds.size() ? last : between).append(deeds[k].name);
  return names;
}

Described described(std::string_view does, std::span<const Deed> deeds) {
  Described told;
  told.description.does = does;
  for (const Deed& deed : deeds) {
    Description of;
    of.name = deed.name;
    of.brief = deed.does;
    told.description.deeds.push_back(std::move(of));
    told.deeds.push_back(deed.run);
  }
  return told;
}

}  // namespace

Exit run_deed(std::string_view verb, std::string_view does, std::span<const Deed> deeds,
              const Arguments& words) {
  if (is_asked(words)) throw described(does, deeds);
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
