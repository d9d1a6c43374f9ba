// Method: each word is read by the wish's own reader; then what contradicts another is refused, one line each.
#include "command/lesson_words.hpp"

#include <string>

#include "loopwright/base/error.hpp"
#include "loopwright/wish/parts.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::command {
namespace {

int sum_of_parts(const wish::Wish& wish) {
  int sum = 0;
  for (const wish::Part& part : wish.parts) sum += part.minutes;
  return sum;
}

bool is_said(const WishWords& words, std::string_view name) {
  return words.one(name) != nullptr;
}

/// What only a search can do.
void refuse_own_drive(const WishWords& words) {
  if (!is_said(words, "through")) return;
  for (const char* word : {"part", "easy-first", "drive-out", "drive-back", "take"})
    if (is_said(words, word))
      throw UsageError("--" + std::string(word) +
                       " is for a search: with --through you say the whole drive yourself");
}

/// What is searched for whole loops alone.
void refuse_with_parts(const WishWords& words) {
  for (const char* word : {"part", "easy-first", "drive-out", "drive-back"})
    for (const char* other : {"independent", "variants", "take"})
      if (is_said(words, word) && is_said(words, other))
        throw UsageError("--" + std::string(other) + " can't be had together with --" + word +
                         ": leave one of them out");
}

void need_minutes(const WishWords& words) {
  if (is_said(words, "minutes")) return;
  for (const char* word : {"drive-out", "drive-back"})
    if (is_said(words, word))
      throw UsageError("--" + std::string(word) +
                       " takes some of the minutes away from the door: give --minutes");
}

}  // namespace

void read_parts(wish::Wish& wish, const WishWords& words) {
  for (const Said& said : words.all("part")) wish.parts.push_back(said.read(wish::read_part));
  if (wish.parts.size() > wish::most_parts)
    throw UsageError("--part may be given " + std::to_string(wish::most_parts) + " times, not " +
                     std::to_string(wish.parts.size()));
  wish.easy_first = is_said(words, "easy-first");
}

std::optional<int> minutes_of_parts(const wish::Wish& wish, int reserve_minutes) {
  if (wish.parts.empty()) return std::nullopt;
  return sum_of_parts(wish) + reserve_minutes;
}

void check_lesson(const wish::Wish& wish, const WishWords& words) {
  refuse_own_drive(words);
  refuse_with_parts(words);
  need_minutes(words);
  if (wish.parts.empty()) return;
  if (is_said(words, "want"))
    throw UsageError(
        "--want is of a whole lesson: write what each --part is for behind its colon, "
        "such as '20 quiet: turn-off:left=3'");
  const int stops = static_cast<int>(wish::kept_for_stops_s(wish) / 60);
  const int taken = sum_of_parts(wish) + wish.reserve_minutes + stops;
  if (wish.minutes && taken > *wish.minutes)
    throw UsageError("--part: the parts" + std::string(stops > 0 ? ", the planned stops" : "") +
                     (wish.reserve_minutes > 0 ? " and the reserve" : "") + " take " +
                     std::to_string(taken) + " minutes, more than the " +
                     std::to_string(*wish.minutes) + " of the lesson");
}

}  // namespace loopwright::command
