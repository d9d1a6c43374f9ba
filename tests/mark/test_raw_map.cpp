#include <catch2/catch.hpp>
#include <string>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::mark {
namespace {

TEST_CASE("an object without tags has no value for any key", "[mark]") {
  const Tags none;
  CHECK(none.empty());
  CHECK(none.get("highway").empty());
  CHECK_FALSE(none.has("highway"));
}

TEST_CASE("a tag is found by its whole key", "[mark]") {
  const Tags tags{{"maxspeed", "30 mph"}, {"maxspeed:type", "sign"}, {"name", "Ostler Street"}};
  CHECK(tags.get("maxspeed") == "30 mph");
  CHECK(tags.get("maxspeed:type") == "sign");
  CHECK(tags.is("name", "Ostler Street"));
  CHECK(tags.get("max").empty());
  CHECK(tags.get("30 mph").empty());
}

TEST_CASE("tags are told in the order in which they were added", "[mark]") {
  std::string told;
  Tags{{"b", "1"}, {"a", ""}, {"c", "2"}}.each(
      [&](std::string_view key, std::string_view value) { told.append(key).append(value); });
  CHECK(told == "b1ac2");
}

TEST_CASE("a key named twice keeps its first value", "[mark]") {
  CHECK(Tags{{"lit", "yes"}, {"lit", "no"}}.get("lit") == "yes");
}

TEST_CASE("nodes and their tags are found by map id", "[mark]") {
  RawMap raw;
  CHECK(raw.find_node(5) == nullptr);
  CHECK(raw.tags_of_node(5).empty());
  raw.nodes = {{3, {}}, {5, point_from_degrees(54.3, 2.6)}, {9, {}}};
  raw.node_tags = {{5, Tags{{"highway", "stop"}}}};
  REQUIRE(raw.find_node(5) != nullptr);
  CHECK(raw.find_node(5)->at == point_from_degrees(54.3, 2.6));
  CHECK(raw.find_node(4) == nullptr);
  CHECK(raw.tags_of_node(5).is("highway", "stop"));
  CHECK(raw.tags_of_node(9).empty());
}

}  // namespace
}  // namespace loopwright::mark
