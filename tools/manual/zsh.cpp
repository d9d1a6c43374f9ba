// A function for zsh's completion system (zshcompsys(1)): _arguments is told the options of the command at hand.
#include "manual/completions.hpp"

namespace loopwright::manual {
namespace {

using command::Description;
using command::OptionDescription;
using command::ValueOf;

/// In single quotes.
std::string quoted(const std::string& text) {
  std::string out = "'";
  for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return out + "'";
}

/// With a backslash before what ends a part of an _arguments text.
std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '[' || c == ']' || c == ':' || c == '\\') out += '\\';
    out += c;
  }
  return out;
}

std::string action_of(const OptionDescription& option) {
  switch (option.value) {
    case ValueOf::nothing:
      return "";
    case ValueOf::choice:
      return ":value:(" + joined(option.choices) + ")";
    case ValueOf::kind:
      return ":kind:_loopwright_kinds";
    case ValueOf::text:
      return ":value:_files";
  }
  return "";
}

std::string argument_of(const OptionDescription& option) {
  if (option.in_place) {
    const std::string many = option.repeated ? "*" : "";
    return quoted(many + ":" + option.names.front() + ":_files");
  }
  std::string apart = option.repeated ? "*" : "(" + joined(option.names);
  if (!option.repeated) {
    for (const std::string& other : option.excludes) apart += " " + other;
    apart += ")";
  }
  std::string text;
  for (const std::string& name : option.names)
    text +=
        (text.empty() ? "" : " \\\n        ") +
        quoted(apart + name + "[" + escaped(in_one_line(option.help)) + "]" + action_of(option));
  return text;
}

std::string described_list(std::span<const Description> all, std::size_t skipped) {
  std::string text;
  for (const Description& of : all)
    text += "    " + quoted(of.name.substr(skipped) + ":" + of.brief) + "\n";
  return text;
}

std::string deeds_case(std::span<const Description> verbs) {
  std::string text;
  for (const Description& verb : verbs) {
    if (verb.deeds.empty()) continue;
    text += "    " + verb.name + ")\n      if ((CURRENT == 3)); then\n        local -a deeds=(\n" +
            described_list(verb.deeds, verb.name.size() + 1) +
            "        )\n        _describe deed deeds\n        return\n      fi\n"
            "      command+=\" $words[3]\"; shift words; ((CURRENT--)) ;;\n";
  }
  return text;
}

}  // namespace

std::string zsh_completion(std::span<const Description> verbs, const Kinds& kinds) {
  std::string text =
      "#compdef loopwright\n# Made from the program's own descriptions.\n"
      "_loopwright_kinds() { compadd -- " +
      joined(kinds) +
      "; }\n\n"
      "_loopwright() {\n  local command=$words[2]\n  if ((CURRENT == 2)); then\n"
      "    local -a commands=(\n" +
      described_list(verbs, 0) +
      "    --help:'list the commands'\n    --version:'tell the version, formats and days of "
      "tables'\n"
      "    )\n    _describe command commands\n    return\n  fi\n  case $command in\n" +
      deeds_case(verbs) + "  esac\n  shift words; ((CURRENT--))\n  case $command in\n";
  for (const Description& of : with_options(verbs)) {
    text += "    " + quoted(of.name) + ")\n      _arguments";
    for (const OptionDescription& option : of.options)
      text += " \\\n        " + argument_of(option);
    text += " ;;\n";
  }
  return text + "  esac\n}\n\n_loopwright \"$@\"\n";
}

}  // namespace loopwright::manual
