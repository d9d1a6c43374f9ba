// Lines of fish's complete(1), each with the condition that its command is the one at hand.
#include "manual/completions.hpp"

namespace loopwright::manual {
namespace {

using command::Description;
using command::OptionDescription;
using command::ValueOf;

std::string quoted(const std::string& text) {
  std::string out = "'";
  for (const char c : text) {
    if (c == '\'' || c == '\\') out += '\\';
    out += c;
  }
  return out + "'";
}

std::string option_line(const Description& of, const OptionDescription& option,
                        const Kinds& kinds) {
  std::string text = "complete -c loopwright -n '__loopwright_at " + of.name + "'";
  for (const std::string& name : option.names)
    text += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
  if (option.value == ValueOf::choice) text += " -x -a " + quoted(joined(option.choices));
  if (option.value == ValueOf::kind) text += " -x -a " + quoted(joined(kinds));
  if (option.value == ValueOf::text) text += " -r -F";
  return text + " -d " + quoted(in_one_line(option.help)) + "\n";
}

}  // namespace

std::string fish_completion(std::span<const Description> verbs, const Kinds& kinds) {
  std::string text =
      "# Completes loopwright in fish. Made from the program's own descriptions.\n"
      "function __loopwright_at\n"
      "    set -l words (commandline -opc)[2..]\n"
      "    set -l asked (count $argv)\n"
      "    test (count $words) -ge $asked\n"
      "    and test \"$words[1..$asked]\" = \"$argv\"\n"
      "end\n"
      "function __loopwright_begins\n"
      "    test (count (commandline -opc)) -eq (math 1 + (count $argv))\n"
      "    and __loopwright_at $argv\n"
      "end\n"
      "complete -c loopwright -n 'test (count (commandline -opc)) -eq 1' -f -l help -d 'list the "
      "commands'\n"
      "complete -c loopwright -n 'test (count (commandline -opc)) -eq 1' -f -l version "
      "-d 'tell the version, formats and days of tables'\n";
  for (const Description& verb : verbs) {
    text += "complete -c loopwright -n 'test (count (commandline -opc)) -eq 1' -f -a " + verb.name +
            " -d " + quoted(verb.brief) + "\n";
    for (const Description& deed : verb.deeds)
      text += "complete -c loopwright -n '__loopwright_begins " + verb.name + "' -f -a " +
              deed.name.substr(verb.name.size() + 1) + " -d " + quoted(deed.brief) + "\n";
  }
  for (const Description& of : with_options(verbs))
    for (const OptionDescription& option : of.options)
      if (!option.in_place) text += option_line(of, option, kinds);
  return text;
}

}  // namespace loopwright::manual
