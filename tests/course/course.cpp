// usage: loopwright_course AREA PUPILS LESSONS [--quick] [--tell]
// A course of so many lessons for each of so many made-up pupils of the county, a week apart and with gaps: each lesson is
// what the book proposes, planned on the map with one ledger of streets, proved, kept, driven by a made-up learner and
// logged in words. Every lesson is checked (lesson_checks.hpp, streets.hpp). Prints a line a pupil, what fell short, and
// the time of searching; --tell a line a lesson. Exit 3 when a check fails, or when a skill the map can serve at the
// door isn't at 4 once by the end of a course of 40 lessons.
// Method: the weeks go by in order, and in each the lessons by day and hour, so that the ledger is that of the day.
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <iostream>
#include <map>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "command/book_option.hpp"
#include "command/next_plan.hpp"
#include "course/learner.hpp"
#include "course/lesson_checks.hpp"
#include "course/pupils.hpp"
#include "course/streets.hpp"
#include "course/tally.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/log_words.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/road/note.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright::test {
namespace {

namespace cmd = loopwright::command;

constexpr Date first_monday{2026, 1, 5};
constexpr int whole_course = 40, reached_level = 4;
const std::vector<std::string> hours{"09:00", "10:30", "13:00", "16:30"};

struct Course {
  std::string area;
  std::size_t pupils = 3;
  int lessons = 6;
  bool quick = false, tell = false;
};

struct Pupil {
  CoursePupil of;
  book::Pupil kept;
  Learner learner;
  Dice dice;
  std::set<book::Practice> there;  ///< what lessons of an hour from the door can have
  int given = 0, away_weeks = 0, last_day = 0;
  int same_goal = 0;
  std::string goal;
  std::map<std::string_view, int> reached;  ///< skill, by which lesson
};

class Simulation {
 public:
  explicit Simulation(const Course& course)
      : course_(course), book_(book::Book::open(folder_ / "course.book", book::Opening::may_make)) {
    for (std::size_t k = 0; k < course.pupils; ++k) add(course_pupils()[k], k);
  }

  int run() {
    for (int week = 0; !is_over(); ++week)
      for (std::size_t k = 0; k < pupils_.size(); ++k) this_week(pupils_[k], week, k);
    return told();
  }

 private:
  void add(const CoursePupil& of, std::size_t number) {
    book::Pupil kept{.code = std::string(of.code),
                     .scheme = "car-27",
                     .added = first_monday,
                     .home = std::string(of.home)};
    if (!of.avoids.empty()) kept.avoids = {road::parse_kind(of.avoids).value()};
    if (of.has_test) kept.test_day = date_from_days(days_since_epoch(first_monday) + 7 * 44);
    book::add_pupil(book_, kept);
    const LearnerSort sort{
        .talent = of.talent, .home_minutes = of.home_minutes, .seed = number + 1};
    pupils_.push_back({of, kept, Learner(sort), Dice(100 + number), {}, 0, 0, 0, 0, {}, {}});
  }

  /// What lessons of an hour from the door can have, over roads that are fit for who has had the course.
  void look_around(Pupil& pupil) const {
    cmd::NextAsk ask{pupil.kept, {course_.area, "", ""}, {}};
    ask.words.fill("start", road::day_text(first_monday) + "T10:30", "the course");
    pupil.there = cmd::practices_for(ask, cmd::record_of(book_, pupil.kept.code)).easy;
  }

  [[nodiscard]] bool is_over() const {
    for (const Pupil& pupil : pupils_)
      if (pupil.given < course_.lessons) return false;
    return true;
  }

  void this_week(Pupil& pupil, int week, std::size_t number) {
    constexpr double skips = 0.06, falls_ill = 0.03;
    if (pupil.given >= course_.lessons) return;
    if (pupil.away_weeks > 0) {
      --pupil.away_weeks;
      return;
    }
    if (pupil.dice.share() < falls_ill) pupil.away_weeks = 3;
    if (pupil.dice.share() < skips) return;
    constexpr int days_a_week = 5;
    const int day = 7 * week + static_cast<int>(number) % days_a_week;
    const std::string& hour = hours[number / days_a_week % hours.size()];
    give(pupil, date_from_days(days_since_epoch(first_monday) + day), hour);
  }

