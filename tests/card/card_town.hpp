// A drawn town with one of most things a sheet speaks of, and a drive round it.
#pragma once

#include <string>
#include <string_view>

#include "loopwright/lanes/lanes.hpp"
#include "support/honest_loop.hpp"

namespace loopwright::test {

/// For draw_town(…, 100). The ring npqr lies between B, G, J and E; the railway crosses Hay Street.
inline constexpr std::string_view card_town = R"town(
    A     B       C     D


          n
    E  z r p      G   x H
          q           y


    I     J       K     L


    M     N       O     P
  w1 AB    highway=residential name=Lantern_Row lit=yes
  w2 BC    highway=residential name=Cooper's_Reach maxspeed="30 mph"
  w3 CD    highway=tertiary name=Ostler_Street maxspeed="30 mph"
  w4 IEA   highway=residential name=Signal_Terrace maxspeed="20 mph"
  w5 Bn    highway=secondary ref=B9951 maxspeed="30 mph"
  w6 npqrn highway=secondary junction=roundabout maxspeed="30 mph"
  w7 rzE   highway=tertiary name=Mill_Orchard maxspeed="30 mph"
  w8 pG    highway=tertiary name=Hay_Street maxspeed="30 mph"
  w9 qJ    highway=secondary ref=B9951 maxspeed="30 mph"
  w10 GxH  highway=tertiary name=Hay_Street maxspeed="30 mph"
  w11 DHL  highway=tertiary name=East_Way maxspeed="40 mph" busway:left=lane lanes:bus:forward:conditional="1 @ (Mo-Sa 16:00-19:00)"
  w12 CG   highway=residential name=Bell_Yard maxspeed="20 mph"
  w13 GK   highway=residential name=Bell_Yard maxspeed="20 mph"
  w14 IJ   highway=residential name=Weir_Street maxspeed="30 mph"
  w15 JK   highway=secondary ref=B9951 maxspeed="30 mph"
  w16 KL   highway=residential name=Fold_Lane width=3 maxspeed="30 mph"
  w17 IMN  highway=residential name=South_Street maxspeed="30 mph"
  w18 JN   highway=residential name=Pound_Street maxspeed="30 mph"
  w19 NO   highway=residential name=South_Street maxspeed="30 mph"
  w20 OPL  highway=residential name=South_Street maxspeed="30 mph"
  w21 KO   highway=residential name=Gate_Street maxspeed="30 mph"
  w90 xy   railway=rail
  nJ  highway=mini_roundabout direction=clockwise
  nK  highway=traffic_signals
  nx  railway=level_crossing crossing:barrier=half
  nz  highway=crossing crossing=uncontrolled crossing:markings=zebra
)town";

inline BuiltTown built_card_town(std::string_view region = "GB-ENG") {
  BuiltTown town = built_town(draw_town(card_town, 100), region);
  town.built.info.map_timestamp = "2026-11-12T09:00:00Z";
  return town;
}

/// Home on Signal Terrace; twice through the roundabout, over the railway, along the narrow lane.
inline wish::Answer card_answer(const BuiltTown& town) {
  wish::Answer answer =
      honest_answer(town, "EABnpGxHLKJqrzEA", {"roundabout:left=2", "level-crossing=1"});
  answer.wish.minutes = 15;
  // East Way, from H to L, has hours.
  answer.loops[0].bus_lanes = lanes::bus_lanes_on(town.roads(), answer.loops[0], {});
  return answer;
}

}  // namespace loopwright::test
