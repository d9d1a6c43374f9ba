// Method:
//   1. The list is read whole, each pupil and door looked up; clashes are told first, and then nothing is planned.
//   2. The lessons are planned in order, so that each finds in the ledger what those before it drive. One that is planned
//      already for that start is planned anew.
//   3. All of them are read back from the book (day_book.hpp), and printed in order. Without a list the book's are.
#include <algorithm>
#include <cmath>
#include <iostream>
#include <memory>
#include <optional>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/booked.hpp"
#include "command/day_between.hpp"
#include "command/day_book.hpp"
#include "command/day_list.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/next_plan.hpp"
#include "command/note.hpp"
#include "command/places.hpp"
#include "command/plan_job.hpp"
#include "command/to_mind.hpp"
#include "command/write_for_pupil.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/school.hpp"
#include "loopwright/file/day_file.hpp"
#include "loopwright/file/load_text.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

struct DayJob {
  Date day;
  AreaTexts area;
  std::string list, output, sheet;
  std::string of;  ///< a pupil of the instructor whose day it is; empty: whoever is seen
};

/// A line of the list with its pupil.
struct ListedLesson {
  DayLine line;
  book::Pupil pupil;
};

/// One that is planned.
struct KeptLesson {
  std::string code;
  int number = 0;
};

/// The office sees pupils of all instructors, but a list is one instructor's day.
void need_one_instructor(const book::Book& book, const std::vector<ListedLesson>& lessons) {
  if (lessons.empty()) return;
  const auto own = book::codes_of_same_holder(book, lessons.front().pupil.code);
  for (const ListedLesson& one : lessons)
    if (std::ranges::find(own, one.pupil.code) == own.end())
      throw InputError(one.line.from + ": " + one.pupil.code + " is another instructor's than " +
                       lessons.front().pupil.code + "; a list is one instructor's day");
}

std::vector<ListedLesson> lessons_in(const DayJob& job, const book::Book& book) {
  std::vector<ListedLesson> lessons;
  for (DayLine& line :
       read_day(file::load_text(job.list, {"list of a day's lessons", {}}), job.list, job.day)) {
    try {
      book::Pupil pupil = book::pupil_of(book, line.code);
      if (pupil.home.empty()) throw InputError("the book has no home of " + pupil.code);
      lessons.push_back({std::move(line), std::move(pupil)});
    } catch (const InputError& error) {
      throw InputError(line.from + ": " + error.what());
    }
  }
  need_one_instructor(book, lessons);
  return lessons;
}

/// The lesson is planned anew by a line of the list.
bool is_listed(const BookedVisit& one, const std::vector<ListedLesson>& lessons,
               const std::string& zone) {
  return std::any_of(lessons.begin(), lessons.end(), [&](const ListedLesson& listed) {
    return listed.pupil.code == one.code &&
           hours::instant_in(zone, listed.line.start).unix_s == one.visit.start.unix_s;
  });
}

/// Those of the list, and what the book has of that day besides, by their starts.
std::vector<DayVisit> visits_of(const Ground& ground, const book::Book& book, const DayJob& job,
                                const std::vector<ListedLesson>& lessons) {
  Places places(ground.map(), std::cout);
  const std::string& zone = ground.info().zone;
  std::vector<DayVisit> visits;
  for (const ListedLesson& lesson : lessons) {
    const Point door =
        places.find(read_place("the home of " + lesson.pupil.code, lesson.pupil.home));
    const Instant start = hours::instant_in(zone, lesson.line.start);
    visits.push_back(
        {start, over_after(ground, start, lesson.line.minutes), lesson.line.code, door, door});
  }
  if (lessons.empty()) return visits;
  for (BookedVisit& one : booked_on(book, ground, {job.day, lessons.front().pupil.code}))
    if (!is_listed(one, lessons, zone)) visits.push_back(std::move(one.visit));
  std::stable_sort(visits.begin(), visits.end(), [](const DayVisit& a, const DayVisit& b) {
    return a.start.unix_s < b.start.unix_s;
  });
  return visits;
}

/// True when there are some.
bool tell_clashes(const std::vector<DayVisit>& visits, const std::vector<DayGap>& gaps, Date day) {
  const auto clashes = clashes_of(visits, gaps, day);
  for (const std::string& clash : clashes) print_folded(std::cout, 0, "clash: " + clash);
  return !clashes.empty();
}

