// Method:
//   1. The map is asked what can be had from the door; the mixed drive is asked for once each, with stops, one manoeuvre
//      and a stretch on which the learner finds the way.
//   2. What no drive has together with the rest is left out, the least needed first. Five tries at most; the last is kept.
//      Of finding the way the search gives the longest stretch there is.
#include "command/mock_plan.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <ostream>
#include <span>
#include <sstream>
#include <utility>

#include "command/arguments.hpp"
#include "command/folded.hpp"
#include "command/keep_off_words.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/places.hpp"
#include "command/print.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/book/centres.hpp"
#include "loopwright/book/lesson_times.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::command {
namespace {

constexpr int most_mock_tries = 5;
const std::string from_mock = "the mock test";

void need_no_other_drive(const WishWords& words) {
  for (const char* said :
       {"want", "part", "through", "new", "minutes", "independent", "easy-first"})
    if (!words.all(said).empty())
      throw UsageError("--mock says what is driven and for how long; leave it out, or --" +
                       std::string(said));
}

std::string want_text(const book::Practice& what, int count) {
  return wish::write_want({.kind = what.kind, .movement = what.movement, .count = count});
}

std::string keep_off_of(const book::Centre& centre) {
  return centre.outline + " @ " + centre.hours;
}

/// Of the lesson: what is driven and stopped, what is left to talk.
LessonLength length_of(const NextAsk& ask, const book::MockWish& mock) {
  const int length = length_said(ask.length);
  const int reserve = book::lesson_times(length, book::Topic::known).reserve;
  const int talk = length - reserve - mock.driving_minutes - mock.stop_minutes;
  if (talk < 0)
    throw UsageError("--length: a mock test takes " +
                     std::to_string(mock.driving_minutes + mock.stop_minutes + reserve) +
                     " minutes at least");
  std::string sum = "lesson of " + std::to_string(length) + " min: " + std::to_string(talk) +
                    " to talk, " + std::to_string(mock.driving_minutes) + " to drive, " +
                    std::to_string(mock.stop_minutes) + " for stops, back " +
                    std::to_string(reserve) + " early";
  return {length, sum};
}

/// Such a lesson has no stretch on which the learner finds the way (lesson_words.cpp).
bool is_driven_out(const WishWords& words) {
  return words.one("drive-out") != nullptr || words.one("drive-back") != nullptr;
}

PlanJob mock_job(const NextAsk& ask, const PupilRecord& record, const book::MockWish& mock,
                 std::span<const book::Centre> centres) {
  WishWords words = ask.words;
  for (const book::Practice& what : mock.wants) words.fill("want", want_text(what, 1), from_mock);
  if (mock.stops > 0) words.fill("want", want_text({road::Kind::move_off}, mock.stops), from_mock);
  if (mock.has_manoeuvre) words.fill("want", want_text({mock.manoeuvre}, 1), from_mock);
  if (mock.independent_minutes > 0 && !is_driven_out(words))
    words.fill("independent", std::to_string(mock.independent_minutes), from_mock);
  for (const book::Centre& one : centres) words.fill("keep-off", keep_off_of(one), from_mock);
  const LessonLength length = length_of(ask, mock);
  const int reserve = book::lesson_times(length.minutes, book::Topic::known).reserve;
  words.fill("reserve", std::to_string(reserve), from_mock);
  words.fill("minutes", std::to_string(mock.driving_minutes + mock.stop_minutes + reserve),
             from_mock);
  fill_from_book(words, ask.pupil, record, std::to_string(length.minutes));
  PlanJob job{ask.pupil.code, ask.area, length, ask_of(std::move(words))};
  job.ask.effort = ask.effort;
  job.mock = true;
  if (job.ask.start)
    job.number = planned_then(record.lessons, start_there(job.ask.start, job.area.area));
  return job;
}

bool is_met(const wish::Loop& loop, const book::Practice& what, int count) {
  return std::any_of(loop.met.begin(), loop.met.end(), [&](const wish::Met& met) {
    return met.want.kind == what.kind && met.want.movement == what.movement && met.got >= count;
  });
}

/// Leaves out what wasn't met; without a loop, or when only stops weren't, the last want. False when nothing is left to
/// leave out.
bool leave_out(const wish::Answer& answer, book::MockWish& mock,
               std::vector<std::string>& left_out) {
  std::vector<book::Practice> none;
  bool stops_met = !answer.loops.empty();
  if (!answer.loops.empty()) {
    const wish::Loop& loop = answer.loops.front();
    for (const book::Practice& what : mock.wants)
      if (!is_met(loop, what, 1)) none.push_back(what);
    stops_met = (mock.stops == 0 || is_met(loop, {road::Kind::move_off}, mock.stops)) &&
                (!mock.has_manoeuvre || is_met(loop, {mock.manoeuvre}, 1));
  }
  if (none.empty() && !stops_met && !mock.wants.empty()) none.push_back(mock.wants.back());
  for (const book::Practice& what : none) {
    left_out.push_back(words_of(what));
    std::erase(mock.wants, what);
  }
  return !none.empty();
}

/// Asks what is within half of the drive.
NextAsk half_asked(const NextAsk& ask, Date day) {
  NextAsk half = ask;
  const int driving = book::mock_wish({}, {}, day).driving_minutes;
  half.words.fill("minutes", std::to_string(driving), from_mock);
  return half;
}

/// An outline, at least, for a place alone is no surroundings of a test centre.
bool keeps_off_an_area(const wish::Wish& wish) {
  return std::any_of(wish.keep_offs.begin(), wish.keep_offs.end(),
                     [](const wish::KeepOff& one) { return one.outline.size() > 1; });
}

/// Test centres of the book by what the lesson has to do with them.
struct CentresOn {
  std::vector<book::Centre> readable;
  std::vector<std::string> odd;
};

/// Of a school's book another may have written it, by SQL or of other roads: it stops nobody's mock test.
CentresOn centres_for(const book::Book& book, const NextAsk& ask, Date day) {
  CentresOn all;
  Ground ground(ask.area);
  std::ostringstream nobody;
  Places places(ground.map(), nobody);
  for (book::Centre& one : book::centres_on(book::centres(book), day)) {
    try {
      find_keep_off(read_keep_off(keep_off_of(one)), places, ground.map());
      all.readable.push_back(std::move(one));
    } catch (const UsageError& error) {
      all.odd.push_back(printable(one.name) + ": " + error.what());
    }
  }
  return all;
}

/// As hours in which a street is kept off are asked for by the search.
bool has_tests_in(const wish::Wish& wish, const book::Centre& centre,
                  const hours::Setting& setting) {
  const road::Note never{.says = road::NoteKind::never, .hours = centre.hours};
  return road::may_shut(never, wish::lesson_time(wish, setting));
}

MockPlan mock_plan_of(PlanJob job, FoundPlan found, const CentresOn& centres) {
  MockPlan mock{std::move(job), std::move(found), {}, {}, {}, centres.odd, false, {}};
  const wish::Wish& wish = mock.found.answer.wish;
  const hours::Setting setting = mock.found.ground->setting_of(wish);
  for (const book::Centre& one : centres.readable)
    (has_tests_in(wish, one, setting) ? mock.centres : mock.at_rest)
        .push_back(one.name + ", " + one.hours);
  mock.keeps_off = keeps_off_an_area(wish);
  return mock;
}

/// Who lives in the surroundings of a test centre begins elsewhere, or at another hour.
FoundPlan find_mock(const book::Book& book, PlanJob& job, const CentresOn& centres,
                    std::ostream& told) {
  try {
    return find_plan(book, job, told);
  } catch (const Error& error) {
    const std::string_view why = error.what();
    for (const book::Centre& one : centres.readable)
      if (why.find(one.outline) != why.npos && why.find(" itself lies there") != why.npos)
        throw UsageError(job.code +
                         "'s mock test would begin or end in the surroundings of the test centre " +
                         one.name + ", which are kept off in the hours of tests, " + one.hours +
                         ": begin and end elsewhere, with --home and a place to which you drive "
                         "first, or at an hour without tests");
    throw;
  }
}

}  // namespace

