// Lessons with stops to practise at: what is asked for is done, so often as asked, in the minutes;
// the proof agrees, and tells every lie about a stop.
#include <catch2/catch.hpp>

#include <algorithm>

#include "find/answer_of.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/card/card.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/find/passes.hpp"
#include "loopwright/proof/proof.hpp"
#include "loopwright/wish/resolve.hpp"
#include "support/built_town.hpp"

namespace loopwright::test {
namespace {

using Catch::Matchers::Contains;
using road::Kind;

/// Two quiet streets of a kilometre above a block of bigger roads.
const BuiltTown& town() {
  static const BuiltTown built = built_town(draw_town(R"(
A         B
C         D
E         F
G         H
w1 AB highway=residential maxspeed=20_mph name=Top_Row
w2 CD  highway=residential maxspeed=20_mph name=Middle_Row
w3 AC  highway=tertiary maxspeed=30_mph name=West_Road
w4 BD  highway=tertiary maxspeed=30_mph name=East_Road
w5 CE  highway=tertiary maxspeed=30_mph name=West_Road
w6 DF  highway=tertiary maxspeed=30_mph name=East_Road
w7 EF  highway=tertiary maxspeed=30_mph name=Low_Road
w8 EG  highway=tertiary maxspeed=30_mph name=West_Road
w9 FH  highway=tertiary maxspeed=30_mph name=East_Road
w10 GH highway=tertiary maxspeed=30_mph name=Field_Road
)",
                                                      100),
                                            "GB-ENG");
  return built;
}

/// From the middle of the low road.
wish::Wish wish_for(int minutes, std::initializer_list<std::string_view> wants) {
  const road::Roads roads = town().roads();
  const Point e = roads.nodes[town().node('E').index()].at;
  wish::Wish wish;
  wish.home = point_from_degrees(e.lat(), e.lon() + 0.007);
  wish.start = {1795878000, 0};
  wish.minutes = minutes;
  for (const std::string_view want : wants) wish.wants.push_back(wish::read_want(want));
  return wish;
}

wish::Answer answer_to(const wish::Wish& wish) {
  const road::Roads roads = town().roads();
  find::FindResult found = find::find_loops(roads, wish, {});
  const wish::Answer answer = test::answer_of(roads, wish, std::move(found));
  return file::read_answer(file::write_answer(answer), "drawn.json");
}

std::string false_claim(const wish::Answer& answer) {
  return proof::prove(town().roads(), answer, {}).false_claim.value_or("");
}

std::vector<wish::Pass> stops_of(const wish::Loop& loop) {
  std::vector<wish::Pass> stops;
  for (const wish::Pass& pass : loop.passes)
    if (pass.stop_s > 0) stops.push_back(pass);
  return stops;
}

/// What the proof says of a true answer with one planted lie about its first stop.
template <class Change>
std::string lie(Change&& change) {
  wish::Answer answer = answer_to(wish_for(20, {"parallel-park=1"}));
  REQUIRE(answer.loops.size() == 1);
  wish::Loop& loop = answer.loops[0];
  const auto stop = std::find_if(loop.passes.begin(), loop.passes.end(),
                                 [](const wish::Pass& pass) { return pass.stop_s > 0; });
  REQUIRE(stop != loop.passes.end());
  change(loop, *stop);
  return false_claim(answer);
}

TEST_CASE("who asks for no manoeuvre stops for none", "[find][stops]") {
  const wish::Answer answer = answer_to(wish_for(15, {}));
  REQUIRE(answer.loops.size() == 1);
  CHECK(stops_of(answer.loops[0]).empty());
  CHECK(answer.loops[0].stop_seconds == 0);
}

TEST_CASE("a parallel park is one stop of its minutes inside the window", "[find][stops]") {
  const wish::Answer answer = answer_to(wish_for(20, {"parallel-park=1"}));
  REQUIRE(answer.loops.size() == 1);
  CHECK_FALSE(answer.shortfall);
  const wish::Loop& loop = answer.loops[0];
  REQUIRE(stops_of(loop).size() == 1);
  CHECK(stops_of(loop)[0].stop_s == 360);
  CHECK(loop.stop_seconds == 360);
  CHECK(loop.met[0].got == 1);
  CHECK(loop.seconds.likely + loop.stop_seconds <= 20 * 60);
  CHECK(loop.seconds.likely + loop.stop_seconds >= 0.95 * 20 * 60);
  CHECK(false_claim(answer) == "");
}

TEST_CASE("what comes after a stop is reached later by it", "[find][stops]") {
  const wish::Loop loop = answer_to(wish_for(20, {"parallel-park=1"})).loops.at(0);
  const std::size_t at = stops_of(loop).at(0).first;
  const double driven_s =
      loop.stretches[at + 1].arrive_s.likely - loop.stretches[at].arrive_s.likely;
  CHECK(driven_s > 360);
}

TEST_CASE("several kinds of stop are done as often as asked", "[find][stops]") {
  const wish::Answer answer = answer_to(wish_for(40, {"move-off=2", "turn-in-road=1"}));
  REQUIRE(answer.loops.size() == 1);
  CHECK(answer.loops[0].met[0].got == 2);
  CHECK(answer.loops[0].met[1].got == 1);
  CHECK(answer.loops[0].stop_seconds == 2 * 180 + 300);
  CHECK(false_claim(answer) == "");
}

TEST_CASE("as many stops as fit are more than one, each within the minutes", "[find][stops]") {
  const wish::Answer answer = answer_to(wish_for(40, {"move-off=max"}));
  REQUIRE(answer.loops.size() == 1);
  CHECK(answer.loops[0].met[0].got >= 2);
  CHECK(false_claim(answer) == "");
}

TEST_CASE("stops that don't fit are told", "[find][stops]") {
  const wish::Answer answer = answer_to(wish_for(10, {"parallel-park=3"}));
  REQUIRE(answer.shortfall);
  CHECK(answer.shortfall->missing.at(0).want.kind == Kind::parallel_park);
  CHECK(false_claim(answer) == "");
}

TEST_CASE("the sheet says where to stop, for what and how long", "[find][stops]") {
  const wish::Answer answer = answer_to(wish_for(20, {"parallel-park=1"}));
  REQUIRE(answer.loops.size() == 1);
  wish::Loop loop = answer.loops[0];
  wish::resolve(town().roads(), loop);
  const std::string text = card::write_text({town().roads(), answer, loop, {}});
  CHECK_THAT(text, Contains("a place for parallel parking, 6 min"));
  CHECK_THAT(text, Contains("stops 6 min"));
}

TEST_CASE("a bus stop is passed by driving along it, on either side of the door", "[find][stops]") {
  const BuiltTown built = built_town(draw_town(R"(
A  s  B
C     D
w1 AsB highway=tertiary maxspeed=30_mph
w2 BD  highway=tertiary maxspeed=30_mph
w3 DC  highway=tertiary maxspeed=30_mph
w4 CA  highway=tertiary maxspeed=30_mph
f1 s   highway=bus_stop
)",
                                               100),
                                     "GB-ENG");
  const road::Roads roads = built.roads();
  const auto passed = [&](std::string_view from_to, double from_m, double to_m) {
    find::Drive drive;
    drive.states = {StateId{built.stretch(from_to).index()}};
    drive.start_m = from_m, drive.end_m = to_m;
    const auto passes = find::passes_of(roads, drive);
    return std::ranges::count_if(
        passes, [](const find::PlacePass& found) { return found.pass.kind == Kind::bus_stop; });
  };
  const auto has = std::ranges::count(roads.chances, Kind::bus_stop, &road::Chance::kind);
  REQUIRE(has > 0);
  const std::string_view way = roads.chances_from(built.stretch("AB")).empty() ? "BA" : "AB";
  CHECK(passed(way, 0, 600) >= 1);
  CHECK(passed(way, 0, 200) == 0);
  CHECK(passed(way, 400, 600) == 0);
}

