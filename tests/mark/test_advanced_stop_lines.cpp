// Boxes for cyclists before lights. Sources: OSM wiki Tag:cycleway=asl; Highway Code rule 178.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

BuiltTown cross(const std::string& lines) {
  return built_town(R"(
      N
.
.
W    ax   E
.
.
      S
w1 WaxE highway=primary
w3 NxS highway=residential
)" + lines);
}

constexpr std::string_view lights = "nx highway=traffic_signals\n";

TEST_CASE("lights without a box have no advanced stop line", "[mark][asl]") {
  CHECK(places(cross(std::string(lights)), Kind::advanced_stop_line).empty());
}

TEST_CASE("an advanced stop line is met by those who come to the lights", "[mark][asl]") {
  const BuiltTown town = cross("na cycleway=asl direction=forward\n" + std::string(lights));
  CHECK(chances(town, Kind::advanced_stop_line) == Texts{"Wax"});
  CHECK(reasons(town, Kind::advanced_stop_line) == Texts{"certain cycleway=asl na"});
}

TEST_CASE("without a direction it is for those who have the nearer junction before them",
          "[mark][asl]") {
  CHECK(chances(cross("na cycleway=asl\n" + std::string(lights)), Kind::advanced_stop_line) ==
        Texts{"Wax"});
}

TEST_CASE("the box may be mapped behind the light of its own approach", "[mark][asl]") {
  const BuiltTown town = built_town(R"(
       N
.
.
W    lax   E
.
.
       S
w1 WlaxE highway=primary
w3 NxS highway=residential
nl highway=traffic_signals traffic_signals:direction=forward
na cycleway=asl direction=forward
)");
  CHECK(chances(town, Kind::advanced_stop_line) == Texts{"lax"});
}

TEST_CASE("an advanced stop line on the junction is reported and no place", "[mark][asl]") {
  const BuiltTown town = cross("nx highway=traffic_signals cycleway=asl\n");
  CHECK(places(town, Kind::advanced_stop_line).empty());
  CHECK(oddities(town) == Texts{"nx advanced stop line on a junction or a road's end"});
}

TEST_CASE("an advanced stop line without lights near is reported and no place", "[mark][asl]") {
  const BuiltTown town = cross("na cycleway=asl direction=forward\n");
  CHECK(places(town, Kind::advanced_stop_line).empty());
  CHECK(oddities(town) == Texts{"na advanced stop line without lights near"});
}

}  // namespace
}  // namespace loopwright::test
