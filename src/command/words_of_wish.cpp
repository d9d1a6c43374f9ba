#include "command/words_of_wish.hpp"

#include <array>
#include <cstdio>
#include <optional>

#include "command/print.hpp"
#include "loopwright/wish/asked.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::command {
namespace {

/// To the last digit that a loop file keeps, so that the same point is read again.
std::string exact(Point at) {
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%.7f,%.7f", at.lat(), at.lon());
  return text.data();
}

std::string exact(const std::vector<Point>& points) {
  std::string text;
  for (const Point at : points) text += (text.empty() ? "" : ";") + exact(at);
  return text;
}

std::string keep_off_words(const wish::KeepOff& off) {
  const std::string what = off.outline.size() == 1 ? off.name : exact(off.outline);
  return off.hours.empty() ? what : what + " @ " + off.hours;
}

/// Fills the words of one wish.
class Filling {
 public:
  Filling(WishWords& words, std::string from) : words_(words), from_(std::move(from)) {}

  void say(std::string_view name, const std::string& text) { words_.fill(name, text, from_); }
  void say(std::string_view name, std::optional<int> number) {
    if (number) say(name, std::to_string(*number));
  }
  void say_more(std::string_view name, int number) {
    if (number > 0) say(name, std::to_string(number));
  }
  void say(std::string_view name, const std::optional<Point>& at) {
    if (at) say(name, exact(*at));
  }

 private:
  WishWords& words_;
  std::string from_;
};

void say_places(Filling& filling, const wish::Wish& wish, const std::string& home) {
  filling.say("home", home);
  filling.say("end", wish.end);
  filling.say("drive-out", wish.drive_out);
  filling.say("drive-back", wish.drive_back);
  if (!wish.through.empty()) filling.say("through", exact(wish.through));
  for (const wish::KeepOff& off : wish.keep_offs) filling.say("keep-off", keep_off_words(off));
  for (const wish::Take& take : wish.takes) filling.say("take", take.name);
}

void say_practice(Filling& filling, const wish::Wish& wish) {
  for (const wish::Want& want : wish.wants) filling.say("want", wish::write_want(want));
  for (const wish::Part& part : wish.parts) filling.say("part", wish::write_part(part));
  for (const wish::Avoid& avoid : wish.avoids) filling.say("avoid", wish::write_avoid(avoid));
  for (const road::Kind kind : wish.welcome) filling.say("welcome", std::string(road::name(kind)));
  for (const wish::Spacing& spacing : wish.spacings)
    filling.say("spacing", wish::write_spacing(spacing));
  for (const road::Kind kind : wish.stops.new_kinds)
    filling.say("new", std::string(road::name(kind)));
}

void say_numbers(Filling& filling, const wish::Wish& wish) {
  filling.say("minutes", wish.minutes);
  filling.say_more("reserve", wish.reserve_minutes);
  filling.say("place-passes", wish.place_passes);
  filling.say("street-passes", wish.street_passes);
  filling.say("hardest", wish.hardest);
  if (wish.easy_first) filling.say("easy-first", std::string());
  if (!wish.stops.new_kinds.empty()) filling.say_more("brief", wish.stops.brief_minutes);
  filling.say_more("talk", wish.stops.talk_minutes);
  filling.say_more("independent", wish.independent_minutes);
  if (wish.level_given) filling.say("level", std::to_string(wish.level));
  if (wish.pace != wish::usual_pace) filling.say("pace", fixed(wish.pace, 2));
}

}  // namespace

WishWords words_of(const wish::Wish& wish, const std::string& home, const std::string& from) {
  WishWords words;
  Filling filling(words, from);
  say_places(filling, wish, home);
  say_practice(filling, wish);
  say_numbers(filling, wish);
  return words;
}

}  // namespace loopwright::command