/// Tells what lies between the lessons; true when some clash.
bool tell_between(Ground& ground, const std::vector<DayVisit>& visits, Date day) {
  const auto gaps = gaps_of(ground, visits);
  if (tell_clashes(visits, gaps, day)) return true;
  for (std::size_t k = 0; k < gaps.size(); ++k)
    print_folded(std::cout, 0,
                 visits[k].code + " to " + visits[k + 1].code + ": " +
                     std::to_string(gaps[k].free_minutes) + " min, " +
                     (gaps[k].drive_minutes ? std::to_string(*gaps[k].drive_minutes) + " to drive"
                                            : "no way was found"));
  return false;
}

/// What to plan as the list has it.
PlanJob plan_job_of(const DayJob& day, const ListedLesson& of, WishWords words,
                    const PupilRecord& record) {
  const LessonLength length =
      fill_from_book(words, of.pupil, record, std::to_string(of.line.minutes));
  return {of.pupil.code,
          day.area,
          length,
          ask_of(std::move(words)),
          {},
          planned_then(record.lessons, start_there(WrittenTime{of.line.start, {}}, day.area.area))};
}

struct JobAndPlan {
  PlanJob job;
  FoundPlan found;
};

JobAndPlan found_for(const DayJob& day, const ListedLesson& of, const book::Book& book) {
  WishWords words;
  for (const std::string& want : of.line.wants) words.fill("want", want, of.line.from);
  const std::string start = write_time({civil_seconds(of.line.start), 0}).substr(0, 16);
  words.fill("start", start, of.line.from);
  if (of.line.wants.empty()) {
    NextPlan next =
        plan_next(book, {of.pupil, day.area, std::move(words), std::to_string(of.line.minutes)});
    print_folded(std::cout, 0, start.substr(11) + " " + of.pupil.code + ", proposed:");
    tell_proposal(std::cout, next);
    return {std::move(next.job), std::move(next.found)};
  }
  tell_given_way(std::cout, of.pupil, wants_said(words));
  JobAndPlan both{plan_job_of(day, of, std::move(words), record_of(book, of.pupil.code)), {}};
  both.found = find_plan(book, both.job, std::cout);
  return both;
}

void tell(const ListedLesson& of, const wish::Answer& answer, int number) {
  std::string text = write_clock(answer.wish.start) + " " + of.pupil.code;
  if (answer.loops.empty()) {
    print_folded(
        std::cout, 0,
        text + ": not planned" + (answer.shortfall ? "; " + answer.shortfall->why : std::string()));
    return;
  }
  const wish::Loop& loop = answer.loops.front();
  std::vector<std::string> met;
  for (const wish::Met& one : loop.met)
    met.push_back(write_want(one.want) + ": " + std::to_string(one.got));
  text += ", lesson " + std::to_string(number) + ": " +
          std::to_string(std::lround(loop.seconds.likely / 60)) + " min driving; asked " +
          listed(met);
  if (answer.shortfall)
    text += "; not all of it is met" +
            (answer.shortfall->why.empty() ? "" : ": " + answer.shortfall->why);
  print_folded(std::cout, 0, text);
}

bool is_kept(const std::vector<KeptLesson>& kept, const DayLesson& one) {
  return std::any_of(kept.begin(), kept.end(), [&](const KeptLesson& lesson) {
    return lesson.code == one.pupil.code && lesson.number == one.lesson.number;
  });
}

/// A file of all whose lessons stand in it: it goes with any of them.
void write_sheet(book::Book& book, const DayJob& job, const std::vector<DayLesson>& lessons) {
  const std::string text = file::write_day_sheet(day_sheet(book, job.area, job.day, lessons));
  if (lessons.empty()) store::write_whole(job.sheet, text);
  for (const DayLesson& one : lessons)
    write_for_pupil(book, {one.pupil.code, one.lesson.number}, job.sheet, text);
}

/// Writes the files that were asked for. only: what the PDF holds; null: all there is.
void write_files(book::Book& book, const DayJob& job, const std::vector<KeptLesson>* only) {
  if (job.sheet.empty() && job.output.empty()) return;
  std::vector<DayLesson> lessons = lessons_on(book, job.area.area, {job.day, job.of});
  if (!job.sheet.empty()) write_sheet(book, job, lessons);
  if (job.output.empty()) return;
  std::erase_if(lessons, [&](const DayLesson& one) {
    return !one.found || (only != nullptr && !is_kept(*only, one));
  });
  if (!lessons.empty()) print_day(book, lessons, job.output);
}

