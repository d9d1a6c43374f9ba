// Room mark writes "KEY=VALUE says always, KEY says HOURS", "KEY says HOURS, KEY says HOURS",
// "TAG shuts nobody else out", "TAG alone tells of it", "TAG can't be read", "TAG doesn't say when there is a
// lane" and "TAG says a bus lane, TAG lets cars in everywhere".
#include "loopwright/lanes/doubt.hpp"

#include "loopwright/hours/timetable.hpp"

namespace loopwright::lanes {
namespace {

constexpr std::string_view says = " says ";

std::string hours_in_words(std::string_view hours) {
  const hours::Timetable read(hours);
  return read.readable() ? read.words() : "hours that can't be read";
}

/// Of "KEY says HOURS, KEY says HOURS".
std::string two_hours(std::string_view doubt, std::size_t first, std::size_t second) {
  const std::string_view between = doubt.substr(first + says.size(), second - first - says.size());
  const std::size_t comma = between.rfind(", ");
  if (comma == std::string_view::npos) return "the map's tags contradict each other";
  return "the map gives two sets of hours: " + hours_in_words(between.substr(0, comma)) + "; and " +
         hours_in_words(doubt.substr(second + says.size()));
}

}  // namespace

std::string doubt_words(std::string_view doubt) {
  const auto has = [&](std::string_view part) { return doubt.find(part) != doubt.npos; };
  if (doubt.empty()) return {};
  if (has(" shuts nobody else out")) return "the map doesn't say that cars are kept out of it";
  if (has(" lets cars in everywhere")) return "the map also says that cars may use every lane";
  if (has(" alone tells of it")) return "the map tells of it in passing only, look for the signs";
  if (doubt.ends_with(" can't be read")) return "a tag of the map can't be read";
  if (has(" doesn't say when there is a lane")) return "the map doesn't say when there is a lane";
  const std::size_t first = doubt.find(says), second = doubt.rfind(says);
  if (first == doubt.npos || first == second) return "the map's tags contradict each other";
  if (has(" says always, ")) {
    return "the map says at all times, and also " +
           hours_in_words(doubt.substr(second + says.size()));
  }
  return two_hours(doubt, first, second);
}

}  // namespace loopwright::lanes
