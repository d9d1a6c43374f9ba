// Method: each lesson's ends are read from the words of its wish, the pupil's home where it has none; overlaps are looked
// for among all of the day, too short a drive only to the lesson before and to the one behind.
#include "command/booked.hpp"

#include <algorithm>
#include <optional>
#include <ostream>
#include <sstream>

#include "command/arguments.hpp"
#include "command/folded.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/places.hpp"
#include "command/wish_of_words.hpp"
#include "command/wish_words.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/school.hpp"
#include "loopwright/hours/zone.hpp"

namespace loopwright::command {
namespace {

/// Where words lead to; none when the area doesn't know it, or not for sure.
std::optional<Point> place_of(const Ground& ground, const std::string& text) {
  if (text.empty()) return std::nullopt;
  std::ostringstream nobody;
  try {
    return Places(ground.map(), nobody).find(read_place("the book", text));
  } catch (const UsageError&) {
    return std::nullopt;
  }
}

std::string word_of(const WishWords& words, std::string_view name) {
  const Said* said = words.one(name);
  return said == nullptr ? std::string() : said->text;
}

BookedVisit booked(const Ground& ground, const book::Pupil& pupil, const book::Lesson& lesson) {
  WishWords words;
  words.take_text(lesson.plan.wish, pupil.code);
  const std::string begin = word_of(words, "home"), end = word_of(words, "end");
  const Instant& start = lesson.plan.start;
  DayVisit visit{start,
                 over_after(ground, start, lesson.plan.length_minutes),
                 pupil.code + "'s lesson " + std::to_string(lesson.number),
                 place_of(ground, begin.empty() ? pupil.home : begin),
                 {}};
  visit.end = end.empty() ? visit.begin : place_of(ground, end);
  return {pupil.code, lesson.number, std::move(visit)};
}

constexpr std::int64_t longest_drive_s = 3 * 60 * 60;  // ours, from one lesson to the next

/// Unix seconds.
struct Span {
  std::int64_t from_s = 0, to_s = 0;
};

/// From midnight to midnight, 23 to 25 hours.
Span day_of(const Ground& ground, Date day) {
  const std::string& zone = ground.info().zone;
  const Date next = date_from_days(days_since_epoch(day) + 1);
  return {hours::instant_in(zone, {day, 0}).unix_s, hours::instant_in(zone, {next, 0}).unix_s};
}

/// Lessons of the instructor who holds that pupil, as far as they lie in a span of time, by their starts.
std::vector<BookedVisit> booked_between(const book::Book& book, const Ground& ground,
                                        const std::string& code, const Span& span) {
  const auto own = book::codes_of_same_holder(book, code);
  std::vector<BookedVisit> all;
  for (const book::Pupil& pupil : book::pupils_of(book)) {
    if (std::ranges::find(own, pupil.code) == own.end()) continue;
    for (const book::Lesson& lesson : book::lessons_of(book, pupil.code)) {
      const std::int64_t start_s = lesson.plan.start.unix_s;
      if (lesson.state != book::LessonState::not_driven && start_s < span.to_s &&
          start_s + 60LL * lesson.plan.length_minutes > span.from_s)
        all.push_back(booked(ground, pupil, lesson));
    }
  }
  std::ranges::stable_sort(all, {}, [](const BookedVisit& one) { return one.visit.start.unix_s; });
  return all;
}

/// The day of a lesson, and by its evening or early morning so much of the next one as a drive may take.
Span around(const Ground& ground, const MeantLesson& meant) {
  const Span day = day_of(ground, meant.start.civil().date);
  const std::int64_t start_s = meant.start.unix_s;
  return {std::min(day.from_s, start_s - longest_drive_s),
          std::max(day.to_s, start_s + std::int64_t{60} * meant.minutes + longest_drive_s)};
}

bool tell_if_clash(std::ostream& out, Ground& ground, const DayVisit& first,
                   const DayVisit& second) {
  const DayGap gap = gaps_of(ground, {first, second}).front();
  if (gap.is_clash()) print_folded(out, 0, "clash: " + clash_words(first, second, gap));
  return gap.is_clash();
}

}  // namespace

std::vector<BookedVisit> booked_on(const book::Book& book, const Ground& ground,
                                   const DayAsked& asked) {
  const Span day = day_of(ground, asked.day);
  return booked_between(book, ground, asked.code,
                        {day.from_s - longest_drive_s, day.to_s + longest_drive_s});
}

bool tell_booked_clashes(std::ostream& out, const book::Book& book, Ground& ground,
                         const MeantLesson& meant) {
  DayVisit visit{meant.start,
                 over_after(ground, meant.start, meant.minutes),
                 meant.code,
                 place_of(ground, meant.begin),
                 {}};
  visit.end = meant.end.empty() ? visit.begin : place_of(ground, meant.end);
  const DayVisit *before = nullptr, *behind = nullptr;
  bool clash = false;
  const auto booked = booked_between(book, ground, meant.code, around(ground, meant));
  for (const BookedVisit& one : booked) {
    if (one.code == meant.code && one.number == meant.number) continue;
    const bool is_first = one.visit.start.unix_s <= visit.start.unix_s;
    const DayVisit &first = is_first ? one.visit : visit, &second = is_first ? visit : one.visit;
    if (minutes_between(first, second) < 0)
      clash = tell_if_clash(out, ground, first, second) || clash;
    else if (is_first)
      before = &one.visit;
    else if (behind == nullptr)
      behind = &one.visit;
  }
  if (before != nullptr) clash = tell_if_clash(out, ground, *before, visit) || clash;
  if (behind != nullptr) clash = tell_if_clash(out, ground, visit, *behind) || clash;
  return clash;
}

void tell_clashes_of_plan(std::ostream& out, const book::Book& book, const AreaTexts& area,
                          const MeantLesson& meant) {
  Ground ground(area);
  if (tell_booked_clashes(out, book, ground, meant))
    print_folded(out, 0, "planned all the same; " + std::string(moves_a_lesson));
}

MeantLesson meant_by(const NextAsk& ask, const std::vector<book::Lesson>& lessons) {
  const Said *start = ask.words.one("start"), *minutes = ask.words.one("minutes");
  std::optional<WrittenTime> written;
  if (start != nullptr) written = time_of("--start", start->text);
  const Instant begins = start_there(written, ask.area.area);
  const int said =
      minutes == nullptr ? 0 : whole_number("--minutes", minutes->text, minutes_of_drive);
  return {ask.pupil.code,
          planned_then(lessons, begins),
          begins,
          ask.length.empty() ? std::max(length_said(""), said) : length_said(ask.length),
          home_said(word_of(ask.words, "home"), ask.pupil),
          word_of(ask.words, "end")};
}

}  // namespace loopwright::command
