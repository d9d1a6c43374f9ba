// What is said at junctions without lights or rings. Patterns after the
// examiners' guidance; which junctions go without saying is our own judgement.
#include <catch2/catch.hpp>

#include "say/said.hpp"

namespace loopwright::test {

TEST_CASE("a road that only bends needs no word", "[say]") {
  const BuiltTown town = town_of(R"(
    A  B     C


       E     D
  w1 AB    highway=residential name=Lantern_Row
  w2 BC    highway=residential name=Lantern_Row
  w3 CD    highway=residential name=Mill_Orchard
  w4 DE    highway=residential name=Mill_Orchard
  w5 EB    highway=residential name=Mill_Orchard
  )",
                                 100);
  // The only junction is B itself: from E it is the end of the road.
  CHECK(said(town, "ABCDEBA") == Texts{"leave Lantern Row towards Mill Orchard",
                                       "at the end of the road turn left",
                                       "pull up on the left when it's safe"});
}

TEST_CASE("a side road passed by is not spoken of, one taken is counted", "[say]") {
  const BuiltTown town = town_of(R"(
    A  B    C    D    E


       F    G    H    I
  w1 AB    highway=residential name=Lantern_Row maxspeed="30 mph"
  w50 BCDE   highway=residential name=Lantern_Row maxspeed="30 mph"
  w2 BF    highway=residential name=Weir_Street
  w3 CG    highway=residential name=Pound_Street
  w4 DH    highway=residential name=Gate_Street
  w5 FGHI  highway=residential name=South_Street
  w6 EI    highway=residential name=East_Way
  )",
                                 100);
  // 500 m between the roads on the right: none is in sight when the one meant is spoken of.
  CHECK(said_between(town, "ABCDHGFBA") == Texts{"take the first road on the right",
                                                 "at the end of the road turn right",
                                                 "at the end of the road turn left"});
}

TEST_CASE("roads close together are counted from where one speaks", "[say]") {
  const BuiltTown town = town_of(R"(
    A  B         CDE    F


       G         HIJ    K
  w1 AB    highway=residential name=Lantern_Row maxspeed="30 mph"
  w50 BCDEF   highway=residential name=Lantern_Row maxspeed="30 mph"
  w2 BG     highway=residential name=Weir_Street
  w3 CH     highway=residential name=Pound_Street
  w4 DI     highway=residential name=Gate_Street
  w5 EJ     highway=residential name=Bell_Yard
  w6 GHIJK  highway=residential name=South_Street
  w7 FK     highway=residential name=East_Way
  )",
                                 50);
  const auto second = rows_of(town, "ABCDIHGBA");
  CHECK(second[1].say == "take the second road on the right");
  CHECK(second[1].speak_m > 50 + 40);
  const auto third = rows_of(town, "ABCDEJIHGBA");
  CHECK(third[1].say == "take the third road on the right");
  CHECK(third[1].speak_m > 100 + 40);
}

TEST_CASE("a fourth road is named, and without a name spoken of later, but never too late",
          "[say]") {
  std::string drawing = R"(
    A  B                CDEFG    K


       L                MNOP     Q
  w1 AB    highway=residential name=Lantern_Row maxspeed="60 mph"
  w50 BCDEFGK   highway=residential name=Lantern_Row maxspeed="60 mph"
  w2 BL     highway=residential name=Weir_Street
  w3 CM     highway=residential name=Pound_Street
  w4 DN     highway=residential name=Gate_Street
  w5 EO     highway=residential name=Bell_Yard
  w6 FP     highway=residential )";
  const std::string rest = R"(
  w7 LMNOPQ highway=residential name=South_Street
  w8 KQ     highway=residential name=East_Way
  )";
  const BuiltTown named = town_of(drawing + "name=Hay_Street" + rest, 50);
  CHECK(rows_of(named, "ABCDEFPONMLBA")[1].say == "turn right into Hay Street");
  const BuiltTown unnamed = town_of(drawing + rest, 50);
  const auto rows = rows_of(unnamed, "ABCDEFPONMLBA");
  CHECK(rows[1].say == "take the fourth road on the right");
  CHECK(rows[1].speak_m == Approx(14 * 60 * 0.44704));
  for (auto at = drawing.find("60 mph"); at != std::string::npos; at = drawing.find("60 mph"))
    drawing.replace(at, 6, "20 mph");
  const BuiltTown slow = town_of(drawing + rest, 60);
  const auto later = rows_of(slow, "ABCDEFPONMLBA");
  CHECK(later[1].say == "take the third road on the right");
  CHECK(later[1].speak_m < 160);
  CHECK(later[1].speak_m > 120);
}

