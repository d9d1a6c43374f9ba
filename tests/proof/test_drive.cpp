#include <catch2/catch.hpp>

#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;
using wish::Loop;

TEST_CASE("a loop without stretches is no loop", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.stretches.clear(); }) == "loop 1: it has no stretches");
}

TEST_CASE("a way that isn't in the area is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.stretches[4].way = 99; }) ==
        "loop 1, stretch 4 (way 99): the area has no such road");
}

TEST_CASE("positions that aren't those of a road piece are told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.stretches[2].to_index = 2; }) ==
        "loop 1, stretch 2 (way 3): the way has no road from position 0 to 2 without a junction "
        "between");
  CHECK(loop_with(
            [](Loop& loop) { loop.stretches[2].from_index = 1, loop.stretches[2].to_index = 2; }) ==
        "loop 1, stretch 2 (way 3), position 1: the file says 'node 118', the area says "
        "'node 119'");
}

TEST_CASE("a direction that the positions deny is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.stretches[1].against = true; }) ==
        "loop 1, stretch 1 (way 2): the file says 'against', the area says 'along'");
}

TEST_CASE("a wrong node is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.stretches[1].to = 77; }) ==
        "loop 1, stretch 1 (way 2), position 2: the file says 'node 77', the area says 'node 118'");
}

TEST_CASE("a wrong street is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.stretches[1].street = "Hill Road"; }) ==
        "loop 1, stretch 1 (way 2): the file says 'Hill Road', the area says 'Mill Road'");
}

TEST_CASE("a stretch left out is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.stretches.erase(loop.stretches.begin() + 3); }) ==
        "loop 1, stretch 3 (way 3): it begins at node 120, but the stretch before ends at node "
        "119");
}

TEST_CASE("stretches in the wrong order are told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { std::swap(loop.stretches[5], loop.stretches[6]); }) ==
        "loop 1, stretch 5 (way 8): it begins at node 12, but the stretch before ends at node "
        "121");
}

TEST_CASE("a part that is longer than the road is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) {
          loop.stretches[0].partial_m = {150, 400};
        }) ==
        "loop 1, stretch 0 (way 1): it has no part from 150.0 to 400.0 m; it is 350.0 m long");
  CHECK(loop_with([](Loop& loop) {
          loop.stretches[0].partial_m = {-1, 350};
        }) == "loop 1, stretch 0 (way 1): it has no part from -1.0 to 350.0 m; it is 350.0 m long");
}

TEST_CASE("a part in the middle of the drive is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) {
          loop.stretches[6].partial_m = {0, 100};
        }) ==
        "loop 1, stretch 6 (way 8): only 0.0 to 100.0 m of 175.0 m are driven, in the middle of "
        "the drive");
}

TEST_CASE("a drive that begins far from home is told", "[proof]") {
  CHECK(lesson_with([](wish::Answer& answer) { answer.wish.home.lat_e7 += 20000; }) ==
        "loop 1: it begins 222.6 m from the place asked, more than 150.0 m");
}

TEST_CASE("a loop that doesn't close is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) {
          loop.stretches.back().partial_m = {0, 100}, loop.stretches.back().metres = 100;
        }) ==
        "loop 1: it does not close: it begins on way 1 at 175.0 m and ends on way 1 at 100.0 "
        "m");
  CHECK(loop_with([](Loop& loop) { loop.stretches.pop_back(); }) ==
        "loop 1: it ends 175.0 m from the place asked, more than 150.0 m");
}

TEST_CASE("a point of one's own drive that is left out is told", "[proof]") {
  const BuiltTown town = banned_town();
  wish::Answer answer = own_drive(town, "ADEBAD");
  answer.wish.through.push_back(town.roads().nodes[town.node('J').index()].at);
  CHECK(falsehood(town, answer) == "loop 1: it does not go through point 1 of the drive asked for");
}
