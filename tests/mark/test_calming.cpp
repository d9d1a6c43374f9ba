// Sources: OSM wiki Key:traffic_calming; Highways (Road Humps) Regulations 1999 for the distance of a
// series, by a council's summary.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A street with points a, j and b 50 m apart, and two side streets at j.
BuiltTown street_with(const std::string& lines) {
  return built_town(R"(
          N
W       a j b       E
          S
w1 WajbE highway=residential name=Mill_Street
w2 NjS highway=residential name=Ostler_Street
)" + lines);
}

const std::string hump = " traffic_calming=hump\n";

TEST_CASE("a street without humps isn't calmed", "[mark][calming]") {
  const BuiltTown town = street_with("");
  CHECK(places(town, Kind::calming).empty());
}

TEST_CASE("a hump is passed in both directions", "[mark][calming]") {
  const BuiltTown town = street_with("na" + hump);
  CHECK(chances(town, Kind::calming) == Texts{"Waj", "jaW"});
  CHECK(reasons(town, Kind::calming) == Texts{"certain traffic_calming=hump na"});
}

TEST_CASE("cushions, tables, bumps and dips calm a street as humps do", "[mark][calming]") {
  for (const char* form :
       {"cushion", "table", "bump", "mini_bumps", "dip", "double_dip", "dynamic_bump"}) {
    const BuiltTown town = street_with(std::string("na traffic_calming=") + form + "\n");
    CHECK(reasons(town, Kind::calming) ==
          Texts{std::string("certain traffic_calming=") + form + " na"});
  }
}

TEST_CASE("humps that follow each other are one place, side streets lead in and out",
          "[mark][calming]") {
  const BuiltTown town = street_with("na" + hump + "nb traffic_calming=cushion\n");
  CHECK(places(town, Kind::calming) == Texts{"na"});
  CHECK(place_names(town, Kind::calming) == Texts{"Mill Street"});
  // Over the street from N to S no hump is crossed.
  CHECK(chances(town, Kind::calming) ==
        Texts{"EbjN", "EbjS", "EbjaW", "NjaW", "NjbE", "SjaW", "SjbE", "WajN", "WajS", "WajbE"});
  CHECK(reasons(town, Kind::calming) ==
        Texts{"certain traffic_calming=cushion nb", "certain traffic_calming=hump na"});
}

TEST_CASE("humps 175 m apart are two places", "[mark][calming]") {
  const BuiltTown town = built_town(R"(
W       a      b       E
w1 WabE highway=residential
na traffic_calming=hump
nb traffic_calming=hump
)");
  CHECK(places(town, Kind::calming) == Texts{"na", "nb"});
}

TEST_CASE("humps of two streets are two places", "[mark][calming]") {
  const BuiltTown town = built_town(R"(
W   a   j   b   E
w1 Waj highway=residential name=Mill_Street
w2 jbE highway=residential name=Ostler_Street
na traffic_calming=hump
nb traffic_calming=hump
)");
  CHECK(places(town, Kind::calming) == Texts{"na", "nb"});
}

TEST_CASE("a raised junction joins the humps of one street, not of both", "[mark][calming]") {
  const BuiltTown town = built_town(R"(
        c
.
W   a   j   b   E
.
        d
w1 WajbE highway=residential name=Mill_Street
w2 cjd highway=residential name=Ostler_Street
na traffic_calming=hump
nb traffic_calming=hump
nc traffic_calming=hump
nj traffic_calming=table
)");
  CHECK(places(town, Kind::calming) == Texts{"na"});  // c is the end of its street
  const auto found = chances(town, Kind::calming);
  CHECK(std::ranges::count(found, "cjd") == 1);
}

TEST_CASE("a hump for one direction is met that way only", "[mark][calming]") {
  CHECK(chances(street_with("na traffic_calming=cushion direction=forward\n"), Kind::calming) ==
        Texts{"Waj"});
  CHECK(chances(street_with("na traffic_calming=cushion direction=backward\n"), Kind::calming) ==
        Texts{"jaW"});
}

TEST_CASE("a list of forms is read word by word", "[mark][calming]") {
  const BuiltTown town = street_with("na traffic_calming=choker;cushion\n");
  CHECK(reasons(town, Kind::calming) == Texts{"certain traffic_calming=cushion na"});
  CHECK(places(town, Kind::pinch_point) == Texts{"na"});
}

TEST_CASE("islands, rumble strips and narrowings are no humps", "[mark][calming]") {
  for (const char* form : {"island", "rumble_strip", "choker", "yes"}) {
    const BuiltTown town = street_with(std::string("na traffic_calming=") + form + "\n");
    CHECK(places(town, Kind::calming).empty());
  }
}

TEST_CASE("a hump in a car park is no matter for a lesson", "[mark][calming]") {
  const BuiltTown town = built_town(R"(
W   a   E
w1 WaE highway=service
na traffic_calming=hump
)");
  CHECK(places(town, Kind::calming).empty());
}

TEST_CASE("a table drawn as a short way is passed from end to end", "[mark][calming]") {
  const BuiltTown town = built_town(R"(
W   ab   E
w1 Wa highway=residential
w2 ab highway=residential traffic_calming=table
w3 bE highway=residential
)");
  CHECK(chances(town, Kind::calming) == Texts{"EbaW", "WabE"});
  CHECK(reasons(town, Kind::calming) == Texts{"certain traffic_calming=table w2"});
}

TEST_CASE("a table of one direction of its way is met that way only", "[mark][calming]") {
  const BuiltTown town = built_town(R"(
W   ab   E
w1 Wa highway=residential
w2 ab highway=residential traffic_calming:backward=table
w3 bE highway=residential
)");
  CHECK(chances(town, Kind::calming) == Texts{"EbaW"});
}

TEST_CASE("a long street that is said to have humps is met by driving 150 m of it",
          "[mark][calming]") {
  const BuiltTown town = built_town(R"(
            S
W   a       b       c   E
w1 Wa highway=residential
w2 abc highway=residential traffic_calming=hump
w3 cE highway=residential
w4 bS highway=residential
)");
  CHECK(chances(town, Kind::calming) == Texts{"EcbS", "EcbaW", "SbaW", "SbcE", "WabS", "WabcE"});
  CHECK(reasons(town, Kind::calming) == Texts{"inferred traffic_calming=hump w2"});
}

TEST_CASE("a dozen humps with a side street between each two stay one cheap place",
          "[mark][calming]") {
  const std::string humps = "abcdefghijkl", joints = "ABCDEFGHIJK", sides = "mnopqrstuvw";
  std::string above, street = "Y ", way = "Y", lines;
  for (std::size_t i = 0; i < humps.size(); ++i) {
    street += humps[i];
    way += humps[i];
    lines += std::string("n") + humps[i] + hump;
    if (i == joints.size()) break;
    street += std::string(" ") + joints[i] + " ";
    way += joints[i];
    above.resize(street.size() - 2, ' ');
    above += sides[i];
    lines += "w" + std::to_string(10 + i) + " " + joints[i] + sides[i] + " highway=residential\n";
  }
  const BuiltTown town =
      built_town(draw_town(above + "\n" + street + " Z\nw1 " + way +
                               "Z highway=residential name=Mill_Street\n" + lines,
                           30),
                 "GB-ENG");
  CHECK(places(town, Kind::calming) == Texts{"na"});
  CHECK(chances(town, Kind::calming).size() == 13 * 12);  // 13 ways in, each out by the 12 others
}

}  // namespace
}  // namespace loopwright::test
