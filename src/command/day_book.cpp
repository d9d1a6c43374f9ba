#include "command/day_book.hpp"

#include <algorithm>
#include <iostream>
#include <utility>

#include "command/files.hpp"
#include "command/ground_marks.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/write_for_pupil.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/school.hpp"
#include "loopwright/book/seen.hpp"
#include "loopwright/card/pack.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

/// The drive that the book keeps of a lesson, on the roads it was planned for.
FoundPlan drive_of(const book::Lesson& lesson, const std::string& area, const std::string& name) {
  FoundPlan found{std::make_unique<Ground>(AreaTexts{area, lesson.plan.notes, lesson.plan.terms}),
                  {},
                  lesson.plan.loop_file};
  found.answer = loops_in(*found.ground, found.text, name).answer;
  return found;
}

DayLesson read_back(const book::Book& book, const book::Pupil& pupil, int number,
                    const std::string& area) {
  DayLesson one{pupil, book::lesson_of(book, pupil.code, number), {}, {}};
  if (one.lesson.state == book::LessonState::driven || one.lesson.plan.loop_file.empty()) {
    one.lesson.plan.loop_file.clear();
    return one;
  }
  try {
    one.found = drive_of(one.lesson, area, pupil.code + ", lesson " + std::to_string(number));
  } catch (const InputError& error) {
    one.trouble = error.what();
  }
  one.lesson.plan.loop_file.clear();
  return one;
}

std::vector<wish::GroundMark> marks_of(const book::SeenFacts& seen, const DayLesson& one) {
  return ground_marks(ground_items_of(*one.found),
                      {one.lesson.plan.to_check, seen, one.lesson.plan.start.civil().date});
}

}  // namespace

std::vector<DayLesson> lessons_on(const book::Book& book, const std::string& area,
                                  const DayAsked& asked) {
  std::vector<std::pair<book::Pupil, int>> found;
  for (const book::Pupil& pupil : book::pupils_of(book))
    for (const book::Lesson& lesson : book::lessons_of(book, pupil.code))
      if (book::day_of(lesson) == asked.day && lesson.state != book::LessonState::not_driven)
        found.emplace_back(pupil, lesson.number);
  if (found.empty()) return {};
  const auto own =
      book::codes_of_same_holder(book, asked.code.empty() ? found.front().first.code : asked.code);
  const auto is_another = [&](const auto& one) {
    return std::ranges::find(own, one.first.code) == own.end();
  };
  if (asked.code.empty() && std::ranges::any_of(found, is_another))
    throw UsageError("--of: the lessons of " + road::day_text(asked.day) +
                     " are several instructors'; name a pupil of the one whose day it is, such as "
                     "--of " +
                     found.front().first.code);
  std::erase_if(found, is_another);
  std::vector<DayLesson> all;
  for (const auto& [pupil, number] : found) all.push_back(read_back(book, pupil, number, area));
  std::ranges::stable_sort(all, {},
                           [](const DayLesson& one) { return one.lesson.plan.start.unix_s; });
  return all;
}

void print_day(book::Book& book, const std::vector<DayLesson>& lessons,
               const std::filesystem::path& output) {
  const book::SeenFacts seen = book::seen_facts(book);
  std::vector<TiedLoops> tied;
  std::vector<std::vector<wish::GroundMark>> marks;
  tied.reserve(lessons.size()), marks.reserve(lessons.size());
  std::vector<card::DayLesson> pages;
  for (const DayLesson& one : lessons) {
    if (!one.found) continue;
    tied.push_back(loops_in(*one.found->ground, one.found->text, one.pupil.code));
    marks.push_back(marks_of(seen, one));
    card::PackOptions options;
    book::Plan plan = one.lesson.plan;
    plan.loop_file = one.found->text;
    options.pupil = name_on_sheet(one.pupil.code, plan);
    const TiedLoops& of = tied.back();
    pages.push_back({{of.roads,
                      of.answer,
                      of.answer.loops.front(),
                      of.setting,
                      {nullptr, one.pupil.my_your ? say::Sides::my_your : say::Sides::left_right},
                      &marks.back(),
                      book::is_mock_plan(plan)},
                     options});
  }
  const std::string pdf = card::write_day(pages);
  for (const DayLesson& one : lessons)
    if (one.found) write_for_pupil(book, {one.pupil.code, one.lesson.number}, output, pdf);
  std::cout << output.string() << ": written\n";
}

}  // namespace loopwright::command
