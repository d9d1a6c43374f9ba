// Method: what lies on the stretches behind a row and before the next belongs to the row. Of a way home the
// streets it follows are named, at most two, in order; the file has all of it.
#include "card/stops.hpp"

#include <algorithm>
#include <cmath>

#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/parts.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::card {
namespace {

constexpr std::size_t most_streets = 2;

/// Stretches behind a row and up to the next, [first, end).
struct Behind {
  std::size_t first = 0, end = 0;
  [[nodiscard]] bool has(std::size_t stretch) const { return stretch >= first && stretch < end; }
};

Behind behind(const Subject& subject, std::size_t row) {
  const auto& rows = subject.rows;
  const std::size_t first = row == 0 ? 0 : rows[row].stretch + 1;
  const std::size_t end =
      row + 1 < rows.size() ? rows[row + 1].stretch + 1 : subject.loop.stretches.size();
  return {first, end};
}

std::string_view side_key(const wish::PullUp& place) {
  return place.left ? "side.left" : "side.right";
}

PlannedStop planned_stop(const Subject& subject, const wish::PullUp& place) {
  const say::Words& words = subject.words;
  return {place,
          subject.rows.back().say,  // it pulls up at the near kerb, as every planned stop
          street_words(subject, place.stretch), purpose_words(words, place),
          drive_on_words(subject, place)};
}

std::string named(const say::Words& words, const std::string& street) {
  return street.empty() ? std::string(words.at("stop.unnamed")) : say::spoken_name(street);
}

/// A stop of the learner's own drive that has a row.
bool has_row(const Subject& subject, const wish::PullUp& place) {
  return !place.purpose.empty() && !is_at_change(subject, place);
}

/// Of the last hard pass that begins in the row.
const wish::StopAfter* last_stop_after(const Subject& subject, std::size_t row) {
  const wish::StopAfter* last = nullptr;
  for (const wish::StopAfter& after : subject.loop.stops_after) {
    const auto& passes = subject.rows[row].passes;
    if (std::find(passes.begin(), passes.end(), after.pass) != passes.end()) last = &after;
  }
  return last;
}

/// The lesson itself stops there before the next row is said, or the next row is to pull up.
bool stops_next(const Subject& subject, std::size_t row) {
  const auto& rows = subject.rows;
  if (row + 1 < rows.size() && rows[row + 1].kind == say::RowKind::pull_up) return true;
  return std::ranges::any_of(
      rows[row].passes, [&](std::size_t pass) { return subject.loop.passes[pass].stop_s > 0; });
}

std::string after_words(const Subject& subject, std::size_t row) {
  const say::Words& words = subject.words;
  const wish::StopAfter* last = last_stop_after(subject, row);
  if (last == nullptr || (!last->pull_up && stops_next(subject, row))) return {};
  if (!last->pull_up)
    return words.fill("stop.none_after",
                      {{"minutes", write_minutes(words, wish::stop_after_most_s)}});
  const wish::PullUp& place = subject.loop.pull_ups[*last->pull_up];
  return words.fill("stop.after", {{"street", street_words(subject, place.stretch)},
                                   {"minutes", write_minutes(words, last->seconds)}});
}

/// "Mill Road, Quay Street": each once, the longest of very many.
std::string streets_of(const Subject& subject, const wish::WayHome& way) {
  std::vector<std::string> streets;
  for (const wish::LoopStretch& row : way.stretches) {
    if (row.street.empty()) continue;
    const std::string street = say::spoken_name(row.street);
    if (std::find(streets.begin(), streets.end(), street) == streets.end())
      streets.push_back(street);
  }
  if (streets.empty()) return std::string(subject.words.at("stop.unnamed"));
  const bool more = streets.size() > most_streets;
  if (more) streets.resize(most_streets);
  return joined(streets, ", ") + (more ? " …" : "");
}

const wish::WayHome* way_home(const Subject& subject, const Behind& where) {
  const auto& ways = subject.loop.ways_home;
  const auto way = std::find_if(ways.begin(), ways.end(), [&](const wish::WayHome& one) {
    return where.has(one.from_stretch);
  });
  return way == ways.end() ? nullptr : &*way;
}

std::string home_words(const Subject& subject, const Behind& where) {
  const wish::WayHome* way = way_home(subject, where);
  if (way == nullptr) return {};
  const bool easy = way->hardest <= wish::easy_hardness(subject.answer.wish);
  return subject.words.fill(easy ? "stop.home" : "stop.home_hard",
                            {{"minutes", write_minutes(subject.words, way->seconds)},
                             {"streets", streets_of(subject, *way)},
                             {"n", std::to_string(way->hardest)}});
}

}  // namespace

std::string purpose_words(const say::Words& words, const wish::PullUp& place) {
  if (place.purpose.empty()) return std::string(words.at("stop.offered"));
  return words.fill("stop." + place.purpose, {{"minutes", write_minutes(words, place.seconds)}});
}

