// Which passes a drive makes. Definitions: DEVELOPERS.md, "Kinds and passes".
#include <catch2/catch.hpp>

#include "loopwright/find/passes.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {

namespace {

/// A whole drive over the nodes of the letters.
find::Drive drive_over(const BuiltTown& town, std::string_view letters) {
  find::Drive drive;
  for (std::size_t i = 0; i + 1 < letters.size(); ++i)
    drive.states.push_back(StateId{town.stretch(letters.substr(i, 2)).index()});
  drive.end_m = town.roads().piece(town.stretch(letters.substr(letters.size() - 2))).length_m;
  return drive;
}

std::vector<wish::Pass> passes(const BuiltTown& town, std::string_view letters, road::Kind kind) {
  std::vector<wish::Pass> found;
  for (const find::PlacePass& p : find::passes_of(town.roads(), drive_over(town, letters)))
    if (p.pass.kind == kind) found.push_back(p.pass);
  return found;
}

BuiltTown streets() {
  return built_town(draw_town(crossing_streets, 100), "GB-ENG");
}

}  // namespace

TEST_CASE("a drive along one plain street passes nothing", "[find]") {
  const BuiltTown town = streets();
  CHECK(find::passes_of(town.roads(), drive_over(town, "MN")).empty());
}

TEST_CASE("a roundabout is passed from its entry to its exit, ring between", "[find]") {
  const BuiltTown town = streets();
  const auto ahead = passes(town, "BnpqJ", road::Kind::roundabout);
  REQUIRE(ahead.size() == 1);
  CHECK(ahead[0].movement == road::Movement::ahead);
  CHECK(ahead[0].exit == 2);
  CHECK(ahead[0].first == 0);
  CHECK(ahead[0].last == 3);
  CHECK(ahead[0].confidence == road::Confidence::certain);
  CHECK(ahead[0].tag == "junction=roundabout");
}

TEST_CASE("where one drives on the left, the first exit is a left turn", "[find]") {
  const BuiltTown town = streets();
  const auto left = passes(town, "BnpG", road::Kind::roundabout);
  const auto right = passes(town, "BnpqrE", road::Kind::roundabout);
  REQUIRE(left.size() == 1);
  REQUIRE(right.size() == 1);
  CHECK(left[0].movement == road::Movement::left);
  CHECK(left[0].exit == 1);
  CHECK(right[0].movement == road::Movement::right);
  CHECK(right[0].exit == 3);
}

TEST_CASE("back out by the same arm is all the way round, the last exit", "[find]") {
  const auto round = passes(streets(), "BnpqrnB", road::Kind::roundabout);
  REQUIRE(round.size() == 1);
  CHECK(round[0].movement == road::Movement::round);
  CHECK(round[0].exit == 4);
}

TEST_CASE("a roundabout that is entered but not left is no pass", "[find]") {
  CHECK(passes(streets(), "Bnpq", road::Kind::roundabout).empty());
}

TEST_CASE("a mini-roundabout passed twice counts twice", "[find]") {
  const BuiltTown town = streets();
  const auto minis = passes(town, "IJNMIJK", road::Kind::mini_roundabout);
  REQUIRE(minis.size() == 2);
  CHECK(minis[0].movement == road::Movement::right);
  CHECK(minis[1].movement == road::Movement::ahead);
  CHECK(minis[0].first < minis[1].first);
}

TEST_CASE("a mini-roundabout is no roundabout", "[find]") {
  CHECK(passes(streets(), "IJNMIJK", road::Kind::roundabout).empty());
}

TEST_CASE("turning into a narrow mouth is one pass, and meets a wish for turning off", "[find]") {
  const BuiltTown town = built_town(R"(
W   j   E
.
.
    S
w1 WjE highway=secondary
w2 jS highway=residential width=4
)");
  const auto narrow = passes(town, "WjS", road::Kind::narrow_mouth);
  REQUIRE(narrow.size() == 1);
  CHECK(narrow[0].movement == road::Movement::right);
  CHECK(wish::counts_for(narrow[0], {.kind = road::Kind::turn_off}));
  CHECK(passes(town, "WjS", road::Kind::turn_off).empty());
}

