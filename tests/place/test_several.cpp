// Streets of one name: when they are one, when they are several, and how they are told apart.
#include <catch2/catch.hpp>

#include "place/named_town.hpp"

namespace loopwright::test {
namespace {

using Texts = std::vector<std::string>;

/// Two High Streets more than a kilometre apart, a step being 100 m; each with houses.
NamedTown two_villages(const std::string& more) {
  return NamedTown(R"(
t h             u j
A   B   - - - C   D
    E         F
w1 AB highway=residential name=High_Street
w2 BE highway=residential name=Mill_Lane
w3 BC highway=tertiary
w4 CD highway=residential name=High_Street
w5 CF highway=residential name=Kiln_Lane
f1 h addr:housenumber=5 addr:street="High Street" addr:postcode="ZQ5 1AA"
f2 j addr:housenumber=5 addr:street="High Street" addr:postcode="ZQ6 1AA"
)" + more,
                   100);
}

const std::string villages =
    "f3 t place=village name=Tarrowby\nf4 u place=village name=Stavenhoe\n";

TEST_CASE("two streets of one name are told apart by their villages", "[place]") {
  const NamedTown town = two_villages(villages);
  CHECK(town.meant("High Street") ==
        Texts{"High Street, Tarrowby (street)", "High Street, Stavenhoe (street)"});
  CHECK(town.meant("High Street, Tarrowby") == Texts{"High Street (street)"});
  CHECK(town.find("high st, stavenhoe").candidates[0].at.lon_e7 > town.at('B').lon_e7);
}

TEST_CASE("without villages their postcodes tell them apart", "[place]") {
  const NamedTown town = two_villages("");
  CHECK(town.meant("High Street") ==
        Texts{"High Street, ZQ5 1AA (street)", "High Street, ZQ6 1AA (street)"});
  CHECK(town.meant("High Street, ZQ6 1AA").size() == 1);
  CHECK(town.meant("High Street, ZQ6").size() == 1);
  CHECK(town.find("High Street ZQ6 1AA").candidates[0].at.lon_e7 > town.at('B').lon_e7);
}

TEST_CASE("a house there is twice is told apart too", "[place]") {
  const NamedTown town = two_villages(villages);
  CHECK(town.meant("5 High Street") ==
        Texts{"5 High Street, Tarrowby (house)", "5 High Street, Stavenhoe (house)"});
  CHECK(town.meant("5 High Street, Stavenhoe") == Texts{"5 High Street (house)"});
  CHECK(town.meant("5 High Street, Stavenho") == Texts{"5 High Street (house)"});
}

TEST_CASE("a crossing needs no village when only one of the two has it", "[place]") {
  const NamedTown town = two_villages(villages);
  CHECK(town.meant("High Street / Kiln Lane") == Texts{"High Street / Kiln Lane (crossing)"});
}

TEST_CASE("a village that has no such street leaves its nearest", "[place]") {
  const NamedTown town = two_villages(villages + "f5 F place=hamlet name=Pellmarsh\n");
  const place::Finding finding = town.find("High Street, Pellmarsh");
  REQUIRE(finding.meant == 1);
  CHECK(finding.candidates[0].at.lon_e7 > town.at('B').lon_e7);
}

TEST_CASE("names that differ tell themselves apart", "[place]") {
  const NamedTown town = two_villages(villages + "w6 EF highway=residential name=Mill_Rise\n");
  CHECK(town.meant("Mill") == Texts{"Mill Lane (street)", "Mill Rise (street)"});
}

TEST_CASE("a street cut by a square is one", "[place]") {
  const NamedTown town(R"(
A   B   C   D
w1 AB highway=residential name=High_Street
w2 BC highway=residential name=Market_Square
w3 CD highway=residential name=High_Street
)",
                       100);
  CHECK(town.meant("High Street") == Texts{"High Street (street)"});
}

TEST_CASE("halves of a dual carriageway cross a street once", "[place]") {
  const NamedTown town(R"(
    N
A   B   C
D   E   F
    S
w1 ABC highway=primary name=Osk_Road oneway=yes
w2 FED highway=primary name=Osk_Road oneway=yes
w3 NBES highway=residential name=Mill_Lane
w4 CF highway=primary name=Osk_Road
w5 AD highway=primary name=Osk_Road
)");
  CHECK(town.meant("Osk Road / Mill Lane") == Texts{"Osk Road / Mill Lane (crossing)"});
}

TEST_CASE("houses of a street beyond the map's edge stand for it", "[place]") {
  const NamedTown town(R"(
h   j
A   B
w1 AB highway=residential name=Mill_Lane
f1 h addr:housenumber=5 addr:street="Kiln Lane"
f2 j addr:housenumber=9 addr:street="Kiln Lane"
)");
  CHECK(town.meant("Kiln Lane") ==
        Texts{"Kiln Lane (street the map lacks, middle of its 2 houses)"});
  CHECK(town.meant("5 Kiln Lane") == Texts{"5 Kiln Lane (house)"});
  CHECK(town.find("7 Kiln Lane").meant == 1);
}

}  // namespace
}  // namespace loopwright::test
