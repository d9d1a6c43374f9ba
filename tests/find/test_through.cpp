// The instructor's own drive through points, and the nearest chances.
#include <catch2/catch.hpp>
#include <set>

#include "loopwright/base/error.hpp"
#include "loopwright/find/find.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {

namespace {

const BuiltTown& streets() {
  static const BuiltTown town = built_town(draw_town(crossing_streets, 100), "GB-ENG");
  return town;
}

Point middle(std::string_view letters) {
  const road::Roads roads = streets().roads();
  const StretchId s = streets().stretch(letters);
  return point_along(roads.shape_of(s.piece()), roads.piece(s).length_m / 2);
}

wish::Wish drive_through(std::initializer_list<std::string_view> points) {
  wish::Wish wish;
  wish.home = middle("AB");
  wish.start = {1795878000, 0};
  for (const std::string_view point : points) wish.through.push_back(middle(point));
  return wish;
}

/// Position in the drive of the first stretch on the same piece at or after `from`.
std::size_t position(const wish::Loop& loop, std::string_view letters, std::size_t from) {
  for (std::size_t i = from; i < loop.stretches.size(); ++i)
    if (loop.stretches[i].stretch.piece() == streets().stretch(letters).piece()) return i;
  return loop.stretches.size();
}

}  // namespace

TEST_CASE("points are driven through in the order given", "[find]") {
  const auto result = find::route_through(streets().roads(), drive_through({"KL", "CD", "MN"}), {});
  REQUIRE(result.loops.size() == 1);
  CHECK_FALSE(result.shortfall);
  const wish::Loop& loop = result.loops[0];
  const std::size_t first = position(loop, "KL", 0);
  const std::size_t second = position(loop, "CD", first);
  const std::size_t third = position(loop, "MN", second);
  CHECK(third < loop.stretches.size());
  CHECK(loop.stretches.front().way == loop.stretches.back().way);
}

TEST_CASE("a drive through points has its passes and times like any loop", "[find]") {
  const auto result = find::route_through(streets().roads(), drive_through({"xH"}), {});
  REQUIRE(result.loops.size() == 1);
  bool crossing = false;
  for (const wish::Pass& pass : result.loops[0].passes)
    crossing = crossing || pass.kind == road::Kind::level_crossing;
  CHECK(crossing);
  CHECK(result.loops[0].seconds.low < result.loops[0].seconds.likely);
  CHECK(result.loops[0].seconds.likely < result.loops[0].seconds.high);
}

TEST_CASE("a point behind on the same street is reached by driving round", "[find]") {
  wish::Wish wish = drive_through({});
  const road::Roads roads = streets().roads();
  const StretchId ab = streets().stretch("AB");
  wish.through = {point_along(roads.shape_of(ab.piece()), roads.piece(ab).length_m * 0.8),
                  point_along(roads.shape_of(ab.piece()), roads.piece(ab).length_m * 0.2)};
  const auto result = find::route_through(roads, wish, {});
  REQUIRE(result.loops.size() == 1);
  CHECK(result.loops[0].stretches.size() > 3);
}

TEST_CASE("minutes given for an own drive that takes longer are a shortfall", "[find]") {
  wish::Wish wish = drive_through({"KL", "MN"});
  wish.minutes = 2;
  const auto result = find::route_through(streets().roads(), wish, {});
  REQUIRE(result.loops.size() == 1);
  REQUIRE(result.shortfall);
  CHECK(result.shortfall->why == "this drive takes longer than the minutes allow");
  CHECK(*result.shortfall->least_minutes > 2);
}

TEST_CASE("a point off the roads is refused by its number", "[find]") {
  wish::Wish wish = drive_through({"KL"});
  wish.through.push_back(point_from_degrees(54.4, 2.7));
  CHECK_THROWS_WITH(find::route_through(streets().roads(), wish, {}),
                    "point 2 of --through is over 150 m from any road a learner may use");
}

TEST_CASE("the nearest chances come first, each place and movement once", "[find]") {
  const auto near = find::chances_near(streets().roads(),
                                       {drive_through({}), wish::read_want("roundabout"), 30}, {});
  REQUIRE(near.size() >= 3);
  std::set<std::pair<std::uint32_t, road::Movement>> told;
  for (std::size_t k = 0; k < near.size(); ++k) {
    const road::Chance& chance = streets().roads().chances[near[k].chance.index()];
    CHECK(told.emplace(chance.place.value, chance.movement).second);
    CHECK(near[k].back_minutes > 0);
    if (k > 0) CHECK(near[k - 1].there_minutes <= near[k].there_minutes);
  }
}

TEST_CASE("beyond the minutes nothing is near", "[find]") {
  const auto near = find::chances_near(
      streets().roads(), {drive_through({}), wish::read_want("level-crossing"), 0.2}, {});
  CHECK(near.empty());
}

}  // namespace loopwright::test
