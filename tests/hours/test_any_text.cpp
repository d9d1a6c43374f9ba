// What must hold of any text of hours at any moment; texts are put together by chance from the grammar
// (OSM wiki Key:opening_hours/specification 0.7).
#include <array>
#include <catch2/catch.hpp>
#include <string>

#include "loopwright/base/dice.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::hours {
namespace {

constexpr int texts = 250;
constexpr std::array days{"Mo-Fr",        "Sa",    "Su,PH",     "Mo,We,Fr",   "Fr-Mo",
                          "PH",           "Mo[1]", "Apr-Sep",   "week 10-20", "Dec 24",
                          "Mar 28-Apr 2", "Mo-Su", "Sa[-1],Su", "2026 Nov",   ""};
constexpr std::array times{
    "07:00-10:00", "16:00-19:00",    "22:00-06:00", "00:00-24:00", "08:15-09:15,14:45-15:45",
    "23:30-26:00", "sunrise-sunset", "10:00+",      "12:00-12:30"};
constexpr std::array ends{"", "", "", " off", " open", " unknown", " closed"};
constexpr std::array joints{"; ", ", ", " || "};

std::string any_rule(Dice& dice) {
  const std::string day = days[dice.below(days.size())], time = times[dice.below(times.size())];
  return (day.empty() ? time : day + " " + time) + ends[dice.below(ends.size())];
}

std::string any_text(Dice& dice) {
  std::string text = any_rule(dice);
  for (std::size_t more = dice.below(4); more > 0; --more)
    text += joints[dice.below(joints.size())] + any_rule(dice);
  return text;
}

const Setting& london() {
  static const Setting setting("GB-ENG", "Europe/London", std::nullopt);
  return setting;
}

/// Any minute of 2026 and 2027; one in three close to a change of the clocks or of the year.
Instant any_moment(Dice& dice) {
  constexpr std::array traps{CivilTime{{2026, 3, 29}, 0, 0, 0}, CivilTime{{2026, 10, 25}, 0, 0, 0},
                             CivilTime{{2026, 12, 31}, 22, 0, 0},
                             CivilTime{{2027, 2, 28}, 22, 0, 0}};
  constexpr std::size_t minutes_of_two_years = 2 * 365 * 24 * 60, six_hours = 360;
  const bool trap = dice.below(3) == 0;
  const std::int64_t from =
      civil_seconds(trap ? traps[dice.below(traps.size())] : CivilTime{{2026, 1, 1}, 0, 0, 0});
  const std::size_t minutes = dice.below(trap ? six_hours : minutes_of_two_years);
  return london().on_clock({from + 60 * static_cast<std::int64_t>(minutes), 0});
}

Instant later(const Instant& at, int minutes) {
  return london().on_clock(at.plus_seconds(60LL * minutes));
}

struct Any {
  explicit Any(std::uint64_t seed) : dice(seed) {}
  Dice dice;
  std::string text = any_text(dice);
  Hours hours = read_hours(text);
  Instant moment = any_moment(dice);

  [[nodiscard]] Tri at(const Instant& when) const { return hours.at(when, london()).in_force; }
};

}  // namespace

TEST_CASE("any text of the grammar is read", "[hours]") {
  const Any any(static_cast<std::uint64_t>(GENERATE(range(1, texts))));
  INFO(any.text << ": " << any.hours.problem());
  CHECK(any.hours.readable());
}

TEST_CASE("any interval is one answer only when each of its minutes has it", "[hours]") {
  Any any(static_cast<std::uint64_t>(GENERATE(range(1, texts))));
  const int minutes = static_cast<int>(any.dice.below(180));
  INFO(any.text << " from " << write_time(any.moment) << " for " << minutes);
  const Answer whole = any.hours.through(any.moment, later(any.moment, minutes), london());
  const Tri first = any.at(any.moment);
  bool one = true;
  for (int k = 1; k <= minutes; ++k) one = one && any.at(later(any.moment, k)) == first;
  CHECK(whole.in_force == (one ? first : Tri::unknown));
}

TEST_CASE("until the next change of any text nothing changes, and then it does", "[hours]") {
  constexpr int most_minutes = 3000;
  const Any any(static_cast<std::uint64_t>(GENERATE(range(1, texts))));
  INFO(any.text << " from " << write_time(any.moment));
  const auto change = any.hours.next_change(any.moment, london());
  const Tri now = any.at(any.moment);
  if (change) CHECK(any.at(*change) != now);
  for (int k = 1; k <= most_minutes; ++k) {
    const Instant then = later(any.moment, k);
    if (change && then.unix_s >= change->unix_s) break;
    REQUIRE(any.at(then) == now);
  }
}

TEST_CASE("what a last rule for every day says holds, whatever was said before", "[hours]") {
  const Any any(static_cast<std::uint64_t>(GENERATE(range(1, texts))));
  INFO(any.text << " at " << write_time(any.moment));
  const auto then = [&](const char* last) {
    return read_hours(any.text + last).at(any.moment, london()).in_force;
  };
  CHECK(then("; 24/7") == Tri::yes);
  CHECK(then("; off") == Tri::no);
  CHECK(then("; unknown") == Tri::unknown);
}

TEST_CASE("a rule for the time that is left over says nothing of the rest", "[hours]") {
  const Any any(static_cast<std::uint64_t>(GENERATE(range(1, texts))));
  INFO(any.text << " at " << write_time(any.moment));
  const Tri now = any.at(any.moment);
  const Tri with = read_hours(any.text + " || 24/7").at(any.moment, london()).in_force;
  if (now != Tri::no) CHECK(with == now);
}

}  // namespace loopwright::hours
