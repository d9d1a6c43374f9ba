// Method: each lesson's row is told from its drive; the ways between them are the instructor's own, by the day's notes.
#include <algorithm>
#include <cmath>
#include <ostream>

#include "command/day_between.hpp"
#include "command/day_book.hpp"
#include "command/folded.hpp"
#include "command/ground_marks.hpp"
#include "command/hours_place.hpp"
#include "command/lesson_summary.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/seen.hpp"
#include "loopwright/card/card.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::command {
namespace {

constexpr std::size_t most_told = 3;  // what has hours comes first; its sheet has them all

using SheetRow = wish::DaySheet::Lesson;

std::string asked_words(const wish::Met& met) {
  std::string what = book::words_of(book::Practice{met.want.kind, met.want.movement});
  if (met.want.into) what += " into " + std::string(road::name(*met.want.into));
  return what + ": " + std::to_string(met.got) +
         (met.want.count ? ", asked " + std::to_string(*met.want.count) : ", as many as fit");
}

std::vector<std::string> practice_of_day(const wish::Loop& loop) {
  std::vector<std::string> all;
  for (const wish::Met& met : loop.met) all.push_back(asked_words(met));
  for (const wish::LoopPart& part : loop.parts)
    for (const wish::Met& met : part.met) all.push_back(asked_words(met));
  return all;
}

/// What to look at on the ground, by the letters of its sheet, then what falls short.
std::vector<std::string> unsure_of(const book::SeenFacts& seen, const DayLesson& one) {
  std::vector<std::string> all;
  const auto items = ground_items_of(*one.found);
  const auto marks =
      ground_marks(items, {one.lesson.plan.to_check, seen, one.lesson.plan.start.civil().date});
  for (std::size_t k = 0; k < items.size(); ++k)
    if (!marks[k].letter.empty()) all.push_back(marks[k].letter + ": " + items[k].words);
  const wish::Answer& answer = one.found->answer;
  if (answer.shortfall && !answer.shortfall->why.empty())
    all.push_back("not all that was asked for: " + answer.shortfall->why);
  return all;
}

void tell_away(SheetRow& row, const book::SeenFacts& seen, const DayLesson& one) {
  const wish::Answer& answer = one.found->answer;
  const wish::Loop& loop = answer.loops.front();
  const hours::Setting setting = one.found->ground->setting_of(answer.wish);
  const auto minutes = [&](double s) { return std::round((s + loop.stop_seconds) / 60); };
  row.practice = practice_of_day(loop);
  if (const std::string out = drive_out_words(loop); !out.empty())
    row.practice.insert(row.practice.begin(), out);
  if (const std::string back = drive_back_words(loop); !back.empty()) row.practice.push_back(back);
  row.away_minutes = {minutes(loop.seconds.low), minutes(loop.seconds.likely),
                      minutes(loop.seconds.high)};
  row.back_by = write_clock(wish::likely_end(loop, setting));
  row.unsure = unsure_of(seen, one);
  row.trouble = card::write_barred({one.found->ground->noted().roads, answer, loop, setting});
}

SheetRow row_of(const book::SeenFacts& seen, const DayLesson& one, const DayVisit& visit) {
  const book::Lesson& lesson = one.lesson;
  SheetRow row{.code = one.pupil.code,
               .number = lesson.number,
               .state = std::string(book::name(lesson.state)),
               .start = write_clock(visit.start),
               .end = write_clock(visit.over),
               .minutes = lesson.plan.length_minutes};
  if (one.found)
    tell_away(row, seen, one);
  else
    row.trouble = one.trouble;
  if (book::is_mock_plan(lesson.plan)) row.practice.insert(row.practice.begin(), "mock test");
  return row;
}

DayVisit visit_of(const Ground& ground, const DayLesson& one) {
  const book::Plan& plan = one.lesson.plan;
  DayVisit visit{
      plan.start, over_after(ground, plan.start, plan.length_minutes), one.pupil.code, {}, {}};
  if (!one.found) return visit;
  const wish::Wish& wish = one.found->answer.wish;
  visit.begin = wish.home;
  visit.end = wish.end.value_or(wish.home);
  return visit;
}

std::string between_words(const wish::DaySheet::Between& gap) {
  if (!gap.clash.empty()) return "clash: " + gap.clash;
  return std::to_string(gap.free_minutes) + " min, " +
         (gap.drive_minutes ? std::to_string(*gap.drive_minutes) + " to drive"
                            : std::string("the drive isn't known"));
}

void print_lesson_row(std::ostream& out, const SheetRow& row) {
  const bool is_planned = row.state == book::name(book::LessonState::planned);
  print_folded(out, 0,
               row.start + " to " + row.end + " " + row.code + ", lesson " +
                   std::to_string(row.number) + (is_planned ? "" : ", " + row.state) +
                   (row.practice.empty() ? "" : ": " + listed(row.practice)));
  if (row.away_minutes)
    print_folded(out, 2,
                 "leave at " + row.start + ", away " +
                     std::to_string(std::lround(row.away_minutes->likely)) + " min, likely " +
                     std::to_string(std::lround(row.away_minutes->low)) + " to " +
                     std::to_string(std::lround(row.away_minutes->high)) + "; back at about " +
                     row.back_by);
  for (std::size_t k = 0; k < std::min(row.unsure.size(), most_told); ++k)
    print_folded(out, 2, row.unsure[k]);
  if (row.unsure.size() > most_told)
    print_folded(
        out, 2,
        "and " + std::to_string(row.unsure.size() - most_told) + " more to look at, on its sheet");
  if (!row.trouble.empty()) print_folded(out, 2, row.trouble);
}

}  // namespace

wish::DaySheet day_sheet(const book::Book& book, const AreaTexts& area, Date day,
                         const std::vector<DayLesson>& lessons) {
  const book::SeenFacts seen = book::seen_facts(book);
  wish::DaySheet sheet{day, {}, {}};
  Ground ground(area);
  std::vector<DayVisit> visits;
  for (const DayLesson& one : lessons) {
    visits.push_back(visit_of(ground, one));
    sheet.lessons.push_back(row_of(seen, one, visits.back()));
  }
  const auto gaps = gaps_of(ground, visits);
  for (std::size_t k = 0; k < gaps.size(); ++k)
    sheet.between.push_back(
        {gaps[k].free_minutes, gaps[k].drive_minutes,
         gaps[k].is_clash() ? clash_words(visits[k], visits[k + 1], gaps[k]) : std::string()});
  return sheet;
}

void print_day_sheet(std::ostream& out, const wish::DaySheet& sheet) {
  out << spoken_day(sheet.day) << (sheet.lessons.empty() ? ": no lesson in the book\n" : "\n");
  for (std::size_t k = 0; k < sheet.lessons.size(); ++k) {
    print_lesson_row(out, sheet.lessons[k]);
    if (k < sheet.between.size()) print_folded(out, 0, between_words(sheet.between[k]));
  }
}

}  // namespace loopwright::command
