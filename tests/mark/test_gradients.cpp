#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "mark/shape_town.hpp"

namespace loopwright::mark {
namespace {

using test::details_of;
using test::hilly_town;

const road::Piece& piece(const test::BuiltTown& town, std::string_view ends) {
  return town.built.tables.pieces[town.stretch(ends).piece().index()];
}

std::string_view source(const test::BuiltTown& town, std::string_view ends) {
  return town.roads().text(piece(town, ends).gradient_source);
}

bool certain(const test::BuiltTown& town, std::string_view ends) {
  return (piece(town, ends).flags & road::piece_flag::gradient_certain) != 0;
}

test::BuiltTown street(const std::string& tags) {
  return test::built_town("A                       B\nw1 AB highway=residential " + tags + "\n");
}

TEST_CASE("without a tag and without a grid nobody knows how steep a street is", "[mark]") {
  const test::BuiltTown town = street("name=Mill_Street");
  CHECK(piece(town, "AB").gradient_tenths == 0);
  CHECK(source(town, "AB").empty());
  CHECK_FALSE(certain(town, "AB"));
}

// OSM wiki, Key:incline.
TEST_CASE("an incline is read in per cent or degrees, up along the way", "[mark]") {
  const test::BuiltTown up = street("incline=8%");
  CHECK(piece(up, "AB").gradient_tenths == 80);
  CHECK(source(up, "AB") == "incline=8%");
  CHECK(certain(up, "AB"));
  CHECK(piece(street("incline=-8.5%"), "AB").gradient_tenths == -85);
  CHECK(piece(street("incline=\"12 %\""), "AB").gradient_tenths == 120);
  CHECK(piece(street("incline=10°"), "AB").gradient_tenths == 176);  // tan 10° = 0.1763
  CHECK(certain(street("incline=0%"), "AB"));
}

TEST_CASE("a way drawn downhill has its gradient against it", "[mark]") {
  const test::BuiltTown town =
      test::built_town("A                       B\nw1 BA highway=residential incline=8%\n");
  const bool along = town.stretch("BA").against();
  CHECK_FALSE(along);
  CHECK(piece(town, "AB").gradient_tenths == 80);
}

TEST_CASE("up or down alone doesn't say how steep", "[mark]") {
  for (const char* word : {"up", "down"}) {
    const test::BuiltTown town = street(std::string("incline=") + word);
    CHECK(piece(town, "AB").gradient_tenths == 0);
    CHECK(source(town, "AB") == std::string("incline=") + word);
    CHECK_FALSE(certain(town, "AB"));
  }
}

TEST_CASE("an incline nobody can read is reported and left out", "[mark]") {
  for (const char* text : {"\"10% up\"", "steep", "8", "1:8", "60%", "yes"}) {
    const test::BuiltTown town = street(std::string("incline=") + text);
    CHECK(piece(town, "AB").gradient_tenths == 0);
    CHECK(source(town, "AB").empty());
    CHECK(details_of(town.report, "incline can't be read").size() == 1);
  }
}

TEST_CASE("an elevation grid tells how steep a street is, and that it is inferred", "[mark]") {
  const auto hill = [](double east_m) { return 50 + 0.05 * east_m; };
  const test::BuiltTown town =
      hilly_town("A                       B\nw1 AB highway=residential\n", hill);
  CHECK(piece(town, "AB").gradient_tenths == Approx(50).margin(1));
  CHECK(source(town, "AB") == "elevation grid");
  CHECK_FALSE(certain(town, "AB"));
  const test::BuiltTown drawn_back =
      hilly_town("A                       B\nw1 BA highway=residential\n", hill);
  CHECK(piece(drawn_back, "AB").gradient_tenths == Approx(-50).margin(1));
}

TEST_CASE("a short piece is judged with the road straight on", "[mark]") {
  const auto kink = [](double east_m) { return east_m > 290 && east_m < 310 ? 3.0 : 0.0; };
  const test::BuiltTown town = hilly_town(R"(
    A           B  C           D
  w1 AB highway=residential
  w2 BC highway=residential
  w3 CD highway=residential
  )",
                                          kink);
  CHECK(std::abs(piece(town, "BC").gradient_tenths) <= 15);
}

// Eleven heights, each 3 m off at random, leave a slope uncertain by 1 % (height_profile.cpp).
TEST_CASE("heights that are each some metres wrong make no hill on flat land", "[mark]") {
  const auto noise = [](double east_m) { return 3 * std::sin(east_m * 12.9898); };
  const test::BuiltTown town = hilly_town(
      "A             B             C\nw1 AB highway=residential\n"
      "w2 BC highway=residential\n",
      noise);
  CHECK(std::abs(piece(town, "AB").gradient_tenths) < 20);
  CHECK(std::abs(piece(town, "BC").gradient_tenths) < 20);
}

TEST_CASE("a street too short for a grid has no gradient by it", "[mark]") {
  const test::BuiltTown town =
      hilly_town("A    B\nw1 AB highway=residential\n", [](double east_m) { return 0.1 * east_m; });
  CHECK(piece(town, "AB").gradient_tenths == 0);
  CHECK(source(town, "AB").empty());
}

TEST_CASE("a bridge isn't as steep as the valley under it", "[mark]") {
  const auto hill = [](double east_m) { return 0.1 * east_m; };
  for (const char* tag : {"bridge=yes", "tunnel=yes"}) {
    const test::BuiltTown town = hilly_town(
        std::string("A                       B\nw1 AB highway=residential ") + tag + "\n", hill);
    CHECK(source(town, "AB").empty());
  }
}

TEST_CASE("where the grid has holes nothing is known", "[mark]") {
  read::BuildOptions options;
  options.heights = [](Point) { return std::optional<double>(); };
  const test::BuiltTown town = test::built_town(
      test::draw_town("A                       B\nw1 AB highway=residential\n"), "GB-ENG", options);
  CHECK(source(town, "AB").empty());
}

TEST_CASE("up with a grid gets its number, and a grid that says down is reported", "[mark]") {
  const auto up = [](double east_m) { return 0.05 * east_m; };
  const std::string road = "A                       B\nw1 AB highway=residential incline=up\n";
  const test::BuiltTown agreed = hilly_town(road, up);
  CHECK(piece(agreed, "AB").gradient_tenths == Approx(50).margin(1));
  CHECK(source(agreed, "AB") == "incline=up, elevation grid");
  CHECK_FALSE(certain(agreed, "AB"));
  const test::BuiltTown contrary = hilly_town(road, [&](double east_m) { return -up(east_m); });
  CHECK(piece(contrary, "AB").gradient_tenths == 0);
  CHECK(source(contrary, "AB") == "incline=up");
  CHECK(details_of(contrary.report, "incline and the elevation grid say the contrary").size() == 1);
}

TEST_CASE("a number on the map outweighs the grid", "[mark]") {
  const test::BuiltTown town =
      hilly_town("A                       B\nw1 AB highway=residential incline=-7%\n",
                 [](double east_m) { return 0.05 * east_m; });
  CHECK(piece(town, "AB").gradient_tenths == -70);
  CHECK(certain(town, "AB"));
}

// The mean over 300 m: a dip beside the street counts with it. The 300 m are ours.
TEST_CASE("a short street between others is told with as much of them on either side", "[mark]") {
  // Level but for a step of 6 m, all in the middle 100 m of B to C.
  const auto step = [](double east_m) { return 50 + 0.06 * std::clamp(east_m - 200, 0.0, 100.0); };
  const test::BuiltTown town = hilly_town(
      "A       B   C       D\nw1 AB highway=residential\nw2 BC highway=tertiary\n"
      "w3 CD highway=residential\n",
      step);
  // Over 100 m it is 6 %, over the 300 m it is told of somewhat above 2 %.
  CHECK(piece(town, "BC").gradient_tenths >= 20);
  CHECK(piece(town, "BC").gradient_tenths <= 40);
}

TEST_CASE("the report counts gradients by tag and by the grid", "[mark]") {
  const test::BuiltTown town = hilly_town(
      "A                       B                       C                       D\n"
      "w1 AB highway=residential incline=8%\nw2 BC highway=tertiary\nw3 CD highway=residential\n",
      [](double east_m) { return 0.05 * east_m; });
  CHECK(town.report.counted("pieces: gradient by tag") == 1);
  CHECK(town.report.counted("pieces: gradient by the elevation grid") == 2);
}

// 2 % is twice the error of a grid's slope (height_profile.cpp).
TEST_CASE("up and the grid say the contrary only where the grid is sure to fall", "[mark]") {
  const auto told = [](double percent, const char* word) {
    const test::BuiltTown town = hilly_town(
        std::string("A                       B\nw1 AB highway=residential incline=") + word + "\n",
        [percent](double east_m) { return 50 + percent / 100 * east_m; });
    const auto odd = details_of(town.report, "incline and the elevation grid say the contrary");
    return std::string(source(town, "AB")) + (odd.empty() ? "" : ", reported");
  };
  CHECK(told(5, "up") == "incline=up, elevation grid");
  CHECK(told(-5, "down") == "incline=down, elevation grid");
  CHECK(told(-1, "up") == "incline=up");
  CHECK(told(1, "down") == "incline=down");
  CHECK(told(-3, "up") == "incline=up, reported");
  CHECK(told(3, "down") == "incline=down, reported");
}

TEST_CASE("a service road has no gradient by the grid", "[mark]") {
  const auto hill = [](double east_m) { return 50 + 0.05 * east_m; };
  const test::BuiltTown town =
      hilly_town("A                       B\nw1 AB highway=service\n", hill);
  CHECK(piece(town, "AB").gradient_tenths == 0);
  CHECK(source(town, "AB").empty());
}

}  // namespace
}  // namespace loopwright::mark
