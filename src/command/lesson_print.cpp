// Method: the loop file that the book keeps is tied to its area, as it was planned, and written as `card` does it; the
// book knows of the file.
#include <algorithm>
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/card_form.hpp"
#include "command/files.hpp"
#include "command/ground_marks.hpp"
#include "command/lesson.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/lesson_words_of_pupil.hpp"
#include "command/words_file.hpp"
#include "command/write_for_pupil.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/book/pupils.hpp"

namespace loopwright::command {
namespace {

struct PrintTexts {
  LessonTexts lesson;
  CardTexts card;
  std::string loop = "1", area, output;
};

bool parse_print(const Arguments& words, PrintTexts& texts) {
  Options app{"Writes a planned lesson on paper, as a card or as an exchange file.",
              "loopwright lesson print"};
  add_lesson(app, texts.lesson);
  app.add_option("--area", texts.area, "area file, when it isn't where it was");
  app.add_option("--loop", texts.loop,
                 "number of the loop, when variants were planned (default: 1)");
  add_card_options(app, texts.card);
  app.add_option("-o,--output", texts.output,
                 "file to write; its ending says the form (default: text on the screen)");
  return parse(app, words);
}

/// The planned lesson meant, with its loop file.
book::Lesson lesson_to_print(const book::Book& book, const book::Pupil& pupil,
                             const LessonTexts& texts) {
  const auto lessons = book::lessons_of(book, pupil.code);
  const int number = lesson_meant(lessons, pupil.code, lesson_number(texts)).number;
  book::Lesson lesson = book::lesson_of(book, pupil.code, number);
  if (lesson.plan.loop_file.empty() || lesson.state == book::LessonState::driven)
    throw UsageError(
        "--lesson: lesson " + std::to_string(number) + " of " + pupil.code +
        (lesson.state == book::LessonState::driven ? " is driven; its drive isn't printed any more"
         : lesson.plan.wish.empty()                ? " wasn't planned here"
                                    : " has no drive any more, since a later lesson was logged") +
        "; plan one to print");
  return lesson;
}

/// Of what is asked for by number the goals at which the pupil stands lower than the drive's level.
std::vector<card::LowerGoal> lower_goals(const book::Book& book, const book::Pupil& pupil,
                                         const wish::Wish& wish) {
  const PupilRecord kept = record_of(book, pupil.code);
  const book::Record record{pupil, scheme_kept(pupil), kept.lessons, wish.start.civil().date};
  std::vector<card::LowerGoal> lower;
  for (const wish::Want& want : wish.wants) {
    const int level = std::max(1, book::level_of(record, {want.kind, want.movement}));
    if (level < wish.level) lower.push_back({want.kind, want.movement, level});
  }
  return lower;
}

void write(book::Book& book, const LessonName& name, const std::string& output,
           const std::string& text) {
  if (output.empty()) {
    std::cout << text;
    return;
  }
  write_for_pupil(book, name, output, text);
  std::cout << output << ": written\n";
}

}  // namespace

Exit lesson_print(const Arguments& words) {
  PrintTexts texts;
  if (!parse_print(words, texts)) return Exit::done;
  CardForm form = card_form_of(texts.card, texts.output);
  const int loop_number = whole_number("--loop", texts.loop, {1, 999});
  book::Book book = open_book(texts.lesson.book, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", texts.lesson.code));
  if (pupil.my_your) form.sides = say::Sides::my_your;
  const book::Lesson planned = lesson_to_print(book, pupil, texts.lesson);
  form.pack.pupil = form.format == "ics" ? name_in_calendar(pupil.code, planned.plan)
                                         : name_on_sheet(pupil.code, planned.plan);
  form.lesson_minutes = planned.plan.length_minutes;
  const std::string area = texts.area.empty() ? planned.plan.area : texts.area;
  if (!texts.output.empty()) {
    need_folder_of(texts.output);
    need_own_file(texts.output, {book.file(), area, planned.plan.notes, texts.card.words});
  }
  std::optional<WordsFile> spoken;
  if (!texts.card.words.empty()) spoken.emplace(texts.card.words);
  Ground ground({area, planned.plan.notes, planned.plan.terms});
  const std::string name = pupil.code + ", lesson " + std::to_string(planned.number);
  const TiedLoops tied = loops_in(ground, planned.plan.loop_file, name);
  const wish::Loop& loop = loop_numbered(tied.answer, loop_number, name);
  card::Lesson lesson{tied.roads,
                      tied.answer,
                      loop,
                      tied.setting,
                      {spoken ? &spoken->words() : nullptr, form.sides}};
  const auto marks = ground_marks(
      card::to_check(lesson),
      {planned.plan.to_check, book::seen_facts(book), planned.plan.start.civil().date});
  lesson.ground = &marks;
  lesson.help.mock_test = book::is_mock_plan(planned.plan);
  lesson.help.lower = lower_goals(book, pupil, tied.answer.wish);
  const std::string head = form.format == "text" ? form.pack.pupil + "\n" : "";
  const std::string text = head + write_card(form, lesson);
  tell_barred(lesson, name);
  write(book, {pupil.code, planned.number}, texts.output, text);
  return Exit::done;
}

}  // namespace loopwright::command
