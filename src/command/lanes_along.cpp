// Other starts, up to two hours away:
//   1. The drive that is quickest when no street and turn has hours is judged at every minute, which
//      costs no search: at the nearest at which nothing shuts it there is a drive.
//   2. Another drive may be possible nearer to the start. A search every five minutes looks for one,
//      and that drive is then judged at every minute still nearer.
#include "command/lanes_along.hpp"

#include <cstdlib>

#include "command/lanes_avoided.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/reach/reach.hpp"

namespace loopwright::command {
namespace {

constexpr int step_minutes = 5, farthest_minutes = 120;

std::optional<wish::Loop> drive(const TimedRoads& timed, const wish::Wish& wish) {
  auto found = find::route_through(timed.roads, wish, timed.setting);
  if (found.loops.empty()) return std::nullopt;
  return std::move(found.loops.front());
}

class OtherStarts {
 public:
  OtherStarts(const TimedRoads& timed, const wish::Wish& wish) : timed_(timed), wish_(wish) {}

  std::optional<OtherStart> nearest() {
    if (const auto quickest = drive_without_hours(timed_, wish_)) judge(*quickest);
    for (int step = step_minutes; step < within(); step += step_minutes) {
      for (const int minutes : {-step, step})
        if (step < within()) search(minutes);
    }
    return std::move(best_);
  }

 private:
  /// Nearer than so many minutes would be better than what is known.
  [[nodiscard]] int within() const {
    return best_ ? std::abs(best_->minutes) : farthest_minutes + 1;
  }
  [[nodiscard]] Instant start_at(int minutes) const {
    return timed_.setting.on_clock(wish_.start.plus_seconds(std::int64_t{60} * minutes));
  }

  /// Keeps the drive there is at that start, if any.
  bool search(int minutes) {
    wish::Wish then = wish_;
    then.start = start_at(minutes);
    auto loop = drive(timed_, then);
    if (!loop) return false;
    best_ = OtherStart{minutes, *loop};
    judge(*loop);
    return true;
  }

  /// The nearest start at which the same drive may be made.
  void judge(wish::Loop loop) {
    for (int step = 1; step < within(); ++step) {
      for (const int minutes : {-step, step}) {
        loop.start = start_at(minutes);
        if (!lanes::breaches_on(timed_.roads, loop, timed_.setting).empty()) continue;
        if (search(minutes)) return;
      }
    }
  }

  const TimedRoads& timed_;
  const wish::Wish& wish_;
  std::optional<OtherStart> best_;
};

}  // namespace

wish::Wish wish_through(std::span<const NamedPlace> places) {
  wish::Wish wish;
  wish.home = places.front().at;
  for (const NamedPlace& place : places.subspan(1, places.size() - 2))
    wish.through.push_back(place.at);
  wish.end = places.back().at;
  return wish;
}

void need_roads_at(const road::Roads& roads, std::span<const NamedPlace> places) {
  for (const NamedPlace& place : places) {
    if (reach::snap_home(roads, place.at)) continue;
    throw UsageError("--along: " + place.name + " is over 150 m from any road a learner may use");
  }
}

std::string with_names(const std::string& why, std::span<const NamedPlace> places) {
  const auto called = [&](std::size_t k) {
    if (k == 0) return std::string("home");
    return k + 1 == places.size() ? "the end" : "point " + std::to_string(k);
  };
  const std::string within = " that a learner may drive within this wish";
  for (std::size_t k = 1; k < places.size(); ++k) {
    const std::string leg = "no way from " + called(k - 1) + " to " + called(k) + within;
    if (!why.starts_with(leg)) continue;
    return "no way from " + places[k - 1].name + " to " + places[k].name +
           " that a learner may drive" + why.substr(leg.size());
  }
  for (const bool home : {true, false}) {
    const std::string road = std::string("the road at the ") + (home ? "home" : "end") +
                             " can't be driven within this wish";
    if (why.starts_with(road))
      return "the road at " + (home ? places.front() : places.back()).name + " can't be driven" +
             why.substr(road.size());
  }
  return why;
}

std::optional<OtherStart> other_start(const TimedRoads& timed, const wish::Wish& wish) {
  return OtherStarts(timed, wish).nearest();
}

std::optional<wish::Loop> drive_on_day(const TimedRoads& timed, wish::Wish wish, const Date& day) {
  const CivilTime asked = timed.setting.on_clock(wish.start).civil();
  const std::string& zone = timed.roads.info().zone;
  wish.start = hours::instant_in(zone, {day, asked.hour, asked.minute, 0});
  if (auto loop = drive(timed, wish)) return loop;
  for (int hour = 0; hour < 24; ++hour) {
    wish.start = hours::instant_in(zone, {day, hour, 0, 0});
    if (auto loop = drive(timed, wish)) return loop;
  }
  return std::nullopt;
}

}  // namespace loopwright::command
