// Lies about what a wish keeps off and what it takes. Definitions: DEVELOPERS.md, "Keeping off" and "Taking";
// the names and gaps that make a street are common practice, no source.
#include <catch2/catch.hpp>

#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;
using wish::Answer;

namespace {

// Osk Road in three parts: the second begins 400 m behind the first, the third 600 m behind the second.
// A7901 has no name. H is a corner of two roads and a yard; J and the like are junctions.
constexpr const char* streets_drawing = R"town(
A  B  C     K  L        M  N

                     y
D  E  F     G  H  I  J  P  Q
w1 AB    highway=residential name=Osk_Road
w2 BC    highway=residential name=Osk_Road
w3 KL    highway=residential name=Osk_Road
w4 MN    highway=residential name=Osk_Road
w5 CK    highway=residential name=Mill_Lane
w6 LM    highway=residential name=Mill_Street
w7 AD    highway=residential name=West_Street
w8 DE    highway=primary ref=A7901
w9 EFG   highway=primary ref=A7901
w10 GH   highway=residential name=South_Street
w11 HI   highway=residential name=South_Row
w12 IJP  highway=residential name=South_End
w13 PQ   highway=residential name=Quay_Street
w14 QN   highway=residential name=East_Street
w15 BE   highway=residential name=Well_Street
w16 LH   highway=service service=driveway
w17 MP   highway=residential name=Ferry_Lane
w18 CF   highway=residential name=Bell_Lane
w19 KG   highway=residential name=Tanner_Lane
)town";

const BuiltTown& streets() {
  static const BuiltTown built = built_town(draw_town(streets_drawing, 66.7), "GB-ENG");
  return built;
}

Point point_of(char letter) {
  return streets().roads().nodes[streets().node(letter).index()].at;
}

Point between(char a, char b, int share_of_ten = 5) {
  const Point from = point_of(a), to = point_of(b);
  return {from.lat_e7 + (to.lat_e7 - from.lat_e7) / 10 * share_of_ten,
          from.lon_e7 + (to.lon_e7 - from.lon_e7) / 10 * share_of_ten};
}

Point north_of(Point at, double metres) {
  return {at.lat_e7 + static_cast<std::int32_t>(metres * 1e7 / 111195), at.lon_e7};
}

Point east_of(Point at, double metres) {
  return {at.lat_e7, at.lon_e7 + static_cast<std::int32_t>(metres * 1e7 / 64900)};
}

/// What the proof says when a drive keeps off a place.
std::string kept_off(std::string_view letters, std::vector<Point> outline) {
  Answer answer = own_drive(streets(), letters);
  answer.wish.keep_offs = {{"it", std::move(outline), ""}};
  return falsehood(streets(), answer);
}

constexpr const char* round_the_east = "KLMPIHGKL";

std::string taken(std::string_view letters, std::vector<wish::Take> takes,
                  std::vector<std::string> not_taken = {}) {
  Answer answer = own_drive(streets(), letters);
  answer.wish.takes = std::move(takes);
  if (!not_taken.empty()) {
    answer.shortfall.emplace().why = "it rained";
    answer.shortfall->not_taken = std::move(not_taken);
  }
  return falsehood(streets(), answer);
}

}  // namespace

TEST_CASE("a street goes on behind a gap of up to 500 m", "[proof][keep_off]") {
  const std::string on_it = ": it is on 'it', which the wish keeps off";
  // 400 m from C to K; 533 m from L to M.
  CHECK(kept_off(round_the_east, {between('A', 'B')}) == "loop 1, stretch 0 (way 3)" + on_it);
  CHECK(kept_off("MNQPMN", {between('A', 'B')}) == "");
  CHECK(kept_off("MNQPMN", {between('K', 'L')}) == "");
  CHECK(kept_off("MNQPMN", {between('M', 'N')}) == "loop 1, stretch 0 (way 4)" + on_it);
  // From either end.
  CHECK(kept_off("ABEDAB", {between('K', 'L')}) == "loop 1, stretch 0 (way 1)" + on_it);
}

TEST_CASE("a road without a name is known by its number, one without either alone",
          "[proof][keep_off]") {
  CHECK(kept_off("FGKCFG", {between('D', 'E')}) ==
        "loop 1, stretch 0 (way 9): it is on 'it', which the wish keeps off");
}

