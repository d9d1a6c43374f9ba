// Sources: OSM wiki Tag:highway=trunk_link; 25 degrees and 60 m from the project's notes on tags.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A trunk road W to E, and a link of 206 m from j that leaves it at 14 degrees.
BuiltTown slip_off(const std::string& main, const std::string& link,
                   const std::string& lines = "") {
  return built_town(R"(
W       j       X       E
.
S               k       T
w1 WjXE highway=)" + main +
                    "\nw2 jk oneway=yes highway=" + link +
                    "\nw3 Sk highway=tertiary\nw4 SW highway=tertiary\n" + lines);
}

TEST_CASE("a town without links has no slip roads", "[mark][slip_roads]") {
  CHECK(run_facts(built_town("A   B\nw1 AB highway=trunk\n"), Kind::slip_road).empty());
}

TEST_CASE("a link that leaves a trunk road at a small angle is a slip road", "[mark][slip_roads]") {
  const BuiltTown town = slip_off("trunk", "trunk_link");
  CHECK(run_facts(town, Kind::slip_road) == Texts{"jk inferred highway=trunk_link"});
  CHECK(chances(town, Kind::slip_road) == Texts{"jk"});
}

TEST_CASE("a slip road may be straighter than the road it leaves", "[mark][slip_roads]") {
  const BuiltTown town = built_town(R"(
                N
.
.
.
.
W       j       k
.
                E
w1 WjE highway=trunk
w2 jk oneway=yes highway=trunk_link
w3 kN highway=tertiary
w4 NW highway=tertiary
)");
  CHECK(run_facts(town, Kind::slip_road) == Texts{"jk inferred highway=trunk_link"});
}

TEST_CASE("a link off a dual carriageway of any class is a slip road", "[mark][slip_roads]") {
  CHECK(run_facts(slip_off("primary dual_carriageway=yes", "primary_link"), Kind::slip_road) ==
        Texts{"jk inferred highway=primary_link"});
  CHECK(run_facts(slip_off("primary", "primary_link"), Kind::slip_road).empty());
}

TEST_CASE("a link that joins at a small angle is a slip road, and so is what leads to it",
          "[mark][slip_roads]") {
  const BuiltTown town = built_town(R"(
W               j       E
.
S   i   k
w1 WjE highway=trunk
w2 ki highway=trunk_link oneway=-1
w3 kj highway=trunk_link oneway=yes
w4 Si highway=tertiary
w5 SW highway=tertiary
)");
  CHECK(run_facts(town, Kind::slip_road) ==
        Texts{"ik inferred highway=trunk_link", "kj inferred highway=trunk_link"});
  CHECK(chances(town, Kind::slip_road) == Texts{"ik"});
}

TEST_CASE("where a town's lanes part at 30, there is no slip road", "[mark][slip_roads]") {
  CHECK(run_facts(slip_off("trunk maxspeed=30_mph", "trunk_link"), Kind::slip_road).empty());
  CHECK(run_facts(slip_off("trunk maxspeed=40_mph", "trunk_link"), Kind::slip_road).size() == 1);
}

TEST_CASE("a link that cuts the corner of a junction is no slip road", "[mark][slip_roads]") {
  CHECK(run_facts(slip_off("trunk", "trunk_link", "w5 Xk highway=tertiary\n"), Kind::slip_road)
            .empty());
}

TEST_CASE("a link beside lights is no slip road", "[mark][slip_roads]") {
  CHECK(run_facts(slip_off("trunk", "trunk_link", "nX highway=traffic_signals\n"), Kind::slip_road)
            .empty());
}

TEST_CASE("a link past a roundabout is no slip road", "[mark][slip_roads]") {
  const BuiltTown town = built_town(R"(
W       j       X Z     E
                 Y
S               k       T
w1 WjX highway=trunk
w2 jk oneway=yes highway=trunk_link
w3 SkT highway=tertiary
w4 SW highway=tertiary
w5 XZYX highway=trunk junction=roundabout
w6 ZE highway=trunk
)");
  CHECK(run_facts(town, Kind::slip_road).empty());
}

TEST_CASE("a short link, or one that turns off sharply, is no slip road", "[mark][slip_roads]") {
  const BuiltTown town = built_town(R"(
W       j       X       E
S       lk
w1 WjXE highway=trunk
w2 jk oneway=yes highway=trunk_link
w3 Slk highway=tertiary
w4 SW highway=tertiary
)");
  CHECK(run_facts(town, Kind::slip_road).empty());
}

}  // namespace
}  // namespace loopwright::test
