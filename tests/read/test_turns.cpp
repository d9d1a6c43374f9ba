// Which way one may go on at the end of each stretch, without restrictions.
#include <algorithm>
#include <catch2/catch.hpp>

#include "support/built_town.hpp"
#include "support/crossing_divided_roads.hpp"

namespace loopwright::read {
namespace {

using test::built_town;
using test::BuiltTown;
using test::draw_town;

constexpr std::string_view crossing = R"(
    N
    .
W . X . E
    .
    S
w1 WX highway=primary
w2 XE highway=primary
w3 XN highway=residential
w4 XS highway=residential
)";

int angle(const BuiltTown& town, std::string_view three_letters) {
  const road::Roads roads = town.roads();
  const StretchId to = town.stretch(three_letters.substr(1));
  for (const road::Turn& turn :
       roads.turns_from(StateId{town.stretch(three_letters.substr(0, 2)).index()})) {
    if (roads.stretch_of(turn.to) == to) return turn.angle_deg;
  }
  return 999;
}

}  // namespace

TEST_CASE("at a crossing every road but one's own may be taken", "[read]") {
  const BuiltTown town = built_town(crossing);
  CHECK(town.drives("WXN"));
  CHECK(town.drives("WXE"));
  CHECK(town.drives("WXS"));
  CHECK_FALSE(town.drives("WXW"));
  CHECK(angle(town, "WXN") == -90);
  CHECK(angle(town, "WXE") == 0);
  CHECK(angle(town, "WXS") == 90);
}

TEST_CASE("one turns round at a dead end and nowhere else", "[read]") {
  const BuiltTown town = built_town(crossing);
  CHECK(town.drives("XNX"));
  CHECK(angle(town, "XNX") == 180);
  const BuiltTown road = built_town(R"(
A   B   C
w1 ABC highway=primary
nB highway=traffic_signals
)");
  CHECK(road.drives("ABC"));
  CHECK_FALSE(road.drives("ABA"));
}

TEST_CASE("nobody turns round by a second way over the same nodes", "[read]") {
  const BuiltTown town = built_town(R"(
A   B   C   D
w1 ABC highway=residential
w2 CB highway=residential
w3 CD highway=residential
)");
  CHECK(town.drives("BCD"));
  CHECK_FALSE(town.drives("BCB"));
}

TEST_CASE("nobody turns round at the tip of a splitter island", "[read]") {
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
  CHECK(town.drives("ABE"));
  CHECK(town.drives("DBA"));
  CHECK_FALSE(town.drives("DBE"));
}

// Highway Code 200 to 203: turning the car round is a manoeuvre; 173: a dual carriageway is crossed half by half.
TEST_CASE("nobody turns round through a gap in the reservation", "[read]") {
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
w6 AD highway=tertiary
w7 CF highway=tertiary
w8 GH highway=tertiary
)");
  CHECK(town.drives("ABEH"));
  CHECK(town.drives("FEBG"));
  CHECK(town.drives("GBED"));
  CHECK_FALSE(town.drives("ABED"));
  CHECK_FALSE(town.drives("FEBC"));
  CHECK(town.drives("BCFE"));  // so far round it is a way of its own
}

TEST_CASE("nobody drives in a circle inside a junction", "[read]") {
  const BuiltTown town = built_town(draw_town(R"(
. . G I . .
. . . . . .
. . . . . .
. . . . . .
. . . . . .
. . . . . .
. . . . . .
. . . . . .
. . . . . .
A . B C . .
D . E F . .
. . . . . .
. . . . . .
. . . . . .
. . . . . .
. . . . . .
. . . . . .
. . . . . .
. . . . . .
. . H J . .
w1 AB highway=primary oneway=yes name=Osk_Road
w2 BC highway=primary oneway=yes name=Osk_Road
w3 FE highway=primary oneway=yes name=Mill_Road
w4 ED highway=primary oneway=yes name=Mill_Road
w5 EB highway=secondary oneway=yes name=Ash_Road
w6 CF highway=secondary oneway=yes name=Elm_Road
w7 BG highway=secondary oneway=yes
w8 FJ highway=secondary oneway=yes
w9 DA highway=tertiary
w10 GI highway=tertiary
w11 IC highway=tertiary oneway=yes
w12 JH highway=tertiary
w13 HE highway=tertiary oneway=yes
)",
                                              5),
                                    "GB-ENG");
  CHECK(town.drives("ABCFEBG"));
  CHECK_FALSE(town.drives("ABCFEBCF"));
}

