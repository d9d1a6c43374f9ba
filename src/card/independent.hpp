// The block of a sheet round the rows of independent driving: what the learner is told at its beginning,
// and where it ends.
#pragma once

#include <vector>

#include "card/sections.hpp"
#include "loopwright/file/geojson.hpp"

namespace loopwright::card {

/// What stands before row k: the end of a stretch, the beginning of one, both or mostly nothing. For
/// k = rows: what stands behind the last.
void add_independent_before(Sheet& sheet, const Subject& subject, std::size_t k);

/// A line for each stretch, without the stretches of the door.
std::vector<file::GeoFeature> independent_features(const road::Roads& roads,
                                                   const wish::Loop& loop);

}  // namespace loopwright::card
