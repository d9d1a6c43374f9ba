// Sources: OSM wiki Tag:junction=roundabout and Tag:junction=circular; the counting of exits is
// that of British signs (public roads, clockwise, the one taken included).
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

constexpr Kind every_ring_kind[] = {Kind::roundabout, Kind::multi_lane_roundabout,
                                    Kind::signal_roundabout, Kind::mini_roundabout};

/// A ring of 40 m with an arm to each side; 20 m a character.
constexpr std::string_view four_arms = R"(
     N
.
     n
     a
W  wd be  E
     c
     s
.
     S
w2 Nna highway=tertiary
w3 Eeb highway=tertiary
w4 Ssc highway=tertiary
w5 Wwd highway=tertiary
)";

BuiltTown ring_town(const std::string& lines, std::string_view region = "GB-ENG") {
  return built_town(draw_town(std::string(four_arms) + lines, 20), region);
}

const std::string plain_ring = "w1 abcda highway=tertiary junction=roundabout\n";

TEST_CASE("a town without rings has no roundabouts", "[mark][roundabouts]") {
  const BuiltTown town = ring_town("w1 ac highway=tertiary\n");
  for (const Kind kind : every_ring_kind) CHECK(places(town, kind).empty());
}

TEST_CASE("a roundabout is driven in every way, and its exits are counted clockwise",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(plain_ring);
  CHECK(places(town, Kind::roundabout) == Texts{"w1"});
  CHECK(arms(town, Kind::roundabout) ==
        Texts{"in N out N", "in E out E", "in S out S", "in W out W"});
  CHECK(chances(town, Kind::roundabout) ==
        Texts{"EbcS left 1", "EbcdW ahead 2", "EbcdaN right 3", "EbcdabE round 4", "NabE left 1",
              "NabcS ahead 2", "NabcdW right 3", "NabcdaN round 4", "ScdW left 1", "ScdaN ahead 2",
              "ScdabE right 3", "ScdabcS round 4", "WdaN left 1", "WdabE ahead 2", "WdabcS right 3",
              "WdabcdW round 4"});
  CHECK(reasons(town, Kind::roundabout) == Texts{"certain junction=roundabout w1"});
  CHECK(oddities(town).empty());
  CHECK(town.report.counted("places: roundabout") == 1);
  CHECK(town.report.counted("ways through: roundabout") == 16);
}

TEST_CASE("where one drives on the right, exits are counted anticlockwise", "[mark][roundabouts]") {
  const BuiltTown town = ring_town("w1 adcba highway=tertiary junction=roundabout\n", "LI");
  const Texts all = chances(town, Kind::roundabout);
  CHECK(all.size() == 16);
  for (const char* text : {"ScbE right 1", "ScbaN ahead 2", "ScbadW left 3", "ScbadcS round 4"}) {
    CHECK_THAT(all, Catch::VectorContains(std::string(text)));
  }
}

TEST_CASE("two ring pieces, one tagged circular, are one roundabout", "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w1 abc highway=tertiary junction=roundabout\n"
      "w6 cda highway=tertiary junction=circular\n");
  CHECK(places(town, Kind::roundabout) == Texts{"w1"});
  CHECK(chances(town, Kind::roundabout).size() == 16);
}

TEST_CASE("a ring that runs over a bridge is one roundabout", "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w1 abc highway=tertiary junction=roundabout bridge=yes layer=1\n"
      "w6 cda highway=tertiary junction=roundabout\n");
  CHECK(places(town, Kind::roundabout) == Texts{"w1"});
}

TEST_CASE("a ring drawn against the driving side is reported and not practised",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town("w1 adcba highway=tertiary junction=roundabout\n");
  CHECK(places(town, Kind::roundabout) == Texts{"w1"});
  CHECK(chances(town, Kind::roundabout).empty());
  CHECK(oddities(town) == Texts{"w1 roundabout is driven the wrong way round"});
}

TEST_CASE("an arc that isn't closed is no roundabout", "[mark][roundabouts]") {
  const BuiltTown town = ring_town("w1 dabc highway=tertiary junction=roundabout\n");
  for (const Kind kind : every_ring_kind) CHECK(places(town, kind).empty());
  // The open arc, and the roads that it leaves without a way in or out.
  CHECK(oddities(town) == Texts{"w1 road can't be driven into and out of",
                                "w1 roundabout isn't closed",
                                "w2 road can't be driven into and out of",
                                "w4 road can't be driven into and out of"});
}

