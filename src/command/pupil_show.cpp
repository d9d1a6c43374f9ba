// Method: what is kept of a pupil, a line each; then skills by group with their dated levels, the lessons' hours and
// the roads driven, and the goals that are open.
#include <cmath>
#include <iostream>
#include <span>

#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/lesson_words_of_pupil.hpp"
#include "command/mock_words.hpp"
#include "command/print.hpp"
#include "command/progress_words.hpp"
#include "command/pupil.hpp"
#include "command/write_for_pupil.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/card/progress.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

constexpr std::size_t most_seen = 4;  // of a skill's dated levels, the latest

void print_facts(const book::Pupil& pupil) {
  std::cout << pupil.code << ", in the book since " << road::day_text(pupil.added) << '\n';
  if (!pupil.home.empty()) print_folded(std::cout, 2, "home: " + pupil.home);
  for (const book::Tick tick : book::all_ticks) {
    const auto day = pupil.ticks.find(tick);
    std::cout << "  " << book::name(tick) << ": "
              << (day == pupil.ticks.end() ? "not yet" : road::day_text(day->second)) << '\n';
  }
  std::cout << "  test: " << (pupil.test_day ? road::day_text(*pupil.test_day) : "none booked")
            << '\n';
  std::vector<std::string> avoids;
  for (const road::Kind kind : pupil.avoids) avoids.emplace_back(road::name(kind));
  if (!avoids.empty()) print_folded(std::cout, 2, "kept off: " + listed(avoids));
  if (pupil.my_your) std::cout << "  sides: my side, your side\n";
}

/// "3 prompted, 2026-11-28; before: 2 on 2026-11-21". Rules: it has some.
std::string levels_of(const book::Scheme& scheme, const book::SkillLine& line) {
  const book::Seen& now = line.seen.back();
  std::string text = std::to_string(now.level) + " " + std::string(scheme.level_name(now.level)) +
                     ", " + road::day_text(now.day);
  const std::size_t first = line.seen.size() > most_seen ? line.seen.size() - most_seen : 0;
  const char* before = "; before: ";
  for (std::size_t k = first; k + 1 < line.seen.size(); ++k) {
    text += before + std::to_string(line.seen[k].level) + " on " + road::day_text(line.seen[k].day);
    before = ", ";
  }
  return text;
}

/// The skills of one group: those begun a line each, the others together.
void print_group(const book::Scheme& scheme, std::span<const book::SkillLine> lines) {
  std::cout << "  " << lines.front().skill->group << '\n';
  std::vector<std::string> not_yet;
  for (const book::SkillLine& line : lines) {
    if (line.seen.empty()) {
      not_yet.emplace_back(line.skill->name);
      continue;
    }
    print_folded(std::cout, 4, std::string(line.skill->name) + ": " + levels_of(scheme, line));
  }
  if (!not_yet.empty()) print_folded(std::cout, 4, "not yet: " + listed(not_yet));
}

void print_skills(const book::Scheme& scheme, const std::vector<book::Lesson>& lessons) {
  const auto lines = book::skill_lines(scheme, lessons);
  for (std::size_t first = 0, end = 0; first < lines.size(); first = end) {
    while (end < lines.size() && lines[end].skill->group == lines[first].skill->group) ++end;
    print_group(scheme, std::span(lines).subspan(first, end - first));
  }
}

void print_hours(const std::vector<book::Lesson>& lessons) {
  const book::Hours hours = book::hours_of(lessons);
  std::cout << "  lessons driven: " << hours.lessons << ", hours "
            << fixed(hours.lesson_minutes / 60.0, 1) << "; practised at home: hours "
            << fixed(hours.private_minutes / 60.0, 1) << '\n';
  for (const book::Exposure& on : book::exposure_of(lessons)) {
    std::vector<std::string> in;
    for (const std::string& one : {on.conditions.light, on.conditions.weather})
      if (!one.empty()) in.push_back(one);
    if (!on.conditions.traffic.empty()) in.push_back("traffic " + on.conditions.traffic);
    print_folded(std::cout, 4,
                 on.road + ": " + fixed(on.minutes, 0) + " min" +
                     (in.empty() ? "" : " (" + listed(in) + ")"));
  }
}

/// As context: what marks came to, with the day.
void print_mocks(const std::vector<book::Lesson>& lessons) {
  for (const book::Lesson& lesson : lessons)
    if (lesson.log.mock)
      print_folded(std::cout, 2,
                   "mock test, " + road::day_text(lesson.log.mock->day) + ": " +
                       mock_words(lesson.log) + "; it says nothing about a real one");
}

/// How long drives take beside the usual learner's, where enough is known.
void print_pace(const book::PaceLearned& pace) {
  if (pace.lessons < least_lessons_for_pace) return;
  std::string line = "drives take " + fixed(pace.factor, 2) +
                     " times as long as the usual learner's of the same level (lessons: " +
                     std::to_string(pace.lessons) + ")";
  std::vector<std::string> more;
  for (const book::HourPace& one : pace.hours)
    more.push_back("from " + std::to_string(one.hour) + ":00 " + fixed(pace.at(one.hour), 2));
  for (const book::ControlPace& one : pace.controls)
    if (std::abs(one.factor - pace.factor) >= 0.1)
      more.push_back((one.control == road::Control::none ? "along roads"
                                                         : std::string(road::name(one.control))) +
                     " " + fixed(one.factor, 2));
  if (!more.empty()) line += "; " + listed(more);
  print_folded(std::cout, 2, line);
}

}  // namespace

Exit pupil_show(const Arguments& words) {
  Options app{"Shows what one pupil's lessons tell; as a page for the pupil with -o.",
              "loopwright pupil show"};
  std::string code, book_file, output, today;
  bool faults = false;
  app.add_option("CODE", code, "the pupil's code")->required();
  add_book(app, book_file);
  app.add_option("-o,--output", output, "a page for the pupil, PDF");
  app.add_flag("--faults", faults,
               "on the page, faults an hour as well; after ten hours of lessons");
  app.add_option("--today", today, "date, 2026-11-28 (default: today)");
  if (!parse(app, words)) return Exit::done;
  if (faults && output.empty())
    throw UsageError("--faults is for the page: say with -o where to write it");
  if (!output.empty()) need_folder_of(output);
  book::Book book = open_book(book_file, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", code));
  const auto lessons = book::lessons_of(book, pupil.code);
  if (!output.empty()) {
    need_own_file(output, {book.file()});
    if (lessons.empty())
      throw UsageError("-o: " + pupil.code + " has no lessons yet, so there is nothing to show");
    const auto told = faults ? FaultsTold::told : FaultsTold::left_out;
    const std::string page =
        card::write_progress(progress_sheet(pupil, lessons, today_of(today), told));
    write_for_pupil(book, {pupil.code, lessons.back().number}, output, page);
    std::cout << output << ": written\n";
    if (faults) std::cout << faults_left_out(lessons);
    return Exit::done;
  }
  print_facts(pupil);
  print_hours(lessons);
  print_pace(book::learned_pace(lessons, book::traces_of(book, pupil.code)));
  print_skills(scheme_kept(pupil), lessons);
  print_mocks(lessons);
  for (const std::string& goal : book::open_goals(lessons))
    print_folded(std::cout, 2, "goal: " + goal);
  return Exit::done;
}

}  // namespace loopwright::command
