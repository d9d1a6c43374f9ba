#include "command/lesson_words_of_pupil.hpp"

#include <algorithm>
#include <cmath>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/print.hpp"
#include "command/to_mind.hpp"
#include "command/wish_of_words.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/book/lesson_times.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {
namespace {

constexpr int usual_length = 60;
constexpr int usual_brief = 4;  // as --brief of 'loops' has it
constexpr Between lengths{20, 600};
const std::string from_book = "the book";

int minutes_said(const WishWords& words, std::string_view name, int otherwise) {
  const Said* said = words.one(name);
  return said == nullptr ? otherwise : read_int(said->text).value_or(otherwise);
}

/// Minutes that stops take which are planned on the way.
int stop_minutes(const WishWords& words) {
  const auto briefs = static_cast<int>(words.all("new").size());
  return briefs * minutes_said(words, "brief", usual_brief) + minutes_said(words, "talk", 0);
}

LessonLength fill_minutes(WishWords& words, int length) {
  const auto topic = words.all("new").empty() ? book::Topic::known : book::Topic::fresh;
  const book::LessonTimes times = book::lesson_times(length, topic);
  const int stops = std::min(stop_minutes(words), times.talk);
  const int reserve = minutes_said(words, "reserve", times.reserve);
  words.fill("reserve", std::to_string(reserve), from_book);
  const int wheels = std::max(times.wheels, minutes_of_drive.low - stops);
  words.fill("minutes", std::to_string(wheels + stops + reserve), from_book);
  std::string sum = "lesson of " + std::to_string(length) +
                    " min: " + std::to_string(times.talk - stops) + " to talk at the door, " +
                    std::to_string(times.wheels) + " to drive";
  if (stops > 0) sum += ", " + std::to_string(stops) + " for stops on the way";
  if (reserve > 0) sum += ", back " + std::to_string(reserve) + " early";
  return {length, sum};
}

}  // namespace

PupilRecord record_of(const book::Book& book, const std::string& code) {
  PupilRecord record{book::lessons_of(book, code), {}};
  record.pace = book::learned_pace(record.lessons, book::traces_of(book, code));
  return record;
}

std::string home_said(const std::string& said, const book::Pupil& pupil) {
  if (!said.empty()) return said;
  if (!pupil.home.empty()) return pupil.home;
  throw UsageError("--home is required: the book has none of " + pupil.code +
                   " ('loopwright pupil change " + pupil.code + " --home PLACE' keeps one)");
}

double pace_at_start(const WishWords& words, const book::PaceLearned& pace) {
  if (pace.lessons < least_lessons_for_pace) return 1;
  const Said* start = words.one("start");
  return start == nullptr ? pace.factor : pace.at(time_of("--start", start->text).civil.hour);
}

int length_said(const std::string& length) {
  return length.empty() ? usual_length : whole_number("--length", length, lengths);
}

LessonLength fill_from_book(WishWords& words, const book::Pupil& pupil, const PupilRecord& record,
                            const std::string& length) {
  if (words.one("alternatives") != nullptr)
    throw UsageError("--alternatives: a plan keeps one loop; leave it out");
  if (words.one("home") == nullptr) words.fill("home", home_said("", pupil), from_book);
  const std::vector<wish::Want> wants = wants_said(words);
  for (const road::Kind kind : pupil.avoids)
    if (beats(wants, kind) == nullptr)
      words.fill("avoid", std::string(road::name(kind)), from_book);
  const auto level = book::level_now(scheme_kept(pupil), record.lessons);
  words.fill("level", std::to_string(book::wish_level(level)), from_book);
  const int said = minutes_said(words, "minutes", 0);
  const int minutes = length.empty() ? std::max(usual_length, said) : length_said(length);
  const bool otherwise = words.one("minutes") != nullptr || words.one("part") != nullptr ||
                         words.one("through") != nullptr;
  if (const double pace = pace_at_start(words, record.pace);
      fixed(pace, 2) != fixed(wish::usual_pace, 2))
    words.fill("pace", fixed(pace, 2), from_book);
  return otherwise ? LessonLength{minutes, ""} : fill_minutes(words, minutes);
}

}  // namespace loopwright::command