TEST_CASE("nobody drives in a one-way circle that is no longer than a wide junction", "[read]") {
  const auto goes_round = [](std::string_view one_way, int side_m) {
    return built_town(
               draw_town("ABCG\nIEFH\n"
                         "w1 AB highway=service\nw2 CG highway=service\nw3 EI highway=service\n"
                         "w4 FH highway=service\nw5 BCFEB highway=service oneway=" +
                             std::string(one_way) + "\n",
                         side_m),
               "GB-ENG")
        .drives("BCFEBC");
  };
  CHECK_FALSE(goes_round("yes", 29));
  CHECK(goes_round("yes", 31));
  CHECK(goes_round("no", 29));
  CHECK_FALSE(goes_round("no", 14));
}

TEST_CASE("the end of a street that is drawn as a circle is driven round", "[read]") {
  const auto goes_round = [](std::string_view back) {
    return built_town(
               draw_town("A....BC\nG....ED..F\n"
                         "w1 AB highway=residential name=Mill_Lane\n"
                         "w2 BC highway=residential name=Mill_Lane oneway=yes\n"
                         "w3 CD highway=residential name=Mill_Lane oneway=yes\n"
                         "w5 DF highway=residential name=Osk_Lane\n"
                         "w6 AG highway=residential name=Osk_Lane\n"
                         "w4 " +
                             std::string(back) + " highway=residential name=Mill_Lane oneway=yes\n",
                         18),
               "GB-ENG")
        .drives("BCD" + std::string(back.substr(2)));
  };
  CHECK(goes_round("DEB"));
  CHECK_FALSE(goes_round("DEG"));
}

TEST_CASE("where divided roads of one name cross, nobody turns round between them", "[read]") {
  const BuiltTown town = built_town(draw_town(test::crossing_divided_roads, 9), "GB-ENG");
  CHECK(town.drives("ABCLI"));
  CHECK_FALSE(town.drives("ABCLKE"));
}

TEST_CASE("a small round of one piece isn't driven again, a large one may be", "[read]") {
  const auto again = [](int side_m) {
    const BuiltTown town = built_town(
        draw_town("ABC\n.ED\nw1 AB highway=service\nw2 BCDEB highway=service\n", side_m), "GB-ENG");
    const road::Roads roads = town.roads();
    const auto round = std::ranges::find_if(
        roads.pieces, [](const road::Piece& piece) { return piece.a == piece.b; });
    const StretchId once(PieceId{static_cast<std::size_t>(round - roads.pieces.begin())}, false);
    return std::ranges::any_of(
        roads.turns_from(StateId{once.index()}),
        [&](const road::Turn& turn) { return roads.stretch_of(turn.to) == once; });
  };
  CHECK_FALSE(again(14));
  CHECK(again(16));
}

TEST_CASE("the end of a divided road that leads nowhere else is driven round", "[read]") {
  const BuiltTown town = built_town(R"(
A . . B
D . . E
w1 AB highway=primary name=Osk_Road oneway=yes
w2 ED highway=primary name=Osk_Road oneway=yes
w3 BE highway=tertiary
w4 AD highway=tertiary
)");
  CHECK(town.drives("ABED"));
}

