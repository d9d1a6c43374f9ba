// Method: the words come from the table, minutes from the loop.
#include "card/head.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/variant.hpp"

namespace loopwright::card {
namespace {

std::string whole_minutes(double seconds) {
  return std::to_string(std::lround(seconds / 60));
}

Instant back_by(const Subject& subject) {
  const wish::Wish& wish = subject.answer.wish;
  constexpr double seconds_per_minute = 60;
  const double seconds = wish.minutes ? seconds_per_minute * (*wish.minutes - wish.reserve_minutes)
                                      : subject.whole.seconds.high + subject.whole.stop_seconds;
  return wish::clock_after(subject.whole, seconds, subject.setting);
}

/// "back by 01:30", or with a word on clocks that are changed before.
std::string words_for_end(const Subject& subject) {
  const Instant end = back_by(subject);
  const std::int32_t moved_s = end.offset_s - subject.setting.on_clock(subject.loop.start).offset_s;
  const std::string_view key = moved_s == 0  ? "card.back_by"
                               : moved_s < 0 ? "card.back_by_earlier"
                                             : "card.back_by_later";
  return subject.words.fill(key, {{"clock", write_clock(end)}});
}

/// Of what every loop should take, that which this drive does.
void add_takes(std::vector<std::string>& goals, const Subject& subject) {
  static const std::vector<std::string> none;
  const auto& shortfall = subject.answer.shortfall;
  const auto& not_taken = shortfall ? shortfall->not_taken : none;
  for (const wish::Take& take : subject.answer.wish.takes)
    if (std::ranges::find(not_taken, take.name) == not_taken.end())
      goals.push_back(subject.words.fill("card.takes", {{"place", take.name}}));
}

std::string goal_of(const Subject& subject) {
  std::vector<std::string> goals;
  if (!subject.loop.parts.empty())
    return subject.words.count("card.parts", subject.loop.parts.size());
  for (const wish::Met& met : subject.loop.met)
    goals.push_back(subject.words.fill("card.got", {{"want", write_asked(subject.words, met.want)},
                                                    {"n", std::to_string(met.got)}}));
  add_takes(goals, subject);
  const bool own_drive = !subject.answer.wish.through.empty();
  if (goals.empty())
    return std::string(subject.words.at(own_drive ? "card.own_drive" : "card.no_goal"));
  return joined(goals, ", ");
}

/// What the learner drives, stops not counted.
double learners_s(const wish::Loop& own) {
  return own.seconds.likely - own.stretches.front().arrive_s.likely;
}

std::string driving_words(const Subject& subject) {
  const say::Words& words = subject.words;
  const wish::Loop& loop = subject.whole;
  std::string driving = words.fill("card.driving", {{"likely", whole_minutes(loop.seconds.likely)},
                                                    {"low", whole_minutes(loop.seconds.low)},
                                                    {"high", whole_minutes(loop.seconds.high)}});
  if (loop.practice)
    driving = words.fill("card.learner",
                         {{"driving", driving}, {"n", whole_minutes(learners_s(subject.loop))}});
  std::vector<std::string> parts{driving};
  if (loop.stop_seconds > 0)
    parts.push_back(words.fill("card.stops", {{"n", whole_minutes(loop.stop_seconds)}}));
  return joined(parts, "; ");
}

std::vector<std::string> first_words(const Subject& subject) {
  const Date day = subject.setting.on_clock(subject.loop.start).civil().date;
  const std::string_view holiday = subject.setting.bank_holiday_name(day);
  std::vector<std::string> lines{
      say::capitalised(wish::variant_words(subject.answer, subject.loop)),
      write_barred(subject.words, barred_on(subject.timed)),
      holiday.empty() ? "" : subject.words.fill("card.holiday", {{"name", std::string(holiday)}})};
  std::erase(lines, "");
  return lines;
}

std::string kept_off_words(const Subject& subject) {
  std::vector<std::string> avoided;
  for (const wish::Avoid& avoid : subject.answer.wish.avoids)
    avoided.push_back(write_kind(subject.words, avoid.kind, avoid.movement));
  if (avoided.empty()) return {};
  return subject.words.fill("card.kept_off", {{"kinds", joined(avoided, ", ")}});
}

/// With how long the drives of this learner take, when that isn't as usual.
std::string level_words(const Subject& subject) {
  const wish::Wish& wish = subject.answer.wish;
  const std::string level = subject.words.fill("card.level", {{"n", std::to_string(wish.level)}});
  if (wish.pace == wish::usual_pace) return level;
  char factor[16];
  std::snprintf(factor, sizeof factor, "%.2f", wish.pace);
  return subject.words.fill("card.pace", {{"level", level}, {"factor", factor}});
}

}  // namespace

Head head_of(const Subject& subject) {
  const say::Words& words = subject.words;
  return {words.fill("card.title", {{"n", std::to_string(subject.loop.id)}}),
          write_when(words, subject.loop.start),
          first_words(subject),
          driving_words(subject),
          words_for_end(subject),
          level_words(subject),
          words.fill("card.goal", {{"goal", goal_of(subject)}}),
          goal_of(subject),
          kept_off_words(subject)};
}

}  // namespace loopwright::card
