// A drawn town big enough for a lesson of a quarter of an hour: streets about 500 m apart round a
// roundabout, with a level crossing, a mini-roundabout and a narrow lane.
#pragma once

#include <string_view>

namespace loopwright::test {

/// For draw_town(…, 100): home is best on AB. The ring npqr lies between B (north), G (east),
/// J (south) and E (west); the railway runs between the columns of G and H.
inline constexpr std::string_view crossing_streets = R"(
    A     B       C     D


          n
    E    r p      G    xH
          q
                       y

    I     J       K     L


    M     N       O     P
  w1 AB    highway=residential name=Lantern_Row maxspeed="30 mph"
  w2 BC    highway=residential name=Cooper's_Reach maxspeed="30 mph"
  w3 CD    highway=tertiary name=Ostler_Street maxspeed="30 mph"
  w4 AE    highway=residential name=Signal_Terrace maxspeed="30 mph"
  w5 EI    highway=residential name=Signal_Terrace maxspeed="30 mph"
  w6 Bn    highway=secondary ref=B9951 maxspeed="30 mph"
  w7 npqrn highway=secondary junction=roundabout maxspeed="30 mph"
  w8 rE    highway=tertiary name=Mill_Orchard maxspeed="30 mph"
  w9 pG    highway=tertiary name=Hay_Street maxspeed="30 mph"
  w10 qJ   highway=secondary ref=B9951 maxspeed="30 mph"
  w11 GxH  highway=tertiary name=Hay_Street maxspeed="30 mph"
  w12 DH   highway=tertiary name=East_Way maxspeed="40 mph"
  w13 HL   highway=tertiary name=East_Way maxspeed="40 mph"
  w14 CG   highway=residential name=Bell_Yard maxspeed="20 mph"
  w15 GK   highway=residential name=Bell_Yard maxspeed="20 mph"
  w16 IJ   highway=residential name=Weir_Street maxspeed="30 mph"
  w17 JK   highway=secondary ref=B9951 maxspeed="30 mph"
  w18 KL   highway=residential name=Fold_Lane width=3 maxspeed="30 mph"
  w19 IM   highway=residential name=Signal_Terrace maxspeed="30 mph"
  w20 MN   highway=residential name=South_Street maxspeed="30 mph"
  w21 JN   highway=residential name=Pound_Street maxspeed="30 mph"
  w22 NO   highway=residential name=South_Street maxspeed="30 mph"
  w23 OP   highway=residential name=South_Street maxspeed="30 mph"
  w24 KO   highway=residential name=Gate_Street maxspeed="30 mph"
  w25 LP   highway=tertiary name=East_Way maxspeed="40 mph"
  w90 xy   railway=rail
  nJ  highway=mini_roundabout direction=clockwise
  nx  railway=level_crossing crossing:barrier=half
)";

}  // namespace loopwright::test
