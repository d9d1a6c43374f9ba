// The wish of a loop file, member by member. What a later version adds may be missing.
#include <limits>

#include "file/read_lesson.hpp"
#include "file/read_values.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::file {
namespace {

using namespace values;

constexpr int most_passes = 99;
constexpr std::size_t most_ways = 100'000;

/// In order, none overlapping, each ending no sooner than it begins: as a file of --terms gives them.
hours::SchoolTerms terms(const Cursor& value) {
  std::vector<hours::TermPart> parts;
  for (const Cursor& item : value.items(wish::most_term_parts)) {
    const hours::TermPart part{date(item.at("first")), date(item.at("last"))};
    if (part.last < part.first) item.at("last").fail("a day not before \"first\"");
    if (!parts.empty() && part.first <= parts.back().last) {
      item.at("first").fail("a day after the part before it");
    }
    parts.push_back(part);
  }
  return hours::SchoolTerms(std::move(parts));
}

/// One point, or an outline of three or more.
wish::KeepOff keep_off(const Cursor& value) {
  wish::KeepOff keep_off{value.at("name").text(), list(value.at("outline"), most_wants, point)};
  const std::size_t points = keep_off.outline.size();
  if (points == 0 || points == 2) value.at("outline").fail("one point, or three and more");
  if (const auto hours = value.find("hours")) keep_off.hours = hours->text();
  return keep_off;
}

wish::Spacing spacing(const Cursor& value) {
  return {kind(value.at("kind")), small(value.at("seconds"), 1, 60 * most_minutes)};
}

wish::Avoid avoid(const Cursor& value) {
  wish::Avoid avoid{kind(value.at("kind"))};
  if (const auto by = value.find("movement")) avoid.movement = movement(*by);
  return avoid;
}

/// Ascending by way, as the search looks them up.
std::vector<wish::StreetUse> street_use(const Cursor& value) {
  // What others drove has no limit; sums of a ledger are held to these (book/streets.cpp).
  constexpr int most = std::numeric_limits<int>::max();
  std::vector<wish::StreetUse> rows;
  for (const Cursor& item : value.items(most_ways)) {
    const wish::StreetUse row{map_id(item.at("way")), small(item.at("today"), 0, most),
                              small(item.at("month"), 0, most)};
    if (row.month < row.today) item.at("month").fail("no less than \"today\"");
    if (!rows.empty() && row.way <= rows.back().way) item.at("way").fail("ways in ascending order");
    rows.push_back(row);
  }
  return rows;
}

/// What the wish keeps off, welcomes and caps.
void read_limits(const Cursor& value, wish::Wish& wish) {
  const auto number = [&](std::string_view key, int most) {
    const auto there = value.find(key);
    return there ? std::optional(small(*there, 1, most)) : std::nullopt;
  };
  if (const auto rows = value.find("keep_offs")) wish.keep_offs = list(*rows, most_wants, keep_off);
  if (const auto rows = value.find("takes"))
    wish.takes = list(*rows, most_wants, [](const Cursor& take) {
      return wish::Take{take.at("name").text(), point(take.at("at"))};
    });
  if (const auto rows = value.find("welcome")) wish.welcome = list(*rows, most_wants, kind);
  if (const auto rows = value.find("spacings")) wish.spacings = list(*rows, most_wants, spacing);
  if (const auto rows = value.find("street_use")) wish.street_use = street_use(*rows);
  wish.place_passes = number("place_passes", most_passes);
  wish.street_passes = number("street_passes", most_passes);
  wish.hardest = number("hardest", 5);
}

wish::PlannedStops planned_stops(const Cursor& value) {
  return {small(value.at("brief_minutes"), 0, most_minutes),
          small(value.at("talk_minutes"), 0, most_minutes),
          list(value.at("new_kinds"), most_wants, kind)};
}

}  // namespace

wish::Wish read_wish(const Cursor& value) {
  wish::Wish wish;
  wish.home = point(value.at("home"));
  wish.end = or_none(value.at("end"), point);
  if (const auto through = value.find("through")) wish.through = list(*through, most_wants, point);
  wish.start = instant(value.at("start"));
  wish.minutes = or_none(value.at("minutes"),
                         [](const Cursor& minutes) { return small(minutes, 1, most_minutes); });
  wish.reserve_minutes = small(value.at("reserve_minutes"), 0, most_minutes);
  wish.level = small(value.at("level"), 1, 5);
  if (const auto given = value.find("level_given")) wish.level_given = given->yes_no();
  if (const auto pace = value.find("pace"))
    wish.pace = pace->number(wish::least_pace, wish::most_pace);
  if (const auto several = value.find("alternatives")) wish.alternatives = small(*several, 1, 1000);
  wish.wants =
      list(value.at("wants"), most_wants, [](const Cursor& asked) { return want(asked, "count"); });
  wish.avoids = list(value.at("avoids"), most_wants, avoid);
  read_limits(value, wish);
  if (const auto independent = value.find("independent_minutes"))
    wish.independent_minutes = small(*independent, 1, most_minutes);
  read_lesson(value, wish);
  if (const auto stops = value.find("stops")) wish.stops = planned_stops(*stops);
  if (const auto given = value.find("terms")) wish.terms = terms(*given);
  return wish;
}

}  // namespace loopwright::file
