#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/wish/resolve.hpp"
#include "support/small_area.hpp"

namespace loopwright::wish {
namespace {

/// A row as a loop file has it: from one node of a way to another, by their positions.
struct End {
  std::int64_t node;
  std::uint32_t index;
};

LoopStretch row(std::int64_t way, End from, End to) {
  LoopStretch made;
  made.way = way;
  made.from = from.node, made.from_index = from.index;
  made.to = to.node, made.to_index = to.index;
  made.against = from.index > to.index;
  return made;
}

StretchId found(const LoopStretch& stretch) {
  const test::SmallArea area;
  return find_stretch(area.roads(), stretch);
}

StretchId stretch(std::size_t piece, bool against) {
  return {PieceId{piece}, against};
}

TEST_CASE("a loop of no roads is tied to any area", "[wish]") {
  const test::SmallArea area;
  Loop loop;
  CHECK_NOTHROW(resolve(area.roads(), loop));
}

TEST_CASE("a row of a loop file names one road piece and a direction", "[wish]") {
  CHECK(found(row(10, {1, 0}, {2, 2})) == stretch(0, false));
  CHECK(found(row(10, {2, 2}, {1, 0})) == stretch(0, true));
  CHECK(found(row(11, {4, 2}, {2, 0})) == stretch(2, true));
}

TEST_CASE("a closed loop of road is named in both directions", "[wish]") {
  CHECK(found(row(12, {4, 0}, {4, 3})) == stretch(3, false));
  CHECK(found(row(12, {4, 3}, {4, 0})) == stretch(3, true));
}

TEST_CASE("a road that meets itself is told apart by positions", "[wish]") {
  CHECK(found(row(13, {3, 0}, {5, 1})) == stretch(4, false));
  CHECK(found(row(13, {3, 2}, {5, 1})) == stretch(5, true));
  CHECK(found(row(13, {3, 2}, {5, 3})) == stretch(6, false));
}

TEST_CASE("a row whose way, node, position or direction differs names nothing", "[wish]") {
  CHECK_FALSE(found(row(99, {1, 0}, {2, 2})).known());
  CHECK_FALSE(found(row(10, {1, 0}, {3, 2})).known());
  CHECK_FALSE(found(row(10, {1, 0}, {2, 1})).known());
  CHECK_FALSE(found(row(10, {1, 0}, {3, 3})).known());
  LoopStretch turned = row(10, {1, 0}, {2, 2});
  turned.against = true;
  CHECK_FALSE(found(turned).known());
}

TEST_CASE("a loop of this area is tied to it row by row", "[wish]") {
  const test::SmallArea area;
  Loop loop;
  loop.stretches = {row(10, {1, 0}, {2, 2}), row(11, {2, 0}, {4, 2}), row(12, {4, 0}, {4, 3})};
  resolve(area.roads(), loop);
  CHECK(loop.stretches[0].stretch == stretch(0, false));
  CHECK(loop.stretches[1].stretch == stretch(2, false));
  CHECK(loop.stretches[2].stretch == stretch(3, false));
}

TEST_CASE("a loop of another area is refused at its first strange road", "[wish]") {
  const test::SmallArea area;
  Loop loop;
  loop.id = 2;
  loop.stretches = {row(10, {1, 0}, {2, 2}), row(77, {2, 4}, {9, 5}), row(78, {9, 0}, {1, 1})};
  CHECK_THROWS_AS(resolve(area.roads(), loop), InputError);
  CHECK_THROWS_WITH(resolve(area.roads(), loop),
                    "loop 2, stretch 1: the area has no road on way 77 from node 2 to node 9; plan "
                    "the loop again with this area");
}

}  // namespace
}  // namespace loopwright::wish
