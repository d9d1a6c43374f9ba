// What a sheet says of stopping: planned stops, the next place after a hard pass, the way home from here.
#pragma once

#include <string>
#include <vector>

#include "card/sections.hpp"
#include "loopwright/file/geojson.hpp"

namespace loopwright::card {

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
