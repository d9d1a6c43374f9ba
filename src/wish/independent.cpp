// A place is found by the exit that is counted there, by the end of the road, or by the name of the
// street that is entered; lights or "on the left" alone may be met before.
#include "loopwright/wish/independent.hpp"

#include <array>
#include <cmath>

namespace loopwright::wish {
namespace {

constexpr double straight_deg = 15;  // below it nobody would say "bear left"

std::string turn_words(double angle_deg) {
  const std::string side = angle_deg < 0 ? "left" : "right";
  if (std::abs(angle_deg) > ahead_deg) return "turn " + side;
  if (std::abs(angle_deg) > straight_deg) return "bear " + side;
  return "follow the road ahead";
}

/// "third"; of the very many exits nobody would count, "exit number 12".
std::string exit_words(int n) {
  constexpr std::array<const char*, 9> words{"first", "second",  "third",  "fourth", "fifth",
                                             "sixth", "seventh", "eighth", "ninth"};
  if (n > static_cast<int>(words.size())) return "exit number " + std::to_string(n);
  return std::string("the ") + words.at(static_cast<std::size_t>(n - 1)) + " exit";
}

std::string into_words(const Direction& direction) {
  if (direction.street.empty()) return "";
  return (direction.same_street ? ", still " : " into ") + direction.street;
}

}  // namespace

double driven_before_s(const Loop& loop, std::size_t row) {
  if (row >= loop.stretches.size()) return loop.seconds.likely;
  double seconds = loop.stretches[row].arrive_s.likely;
  for (const Pass& pass : loop.passes)
    if (pass.last < row) seconds -= pass.stop_s;
  for (const PullUp& stop : loop.pull_ups)
    if (stop.stretch < row) seconds -= stop.seconds;
  return seconds;
}

double seconds_of(const Loop& loop, const IndependentStretch& stretch) {
  return driven_before_s(loop, stretch.last + 1) - driven_before_s(loop, stretch.first);
}

std::string direction_text(const Direction& direction) {
  if (direction.roundabout || direction.mini) {
    const std::string at = direction.roundabout ? "at the roundabout " : "at the mini-roundabout ";
    if (direction.exit > 0)
      return at + "take " + exit_words(direction.exit) + into_words(direction);
    // All the way round without a number would be taken for any other way.
    if (direction.back || direction.street.empty()) return "";
    return at + turn_words(direction.angle_deg) + into_words(direction);
  }
  if (direction.back) return "";
  if (direction.road_ends)
    return "at the end of the road " + turn_words(direction.angle_deg) + into_words(direction);
  if (direction.street.empty() || direction.same_street || direction.met_before) return "";
  return turn_words(direction.angle_deg) + into_words(direction);
}

}  // namespace loopwright::wish
