// Member by member. Older files have empty lists, or none.
#include "file/read_drive.hpp"

#include <array>
#include <limits>

#include "loopwright/road/note.hpp"

namespace loopwright::file::values {
namespace {

constexpr double greatest_metres = 1e8;

road::LimitOnDay limit(const Cursor& value) {
  const auto number = or_none(value.at("value"), [](const Cursor& v) { return small(v, 1, 999); });
  road::LimitOnDay limit;
  limit.value = number.value_or(0);
  limit.unit = value.at("unit").word(parse_speed_unit, "\"mph\" or \"km/h\"");
  limit.confidence = value.at("confidence")
                         .word(road::parse_limit_confidence, "certain, inferred, check or noted");
  return limit;
}

std::uint32_t way_index(const Cursor& value) {
  return static_cast<std::uint32_t>(value.whole(0, std::numeric_limits<std::uint32_t>::max()));
}

std::array<double, 2> pair_of_metres(const Cursor& value) {
  const auto both = value.items(2);
  if (both.size() != 2) value.fail("a list of two numbers");
  return {metres(both[0]), metres(both[1])};
}

wish::PullUp pull_up(const Cursor& value, const wish::Loop& loop) {
  wish::PullUp place;
  place.stretch = row_of(value.at("stretch"), loop.stretches.size());
  place.at_m = metres(value.at("at_m"));
  place.left = one_of(value.at("side"), {"left", "right"}) == "left";
  const auto purpose = [](const Cursor& text) { return one_of(text, {"brief", "talk"}); };
  place.purpose = or_none(value.at("for"), purpose).value_or("");
  place.seconds = seconds(value.at("seconds"));
  const auto moment = [](const Cursor& at) {
    return at.number(-greatest_seconds, greatest_seconds);
  };
  place.leave_by_s = or_none(value.at("leave_by_s"), moment).value_or(0);
  place.why = value.at("why_legal").text();
  place.check = value.at("check").text();
  return place;
}

wish::StopAfter stop_after(const Cursor& value, const wish::Loop& loop) {
  wish::StopAfter after;
  after.pass = row_of(value.at("pass"), loop.passes.size());
  after.pull_up = or_none(value.at("pull_up"),
                          [&](const Cursor& row) { return row_of(row, loop.pull_ups.size()); });
  after.seconds = or_none(value.at("seconds"), seconds).value_or(0);
  return after;
}

wish::WayHome way_home(const Cursor& value, const wish::Loop& loop) {
  wish::WayHome way;
  way.from_stretch = row_of(value.at("from_stretch"), loop.stretches.size());
  way.seconds = seconds(value.at("seconds"));
  way.hardest = small(value.at("hardest"), 0, 5);
  way.stretches = list(value.at("stretches"), most_stretches, stretch);
  return way;
}

wish::IndependentStretch independent(const Cursor& value, const wish::Loop& loop) {
  wish::IndependentStretch stretch;
  stretch.first = row_of(value.at("first"), loop.stretches.size());
  stretch.last = row_of(value.at("last"), loop.stretches.size());
  if (stretch.last < stretch.first) value.at("last").fail("a stretch not before \"first\"");
  const auto text = [](const Cursor& words) { return words.text(); };
  stretch.follow = or_none(value.at("follow"), text).value_or("");
  stretch.directions = list(value.at("directions"), most_wants, text);
  return stretch;
}

}  // namespace

std::size_t row_of(const Cursor& value, std::size_t rows) {
  return static_cast<std::size_t>(value.whole(0, static_cast<std::int64_t>(rows) - 1));
}

double seconds(const Cursor& value) {
  return value.number(0, greatest_seconds);
}
double metres(const Cursor& value) {
  return value.number(0, greatest_metres);
}

wish::Range range(const Cursor& value) {
  return {seconds(value.at("low")), seconds(value.at("likely")), seconds(value.at("high"))};
}

wish::LoopStretch stretch(const Cursor& value) {
  wish::LoopStretch stretch;
  stretch.way = map_id(value.at("way"));
  stretch.from = map_id(value.at("from"));
  stretch.to = map_id(value.at("to"));
  stretch.against = one_of(value.at("direction"), {"along", "against"}) == "against";
  stretch.from_index = way_index(value.at("from_index"));
  stretch.to_index = way_index(value.at("to_index"));
  stretch.metres = metres(value.at("metres"));
  if (const auto part = value.find("partial_m")) stretch.partial_m = pair_of_metres(*part);
  stretch.limit = limit(value.at("limit"));
  stretch.arrive_s = range(value.at("arrive_s"));
  stretch.street = value.at("street").text();
  return stretch;
}

void read_pull_ups(const Cursor& value, wish::Loop& loop) {
  if (const auto rows = value.find("pull_ups"))
    loop.pull_ups = list(*rows, most_passes, [&](const Cursor& row) { return pull_up(row, loop); });
  if (const auto rows = value.find("stops_after"))
    loop.stops_after =
        list(*rows, most_passes, [&](const Cursor& row) { return stop_after(row, loop); });
}

void read_ways_home(const Cursor& value, wish::Loop& loop) {
  if (const auto rows = value.find("ways_home"))
    loop.ways_home =
        list(*rows, most_stretches, [&](const Cursor& row) { return way_home(row, loop); });
}

void read_independent(const Cursor& value, wish::Loop& loop) {
  if (const auto rows = value.find("independent"))
    loop.independent =
        list(*rows, most_passes, [&](const Cursor& row) { return independent(row, loop); });
}

}  // namespace loopwright::file::values