TEST_CASE("a ring cut by the extract's border is no roundabout", "[mark][roundabouts]") {
  mark::RawMap raw = draw_town(std::string(four_arms) + plain_ring, 20);
  std::erase_if(raw.nodes, [](const auto& node) { return node.id == osm_node('b'); });
  const BuiltTown town = built_town(raw, "GB-ENG");
  CHECK(places(town, Kind::roundabout).empty());
  CHECK_THAT(oddities(town), Catch::VectorContains(std::string("w1 roundabout isn't closed")));
}

TEST_CASE("a circular road open both ways is no roundabout", "[mark][roundabouts]") {
  const BuiltTown town = ring_town("w1 abcda highway=tertiary junction=circular oneway=no\n");
  CHECK(places(town, Kind::roundabout).empty());
  CHECK(oddities(town) == Texts{"w1 circular road is open both ways"});
}

TEST_CASE("a turning circle is no roundabout", "[mark][roundabouts]") {
  const BuiltTown town = ring_town("w1 ac highway=tertiary\nnN highway=turning_circle\n");
  for (const Kind kind : every_ring_kind) CHECK(places(town, kind).empty());
}

TEST_CASE("a ring with one arm is driven round", "[mark][roundabouts]") {
  const BuiltTown town = built_town(draw_town(R"(
  a
 d b
  c
.
  S
w1 abcda highway=residential junction=roundabout
w2 Sc highway=residential
)",
                                              20),
                                    "GB-ENG");
  CHECK(chances(town, Kind::roundabout) == Texts{"ScacS round 1"});
}

TEST_CASE("a ring over 100 m across is a roundabout still, and noted", "[mark][roundabouts]") {
  const BuiltTown town = built_town(draw_town(std::string(four_arms) + plain_ring, 80), "GB-ENG");
  CHECK(chances(town, Kind::roundabout).size() == 16);
  CHECK(oddities(town) == Texts{"w1 roundabout over 100 m across, a gyratory"});
  CHECK(town.report.oddities()[0].detail == "160 m across");
}

TEST_CASE("a ring with two lanes is a multi-lane roundabout", "[mark][roundabouts]") {
  const BuiltTown town = ring_town("w1 abcda highway=tertiary junction=roundabout lanes=2\n");
  CHECK(chances(town, Kind::multi_lane_roundabout).size() == 16);
  CHECK(places(town, Kind::roundabout).empty());
  CHECK(reasons(town, Kind::multi_lane_roundabout) == Texts{"certain lanes=2 w1"});
  CHECK(town.built.tables.places[0].lanes == 2);
}

/// The kind of the four-armed ring when its south arm (towards the ring) has some tags.
std::string kind_with_south_arm(const std::string& tags) {
  std::string drawing(four_arms);
  const std::string plain = "w4 Ssc highway=tertiary";
  drawing.replace(drawing.find(plain), plain.size(), plain + " " + tags);
  const BuiltTown town = built_town(draw_town(drawing + plain_ring, 20), "GB-ENG");
  return std::string(name(town.built.tables.places.at(0).kind));
}

TEST_CASE("two lanes into the ring on one arm make a multi-lane roundabout",
          "[mark][roundabouts]") {
  CHECK(kind_with_south_arm("lanes=3 lanes:forward=2 lanes:backward=1") == "multi-lane-roundabout");
  CHECK(kind_with_south_arm("turn:lanes:forward=left|through;right") == "multi-lane-roundabout");
  CHECK(kind_with_south_arm("lanes=4") == "multi-lane-roundabout");
}

TEST_CASE("lanes out of the ring, or lanes not told apart, make no multi-lane roundabout",
          "[mark][roundabouts]") {
  CHECK(kind_with_south_arm("lanes=3 lanes:forward=1 lanes:backward=2") == "roundabout");
  CHECK(kind_with_south_arm("lanes=3") == "roundabout");
  CHECK(kind_with_south_arm("lanes=4 lanes:forward=1 lanes:backward=3") == "roundabout");
}