TEST_CASE("the end of the road is where no road lies ahead", "[say]") {
  const BuiltTown town = town_of(R"(
             D
    A  B     C
             E
  w1 AB    highway=residential name=Lantern_Row
  w50 BC   highway=residential name=Lantern_Row
  w2 DCE   highway=residential name=Mill_Orchard
  )",
                                 100);
  CHECK(said(town, "ABCDCBA") ==
        Texts{"leave Lantern Row towards Mill Orchard", "at the end of the road turn left",
              "turn the car round where it is safe", "take the first road on the right",
              "pull up on the left when it's safe"});
}

TEST_CASE("a road that divides is kept to a side", "[say]") {
  const BuiltTown town = town_of(R"(
                D
    A  B     C
                E
  w1 AB    highway=residential name=Lantern_Row
  w50 BC   highway=residential name=Lantern_Row
  w2 CD    highway=residential name=Mill_Orchard
  w3 CE    highway=residential name=Hay_Street
  )",
                                 100);
  CHECK(said(town, "ABCDCBA")[1] == "where the road divides keep left");
  CHECK(said(town, "ABCECBA")[1] == "where the road divides keep right");
}

TEST_CASE("where a road divides into three the middle one is told as such", "[say]") {
  const BuiltTown town = town_of(R"(
                D
    A  B        F
                E
  w1 AB    highway=residential name=Lantern_Row
  w2 BD    highway=residential name=Mill_Orchard
  w3 BF    highway=residential name=Bell_Yard
  w4 BE    highway=residential name=Hay_Street
  )",
                                 100);
  CHECK(said(town, "ABDBA")[1] == "where the road divides keep left");
  CHECK(said(town, "ABFBA")[1] == "where the road divides take the middle road");
  CHECK(said(town, "ABEBA")[1] == "where the road divides keep right");
}

TEST_CASE("nothing is said where a slip road or a street leaves the main road one stays on",
          "[say]") {
  const auto town = [](const std::string& off, const std::string& before = {}) {
    return town_of(R"(
    A    B         C
              D
              E
  w1 AB    highway=primary name=Osk_Road ref=A7904 )" +
                       before + R"(
  w50 BC   highway=primary name=Osk_Road ref=A7904
  w2 BDE   )" + off + "\n",
                   100);
  };
  const std::string fork = "where the road divides keep left";
  const auto words = [&](const BuiltTown& drawn) { return said(drawn, "ABC").at(1); };
  // 11 degrees off, as slip roads leave; a road as big as ours is another matter, and so are arrows on the lanes.
  CHECK(words(town("highway=primary_link oneway=yes")) != fork);
  CHECK(words(town("highway=residential name=Hay_Street")) != fork);
  CHECK(words(town("highway=primary name=Hay_Street")) == fork);
  CHECK(words(town("highway=primary_link oneway=yes", "turn:lanes:forward=through|slight_right")) ==
        fork);
}

TEST_CASE("who waits for the road to divide is told of what could be taken for it", "[say]") {
  const auto forks = [](const std::string& between) {
    const BuiltTown town = town_of(R"(
    A    B     )" + between + R"(C         D
              E     )" + between + R"(     F
  w1 AB    highway=primary name=Osk_Road ref=A7904
  w50 BC   highway=primary name=Osk_Road ref=A7904
  w51 CD   highway=primary name=Osk_Road ref=A7904
  w2 BE    highway=residential name=Hay_Street
  w3 CF    highway=primary name=Hill_Road
)",
                                   50);
    const auto all = said(town, "ABCD");
    return std::count(all.begin(), all.end(), "where the road divides keep left");
  };
  CHECK(forks("") == 2);
  CHECK(forks(std::string(16, ' ')) == 1);  // it is spoken behind the street
}

TEST_CASE("of two roads to a side, where the one ahead may not be entered, the sharper is named",
          "[say]") {
  const BuiltTown town = town_of(R"(
          D
      E
    A    B    C
  w1 AB  highway=tertiary name=Ostler_Street
  w2 CB  highway=tertiary name=Ostler_Street oneway=yes
  w3 BD  highway=tertiary
  w4 BE  highway=tertiary
)",
                                 100);
  CHECK(said(town, "ABE")[1] == "take the first road on the left, sharp left");
  CHECK(said(town, "ABD")[1] == "take the first road on the left, bear left");
}

