// Following signs. Sources: OSM wiki Key:destination, Key:destination:ref; a kilometre is ours.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// Two halves of 600 m, W to j and j to E, and a way back.
BuiltTown two_halves(const std::string& first, const std::string& second) {
  return built_town(draw_town(R"(
W     j     E
      C
w1 Wj highway=)" + first +
                                  "\nw2 jE highway=" + second + "\nw3 ECW highway=tertiary\n",
                              100),
                    "GB-ENG");
}

Texts signs(const BuiltTown& town) {
  const road::Roads roads = town.roads();
  Texts texts;
  for (const road::SignedTo& sign : roads.signs) {
    texts.push_back(std::string(roads.text(sign.destination)) + "/" +
                    std::string(roads.text(sign.ref)));
  }
  return texts;
}

TEST_CASE("streets without numbers or signs can't be followed by signs", "[mark][signed_roads]") {
  const BuiltTown town = two_halves("primary", "primary");
  CHECK(run_facts(town, Kind::independent_stretch).empty());
  CHECK(signs(town).empty());
}

TEST_CASE("a kilometre of one road number can be followed, by inference", "[mark][signed_roads]") {
  const BuiltTown town = two_halves("primary ref=A7901", "primary ref=A7901");
  CHECK(run_facts(town, Kind::independent_stretch) ==
        Texts{"Ej inferred ref=A7901", "Wj inferred ref=A7901", "jE inferred ref=A7901",
              "jW inferred ref=A7901"});
  CHECK(place_names(town, Kind::independent_stretch) == Texts{"A7901"});
  CHECK(chances(town, Kind::independent_stretch) == Texts{"EjW", "WjE"});
}

TEST_CASE("two numbers of half a kilometre each make no kilometre", "[mark][signed_roads]") {
  CHECK(run_facts(two_halves("primary ref=A7901", "primary ref=B9951"), Kind::independent_stretch)
            .empty());
}

TEST_CASE("the numbers of small roads aren't on signs", "[mark][signed_roads]") {
  CHECK(run_facts(two_halves("tertiary ref=C12", "tertiary ref=C12"), Kind::independent_stretch)
            .empty());
}

TEST_CASE("a road numbered twice is followed by its first number", "[mark][signed_roads]") {
  CHECK(run_facts(two_halves("primary ref=A7901;A7904", "primary ref=A7901"),
                  Kind::independent_stretch)
            .size() == 4);
}

TEST_CASE("a road is followed through a roundabout without a number", "[mark][signed_roads]") {
  const BuiltTown town = built_town(draw_town(R"(
                              N
.
                              n
W                            w e                            E
V                             s                             F
w5 VW highway=tertiary
w6 FE highway=tertiary
w1 Ww highway=primary ref=A7901
w2 eE highway=primary ref=A7901
w3 Nn highway=secondary ref=B9951
w4 wnesw highway=primary junction=roundabout
)",
                                              25),
                                    "GB-ENG");
  CHECK(place_names(town, Kind::independent_stretch) == Texts{"A7901"});
  CHECK(chances(town, Kind::independent_stretch) == Texts{"EewW", "WwneE"});
}

TEST_CASE("signs of a one-way road lead its way, and are certain", "[mark][signed_roads]") {
  const BuiltTown town = two_halves("primary oneway=yes destination=Orlham",
                                    "primary oneway=yes destination=Orlham;Stavely");
  CHECK(signs(town) == Texts{"Orlham/", "Orlham;Stavely/"});
  CHECK(run_facts(town, Kind::independent_stretch) ==
        Texts{"Wj certain destination=Orlham", "jE certain destination=Orlham;Stavely"});
  CHECK(place_names(town, Kind::independent_stretch) == Texts{"Orlham"});
}

TEST_CASE("a sign that names the road's own number makes it certain", "[mark][signed_roads]") {
  const BuiltTown town = two_halves("primary oneway=yes ref=A7901 destination:ref=A7904;A7901",
                                    "primary oneway=yes ref=A7901");
  CHECK(run_facts(town, Kind::independent_stretch) ==
        Texts{"Wj certain destination:ref=A7904;A7901", "jE inferred ref=A7901"});
}

TEST_CASE("on a two-way road only signs with a direction are read", "[mark][signed_roads]") {
  CHECK(signs(two_halves("primary destination=Orlham", "primary")).empty());
  CHECK(signs(two_halves("primary destination:backward=Orlham destination:ref:forward=A7904",
                         "primary")) == Texts{"/A7904", "Orlham/"});
}

}  // namespace
}  // namespace loopwright::test
