// What counts as an arm of a roundabout, and what the signs count as an exit.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A ring of 40 m, 10 m a character. Clockwise: a b c e d, with c and e both to the south.
constexpr std::string_view ring = R"(
N      n
.
.
.
.
.
       a
.
w    d   b    E
.
      e c
.
       P
.
.
T      S       U
.
.
.
.
t       u
w1 abceda highway=tertiary junction=roundabout
w2 na highway=tertiary
w3 Eb highway=tertiary
w5 wd highway=tertiary
)";

BuiltTown ring_town(const std::string& lines) {
  return built_town(draw_town(std::string(ring) + lines, 10), "GB-ENG");
}

TEST_CASE("an arm parted by a splitter island counts once", "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w6 cP highway=tertiary oneway=yes\n"
      "w7 Pe highway=tertiary oneway=yes\n"
      "w8 PS highway=tertiary\n");
  CHECK(arms(town, Kind::roundabout) ==
        Texts{"in n out n", "in E out E", "in P out P", "in w out w"});
  const Texts all = chances(town, Kind::roundabout);
  for (const char* text : {"nabE left 1", "nabcP ahead 2", "nabcedw right 3", "nabcedan round 4",
                           "Pedw left 1", "Pedan ahead 2", "PedabE right 3", "PedabcP round 4"}) {
    CHECK_THAT(all, Catch::VectorContains(std::string(text)));
  }
}

TEST_CASE("where a splitter island parts a road, nobody emerges or turns off",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w6 cP highway=tertiary oneway=yes\n"
      "w7 Pe highway=tertiary oneway=yes\n"
      "w8 PS highway=tertiary\n");
  CHECK(chances(town, Kind::emerge).empty());
  CHECK(chances(town, Kind::turn_off).empty());
}

TEST_CASE("a dual carriageway is one arm by its name", "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w6 cu highway=primary oneway=yes name=Mill_Road\n"
      "w7 te highway=primary oneway=yes name=Mill_Road\n"
      "w8 ut highway=primary\n");
  CHECK(arms(town, Kind::roundabout) ==
        Texts{"in n out n", "in E out E", "in t out u", "in w out w"});
  CHECK_THAT(chances(town, Kind::roundabout),
             Catch::VectorContains(std::string("tedabcu round 4")));
}

TEST_CASE("one-way streets of different names that don't meet are two arms",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w6 cu highway=primary oneway=yes name=Mill_Road\n"
      "w7 te highway=primary oneway=yes name=Quay_Road\n"
      "w8 ut highway=primary\n");
  CHECK(arms(town, Kind::roundabout) ==
        Texts{"in n out n", "in E out E", "in - out u", "in t out -", "in w out w"});
}

TEST_CASE("a one-way road through the roundabout is two arms, though its name is one",
          "[mark][roundabouts]") {
  const BuiltTown town = built_town(draw_town(R"(
     N
.
     a
W   d b   E
     c
.
t    S    u
w1 abcda highway=tertiary junction=roundabout
w2 Na highway=tertiary
w3 bE highway=tertiary oneway=yes name=High_Street
w4 Wd highway=tertiary oneway=yes name=High_Street
w5 EuStW highway=tertiary
)",
                                              20),
                                    "GB-ENG");
  CHECK(arms(town, Kind::roundabout) == Texts{"in N out N", "in - out E", "in W out -"});
  CHECK_THAT(chances(town, Kind::roundabout), Catch::VectorContains(std::string("WdabE ahead 2")));
}

TEST_CASE("a private road is no exit to count", "[mark][roundabouts]") {
  BuiltTown town = ring_town("w6 Sc highway=residential access=private\n");
  CHECK(arms(town, Kind::roundabout) ==
        Texts{"in n out n", "in E out E", "in S out S (private)", "in w out w"});
  CHECK_THAT(chances(town, Kind::roundabout), Catch::VectorContains(std::string("nabcdw right 2")));
}

TEST_CASE("an arm whose way out is shut is no exit to count, though one comes in by it",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w6 cP highway=tertiary oneway=yes vehicle=no\n"
      "w7 Pe highway=tertiary oneway=yes\n"
      "w8 PS highway=tertiary\n");
  CHECK(arms(town, Kind::roundabout) ==
        Texts{"in n out n", "in E out E", "in P out P (private)", "in w out w"});
  CHECK_THAT(chances(town, Kind::roundabout),
             Catch::VectorContains(std::string("nabcedw right 2")));
}