std::string drive_on_words(const Subject& subject, const wish::PullUp& place) {
  if (place.leave_by_s == 0) return {};
  const Instant by = wish::clock_after(subject.loop, place.leave_by_s, subject.setting);
  return subject.words.fill("stop.drive_on", {{"clock", write_clock(by)}});
}

bool is_at_change(const Subject& subject, const wish::PullUp& place) {
  constexpr double near_m = 100;  // ours: nobody changes seats and stops again so soon
  const auto& stretches = subject.loop.stretches;
  const wish::RowSpan practice = wish::practice_of(subject.loop);
  const bool begins = practice.first > 0 && place.stretch == 0;
  const bool ends = practice.last + 1 < stretches.size() && place.stretch + 1 == stretches.size();
  if (place.purpose.empty() || !(begins || ends)) return false;
  const auto& partial_m = stretches[place.stretch].partial_m;
  return !partial_m || std::abs((*partial_m)[begins ? 0 : 1] - place.at_m) <= near_m;
}

std::string stop_words(const Subject& subject, const wish::Loop& loop, const wish::PullUp& place) {
  const say::Words& words = subject.words;
  std::string text =
      words.fill("stop.planned", {{"side", std::string(words.at(side_key(place)))},
                                  {"street", named(words, loop.stretches[place.stretch].street)},
                                  {"what", purpose_words(words, place)}});
  if (const std::string on = drive_on_words(subject, place); !on.empty()) text += "; " + on;
  return text + words.fill("stop.check", {{"why", place.why}, {"check", place.check}});
}

std::string street_words(const Subject& subject, std::size_t stretch) {
  return named(subject.words, subject.loop.stretches[stretch].street);
}

std::vector<PlannedStop> planned_stops(const Subject& subject, std::size_t row) {
  const Behind where = behind(subject, row);
  std::vector<PlannedStop> stops;
  for (const wish::PullUp& place : subject.loop.pull_ups)
    if (has_row(subject, place) && where.has(place.stretch))
      stops.push_back(planned_stop(subject, place));
  return stops;
}

std::string stop_after_words(const Subject& subject, std::size_t row) {
  const say::Words& words = subject.words;
  const wish::StopAfter* last = last_stop_after(subject, row);
  if (last == nullptr) return {};
  if (!last->pull_up)
    return stops_next(subject, row) ? "" : std::string(words.at("stop.short_none"));
  const wish::PullUp& place = subject.loop.pull_ups[*last->pull_up];
  return words.fill("stop.short_after", {{"street", street_words(subject, place.stretch)},
                                         {"minutes", write_minutes(words, last->seconds)}});
}

std::optional<HomeFrom> home_from(const Subject& subject, std::size_t row) {
  const wish::WayHome* way = way_home(subject, behind(subject, row));
  if (way == nullptr) return std::nullopt;
  return HomeFrom{way->seconds, streets_of(subject, *way),
                  way->hardest <= wish::easy_hardness(subject.answer.wish) ? 0 : way->hardest};
}

std::vector<std::string> stop_lines(const Subject& subject, std::size_t row) {
  const Behind where = behind(subject, row);
  std::vector<std::string> lines;
  for (const wish::PullUp& place : subject.loop.pull_ups)
    if (has_row(subject, place) && where.has(place.stretch))
      lines.push_back(stop_words(subject, subject.loop, place));
  // Between rows said in one breath nobody pulls up.
  const auto& rows = subject.rows;
  const bool goes_on = row + 1 < rows.size() && rows[row + 1].joined_to_previous;
  std::vector<std::string> parts{after_words(subject, row)};
  if (!goes_on) parts.push_back(home_words(subject, where));
  std::erase(parts, "");
  if (!parts.empty()) lines.push_back(joined(parts, "; "));
  return lines;
}

Point point_of(const road::Roads& roads, const wish::Loop& loop, const wish::PullUp& place) {
  const StretchId s = loop.stretches[place.stretch].stretch;
  const double length_m = roads.piece(s).length_m;
  const double along_m = s.against() ? length_m - place.at_m : place.at_m;
  return point_along(roads.shape_of(s.piece()), along_m);
}

std::vector<file::GeoFeature> stop_features(const road::Roads& roads, const say::Words& words,
                                            const wish::Loop& loop) {
  std::vector<file::GeoFeature> features;
  for (const wish::PullUp& place : loop.pull_ups) {
    if (place.stretch == 0 || place.stretch + 1 == loop.stretches.size()) continue;
    features.push_back({{point_of(roads, loop, place)},
                        {{"what", std::string("pull-up")},
                         {"says", purpose_words(words, place)},
                         {"why", place.why},
                         {"check", place.check}}});
  }
  return features;
}

}  // namespace loopwright::card
