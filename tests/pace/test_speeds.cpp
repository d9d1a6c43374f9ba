#include <catch2/catch.hpp>

#include "pace/plain_roads.hpp"

using namespace loopwright;
using namespace loopwright::test;
using pace::Pace;
using road::RoadClass;

namespace {

/// Speed in mph of one road at a level.
double speed(const PlainRoad& road, int level = 5) {
  PlainRoads town;
  const StretchId stretch = town.add(road);
  const road::Roads roads = town.roads();
  return Pace(roads, {.level = level}, saturday).speed_mps(stretch) / mph;
}

std::int64_t ms(const Pace& pace, StretchId stretch, double from_m, double to_m) {
  return pace.along_part(stretch, from_m, to_m).likely_ms;
}

}  // namespace

TEST_CASE("driving no distance takes no time", "[pace]") {
  PlainRoads town;
  const StretchId road = town.add({});
  const road::Roads roads = town.roads();
  const pace::Spell spell = Pace(roads, {}, saturday).along_part(road, 500, 500);
  CHECK(spell.likely_ms == 0);
  CHECK(spell.variance_s2 == 0);
}

TEST_CASE("a learner of level 3 drives 85 % of a 30 limit", "[pace]") {
  PlainRoads town;
  const StretchId road = town.add({.length_m = mile_m});
  const road::Roads roads = town.roads();
  // A mile at 25.5 mph: 3600 / 25.5 s. Shares by level: TRADE 2.6, a judgement.
  CHECK(Pace(roads, {.level = 3}, saturday).along(road).likely_ms == 141176);
}

TEST_CASE("the higher the level the faster the drive, never above the limit", "[pace]") {
  double last = 0;
  for (const int level : {1, 2, 3, 4, 5}) {
    const double now = speed({}, level);
    CHECK(now >= last);
    CHECK(now <= 30);
    last = now;
  }
  CHECK(speed({}, 1) == Approx(22.5));
  CHECK(speed({}, 5) == Approx(28.5));
}

TEST_CASE("a quick pupil's calibration doesn't take the car above the limit", "[pace]") {
  PlainRoads town;
  const StretchId road = town.add({});
  const road::Roads roads = town.roads();
  CHECK(Pace(roads, {.level = 5, .factor = 0.8}, saturday).speed_mps(road) == Approx(30 * mph));
  CHECK(Pace(roads, {.level = 5, .factor = 1.6}, saturday).speed_mps(road) ==
        Approx(30 * mph * 0.95 / 1.6));
}

TEST_CASE("narrow, humped, parked-up and winding roads hold a learner back", "[pace]") {
  // Ranges of TRADE 2.6, times the share of level 5.
  const double share = 0.95;
  CHECK(speed({.runs = bit(road::Kind::single_track)}) / share >= 20);
  CHECK(speed({.runs = bit(road::Kind::single_track)}) / share <= 25);
  CHECK(speed({.usable_width_m = 3.2F}) == speed({.runs = bit(road::Kind::single_track)}));
  CHECK(speed({.usable_width_m = 4.5F}) == speed({.runs = bit(road::Kind::narrow_road)}));
  CHECK(speed({.usable_width_m = 5.5F}) == speed({}));
  CHECK(speed({.flags = road::piece_flag::humps}) / share >= 15);
  CHECK(speed({.flags = road::piece_flag::humps}) / share <= 20);
  CHECK(speed({.flags = road::piece_flag::parked_both}) / share >= 18);
  CHECK(speed({.flags = road::piece_flag::parked_both}) / share <= 22);
  const PlainRoad lane{.road_class = RoadClass::tertiary, .limit = signed_limit(60)};
  PlainRoad winding = lane;
  winding.flags = road::piece_flag::winding;
  CHECK(speed(winding) / share >= 35);
  CHECK(speed(winding) / share <= 40);
  CHECK(speed(lane) > speed(winding));
}

TEST_CASE("a straight main road with a limit of 60 is driven at 50 at most", "[pace]") {
  // DfT free-flow speeds: cars average 50 on single carriageways with a limit of 60.
  const PlainRoad main_road{.road_class = RoadClass::primary, .limit = signed_limit(60)};
  CHECK(speed(main_road) == Approx(50 * 0.95));
}

TEST_CASE("a one-way street is not slow for being one lane wide", "[pace]") {
  CHECK(speed({.flags = road::piece_flag::one_way, .usable_width_m = 3.2F}) == speed({}));
}

TEST_CASE("a ring is taken in second gear, a wide one a little faster", "[pace]") {
  const std::uint32_t ring = road::piece_flag::ring | road::piece_flag::one_way;
  // Comfortable sideways acceleration of 2 m/s² on radii of 20 and 40 m: 14.1 and 20.0 mph.
  CHECK(speed({.flags = ring}) / 0.95 == Approx(std::sqrt(2 * 20.0) / mph).epsilon(0.02));
  CHECK(speed({.flags = ring, .lanes = 2}) / 0.95 ==
        Approx(std::sqrt(2 * 40.0) / mph).epsilon(0.02));
}

TEST_CASE("a lamp-lit Welsh street is a 20 on the day of the lesson", "[pace]") {
  PlainRoads town;
  PlainRoad lit;
  lit.limit = {};
  lit.limit.rule = road::LimitRule::restricted;
  const StretchId road = town.add(lit);
  const road::Roads wales = town.roads("GB-WLS");
  const Instant before{1694520000, 0};  // 12 September 2023; the law is of the 17th
  CHECK(Pace(wales, {.level = 5}, before).speed_mps(road) == Approx(30 * mph * 0.95));
  CHECK(Pace(wales, {.level = 5}, saturday).speed_mps(road) == Approx(20 * mph * 0.95));
  CHECK(Pace(wales, {}, saturday).limit(road).value == 20);
}

TEST_CASE("the quick table of limits says what the law says", "[pace]") {
  PlainRoads town;
  std::vector<StretchId> all;
  for (int rule = 0; rule <= static_cast<int>(road::LimitRule::walk); ++rule) {
    for (const int value : {0, 5, 20, 30, 70}) {
      PlainRoad road{.road_class = RoadClass::motorway, .limit = signed_limit(value)};
      road.limit.rule = static_cast<road::LimitRule>(rule);
      if (value == 0 && road.limit.rule == road::LimitRule::signed_value) continue;
      all.push_back(town.add(road));
    }
  }
  for (const char* region : {"GB-ENG", "GB-WLS", "IE", "LI"}) {
    const road::Roads roads = town.roads(region);
    const Pace pace(roads, {.level = 5, .factor = 0.8}, saturday);
    for (const StretchId s : all)
      CHECK(pace.speed_mps(s) ==
            Approx(std::min(70 * mph * 0.95 / 0.8, pace.limit(s).metres_per_second())));
  }
}

TEST_CASE("parts of a road add up to the whole, to the millisecond", "[pace]") {
  PlainRoads town;
  const StretchId road = town.add({.length_m = 777.777});
  const road::Roads roads = town.roads();
  const Pace pace(roads, {}, saturday);
  for (const double cut_m : {0.0, 0.004, 123.4567, 500.0, 777.7, 777.777}) {
    CHECK(ms(pace, road, 0, cut_m) + ms(pace, road, cut_m, 777.777) == pace.along(road).likely_ms);
    CHECK(pace.along_part(road, 0, cut_m).variance_s2 +
              pace.along_part(road, cut_m, 777.777).variance_s2 ==
          Approx(pace.along(road).variance_s2));
  }
  CHECK(ms(pace, road, 0, 777.777) == pace.along(road).likely_ms);
}
