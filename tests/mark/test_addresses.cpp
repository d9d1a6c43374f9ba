// Addresses and named things. Source: OSM wiki, pages Addresses and Key:addr:housenumber.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "support/built_town.hpp"

namespace loopwright::test {
namespace {

using Texts = std::vector<std::string>;

BuiltTown street_with(const std::string& features) {
  return built_town(R"(
 H I J K
A       B
w1 AB highway=residential name=Lantern_Row
)" + features);
}

/// "street|number|postcode" of each address, in the column's order.
Texts addresses(const BuiltTown& town) {
  Texts texts;
  const road::Roads roads = town.roads();
  for (const road::Address& a : roads.addresses) {
    texts.push_back(std::string(roads.text(a.street)) + "|" + std::string(roads.text(a.number)) +
                    "|" + std::string(roads.text(a.postcode)));
  }
  return texts;
}

/// "name, what" of each named spot.
Texts spots(const BuiltTown& town) {
  Texts texts;
  const road::Roads roads = town.roads();
  for (const road::NamedSpot& spot : roads.named_spots) {
    texts.push_back(std::string(roads.text(spot.name)) + ", " + std::string(roads.text(spot.what)));
  }
  return texts;
}

TEST_CASE("a town without house numbers has no addresses and nothing named", "[mark][addresses]") {
  const BuiltTown town = street_with("");
  CHECK(addresses(town).empty());
  CHECK(spots(town).empty());
}

TEST_CASE("houses stand in order of street and number", "[mark][addresses]") {
  const BuiltTown town = street_with(
      "f1 H addr:housenumber=6 addr:street=\"Lantern Row\" addr:postcode=\"ZQ1 4AA\"\n"
      "f2 I addr:housenumber=4 addr:street=\"Lantern Row\"\n"
      "f3 J addr:housenumber=1 addr:street=\"Cooper's Reach\"\n");
  CHECK(addresses(town) == Texts{"Cooper's Reach|1|", "Lantern Row|4|", "Lantern Row|6|ZQ1 4AA"});
}

TEST_CASE("a list of numbers is several houses, a range stays one", "[mark][addresses]") {
  const BuiltTown town = street_with(
      "f1 H addr:housenumber=\"3; 5;7\" addr:street=\"Lantern Row\"\n"
      "f2 I addr:housenumber=12-16 addr:street=\"Lantern Row\"\n");
  CHECK(addresses(town) ==
        Texts{"Lantern Row|12-16|", "Lantern Row|3|", "Lantern Row|5|", "Lantern Row|7|"});
}

TEST_CASE("houses of a village without street names count by the village", "[mark][addresses]") {
  CHECK(addresses(street_with("f1 H addr:housenumber=9 addr:place=Tarrowby\n")) ==
        Texts{"Tarrowby|9|"});
}

TEST_CASE("a house with a name instead of a number is found by it", "[mark][addresses]") {
  const BuiltTown town =
      street_with("f1 H addr:housename=\"Rose Cottage, West\" addr:street=\"Lantern Row\"\n");
  CHECK(addresses(town) == Texts{"Lantern Row|Rose Cottage, West|"});
  CHECK(spots(town) == Texts{"Rose Cottage, West, addr:housename=Rose Cottage, West"});
}

TEST_CASE("a number that belongs to no street is no address", "[mark][addresses]") {
  CHECK(addresses(street_with("f1 H addr:housenumber=4\n")).empty());
  CHECK(addresses(street_with("f1 H addr:housenumber=4 addr:postcode=\"ZQ1 4AA\"\n")) ==
        Texts{"|4|ZQ1 4AA"});
}

TEST_CASE("one house drawn twice at one spot is one address", "[mark][addresses]") {
  const std::string house = " H addr:housenumber=4 addr:street=\"Lantern Row\"\n";
  CHECK(addresses(street_with("f1" + house + "f2" + house)).size() == 1);
}

TEST_CASE("a named thing says what it is by its most telling key", "[mark][addresses]") {
  const BuiltTown town = street_with(
      "f1 H amenity=pub building=yes name=The_Lamp\n"
      "f2 I place=village name=Tarrowby\n"
      "f3 J railway=station name=Quillham\n"
      "f4 K amenity=parking\n");
  CHECK(spots(town) ==
        Texts{"The Lamp, amenity=pub", "Tarrowby, place=village", "Quillham, railway=station"});
}

TEST_CASE("a bus stop named after its street is no named place", "[mark][addresses]") {
  CHECK(spots(street_with("f1 H highway=bus_stop public_transport=platform name=Lantern_Row\n"))
            .empty());
}

}  // namespace
}  // namespace loopwright::test
