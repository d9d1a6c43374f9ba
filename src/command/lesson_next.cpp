// Method: what room book proposes, in words, and the command that plans it, ready to be changed. With a map only what a
// lesson from the door can have is proposed.
#include <iostream>
#include <optional>
#include <set>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/lesson.hpp"
#include "command/next_plan.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

/// What a lesson from the pupil's door can have on that day at ten; none without a map. Which hour hardly matters here:
/// `lesson plan --next` asks for its own.
std::optional<std::set<book::Practice>> there_on(const book::Book& book, const book::Pupil& pupil,
                                                 const AreaTexts& area, Date day) {
  if (area.area.empty()) return std::nullopt;
  NextAsk ask{pupil, area, {}};
  ask.words.fill("start", road::day_text(day) + "T10:00", "--today");
  return practices_for(ask, record_of(book, pupil.code));
}

/// The words of its wish as a file, for 'lesson plan --wish' and 'loops --wish': all that a lesson of an hour is planned by.
/// Without topics it asks for nothing, without a home in the book it names none.
void keep_wish_of(const book::Proposal& next, const book::Pupil& pupil, const PupilRecord& record,
                  const std::string& file) {
  WishWords words;
  for (const book::WishWord& word : book::wish_words(next))
    words.fill(word.name, word.value, "the proposal");
  if (pupil.home.empty()) {
    for (const road::Kind kind : pupil.avoids)
      words.fill("avoid", std::string(road::name(kind)), "the book");
  } else {
    fill_from_book(words, pupil, record, "");
  }
  store::write_whole(file, words.file_text());
  std::cout << file << ": written; --wish " << file << " asks for it\n";
}

/// first: of those ahead, what else to think of is told once.
void print_proposal(const std::string& code, const book::Proposal& next, bool first,
                    const std::string& area) {
  if (next.topics.empty()) {
    print_folded(std::cout, 2,
                 "nothing that a map can serve is due: drive what the pupil asks for");
  } else {
    print_folded(std::cout, 2, "goal: " + next.goal);
  }
  for (const book::ProposedTopic& topic : next.topics)
    print_folded(std::cout, 2,
                 words_of(topic.what) + ", " + std::to_string(topic.passes) + ": " + topic.why);
  if (first)
    for (const std::string& hint : next.hints) print_folded(std::cout, 2, "think of: " + hint);
  const std::string of = code + " " + (area.empty() ? "AREA" : area);
  if (first && next.mock_due)
    print_folded(std::cout, 2, "a mock test: loopwright lesson plan " + of + " --mock");
  if (next.topics.empty()) return;
  std::string command = "plan it: loopwright lesson plan " + of;
  for (const book::WishWord& word : book::wish_words(next))
    command += " --" + word.name + " " + word.value;
  print_folded(std::cout, 2, command);
}

}  // namespace

Exit lesson_next(const Arguments& words) {
  Options app{"Proposes the next lesson, with its reasons; change any of it.",
              "loopwright lesson next"};
  std::string code, book_file, today, ahead = "1", keep_wish;
  AreaTexts area;
  app.add_option("CODE", code, "the pupil's code")->required();
  add_book(app, book_file);
  app.add_option("--today", today, "day of the lesson, 2026-11-28 (default: today)");
  app.add_option("--area", area.area,
                 "area file: only what a lesson of an hour from the door can have is proposed");
  app.add_option("--notes", area.notes, "with --area: your notes on its roads");
  add_terms(app, area.terms);
  app.add_option("--ahead", ahead, "so many lessons, 1 to 3 (default: 1)");
  app.add_option("--keep-wish", keep_wish,
                 "file to write the words of the next one into, for --wish");
  if (!parse(app, words)) return Exit::done;
  if (!keep_wish.empty()) need_folder_of(keep_wish);
  if (area.area.empty() && !(area.notes.empty() && area.terms.empty()))
    throw UsageError("--notes and --terms go with --area: without a map they say nothing");
  const int how_many = whole_number("--ahead", ahead, {1, 3});
  const Date day = today_of(today);
  const book::Book book = open_book(book_file, book::Opening::must_be_there);
  if (!keep_wish.empty())
    need_own_file(keep_wish, {book.file(), area.area, area.notes, area.terms});
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", code));
  const auto lessons = book::lessons_of(book, pupil.code);
  const auto there = there_on(book, pupil, area, day);
  const book::Record record{pupil, scheme_kept(pupil), lessons, day, there ? &*there : nullptr};
  int number = 0;
  for (const book::Proposal& next : book::proposed_ahead(record, how_many)) {
    const bool first = number++ == 0;
    std::cout << pupil.code << ", " << (first ? "next lesson" : "then, if that goes well") << ":\n";
    print_proposal(pupil.code, next, first, area.area);
    if (first && !keep_wish.empty())
      keep_wish_of(next, pupil, record_of(book, pupil.code), keep_wish);
  }
  return Exit::done;
}

}  // namespace loopwright::command
