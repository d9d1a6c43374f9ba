#include <catch2/catch.hpp>
#include <cmath>

#include "mark/shape_town.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using test::is_run;
using test::why_run;

bool is_winding(const test::BuiltTown& town, std::string_view ends) {
  const PieceId piece = town.stretch(ends).piece();
  return (town.built.tables.pieces[piece.index()].flags & road::piece_flag::winding) != 0;
}

/// 570 m of an arc of that radius, a point every 30 m.
test::BuiltTown arc(double radius_m, const std::string& limit) {
  mark::RawMap raw = test::draw_town(
      "ABCDEFGHIJKLMNOPQRST\nw1 ABCDEFGHIJKLMNOPQRST highway=primary maxspeed=\"" + limit + "\"\n");
  constexpr double every_m = 30, lat_m = 111'310.6, lon_m = 65'103.4;  // as in drawn_town.cpp
  for (std::size_t i = 0; i < raw.nodes.size(); ++i) {
    const double angle = every_m * static_cast<double>(i) / radius_m;
    raw.nodes[i].at = point_from_degrees(54.3 + radius_m * (1 - std::cos(angle)) / lat_m,
                                         2.6 + radius_m * std::sin(angle) / lon_m);
  }
  return test::built_town(raw, "GB-ENG");
}

/// Turns of 53 degrees every 110 m: some 120 m of radius.
std::string tight_bends(const std::string& tags) {
  return "A     c     e     G\n\n\n"
         "   b     d     f\n"
         "w1 AbcdefG highway=unclassified " +
         tags + "\n";
}

TEST_CASE("a straight road has no bends", "[mark]") {
  const test::BuiltTown town = test::built_town(
      "A                              B\nw1 AB highway=unclassified maxspeed=\"60 mph\"\n");
  CHECK_FALSE(is_run(town, "AB", Kind::bends));
  CHECK_FALSE(is_winding(town, "AB"));
}

TEST_CASE("a road that winds at 60 has bends, both ways, inferred", "[mark]") {
  const test::BuiltTown town = test::built_town(tight_bends("maxspeed=\"60 mph\""));
  CHECK(why_run(town, "AG", Kind::bends) == "bends sharper than the limit allows inferred");
  CHECK(is_run(town, "GA", Kind::bends));
}

// 0.22 of gravity sideways: 330 m of radius at 60 mph, 229 m at 50, 147 m at 40 (DMRB CD 109, from
// memory).
TEST_CASE("whether a bend is too sharp depends on the limit", "[mark]") {
  const auto bends = [](double radius_m, const char* limit) {
    return is_run(arc(radius_m, limit), "AT", Kind::bends);
  };
  CHECK(bends(250, "60 mph"));
  CHECK_FALSE(bends(400, "60 mph"));
  CHECK_FALSE(bends(250, "50 mph"));
  CHECK(bends(180, "50 mph"));
  CHECK_FALSE(bends(180, "40 mph"));
  CHECK(bends(120, "40 mph"));
}

TEST_CASE("the corners of a town street are no bends", "[mark]") {
  CHECK_FALSE(is_run(test::built_town(tight_bends("maxspeed=\"30 mph\"")), "AG", Kind::bends));
}

TEST_CASE("where limits are in km/h, bends are looked for from 60 on", "[mark]") {
  const auto at = [](const char* limit) {
    return is_run(test::built_town(tight_bends(std::string("maxspeed=") + limit), "FR"), "AG",
                  Kind::bends);
  };
  CHECK(at("80"));
  CHECK(at("70"));
  CHECK_FALSE(at("50"));
}

TEST_CASE("one bend of a long straight road makes no run of bends", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A                                       b



                                                                            G
  w1 AbG highway=unclassified maxspeed="60 mph"
  )");
  CHECK_FALSE(is_run(town, "AG", Kind::bends));
}

TEST_CASE("bends don't depend on where a mapper cut the road", "[mark]") {
  const test::BuiltTown town = test::built_town(
      "A     c     e     G\n\n\n"
      "   b     d     f\n"
      "w1 Abc  highway=unclassified maxspeed=\"60 mph\"\n"
      "w2 cdef highway=unclassified maxspeed=\"60 mph\"\n"
      "w3 fG   highway=unclassified maxspeed=\"60 mph\"\n");
  CHECK(is_run(town, "cf", Kind::bends));
}

TEST_CASE("a wavering line of a straight road is no bend", "[mark]") {
  const test::BuiltTown town = test::built_town(
      test::draw_town("A         c         e         g         i         k         B\n"
                      "     b         d         f         h         j\n"
                      "w1 AbcdefghijkB highway=unclassified maxspeed=\"60 mph\"\n",
                      2),
      "GB-ENG");
  CHECK_FALSE(is_run(town, "AB", Kind::bends));
}

TEST_CASE("a one-way road bends by design, a half of a divided one by what the land is", "[mark]") {
  const auto bends = [](const std::string& tags) {
    return is_run(test::built_town(tight_bends("maxspeed=\"60 mph\" " + tags) +
                                   "w2 GA highway=unclassified\n"),
                  "AG", Kind::bends);
  };
  CHECK(bends(""));
  CHECK_FALSE(bends("oneway=yes"));
  CHECK(bends("oneway=yes dual_carriageway=yes"));
}

}  // namespace
}  // namespace loopwright::mark
