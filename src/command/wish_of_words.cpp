#include "command/wish_of_words.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "command/arguments.hpp"
#include "command/lesson_words.hpp"
#include "command/stop_options.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/wish/asked.hpp"

namespace loopwright::command {
namespace {

constexpr Between alternatives_allowed{1, 10};
constexpr Between passes_allowed{1, 99};
// The test's own takes about 20 minutes or all of it (DEVELOPERS.md, Independent driving).
constexpr Between independent_allowed{5, 120};

/// The whole number of a word; none when it isn't said.
std::optional<int> number(const WishWords& words, const std::string& name, Between allowed) {
  const Said* said = words.one(name);
  if (said == nullptr) return std::nullopt;
  return whole_number("--" + name, said->text, allowed);
}

void read_minutes(wish::Wish& wish, const WishWords& words) {
  wish.minutes = number(words, "minutes", minutes_of_drive);
  if (!wish.minutes && !wish.parts.empty()) {
    const int reserve = number(words, "reserve", {0, minutes_of_drive.high}).value_or(0);
    wish.minutes = minutes_of_parts(wish, reserve);
    const int driven = *wish.minutes - reserve;
    if (driven < minutes_of_drive.low || *wish.minutes > minutes_of_drive.high)
      throw UsageError("--part: the parts take " + std::to_string(driven) + " minutes" +
                       (reserve > 0 ? " and the reserve " + std::to_string(reserve) : "") +
                       "; a lesson drives 10 or more, and takes 600 at most");
  }
  if (!wish.minutes && words.one("through") == nullptr)
    throw UsageError("give --minutes for a search, or --through with the points of your own drive");
  if (words.one("reserve") == nullptr) return;
  if (!wish.minutes) throw UsageError("--reserve is a part of --minutes, which is missing");
  wish.reserve_minutes =
      number(words, "reserve", {0, *wish.minutes - minutes_of_drive.low}).value_or(0);
}

/// Each of what a word says, as `read` reads it; once, however often it is said.
template <class Value, class Read>
void read_each(const std::vector<Said>& all, std::vector<Value>& values, Read read) {
  for (const Said& said : all) {
    Value value = said.read(read);
    if (std::find(values.begin(), values.end(), value) == values.end())
      values.push_back(std::move(value));
  }
}

/// A spacing said later replaces one of the same kind.
void read_spacings(wish::Wish& wish, const WishWords& words) {
  for (const Said& said : words.all("spacing")) {
    const wish::Spacing spacing = said.read(wish::read_spacing);
    std::erase_if(wish.spacings,
                  [&](const wish::Spacing& other) { return other.kind == spacing.kind; });
    wish.spacings.push_back(spacing);
  }
}

StopTexts stops_in(const WishWords& words) {
  const auto text = [&](std::string_view name) {
    const Said* said = words.one(name);
    return said == nullptr ? std::string() : said->text;
  };
  StopTexts texts{.brief = text("brief"), .talk = text("talk"), .new_kinds = {}};
  for (const Said& said : words.all("new")) texts.new_kinds.push_back(said.text);
  return texts;
}

}  // namespace

wish::Wish wish_of(const WishWords& words) {
  wish::Wish wish;
  read_parts(wish, words);
  read_minutes(wish, words);
  wish.alternatives = number(words, "alternatives", alternatives_allowed).value_or(1);
  for (const Said& said : words.all("want")) wish.wants.push_back(said.read(wish::read_want));
  read_each(words.all("avoid"), wish.avoids, wish::read_avoid);
  read_each(words.all("welcome"), wish.welcome, wish::read_welcome);
  read_spacings(wish, words);
  wish.place_passes = number(words, "place-passes", passes_allowed);
  wish.street_passes = number(words, "street-passes", passes_allowed);
  wish.hardest = number(words, "hardest", {1, 5});
  const std::optional<int> level = number(words, "level", {1, 5});
  wish.level = level.value_or(wish.level);
  wish.level_given = level.has_value();
  if (const Said* said = words.one("pace")) wish.pace = said->read(read_pace);
  read_stops(wish, stops_in(words));
  wish.independent_minutes = number(words, "independent", independent_allowed).value_or(0);
  if (wish.minutes && wish.independent_minutes > *wish.minutes - wish.reserve_minutes)
    throw UsageError("--independent is a part of --minutes: give no more than " +
                     std::to_string(*wish.minutes - wish.reserve_minutes));
  if (words.one("variants") != nullptr && words.one("through") != nullptr)
    throw UsageError("--variants is for a search, not for your own drive with --through");
  if (wish.alternatives > 1 && words.one("through") != nullptr)
    throw UsageError("--alternatives is for a search: your own drive with --through is one");
  check_lesson(wish, words);
  return wish;
}

}  // namespace loopwright::command
