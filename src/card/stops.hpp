// What a sheet says of stopping: planned stops, the next place after a hard pass, the way home from here.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/sections.hpp"
#include "loopwright/file/geojson.hpp"

namespace loopwright::card {

/// "Mill Road", or that it has no name.
std::string street_words(const Subject& subject, std::size_t stretch);

/// A stop that is part of the lesson.
struct PlannedStop {
  const wish::PullUp& place;
  std::string say;  ///< "pull up on the left when it's safe"
  std::string street;
  std::string what;      ///< "brief, 4 min"
  std::string drive_on;  ///< "drive on by 15:27"; empty when nothing hangs on it
};

/// Between a row and the next, in driving order; not what is done where the seats are changed.
std::vector<PlannedStop> planned_stops(const Subject& subject, std::size_t row);

/// "drive on by 15:27"; empty when nothing hangs on it.
std::string drive_on_words(const Subject& subject, const wish::PullUp& place);
/// A planned stop of the learner's own drive that is at the kerb where the seats are changed, or so near it that it is made
/// there.
bool is_at_change(const Subject& subject, const wish::PullUp& place);
/// "pull up on the left when it is safe, in Steep Street: talk, 4 min; drive on by 15:27; no ban mapped: check …"; loop:
/// that of which it is a stop.
std::string stop_words(const Subject& subject, const wish::Loop& loop, const wish::PullUp& place);

/// "P: Steep Street, 3 min on" after the last hard pass of a row; empty when it has none.
std::string stop_after_words(const Subject& subject, std::size_t row);

/// The short way home from between a row and the next.
struct HomeFrom {
  double seconds = 0;
  std::string streets;  ///< "Mill Road, Quay Street …"
  int hard = 0;         ///< 0: an easy way
};
std::optional<HomeFrom> home_from(const Subject& subject, std::size_t row);

/// For one row: planned stops between it and the next; then in one line where to stop after what is hard
/// in it, and the short way home from there.
std::vector<std::string> stop_lines(const Subject& subject, std::size_t row);

/// A point for each place to pull up, but none on the stretches of the door.
std::vector<file::GeoFeature> stop_features(const road::Roads& roads, const say::Words& words,
                                            const wish::Loop& loop);

/// "brief, 4 min", "a place to pull up"
std::string purpose_words(const say::Words& words, const wish::PullUp& place);
Point point_of(const road::Roads& roads, const wish::Loop& loop, const wish::PullUp& place);

}  // namespace loopwright::card
