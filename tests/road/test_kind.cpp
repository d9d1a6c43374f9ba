#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "loopwright/road/kind.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::road {
namespace {

TEST_CASE("no word is no kind, movement or confidence", "[road]") {
  CHECK_FALSE(parse_kind(""));
  CHECK_FALSE(parse_movement(""));
  CHECK_FALSE(parse_confidence(""));
}

TEST_CASE("every kind has a name of its own that reads as itself", "[road]") {
  std::set<std::string> names;
  for (std::size_t i = 0; i < kind_count; ++i) {
    const Kind kind = static_cast<Kind>(i);
    CHECK(parse_kind(name(kind)) == kind);
    names.insert(std::string(name(kind)));
  }
  CHECK(names.size() == kind_count);
}

TEST_CASE("the names of kinds are those of the loop file", "[road]") {
  // LOOP FILE, names of kinds, in its order; released names never change.
  const std::string_view listed[] = {"roundabout",
                                     "mini-roundabout",
                                     "multi-lane-roundabout",
                                     "signal-roundabout",
                                     "emerge",
                                     "turn-off",
                                     "crossroads",
                                     "staggered-junction",
                                     "stop-line",
                                     "signals",
                                     "box-junction",
                                     "zebra",
                                     "signal-crossing",
                                     "school",
                                     "level-crossing",
                                     "narrow-road",
                                     "single-track",
                                     "meeting-traffic",
                                     "pinch-point",
                                     "calming",
                                     "twenty-zone",
                                     "twenty-limit",
                                     "limit-change",
                                     "country-road",
                                     "bends",
                                     "uphill-start",
                                     "downhill",
                                     "dual-carriageway",
                                     "slip-road",
                                     "motorway",
                                     "one-way",
                                     "bus-lane",
                                     "cycle-lane",
                                     "lanes-merge",
                                     "bus-stop",
                                     "tram",
                                     "ford",
                                     "move-off",
                                     "bay-park",
                                     "parallel-park",
                                     "pull-up-right",
                                     "turn-in-road",
                                     "emergency-stop",
                                     "independent-stretch"};
  for (const std::string_view kind : listed) {
    REQUIRE(parse_kind(kind));
    CHECK(name(*parse_kind(kind)) == kind);
  }
}

TEST_CASE("movements and confidences read as they are written", "[road]") {
  for (const auto m : {Movement::left, Movement::ahead, Movement::right, Movement::round}) {
    CHECK(parse_movement(name(m)) == m);
  }
  CHECK(name(Movement::none).empty());
  CHECK_FALSE(parse_movement("straight"));
  for (const auto c : {Confidence::certain, Confidence::inferred, Confidence::noted}) {
    CHECK(parse_confidence(name(c)) == c);
  }
}

TEST_CASE("a mistyped kind has the one nearest to it as a hint", "[road]") {
  CHECK(nearest_kind("roundabuot") == Kind::roundabout);
  CHECK(nearest_kind("mini roundabout") == Kind::mini_roundabout);
  CHECK(nearest_kind("levelcrossing") == Kind::level_crossing);
  CHECK(nearest_kind("zebras") == Kind::zebra);
  CHECK(nearest_kind("20-zone") == Kind::twenty_zone);
  CHECK(nearest_kind("buslane") == Kind::bus_lane);
}

TEST_CASE("a signalled roundabout is a roundabout, a mini is not", "[road]") {
  CHECK(meets(Kind::roundabout, Kind::roundabout));
  CHECK(meets(Kind::signal_roundabout, Kind::roundabout));
  CHECK(meets(Kind::multi_lane_roundabout, Kind::roundabout));
  CHECK_FALSE(meets(Kind::mini_roundabout, Kind::roundabout));
  CHECK_FALSE(meets(Kind::roundabout, Kind::signal_roundabout));
}

TEST_CASE("a single track is a narrow road, but a 20 limit is no 20 zone", "[road]") {
  CHECK(meets(Kind::single_track, Kind::narrow_road));
  CHECK_FALSE(meets(Kind::narrow_road, Kind::single_track));
  CHECK_FALSE(meets(Kind::twenty_limit, Kind::twenty_zone));
  CHECK_FALSE(meets(Kind::twenty_zone, Kind::twenty_limit));
}

TEST_CASE("special forms are exactly the kinds that meet a wish", "[road]") {
  for (std::size_t asked = 0; asked < kind_count; ++asked) {
    std::uint64_t met = 0;
    for (std::size_t driven = 0; driven < kind_count; ++driven) {
      const Kind kind = static_cast<Kind>(driven);
      if (meets(kind, static_cast<Kind>(asked))) met |= bit(kind);
    }
    CHECK(with_special_forms(static_cast<Kind>(asked)) == met);
  }
}

TEST_CASE("kinds are asked for by the movements a driver can make there", "[road]") {
  using Movements = std::vector<Movement>;
  const auto movements = [](Kind kind) {
    const auto known = movements_of(kind);
    return Movements(known.begin(), known.end());
  };
  CHECK(movements(Kind::mini_roundabout) ==
        Movements{Movement::left, Movement::ahead, Movement::right, Movement::round});
  CHECK(movements(Kind::signals) == Movements{Movement::left, Movement::ahead, Movement::right});
  CHECK(movements(Kind::emerge) == Movements{Movement::left, Movement::right});
  CHECK(movements(Kind::zebra).empty());
  CHECK(movements(Kind::narrow_road).empty());
}

TEST_CASE("runs of road count from 100 m, bus lanes at any length", "[road]") {
  CHECK(is_stretch_like(Kind::narrow_road));
  CHECK(is_stretch_like(Kind::bus_lane));
  CHECK_FALSE(is_stretch_like(Kind::limit_change));
  CHECK_FALSE(is_stretch_like(Kind::level_crossing));
  CHECK(least_run_m(Kind::twenty_zone) == 100);
  CHECK(least_run_m(Kind::bus_lane) == 0);
}

TEST_CASE("every kind has one form", "[road]") {
  CHECK(form_of(Kind::roundabout) == KindForm::junction);
  CHECK(form_of(Kind::pinch_point) == KindForm::junction);
  CHECK(form_of(Kind::school) == KindForm::run);
  CHECK(form_of(Kind::bus_stop) == KindForm::roadside);
  CHECK(form_of(Kind::parallel_park) == KindForm::manoeuvre);
  CHECK(all_kinds().size() == kind_count);
  CHECK(std::is_sorted(all_kinds().begin(), all_kinds().end()));
}

TEST_CASE("double minis are minis, and a narrow mouth is a turn off the main road", "[road]") {
  CHECK(meets(Kind::double_mini, Kind::mini_roundabout));
  CHECK(meets(Kind::narrow_mouth, Kind::turn_off));
  CHECK_FALSE(meets(Kind::narrow_mouth, Kind::narrow_road));
}

TEST_CASE("road classes are ranked, a slip road as its road", "[road]") {
  CHECK(name(RoadClass::living_street) == "living_street");
  CHECK(rank(RoadClass::motorway) < rank(RoadClass::trunk));
  CHECK(rank(RoadClass::trunk_link) == rank(RoadClass::trunk));
  CHECK(rank(RoadClass::residential) == rank(RoadClass::unclassified));
  CHECK(rank(RoadClass::living_street) < rank(RoadClass::service));
  CHECK(name(Control::give_way_far) == "give-way-far");
  CHECK(name(Control::barrier) == "barrier");
}

}  // namespace
}  // namespace loopwright::road