TEST_CASE("a main road that bends is followed by name of its size", "[say]") {
  const BuiltTown town = town_of(R"(
    A  B     C    D

             E
  w1 AB    highway=secondary ref=B9951
  w50 BC   highway=secondary ref=B9951
  w2 CE    highway=secondary ref=B9951
  w3 CD    highway=residential name=Mill_Orchard
  )",
                                 100);
  CHECK(said(town, "ABCECBA")[1] == "follow the main road round to the right");
  // And whoever leaves it there is told that the way ahead is meant.
  const auto leaving = rows_of(town, "ABCDCBA");
  CHECK(leaving[1].say == "where the main road bends follow the road ahead");
  CHECK(leaving[1].where == "Mill Orchard");
}

TEST_CASE("two roads to the same side are told apart", "[say]") {
  const BuiltTown town = town_of(R"(
            ED
    A  B     C     F
  w1 AB    highway=secondary ref=B9951
  w50 BCF   highway=secondary ref=B9951
  w2 CD    highway=residential name=Mill_Orchard
  w3 CE    highway=residential name=Hay_Street
  )",
                                 100);
  CHECK(said(town, "ABCDCBA")[1] == "take the first road on the left, Mill Orchard");
  const BuiltTown unnamed = town_of(R"(
            ED
    A  B     C     F
  w1 AB    highway=secondary ref=B9951
  w50 BCF   highway=secondary ref=B9951
  w2 CD    highway=residential
  w3 CE    highway=residential
  )",
                                    100);
  CHECK(said(unnamed, "ABCECBA")[1] == "take the first road on the left, sharp left");
  CHECK(said(unnamed, "ABCDCBA")[1] == "take the first road on the left, bear left");
}

TEST_CASE("a private road ahead doesn't make the way a junction to count", "[say]") {
  const BuiltTown town = town_of(R"(
    A  B     C    D
             E
  w1 AB    highway=residential name=Lantern_Row
  w50 BC   highway=residential name=Lantern_Row
  w2 CE    highway=residential name=Lantern_Row
  w3 CD    highway=residential access=private
  )",
                                 100);
  CHECK(said(town, "ABCECBA")[1] == "follow the road round to the right");
}

TEST_CASE("a road that may not be entered is no end of the road", "[say]") {
  const BuiltTown town = town_of(R"(
             E
    A  B     C    D
  w1 AB    highway=residential name=Lantern_Row
  w50 BC   highway=residential name=Lantern_Row
  w2 CE    highway=residential name=Mill_Orchard
  w3 DC    highway=residential name=Hay_Street oneway=yes
  w4 ED    highway=residential name=Mill_Orchard
  )",
                                 100);
  CHECK(said(town, "ABCEDCBA")[1] == "take the first road on the left");
}

TEST_CASE("a slip road is called one", "[say]") {
  const BuiltTown town = town_of(R"(
               D      E
    A  B    C              F
  w1 AB    highway=trunk ref=A7901
  w50 BCF   highway=trunk ref=A7901
  w2 CD    highway=trunk_link
  w3 DE    highway=residential name=Hay_Street
  w4 EF    highway=residential name=Hay_Street
  )",
                                 100);
  CHECK(said(town, "ABCDEFCBA")[1] == "take the slip road on the left");
}

TEST_CASE("where one drives on the right, left is still left, and one pulls up on the right",
          "[say]") {
  const BuiltTown town = town_of(R"(
             D
    A  B     C
             E
  w1 AB    highway=residential name=Lantern_Row
  w50 BC   highway=residential name=Lantern_Row
  w2 DCE   highway=residential name=Mill_Orchard
  )",
                                 100, "LI");
  CHECK(said(town, "ABCDCBA") ==
        Texts{"leave Lantern Row towards Mill Orchard", "at the end of the road turn left",
              "turn the car round where it is safe", "take the first road on the right",
              "pull up on the right when it's safe"});
}

TEST_CASE("a street without a name is left by the compass", "[say]") {
  const BuiltTown town = town_of(R"(
             D
    A  B     C
             E
  w1 AB    highway=residential
  w50 BC   highway=residential
  w2 DCE   highway=residential
  )",
                                 100);
  CHECK(said(town, "ABCDCBA")[0] == "set off heading east");
}

TEST_CASE("names too long to say give way to the compass", "[say]") {
  const BuiltTown town = town_of(R"(
             D
    A  B     C
             E
  w1 AB    highway=residential name=Upper_Lantern_Row_West
  w50 BC   highway=residential name=Upper_Lantern_Row_West
  w2 DCE   highway=residential name=The_Old_Mill_Orchard_Road
  )",
                                 100);
  CHECK(said(town, "ABCDCBA")[0] == "leave Upper Lantern Row West heading east");
}

}  // namespace loopwright::test
