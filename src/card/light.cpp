// Method: a stretch is driven into a low sun when its heading at the middle lies within 25 degrees of the
// sun's bearing while the sun stands between the horizon and 15 degrees; a row counts when it leads into
// 100 m of that. All three numbers are our judgement.
#include "card/light.hpp"

#include <cmath>
#include <cstdint>
#include <limits>

#include "card/lesson.hpp"
#include "card/speech.hpp"
#include "loopwright/hours/sun_place.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::card {
namespace {

constexpr double low_sun_deg = 15;
constexpr double into_it_deg = 25;
constexpr double least_m = 100;

/// Heading at the middle of a stretch, as driven.
double heading_deg(const road::Roads& roads, StretchId stretch) {
  const auto shape = roads.shape_of(stretch.piece());
  const std::size_t middle = std::max<std::size_t>(shape.size() / 2, 1);
  const Point a = shape[middle - 1], b = shape[middle];
  return stretch.against() ? bearing_deg(b, a) : bearing_deg(a, b);
}

/// Where the sun stands along a drive. Asked again a minute later at the soonest: it moves a quarter of a
/// degree meanwhile, and a thousand terms of a series are summed up for each answer.
class SunOfDrive {
 public:
  explicit SunOfDrive(const Subject& subject) : subject_(subject) {}

  hours::SunPlace at(const wish::LoopStretch& driven) {
    constexpr std::int64_t still_s = 60;
    const Instant now = wish::clock_after(subject_.loop, driven.arrive_s.likely, subject_.setting);
    if (now.unix_s - asked_s_ >= still_s) {
      const NodeId node = subject_.roads.to_node(driven.stretch);
      sun_ = hours::sun_place(now, subject_.roads.nodes[node.index()].at);
      asked_s_ = now.unix_s;
    }
    return sun_;
  }

 private:
  const Subject& subject_;
  std::int64_t asked_s_ = std::numeric_limits<std::int64_t>::min() / 2;  ///< not yet
  hours::SunPlace sun_;
};

bool into_low_sun(const hours::SunPlace& sun, double course_deg) {
  return sun.height_deg > 0 && sun.height_deg < low_sun_deg &&
         std::abs(heading_change_deg(course_deg, sun.bearing_deg)) < into_it_deg;
}

std::vector<std::size_t> rows_into_low_sun(const Subject& subject) {
  std::vector<double> metres(subject.rows.size(), 0);
  SunOfDrive sun(subject);
  for (std::size_t i = 0; i < subject.loop.stretches.size(); ++i) {
    const wish::LoopStretch& driven = subject.loop.stretches[i];
    if (into_low_sun(sun.at(driven), heading_deg(subject.roads, driven.stretch)))
      metres[row_of_stretch(subject, i) - 1] += driven.metres;
  }
  std::vector<std::size_t> numbers;
  for (std::size_t k = 0; k < metres.size(); ++k)
    if (metres[k] >= least_m) numbers.push_back(k + 1);
  return numbers;
}

std::string write_minute(int minute) {
  constexpr int minutes_of_hour = 60, hours_of_day = 24;
  const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  return two(minute / minutes_of_hour % hours_of_day) + ":" + two(minute % minutes_of_hour);
}

/// In the far north's winter, when the sun doesn't rise: it is below the horizon as the drive begins and as it ends.
bool is_dark_without_times(const Subject& subject, const Instant& start) {
  constexpr double set_deg =
      -0.83;  // its upper edge, seen through the air (Meeus, Astronomical Algorithms, ch. 15)
  if (subject.loop.stretches.empty()) return false;
  const NodeId node = subject.roads.to_node(subject.loop.stretches.front().stretch);
  const Point at = subject.roads.nodes[node.index()].at;
  const Instant end = wish::likely_end(subject.loop, subject.setting);
  return hours::sun_place(start, at).height_deg < set_deg &&
         hours::sun_place(end, at).height_deg < set_deg;
}

void add_sun_times(Section& section, const Subject& subject) {
  const Instant start = subject.setting.on_clock(subject.loop.start);
  const auto sun = subject.setting.sun(start.civil().date);
  if (!sun) {
    if (is_dark_without_times(subject, start))
      section.lines.push_back({0, std::string(subject.words.at("light.dark"))});
    return;
  }
  constexpr int minutes_of_hour = 60;
  constexpr double seconds_per_minute = 60;
  const int from = start.civil().hour * minutes_of_hour + start.civil().minute;
  const int to = from + static_cast<int>((subject.loop.seconds.high + subject.loop.stop_seconds) /
                                         seconds_per_minute);
  const say::Words& words = subject.words;
  const auto tell = [&](std::string_view key, int minute) {
    section.lines.push_back({0, words.fill(key, {{"clock", write_minute(minute)}})});
  };
  if (to <= sun->sunrise || from >= sun->sunset) {
    section.lines.push_back({0, std::string(words.at("light.dark"))});
  } else if (from < sun->sunrise) {
    tell("light.sunrise", sun->sunrise);
  }
  if (from < sun->sunset && to > sun->sunset) tell("light.sunset", sun->sunset);
}

}  // namespace

Section light_of(const Subject& subject) {
  Section section{std::string(subject.words.at("light.title")), {}};
  add_sun_times(section, subject);
  const std::vector<std::size_t> rows = rows_into_low_sun(subject);
  if (!rows.empty())
    section.lines.push_back(
        {0, subject.words.fill("light.low_sun", {{"rows", write_rows(subject.words, rows)}})});
  return section;
}

}  // namespace loopwright::card
