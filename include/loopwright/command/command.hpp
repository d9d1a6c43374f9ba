// The program's verbs: each reads its words, does its one job, prints what came of it.
//
//   Exit code = command::near({"quillham.area", "--home", "54.297,2.598", "--want", "zebra"});
//
// Rules: the words after the verb's name come in; all of them are checked before a file is opened.
// Results go to standard output and to the files named, the progress bar to a terminal's standard
// error; trouble is thrown (base/error.hpp) and nothing is left half-written. `--help` prints the
// options and is `done`.
// Why: the verbs are the only code that knows CLI11, the clock and the terminal, so every room can
// be tested without them.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/error.hpp"

namespace loopwright::command {

using Arguments = std::vector<std::string>;

struct Verb {
  std::string_view name, does;
  Exit (*run)(const Arguments&);
};
/// All of them, in the order of the help.
std::span<const Verb> verbs();

Exit build(const Arguments& words);  ///< a map extract into an area file
Exit loops(const Arguments& words);  ///< lesson loops that meet a wish
Exit near(const Arguments& words);   ///< the nearest places to practise something
Exit card(const Arguments& words);   ///< a loop as a route card or exchange file
Exit lanes(const Arguments& words);  ///< bus lanes and whatever has hours on a drive, at its minute
Exit hours(const Arguments& words);  ///< whether a text of hours is in force, and why
Exit proof(const Arguments& words);  ///< checks every claim of a loop file
Exit look(const Arguments& words);   ///< what the map says at a place, and why
Exit note(const Arguments& words);   ///< what the instructor knows better than the map
Exit pupil(const Arguments& words);  ///< the pupils of a book
Exit lesson(const Arguments& words);   ///< a pupil's lessons: planned, printed, logged
Exit day(const Arguments& words);      ///< the lessons of a day, planned in order
Exit centre(const Arguments& words);   ///< the surroundings of test centres, for mock tests
Exit school(const Arguments& words);   ///< a school's book on a server, for many instructors
Exit streets(const Arguments& words);  ///< which quiet streets the drives use most
Exit kinds(const Arguments& words);    ///< the kinds of practice: how hard, after what, how sure
Exit page(const Arguments& words);     ///< the page in the browser

/// Tells the exception that is being handled, in one line on standard error; the exit code that goes with it.
/// Rules: to be called in a catch block.
Exit tell_failure();

}  // namespace loopwright::command
