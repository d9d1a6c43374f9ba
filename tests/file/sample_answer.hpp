// A small answer with something in every field of the loop file.
#pragma once

#include "loopwright/wish/wish.hpp"

namespace loopwright::test {

inline wish::Wish sample_wish() {
  wish::Wish wish;
  wish.home = {515877000, -29984000};
  wish.start = {1795878000, 0};  // 2026-11-28T15:00:00+00:00
  wish.minutes = 60;
  wish.reserve_minutes = 5;
  wish.level = 2;
  wish.level_given = true;
  wish.alternatives = 3;
  wish.wants = {{road::Kind::roundabout, road::Movement::right, 3},
                {road::Kind::level_crossing, road::Movement::none, std::nullopt}};
  wish.avoids = {{road::Kind::dual_carriageway}};
  return wish;
}

inline wish::Loop sample_loop() {
  wish::Loop loop;
  loop.start = {1795878000, 0};
  loop.seconds = {3000.1, 3300.25, 3600.0004};
  loop.metres = 21000.126;
  loop.metres_twice = 300;
  wish::LoopStretch first;
  first.way = 123;
  first.from = 11;
  first.to = 14;
  first.from_index = 3;
  first.to_index = 6;
  first.metres = 80.5;
  first.partial_m = {{19.5, 100}};
  first.limit = {30, SpeedUnit::mph, road::LimitConfidence::inferred};
  first.street = "Mill Street";
  wish::LoopStretch second = first;
  second.way = 124;
  second.from = 14;
  second.to = 11;
  second.against = true;
  second.partial_m.reset();
  second.limit = {0, SpeedUnit::mph, road::LimitConfidence::check};
  second.arrive_s = {9, 10.0625, 12};
  second.street.clear();
  loop.stretches = {first, second};
  loop.passes = {{road::Kind::roundabout,
                  road::Movement::right,
                  3,
                  0,
                  1,
                  3,
                  road::Confidence::certain,
                  {5, ObjectType::way},
                  "junction=roundabout"},
                 {road::Kind::level_crossing,
                  road::Movement::none,
                  0,
                  1,
                  1,
                  2,
                  road::Confidence::certain,
                  {6, ObjectType::node},
                  "railway=level_crossing"}};
  loop.bus_lanes = {{0,
                     1,
                     "left",
                     "Mo-Sa 16:00-19:00",
                     "15:41",
                     "15:47",
                     wish::Verdict::usable,
                     "in force from 16:00; you pass 15:41 to 15:47",
                     {123, ObjectType::way},
                     "lanes:bus:conditional=1 @ (Mo-Sa 16:00-19:00)"}};
  loop.met = {{{road::Kind::roundabout, road::Movement::right, 3}, 2}};
  loop.certificate = {"within", 8000, 10000, 40, 2, {}};
  return loop;
}

inline wish::Answer sample_answer() {
  wish::Answer answer;
  answer.area = {"out/n.area",           "163daa82c50c00e6d1b7fdf099a286e0",   "GB-WLS", "left",
                 "2026-11-01T00:00:00Z", "© OpenStreetMap contributors (ODbL)"};
  answer.wish = sample_wish();
  answer.loops = {sample_loop()};
  answer.fewer_because = "no second loop shares less than 40 % of the first";
  wish::Shortfall shortfall;
  shortfall.why = "two of three roundabouts fit into the time";
  shortfall.missing = {{{road::Kind::roundabout, road::Movement::right, 3},
                        2,
                        "the nearest further one is too far",
                        OsmObject{77, ObjectType::way},
                        21.5,
                        71.256}};
  shortfall.least_minutes = 68.0;
  answer.shortfall = shortfall;
  return answer;
}

}  // namespace loopwright::test
