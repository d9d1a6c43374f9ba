// Method: the record tells what the pupil does alone; a quiet hour is looked for, and drives of nothing else from a kerb
// near the door. They are proved as any loop, and written as a sheet for the family. When there are none, what stands in
// the way is found by a search that lets in what is nearest to it.
#include <algorithm>
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/home_drives.hpp"
#include "command/hours_place.hpp"
#include "command/lesson.hpp"
#include "command/lesson_words_of_pupil.hpp"
#include "command/loop_search.hpp"
#include "command/places.hpp"
#include "command/print.hpp"
#include "command/quiet_hour.hpp"
#include "command/write_for_pupil.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/card/at_home.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/say/say.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::command {
namespace {

constexpr std::size_t most_nearest = 5;

struct HomeTexts {
  std::string code, book, home, at, minutes, start, quiet, output, paper = "a4";
  AreaTexts area;
  bool large = false;
};

/// What the words say, and the record.
struct HomeJob {
  AreaTexts area;
  book::Pupil pupil;
  std::vector<book::Lesson> lessons;
  std::vector<book::PracticeAtHome> practices;
  WrittenPlace home;
  std::optional<WrittenPlace> at;
  std::optional<WrittenTime> start;
  int minutes = 0;
  std::string quiet, output;
  card::Paper paper = card::Paper::a4;
  card::Print print = card::Print::normal;
};

void add_home_options(Options& app, HomeTexts& texts, const book::AtHomeRules& rules) {
  app.add_option("CODE", texts.code, "the pupil's code")->required();
  add_area(app, texts.area);
  add_book(app, texts.book);
  app.add_option("--home", texts.home, place_help("the door (default: the book's): "));
  app.add_option(
      "--at", texts.at,
      place_help("where to begin and end (default: a kerb near the door, never at it): "));
  app.add_option("--minutes", texts.minutes,
                 "minutes of each drive, " + std::to_string(rules.least_minutes) + " to " +
                     std::to_string(rules.most_minutes) + " (default: " +
                     std::to_string(rules.usual_minutes) + ", or as many as are found)");
  app.add_option("--start", texts.start,
                 "date and time, in quiet hours and by day (default: the next such hour)");
  app.add_option("--quiet", texts.quiet,
                 "hours that are quiet where the pupil lives, as opening hours are written "
                 "(default: \"" +
                     rules.quiet + "\")");
  app.add_option("-o,--output", texts.output,
                 "file to write, .pdf or text (default: text on the screen)");
  app.add_option("--paper", texts.paper, "pdf: a4 or a5 (default: a4)");
  app.add_flag("--large-print", texts.large, "pdf: larger letters");
}

std::string quiet_hours(const std::string& said, const book::AtHomeRules& rules) {
  if (said.empty()) return rules.quiet;
  if (!hours::Timetable(said).readable())
    throw UsageError("--quiet takes hours such as \"Mo-Fr 10:00-11:30; Su 08:00-12:00\", not " +
                     as_given(said));
  return said;
}

card::Paper paper_said(const std::string& name) {
  if (name == "a4") return card::Paper::a4;
  if (name == "a5") return card::Paper::a5;
  throw UsageError("--paper takes a4 or a5, not " + as_given(name));
}

HomeJob job_of(const HomeTexts& texts, const book::Book& book) {
  const book::AtHomeRules rules = book::at_home_rules();
  HomeJob job{.area = texts.area,
              .pupil = book::pupil_of(book, pupil_code("CODE", texts.code)),
              .lessons = {},
              .practices = {},
              .home = {},
              .at = {},
              .start = {},
              .quiet = quiet_hours(texts.quiet, rules),
              .output = texts.output,
              .paper = paper_said(texts.paper),
              .print = texts.large ? card::Print::large : card::Print::normal};
  job.minutes = texts.minutes.empty() ? rules.usual_minutes
                                      : whole_number("--minutes", texts.minutes,
                                                     {rules.least_minutes, rules.most_minutes});
  if (!texts.start.empty()) job.start = time_of("--start", texts.start);
  if (!texts.at.empty()) job.at = read_place("--at", texts.at);
  job.home = read_place("--home", home_said(texts.home, job.pupil));
  job.lessons = book::lessons_of(book, job.pupil.code);
  const Date day = job.start ? job.start->civil.date : today_of("");
  job.practices = book::practices_at_home({job.pupil, scheme_kept(job.pupil), job.lessons, day});
  return job;
}

/// A practice, and what it lacks to be for home.
std::string nearest_words(const book::PracticeAtHome& one) {
  const book::AtHomeRules rules = book::at_home_rules();
  const std::string text = words_of(one.what);
  if (one.why_not == book::NotAtHome::below)
    return text + " (" + (one.level == 0 ? "no level yet" : "level " + std::to_string(one.level)) +
           ", " + std::to_string(rules.least_level) + " is needed)";
  return text + (one.why_not == book::NotAtHome::stepped_in
                     ? " (you stepped in on its last day: once more without)"
                     : " (last on " + spoken_day(one.last) + ", more than " +
                           std::to_string(rules.seen_within_days) + " days ago: once more)");
}

void print_nearest(const HomeJob& job) {
  std::vector<std::string> all;
  for (const book::PracticeAtHome& one : book::nearest_of(job.practices, most_nearest))
    all.push_back(nearest_words(one));
  if (!all.empty()) print_folded(std::cout, 2, "nearest to it: " + listed(all));
}

/// A learner's licence is the first thing that practice at home needs.
void tell_licence(const book::Pupil& pupil) {
  if (pupil.ticks.contains(book::Tick::licence_seen)) return;
  print_folded(std::cout, 0,
               "note: the book has no day on which you saw " + pupil.code +
                   "'s licence; nobody practises at home without one. When you have seen it: "
                   "'loopwright pupil change " +
                   pupil.code + " --licence-seen DATE'");
}

Exit tell_nothing_alone(const HomeJob& job) {
  const book::AtHomeRules rules = book::at_home_rules();
  print_folded(std::cout, 0,
               job.pupil.code + ": nothing for home yet: no practice is at level " +
                   std::to_string(rules.least_level) + " or above, driven within " +
                   std::to_string(rules.seen_within_days) +
                   " days and without stepping in on its last day");
  print_nearest(job);
  return Exit::wish_not_met;
}

Instant start_of(const HomeJob& job, const Ground& ground, const hours::Setting& setting) {
  const hours::Timetable quiet(job.quiet);
  const QuietAsk ask{quiet, wish::slow_minutes(job.minutes)};
  const int days = book::at_home_rules().days_ahead;
  const Instant asked = moment(job.start, ground.info());
  const auto next = next_quiet(ask, asked, days, setting);
  if (!next)
    throw UsageError("no quiet hour by daylight within " + std::to_string(days) +
                     " days holds such a drive (" + quiet.words() + "); say --quiet or --minutes");
  if (!job.start) return *next;
  const std::string why = why_not_quiet(ask, asked, setting);
  if (why.empty()) return asked;
  throw UsageError("--start: " + why + " (" + quiet.words() +
                   "); the next that is: " + spoken_moment(*next));
}

HomeAsk ask_for(const HomeJob& job, const book::Book& book, Ground& ground) {
  Places places(ground.map(), std::cout);
  HomeAsk ask;
  ask.door = places.find(job.home);
  if (job.at) ask.at = places.find(*job.at);
  ask.start = start_of(job, ground, ground.setting_at(ask.door));
  ask.minutes = job.minutes;
  ask.level = book::wish_level(book::level_now(scheme_kept(job.pupil), job.lessons));
  const auto pace = book::learned_pace(job.lessons, book::traces_of(book, job.pupil.code));
  if (pace.lessons >= least_lessons_for_pace) ask.pace = pace.at(ask.start.civil().hour);
  ask.alone = book::alone_of(job.practices);
  ask.streets = book::street_use(book, {ask.start.civil().date});
  keep_quiet(ask.streets, ground.map());
  ask.met = book::met_by(job.lessons);
  return ask;
}

/// Nothing was found: which of the nearest practices would have to be done alone for a drive.
Exit tell_in_the_way(const HomeJob& job, HomeAsk ask, Ground& ground, const HomeDrives& none) {
  if (!none.any_place) {
    print_folded(std::cout, 0,
                 job.pupil.code +
                     ": no kerb near the door was found at which a car may stand and that a corner "
                     "names; name a place with --at");
    return Exit::wish_not_met;
  }
  print_folded(std::cout, 0,
               job.pupil.code + ": no drive near the door holds only what " + job.pupil.code +
                   " does alone (practices: " + std::to_string(ask.alone.size()) + ")");
  const std::vector<book::Practice> alone = ask.alone;
  for (const book::PracticeAtHome& one : job.practices)
    if (one.why_not != book::NotAtHome::no && one.why_not != book::NotAtHome::kept_off)
      ask.alone.push_back(one.what);
  const HomeDrives found = find_home_drives(ground, ask, job.area.area);
  if (found.answer.loops.empty()) {
    print_nearest(job);
    return Exit::wish_not_met;
  }
  std::vector<std::string> missing;
  for (const book::Practice& what : new_on(found.answer.loops.front(), alone))
    for (const book::PracticeAtHome& one : job.practices)
      if (one.what == what) missing.push_back(nearest_words(one));
  print_folded(std::cout, 2,
               "one from " + found.place.street + " would need this as well: " + listed(missing));
  return Exit::wish_not_met;
}

std::vector<card::HomeSheet::Alone> alone_on_sheet(const HomeJob& job) {
  std::vector<const book::PracticeAtHome*> all;
  for (const book::PracticeAtHome& one : job.practices)
    if (one.why_not == book::NotAtHome::no) all.push_back(&one);
  std::stable_sort(all.begin(), all.end(),
                   [](const auto* a, const auto* b) { return a->last > b->last; });
  std::vector<card::HomeSheet::Alone> alone;
  alone.reserve(all.size());
  for (const book::PracticeAtHome* one : all)
    alone.push_back({one->what.kind, one->what.movement, spoken_day(one->last)});
  return alone;
}

card::HomeSheet sheet_of(const HomeJob& job, const HomeDrives& found, const Ground& ground) {
  card::HomeSheet sheet{.code = job.pupil.code,
                        .street = say::spoken_name(found.place.street),
                        .corner = say::spoken_name(found.place.corner),
                        .check = found.place.check,
                        .quiet = hours::Timetable(job.quiet).words(),
                        .alone = alone_on_sheet(job),
                        .laws = {}};
  const Date day = found.answer.wish.start.civil().date;
  for (const book::AtHomeLaw& law : book::laws_at_home(ground.info().region.code, day))
    sheet.laws.push_back({law.words, law.age, law.years});
  return sheet;
}

bool is_pdf(const std::string& output) {
  return std::filesystem::path(output).extension() == ".pdf";
}

/// Which drives there are, in a few lines.
void print_found(const HomeJob& job, const HomeDrives& found, const TiedLoops& tied) {
  print_folded(std::cout, 0,
               job.pupil.code + ", practice at home, " + spoken_moment(found.answer.wish.start) +
                   ", from " + say::spoken_name(found.place.street) + " near " +
                   say::spoken_name(found.place.corner) + ", " + fixed(found.place.off_m, 0) +
                   " m from the door");
  for (const wish::Loop& loop : tied.answer.loops)
    print_folded(std::cout, 2,
                 "drive " + std::to_string(loop.id) + ": " + fixed(loop.seconds.likely / 60, 0) +
                     " min, " + say::say_distance(loop.metres, tied.roads.info().region.unit) +
                     "; passes, all at level " + std::to_string(book::at_home_rules().least_level) +
                     " or above: " + std::to_string(loop.passes.size()));
}

Exit write_sheet(book::Book& book, const HomeJob& job, Ground& ground, const HomeDrives& found) {
  const std::string text = file::write_answer(found.answer);
  const std::int64_t claims = prove_text(ground, text, job.pupil.code);
  const TiedLoops tied = loops_in(ground, text, job.pupil.code);
  const say::Sides sides = job.pupil.my_your ? say::Sides::my_your : say::Sides::left_right;
  std::vector<card::Lesson> drives;
  drives.reserve(tied.answer.loops.size());
  for (const wish::Loop& loop : tied.answer.loops)
    drives.push_back({tied.roads, tied.answer, loop, tied.setting, {nullptr, sides}});
  const card::HomeSheet sheet = sheet_of(job, found, ground);
  if (job.output.empty()) {
    std::cout << card::write_at_home_text(sheet, drives);
    return Exit::done;
  }
  print_found(job, found, tied);
  std::cout << claims << " claims checked, all agree with the map's rules\n";
  write_for_pupil(book, {job.pupil.code, job.lessons.back().number}, job.output,
                  is_pdf(job.output) ? card::write_at_home(sheet, drives, job.paper, job.print)
                                     : card::write_at_home_text(sheet, drives));
  std::cout << job.output << ": written\n";
  return Exit::done;
}

}  // namespace