  void give(Pupil& pupil, Date day, const std::string& hour) {
    cmd::NextAsk ask{pupil.kept, {course_.area, "", ""}, {}};
    ask.words.fill("start", road::day_text(day) + "T" + hour, "the course");
    if (course_.quick) ask.effort = find::Effort::quick;
    const cmd::PupilRecord record = cmd::record_of(book_, pupil.kept.code);
    const auto before = std::chrono::steady_clock::now();
    const cmd::NextPlan next = cmd::plan_next(book_, ask);
    const double took =
        std::chrono::duration<double>(std::chrono::steady_clock::now() - before).count();
    ++pupil.given;
    count(pupil, next, took);
    if (course_.tell) tell(pupil, next, day, took);
    if (next.found.answer.loops.empty()) {
      fault(pupil,
            "nothing is planned: " + next.found.answer.shortfall.value_or(wish::Shortfall{}).why);
      return;
    }
    note_waits(pupil, record.lessons, day);
    check(pupil, record, next, hour);
    drive(pupil, next, day, hour);
  }

  void fault(const Pupil& pupil, const std::string& what) {
    faults_.push_back(pupil.kept.code + ", lesson " + std::to_string(pupil.given) + ": " + what);
  }

  void count(Pupil& pupil, const cmd::NextPlan& next, double took_s) {
    tally_.add(next, took_s);
    pupil.same_goal = pupil.goal == next.proposal.goal ? pupil.same_goal + 1 : 1;
    pupil.goal = next.proposal.goal;
    constexpr int most_same = 6;
    if (pupil.same_goal == most_same) fault(pupil, "the same goal six times: " + pupil.goal);
  }

  void check(Pupil& pupil, const cmd::PupilRecord& record, const cmd::NextPlan& next,
             const std::string& hour) {
    const bool knows_pace = record.pace.lessons >= cmd::least_lessons_for_pace;
    const double pace = knows_pace ? record.pace.at(std::atoi(hour.c_str())) : 1;
    for (const std::string& what : faults_of({pupil.kept, record.lessons, next, pace}))
      fault(pupil, what);
  }

  void drive(Pupil& pupil, const cmd::NextPlan& next, Date day, const std::string& hour) {
    const int number = cmd::keep_plan(book_, next.job, next.found);
    const wish::Answer& answer = next.found.answer;
    const DrivenLoop driven{next.found.ground->noted().roads, answer.wish, answer.loops.front()};
    for (const std::string& what : streets_.add(driven, day)) fault(pupil, what);
    constexpr double not_driven = 0.03;
    if (pupil.dice.share() < not_driven) {
      book::drop_lesson(book_, {pupil.kept.code, number});
      streets_.take_back(driven, day);
      tally_.add_not_driven();
      return;
    }
    const int today = static_cast<int>(days_since_epoch(day));
    if (pupil.last_day != 0) pupil.learner.rest(today - pupil.last_day);
    pupil.last_day = today;
    const book::Lesson lesson = book::lesson_of(book_, pupil.kept.code, number);
    const std::string line =
        pupil.learner.drive(lesson.plan.passes, lesson.plan.likely_s / 60 / answer.wish.pace) +
        conditions(pupil, day, hour);
    const book::Scheme& scheme = cmd::scheme_kept(pupil.kept);
    book::log_lesson(book_, {pupil.kept.code, number},
                     book::filled(lesson.plan.passes, book::read_log(line), scheme, day));
    note_reached(pupil, scheme);
  }

  static std::string conditions(Pupil& pupil, Date day, const std::string& hour) {
    const bool is_winter = day.month <= 1 || day.month >= 11;
    const std::string light = hour == "16:30" && is_winter ? "dark" : "day";
    const std::string weather = pupil.dice.share() < 0.3 ? "dull-wet" : "bright-dry";
    const std::string traffic = hour == "16:30" || hour == "09:00" ? "heavy" : "usual";
    return "; light " + light + "; weather " + weather + "; traffic " + traffic;
  }

  void note_reached(Pupil& pupil, const book::Scheme& scheme) {
    const auto lessons = book::lessons_of(book_, pupil.kept.code);
    for (const book::SkillLine& line : book::skill_lines(scheme, lessons))
      if (line.level() >= reached_level) pupil.reached.emplace(line.skill->code, pupil.given);
  }

