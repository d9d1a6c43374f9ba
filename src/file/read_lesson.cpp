// Member by member. A part's rows follow those of the part before; the proof looks at what they claim.
#include "file/read_lesson.hpp"

#include "loopwright/road/kind.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::file::values {
namespace {

wish::Part part(const Cursor& value) {
  wish::Part part;
  part.minutes = small(value.at("minutes"), 1, most_minutes);
  part.roads = value.at("roads").word(wish::parse_roads, "any, quiet or busier");
  if (const auto hardest = value.find("hardest")) part.hardest = small(*hardest, 1, 5);
  part.wants =
      list(value.at("wants"), most_wants, [](const Cursor& asked) { return want(asked, "count"); });
  return part;
}

std::size_t number_of(const Cursor& value, std::size_t least, std::size_t count) {
  return static_cast<std::size_t>(
      value.whole(static_cast<std::int64_t>(least), static_cast<std::int64_t>(count) - 1));
}

wish::Met met(const Cursor& value, const wish::Loop& loop) {
  wish::Met met{want(value, "asked"), small(value.at("got"), 0, static_cast<int>(most_passes))};
  if (const auto practised = value.find("practised"))
    met.practised = list(*practised, most_passes,
                         [&](const Cursor& row) { return number_of(row, 0, loop.passes.size()); });
  return met;
}

wish::LoopPart loop_part(const Cursor& value, const wish::Loop& loop) {
  wish::LoopPart part;
  part.first = number_of(value.at("first"), 0, loop.stretches.size());
  part.last = number_of(value.at("last"), part.first, loop.stretches.size());
  part.met = list(value.at("met"), most_wants, [&](const Cursor& row) { return met(row, loop); });
  return part;
}

}  // namespace

void read_lesson(const Cursor& value, wish::Wish& wish) {
  if (const auto parts = value.find("parts")) wish.parts = list(*parts, wish::most_parts, part);
  if (const auto easy = value.find("easy_first")) wish.easy_first = easy->yes_no();
  if (const auto place = value.find("drive_out")) wish.drive_out = or_none(*place, point);
  if (const auto place = value.find("drive_back")) wish.drive_back = or_none(*place, point);
}

void read_lesson(const Cursor& value, wish::Loop& loop) {
  if (const auto parts = value.find("parts"))
    loop.parts =
        list(*parts, wish::most_parts, [&](const Cursor& row) { return loop_part(row, loop); });
  const auto practice = value.find("practice");
  if (!practice || !practice->unless_null()) return;
  const std::size_t first = number_of(practice->at("first"), 0, loop.stretches.size());
  loop.practice = {first, number_of(practice->at("last"), first, loop.stretches.size())};
}

}  // namespace loopwright::file::values