MockPlan plan_mock(const book::Book& book, const NextAsk& ask) {
  need_no_other_drive(ask.words);
  const PupilRecord record = record_of(book, ask.pupil.code);
  const Date day = day_meant(ask.words);
  const auto there = practices_for(half_asked(ask, day), record).easy;
  book::MockWish mock = book::mock_wish(record.lessons, there, day);
  const CentresOn centres = centres_for(book, ask, day);
  std::vector<std::string> left_out;
  if (is_driven_out(ask.words) && mock.independent_minutes > 0)
    left_out.emplace_back("finding the way, which isn't marked where you drive out or back");
  for (int n = 1;; ++n) {
    std::ostringstream told;
    PlanJob job = mock_job(ask, record, mock, centres.readable);
    FoundPlan found = find_mock(book, job, centres, told);
    std::vector<std::string> left_out_here = left_out;
    if (found.answer.shortfall && n < most_mock_tries && leave_out(found.answer, mock, left_out))
      continue;
    MockPlan plan = mock_plan_of(std::move(job), std::move(found), centres);
    plan.left_out = std::move(left_out_here);
    plan.told = told.str();
    return plan;
  }
}

void tell_mock(std::ostream& out, const MockPlan& mock) {
  // In one line, so that what is set in below it can't be taken for its end.
  out << "mock test: a mixed drive with stops, a manoeuvre and finding the way\n";
  print_folded(out, 2, "no route of a real test, and no sign of passing one");
  if (!mock.left_out.empty())
    print_folded(out, 2,
                 "left out, not to be had together with the rest: " + listed(mock.left_out));
  for (const std::string& centre : mock.centres)
    print_folded(out, 2, "keeps off the surroundings of the test centre " + centre);
  for (const std::string& centre : mock.at_rest)
    print_folded(out, 2,
                 "no tests in this lesson at " + centre + ": its surroundings aren't kept off");
  for (const std::string& centre : mock.odd)
    print_folded(out, 2, "not kept off, look at it with 'loopwright centre list': " + centre);
  if (!mock.keeps_off)
    print_folded(out, 2,
                 "no test centre is kept off: 'loopwright centre keep' keeps its surroundings and "
                 "the hours of tests for all mock tests, --keep-off for this one");
  out << mock.told;
}

}  // namespace loopwright::command
