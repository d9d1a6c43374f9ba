#include <catch2/catch.hpp>

#include "support/built_town.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::piece_flag;

std::uint32_t dual_flags(const test::BuiltTown& town, std::string_view ends) {
  const PieceId id = town.stretch(ends).piece();
  return town.built.tables.pieces[id.index()].flags & (flag::dual | flag::dual_inferred);
}

/// Two one-way roads 25 m apart for 400 m, the upper one driven to the west.
test::BuiltTown pair(std::string_view upper, std::string_view lower) {
  std::string drawing = R"(
    A               B
    C               D
  w1 BA highway=primary oneway=yes )";
  drawing.append(upper).append("\n  w2 CD highway=primary oneway=yes ").append(lower);
  return test::built_town(drawing.append("\n  w3 AC highway=primary\n  w4 BD highway=primary\n"));
}

// OSM wiki, Tag:dual_carriageway.
TEST_CASE("a road tagged as dual carriageway is one", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B     C     D
  w1 AB highway=primary dual_carriageway=yes
  w2 BC highway=primary maxspeed:type=GB:nsl_dual
  w3 CD highway=primary
  )");
  CHECK(dual_flags(town, "AB") == flag::dual);
  CHECK(dual_flags(town, "BC") == flag::dual);
  CHECK(dual_flags(town, "CD") == 0);
}

TEST_CASE("two one-way roads of one number side by side are inferred to be one", "[mark]") {
  const test::BuiltTown town = pair("ref=A7901", "ref=A7901");
  CHECK(dual_flags(town, "BA") == flag::dual_inferred);
  CHECK(dual_flags(town, "CD") == flag::dual_inferred);
  CHECK(dual_flags(town, "AC") == 0);
}

TEST_CASE("the national limit of an inferred dual carriageway is 70", "[mark]") {
  const test::BuiltTown town = pair("ref=A7901 lit=no", "ref=A7901 lit=no");
  const road::Roads roads = town.roads();
  const road::LimitFact& limit = roads.stretch(town.stretch("CD")).limit;
  CHECK(limit.rule == road::LimitRule::national_dual);
  CHECK(limit.confidence == road::LimitConfidence::inferred);
}

TEST_CASE("a one-way street alone is no dual carriageway, nor are two of other names", "[mark]") {
  CHECK(dual_flags(pair("name=Lantern_Row", "name=Ostler_Street"), "CD") == 0);
  CHECK(dual_flags(pair("", ""), "CD") == 0);
  const test::BuiltTown alone = test::built_town(R"(
    C               D
  w2 CD highway=primary oneway=yes ref=A7901
  )");
  CHECK(dual_flags(alone, "CD") == 0);
}

TEST_CASE("two one-way streets of one name in the same direction are none", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A               B
    C               D
  w1 AB highway=primary oneway=yes ref=A7901
  w2 CD highway=primary oneway=yes ref=A7901
  )");
  CHECK(dual_flags(town, "AB") == 0);
}

TEST_CASE("oneway=-1 is seen as it is driven", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A               B
    C               D
  w1 AB highway=primary oneway=-1  ref=A7901
  w2 CD highway=primary oneway=yes ref=A7901
  )");
  CHECK(dual_flags(town, "AB") == flag::dual_inferred);
}

TEST_CASE("the arms round a splitter island are no dual carriageway", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
          b
    A  S     T
          d
  w1 AS highway=primary ref=A7904
  w2 SbT highway=primary oneway=yes ref=A7904
  w3 TdS highway=primary oneway=yes ref=A7904
  )");
  CHECK(dual_flags(town, "ST") == 0);
}

TEST_CASE("the arms round an island where a street meets a divided road are none", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
  A   PQ   B
  C   RT   D
      .
      .
      S
      U
  w1 BQPA highway=primary oneway=yes ref=A7905
  w2 CRTD highway=primary oneway=yes ref=A7905
  w3 RST  highway=residential oneway=yes name=Sexton_Street
  w4 SU   highway=residential name=Sexton_Street
  w5 PRQ  highway=primary
  )");
  CHECK(dual_flags(town, "CR") == flag::dual_inferred);
  CHECK(dual_flags(town, "RS") == 0);
  CHECK(dual_flags(town, "ST") == 0);
}

TEST_CASE("a divided road stays one where its name changes", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
  A   B       E
  C   D       F
  w1 BA highway=primary oneway=yes name=Osk_Road
  w2 EB highway=primary oneway=yes name=Mill_Road
  w3 CD highway=primary oneway=yes name=Osk_Road
  w4 DF highway=primary oneway=yes name=Mill_Road
  )");
  CHECK(dual_flags(town, "CD") == flag::dual_inferred);
}

TEST_CASE("dual_carriageway=no is believed", "[mark]") {
  const test::BuiltTown town =
      pair("ref=A7901 dual_carriageway=no", "ref=A7901 dual_carriageway=no");
  CHECK(dual_flags(town, "CD") == 0);
}

// 50 m apart, 200 m together and 150 degrees are ours.
TEST_CASE("halves of a divided road lie within 50 m of each other for 200 m or more", "[mark]") {
  const auto inferred = [](int columns, int rows, const std::string& tags) {
    const std::string gap(static_cast<std::size_t>(columns - 1), ' ');
    std::string drawing = "A" + gap + "B\n";
    for (int row = 1; row < rows; ++row) drawing += ".\n";
    drawing += "C" + gap + "D\nw1 BA highway=primary oneway=yes " + tags +
               "\nw2 CD highway=primary oneway=yes " + tags +
               "\nw3 AC highway=primary\nw4 BD highway=primary\n";
    const test::BuiltTown town = test::built_town(test::draw_town(drawing, 10), "GB-ENG");
    return dual_flags(town, "BA") == flag::dual_inferred &&
           dual_flags(town, "CD") == flag::dual_inferred;
  };
  const std::string number = "ref=A7901", name = "name=Osk_Road";
  CHECK(inferred(40, 2, number));
  CHECK(inferred(40, 2, name));
  CHECK(inferred(40, 4, number));
  CHECK_FALSE(inferred(40, 6, number));
  CHECK(inferred(25, 2, number));
  CHECK_FALSE(inferred(8, 2, number));
}

}  // namespace
}  // namespace loopwright::mark
