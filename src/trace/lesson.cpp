// Method:
//   1. The stop that a run begins with, near its beginning, is standing at the door; so is the last near its end.
//   2. A stop waits for a junction when the way to the next one that keeps anybody waiting is short, and the stop isn't
//      longer than one waits there; any other is a talk, a manoeuvre or a rest.
//   3. With a drive out or back in the plan the learner begins and ends where its practice does, when these stretches
//      were driven.
//   4. A leg's time, less stops that aren't waits, goes to the junction at its end.
#include "loopwright/trace/lesson.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <span>

namespace loopwright::trace {
namespace {

/// So near to its two ends a run is still at the door. Ours.
constexpr double at_door_m = 40;
/// Cars queue so far back, and wait so long at most. Ours: signals have cycles of 90 to 120 s.
constexpr double queue_m = 100, longest_wait_s = 180;

class LessonMaker {
 public:
  LessonMaker(const road::Roads& roads, const Match& match, const pace::Pace& pace)
      : roads_(roads), match_(match), pace_(pace) {}

  DrivenLesson make(const wish::Loop* planned) {
    if (planned != nullptr && planned->practice) find_practice(*planned);
    lesson_.from_s = match_.runs.front().from_s, lesson_.to_s = match_.runs.back().to_s;
    leave_door();
    for (std::size_t run = 0; run < match_.runs.size(); ++run)
      add_run(run, planned == nullptr ? std::span<const wish::Pass>() : planned->passes);
    wish::Loop& loop = lesson_.loop;
    loop.seconds.likely = lesson_.to_s - lesson_.from_s;
    loop.metres = lesson_.metres;
    for (std::size_t c = 0; c < times_.size(); ++c)
      if (times_[c].count > 0) {
        times_[c].control = static_cast<road::Control>(c);
        lesson_.times.push_back(times_[c]);
      }
    return std::move(lesson_);
  }

 private:
  static double progress_m(const Run& run, const Stop& stop) {
    double metres = stop.at_m - run.legs[stop.leg].from_m;
    for (std::size_t k = 0; k < stop.leg; ++k) metres += run.legs[k].to_m - run.legs[k].from_m;
    return metres;
  }

  void find_practice(const wish::Loop& planned) {
    const StretchId first = planned.stretches[planned.practice->at(0)].stretch;
    const StretchId last = planned.stretches[planned.practice->at(1)].stretch;
    std::optional<std::size_t> begin, end;
    std::size_t row = 0;
    for (const Run& run : match_.runs)
      for (const Leg& leg : run.legs) {
        const StretchId stretch = roads_.stretch_of(leg.state);
        if (stretch == first && !begin) begin = row;
        if (stretch == last) end = row;
        ++row;
      }
    if (row == 0) return;
    const std::array practice{begin.value_or(0), end.value_or(row - 1)};
    if (practice[0] <= practice[1]) lesson_.loop.practice = practice;
  }

  /// Driven by the learner.
  [[nodiscard]] bool is_practice(std::size_t row) const {
    const auto& practice = lesson_.loop.practice;
    return !practice || (row >= practice->at(0) && row <= practice->at(1));
  }

  void leave_door() {
    const Run &first = match_.runs.front(), &last = match_.runs.back();
    if (!first.stops.empty() && progress_m(first, first.stops.front()) <= at_door_m)
      lesson_.from_s = first.stops.front().to_s;
    if (!last.stops.empty() && last.metres() - progress_m(last, last.stops.back()) <= at_door_m &&
        last.stops.back().from_s > lesson_.from_s)
      lesson_.to_s = last.stops.back().from_s;
  }

  void add_run(std::size_t number, std::span<const wish::Pass> planned) {
    const Run& run = match_.runs[number];
    const std::size_t first = lesson_.loop.stretches.size();
    for (const Leg& leg : run.legs) add_stretch(leg);
    for (TracedPass pass : passes_of(roads_, run, planned)) {
      pass.pass.first += first, pass.pass.last += first;
      lesson_.loop.passes.push_back(pass.pass);
      lesson_.passes.push_back(std::move(pass));
    }
    for (const Stop& stop : run.stops)
      if (stop.from_s >= lesson_.from_s && stop.to_s <= lesson_.to_s)
        lesson_.stops.push_back({stop, number, is_waiting(run, stop)});
    for (std::size_t k = 0; k + 1 < run.legs.size(); ++k)
      if (is_practice(first + k)) add_time(number, k);
    lesson_.metres += run.metres();
  }