  void tell(const Pupil& pupil, const cmd::NextPlan& next, Date day, double took) const {
    std::printf("%s %2d %s %4.1f s, level %d: %s", pupil.kept.code.c_str(), pupil.given,
                road::day_text(day).c_str(), took, next.proposal.level.value_or(0),
                next.proposal.goal.c_str());
    if (!next.found.answer.loops.empty())
      for (const wish::Met& met : next.found.answer.loops.front().met)
        std::printf(" | %s: %d", write_want(met.want).c_str(), met.got);
    for (const std::string& over : next.passed_over) std::printf(" | over %s", over.c_str());
    std::printf("\n");
    std::fflush(stdout);
  }

  /// How long a skill that was begun isn't met, beside the days it keeps.
  void note_waits(const Pupil& pupil, std::span<const book::Lesson> lessons, Date day) {
    for (const book::SkillLine& line : book::skill_lines(cmd::scheme_kept(pupil.kept), lessons)) {
      if (line.seen.empty() || line.skill->kinds.empty()) continue;
      const auto days = days_since_epoch(day) - days_since_epoch(line.seen.back().day);
      const double times = static_cast<double>(days) / line.skill->stale_after_days;
      if (times > longest_wait_.times)
        longest_wait_ = {pupil.kept.code, std::string(line.skill->name), times};
    }
  }

  /// Skills that some kind there practises, motorways aside: by choice alone.
  [[nodiscard]] std::vector<const book::Skill*> served(const Pupil& pupil) const {
    std::vector<const book::Skill*> skills;
    for (const book::Skill& skill : cmd::scheme_kept(pupil.kept).skills)
      for (const road::Kind kind : skill.kinds)
        if (kind != road::Kind::motorway && pupil.there.contains({kind, road::Movement::none}) &&
            (skills.empty() || skills.back() != &skill))
          skills.push_back(&skill);
    return skills;
  }

  void tell_pupil(const Pupil& pupil) {
    const auto skills = served(pupil);
    std::vector<int> when;
    std::string open;
    for (const book::Skill* skill : skills) {
      const auto reached = pupil.reached.find(skill->code);
      if (reached != pupil.reached.end())
        when.push_back(reached->second);
      else
        open.append(" ").append(skill->code);
    }
    std::sort(when.begin(), when.end());
    std::printf("%-8s talent %.2f, %-17s: %2zu of %2zu skills at 4", pupil.kept.code.c_str(),
                pupil.of.talent, pupil.kept.home.c_str(), when.size(), skills.size());
    if (!when.empty())
      std::printf(", half of them by lesson %2d, the last by %2d", when[(when.size() - 1) / 2],
                  when.back());
    std::printf("%s%s\n", open.empty() ? "" : "; open:", open.c_str());
    if (course_.lessons >= whole_course && !open.empty()) fault(pupil, "not reached:" + open);
  }

  int told() {
    for (Pupil& pupil : pupils_) {
      look_around(pupil);
      tell_pupil(pupil);
    }
    if (!longest_wait_.skill.empty())
      std::printf("  the skill that waited longest: %s of %s, %.1f times the days it keeps\n",
                  longest_wait_.skill.c_str(), longest_wait_.pupil.c_str(), longest_wait_.times);
    tally_.tell();
    std::printf(
        "  a quiet street at most %d times a day and %d in thirty days, doors' own counted\n",
        streets_.most_a_day(), streets_.most_a_month());
    for (const std::string& what : faults_) std::printf("FAULT %s\n", what.c_str());
    return faults_.empty() ? 0 : 3;
  }

  const Course& course_;
  ScratchFolder folder_;
  book::Book book_;
  std::vector<Pupil> pupils_;
  StreetTally streets_;
  CourseTally tally_;
  struct Wait {
    std::string pupil, skill;
    double times = 0;
  } longest_wait_;
  std::vector<std::string> faults_;
};

}  // namespace
}  // namespace loopwright::test

int main(int argc, char** argv) {
  loopwright::test::Course course;
  if (argc < 4) {
    std::cerr << "usage: loopwright_course AREA PUPILS LESSONS [--quick] [--tell]\n";
    return 2;
  }
  course.area = argv[1];
  course.pupils = std::min<std::size_t>(std::strtoul(argv[2], nullptr, 10),
                                        loopwright::test::course_pupils().size());
  course.lessons = std::atoi(argv[3]);
  for (int k = 4; k < argc; ++k) {
    course.quick = course.quick || std::string(argv[k]) == "--quick";
    course.tell = course.tell || std::string(argv[k]) == "--tell";
  }
  try {
    return loopwright::test::Simulation(course).run();
  } catch (const loopwright::Error& error) {
    std::cerr << "loopwright_course: " << error.what() << '\n';
    return 1;
  }
}
