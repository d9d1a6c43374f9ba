// The small shape beside a row: the car comes from the bottom and leaves by the arm taken.
#include <catch2/catch.hpp>

#include "draw/driven.hpp"

namespace loopwright::test {
namespace {

using draw::Picture;
using draw::row_shape;

constexpr draw::Size size{26, 22};

/// A ring with four arms (north is up the page): W A, N B, E C, S D.
constexpr const char* ring = R"(
      N
      B
 W  A   C  E
      D
      S
   w1 ABCDA junction=roundabout highway=tertiary name=Orlham_Ring
   w2 WA highway=tertiary
   w3 NB highway=residential
   w4 CE highway=tertiary
   w5 SD highway=residential
)";

constexpr const char* crossing = R"(
      N
  W   B   E
      S
   w1 WBE highway=tertiary
   w2 NBS highway=residential
)";

void check_comes_from_below(const Picture& picture) {
  const auto way = way_in(picture);
  REQUIRE(way.size() >= 2);
  CHECK(way.front().x == Approx(picture.width / 2).margin(2));
  CHECK(way.front().y > picture.height * 0.85);
}

}  // namespace

TEST_CASE("a turn at a crossroads comes from below and leaves to its side", "[draw]") {
  const BuiltTown town = built_town(crossing);
  for (const auto& [letters, leaves] :
       {std::pair{"SBW", 270.0}, std::pair{"SBE", 90.0}, std::pair{"SBN", 0.0},
        std::pair{"WBN", 270.0}, std::pair{"NBW", 90.0}}) {
    INFO(letters);
    const Picture picture = row_shape(town.roads(), driven(town, letters), {0, 1}, size);
    check_comes_from_below(picture);
    const double seen = seen_deg(picture, way_in(picture).back());
    CHECK(std::cos((seen - leaves) * 3.14159 / 180) > 0.99);
    CHECK(pale_in(picture).size() == 4);
  }
}

TEST_CASE("a roundabout has its ring and every arm, and the way goes round as one drives",
          "[draw]") {
  const BuiltTown town = built_town(ring);
  const wish::Loop right = driven(town, "SDABCE");
  const Picture picture = row_shape(town.roads(), right, {0, 4}, size);
  check_comes_from_below(picture);
  CHECK(pale_in(picture).size() == 4 + 1);
  CHECK(seen_deg(picture, way_in(picture).back()) == Approx(90).margin(8));
  // Clockwise, where one drives on the left: by the left side of the ring.
  double leftmost = picture.width;
  for (const draw::Spot spot : way_in(picture)) leftmost = std::min(leftmost, spot.x);
  CHECK(leftmost < picture.width / 2 - 3);
}

TEST_CASE("where one drives on the right a roundabout is driven the other way", "[draw]") {
  const BuiltTown town = right_driving_ring();
  const Picture picture = row_shape(town.roads(), driven(town, "SDCBAW"), {0, 4}, size);
  check_comes_from_below(picture);
  CHECK(seen_deg(picture, way_in(picture).back()) == Approx(270).margin(8));
  double rightmost = 0;
  for (const draw::Spot spot : way_in(picture)) rightmost = std::max(rightmost, spot.x);
  CHECK(rightmost > picture.width / 2 + 3);
}

TEST_CASE("a drive that starts on a roundabout goes on round to its exit", "[draw]") {
  const BuiltTown town = built_town(ring);
  for (const auto& [letters, leaves] : {std::pair{"DAW", 315.0}, std::pair{"ABCE", 45.0}}) {
    INFO(letters);
    const wish::Loop loop = driven(town, letters);
    const Picture picture = row_shape(town.roads(), loop, {0, loop.stretches.size() - 1}, size);
    const auto way = way_in(picture);
    CHECK(way.front().x < picture.width / 2);
    // Its heading is up: north-west before A, north-east before B.
    CHECK(seen_deg(picture, way.back()) == Approx(leaves).margin(20));
    CHECK(pale_in(picture).size() == 4 + 1);
  }
}

TEST_CASE("all the way round a roundabout leaves beside where it came in", "[draw]") {
  const BuiltTown town = built_town(ring);
  const Picture picture = row_shape(town.roads(), driven(town, "SDABCDS"), {0, 5}, size);
  const auto way = way_in(picture);
  CHECK(way.front().y > picture.height * 0.85);
  CHECK(way.back().y > picture.height * 0.85);
  CHECK(way.back().x - way.front().x > 1.5);
}

TEST_CASE("roads that lie close are spread, and keep their order", "[draw]") {
  // From S: N nearly ahead, M a few degrees to the right of it.
  const BuiltTown town = built_town(R"(
     NM

     .

     B

     S
   w1 SBN highway=tertiary
   w2 BM highway=tertiary
)");
  const Picture n = row_shape(town.roads(), driven(town, "SBN"), {0, 1}, size);
  const Picture m = row_shape(town.roads(), driven(town, "SBM"), {0, 1}, size);
  const double apart =
      heading_change_deg(seen_deg(n, way_in(n).back()), seen_deg(m, way_in(m).back()));
  CHECK(apart > 20);
}

TEST_CASE("a level crossing has its rails across the way", "[draw]") {
  const BuiltTown town = built_town(R"(
     S  X  N
        R
        Q
   w1 SXN highway=tertiary
   w9 RX railway=rail
   nX railway=level_crossing
)");
  const Picture picture = row_shape(town.roads(), driven(town, "SXN"), {0, 1}, size);
  check_comes_from_below(picture);
  const auto is_rail = [](const draw::Mark& mark) {
    const auto* stroke = std::get_if<draw::Stroke>(&mark);
    return stroke != nullptr && stroke->way.size() == 2 && stroke->ink == draw::Ink::black &&
           stroke->way[0].y == Approx(stroke->way[1].y) &&
           std::abs(stroke->way[0].x - stroke->way[1].x) > 12;
  };
  CHECK(std::count_if(picture.marks.begin(), picture.marks.end(), is_rail) == 2);
}

TEST_CASE("turning round at a dead end goes back beside the way in", "[draw]") {
  const BuiltTown town = built_town(R"(
     A   B   C
   w1 ABC highway=residential
   w2 AB highway=residential
)");
  const Picture picture = row_shape(town.roads(), driven(town, "BCB"), {0, 1}, size);
  const auto way = way_in(picture);
  CHECK(way.front().x < picture.width / 2);
  CHECK(way.back().x > picture.width / 2);
  CHECK(way.back().y > picture.height * 0.8);
}

TEST_CASE("pulling up swings to the kerb that is asked for, with a P beside it", "[draw]") {
  for (const Side kerb : {Side::left, Side::right}) {
    const Picture picture = draw::pull_up_shape(Side::left, kerb, size);
    const bool left = way_in(picture).back().x < picture.width / 2;
    CHECK(left == (kerb == Side::left));
    REQUIRE(labels_in(picture).size() == 1);
    CHECK(labels_in(picture)[0].text == "P");
    CHECK((labels_in(picture)[0].at.x < picture.width / 2) == left);
    CHECK(label_faults(picture).empty());
  }
  CHECK(way_in(draw::set_off_shape(Side::left, size)).front().x < size.width / 2);
  CHECK(way_in(draw::set_off_shape(Side::right, size)).front().x > size.width / 2);
}

}  // namespace loopwright::test
