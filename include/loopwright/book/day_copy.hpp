// A day's copy of a school's book: a file of one's pupils to take along where the network doesn't reach. Lessons are logged in
// it; later the logs are handed in.
//
//   take_along(school, copy, Whom::with_lessons);                // in the morning
//   log_lesson(copy, {"WREN", 3}, log);                          // on the road
//   for (const HandedLog& one : hand_in(copy, school, {})) …     // when the server is back
//
// Rules: each log is an entry with an id of its own, and is in the school's book once, however often it is handed in and
// from however many machines, also when that is killed at any moment. Of one lesson the last log counts. A lesson that
// isn't as it was taken along any more keeps its log waiting, until somebody says which is to be; nothing is ever laid
// over it unasked. A damaged row keeps its own lesson's log waiting and no other's. Nothing else of a day's copy goes back but
// which files were written from it, so nothing else can be changed in it. Throws InputError.
// Why not more: two books that both change need rules for every meeting of theirs, which nobody knows by heart.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "loopwright/book/book.hpp"

namespace loopwright::book {

bool is_day_copy(const Book& book);
/// Throws InputError when it is one: it takes logs alone.
void need_no_day_copy(const Book& book);

enum class Whom { with_lessons, all };  ///< pupils with a planned lesson, or all that one holds

struct TakenAlong {
  int pupils = 0, lessons = 0;  ///< lessons: planned ones
};
/// Fills the copy, in the place of what a day's copy held before. Rules: school is on a server, copy a file. Throws
/// InputError when the copy has logs that wait, or pupils of its own.
TakenAlong take_along(const Book& school, Book& copy, Whom whom);

/// What is to become of a log whose lesson isn't as it was taken along.
enum class Deciding {
  instead,
  set_aside
};  ///< it takes the place of what is there, or what is there stays
struct Decision {
  std::string code;
  int number = 0;  ///< as the copy has it
  Deciding deciding = Deciding::instead;
};

/// What became of a lesson's log.
struct HandedLog {
  enum class Outcome { handed_in, was_in, waits, set_aside, taken_back, damaged };
  std::string code;       ///< empty: damaged so that it isn't known whose it is
  int number = 0;         ///< as the copy has it
  int school_number = 0;  ///< as the school's book has it, of one that is in it
  Outcome outcome = Outcome::handed_in;
  /// Of one that waits: what became of the lesson meanwhile, and what to do. Of one that is damaged: which value.
  std::string why = {};
};
/// Each lesson with a log that isn't handed in yet, in the order in which they were logged. Throws InputError for a decision on
/// a lesson without one.
std::vector<HandedLog> hand_in(Book& copy, Book& school, const std::vector<Decision>& decisions);

/// Tells the school's book of the files that were written from the copy for pupils one still sees: they go when a pupil is erased. Before
/// the copy is filled anew, and with its logs.
void hand_in_files(Book& copy, Book& school);

}  // namespace loopwright::book
