// Method:
//   1. The recording says when; the lesson is the one planned about then, or a new one in the area that is named.
//   2. Of the recording only the lesson's part counts; it is matched to the roads, and compared with the plan.
//   3. What was driven is laid over what was planned, what is said of it over that, and all is written in one piece.
#include <cmath>
#include <iostream>
#include <optional>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/hours_place.hpp"
#include "command/lesson.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/tell_logged.hpp"
#include "command/trace_words.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/drive.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/log_words.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/record_mark.hpp"
#include "loopwright/book/seen.hpp"
#include "loopwright/book/traced.hpp"
#include "loopwright/file/load_text.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::command {
namespace {

/// A lesson may begin early and end late by so much, and its recording still be its own. Common practice, no source.
constexpr int early_minutes = 20, late_minutes = 40;

struct TraceJob {
  LessonTexts lesson;
  AreaTexts area;
  std::string file, line, from, to;
  bool keep = false, speeds = false, dry = false, yes = false;
};

bool parse_trace(const Arguments& words, TraceJob& job) {
  Options app{
      "Reads a recorded drive (GPX) and tells which of the planned passes were driven, where the "
      "drive left the plan, and where it stopped; then logs the lesson. The recording isn't kept.",
      "loopwright lesson trace"};
  app.add_option("CODE", job.lesson.code, "the pupil's code")->required();
  app.add_option("FILE", job.file, "GPX file of the recorded drive, with times")->required();
  app.add_option("LINE", job.line, "what is said of it besides, as 'lesson log' takes it");
  add_book(app, job.lesson.book);
  app.add_option("--lesson", job.lesson.lesson,
                 "number of the lesson (default: the one planned for that time)");
  app.add_option("--area", job.area.area,
                 "area file: when the lesson wasn't planned here, or its area isn't where it was");
  app.add_option("--notes", job.area.notes,
                 "with --area: your notes on its roads; of a lesson planned on that very file its "
                 "own notes count");
  app.add_option("--from", job.from, "only from this time on: 15:05, or a date and time");
  app.add_option("--to", job.to, "only up to this time");
  app.add_flag("--speeds", job.speeds, "tell speeds beside the limits, for you alone");
  app.add_flag("--keep", job.keep, "keep the recording in the book: it tells where the pupil was");
  app.add_flag("--only-tell", job.dry, "write nothing");
  app.add_flag("--yes", job.yes, still_to_come_help);
  if (!parse(app, words)) return false;
  if (!job.area.notes.empty() && job.area.area.empty())
    throw UsageError("--notes goes with --area: a planned lesson has its own notes");
  return true;
}

Instant instant_of(double unix_s, const std::string& zone) {
  return hours::with_offset_of(zone, std::llround(unix_s));
}

/// How far a recording lies from the hours of a lesson, seconds; 0 when they meet.
double away_from(const book::Lesson& lesson, const trace::Recording& recording) {
  const auto start_s = static_cast<double>(lesson.plan.start.unix_s);
  const double first_s = start_s - 60.0 * early_minutes;
  const double last_s = start_s + 60.0 * (lesson.plan.length_minutes + late_minutes);
  return std::max(
      {recording.fixes.front().unix_s - last_s, first_s - recording.fixes.back().unix_s, 0.0});
}

/// The lesson that was recorded; none: it isn't in the book.
const book::Lesson* lesson_recorded(const std::vector<book::Lesson>& lessons, const TraceJob& job,
                                    const std::string& code, const trace::Recording& recording) {
  if (const auto number = lesson_number(job.lesson)) return &lesson_meant(lessons, code, number);
  const book::Lesson* best = nullptr;
  const auto from_start = [&](const book::Lesson& lesson) {
    return std::abs(static_cast<double>(lesson.plan.start.unix_s) - recording.fixes.front().unix_s);
  };
  for (const book::Lesson& lesson : lessons)
    if (lesson.state != book::LessonState::not_driven && away_from(lesson, recording) == 0 &&
        (best == nullptr || from_start(lesson) < from_start(*best)))
      best = &lesson;
  if (best == nullptr && job.area.area.empty())
    throw UsageError(
        job.file + ": no lesson of " + code + " is planned about " +
        spoken_moment(instant_of(recording.fixes.front().unix_s, zone_of_lessons(lessons, ""))) +
        "; name one with --lesson, or the area of one that wasn't planned with --area");
  return best;
}

/// Throws UsageError for what can't be said of that lesson; null: of one that isn't in the book.
void need_meant(const std::string& line, const std::vector<book::Lesson>& lessons,
                const book::Lesson* lesson) {
  book::need_open_goals(book::read_log(line),
                        book::open_goals(lessons, lesson == nullptr ? 0 : lesson->number));
}

/// "15:05" on the day of the recording.
double moment_of(const std::string& option, const std::string& text, const Instant& recorded,
                 const std::string& zone) {
  const std::string on_the_day = write_time(recorded).substr(0, 11) + text;
  const bool clock = text.size() == 5 && read_time(on_the_day);
  return static_cast<double>(moment(time_of(option, clock ? on_the_day : text), zone).unix_s);
}

/// The lesson's part of the recording. Throws when nothing is left.
std::vector<trace::Fix> part_of(const trace::Recording& recording, const TraceJob& job,
                                const book::Lesson* lesson, const std::string& zone) {
  double from_s = recording.fixes.front().unix_s, to_s = recording.fixes.back().unix_s;
  const Instant recorded = instant_of(from_s, zone);
  if (lesson != nullptr && away_from(*lesson, recording) == 0) {
    const auto start_s = static_cast<double>(lesson->plan.start.unix_s);
    from_s = std::max(from_s, start_s - 60.0 * early_minutes);
    to_s = std::min(to_s, start_s + 60.0 * (lesson->plan.length_minutes + late_minutes));
  }
  if (!job.from.empty()) from_s = moment_of("--from", job.from, recorded, zone);
  if (!job.to.empty()) to_s = moment_of("--to", job.to, recorded, zone);
  std::vector<trace::Fix> part;
  for (const trace::Fix& fix : recording.fixes)
    if (fix.unix_s >= from_s && fix.unix_s <= to_s) part.push_back(fix);
  if (part.size() < 2)
    throw UsageError(job.file + ": holds " + std::to_string(part.size()) + " points between " +
                     write_clock(instant_of(from_s, zone)) + " and " +
                     write_clock(instant_of(to_s, zone)) + "; give other times, or another file");
  return part;
}

/// The plan as it was driven by: none when its loop file isn't kept any more, or is of another area.
std::optional<TiedLoops> plan_of(Ground& ground, const book::Lesson* lesson,
                                 const std::string& name) {
  if (lesson == nullptr || lesson->plan.loop_file.empty()) return std::nullopt;
  try {
    return loops_in(ground, lesson->plan.loop_file, name);
  } catch (const InputError& error) {
    std::cerr << "loopwright: " << error.what() << "; the drive isn't compared with its plan\n";
    return std::nullopt;
  }
}

std::vector<StretchId> stretches_of(const std::optional<TiedLoops>& plan) {
  std::vector<StretchId> stretches;
  if (!plan || plan->answer.loops.empty()) return stretches;
  for (const wish::LoopStretch& row : plan->answer.loops.front().stretches)
    stretches.push_back(row.stretch);
  return stretches;
}

book::Traced traced_of(const TraceJob& job, const TracedDrive& drive, const std::string& text) {
  book::Traced traced;
  traced.start = instant_of(drive.lesson.from_s, drive.roads.info().zone);
  traced.seconds = drive.lesson.to_s - drive.lesson.from_s;
  for (const trace::LessonStop& one : drive.lesson.stops)
    if (!one.waiting) traced.standing_s += one.stop.to_s - one.stop.from_s;
  traced.metres = drive.lesson.metres;
  if (job.keep) traced.recording = text;
  for (const trace::ControlTime& time : drive.lesson.times)
    traced.times.push_back({time.control, time.count, time.expected_s, time.took_s});
  return traced;
}

/// What is known of the lesson, with what was driven and said laid over it.
book::TracedLesson logged(const TraceJob& job, const TracedDrive& drive, const book::Pupil& pupil,
                          const book::Lesson* lesson) {
  const road::AreaInfo& info = drive.roads.info();
  const Instant start = instant_of(drive.lesson.from_s, info.zone);
  book::TracedLesson all;
  if (lesson != nullptr)
    all.plan = lesson->plan;
  else
    all.plan.start = start, all.plan.area = absolute_path(job.area.area);
  const int minutes = static_cast<int>(std::lround((drive.lesson.to_s - drive.lesson.from_s) / 60));
  if (lesson == nullptr) all.plan.length_minutes = std::max(minutes, 10);
  const bool again = lesson != nullptr && lesson->state == book::LessonState::driven;
  const auto passes = book::traced_passes(again ? lesson->log.passes : all.plan.passes,
                                          book::passes_of(drive.lesson.loop));
  if (again && job.line.empty()) {
    all.log = lesson->log;
    all.log.passes = passes;
  } else {
    const book::Said said = job.line.empty() ? book::Said{} : book::read_log(job.line);
    if (said.not_driven) throw UsageError("'not driven': the recording says that it was");
    if (lesson != nullptr) {
      book::need_mock_meant(said, lesson->plan);
      book::need_same_sheet(said, lesson->plan);
    }
    all.log = book::filled(passes, said, scheme_kept(pupil), start.civil().date);
    all.log.seen = book::facts_seen(said.seen, all.plan.to_check, start.civil().date);
  }
  if (!all.log.minutes) all.log.minutes = std::max(minutes, 1);
  wish::Wish doors;
  doors.home = drive.match.runs.front().line.front();
  doors.end = drive.match.runs.back().line.back();
  all.streets = book::streets_of(drive.roads, doors, drive.lesson.loop);
  all.plan.roads = book::roads_of(drive.roads, drive.lesson.loop);
  all.plan.limits = book::limits_of(drive.lesson.loop);
  return all;
}

pace::Pace usual_pace(const road::Roads& roads, const book::Pupil& pupil,
                      const std::vector<book::Lesson>& lessons, double unix_s) {
  const auto level = book::level_now(scheme_kept(pupil), lessons);
  return {roads, {.level = book::wish_level(level)}, instant_of(unix_s, roads.info().zone)};
}

}  // namespace

