// Method: each verb is run with the word that asks (described.hpp); of a verb with deeds each of these, too.
#include "loopwright/command/description.hpp"

#include <stdexcept>

#include "command/described.hpp"

namespace loopwright::command {
namespace {

Description described_by(Exit (*run)(const Arguments&), std::string name, std::string brief) {
  try {
    run({word_that_asks()});
  } catch (Described& told) {
    Description& of = told.description;
    for (std::size_t k = 0; k < of.deeds.size(); ++k)
      of.deeds[k] = described_by(told.deeds[k], name + ' ' + of.deeds[k].name, of.deeds[k].brief);
    of.name = std::move(name);
    of.brief = std::move(brief);
    // cppcheck-suppress returnStdMoveLocal ; a reference to what was thrown
    return std::move(of);
  }
  throw std::logic_error("'" + name + "' reads its words by neither parse nor run_deed");
}

}  // namespace

std::vector<Description> describe_all() {
  std::vector<Description> all;
  for (const Verb& verb : verbs())
    all.push_back(described_by(verb.run, std::string(verb.name), std::string(verb.does)));
  return all;
}

}  // namespace loopwright::command
