// Method: sums of times, each with a prior of usual driving; a ratio of sums weighs long lessons as they deserve.
#include "loopwright/book/pace_learned.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include "loopwright/base/text.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::book {
namespace {

// From 0.8 to 1.6: our trade notes.
using wish::least_pace, wish::most_pace;
/// So much usual driving is added to what is known: of the pupil, of an hour of the day and of a kind of junction. Ours.
constexpr double prior_s = 1200, hour_prior_s = 2400, control_prior_s = 300;
/// Fewer tell nothing. Ours.
constexpr int least_lessons_an_hour = 3, least_junctions = 20;

struct Times {
  double expected_s = 0, took_s = 0;
  int lessons = 0;
  void add(const Times& more) {
    expected_s += more.expected_s, took_s += more.took_s, lessons += more.lessons;
  }
};

/// took over expected, drawn to `usual` by so much driving.
double ratio(const Times& times, double prior, double usual) {
  return (times.took_s + prior * usual) / (times.expected_s + prior);
}

Times times_of(const Traced& traced) {
  Times times{0, 0, 1};
  for (const TracedTime& one : traced.times)
    times.expected_s += one.expected_s, times.took_s += one.took_s;
  return times;
}

/// The pace that the likely time of a plan was made by: what its words say.
double planned_pace(std::string_view words) {
  constexpr std::string_view name = "pace ";
  for (const std::string_view line : split(words, '\n'))
    if (line.starts_with(name))
      if (const std::optional<double> pace = read_number(trim(line.substr(name.size()))))
        return std::clamp(*pace, least_pace, most_pace);
  return 1;
}

/// Of a lesson; no lessons in it when nothing tells.
Times times_of(const Lesson& lesson, std::span<const LessonTrace> traces) {
  const auto trace = std::find_if(traces.begin(), traces.end(), [&](const LessonTrace& one) {
    return one.number == lesson.number && !one.traced.times.empty();
  });
  if (trace != traces.end()) return times_of(trace->traced);
  const bool tells =
      lesson.state == LessonState::driven && lesson.log.minutes && lesson.plan.likely_s > 0;
  return tells ? Times{lesson.plan.likely_s / planned_pace(lesson.plan.wish),
                       60.0 * *lesson.log.minutes, 1}
               : Times{};
}

std::vector<ControlPace> controls_of(std::span<const LessonTrace> traces, double factor) {
  std::array<Times, road::control_count> times{};
  std::array<int, road::control_count> counts{};
  for (const LessonTrace& trace : traces)
    for (const TracedTime& one : trace.traced.times) {
      const auto k = static_cast<std::size_t>(one.control);
      times[k].add({one.expected_s, one.took_s, 0});
      counts[k] += one.count;
    }
  std::vector<ControlPace> paces;
  for (std::size_t k = 0; k < times.size(); ++k)
    if (counts[k] >= least_junctions)
      paces.push_back(
          {static_cast<road::Control>(k), counts[k],
           std::clamp(ratio(times[k], control_prior_s, factor), least_pace, most_pace)});
  return paces;
}

}  // namespace

double PaceLearned::at(int hour) const {
  const auto of = std::find_if(hours.begin(), hours.end(),
                               [hour](const HourPace& one) { return one.hour == hour; });
  return std::clamp(factor * (of == hours.end() ? 1 : of->factor), least_pace, most_pace);
}

PaceLearned learned_pace(std::span<const Lesson> lessons, std::span<const LessonTrace> traces) {
  Times all;
  std::array<Times, 24> by_hour{};
  for (const Lesson& lesson : lessons) {
    const Times times = times_of(lesson, traces);
    all.add(times);
    by_hour.at(static_cast<std::size_t>(lesson.plan.start.civil().hour)).add(times);
  }
  PaceLearned pace;
  pace.factor = std::clamp(ratio(all, prior_s, 1), least_pace, most_pace);
  pace.lessons = all.lessons;
  pace.minutes = all.took_s / 60;
  pace.controls = controls_of(traces, pace.factor);
  for (int hour = 0; hour < 24; ++hour) {
    const Times& times = by_hour[static_cast<std::size_t>(hour)];
    if (times.lessons < least_lessons_an_hour || times.lessons == all.lessons) continue;
    pace.hours.push_back(
        {hour, times.lessons, ratio(times, hour_prior_s, pace.factor) / pace.factor});
  }
  return pace;
}

}  // namespace loopwright::book