Exit lesson_trace(const Arguments& words) {
  TraceJob job;
  if (!parse_trace(words, job)) return Exit::done;
  const std::string text = file::load_text(job.file, {"recorded drive", {}});
  const trace::Recording recording = trace::read_gpx(text, job.file);
  book::Book book = open_book(job.lesson.book, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", job.lesson.code));
  const auto lessons = book::lessons_of(book, pupil.code);
  const book::Lesson* listed = lesson_recorded(lessons, job, pupil.code, recording);
  need_meant(job.line, lessons, listed);
  std::optional<book::Lesson> lesson;
  if (listed != nullptr) lesson = book::lesson_of(book, pupil.code, listed->number);
  const bool own_area =
      !job.area.area.empty() && !(lesson && lesson->plan.area == absolute_path(job.area.area));
  if (!own_area && lesson && lesson->plan.area.empty())
    throw UsageError("--area is required: lesson " + std::to_string(lesson->number) + " of " +
                     pupil.code + " wasn't planned here");
  if (!own_area) job.area = {lesson->plan.area, lesson->plan.notes, lesson->plan.terms};
  Ground ground(job.area);
  const std::string name =
      pupil.code + (lesson ? ", lesson " + std::to_string(lesson->number) : "");
  const std::string zone = ground.info().zone;
  const auto fixes = part_of(recording, job, lesson ? &*lesson : nullptr, zone);
  const auto plan = plan_of(ground, lesson ? &*lesson : nullptr, name);
  const road::Roads& roads = plan ? plan->roads
                                  : ground.for_lesson(road::lesson_time(
                                        instant_of(fixes.front().unix_s, zone),
                                        wish::own_drive_minutes, ground.setting_somewhere()));
  const auto stretches = stretches_of(plan);
  TracedDrive drive{
      roads, trace::match_to_roads(roads, fixes, {.plan = stretches}), {}, {}, stretches};
  if (drive.match.runs.empty())
    throw InputError(job.file + ": none of its " + std::to_string(fixes.size()) +
                     " points lies by a road of " + job.area.area + "; name its area with --area");
  if (!stretches.empty()) drive.planned = &plan->answer.loops.front();
  drive.lesson = trace::lesson_of(
      roads, drive.match, usual_pace(roads, pupil, lessons, fixes.front().unix_s), drive.planned);
  tell_recording(std::cout, job.file, recording, fixes);
  tell_drive(std::cout, drive);
  if (job.speeds) tell_speeds(std::cout, drive);
  book::TracedLesson all = logged(job, drive, pupil, lesson ? &*lesson : nullptr);
  tell_passes(std::cout, all.log.passes,
              !lesson                                      ? 0
              : lesson->state == book::LessonState::driven ? lesson->log.passes.size()
                                                           : lesson->plan.passes.size());
  if (job.dry) {
    std::cout << "nothing is written\n";
    return Exit::done;
  }
  if (!job.yes) need_begun(lesson ? name : "this drive of " + pupil.code, all.plan.start);
  all.traced = traced_of(job, drive, text);
  const int number = book::log_traced(
      book,
      {pupil.code, lesson ? lesson->number : 0, lesson ? book::mark_of(*lesson) : std::string()},
      all);
  tell_logged(pupil.code, number, all.plan.start, all.log, scheme_kept(pupil));
  std::cout << (job.keep ? "the recording is kept in the book; it tells where the pupil was\n"
                         : "the recording isn't kept\n");
  return Exit::done;
}

}  // namespace loopwright::command
