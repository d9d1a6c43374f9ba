// GeoJSON as RFC 7946 has it: longitude first, WGS 84, foreign members beside the features.
#include <catch2/catch.hpp>

#include "loopwright/file/geojson.hpp"

namespace loopwright::test {

using file::write_geojson;

TEST_CASE("a collection of nothing is still a collection", "[file]") {
  CHECK(write_geojson({}, {}) == "{\"type\": \"FeatureCollection\",\n\"features\": [\n]}\n");
}

TEST_CASE("one point is a Point, more are a LineString, each with its values in order", "[file]") {
  const Point a{543000000, 26000000}, b{543000001, -1};
  const std::vector<file::GeoFeature> features{
      {{a}, {{"say", std::string("turn left")}, {"number", std::int64_t{1}}}},
      {{a, b}, {{"joined", true}, {"share", 0.5}}}};
  const std::vector<file::GeoValue> members{{"credit", std::string("© us")}};
  CHECK(write_geojson(features, members) ==
        "{\"type\": \"FeatureCollection\",\n"
        "\"credit\": \"© us\",\n"
        "\"features\": [\n"
        "{\"type\":\"Feature\",\"geometry\":{\"type\":\"Point\",\"coordinates\":[2.6,54.3]},"
        "\"properties\":{\"say\":\"turn left\",\"number\":1}},\n"
        "{\"type\":\"Feature\",\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[2.6,54.3],"
        "[-1e-07,54.3000001]]},\"properties\":{\"joined\":true,\"share\":0.5}}\n"
        "]}\n");
}

TEST_CASE("bytes that are no text are replaced, quotes are escaped", "[file]") {
  const std::vector<file::GeoFeature> features{{{Point{}}, {{"name", std::string("\"\xff\"")}}}};
  const std::string text = write_geojson(features, {});
  CHECK(text.find("\"name\":\"\\\"\uFFFD\\\"\"") != std::string::npos);
}

}  // namespace loopwright::test
