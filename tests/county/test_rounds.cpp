#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "county/draw.hpp"
#include "county/joining.hpp"

using namespace loopwright::county;

namespace {

Drawing drawn(const std::string& more) {
  return draw(read_plan("origin 54.3 2.6\n"
                        "road West tertiary -200,0 200,0 first=edge last=edge\n"
                        "road North residential 0,0 0,200 first=give_way last=closed\n" +
                            more,
                        "x.plan"),
              7);
}

const Line& ring_of(const Drawing& county) {
  return *std::ranges::find(county.lines, LineKind::ring, &Line::kind);
}

long roads_that_end_on(const Drawing& county, const Line& ring) {
  long ends = 0;
  for (const Line& line : county.lines)
    if (line.kind == LineKind::road)
      ends += holds(ring, line.points.front()) + holds(ring, line.points.back());
  return ends;
}

}  // namespace

TEST_CASE("a junction becomes a roundabout that its roads end on", "[county]") {
  const Drawing county = drawn("round 3,2 18 highway=tertiary\n");
  CHECK(county.troubles.empty());
  const Line& ring = ring_of(county);
  CHECK(ring.tags.at("junction") == "roundabout");
  CHECK(roads_that_end_on(county, ring) == 3);
  CHECK(county.rings.size() == 1);
  CHECK(county.rings[0].centre == spot(0, 0));
}

TEST_CASE("a roundabout is drawn clockwise and holds no sign within", "[county]") {
  const Drawing county = drawn("round 0,0 18 highway=tertiary\n");
  const Line& ring = ring_of(county);
  CHECK(ring.points.front() == ring.points.back());
  CHECK(turn_at(ring.points[0], ring.points[1], ring.points[2]) < 0);
  for (const auto& [at, tags] : county.node_tags)
    if (tags.contains("highway")) CHECK(apart(at, spot(0, 0)) >= 18);
}

TEST_CASE("a roundabout where no roads meet is told with its line", "[county]") {
  const Drawing county = drawn("round 120,5 18 highway=tertiary\n");
  REQUIRE(county.troubles.size() == 1);
  CHECK(county.troubles[0] ==
        "line 4: no junction within 30 m of 120,5; move it to where roads meet");
}

TEST_CASE("a roundabout that swallows a whole road is told", "[county]") {
  const Drawing county =
      drawn("road Stub residential 0,0 0,-15 last=closed\nround 0,0 18 highway=tertiary\n");
  REQUIRE(county.troubles.size() == 1);
  CHECK(county.troubles[0].find("Stub lies within the roundabout") != std::string::npos);
}

TEST_CASE("each ban into a grown one-way street holds at a junction of whole ways", "[county]") {
  const Drawing county = drawn(
      "road South tertiary -600,-300 600,-300 first=edge last=edge lit=yes\n"
      "road East tertiary 600,-300 600,500 last=edge lit=yes\n"
      "road Top tertiary -600,500 600,500 first=edge lit=yes\n"
      "road Left tertiary -600,-300 -600,500 lit=yes\n"
      "infill Mead terraces -600,-300 600,-300 600,500 -600,500 lit=yes\n");
  REQUIRE(county.troubles.empty());
  for (const Relation& ban : county.relations) {
    REQUIRE(ban.members.size() == 3);
    const Spot via = std::get<Spot>(ban.members[1].what);
    for (const std::size_t end : {0U, 2U}) {
      const Line& road = county.lines[std::get<std::size_t>(ban.members[end].what)];
      CHECK((road.points.front() == via || road.points.back() == via));
    }
    CHECK(county.lines[std::get<std::size_t>(ban.members[2].what)].tags.at("oneway") == "yes");
  }
}
