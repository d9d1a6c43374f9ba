// Method: each planned stop in a line; how many hard passes have a place behind them; how long the ways
// home are. What isn't there isn't told.
#include "command/stops_summary.hpp"

#include <algorithm>
#include <cmath>
#include <ostream>
#include <string>

#include "command/folded.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::command {
namespace {

std::string minutes(double seconds) {
  return std::to_string(std::lround(seconds / 60)) + " min";
}

std::string street_of(const wish::Loop& loop, const wish::PullUp& place) {
  const std::string& street = loop.stretches[place.stretch].street;
  return street.empty() ? "an unnamed road" : street;
}

void print_planned(std::ostream& out, const wish::Loop& loop, const hours::Setting& setting) {
  for (const wish::PullUp& place : loop.pull_ups) {
    if (place.purpose.empty()) continue;
    std::string line =
        place.purpose + ", " + minutes(place.seconds) + ": pull up in " + street_of(loop, place);
    if (place.leave_by_s != 0)
      line += ", drive on by " + write_clock(wish::clock_after(loop, place.leave_by_s, setting));
    print_folded(out, 2, line + "; " + place.why + ": " + place.check);
  }
}

void print_after(std::ostream& out, const wish::Loop& loop) {
  if (loop.stops_after.empty()) return;
  const auto with = std::ranges::count_if(
      loop.stops_after, [](const wish::StopAfter& after) { return after.pull_up.has_value(); });
  const auto all = static_cast<std::ptrdiff_t>(loop.stops_after.size());
  print_folded(out, 2,
               "hard passes: " + std::to_string(all) + "; a place to pull up within " +
                   minutes(wish::stop_after_most_s) + " after " +
                   (with == all ? "each" : std::to_string(with)));
}

void print_ways_home(std::ostream& out, const wish::Wish& wish, const wish::Loop& loop) {
  if (loop.ways_home.empty()) return;
  double longest_s = 0;
  std::size_t hard = 0;
  for (const wish::WayHome& way : loop.ways_home) {
    longest_s = std::max(longest_s, way.seconds);
    if (way.hardest > wish::easy_hardness(wish)) ++hard;
  }
  const std::string all = std::to_string(loop.ways_home.size());
  std::string line = "home early: told from " + all + " places, at most " + minutes(longest_s);
  line += hard == 0 ? ", by easy roads from each"
                    : "; from " + std::to_string(hard) + " of them by no easy road";
  print_folded(out, 2, line);
}

}  // namespace

void print_stops(std::ostream& out, const wish::Answer& answer, const wish::Loop& loop,
                 const hours::Setting& setting) {
  print_planned(out, loop, setting);
  print_after(out, loop);
  print_ways_home(out, answer.wish, loop);
}

}  // namespace loopwright::command
