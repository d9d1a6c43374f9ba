// Method: what room book proposes, in words, and the command that plans it, ready to be changed. With a map only what a
// lesson from the door can have is proposed. What a school's workers proposed in the night is shown while it is fresh.
#include <iostream>
#include <optional>
#include <set>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/lesson.hpp"
#include "command/next_words.hpp"
#include "command/write_for_pupil.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/book/night.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/record_mark.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

struct NextTexts {
  std::string keep_wish;
  AreaTexts area;
  int how_many = 1;
  Date day;
};

/// The proposal of the night, when it is of this day and map, and the record is what it was then.
std::optional<book::KeptProposal> fresh_one(const book::Book& book, const book::Pupil& pupil,
                                            const PupilRecord& record, const NextTexts& texts) {
  if (!texts.area.notes.empty() || !texts.area.terms.empty() || texts.how_many > 1)
    return std::nullopt;
  auto kept = book::kept_proposal(book, pupil.code);
  if (!kept || !(kept->night.day == texts.day)) return std::nullopt;
  if (!texts.area.area.empty() &&
      store::open_area(texts.area.area).roads().info().id != kept->night.area)
    return std::nullopt;
  if (kept->is.mark == book::mark_of(pupil, record.lessons)) return kept;
  print_folded(std::cout, 0,
               "(what was proposed in the night, " + kept->made +
                   ", is older than the record, and made anew)");
  return std::nullopt;
}

/// The door stands in it.
void keep_wish(book::Book& book, const std::string& code, const std::string& file,
               const std::string& wish) {
  if (file.empty()) return;
  write_for_pupil(book, {code, 0}, file, wish);
  std::cout << file << ": written; --wish " << file << " asks for it\n";
}

void print_kept(const std::string& code, const book::KeptProposal& kept) {
  std::cout << code << ", next lesson:\n" << kept.is.says;
  print_folded(std::cout, 2, "proposed in the night, " + kept.made + ", with the school's map");
}

void print_live(book::Book& book, const book::Pupil& pupil, const PupilRecord& record,
                const NextTexts& texts) {
  const auto there = there_on(pupil, record, texts.area, texts.day);
  const book::Record of{pupil,
                        scheme_kept(pupil),
                        record.lessons,
                        texts.day,
                        there ? &there->easy : nullptr,
                        there ? &there->any_hard : nullptr};
  bool first = true;
  for (const book::Proposal& next : book::proposed_ahead(of, texts.how_many)) {
    std::cout << pupil.code << ", " << (first ? "next lesson" : "then, if that goes well") << ":\n";
    print_proposal(std::cout, pupil.code, next, first, texts.area.area);
    if (first) keep_wish(book, pupil.code, texts.keep_wish, wish_file_of(next, pupil, record));
    first = false;
  }
}

}  // namespace

Exit lesson_next(const Arguments& words) {
  Options app{"Proposes the next lesson, with its reasons; change any of it.",
              "loopwright lesson next"};
  std::string code, book_file, today, ahead = "1";
  NextTexts texts;
  AreaTexts& area = texts.area;
  app.add_option("CODE", code, "the pupil's code")->required();
  add_book(app, book_file);
  app.add_option("--today", today, "day of the lesson, 2026-11-28 (default: today)");
  app.add_option("--area", area.area,
                 "area file: only what a lesson of an hour from the door can have is proposed");
  app.add_option("--notes", area.notes, "with --area: your notes on its roads");
  add_terms(app, area.terms);
  app.add_option("--ahead", ahead, "so many lessons, 1 to 3 (default: 1)");
  app.add_option("--keep-wish", texts.keep_wish,
                 "file to write the words of the next one into, for --wish");
  if (!parse(app, words)) return Exit::done;
  if (!texts.keep_wish.empty()) need_folder_of(texts.keep_wish);
  if (area.area.empty() && !(area.notes.empty() && area.terms.empty()))
    throw UsageError("--notes and --terms go with --area: without a map they say nothing");
  texts.how_many = whole_number("--ahead", ahead, {1, 3});
  texts.day = today_of(today);
  book::Book book = open_book(book_file, book::Opening::must_be_there);
  if (!texts.keep_wish.empty())
    need_own_file(texts.keep_wish, {book.file(), area.area, area.notes, area.terms});
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", code));
  const PupilRecord record = record_of(book, pupil.code);
  if (const auto kept = fresh_one(book, pupil, record, texts)) {
    print_kept(pupil.code, *kept);
    keep_wish(book, pupil.code, texts.keep_wish, kept->is.wish);
  } else {
    print_live(book, pupil, record, texts);
  }
  return Exit::done;
}

}  // namespace loopwright::command
