// Method: a copy is taken before the day, its logs are handed in afterwards; what waits is told with what to do. The school's
// book knows where the copy lies, as of every file written for a pupil, for the day on which the pupil is erased.
#include "command/school_copy.hpp"

#include <iostream>
#include <string>
#include <vector>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/school_book.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/day_copy.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/rights.hpp"
#include "loopwright/book/school.hpp"

namespace loopwright::command {
namespace {

using book::HandedLog;

void need_file(const std::string& file) {
  if (book::is_address(file))
    throw UsageError("FILE: a day's copy is a file of this computer, such as day.book");
}

/// "WREN:3"
book::Decision decision_of(const std::string& option, const std::string& text,
                           book::Deciding deciding) {
  const std::size_t colon = text.find(':');
  if (colon == std::string::npos)
    throw UsageError(option + " takes a pupil and a lesson of the copy, such as WREN:3, not " +
                     as_given(text));
  return {pupil_code(option, text.substr(0, colon)),
          whole_number(option, text.substr(colon + 1), {1, 9999}), deciding};
}

/// What to do about a log of which a row is damaged: nothing of it is in the school's book.
std::string damaged_words(const HandedLog& log, const std::string& copy) {
  if (log.code.empty())
    return "a log that names no lesson of this copy: it is damaged, and nobody knows whose it is; "
           "when all others are handed in, look which of your lessons the school's book lacks, log "
           "it there, and delete " +
           copy;
  const std::string name = log.code + ":" + std::to_string(log.number);
  return log.code + ", lesson " + std::to_string(log.number) +
         " has a damaged row, and its log stays in the copy: " + log.why +
         "; log it in the school's book, then '--set-aside " + name + "'";
}

void tell(const HandedLog& log, const std::string& copy) {
  const std::string which = log.code + ", lesson " + std::to_string(log.number);
  std::string text;
  switch (log.outcome) {
    case HandedLog::Outcome::handed_in:
      text = which + ": handed in";
      break;
    case HandedLog::Outcome::was_in:
      text = which + ": was handed in before; nothing is done twice";
      break;
    case HandedLog::Outcome::set_aside:
      text = which + ": set aside; the school's book stays as it is";
      break;
    case HandedLog::Outcome::taken_back:
      text = which + ": logged and taken back; nothing is to be handed in";
      break;
    case HandedLog::Outcome::waits:
      text = which + " waits: " + log.why;
      break;
    case HandedLog::Outcome::damaged:
      text = damaged_words(log, copy);
      break;
  }
  if (log.school_number != 0 && log.school_number != log.number)
    text += "; it is lesson " + std::to_string(log.school_number) + " there";
  print_folded(std::cout, 0, text);
}

}  // namespace

Exit school_take(const Arguments& words) {
  Options app{
      "Takes a copy of your pupils along for a day without a network: a file, in which lessons are "
      "logged by 'lesson log … --book FILE' and printed. 'loopwright school bring' hands the logs "
      "in afterwards. Taken again it is filled anew, unless logs wait in it.",
      "loopwright school take"};
  std::string file, address;
  bool all = false;
  app.add_option("FILE", file, "the copy, a file to write; treat it as you treat a book")
      ->required();
  app.add_flag("--all", all, "all your pupils (default: those with a planned lesson)");
  add_book(app, address);
  if (!parse(app, words)) return Exit::done;
  need_file(file);
  need_folder_of(file);
  book::Book school = open_book(school_address(address), book::Opening::must_be_there);
  NewBook made(file);
  book::Book copy = open_book(file, book::Opening::may_make);
  book::hand_in_files(copy, school);
  const book::TakenAlong taken =
      book::take_along(school, copy, all ? book::Whom::all : book::Whom::with_lessons);
  made.keep();
  for (const book::Pupil& pupil : book::pupils_of(copy))
    book::note_written(school, pupil.code, 0, {absolute_path(file), "changes with each log"});
  print_folded(std::cout, 0,
               file + ": " + std::to_string(taken.pupils) +
                   (taken.pupils == 1 ? " pupil, " : " pupils, ") + std::to_string(taken.lessons) +
                   (taken.lessons == 1 ? " planned lesson" : " planned lessons") +
                   "; log in it with --book " + file + ", then 'loopwright school bring " + file +
                   "'");
  return Exit::done;
}

Exit school_bring(const Arguments& words) {
  Options app{
      "Hands in what was logged in a day's copy: each log once, however often this is done. A "
      "lesson that was logged, moved or planned anew in the school's book meanwhile, or whose "
      "pupil is another's, is told and its log waits in the copy until you say what is to be.",
      "loopwright school bring"};
  std::string file, address;
  std::vector<std::string> instead, aside;
  app.add_option("FILE", file, "the day's copy")->required();
  add_book(app, address);
  app.add_option("--instead", instead,
                 "CODE:LESSON: this log takes the place of what the school's book has of the "
                 "lesson; again for others");
  app.add_option("--set-aside", aside,
                 "CODE:LESSON: the school's book stays as it is; again for others");
  if (!parse(app, words)) return Exit::done;
  need_file(file);
  std::vector<book::Decision> decisions;
  for (const std::string& one : instead)
    decisions.push_back(decision_of("--instead", one, book::Deciding::instead));
  for (const std::string& one : aside)
    decisions.push_back(decision_of("--set-aside", one, book::Deciding::set_aside));
  book::Book copy = open_book(file, book::Opening::must_be_there);
  if (!book::is_day_copy(copy))
    throw InputError(file + ": is no day's copy; 'loopwright school take' makes one");
  book::Book school = open_book(school_address(address), book::Opening::must_be_there);
  bool all_in = true;
  const auto logs = book::hand_in(copy, school, decisions);
  book::hand_in_files(copy, school);
  for (const HandedLog& log : logs) {
    tell(log, file);
    all_in = all_in && log.outcome != HandedLog::Outcome::waits &&
             log.outcome != HandedLog::Outcome::damaged;
  }
  if (logs.empty()) std::cout << file << ": no log waits\n";
  return all_in ? Exit::done : Exit::could_not;
}

}  // namespace loopwright::command
