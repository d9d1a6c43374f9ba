// What is briefed with a row: limits, hazards before the next row, what isn't sure.
#include <catch2/catch.hpp>

#include "say/said.hpp"

namespace loopwright::test {

TEST_CASE("a drive with nothing to brief has rows without hazards", "[say]") {
  const BuiltTown town = town_of(R"(
             D
    A  B     C
             E
  w1 AB    highway=residential name=Lantern_Row maxspeed="30 mph"
  w50 BC   highway=residential name=Lantern_Row maxspeed="30 mph"
  w2 DCE   highway=residential name=Mill_Orchard maxspeed="30 mph"
  )",
                                 100);
  for (const say::Row& row : rows_of(town, "ABCDCBA")) CHECK(row.hazards.empty());
}

TEST_CASE("a limit that changes at a row is the row's, one between rows is told with them",
          "[say]") {
  const BuiltTown town = town_of(R"(
                     D
    A  B     F       C
                     E
  w1 AB    highway=residential name=Lantern_Row maxspeed="30 mph"
  w50 BF   highway=residential name=Lantern_Row maxspeed="30 mph"
  w51 FC   highway=residential name=Lantern_Row maxspeed="20 mph"
  w2 DCE   highway=residential name=Mill_Orchard maxspeed="40 mph"
  )",
                                 100);
  const auto rows = rows_of(town, "ABFCDCFBA");
  REQUIRE(rows[0].new_limit);
  CHECK(rows[0].new_limit->value == 30);
  CHECK(rows[0].hazards == Texts{"limit 20"});
  REQUIRE(rows[1].new_limit);
  CHECK(rows[1].new_limit->value == 40);
  CHECK_FALSE(rows[2].new_limit);  // turned round, the same road
}

TEST_CASE("a limit the map only lets us infer is one to look for", "[say]") {
  const BuiltTown town = town_of(R"(
                     D
    A  B     F       C
                     E
  w1 AB    highway=residential name=Lantern_Row maxspeed="20 mph"
  w50 BF   highway=residential name=Lantern_Row maxspeed="20 mph"
  w51 FC   highway=residential name=Lantern_Row lit=yes
  w2 DCE   highway=residential name=Mill_Orchard maxspeed="30 mph"
  )",
                                 100);
  CHECK(rows_of(town, "ABFCDCFBA")[0].hazards == Texts{"limit 30, look for the sign"});
}

TEST_CASE("of a service road whose limit isn't mapped that alone is told", "[say]") {
  const BuiltTown town = town_of(R"(
                     D
    A  B     F       C
                     E
  w1 AB    highway=residential name=Lantern_Row maxspeed="20 mph"
  w50 BF   highway=residential name=Lantern_Row maxspeed="20 mph"
  w51 FC   highway=service
  w2 DCE   highway=residential name=Mill_Orchard maxspeed="30 mph"
  )",
                                 100);
  const auto rows = rows_of(town, "ABFCDCFBA");
  CHECK(rows[0].hazards == Texts{"service road, no limit mapped: slowly"});
  REQUIRE(rows[1].new_limit);
  CHECK(rows[1].new_limit->value == 30);
}

TEST_CASE("several zebras before the next row are counted", "[say]") {
  const BuiltTown town = town_of(R"(
                          D
    A  B     F    G       C
                          E
  w1 AB    highway=residential name=Lantern_Row maxspeed="30 mph"
  w50 BFGC highway=residential name=Lantern_Row maxspeed="30 mph"
  w2 DCE   highway=residential name=Mill_Orchard maxspeed="30 mph"
  nF highway=crossing crossing=uncontrolled crossing:markings=zebra
  nG highway=crossing crossing=uncontrolled crossing:markings=zebra
  )",
                                 100);
  CHECK(rows_of(town, "ABFGCDCGFBA")[0].hazards == Texts{"2 zebras"});
}

TEST_CASE("a road that parked cars only may make narrow is narrow perhaps", "[say]") {
  const std::string drawing = R"(
                     D
    A  B             C
                     E
  w1 AB    highway=residential name=Lantern_Row maxspeed="30 mph"
  w50 BC   highway=residential name=Lantern_Row maxspeed="30 mph"
  w2 DCE   highway=residential name=Mill_Orchard maxspeed="30 mph" )";
  const BuiltTown measured = town_of(drawing + "width=4.2\n", 100);
  CHECK(rows_of(measured, "ABCDCBA")[1].hazards == Texts{"narrow road"});
  const BuiltTown parked = town_of(drawing + "width=8 parking:both=lane\n", 100);
  CHECK(rows_of(parked, "ABCDCBA")[1].hazards ==
        Texts{"narrow road, perhaps", "parked cars, meet what comes, perhaps"});
}

TEST_CASE("a row knows the hardest thing it leads to", "[say]") {
  const BuiltTown town = town_of(R"(
                     D
    A  B             C
                     E
  w1 AB    highway=residential name=Lantern_Row maxspeed="30 mph"
  w50 BC   highway=residential name=Lantern_Row maxspeed="30 mph"
  w2 DCE   highway=residential name=Mill_Orchard maxspeed="30 mph" width=2.6
  )",
                                 100);
  const auto rows = rows_of(town, "ABCDCBA");
  CHECK(rows[0].hardness == 0);
  CHECK(rows[1].hardness == 4);  // the single-track road, not the emerging (2)
  CHECK(rows[1].passes.size() == 2);
}

}  // namespace loopwright::test