  void add_stretch(const Leg& leg) {
    const StretchId stretch = roads_.stretch_of(leg.state);
    const road::Piece& piece = roads_.piece(stretch);
    wish::LoopStretch row;
    row.way = piece.way;
    row.from = roads_.nodes[roads_.from_node(stretch).index()].osm_id;
    row.to = roads_.nodes[roads_.to_node(stretch).index()].osm_id;
    row.from_index = piece.from_index, row.to_index = piece.to_index;
    row.against = stretch.against();
    row.metres = leg.to_m - leg.from_m;
    row.limit = pace_.limit(stretch);
    row.arrive_s.likely = std::clamp(leg.enter_s, lesson_.from_s, lesson_.to_s) - lesson_.from_s;
    row.street = roads_.text(piece.name);
    row.stretch = stretch;
    lesson_.loop.stretches.push_back(std::move(row));
  }

  /// What lies between a leg and the next; none when the car turned round.
  [[nodiscard]] const road::Turn* turn_after(const Run& run, std::size_t leg) const {
    if (leg + 1 >= run.legs.size() || run.legs[leg + 1].turned_round) return nullptr;
    for (const road::Turn& turn : roads_.turns_from(run.legs[leg].state))
      if (roads_.stretch_of(turn.to) == roads_.stretch_of(run.legs[leg + 1].state)) return &turn;
    return nullptr;
  }

  [[nodiscard]] bool is_waiting(const Run& run, const Stop& stop) const {
    if (stop.to_s - stop.from_s > longest_wait_s) return false;
    double metres = run.legs[stop.leg].to_m - stop.at_m;
    for (std::size_t k = stop.leg; k < run.legs.size() && metres <= queue_m; ++k) {
      const road::Turn* turn = turn_after(run, k);
      if (turn != nullptr && pace_.at(turn->control).likely_ms > 0) return true;
      if (k + 1 < run.legs.size()) metres += run.legs[k + 1].to_m - run.legs[k + 1].from_m;
    }
    return false;
  }

  void add_time(std::size_t number, std::size_t k) {
    const Run& run = match_.runs[number];
    const Leg& leg = run.legs[k];
    const road::Turn* turn = turn_after(run, k);
    if (!leg.seen || !run.legs[k + 1].seen || turn == nullptr) return;
    const double from_s = std::max(leg.enter_s, lesson_.from_s);
    double took_s = std::min(leg.leave_s, lesson_.to_s) - from_s;
    for (const LessonStop& stop : lesson_.stops)
      if (stop.run == number && stop.stop.leg == k && !stop.waiting)
        took_s -= std::max(stop.stop.to_s - std::max(stop.stop.from_s, from_s), 0.0);
    const StretchId stretch = roads_.stretch_of(leg.state);
    const auto expected =
        pace_.along_part(stretch, leg.from_m, std::max(leg.from_m, leg.to_m)) + pace_.at(*turn);
    ControlTime& time = times_[static_cast<std::size_t>(turn->control)];
    ++time.count;
    time.expected_s += static_cast<double>(expected.likely_ms) / 1000;
    time.took_s += std::max(took_s, 0.0);
  }

  const road::Roads& roads_;
  const Match& match_;
  const pace::Pace& pace_;
  std::array<ControlTime, road::control_count> times_{};
  DrivenLesson lesson_;
};

}  // namespace

DrivenLesson lesson_of(const road::Roads& roads, const Match& match, const pace::Pace& pace,
                       const wish::Loop* planned) {
  if (match.runs.empty()) return {};
  return LessonMaker(roads, match, pace).make(planned);
}

}  // namespace loopwright::trace
