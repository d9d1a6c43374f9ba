// Two divided roads of one name that cross: four ways, one-way each, and a square between them.
#pragma once

#include <string_view>

namespace loopwright::test {

/// For draw_town with 9 m a character: a short side of the square is 9 m, a long one 18.
inline constexpr std::string_view crossing_divided_roads = R"(..G.J..



A.B.C.D
E.K.L.F



..H.I..
w1 AB highway=residential name=Osk_Road oneway=yes
w2 BC highway=residential name=Osk_Road oneway=yes
w3 CD highway=residential name=Osk_Road oneway=yes
w4 FL highway=residential name=Osk_Road oneway=yes
w5 LK highway=residential name=Osk_Road oneway=yes
w6 KB highway=residential name=Osk_Road oneway=yes
w7 HK highway=residential name=Osk_Road oneway=yes
w8 KE highway=residential name=Osk_Road oneway=yes
w9 BG highway=residential name=Osk_Road oneway=yes
w10 JC highway=residential name=Osk_Road oneway=yes
w11 CL highway=residential name=Osk_Road oneway=yes
w12 LI highway=residential name=Osk_Road oneway=yes
w13 EA highway=tertiary
w14 DF highway=tertiary
w15 GJ highway=tertiary
w16 IH highway=tertiary
)";

}  // namespace loopwright::test
