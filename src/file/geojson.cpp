// Method: each feature becomes one JSON object on a line of its own. A coordinate is its whole number
// of 1e-7 degrees divided by 1e7: the quotient nearest to the decimal, so that the shortest text
// that reads back the same has at most 7 decimals. Bytes that are no UTF-8 are replaced (U+FFFD).
#include "loopwright/file/geojson.hpp"

#include <cassert>
#include <nlohmann/json.hpp>

namespace loopwright::file {
namespace {

using Json = nlohmann::ordered_json;

Json position(Point at) {
  constexpr double units_per_degree = 1e7;
  return Json::array({at.lon_e7 / units_per_degree, at.lat_e7 / units_per_degree});
}

Json geometry(const std::vector<Point>& line) {
  assert(!line.empty());
  if (line.size() == 1) return {{"type", "Point"}, {"coordinates", position(line.front())}};
  Json positions = Json::array();
  for (const Point at : line) positions.push_back(position(at));
  return {{"type", "LineString"}, {"coordinates", std::move(positions)}};
}

Json json_of(const GeoValue& value) {
  return std::visit([](const auto& v) { return Json(v); }, value.second);
}

std::string text_of(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string text_of(const GeoFeature& feature) {
  Json properties = Json::object();
  for (const GeoValue& value : feature.values) properties[value.first] = json_of(value);
  return text_of(Json{{"type", "Feature"},
                      {"geometry", geometry(feature.line)},
                      {"properties", std::move(properties)}});
}

}  // namespace

std::string write_geojson(std::span<const GeoFeature> features, std::span<const GeoValue> members) {
  std::string text = "{\"type\": \"FeatureCollection\"";
  for (const GeoValue& member : members)
    text.append(",\n").append(text_of(member.first)).append(": ").append(text_of(json_of(member)));
  text += ",\n\"features\": [";
  std::string_view before = "\n";
  for (const GeoFeature& feature : features) {
    text.append(before).append(text_of(feature));
    before = ",\n";
  }
  return text + "\n]}\n";
}

}  // namespace loopwright::file
