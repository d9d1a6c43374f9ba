// Places of a drawn town by what people type.
#include <catch2/catch.hpp>

#include "place/named_town.hpp"

namespace loopwright::test {
namespace {

using Texts = std::vector<std::string>;

/// Lantern Row runs east, its even houses north of it: 2, 4, (6), 8, then a range; its odd one south.
NamedTown quillham(const std::string& more = "") {
  return NamedTown(R"(
  h i   j k
A     B       C     p
    o M       N

      D   q   E
w1 AB   highway=residential name=Lantern_Row
w2 BC   highway=residential name=Lantern_Row
w3 BMD  highway=residential name=Mill_Street
w4 DE   highway=residential name=Cooper's_Reach
w5 CN   highway=residential name=Orchard_Gardens
w6 NE   highway=residential
f1 h    addr:housenumber=2 addr:street="Lantern Row" addr:postcode="ZQ1 4AA"
f2 i    addr:housenumber=4 addr:street="Lantern Row" addr:postcode="ZQ1 4AA"
f3 j    addr:housenumber=8 addr:street="Lantern Row" addr:postcode="ZQ1 4AB"
f4 k    addr:housenumber=12-16 addr:street="Lantern Row" addr:postcode="ZQ1 4AB"
f5 o    addr:housenumber=1 addr:street="Lantern Row"
f6 p    amenity=pub name=The_Red_Lion
f7 q    addr:housename="Rose Cottage" addr:street="Cooper's Reach" addr:postcode="ZQ2 1AA"
)" + more);
}

TEST_CASE("nothing typed finds nothing", "[place]") {
  const place::Finding finding = quillham().find(" , ");
  CHECK(finding.meant == 0);
  CHECK(finding.why == "nothing in this area is called ''");
  CHECK(finding.instead.empty());
}

TEST_CASE("a street is found by its name, however it is written", "[place]") {
  const NamedTown town = quillham();
  for (const char* text : {"Lantern Row", "lantern row", "LANTERN-ROW", "Lanternrow"}) {
    CHECK(town.meant(text) == Texts{"Lantern Row (street)"});
  }
  CHECK(town.meant("Mill St") == Texts{"Mill Street (street)"});
  CHECK(town.meant("coopers reach") == Texts{"Cooper's Reach (street)"});
  CHECK(town.meant("Orchard Gdns.") == Texts{"Orchard Gardens (street)"});
}

TEST_CASE("a street in pieces is one, and its point lies on it", "[place]") {
  const NamedTown town = quillham();
  const place::Finding finding = town.find("Lantern Row");
  REQUIRE(finding.meant == 1);
  const Point middle = finding.candidates[0].at;
  CHECK(distance_m(middle, point_along(std::vector{town.at('A'), town.at('C')}, 175)) < 1);
}

TEST_CASE("a house is found with its number before or after the street", "[place]") {
  const NamedTown town = quillham();
  for (const char* text : {"4 Lantern Row", "Lantern Row 4", "4, Lantern Row", "4 lantern  row",
                           "4 Lantern Row, ZQ1 4AA", "4, Lantern Row, zq14aa"}) {
    const place::Finding finding = town.find(text);
    REQUIRE(finding.meant == 1);
    CHECK(finding.candidates[0].name == "4 Lantern Row");
    CHECK(finding.candidates[0].match == place::Match::exact);
    CHECK(finding.note.empty());
  }
}

TEST_CASE("a house in a mapped range is found, and the range is told", "[place]") {
  const NamedTown town = quillham();
  CHECK(town.meant("14 Lantern Row") == Texts{"12-16 Lantern Row (house, mapped as 12-16)"});
  CHECK(town.meant("12-16 Lantern Row") == Texts{"12-16 Lantern Row (house)"});
  CHECK(town.find("13 Lantern Row").meant == 0);  // the odd ones stand on the other side
}

TEST_CASE("a house between two mapped ones of its side is inferred, and says so", "[place]") {
  const place::Finding finding = quillham().find("6 Lantern Row");
  REQUIRE(finding.meant == 1);
  CHECK(finding.candidates[0].what == "inferred between the mapped 4 and 8");
  CHECK(finding.candidates[0].match == place::Match::inferred);
}

TEST_CASE("a number the street lacks is never another house", "[place]") {
  const place::Finding finding = quillham().find("99 Lantern Row");
  CHECK(finding.candidates.empty());
  CHECK(finding.why == "Lantern Row has no 99 on the map");
  CHECK(finding.instead == Texts{"12-16 Lantern Row", "8 Lantern Row", "Lantern Row"});
}

TEST_CASE("a street without any numbers gives its middle, and says so", "[place]") {
  CHECK(quillham().meant("7 Mill Street") ==
        Texts{"Mill Street (street, of which no house numbers are mapped)"});
}

TEST_CASE("a house has a name instead of a number", "[place]") {
  const NamedTown town = quillham();
  CHECK(town.meant("Rose Cottage, Coopers Reach") == Texts{"Rose Cottage, Cooper's Reach (house)"});
  CHECK(town.meant("rose cottage") == Texts{"Rose Cottage (addr:housename=Rose Cottage)"});
}

TEST_CASE("a flat is found at its house", "[place]") {
  const place::Finding finding = quillham().find("Flat 2, 4 Lantern Row");
  REQUIRE(finding.meant == 1);
  CHECK(finding.candidates[0].name == "4 Lantern Row");
  CHECK(finding.note == "'Flat 2' isn't looked for");
}

TEST_CASE("two streets are found where they cross", "[place]") {
  const NamedTown town = quillham();
  for (const char* text : {"Lantern Row / Mill Street", "Mill St & Lantern Row",
                           "corner of Lantern Row and Mill Street", "Lantern Row and Mill St"}) {
    const place::Finding finding = town.find(text);
    REQUIRE(finding.meant == 1);
    CHECK(finding.candidates[0].at == town.at('B'));
  }
}

TEST_CASE("streets that don't meet are told with streets that do", "[place]") {
  const place::Finding finding = quillham().find("Lantern Row / Cooper's Reach");
  CHECK(finding.candidates.empty());
  CHECK(finding.why == "Lantern Row and Cooper's Reach don't meet on the map");
  CHECK(finding.instead == Texts{"Lantern Row / Mill Street", "Lantern Row / Orchard Gardens"});
}

TEST_CASE("a postcode is found in any writing, whole or its first part", "[place]") {
  const NamedTown town = quillham();
  for (const char* text : {"ZQ1 4AA", "zQ14aa", "zq1 4aa"}) {
    CHECK(town.meant(text) == Texts{"ZQ1 4AA (postcode, middle of its 2 houses)"});
  }
  CHECK(town.meant("ZQ2") == Texts{"ZQ2 (postcode, its one house)"});
}

TEST_CASE("another postcode is another place, however alike", "[place]") {
  const place::Finding finding = quillham().find("ZQ1 4AC");
  CHECK(finding.meant == 0);
  CHECK(finding.why == "nothing in this area is called 'ZQ1 4AC'");
  CHECK(finding.instead == Texts{"ZQ1 4AA", "ZQ1 4AB"});
}

TEST_CASE("a pub is found with and without its article, and by a part of its name", "[place]") {
  const NamedTown town = quillham("f9 N shop=bakery name=\"Lamp and Loaf Bakery\"\n");
  CHECK(town.meant("Red Lion") == Texts{"The Red Lion (amenity=pub)"});
  CHECK(town.meant("the red lion") == Texts{"The Red Lion (amenity=pub)"});
  CHECK(town.meant("Lamp and Loaf") == Texts{"Lamp and Loaf Bakery (shop=bakery)"});
}

TEST_CASE("a typo finds: changed, left out, added, swapped", "[place]") {
  const NamedTown town = quillham();
  for (const char* text : {"Lentern Row", "Lanern Row", "Lannterrn Row", "Latnern Row"}) {
    CHECK(town.meant(text) == Texts{"Lantern Row (street)"});
    CHECK(town.find(text).candidates[0].match == place::Match::typo);
  }
  CHECK(town.meant("4 Lantren Row") == Texts{"4 Lantern Row (house)"});
  CHECK(town.meant("Lantren Row / Mil Street") == Texts{"Lantern Row / Mill Street (crossing)"});
}

TEST_CASE("a name spelled as typed never loses to one a letter away", "[place]") {
  const NamedTown town = quillham("w8 EN highway=residential name=Hill_Street\n");
  CHECK(town.meant("Hill Street") == Texts{"Hill Street (street)"});
  CHECK(town.meant("Mill Street") == Texts{"Mill Street (street)"});
  CHECK(town.find("Nill Street").meant == 2);  // both are a letter away
}

TEST_CASE("a quarter and the street named after it are the street", "[place]") {
  CHECK(quillham("f9 M place=suburb name=Mill_Street\n").meant("Mill Street") ==
        Texts{"Mill Street (street)"});
}

TEST_CASE("a settlement comes before a shop of its name", "[place]") {
  const NamedTown town =
      quillham("f8 A place=village name=Tarrowby\nf9 E shop=bakery name=Tarrowby\n");
  CHECK(town.meant("Tarrowby") == Texts{"Tarrowby (place=village)"});
  CHECK(town.find("Tarrowby").candidates.size() == 2);
}

TEST_CASE("what isn't there is answered with the nearest spellings", "[place]") {
  const place::Finding finding = quillham().find("Lantern Promenade");
  CHECK(finding.meant == 0);
  CHECK(finding.why == "nothing in this area is called 'Lantern Promenade'");
  CHECK(finding.instead == Texts{"Lantern Row"});
}

TEST_CASE("a text longer than any name is not looked for", "[place]") {
  std::string text;
  for (int i = 0; i < 60; ++i) text += "Lantern Row ";
  const place::Finding finding = quillham().find(text);
  CHECK(finding.meant == 0);
  CHECK(finding.why == "no place has a name of more than 500 letters");
}

TEST_CASE("a name unlike all others is answered without a guess", "[place]") {
  CHECK(quillham().find("Unterfeld").instead.empty());
}

TEST_CASE("a county nobody mapped is passed over, and that is told", "[place]") {
  const place::Finding finding = quillham().find("4 Lantern Row, Oskshire");
  REQUIRE(finding.meant == 1);
  CHECK(finding.note == "'Oskshire' isn't known here");
}

TEST_CASE("a postcode that belongs elsewhere leaves nothing", "[place]") {
  const place::Finding finding = quillham().find("Mill Street, ZQ9 9ZZ");
  CHECK(finding.meant == 1);  // not mapped at all: passed over
  CHECK(finding.note == "'ZQ9 9ZZ' isn't known here");
}

}  // namespace
}  // namespace loopwright::test
