// Points and lines with named values, as GeoJSON that other programs open.
//
//   write_geojson({{.line = {at}, .values = {{"say", "turn left"}}}}, {{"credit", "…"}});
//
// Rules: RFC 7946: one FeatureCollection, positions as longitude, latitude in WGS 84 with at most 7
// decimals; a feature of one point is a Point, of more a LineString. Values keep their order; those
// of the collection itself are foreign members (section 6.1). Same input, same bytes.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "loopwright/base/point.hpp"

namespace loopwright::file {

using GeoValue = std::pair<std::string, std::variant<std::string, std::int64_t, double, bool>>;

struct GeoFeature {
  std::vector<Point> line;  ///< at least one point
  std::vector<GeoValue> values;
};

std::string write_geojson(std::span<const GeoFeature> features, std::span<const GeoValue> members);

}  // namespace loopwright::file
