#include "command/lanes_words.hpp"

#include <algorithm>
#include <array>
#include <ostream>
#include <utility>
#include <vector>

#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::command {
namespace {

/// One user as mapped, in words; psv are two.
std::vector<std::string_view> user_words(std::string_view user) {
  if (user == "psv") return {"buses", "taxis"};
  constexpr std::array<std::pair<std::string_view, std::string_view>, 11> words{
      {{"bus", "buses"},
       {"foot", "people on foot"},
       {"horse", "horses"},
       {"maxweight", "heavy vehicles"},
       {"disabled", "blue badge holders"},
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

std::string thing_head(const lanes::TimedThing& thing, std::string_view heading) {
  std::string text = thing.street;
  if (!heading.empty()) text.append(", going ").append(heading);
  text.append(", ").append(lanes::name(thing.thing));
  if (thing.place.empty()) return text;
  return text + (thing.place.starts_with("lane") ? ", " : " ") + thing.place;
}

std::string users_words(std::string_view who) {
  std::vector<std::string> users;
  for (const std::string_view mapped : split(who, ';'))
    for (const std::string_view user : user_words(mapped))
      if (!user.empty() && std::ranges::find(users, user) == users.end()) users.emplace_back(user);
  return listed(users);
}

std::string change_words(const Instant& change, const Date& today) {
  return change.civil().date == today ? write_clock(change) : spoken_moment(change);
}

std::string passing_words(const lanes::Passing& when) {
  const std::string from = write_clock(when.from), to = write_clock(when.to);
  return from == to ? from : from + " to " + to;
}

std::string minutes_words(std::int64_t minutes) {
  return number_word(static_cast<int>(minutes)) + (minutes == 1 ? " minute" : " minutes");
}

std::string hours_line(const lanes::TimedThing& thing) {
  const bool mapped = thing.thing == lanes::Thing::limit || !thing.shut.empty();
  return "hours: " + (mapped ? thing.words : "not mapped");
}

std::string next_change_line(const lanes::TimedThing& thing, const Instant& at,
                             const hours::Setting& setting) {
  const auto change = lanes::next_change(thing, at, setting);
  if (!change) return "next change: " + std::string(lanes::no_change_words(thing, at, setting));
  const lanes::ThingVerdict then = lanes::verdict_on(thing, {*change, *change}, setting);
  const Instant now = setting.on_clock(at);
  return "next change: " + change_words(*change, now.civil().date) + put_back_words(now, *change) +
         ", then " + lanes::verdict_words(thing, then);
}

void print_known(std::ostream& out, const lanes::TimedThing& thing, const std::string& objects) {
  if (!thing.doubt.empty()) print_folded(out, set_in, "in doubt: " + thing.doubt);
  if (!thing.who.empty()) print_folded(out, set_in, "kept for: " + users_words(thing.who));
  print_folded(out, set_in, "on the map: " + objects + "; map text: " + thing.map_text);
}

void print_plan_caution(std::ostream& out) {
  out << "Plan when parked; signs and markings on the day overrule the map.\n";
}

void print_plate_caution(std::ostream& out) {
  out << "The plate decides. One that can't be read means keep out.\n";
}

}  // namespace loopwright::command