TEST_CASE("a small roundabout is driven all the way round", "[read]") {
  const BuiltTown town = built_town(R"(
A . . B . . F . K
D . . E . . G . .
w1 AB highway=primary name=Osk_Road oneway=yes
w2 ED highway=primary name=Osk_Road oneway=yes
w3 BFGEB highway=primary name=Osk_Road junction=roundabout
w4 AD highway=tertiary
w5 FK highway=tertiary
)");
  CHECK(town.drives("ABFED"));
}

TEST_CASE("a hairpin of a one-way road is driven round", "[read]") {
  const BuiltTown town = built_town(R"(
A . . . B
. . . C .
D . . . .
w1 ABD highway=tertiary name=Osk_Road oneway=yes
w2 DA  highway=tertiary
w3 BC  highway=residential
)");
  CHECK(town.drives("ABD"));
}

TEST_CASE("a one-way street is driven one way, however it is written", "[read]") {
  for (const std::string_view one_way : {"yes", "1", "true"}) {
    const BuiltTown town = built_town(R"(
A   B
D   C
w1 AB highway=residential oneway=)" + std::string(one_way) +
                                      R"(
w2 BC highway=residential
w3 CD highway=residential
w4 DA highway=residential
)");
    CHECK(town.drives("DAB"));
    CHECK_FALSE(town.drives("CBA"));
  }
}

TEST_CASE("nobody drives through a bollard, but one may turn round before it", "[read]") {
  const BuiltTown town = built_town(R"(
A   B   C
w1 AB highway=residential
w2 BC highway=residential
nB barrier=bollard
)");
  CHECK_FALSE(town.drives("ABC"));
  CHECK(town.drives("ABA"));
}

TEST_CASE("the side of a bollard with more road stays, the other is cut off", "[read]") {
  const BuiltTown town = built_town(R"(
A       B   C
w1 ABC highway=residential
nB barrier=bollard
)");
  const road::Roads roads = town.roads();
  CHECK(roads.drivable(town.stretch("AB")));
  CHECK_FALSE(roads.drivable(town.stretch("BC")));
  CHECK((roads.stretch(town.stretch("BC")).flags & road::stretch_flag::cut_off) != 0);
  CHECK(roads.turns_from(StateId{town.stretch("BC").index()}).empty());
  CHECK(town.report.counted("directions cut off: can't be driven into and out of") == 2);
}

TEST_CASE("a street that can't be driven out of is cut off, and no turn leads into it", "[read]") {
  const BuiltTown town = built_town(R"(
    C
A   B   D
w1 AB highway=residential
w2 BD highway=residential
w3 BC highway=residential oneway=yes
)");
  CHECK_FALSE(town.roads().drivable(town.stretch("BC")));
  CHECK_FALSE(town.drives("ABC"));
  CHECK(town.drives("ABD"));
  CHECK(town.report.counted("directions cut off: can't be driven into and out of") == 1);
  REQUIRE(town.report.oddities().size() == 1);
  CHECK(town.report.oddities()[0].what == "road can't be driven into and out of");
  CHECK(town.report.oddities()[0].object.type == ObjectType::way);
}

TEST_CASE("an island with twenty kilometres of road is kept beside the mainland", "[read]") {
  const auto drawn = [](double scale) {
    return built_town(test::draw_town(R"(
A         B

C        D
w1 AB highway=residential
w2 CD highway=residential
)",
                                      scale),
                      "GB-ENG");
  };
  const BuiltTown small = drawn(25);
  CHECK_FALSE(small.roads().drivable(small.stretch("CD")));
  const BuiltTown large = drawn(2300);  // the shorter road is 9 columns: 20.7 km
  CHECK(large.roads().drivable(large.stretch("CD")));
}

TEST_CASE("a street drawn fourteen times over itself is read all the same", "[read]") {
  std::string drawing = "A B    C\nw1 BC highway=residential\n";
  for (int way = 2; way <= 15; ++way)
    drawing += "w" + std::to_string(way) + " AB highway=residential\n";
  const BuiltTown town = built_town(test::draw_town(drawing, 1), "GB-ENG");
  CHECK(town.roads().drivable(town.stretch("BC")));
}

}  // namespace loopwright::read
