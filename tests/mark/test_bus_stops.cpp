// Sources: OSM wiki Tag:highway=bus_stop, Tag:public_transport=platform. 25 m and 30 m are ours.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A road with points 10 m north (n, m) and south (s, t) of it, v 20 m south, u 30 m;
/// k is far to the north.
BuiltTown road_with(const std::string& lines, std::string_view region = "GB-ENG",
                    const std::string& highway = "tertiary") {
  return built_town(draw_town(R"(
        k
.
.
.
.
.
     n m
W           c           E
     s t
     v
   x u  y
w1 WcE highway=)" + highway + "\n" +
                                  lines,
                              10),
                    region);
}

TEST_CASE("a road without bus stops has none", "[mark][bus_stops]") {
  CHECK(places(road_with(""), Kind::bus_stop).empty());
}

TEST_CASE("a bus stop is passed on its side of the road", "[mark][bus_stops]") {
  const std::string stop = "f1 s highway=bus_stop name=Mill_Orchard\n";
  CHECK(chances(road_with(stop), Kind::bus_stop) == Texts{"EW"});
  CHECK(chances(road_with(stop, "FR"), Kind::bus_stop) == Texts{"WE"});
  CHECK(reasons(road_with(stop), Kind::bus_stop) == Texts{"certain highway=bus_stop ns"});
  CHECK(place_names(road_with(stop), Kind::bus_stop) == Texts{"Mill Orchard"});
}

TEST_CASE("the place of a bus stop is its foot on the road", "[mark][bus_stops]") {
  const BuiltTown town = road_with("f1 s highway=bus_stop\n");
  const auto& all = town.built.tables.places;
  const auto stop = std::ranges::find(all, Kind::bus_stop, &road::Place::kind);
  REQUIRE(stop != all.end());
  const Foot foot = nearest_on_line(town.roads().shape_of(town.stretch("WE").piece()), stop->at);
  CHECK(foot.off_m < 0.1);
  CHECK(foot.along_m == Approx(50).margin(0.5));
}

TEST_CASE("a stop on the road's own line is passed both ways unless a tag says which",
          "[mark][bus_stops]") {
  CHECK(chances(road_with("f1 c highway=bus_stop\n"), Kind::bus_stop) == Texts{"EW", "WE"});
  CHECK(places(road_with("f1 c highway=bus_stop\n"), Kind::bus_stop) == Texts{"nc"});
  CHECK(reasons(road_with("f1 c highway=bus_stop\n"), Kind::bus_stop) ==
        Texts{"inferred highway=bus_stop nc"});
  const BuiltTown told = road_with("f1 c highway=bus_stop direction=backward\n");
  CHECK(chances(told, Kind::bus_stop) == Texts{"EW"});
  CHECK(reasons(told, Kind::bus_stop) == Texts{"certain highway=bus_stop nc"});
}

TEST_CASE("a pole and its platform are one stop", "[mark][bus_stops]") {
  const BuiltTown town = road_with(
      "f1 t highway=bus_stop name=Mill_Orchard\n"
      "f2 s public_transport=platform bus=yes name=Mill_Orchard\n");
  CHECK(places(town, Kind::bus_stop) == Texts{"nt"});
}

TEST_CASE("a platform alone is a stop, one for trains isn't", "[mark][bus_stops]") {
  CHECK(reasons(road_with("f2 s public_transport=platform bus=yes\n"), Kind::bus_stop) ==
        Texts{"certain public_transport=platform ns"});
  CHECK(places(road_with("f2 s public_transport=platform name=Mill_Orchard\n"), Kind::bus_stop)
            .empty());
}

TEST_CASE("stops of one name on both sides are two, and so are two names", "[mark][bus_stops]") {
  CHECK(places(road_with("f1 n highway=bus_stop name=Mill_Orchard\n"
                         "f2 s highway=bus_stop name=Mill_Orchard\n"),
               Kind::bus_stop) == Texts{"nn", "ns"});
  CHECK(places(road_with("f1 s highway=bus_stop name=Mill_Orchard\n"
                         "f2 t highway=bus_stop name=Lantern_Row\n"),
               Kind::bus_stop) == Texts{"ns", "nt"});
}

TEST_CASE("a stop 30 m off belongs to no road", "[mark][bus_stops]") {
  CHECK(places(road_with("f1 u highway=bus_stop\n"), Kind::bus_stop).empty());
}

TEST_CASE("on a one-way street only the near side's stop is passed", "[mark][bus_stops]") {
  const std::string one_way = "tertiary oneway=yes";
  const std::string back = "w2 EkW highway=tertiary\n";
  CHECK(chances(road_with(back + "f1 n highway=bus_stop\n", "GB-ENG", one_way), Kind::bus_stop) ==
        Texts{"WE"});
  CHECK(chances(road_with(back + "f1 s highway=bus_stop\n", "GB-ENG", one_way), Kind::bus_stop)
            .empty());
}

TEST_CASE("stops at a bus station, a bus road or a private road aren't passed",
          "[mark][bus_stops]") {
  for (const char* highway : {"service", "tertiary access=no bus=yes", "tertiary access=private"}) {
    CHECK(places(road_with("f1 s highway=bus_stop\n", "GB-ENG", highway), Kind::bus_stop).empty());
  }
}

TEST_CASE("a stop in a bus station beside the road isn't the road's", "[mark][bus_stops]") {
  const std::string stop = "f1 v highway=bus_stop\n";
  CHECK(chances(road_with(stop), Kind::bus_stop) == Texts{"EW"});
  CHECK(places(road_with(stop + "w2 xyc highway=service\n"), Kind::bus_stop).empty());
}

TEST_CASE("a pole and its platform are one stop though one of them has no name",
          "[mark][bus_stops]") {
  const auto both = [](const std::string& pole, const std::string& platform) {
    return places(road_with("f1 t highway=bus_stop " + pole +
                            "\nf2 s public_transport=platform bus=yes " + platform + "\n"),
                  Kind::bus_stop);
  };
  CHECK(both("", "name=Mill_Orchard") == Texts{"nt"});
  CHECK(both("name=Mill_Orchard", "") == Texts{"nt"});
  CHECK(both("", "") == Texts{"nt"});
  CHECK(both("name=Lantern_Row", "name=Mill_Orchard") == Texts{"ns", "nt"});
}

TEST_CASE("a stop lies on the left or on the right of a road that runs anywhere",
          "[mark][bus_stops]") {
  // The road is 200 m long and the stops lie 5 m beside its middle.
  for (const std::string_view way : {"WE", "EW"}) {
    const BuiltTown town =
        built_town(draw_town("                    n\n"
                             "W                                       E\n"
                             "                    s\n"
                             "w1 " +
                                 std::string(way) + " highway=tertiary\nf1 s highway=bus_stop\n",
                             5),
                   "GB-ENG");
    CHECK(chances(town, Kind::bus_stop) == Texts{"EW"});
  }
}

TEST_CASE("two stops of one name 40 m apart along the road are two", "[mark][bus_stops]") {
  const auto apart = [](const std::string& metres) {
    return places(built_town(draw_town("W                   E\n     s" + metres +
                                           "t\nw1 WE highway=tertiary\n"
                                           "f1 s highway=bus_stop name=Mill_Orchard\n"
                                           "f2 t highway=bus_stop name=Mill_Orchard\n",
                                       10),
                             "GB-ENG"),
                  Kind::bus_stop);
  };
  CHECK(apart(" ") == Texts{"ns"});
  CHECK(apart("   ") == Texts{"ns", "nt"});
}

}  // namespace
}  // namespace loopwright::test
