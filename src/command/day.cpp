// Method:
//   1. The list is read whole, each pupil and door looked up; clashes are told first, and then nothing is planned.
//   2. The lessons are planned in order, so that each finds in the ledger what those before it drive. One that is planned
//      already for that start is planned anew.
//   3. All of them are printed as one PDF in order, which belongs to every pupil in it.
#include <cmath>
#include <iostream>
#include <memory>
#include <optional>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/day_between.hpp"
#include "command/day_list.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/ground_marks.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/next_plan.hpp"
#include "command/note.hpp"
#include "command/places.hpp"
#include "command/plan_job.hpp"
#include "command/write_for_pupil.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/card/pack.hpp"
#include "loopwright/file/load_text.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

struct DayJob {
  Date day;
  AreaTexts area;
  std::string list, output;
};

/// A line of the list with its pupil.
struct DayLesson {
  DayLine line;
  book::Pupil pupil;
};

/// One that is planned.
struct DayPlan {
  book::Pupil pupil;
  int number = 0;
  FoundPlan found;
};

std::vector<DayLesson> lessons_in(const DayJob& job, const book::Book& book) {
  std::vector<DayLesson> lessons;
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
  return lessons;
}

/// Tells what lies between the lessons; true when some clash.
bool tell_clashes(Ground& ground, const std::vector<DayLesson>& lessons) {
  Places places(ground.map(), std::cout);
  std::vector<DayLine> lines;
  std::vector<Point> doors;
  for (const DayLesson& lesson : lessons) {
    lines.push_back(lesson.line);
    doors.push_back(places.find(read_place("the home of " + lesson.pupil.code, lesson.pupil.home)));
  }
  bool clash = false;
  const auto gaps = gaps_of(ground, lines, doors);
  for (std::size_t k = 0; k < gaps.size(); ++k)
    if (gaps[k].is_clash()) {
      print_folded(std::cout, 0, "clash: " + clash_words(lines[k], lines[k + 1], gaps[k]));
      clash = true;
    }
  if (clash) return true;
  for (std::size_t k = 0; k < gaps.size(); ++k)
    print_folded(
        std::cout, 0,
        lines[k].code + " to " + lines[k + 1].code + ": " + std::to_string(gaps[k].free_minutes) +
            " min, " +
            (gaps[k].drive_minutes < 0 ? "no way was found"
                                       : std::to_string(gaps[k].drive_minutes) + " to drive"));
  return false;
}

/// What to plan as the list has it.
PlanJob plan_job_of(const DayJob& day, const DayLesson& of, WishWords words,
                    const PupilRecord& record) {
  const LessonLength length =
      fill_from_book(words, of.pupil, record, std::to_string(of.line.minutes));
  return {of.pupil.code,
          day.area,
          length,
          ask_of(std::move(words)),
          {},
          planned_then(record.lessons, of.line.start)};
}

struct JobAndPlan {
  PlanJob job;
  FoundPlan found;
};

JobAndPlan found_for(const DayJob& day, const DayLesson& of, const book::Book& book) {
  WishWords words;
  for (const std::string& want : of.line.wants) words.fill("want", want, of.line.from);
  const std::string start = write_time({civil_seconds(of.line.start), 0}).substr(0, 16);
  words.fill("start", start, of.line.from);
  if (of.line.wants.empty()) {
    NextPlan next =
        plan_next(book, {of.pupil, day.area, std::move(words), std::to_string(of.line.minutes)});
    tell_proposal(std::cout, next);
    return {std::move(next.job), std::move(next.found)};
  }
  JobAndPlan both{plan_job_of(day, of, std::move(words), record_of(book, of.pupil.code)), {}};
  both.found = find_plan(book, both.job, std::cout);
  return both;
}

void tell(const DayLesson& of, const wish::Answer& answer, int number) {
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
          std::to_string(std::lround(loop.seconds.likely / 60)) +
          " min driving; asked " + listed(met);
  if (answer.shortfall)
    text += "; not all of it is met" +
            (answer.shortfall->why.empty() ? "" : ": " + answer.shortfall->why);
  print_folded(std::cout, 0, text);
}

/// What the sheet says of what is to be looked at on the ground.
std::vector<wish::GroundMark> marks_of(const book::Book& book, const DayPlan& plan) {
  const auto kept = book::lesson_of(book, plan.pupil.code, plan.number);
  return ground_marks(ground_items_of(plan.found),
                      {kept.plan.to_check, book::seen_facts(book), kept.plan.start.civil().date});
}

void print_day(book::Book& book, const DayJob& job, const std::vector<DayPlan>& plans) {
  std::vector<TiedLoops> tied;
  tied.reserve(plans.size());
  std::vector<card::DayLesson> pages;
  std::vector<std::vector<wish::GroundMark>> marks;
  marks.reserve(plans.size());
  for (const DayPlan& plan : plans) {
    tied.push_back(loops_in(*plan.found.ground, plan.found.text, plan.pupil.code));
    marks.push_back(marks_of(book, plan));
    card::PackOptions options;
    options.pupil = plan.pupil.code;
    const TiedLoops& of = tied.back();
    pages.push_back({{of.roads,
                      of.answer,
                      of.answer.loops.front(),
                      of.setting,
                      {nullptr, plan.pupil.my_your ? say::Sides::my_your : say::Sides::left_right},
                      &marks.back()},
                     options});
  }
  const std::string pdf = card::write_day(pages);
  for (const DayPlan& plan : plans)
    write_for_pupil(book, {plan.pupil.code, plan.number}, job.output, pdf);
  std::cout << job.output << ": written\n";
}

Exit run(book::Book& book, const DayJob& job) {
  const std::vector<DayLesson> lessons = lessons_in(job, book);
  {
    Ground ground(job.area);
    if (tell_clashes(ground, lessons)) {
      std::cout << "nothing is planned\n";
      return Exit::wish_not_met;
    }
  }
  bool all_met = true;
  std::vector<DayPlan> plans;
  for (const DayLesson& lesson : lessons) {
    auto [plan, found] = found_for(job, lesson, book);
    const int number = found.answer.loops.empty() ? 0 : keep_plan(book, plan, found);
    tell(lesson, found.answer, number);
    if (number != 0) tell_look_again(std::cout, book, found);
    all_met = all_met && !found.answer.shortfall;
    if (number != 0) plans.push_back({lesson.pupil, number, std::move(found)});
  }
  if (!job.output.empty() && !plans.empty()) print_day(book, job, plans);
  return all_met ? Exit::done : Exit::wish_not_met;
}

}  // namespace

Exit day(const Arguments& words) {
  Options app{
      "Plans the lessons of a day in order, each knowing which streets the others use. A line of "
      "the list is "
      "'09:00 90 WREN roundabouts': start, minutes, pupil, and what to practise, as --want takes "
      "it; a kind in "
      "the plural is as many as fit, nothing what the book proposes.",
      "loopwright day"};
  DayJob job;
  std::string date, book_file;
  app.add_option("DATE", date, "the day, 2026-11-28")->required();
  add_area(app, job.area);
  app.add_option("LIST", job.list, "text file of the lessons, a line each")->required();
  add_book(app, book_file);
  app.add_option("-o,--output", job.output, "one PDF of all of them");
  if (!parse(app, words)) return Exit::done;
  job.day = day_of("DATE", date);
  if (!job.output.empty()) need_folder_of(job.output);
  book::Book book = open_book(book_file, book::Opening::must_be_there);
  if (!job.output.empty())
    need_own_file(job.output, {book.file(), job.area.area, job.area.notes, job.list});
  return run(book, job);
}

}  // namespace loopwright::command
