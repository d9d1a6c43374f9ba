#include <catch2/catch.hpp>

#include "county/draw.hpp"
#include "county/truth.hpp"
#include "loopwright/base/error.hpp"

using namespace loopwright;
using namespace loopwright::county;
using road::Kind;

namespace {

Truth truth_by(const std::string& plan) {
  const Drawing county = draw(read_plan("origin 54.3 2.6\n" + plan, "test.plan"), 1);
  for (const std::string& trouble : county.troubles) FAIL(trouble);
  return truth_of(county);
}

std::size_t places(const Truth& truth, Kind kind, Duty duty = Duty::must) {
  return static_cast<std::size_t>(std::ranges::count_if(truth.places, [&](const TruePlace& row) {
    return row.duty == duty && (row.kinds & road::bit(kind)) != 0;
  }));
}

std::size_t runs(const Truth& truth, Kind kind, Duty duty = Duty::must) {
  return static_cast<std::size_t>(std::ranges::count_if(truth.runs, [&](const TrueRun& row) {
    return row.duty == duty && (row.kinds & road::bit(kind)) != 0;
  }));
}

const TrueRun& run(const Truth& truth, Kind kind) {
  const auto found = std::ranges::find_if(truth.runs, [&](const TrueRun& row) {
    return row.duty == Duty::must && row.kinds == road::bit(kind);
  });
  REQUIRE(found != truth.runs.end());
  return *found;
}

std::string says(const Truth& truth, Kind kind) {
  for (const TruePlace& row : truth.places)
    if (row.duty == Duty::must && row.kinds == road::bit(kind)) return row.says;
  FAIL("nothing of the kind");
  return "";
}

// A main road from west to east, open at both ends.
const std::string main_road = "road Main secondary -400,0 400,0 first=edge last=edge\n";

}  // namespace

TEST_CASE("an empty county has no truth", "[county][truth]") {
  const Truth truth = truth_by("");
  CHECK(truth.places.empty());
  CHECK(truth.runs.empty());
}

TEST_CASE("a side road is emerged from and turned into, both ways", "[county][truth]") {
  const Truth truth = truth_by(main_road + "road Side residential 0,0 0,200 last=closed\n");
  CHECK(places(truth, Kind::emerge) == 1);
  CHECK(says(truth, Kind::turn_off) == "moves=left,right");
  CHECK(places(truth, Kind::narrow_mouth) == 0);
  CHECK(places(truth, Kind::crossroads, Duty::may) == 0);
}

TEST_CASE("a side road where two cars don't fit has a narrow mouth", "[county][truth]") {
  const Truth truth =
      truth_by(main_road + "road Side residential 0,0 0,200 last=closed width=4.5\n");
  CHECK(places(truth, Kind::narrow_mouth) == 1);
  CHECK(places(truth, Kind::turn_off) == 0);
  CHECK(run(truth, Kind::narrow_road).metres == Approx(200).margin(1));
}

TEST_CASE("what a ban or lights change is told by no shape", "[county][truth]") {
  const std::string side = "road Side residential 0,0 0,200 last=closed\n";
  const Truth lit = truth_by(main_road + side + "junction 0,0 highway=traffic_signals\n");
  CHECK(places(lit, Kind::emerge) == 0);
  CHECK(places(lit, Kind::signals) == 1);
  const Truth banned = truth_by(main_road + side + "ban no_right_turn 0,100 0,0 300,0\n");
  CHECK(places(banned, Kind::emerge) == 0);
  CHECK(places(banned, Kind::emerge, Duty::may) >= 1);
}

TEST_CASE("crossroads, staggered and acute junctions differ by shape", "[county][truth]") {
  const Truth cross =
      truth_by(main_road + "road Side residential 0,-200 0,200 first=closed last=closed\n");
  CHECK(places(cross, Kind::crossroads) == 1);
  const Truth staggered = truth_by(main_road + "road A residential 0,0 0,200 last=closed\n" +
                                   "road B residential 30,0 30,-200 last=closed\n");
  CHECK(places(staggered, Kind::staggered_junction) == 1);
  CHECK(places(staggered, Kind::emerge) == 0);
  const Truth acute = truth_by(main_road + "road A residential 0,0 200,110 last=closed\n");
  CHECK(places(acute, Kind::acute_junction) == 1);
}