TEST_CASE("an exit to a service road has no number, and isn't counted", "[mark][roundabouts]") {
  const BuiltTown town = ring_town("w6 Sc highway=service\n");
  const Texts all = chances(town, Kind::roundabout);
  CHECK_THAT(all, Catch::VectorContains(std::string("nabcS ahead")));
  CHECK_THAT(all, Catch::VectorContains(std::string("nabcdw right 2")));
}

TEST_CASE("a street for access only is an exit to count, though we don't take it",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town("w6 Sc highway=residential motor_vehicle=destination\n");
  const Texts all = chances(town, Kind::roundabout);
  CHECK_THAT(all, Catch::VectorContains(std::string("nabcdw right 3")));
  CHECK_THAT(all, !Catch::VectorContains(std::string("nabcS ahead 2")));
}

TEST_CASE("a motorway left out is an exit to count", "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w6 cu highway=motorway_link\n"
      "w7 te highway=motorway_link\n");
  CHECK(arms(town, Kind::roundabout) ==
        Texts{"in n out n", "in E out E", "in t out u", "in w out w"});
  CHECK_THAT(chances(town, Kind::roundabout),
             Catch::VectorContains(std::string("nabcedw right 3")));
}

TEST_CASE("a street one may not leave by is no exit", "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w6 Se highway=residential oneway=yes\n"
      "w7 wTS highway=residential\n");
  CHECK_THAT(arms(town, Kind::roundabout), Catch::VectorContains(std::string("in S out -")));
  CHECK_THAT(chances(town, Kind::roundabout), Catch::VectorContains(std::string("nabedw right 2")));
}

TEST_CASE("a bus gate out of the ring is no exit", "[mark][roundabouts]") {
  const BuiltTown town =
      ring_town("w6 cS highway=residential motor_vehicle:forward=no bus:forward=designated\n");
  CHECK_THAT(chances(town, Kind::roundabout), Catch::VectorContains(std::string("nabcdw right 2")));
}

TEST_CASE("a road through the island is no arm", "[mark][roundabouts]") {
  const BuiltTown town = ring_town("w6 db highway=tertiary\n");
  CHECK(arms(town, Kind::roundabout) == Texts{"in n out n", "in E out E", "in w out w"});
  CHECK(town.report.counted("roads through the middle of a roundabout") == 2);
}

/// A road that runs through the middle of a ring, and comes back round it by the south.
BuiltTown cut_through(const std::string& bans) {
  return built_town(draw_town(R"(
     N
.
     a
W   d b   E
     c
.
t    S    u
w1 da highway=tertiary junction=roundabout
w2 ab highway=tertiary junction=roundabout
w3 bc highway=tertiary junction=roundabout
w4 cd highway=tertiary junction=roundabout
w5 Na highway=tertiary
w6 Sc highway=tertiary
w7 Wd highway=primary oneway=yes name=Mill_Road
w8 db highway=primary oneway=yes name=Mill_Road
w9 bE highway=primary oneway=yes name=Mill_Road
w10 EuStW highway=tertiary
)" + bans,
                              20),
                    "GB-ENG");
}

TEST_CASE("lanes through the island that don't join the ring are no arms", "[mark][roundabouts]") {
  const BuiltTown town = cut_through(
      "r1 only_straight_on from=w7 via=d to=w8\n"
      "r2 no_left_turn from=w2 via=b to=w9\n");
  CHECK(arms(town, Kind::roundabout) == Texts{"in N out N", "in S out S"});
  CHECK(town.report.counted("lanes through a roundabout that don't join its ring") == 2);
  const Texts all = chances(town, Kind::roundabout);
  CHECK_THAT(all, Catch::VectorContains(std::string("NabcS ahead 1")));
  CHECK_THAT(all, Catch::VectorContains(std::string("NabcdaN round 2")));
}

TEST_CASE("lanes through the island that one may leave and join at the ring are arms",
          "[mark][roundabouts]") {
  const BuiltTown town = cut_through("");
  CHECK(arms(town, Kind::roundabout) ==
        Texts{"in N out N", "in - out E", "in S out S", "in W out -"});
}

