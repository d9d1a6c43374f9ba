// How names are compared. Sources: none but the words of the task and common usage.
#include <catch2/catch.hpp>

#include "loopwright/place/spelling.hpp"
#include "loopwright/place/typed.hpp"

namespace loopwright::test {
namespace {

using place::key_of;

TEST_CASE("nothing typed is an empty key", "[place]") {
  CHECK(key_of("").empty());
  CHECK(key_of(" ,.- ").empty());
}

TEST_CASE("case, apostrophes, hyphens and dots don't matter", "[place]") {
  CHECK(key_of("LANTERN row") == key_of("Lantern Row"));
  CHECK(key_of("Cooper's Reach") == key_of("Coopers Reach"));
  CHECK(key_of("Cooper\u2019s Reach") == key_of("Coopers Reach"));
  CHECK(key_of("Withy-Cross Lane") == key_of("Withy Cross Lane"));
}

TEST_CASE("accents don't matter", "[place]") {
  CHECK(key_of("T\u0177 Gwyn") == "ty gwyn");
  CHECK(key_of("\u00c9glise") == "eglise");
  CHECK(key_of("e\u0301glise") == "eglise");
  CHECK(key_of("Bahnhofstra\u00dfe") == "bahnhofstrasse");
}

TEST_CASE("letters of other scripts stay, broken ones are spaces", "[place]") {
  CHECK(key_of("\u041c\u043e\u0441\u0442") == "\u041c\u043e\u0441\u0442");
  CHECK(key_of("Mill\xff Street") == "mill street");
}

TEST_CASE("short forms are spelled out, but not at the beginning", "[place]") {
  CHECK(key_of("Mill Rd") == "mill road");
  CHECK(key_of("Mill Ave.") == "mill avenue");
  CHECK(key_of("Dr Price Cl") == "dr price close");
  CHECK(key_of("Orchard Gdns") == "orchard gardens");
  CHECK(key_of("Signal Terr") == key_of("Signal Tce"));
}

TEST_CASE("St is a saint before a name and a street after it", "[place]") {
  CHECK(key_of("St Julian's St") == "saint julians street");
  CHECK(key_of("Mill St") == "mill street");
  CHECK(key_of("Mill St North") == "mill street north");
  CHECK(key_of("Church of St Mary") == "church of saint mary");
}

TEST_CASE("a leading The is not a part of a name", "[place]") {
  CHECK(key_of("the Red Lion") == key_of("Red Lion"));
  CHECK(key_of("The") == "the");
}

TEST_CASE("a slip of the finger is one edit, whichever of the four it is", "[place]") {
  CHECK(place::edits_between("lantern", "lantern") == 0);
  CHECK(place::edits_between("lantern", "lentern") == 1);
  CHECK(place::edits_between("lantern", "lanern") == 1);
  CHECK(place::edits_between("lantern", "lanntern") == 1);
  CHECK(place::edits_between("lantern", "latnern") == 1);
  CHECK(place::edits_between("", "row") == 3);
  // Textbook pair (Levenshtein): kitten, sitting.
  CHECK(place::edits_between("kitten", "sitting") == 3);
}

TEST_CASE("the word that says what sort of street it is buys no edits", "[place]") {
  CHECK(place::allowed_edits("elm street") == 1);
  CHECK(place::allowed_edits("lantern row") == 2);
  CHECK(place::allowed_edits("mill road") == 1);
  CHECK(place::allowed_edits("park place") == 2);  // both words do: then both count
}

TEST_CASE("a number stands before or after its street", "[place]") {
  const auto before = place::number_and_street("4 Lantern Row");
  REQUIRE(before);
  CHECK(before->number == "4");
  CHECK(before->street == "Lantern Row");
  CHECK(place::number_and_street("Lantern Row 12-16")->number == "12-16");
  CHECK(place::number_and_street("4 a Lantern Row")->number == "4 a");
  CHECK_FALSE(place::number_and_street("Lantern Row"));
  CHECK_FALSE(place::number_and_street("4"));
}

TEST_CASE("what follows a comma narrows, and so does a postcode without one", "[place]") {
  const place::Typed plain = place::read_typed("4, Lantern Row, Tarrowby");
  CHECK(plain.head == "4 Lantern Row");
  CHECK(plain.tails == std::vector<std::string>{"Tarrowby"});
  const place::Typed code = place::read_typed("4 Lantern Row zq1 4aa");
  CHECK(code.head == "4 Lantern Row");
  CHECK(code.tails == std::vector<std::string>{"zq1 4aa"});
  CHECK(place::read_typed("Lantern Row ZQ14AA").tails == std::vector<std::string>{"ZQ14AA"});
  CHECK(place::read_typed("ZQ1 4AA").head == "ZQ1 4AA");
}

TEST_CASE("two streets are told by a stroke, an and, or the corner they make", "[place]") {
  using Cuts = std::vector<std::pair<std::string, std::string>>;
  const Cuts both = {{"Lantern Row", "Mill Street"}};
  CHECK(place::two_streets("Lantern Row / Mill Street") == both);
  CHECK(place::two_streets("Lantern Row & Mill Street") == both);
  CHECK(place::two_streets("the corner of Lantern Row and Mill Street") == both);
  CHECK(place::two_streets("Rose and Crown Lane and Mill Street").size() == 2);
  CHECK(place::two_streets("Lantern Row").empty());
}

}  // namespace
}  // namespace loopwright::test