TEST_CASE("near tells where a manoeuvre can be done", "[find][stops]") {
  const auto near = find::chances_near(
      town().roads(), {wish_for(20, {}), wish::read_want("parallel-park"), 10}, {});
  CHECK(near.size() >= 2);
}

TEST_CASE("a manoeuvre can't be avoided", "[wish][stops]") {
  CHECK_THROWS_WITH(wish::read_avoid("bay-park"),
                    "'bay-park' needn't be avoided: a manoeuvre is only done when asked for");
}

TEST_CASE("a longer or shorter stop than its kind takes is told", "[proof][stops]") {
  CHECK(lie([](wish::Loop&, wish::Pass&) {}) == "");
  CHECK_THAT(lie([](wish::Loop&, wish::Pass& stop) { stop.stop_s = 60; }),
             Contains("likely time: the file says"));
  CHECK_THAT(lie([](wish::Loop& loop, wish::Pass&) { loop.stop_seconds = 0; }),
             Contains("loop 1, stops: the file says 0.0 s, the area says 360.0 s"));
}

TEST_CASE("a stop on a stretch without a spot is told", "[proof][stops]") {
  CHECK_THAT(lie([](wish::Loop&, wish::Pass& stop) { stop.kind = Kind::bay_park; }),
             Contains("the drive makes no pass of bay-park"));
}

TEST_CASE("a stop claimed twice is told", "[proof][stops]") {
  const std::string told = lie([](wish::Loop& loop, wish::Pass& stop) {
    wish::Pass again = stop;
    again.stop_s = 0;
    loop.passes.push_back(again);
  });
  CHECK_THAT(told, Contains("the drive makes no pass of parallel-park"));
}

TEST_CASE("a stop that wasn't asked for is told", "[proof][stops]") {
  wish::Answer answer = answer_to(wish_for(20, {"parallel-park=1"}));
  REQUIRE(answer.loops.size() == 1);
  answer.wish.wants.clear();
  answer.loops[0].met.clear();
  CHECK_THAT(false_claim(answer), Contains("which the wish doesn't ask for"));
}

}  // namespace
}  // namespace loopwright::test
