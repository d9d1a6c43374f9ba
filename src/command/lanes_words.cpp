#include "command/lanes_words.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "command/hours_place.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/timetable.hpp"

namespace loopwright::command {
namespace {

/// One user as mapped, in words; psv are two.
std::vector<std::string_view> user_words(std::string_view user) {
  if (user == "psv") return {"buses", "taxis"};
  constexpr std::array<std::pair<std::string_view, std::string_view>, 7> words{
      {{"bus", "buses"},
       {"taxi", "taxis"},
       {"bicycle", "cycles"},
       {"motorcycle", "motorcycles"},
       {"coach", "coaches"},
       {"emergency", "emergency vehicles"},
       {"hgv", "lorries"}}};
  for (const auto& [mapped, said] : words)
    if (mapped == user) return {said};
  return {user};
}

}  // namespace

std::string lane_words(const wish::BusLanePass& lane) {
  std::string text = lane.what;
  if (lane.side == "left" || lane.side == "right") text += " on the " + lane.side;
  if (lane.lane > 0 && lane.lanes > 0) {
    text += ", lane " + std::to_string(lane.lane) + " of " + std::to_string(lane.lanes) +
            " from the left";
  }
  return text;
}

std::string users_words(std::string_view who) {
  std::vector<std::string> users;
  for (const std::string_view mapped : split(who, ';'))
    for (const std::string_view user : user_words(mapped))
      if (!user.empty() && std::ranges::find(users, user) == users.end()) users.emplace_back(user);
  return listed(users);
}

// Source: CHECKED.md A4 of the project's design notes (a sign without times means at all times).
std::string plate_words(const wish::BusLanePass& lane) {
  if (lane.what == "bus gate") {
    return "who is let through, the days and the hours; no times means at all times";
  }
  if (lane.what != "bus lane") return "nothing: it is for buses that come towards you";
  return "the days and hours; no times means at all times";
}

std::string hours_words(const wish::BusLanePass& lane) {
  const bool mapped = lane.hours && !lane.hours->empty();
  return mapped ? hours::Timetable(*lane.hours).words() : "hours not mapped";
}

std::string change_words(const Instant& change, const Date& today) {
  return change.civil().date == today ? write_clock(change) : spoken_moment(change);
}

}  // namespace loopwright::command