TEST_CASE("a bus lane is no second lane into the ring", "[mark][roundabouts]") {
  CHECK(kind_with_south_arm("lanes=3 lanes:forward=2 lanes:backward=1 lanes:bus:forward=1") ==
        "roundabout");
  CHECK(kind_with_south_arm("lanes=4 busway:both=lane") == "roundabout");
  CHECK(kind_with_south_arm("lanes=4 lanes:forward=3 lanes:bus:forward=1") ==
        "multi-lane-roundabout");
}

TEST_CASE("lights on the ring make a roundabout with signals, and no other signals",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(plain_ring + "nb highway=traffic_signals\n");
  CHECK(chances(town, Kind::signal_roundabout).size() == 16);
  CHECK(reasons(town, Kind::signal_roundabout) == Texts{"certain highway=traffic_signals nb"});
  CHECK(places(town, Kind::signals).empty());
}

TEST_CASE("lights at half of the entries make a roundabout with signals", "[mark][roundabouts]") {
  const BuiltTown town =
      ring_town(plain_ring + "nn highway=traffic_signals\nns highway=traffic_signals\n");
  CHECK(places(town, Kind::signal_roundabout) == Texts{"w1"});
  CHECK(places(town, Kind::signals).empty());
}

TEST_CASE("lights at one entry of four don't make a roundabout with signals",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(plain_ring + "nn highway=traffic_signals\n");
  CHECK(places(town, Kind::roundabout) == Texts{"w1"});
  CHECK(places(town, Kind::signals).empty());
  CHECK(town.report.counted("lights of roundabouts, minis and level crossings") == 1);
}

TEST_CASE("lights that face away from the ring don't make a roundabout with signals",
          "[mark][roundabouts]") {
  const std::string away = " highway=traffic_signals traffic_signals:direction=backward\n";
  const BuiltTown town =
      ring_town(plain_ring + "nn" + away + "ns" + away + "nw" + away + "ne" + away);
  CHECK(places(town, Kind::roundabout) == Texts{"w1"});
}

TEST_CASE("pelican crossings on the arms don't make a roundabout with signals",
          "[mark][roundabouts]") {
  const std::string pelican = " highway=crossing crossing=traffic_signals crossing_ref=pelican\n";
  const BuiltTown town =
      ring_town(plain_ring + "nn" + pelican + "ns" + pelican + "nw" + pelican + "ne" + pelican);
  CHECK(places(town, Kind::roundabout) == Texts{"w1"});
  CHECK(places(town, Kind::signal_crossing) == Texts{"ne", "nn", "ns", "nw"});
}

TEST_CASE("a ring with an island one may drive over is a mini-roundabout", "[mark][roundabouts]") {
  const BuiltTown town =
      ring_town("w1 abcda highway=tertiary junction=roundabout central_island:traversable=yes\n");
  CHECK(chances(town, Kind::mini_roundabout).size() == 16);
  CHECK(reasons(town, Kind::mini_roundabout) == Texts{"certain central_island:traversable=yes w1"});
  CHECK(places(town, Kind::roundabout).empty());
}

TEST_CASE("two rings that touch are two roundabouts", "[mark][roundabouts]") {
  const BuiltTown town = built_town(draw_town(R"(
     a e
W   d b f   E
     c g
w1 abcda highway=tertiary junction=roundabout
w2 befgb highway=tertiary junction=roundabout
w3 Wd highway=tertiary
w4 Ef highway=tertiary
)",
                                              20),
                                    "GB-ENG");
  CHECK(places(town, Kind::roundabout) == Texts{"w1", "w2"});
  CHECK(chances(town, Kind::roundabout) == Texts{"EfbfE round 1", "WdabdW round 1"});
}

TEST_CASE("two rings share the road between them", "[mark][roundabouts]") {
  const BuiltTown town = built_town(draw_town(R"(
     a     e
W   d b   h f   E
     c     g
w1 abcda highway=tertiary junction=roundabout
w2 efghe highway=tertiary junction=roundabout
w3 Wd highway=tertiary
w4 Ef highway=tertiary
w5 bh highway=tertiary
)",
                                              20),
                                    "GB-ENG");
  const Texts all = chances(town, Kind::roundabout);
  CHECK_THAT(all, Catch::VectorContains(std::string("Wdabh ahead 1")));
  CHECK_THAT(all, Catch::VectorContains(std::string("bhefE ahead 1")));
}

}  // namespace
}  // namespace loopwright::test
