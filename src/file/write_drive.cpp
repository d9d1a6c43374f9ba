// Member by member in the order of the loop file's description.
#include "file/write_drive.hpp"

#include "file/words.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::file::values {
namespace {

Json limit(const road::LimitOnDay& limit) {
  return {{"value", limit.value == 0 ? Json(nullptr) : Json(limit.value)},
          {"unit", name(limit.unit)},
          {"confidence", road::name(limit.confidence)}};
}

}  // namespace

double seconds(double value) {
  return rounded(value, 1e3);
}
double metres(double value) {
  return rounded(value, 1e2);
}

Json range(const wish::Range& range) {
  return {{"low", seconds(range.low)},
          {"likely", seconds(range.likely)},
          {"high", seconds(range.high)}};
}

Json stretch(const wish::LoopStretch& stretch) {
  Json result = {{"way", stretch.way},
                 {"from", stretch.from},
                 {"to", stretch.to},
                 {"direction", stretch.against ? "against" : "along"},
                 {"from_index", stretch.from_index},
                 {"to_index", stretch.to_index},
                 {"metres", metres(stretch.metres)}};
  if (stretch.partial_m) {
    result["partial_m"] = {metres((*stretch.partial_m)[0]), metres((*stretch.partial_m)[1])};
  }
  result["limit"] = limit(stretch.limit);
  result["arrive_s"] = range(stretch.arrive_s);
  result["street"] = stretch.street;
  return result;
}

Json pull_up(const wish::PullUp& place) {
  // No moment to leave by: the wish gives no minutes.
  const Json leave_by = place.leave_by_s == 0 ? Json(nullptr) : Json(seconds(place.leave_by_s));
  return {{"stretch", place.stretch},
          {"at_m", metres(place.at_m)},
          {"side", place.left ? "left" : "right"},
          {"for", text_or_null(place.purpose)},
          {"seconds", seconds(place.seconds)},
          {"leave_by_s", leave_by},
          {"why_legal", place.why},
          {"check", place.check}};
}

Json stop_after(const wish::StopAfter& after) {
  return {{"pass", after.pass},
          {"pull_up", or_null(after.pull_up, [](std::size_t row) { return row; })},
          {"seconds", after.pull_up ? Json(seconds(after.seconds)) : Json(nullptr)}};
}

Json way_home(const wish::WayHome& way) {
  return {{"from_stretch", way.from_stretch},
          {"seconds", seconds(way.seconds)},
          {"hardest", way.hardest},
          {"stretches", list(way.stretches, stretch)}};
}

Json independent(const wish::IndependentStretch& stretch) {
  return {{"first", stretch.first},
          {"last", stretch.last},
          {"follow", text_or_null(stretch.follow)},
          {"directions", stretch.directions}};
}

}  // namespace loopwright::file::values