TEST_CASE("a road is kept off that lies within 150 m of the point, the nearest",
          "[proof][keep_off]") {
  const Point middle = between('P', 'Q', 5);
  CHECK(kept_off("PQNMPQ", {north_of(middle, -140)}) ==
        "loop 1, stretch 0 (way 13): it is on 'it', which the wish keeps off");
  CHECK(kept_off("PQNMPQ", {north_of(middle, -160)}) == "");
  CHECK(kept_off("PQNMPQ", {north_of(between('A', 'B'), 20)}) == "");
}

TEST_CASE("a junction is kept off within 5 m, a corner with a drive is none", "[proof][keep_off]") {
  const std::string through = ": it goes through 'it', which the wish keeps off";
  CHECK(kept_off("ABEDAB", {north_of(point_of('E'), 4)}) == "loop 1, stretch 1 (way 15)" + through);
  // 6 m off it means the nearest road.
  CHECK(kept_off("ABEDAB", {east_of(point_of('E'), 6)}) ==
        "loop 1, stretch 2 (way 8): it is on 'it', which the wish keeps off");
  CHECK(kept_off("DEBADE", {point_of('E')}) == "loop 1, stretch 0 (way 8)" + through);
}

TEST_CASE("an area is kept off when the road has a point in it or crosses it",
          "[proof][keep_off]") {
  const std::string inside = ": it lies in the area 'it', which the wish keeps off";
  const Point on = between('A', 'B');
  const auto corner = [&](double east_m, double north_m) {
    return north_of(east_of(on, east_m), north_m);
  };
  // A thin strip over the road that holds none of its points, told from either side.
  const std::vector<Point> strip{corner(-5, -30), corner(5, -30), corner(5, 30), corner(-5, 30)};
  CHECK(kept_off("ABEDAB", strip) == "loop 1, stretch 0 (way 1)" + inside);
  // Beside the road; and in the line of the road behind its end.
  CHECK(kept_off("ABEDAB", {corner(-5, 10), corner(5, 10), corner(5, 30), corner(-5, 30)}) == "");
  CHECK(kept_off("ABEDAB",
                 {corner(-140, -5), corner(-120, -5), corner(-120, 5), corner(-140, 5)}) == "");
  // Round all of it; and with a notch in which the drive lies.
  CHECK(kept_off("ABEDAB", {corner(-400, -400), corner(400, -400), corner(400, 100),
                            corner(-400, 100)}) == "loop 1, stretch 0 (way 1)" + inside);
  CHECK(kept_off("ABEDAB", {corner(-600, 200), corner(-600, -600), corner(600, -600),
                            corner(600, 200), corner(500, 200), corner(500, -500),
                            corner(-500, -500), corner(-500, 200)}) == "");
}

TEST_CASE("a place to keep off without a point is told", "[proof][keep_off]") {
  CHECK(kept_off("ABEDAB", {}) == "wish: a place to keep off has no point");
}

TEST_CASE("a street or a junction that isn't taken is told, and one said not to be",
          "[proof][take]") {
  const wish::Take street{"Well Street", between('B', 'E')}, corner{"the corner", point_of('E')};
  const wish::Take far{"Quay Street", between('P', 'Q')}, far_corner{"the far one", point_of('P')};
  CHECK(taken("ABEDAB", {street, corner}) == "");
  CHECK(taken("ABEDAB", {street, far}) ==
        "loop 1: it doesn't take 'Quay Street', and the shortfall doesn't say so");
  CHECK(taken("ABEDAB", {far_corner}) ==
        "loop 1: it doesn't take 'the far one', and the shortfall doesn't say so");
  CHECK(taken("ABEDAB", {street, far}, {"Quay Street"}) == "");
  CHECK(taken("ABEDAB", {street, far}, {"Quay Street", "Well Street"}) ==
        "shortfall: 'Well Street' is taken, or needn't be");
  CHECK(taken("ABEDAB", {corner}, {"the corner"}) ==
        "shortfall: 'the corner' is taken, or needn't be");
  CHECK(taken("ABEDAB", {street}, {"Quay Street"}) ==
        "shortfall: 'Quay Street' is taken, or needn't be");
}
