// What a corner can be shown by. Source: OSM wiki, page Tag:amenity=place_of_worship.
#include <catch2/catch.hpp>
#include <string>

#include "support/built_town.hpp"

namespace loopwright::test {
namespace {

/// "church St Anne, pub" in the order of the rows.
std::string landmarks_of(const BuiltTown& town) {
  const road::Roads roads = town.roads();
  std::string all;
  for (const road::Landmark& mark : roads.landmarks) {
    if (!all.empty()) all += ", ";
    all += road::name(mark.kind);
    if (const auto name = roads.text(mark.name); !name.empty()) all.append(" ").append(name);
  }
  return all;
}

std::string of_feature(const std::string& tags) {
  return landmarks_of(built_town("A   B\n  c\nw1 AB highway=primary\nf1 c " + tags + "\n"));
}

}  // namespace

TEST_CASE("a town without a church or pub has no landmarks", "[mark][landmarks]") {
  CHECK(of_feature("highway=bus_stop").empty());
  CHECK(of_feature("amenity=parking").empty());
}

TEST_CASE("a church is a landmark, named or not", "[mark][landmarks]") {
  CHECK(of_feature("amenity=place_of_worship religion=christian") == "church");
  CHECK(of_feature("amenity=place_of_worship religion=christian name=St_Osk") == "church St Osk");
  CHECK(of_feature("amenity=place_of_worship religion=muslim") == "mosque");
}

TEST_CASE("a place of worship that nobody can picture is none", "[mark][landmarks]") {
  CHECK(of_feature("amenity=place_of_worship").empty());
}

TEST_CASE("pubs, petrol stations and shops are landmarks", "[mark][landmarks]") {
  CHECK(of_feature("amenity=pub name=The_Plough") == "pub The Plough");
  CHECK(of_feature("amenity=fuel") == "petrol-station");
  CHECK(of_feature("shop=convenience name=Mill_Stores") == "shop Mill Stores");
}

TEST_CASE("the reach of grounds is from their middle to their farthest corner",
          "[mark][landmarks]") {
  const BuiltTown town = built_town(R"(
A   B
c   d

e   f
w1 AB highway=primary
f2 cdfec amenity=school
)");
  const road::Roads roads = town.roads();
  REQUIRE(roads.landmarks.size() == 1);
  // The middle of a drawn feature is the mean of its letters, c twice: 60 m by 30 to d, e or f.
  CHECK(roads.landmarks[0].reach_m == Approx(67.1).epsilon(0.01));
  CHECK(roads.landmarks_in(road::grid_cell(roads.landmarks[0].at)).size() == 1);
  CHECK(roads.landmarks_in(0).empty());
}

}  // namespace loopwright::test