Exit lesson_at_home(const Arguments& words) {
  const book::AtHomeRules rules = book::at_home_rules();
  Options app{
      "Practice at home: a sheet for who sits beside the pupil there, with short drives that hold "
      "only what the pupil did without help in lessons (level " +
          std::to_string(rules.least_level) +
          " or above), at a quiet hour, from a kerb near the door but not at it. Changes no "
          "lesson.",
      "loopwright lesson at-home"};
  HomeTexts texts;
  add_home_options(app, texts, rules);
  if (!parse(app, words)) return Exit::done;
  if (!texts.output.empty()) need_folder_of(texts.output);
  book::Book book = open_book(texts.book, book::Opening::must_be_there);
  if (!texts.output.empty())
    need_own_file(texts.output, {book.file(), texts.area.area, texts.area.notes, texts.area.terms});
  const HomeJob job = job_of(texts, book);
  tell_licence(job.pupil);
  if (book::alone_of(job.practices).empty()) return tell_nothing_alone(job);
  Ground ground(job.area);
  const HomeAsk ask = ask_for(job, book, ground);
  const HomeDrives found = find_home_drives(ground, ask, job.area.area);
  if (found.answer.loops.empty()) return tell_in_the_way(job, ask, ground, found);
  return write_sheet(book, job, ground, found);
}

}  // namespace loopwright::command
