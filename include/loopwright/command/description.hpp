// What the verbs say of themselves, as data: from this the manual's pages and the completions of the shells are made.
//
//   for (const Description& of : describe_all()) std::cout << of.name << ": " << of.does << '\n';
//
// Rules: nothing is told here that a verb's --help doesn't tell; both come from the same options. No file is opened.
// Why: a second table of options would soon say something else than the program does.
#pragma once

#include <string>
#include <vector>

namespace loopwright::command {

/// What the value of an option is, as far as a shell can help with it.
enum class ValueOf {
  nothing,  ///< a flag: there is none
  choice,   ///< one of `choices`
  kind,     ///< a kind of practice (road/kind.hpp), perhaps with more behind a colon
  text,     ///< anything else: a file, a place, a number, a day
};

struct OptionDescription {
  std::vector<std::string>
      names;         ///< with dashes, as -o and --output; of a word in its place its name, as AREA
  std::string help;  ///< one line or several
  std::vector<std::string> excludes;  ///< what may not be given together with it, by name
  std::vector<std::string> choices;   ///< as the help lists them; empty but for ValueOf::choice
  ValueOf value = ValueOf::text;
  bool in_place = false;  ///< a word in its place, without dashes
  bool required = false;
  bool repeated = false;  ///< takes several values
};

/// One thing the program does: a verb, or a deed of a verb such as `pupil add`.
struct Description {
  std::string name;    ///< without the program's, as "loops" or "pupil add"
  std::string brief;   ///< as the list of verbs (or of the verb's deeds) has it, without a stop
  std::string does;    ///< a sentence or several
  std::string footer;  ///< what the help ends with; lines; often empty
  std::vector<OptionDescription>
      options;                     ///< in the order of the help; empty for a verb that has deeds
  std::vector<Description> deeds;  ///< in the order of the help
};

/// All verbs, in the order of the help.
std::vector<Description> describe_all();

}  // namespace loopwright::command
