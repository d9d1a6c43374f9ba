// Where to look for a junction, and what the signs say there. Distances are our judgement.
#include <catch2/catch.hpp>

#include "say/said.hpp"

namespace loopwright::test {
namespace {

/// A road with a side road at C, 10 m to a character, and what else is said of it.
BuiltTown side_road(const std::string& besides, const std::string& tags = "") {
  return town_of(R"(
          h      e f   g
A   B            l C k          F





                   E
  w1 AB    highway=residential name=Lantern_Row
  w50 BlCkF highway=residential name=Lantern_Row
  w2 CE    highway=residential name=Mill_Orchard )" +
                     tags + "\n" + besides,
                 10);
}

std::string landmark(const std::string& besides) {
  return rows_of(side_road(besides), "ABCECBA")[1].landmark;
}

const std::string church = "amenity=place_of_worship religion=christian\n";

}  // namespace

TEST_CASE("a corner without anything near has no landmark", "[say][landmark]") {
  CHECK(landmark("").empty());
  CHECK(landmark("f1 h " + church).empty());  // 90 m before it
}

TEST_CASE("a landmark is before the corner, beyond it or by it", "[say][landmark]") {
  CHECK(landmark("f1 e " + church) == "after the church");
  CHECK(landmark("f1 f " + church) == "by the church");
  CHECK(landmark("f1 g " + church) == "before the church");
}

TEST_CASE("a pub goes by its name", "[say][landmark]") {
  CHECK(landmark("f1 f amenity=pub name=The_Red_Lion\n") == "by the Red Lion");
  CHECK(landmark("f1 f amenity=pub\n") == "by the pub");
  CHECK(landmark("f1 f amenity=pub name=The_Inn_By_The_Old_Bridge\n") == "by the pub");
}

TEST_CASE("of two of a kind nobody can say which is meant", "[say][landmark]") {
  CHECK(landmark("f1 f " + church + "f2 h " + church).empty());
  CHECK(landmark("f1 f " + church + "f2 h amenity=pub\n") == "by the church");
}

TEST_CASE("what lies on the road itself comes first", "[say][landmark]") {
  const std::string lights = "nl highway=crossing crossing=traffic_signals\n";
  const BuiltTown town = side_road("f1 f " + church + lights);
  CHECK(rows_of(town, "ABlCEClBA")[1].landmark == "after the crossing");
}

TEST_CASE("a road without signs leads where nobody says", "[say][landmark]") {
  CHECK(rows_of(side_road(""), "ABCECBA")[1].signed_to.empty());
}

TEST_CASE("signs of the way taken are told as they say, two of a list at most", "[say][landmark]") {
  const std::string signs = "destination:forward=Stavely;Orlham;Weston destination:ref:forward=A41";
  CHECK(rows_of(side_road("", signs), "ABCECBA")[1].signed_to == "Stavely, Orlham, A41");
  CHECK(rows_of(side_road("", "destination:backward=Stavely"), "ABCECBA")[1].signed_to.empty());
}

}  // namespace loopwright::test
