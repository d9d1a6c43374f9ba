// The block of a sheet round the rows of independent driving: what the learner is told at its beginning,
// and where it ends.
#pragma once

#include <vector>

#include "card/sections.hpp"
#include "loopwright/file/geojson.hpp"

namespace loopwright::card {

enum class NoticeKind : std::uint8_t { begins, ends };

/// What a sheet says between two rows, over its whole width.
struct Notice {
  NoticeKind kind = NoticeKind::begins;
  std::string head;
  std::vector<std::string> lines;
};

/// Before row `k`: where independent driving begins or ends. k may be the number of rows.
std::vector<Notice> independent_before(const Subject& subject, std::size_t k);

/// A line for each stretch, without the stretches of the door.
std::vector<file::GeoFeature> independent_features(const road::Roads& roads,
                                                   const wish::Loop& loop);

}  // namespace loopwright::card