/// Told first of a day as the book has it, also what clashes over midnight.
void tell_kept_clashes(const book::Book& book, const DayJob& job, const std::string& code) {
  Ground ground(job.area);
  std::vector<DayVisit> visits;
  for (BookedVisit& one : booked_on(book, ground, {job.day, code}))
    visits.push_back(std::move(one.visit));
  if (tell_clashes(visits, gaps_of(ground, visits), job.day))
    print_folded(std::cout, 0, std::string(moves_a_lesson));
}

/// The day as the book has it.
Exit run_kept(book::Book& book, const DayJob& job) {
  const auto lessons = lessons_on(book, job.area.area, {job.day, job.of});
  if (!lessons.empty()) tell_kept_clashes(book, job, lessons.front().pupil.code);
  print_day_sheet(std::cout, day_sheet(book, job.area, job.day, lessons));
  const bool has_drive = std::any_of(lessons.begin(), lessons.end(),
                                     [](const DayLesson& one) { return one.found.has_value(); });
  if (!job.output.empty() && !has_drive)
    throw UsageError("-o: no planned lesson of that day can be printed; plan it with a LIST");
  write_files(book, job, nullptr);
  return Exit::done;
}

Exit run_list(book::Book& book, DayJob job) {
  const std::vector<ListedLesson> lessons = lessons_in(job, book);
  job.of = lessons.front().pupil.code;
  {
    Ground ground(job.area);
    const auto visits = visits_of(ground, book, job, lessons);
    if (tell_between(ground, visits, job.day)) {
      if (visits.size() > lessons.size()) print_folded(std::cout, 0, std::string(moves_a_lesson));
      std::cout << "nothing is planned\n";
      return Exit::wish_not_met;
    }
  }
  bool all_met = true;
  std::vector<KeptLesson> kept;
  for (const ListedLesson& lesson : lessons) {
    std::cout << std::flush;  // who waits sees how far it is
    auto [plan, found] = found_for(job, lesson, book);
    const int number = found.answer.loops.empty() ? 0 : keep_plan(book, plan, found);
    tell(lesson, found.answer, number);
    if (number != 0) tell_look_again(std::cout, book, found);
    all_met = all_met && !found.answer.shortfall;
    if (number != 0) kept.push_back({lesson.pupil.code, number});
  }
  write_files(book, job, &kept);
  return all_met ? Exit::done : Exit::wish_not_met;
}

}  // namespace

Exit day(const Arguments& words) {
  Options app{
      "Plans the lessons of a day in order, each knowing which streets the others use. A line of "
      "the list is "
      "'09:00 90 WREN roundabouts': start, minutes, pupil, and what to practise, as --want takes "
      "it; a kind in "
      "the plural is as many as fit, nothing what the book proposes. Without a list it tells the "
      "day as the book has it: times, what is practised, drives between, what isn't sure.",
      "loopwright day"};
  DayJob job;
  std::string date, book_file;
  app.add_option("DATE", date, "the day, 2026-11-28")->required();
  add_area(app, job.area);
  app.add_option("LIST", job.list,
                 "text file of the lessons to plan, a line each (default: none is planned)");
  app.add_option("--of", job.of,
                 "for the office of a school: a pupil of the instructor whose day it is");
  add_book(app, book_file);
  app.add_option("-o,--output", job.output, "one PDF of all of them");
  app.add_option("--sheet", job.sheet, "file to write the day's sheet into, JSON for programs");
  if (!parse(app, words)) return Exit::done;
  job.day = day_of("DATE", date);
  if (!job.of.empty()) {
    if (!job.list.empty())
      throw UsageError("--of: a LIST names the pupils of the instructor whose day it is");
    job.of = pupil_code("--of", job.of);
  }
  for (const std::string& file : {job.output, job.sheet})
    if (!file.empty()) need_folder_of(file);
  book::Book book = open_book(book_file, book::Opening::must_be_there);
  for (const std::string& file : {job.output, job.sheet})
    if (!file.empty())
      need_own_file(file, {book.file(), job.area.area, job.area.notes, job.area.terms, job.list});
  need_two_files(job.sheet, job.output);
  if (!job.of.empty()) job.of = book::pupil_of(book, job.of).code;  // throws when there is none
  return job.list.empty() ? run_kept(book, job) : run_list(book, job);
}

}  // namespace loopwright::command