TEST_CASE("arms of a roundabout are counted once round a splitter island", "[county][truth]") {
  const std::string arms =
      "road North primary @r^ 0,400 last=edge\nroad East primary @r^ 400,0 last=edge\n"
      "road South primary @r^ 0,-400 last=edge\n";
  CHECK(says(truth_by("ring r 0,0 25 highway=primary lanes=1\n" + arms), Kind::roundabout) ==
        "arms=3");
  CHECK(says(truth_by("ring r 0,0 25 highway=primary lanes=2\n" + arms),
             Kind::multi_lane_roundabout) == "arms=3");
  CHECK(says(truth_by("ring r 0,0 25 highway=primary lanes=2 signals=yes\n" + arms),
             Kind::signal_roundabout) == "arms=3");
}

TEST_CASE("two minis a few metres apart are a double one", "[county][truth]") {
  const std::string roads = main_road + "road A residential 0,0 0,200 last=closed\n" +
                            "road B residential 40,0 40,-200 last=closed\n";
  const Truth one = truth_by(roads + "junction 0,0 highway=mini_roundabout\n");
  CHECK(says(one, Kind::mini_roundabout) == "arms=3");
  const Truth two = truth_by(roads + "junction 0,0 highway=mini_roundabout\n" +
                             "junction 40,0 highway=mini_roundabout\n");
  CHECK(places(two, Kind::double_mini) == 2);
  CHECK(places(two, Kind::mini_roundabout) == 0);
}

TEST_CASE("zones, limits and changes between them are told apart", "[county][truth]") {
  const Truth truth = truth_by(
      "road A residential 0,0 300,0 first=edge maxspeed=\"20 mph\" maxspeed:type=GB:zone20\n"
      "road A residential 300,0 600,0 maxspeed=\"30 mph\"\n"
      "road A residential 600,0 900,0 last=edge maxspeed=\"20 mph\" maxspeed:type=sign\n");
  CHECK(runs(truth, Kind::twenty_zone) == 1);
  CHECK(runs(truth, Kind::twenty_limit) == 2);
  CHECK(places(truth, Kind::limit_change) == 2);
}

TEST_CASE("cars parked on both sides make narrow what isn't single-track", "[county][truth]") {
  const Truth truth =
      truth_by("road A residential 0,0 300,0 first=edge last=edge width=6 parking:both=lane\n");
  CHECK(runs(truth, Kind::meeting_traffic) == 1);
  CHECK(runs(truth, Kind::narrow_road) == 1);
  CHECK(runs(truth, Kind::single_track) == 0);
  const Truth feet =
      truth_by("road A residential 0,0 300,0 first=edge last=edge width=\"12'6\\\"\"\n");
  CHECK(runs(feet, Kind::single_track) == 1);
}

TEST_CASE("bus lanes keep direction and hours in all families of tags", "[county][truth]") {
  const auto lane = [](const std::string& tags) {
    return run(truth_by("road A primary 0,0 300,0 first=edge last=edge " + tags + "\n"),
               Kind::bus_lane);
  };
  CHECK(lane("lanes:bus:forward=1").course == Course::along);
  CHECK(lane("lanes:bus:forward=1").says == "hours=");
  CHECK(lane("lanes:psv:backward:conditional=\"1 @ (Mo-Fr 07:00-09:00)\"").says ==
        "hours=Mo-Fr 07:00-09:00");
  CHECK(lane("bus:lanes:backward=designated|yes").course == Course::against);
  CHECK(lane("busway:left=lane").course == Course::along);
  CHECK(lane("lanes:psv=1").course == Course::any);
  CHECK(lane("lanes:psv=1 oneway=yes").course == Course::along);
}

TEST_CASE("private roads and driveways are nobody's practice", "[county][truth]") {
  const Truth truth =
      truth_by("road A residential 0,0 300,0 first=edge last=edge access=private width=3\n");
  CHECK(runs(truth, Kind::single_track) == 0);
}

TEST_CASE("a truth is written and read back the same", "[county][truth]") {
  Truth truth = truth_by(main_road + "road Side residential 0,0 0,200 last=closed width=4.5\n");
  truth.traps.push_back({21, truth.places.front().at, "a width in feet and inches"});
  const std::string text = written(truth);
  CHECK(written(read_truth(text)) == text);
  CHECK(read_truth(text).runs.size() == truth.runs.size());
}

TEST_CASE("a line that is no truth is named", "[county][truth]") {
  CHECK_THROWS_WITH(read_truth("# head\nmust\tzebra\tat\t54.3\tx\t25\t-"),
                    "line 2: no number: x; write the truth anew with draw-county --truth");
  CHECK_THROWS_WITH(read_truth("must\tzebrra\tat\t54.3\t2.6\t25\t-"),
                    "line 1: no kind: zebrra; write the truth anew with draw-county --truth");
  CHECK_THROWS_WITH(read_truth("must\tzebra"),
                    "line 1: cells are missing; write the truth anew with draw-county --truth");
}
