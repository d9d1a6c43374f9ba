// A function for bash-completion 2: which command (with its deed) the line has, then by the word before what its value
// may be, else its options or files. A colon doesn't part words here ("roundabout:left" is one).
#include "manual/completions.hpp"

namespace loopwright::manual {
namespace {

using command::Description;
using command::OptionDescription;
using command::ValueOf;

std::string options_of(const Description& of) {
  std::string text;
  for (const OptionDescription& option : of.options)
    if (!option.in_place) text.append(text.empty() ? "" : " ").append(joined(option.names));
  return text;
}

/// "'loops --want' | 'loops --avoid'" for the options of a sort; empty when there are none.
std::string pattern_of(const Description& of, ValueOf value) {
  std::string text;
  for (const OptionDescription& option : of.options) {
    if (option.in_place || option.value != value) continue;
    for (const std::string& name : option.names)
      text.append(text.empty() ? "" : " | ").append("'" + of.name + " " + name + "'");
  }
  return text;
}

std::string values_case(std::span<const Description> all) {
  std::string kinds, files, text;
  const auto add = [](std::string& to, const std::string& more) {
    if (!more.empty()) to.append(to.empty() ? "" : " | \\\n      ").append(more);
  };
  for (const Description& of : all) {
    add(kinds, pattern_of(of, ValueOf::kind));
    add(files, pattern_of(of, ValueOf::text));
    for (const OptionDescription& option : of.options)
      if (option.value == ValueOf::choice && !option.in_place)
        text += "    '" + of.name + " " + option.names.back() + "')\n      offered='" +
                joined(option.choices) + "' ;;\n";
  }
  return text + "    " + kinds + ")\n      offered=$kinds ;;\n    " + files +
         ")\n      _filedir; return ;;\n";
}

std::string options_case(std::span<const Description> all) {
  std::string text;
  for (const Description& of : all)
    text += "    '" + of.name + "') offered='" + options_of(of) + "' ;;\n";
  return text;
}

std::string deeds_case(std::span<const Description> verbs) {
  std::string text;
  for (const Description& verb : verbs) {
    if (verb.deeds.empty()) continue;
    std::string names;
    for (const Description& deed : verb.deeds)
      names.append(names.empty() ? "" : " ").append(deed.name.substr(verb.name.size() + 1));
    text += "    " + verb.name + ") deeds='" + names + "' ;;\n";
  }
  return text;
}

}  // namespace

std::string bash_completion(std::span<const Description> verbs, const Kinds& kinds) {
  std::string names;
  for (const Description& verb : verbs) names += verb.name + " ";
  const std::vector<Description> all = with_options(verbs);
  return "# Completes loopwright in bash. Made from the program's own descriptions.\n"
         "_loopwright() {\n"
         "  local cur prev words cword split\n"
         "  _init_completion -s -n : || return\n"
         "  local command=${words[1]} deeds= offered= kinds='" +
         joined(kinds) +
         "'\n"
         "  if ((cword == 1)); then\n"
         "    COMPREPLY=($(compgen -W '" +
         names +
         "--help --version' -- \"$cur\"))\n"
         "    return\n"
         "  fi\n"
         "  case $command in\n" +
         deeds_case(verbs) +
         "  esac\n"
         "  if [[ $deeds ]]; then\n"
         "    if ((cword == 2)); then\n"
         "      COMPREPLY=($(compgen -W \"$deeds --help\" -- \"$cur\"))\n"
         "      return\n"
         "    fi\n"
         "    command+=\" ${words[2]}\"\n"
         "  fi\n"
         "  case \"$command $prev\" in\n" +
         values_case(all) +
         "  esac\n"
         "  if [[ ! $offered ]]; then\n"
         "    if [[ $cur != -* ]]; then _filedir; return; fi\n"
         "    case $command in\n" +
         options_case(all) +
         "    esac\n"
         "  fi\n"
         "  COMPREPLY=($(compgen -W \"$offered\" -- \"$cur\"))\n"
         "  __ltrim_colon_completions \"$cur\"\n"
         "} && complete -F _loopwright loopwright\n";
}

}  // namespace loopwright::manual