TEST_CASE("crossing a staggered junction is a pass besides its two turns", "[find]") {
  const BuiltTown town = built_town(R"(
    N
.
.
W   ab   E
.
.
     S
w1 WabE highway=secondary
w2 Na highway=residential
w3 Sb highway=residential
)");
  CHECK(passes(town, "NabS", road::Kind::staggered_junction).size() == 1);
  CHECK(passes(town, "NabS", road::Kind::emerge).size() == 1);
  CHECK(passes(town, "NabS", road::Kind::turn_off).size() == 1);
  CHECK(passes(town, "NabE", road::Kind::staggered_junction).empty());
  CHECK(passes(town, "WabE", road::Kind::staggered_junction).empty());
}

TEST_CASE("a level crossing is passed over its node", "[find]") {
  const auto crossings = passes(streets(), "pGxH", road::Kind::level_crossing);
  REQUIRE(crossings.size() == 1);
  CHECK(crossings[0].first == 1);
  CHECK(crossings[0].last == 2);
  CHECK(crossings[0].movement == road::Movement::none);
}

TEST_CASE("a lane one car wide is one single-track pass, not a narrow road as well", "[find]") {
  const BuiltTown town = streets();
  CHECK(passes(town, "JKLP", road::Kind::single_track).size() == 1);
  CHECK(passes(town, "JKLP", road::Kind::narrow_road).empty());
}

TEST_CASE("less than a hundred metres of a narrow road is no pass", "[find]") {
  const BuiltTown town = streets();
  find::Drive drive = drive_over(town, "JKL");
  drive.end_m = 99;
  for (const find::PlacePass& p : find::passes_of(town.roads(), drive))
    CHECK(p.pass.kind != road::Kind::single_track);
  drive.end_m = 101;
  bool found = false;
  for (const find::PlacePass& p : find::passes_of(town.roads(), drive))
    found = found || p.pass.kind == road::Kind::single_track;
  CHECK(found);
}

TEST_CASE("a change of limit where the road goes on is passed at its node", "[find]") {
  const auto changes = passes(streets(), "CDHL", road::Kind::limit_change);
  REQUIRE(changes.size() == 1);  // 30 becomes 40 at D, the only way on
  CHECK(changes[0].first == 0);
  CHECK(changes[0].last == 1);
}

TEST_CASE("a 20 limit driven along two streets is one pass", "[find]") {
  CHECK(passes(streets(), "CGK", road::Kind::twenty_limit).size() == 1);
}

TEST_CASE("two halves of two road numbers make no kilometre of following signs", "[find]") {
  const BuiltTown town = built_town(draw_town(R"(
V      W      X      Y      Z
w1 VW highway=primary ref=A7901
w2 WX highway=primary ref=A7901
w3 XY highway=primary ref=A7904
w4 YZ highway=primary ref=A7904
)",
                                              100),
                                    "GB-ENG");
  CHECK(passes(town, "VWX", road::Kind::independent_stretch).size() == 1);
  CHECK(passes(town, "WXY", road::Kind::independent_stretch).empty());
  CHECK(passes(town, "VWXYZ", road::Kind::independent_stretch).size() == 2);
}

TEST_CASE("two schools on one street are passed one after the other", "[find]") {
  const BuiltTown town = built_town(R"(
A      j       B
 p  q    t  u
 s  r    w  v
       C
w1 AjB highway=residential
w2 jC highway=residential
f1 pqrsp amenity=school
f2 tuvwt amenity=school
)");
  CHECK(passes(town, "AjB", road::Kind::school).size() == 2);
}

}  // namespace loopwright::test
