// Sources: OSM wiki Tag:amenity=school, Key:hazard. 60 m is from the project's notes on tags.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A school between two roads, 25 m from that above and 50 m from that below; g and h are on its
/// lines.
BuiltTown school_between(const std::string& lines, const std::string& above = "residential") {
  return built_town(R"(
W              E
    pg   q
.
    sh   r
.
V              F
w1 WE highway=)" + above +
                    "\nw2 VF highway=residential\nw3 WV highway=residential\n" + lines);
}

const std::string school = "f9 pqrsp amenity=school name=Oxlode_School\n";

TEST_CASE("a town without schools has no roads past one", "[mark][schools]") {
  CHECK(run_facts(school_between(""), Kind::school).empty());
}

TEST_CASE("the road that runs along a school's fence is its road, by inference",
          "[mark][schools]") {
  const BuiltTown town = school_between(school);
  CHECK(run_facts(town, Kind::school) == Texts{"EW inferred amenity=school Oxlode School (way/9)",
                                               "WE inferred amenity=school Oxlode School (way/9)"});
  CHECK(place_names(town, Kind::school) == Texts{"Oxlode School"});
}

TEST_CASE("a school with a gate is on the road of its gate", "[mark][schools]") {
  for (const char* gate : {"f1 h barrier=gate\n", "f1 h entrance=main\n"}) {
    CHECK(run_facts(school_between(school + gate), Kind::school) ==
          Texts{"FV inferred amenity=school Oxlode School (way/9)",
                "VF inferred amenity=school Oxlode School (way/9)"});
  }
}

TEST_CASE("a gate away from the school's lines is someone else's", "[mark][schools]") {
  CHECK(run_facts(school_between("f9 pqrsp amenity=kindergarten\nf1 V barrier=gate\n"),
                  Kind::school) == Texts{"EW inferred amenity=kindergarten (way/9)",
                                         "WE inferred amenity=kindergarten (way/9)"});
}

TEST_CASE("with no road along its fence, a school is on the nearest within 60 m",
          "[mark][schools]") {
  const BuiltTown town = built_town(R"(
A            B
.
    p   q
    s   r
w1 AB highway=residential name=Mill_Street
f9 pqrsp amenity=school
)");
  CHECK(run_facts(town, Kind::school) ==
        Texts{"AB inferred amenity=school (way/9)", "BA inferred amenity=school (way/9)"});
  CHECK(place_names(town, Kind::school) == Texts{"Mill Street"});
}

TEST_CASE("the road behind the next one isn't the school's", "[mark][schools]") {
  const BuiltTown town = built_town(R"(
A            B
C            D
    p   q
    s   r
w1 AB highway=residential
w2 CD highway=residential
w3 AC highway=residential
f9 pqrsp amenity=school
)");
  CHECK(run_facts(town, Kind::school) ==
        Texts{"CD inferred amenity=school (way/9)", "DC inferred amenity=school (way/9)"});
}

TEST_CASE("a school that is a mere point is on the road nearest to it", "[mark][schools]") {
  CHECK(run_facts(school_between("f1 g amenity=school\n"), Kind::school) ==
        Texts{"EW inferred amenity=school (node/107)", "WE inferred amenity=school (node/107)"});
}

TEST_CASE("a school 75 m off the road is none to look out for", "[mark][schools]") {
  const BuiltTown town = built_town(R"(
A            B
.
.
    p   q
    s   r
w1 AB highway=residential
f9 pqrsp amenity=school
)");
  CHECK(run_facts(town, Kind::school).empty());
}

TEST_CASE("a warning on the road makes it certain, with or without a school", "[mark][schools]") {
  CHECK(run_facts(school_between("", "residential hazard=school_zone"), Kind::school) ==
        Texts{"EW certain hazard=school_zone", "WE certain hazard=school_zone"});
  CHECK(run_facts(school_between("", "residential hazard:forward=school_zone"), Kind::school) ==
        Texts{"WE certain hazard:forward=school_zone"});
  const BuiltTown both =
      school_between(school + "f1 g barrier=gate\n", "residential hazard=school_zone");
  CHECK(run_facts(both, Kind::school) ==
        Texts{"EW certain hazard=school_zone", "WE certain hazard=school_zone"});
  CHECK(place_names(both, Kind::school) == Texts{"Oxlode School"});
}

TEST_CASE("a warning sign on the road is told by its own node", "[mark][schools]") {
  const BuiltTown town = built_town(R"(
A    n    B
w1 AnB highway=residential
nn hazard=school_zone
)");
  const std::string told =
      "certain hazard=school_zone (node/" + std::to_string(osm_node('n')) + ")";
  CHECK(run_facts(town, Kind::school) == Texts{"AB " + told, "BA " + told});
}

TEST_CASE("motorways and service roads have no school gates", "[mark][schools]") {
  for (const char* above : {"motorway", "service", "residential access=private"}) {
    CHECK(run_facts(school_between(school + "f1 g barrier=gate\n", above), Kind::school).empty());
  }
}

TEST_CASE("a School Street that is shut at times is a street by a school at others",
          "[mark][schools]") {
  const std::string gate = school + "f1 g barrier=gate\n";
  const BuiltTown by_hour =
      school_between(gate, "residential \"motor_vehicle:conditional=no @ (Mo-Fr 08:00-09:00)\"");
  CHECK_FALSE(run_facts(by_hour, Kind::school).empty());
  CHECK(run_facts(by_hour, Kind::school) ==
        run_facts(school_between(gate, "residential"), Kind::school));
}

TEST_CASE("two schools on one street are two runs", "[mark][schools]") {
  const BuiltTown town = built_town(R"(
A      j       B
 p  q    t  u
 s  r    w  v
       C
w1 AjB highway=residential
w2 jC highway=residential
f1 pqrsp amenity=school name=Oxlode_School
f2 tuvwt amenity=school name=Fenside_School
)");
  CHECK(place_names(town, Kind::school) == Texts{"Fenside School", "Oxlode School"});
}

}  // namespace
}  // namespace loopwright::test