/// A dual carriageway to the south, and a street that comes in between its two halves.
BuiltTown big_ring(const std::string& way_in_name) {
  return built_town(draw_town(R"(
     N
.
     a
W   d b   E
    f c
     e
.
.
.
.
  T  P  U
w1 abcefda highway=tertiary junction=roundabout
w2 Na highway=tertiary
w3 Eb highway=tertiary
w4 Wd highway=tertiary
w5 cU highway=primary oneway=yes name=Mill_Road
w6 Pe highway=residential oneway=yes name=Osk_Street
w7 Tf highway=primary oneway=yes name=)" +
                                  way_in_name + "\nw8 UPT highway=primary\n",
                              20),
                    "GB-ENG");
}

TEST_CASE("a street that comes in between the two halves of a road doesn't make it two arms",
          "[mark][roundabouts]") {
  const BuiltTown town = big_ring("Mill_Road");
  CHECK(arms(town, Kind::roundabout) ==
        Texts{"in N out N", "in E out E", "in T out U", "in P out -", "in W out W"});
  const Texts all = chances(town, Kind::roundabout);
  for (const char* text :
       {"NabcU ahead 2", "NabcefdW right 3", "TfdabcU round 4", "TfdW left 1", "PefdW left 1"}) {
    CHECK_THAT(all, Catch::VectorContains(std::string(text)));
  }
}

TEST_CASE("a street that comes in between two other roads leaves them two arms",
          "[mark][roundabouts]") {
  CHECK(arms(big_ring("Quay_Road"), Kind::roundabout) ==
        Texts{"in N out N", "in E out E", "in - out U", "in P out -", "in T out -", "in W out W"});
}

TEST_CASE("a slip lane that passes the ring by is no arm", "[mark][roundabouts]") {
  const BuiltTown town = built_town(draw_town(R"(
     N
     n
.
     a
W w d b   E
     c
w1 abcda highway=tertiary junction=roundabout
w2 Nna highway=tertiary
w3 Eb highway=tertiary
w4 Wwd highway=tertiary
w5 wn highway=tertiary_link oneway=yes
)",
                                              20),
                                    "GB-ENG");
  CHECK(arms(town, Kind::roundabout) == Texts{"in n out n", "in E out E", "in w out w"});
}

TEST_CASE("a road that only touches the ring and goes on past it drives no roundabout",
          "[mark][roundabouts]") {
  const BuiltTown town = built_town(draw_town(R"(
     N
.
     a
W   d b   E
     c
.
  T     S
w1 abcda highway=tertiary junction=roundabout
w2 Na highway=tertiary
w3 Eb highway=tertiary
w4 ScT highway=tertiary_link
w6 Wd highway=tertiary
)",
                                              20),
                                    "GB-ENG");
  const Texts all = chances(town, Kind::roundabout);
  CHECK_THAT(all, !Catch::VectorContains(std::string("ScT left 1")));
  CHECK_THAT(all, Catch::VectorContains(std::string("ScdW ahead 2")));
}

TEST_CASE("back the other way by the next arm is left, by the last one right",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w6 cu highway=residential name=Mill_Road\n"
      "w7 et highway=residential name=Quay_Road\n");
  const Texts all = chances(town, Kind::roundabout);
  CHECK_THAT(all, Catch::VectorContains(std::string("ucet left 1")));
  CHECK_THAT(all, Catch::VectorContains(std::string("tedabcu right 4")));
}

TEST_CASE("of two arms at one point of the ring, only the next is reached at once",
          "[mark][roundabouts]") {
  const BuiltTown town = built_town(draw_town(R"(
     N
.
     a
W   d b   E
     c
.
.
  T     S
w1 abcda highway=tertiary junction=roundabout
w2 Na highway=tertiary
w3 Eb highway=tertiary
w4 Sc highway=tertiary
w5 Tc highway=tertiary
w6 Wd highway=tertiary
)",
                                              20),
                                    "GB-ENG");
  const Texts all = chances(town, Kind::roundabout);
  CHECK_THAT(all, Catch::VectorContains(std::string("ScT left 1")));
  CHECK_THAT(all, Catch::VectorContains(std::string("TcdabcS right 4")));
}

TEST_CASE("a banned way out of the ring is no chance", "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w6 Sc highway=tertiary\n"
      "r1 no_left_turn from=w1 via=c to=w6\n");
  CHECK_THAT(chances(town, Kind::roundabout), !Catch::VectorContains(std::string("nabcS ahead 2")));
}

}  // namespace
}  // namespace loopwright::test
