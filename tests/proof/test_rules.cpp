#include <catch2/catch.hpp>

#include "proof/towns.hpp"
#include "support/crossing_divided_roads.hpp"

using namespace loopwright;
using namespace loopwright::test;

namespace {

/// What the proof finds in a drive of the banned town, all else told truly.
std::string found_in(std::string_view letters) {
  const BuiltTown town = banned_town();
  return falsehood(town, own_drive(town, letters));
}

}  // namespace

TEST_CASE("a one-way street driven the other way is told", "[proof]") {
  CHECK(found_in("DEIPHDE") == "loop 1, stretch 2 (way 18): it is one-way, the other way");
}

TEST_CASE("a private road is told with its tag", "[proof]") {
  CHECK(found_in("JIUJI") ==
        "loop 1, stretch 1 (way 20): it is shut to a learner's car (access=private)");
}

TEST_CASE("a road for destination only is told with its tag", "[proof]") {
  CHECK(found_in("ABVCBA") ==
        "loop 1, stretch 1 (way 22): it is not for driving through (access=destination)");
}

TEST_CASE("a drive through a bollard is told", "[proof]") {
  CHECK(found_in("JFGKQCFJ") ==
        "loop 1, stretch 3 (way 16): it is reached through the wall at node 11");
}

TEST_CASE("turning round in the road is told", "[proof]") {
  CHECK(found_in("ADEDA") ==
        "loop 1, stretch 2 (way 6): it is reached by turning round, which only a dead end allows, "
        "at node 5");
}

// That a turn in the road is a manoeuvre: Highway Code, 200 to 203. That it is for no service road: common practice, no source.
TEST_CASE("the car is turned round at an end only where the wish lets it", "[proof]") {
  const BuiltTown town = built_town(R"(
A . B . C
. . . . .
. . D . .
w1 ABC highway=residential name=Osk_Road
w2 BD highway=service
)");
  const auto told = [&](std::string_view letters, bool welcome) {
    wish::Answer answer = own_drive(town, letters);
    answer.wish.through.clear();
    answer.wish.minutes = 10;  // which it doesn't fill; its turns are looked at first
    if (welcome) answer.wish.welcome.push_back(road::Kind::turn_in_road);
    return falsehood(town, answer);
  };
  const std::string not_asked = "it is reached by turning round, which wasn't asked for, at node ";
  CHECK(told("ABCBA", false) == "loop 1, stretch 2 (way 1): " + not_asked + "3");
  CHECK(told("ABCBA", true).find("turning round") == std::string::npos);
  CHECK(told("ABDBA", true) == "loop 1, stretch 2 (way 2): " + not_asked + "4");
  CHECK(falsehood(town, own_drive(town, "ABDBA")) == "");
}

TEST_CASE("turning round the tip of a splitter island is told", "[proof]") {
  const BuiltTown town = built_town(R"(
. . . . . . E
. . . . . . .
A . B . . . .
. . . . . . .
. . . . . . D
. . . . . . .
. . . . . . F
w1 AB highway=primary name=Osk_Road
w2 BE highway=primary name=Osk_Road oneway=yes
w3 DB highway=primary name=Osk_Road oneway=yes
w4 EF highway=secondary
w5 FD highway=secondary
)");
  CHECK(falsehood(town, own_drive(town, "ABEFDBA")) == "");
  CHECK(falsehood(town, own_drive(town, "ABEFDBEFDBA")) ==
        "loop 1, stretch 5 (way 2): it is reached by turning round an island at node 2");
}

TEST_CASE("turning round through a gap in the reservation is told", "[proof]") {
  const BuiltTown town = built_town(R"(
. . . G . . .
A . . B . . C
D . . E . . F
. . . H . . .
w1 AB highway=primary name=Osk_Road oneway=yes
w2 BC highway=primary name=Osk_Road oneway=yes
w3 FE highway=primary name=Osk_Road oneway=yes
w4 ED highway=primary name=Osk_Road oneway=yes
w5 GBEH highway=residential name=Mill_Lane
w6 DA highway=tertiary
w7 CF highway=tertiary
w8 GH highway=tertiary
)");
  CHECK(falsehood(town, own_drive(town, "ABCFEDAB")) == "");
  CHECK(
      falsehood(town, own_drive(town, "ABEDAB")) ==
      "loop 1, stretch 2 (way 4): it is reached by turning round through a gap in the reservation "
      "at node 5");
}

TEST_CASE("turning round between divided roads of one name that cross is told", "[proof]") {
  const BuiltTown town = built_town(draw_town(crossing_divided_roads, 9), "GB-ENG");
  CHECK(falsehood(town, own_drive(town, "EABCLIHKEA")) == "");
  CHECK(
      falsehood(town, own_drive(town, "EABCLKEA")) ==
      "loop 1, stretch 4 (way 5): it is reached by turning round through a gap in the reservation "
      "at node 12");
}

TEST_CASE("driving in a circle of one-way pieces is told", "[proof]") {
  const auto found = [](int side_m) {
    const BuiltTown town =
        built_town(draw_town("ABCG\nIEFH\n"
                             "w1 AB highway=service\nw2 CG highway=service\nw3 EI highway=service\n"
                             "w4 FH highway=service\nw5 BCFEB highway=service oneway=yes\n",
                             side_m),
                   "GB-ENG");
    return falsehood(town, own_drive(town, "ABCFEBCFEBA"));
  };
  CHECK(found(31) == "");
  CHECK(found(29) == "loop 1, stretch 5 (way 5): it is reached by driving in a circle at node 2");
}

TEST_CASE("a banned turn is told with its relation", "[proof]") {
  CHECK(found_in("ADEIHDA") ==
        "loop 1, stretch 2 (way 9): relation 1 (restriction=no_right_turn) forbids coming from way "
        "6");
}

TEST_CASE("a turn banned only to those who came by two other ways is told", "[proof]") {
  CHECK(found_in("DABEFCBAD") ==
        "loop 1, stretch 3 (way 7): relation 2 (restriction=no_left_turn) forbids coming from way "
        "4");
  // From elsewhere the same turn is fine.
  CHECK(found_in("CBEFCB") == "");
}

TEST_CASE("leaving the only way on is told", "[proof]") {
  CHECK(found_in("DHIEBADH") ==
        "loop 1, stretch 2 (way 9): relation 3 (restriction=only_straight_on) allows only another "
        "way on from way 12");
}

TEST_CASE("leaving the only way on after two ways is told", "[proof]") {
  CHECK(found_in("EFJIHDEF") ==
        "loop 1, stretch 3 (way 12): relation 5 (restriction=only_right_turn) allows only another "
        "way on from way 11");
}

namespace {

/// Halves of a divided road so many metres apart, joined at their middle by a road across them.
std::string round_the_gap(int apart_m, const std::string& half, const std::string& other_half,
                          const std::string& across) {
  const BuiltTown town = built_town(
      draw_town(". . . G . . .\nA . . B . . C\nD . . E . . F\n. . . H . . .\n"
                "w1 AB highway=primary oneway=yes " +
                    half + "\nw2 BC highway=primary oneway=yes " + half +
                    "\nw3 FE highway=primary oneway=yes " + other_half +
                    "\nw4 ED highway=primary oneway=yes " + other_half + "\nw5 GBEH " + across +
                    "\nw6 DA highway=tertiary\nw7 CF highway=tertiary\nw8 GH highway=tertiary\n",
                apart_m),
      "GB-ENG");
  return falsehood(town, own_drive(town, "ABEDAB"));
}

const std::string round_a_gap =
    "loop 1, stretch 2 (way 4): it is reached by turning round through a gap in the reservation at "
    "node 5";

}  // namespace

TEST_CASE("a gap is up to 40 m wide, or 20 m where it bears the road's name", "[proof]") {
  const std::string osk = "name=Osk_Road", lane = "highway=residential name=Mill_Lane";
  CHECK(round_the_gap(39, osk, osk, lane) == round_a_gap);
  CHECK(round_the_gap(41, osk, osk, lane) == "");
  const std::string own = "highway=primary name=Osk_Road";
  CHECK(round_the_gap(19, osk, osk, own) == round_a_gap);
  CHECK(round_the_gap(21, osk, osk, own) == "");
}

TEST_CASE("halves of one road have one name or one number", "[proof]") {
  const std::string lane = "highway=residential name=Mill_Lane";
  CHECK(round_the_gap(25, "name=Osk_Road ref=A1", "name=Far_Road ref=A1", lane) == round_a_gap);
  CHECK(round_the_gap(25, "name=Osk_Road ref=A1", "name=Osk_Road ref=A2", lane) == round_a_gap);
  CHECK(round_the_gap(25, "name=Osk_Road ref=A1", "name=Far_Road ref=A2", lane) == "");
  // That both have no number, or no name, makes them no one road; that they have neither does.
  CHECK(round_the_gap(25, "name=Osk_Road", "name=Far_Road", lane) == "");
  CHECK(round_the_gap(25, "ref=A1", "ref=A2", lane) == "");
  CHECK(round_the_gap(25, "", "", lane) == round_a_gap);
}

TEST_CASE("a road that leads back round to where it began is a circle, not a gap", "[proof]") {
  // From D the road goes on, one-way and its own, to A, where it began; 120 m in all at most.
  const auto found = [](int metres, const std::string& back) {
    const BuiltTown town = built_town(
        draw_town(". . . . . G . . .\nK . A . . B . . C\nM . D . . E . . F\n. . . . . H . . .\n"
                  "w1 AB highway=primary name=Osk_Road oneway=yes\n"
                  "w2 BC highway=primary name=Osk_Road oneway=yes\n"
                  "w3 FE highway=primary name=Osk_Road oneway=yes\n"
                  "w4 ED highway=primary name=Osk_Road oneway=yes\n"
                  "w5 GBEH highway=residential name=Mill_Lane\nw11 GH highway=tertiary\n"
                  "w6 CF highway=tertiary\nw7 KA highway=tertiary\n"
                  "w8 DM highway=tertiary\nw9 MK highway=tertiary\nw10 " +
                      back + "\n",
                  metres),
        "GB-ENG");
    return falsehood(town, own_drive(town, "MKABEDMK"));
  };
  const std::string gap =
      "loop 1, stretch 4 (way 4): it is reached by turning round through a gap in the reservation "
      "at node 5";
  const std::string circle = "DA highway=primary name=Osk_Road oneway=yes";
  CHECK(found(6, circle) == "");    // 84 m
  CHECK(found(10, circle) == gap);  // 130 m
  CHECK(found(6, "DA highway=primary name=Far_Road oneway=yes") == gap);
  CHECK(found(6, "DA highway=primary name=Osk_Road") == gap);
}
