// Two drawn towns that the proof's tests drive through.
#pragma once

#include <algorithm>
#include <string>

#include "loopwright/proof/proof.hpp"
#include "proof/true_answer.hpp"

namespace loopwright::test {

/// A lesson of five minutes, ABrstuLWZAB: out of Lantern Row to the right, all but round the
/// roundabout, over the railway, and home by a lane at walking pace, which is what fills the time.
inline constexpr const char* lesson_drawing = R"town(
              M



A             B



Z      k      r
W      L     u s           E
              t
       l


              S
w1 AB     highway=residential name=Lantern_Row maxspeed=20_mph
w2 MBr    highway=primary name=Mill_Road maxspeed=30_mph
w3 rstur  highway=primary junction=roundabout maxspeed=30_mph
w4 tS     highway=primary name=Mill_Road maxspeed=30_mph
w5 sE     highway=tertiary name=Quarry_Road maxspeed=30_mph
w6 uL     highway=tertiary name=Ferry_Lane maxspeed=30_mph
w7 WZA    highway=unclassified name=Slow_Lane maxspeed=2_mph width=4.4
w8 LW     highway=tertiary name=Ferry_Lane maxspeed=30_mph lanes=3 lanes:forward=2 lanes:backward=1 bus:lanes:forward:conditional="designated|yes @ (Mo-Sa 16:00-19:00)"
w9 kLl    railway=rail
nL        railway=level_crossing
nZ        highway=crossing crossing=uncontrolled crossing:markings=zebra
)town";

/// Streets with every kind of ban. ADEIHDA and others are drives that keep to them.
///   no right turn D-E-I; no left turn A-B-E-F by way of BE; only straight on H-I-J; no left turn
///   C-F-G by the hour; only right J-I-E after F-J; a bollard at K; P to H against the one-way;
///   U private; V for destination only; R a dead end.
inline constexpr const char* banned_drawing = R"town(
A     B   V   C     Q


D R   E       F G   K


H     I   U   J

   P
   O
w2  AD  highway=residential name=West_Street
w3  DH  highway=residential name=West_Street
w4  AB  highway=residential name=North_Street
w5  BC  highway=residential name=North_Street
w6  DE  highway=residential name=Middle_Street
w7  EF  highway=residential name=Middle_Street
w8  BE  highway=residential name=Well_Street
w9  EI  highway=residential name=Well_Street
w10 CF  highway=residential name=East_Street
w11 FJ  highway=residential name=East_Street
w12 HI  highway=residential name=South_Street
w13 IJ  highway=residential name=South_Street
w14 DR  highway=residential name=Stub_Close
w15 FG  highway=residential name=Post_Street
w16 GKQ highway=residential name=Post_Street
w17 QC  highway=residential name=Quay_Street
w18 HPI highway=residential name=Round_Street oneway=yes
w19 PO  highway=residential name=Round_Close
w20 IU  highway=residential name=Hall_Drive access=private
w21 UJ  highway=residential name=Hall_Drive
w22 BV  highway=residential name=Guest_Street access=destination
w23 VC  highway=residential name=Guest_Street
nK      barrier=bollard
r1 no_right_turn       from=w6 via=E to=w9
r2 no_left_turn        from=w4 via=w8 to=w7
r3 only_straight_on    from=w12 via=I to=w13
r4 -                   from=w10 via=F to=w15 restriction:conditional="no_left_turn @ (Mo-Fr 07:00-09:00)"
r5 only_right_turn     from=w11 via=w13 to=w9
)town";

inline BuiltTown lesson_town() {
  return built_town(lesson_drawing);
}
inline BuiltTown banned_town() {
  return built_town(banned_drawing);
}

/// A drive of the instructor's own, so that no minutes need be filled.
inline wish::Answer own_drive(const BuiltTown& town, std::string_view letters) {
  wish::Wish wish;
  wish.through = {town.roads().nodes[town.node(letters[1]).index()].at};
  return true_answer(town, letters, wish);
}

/// The first false claim of an answer; empty when all hold.
inline std::string falsehood(const BuiltTown& town, const wish::Answer& answer) {
  const road::Roads roads = town.roads();
  return proof::prove(roads, answer, setting_of(roads)).false_claim.value_or("");
}

/// The lesson with one lie in it: what the proof makes of it.
template <class Lie>
std::string lesson_with(Lie&& lie, wish::Wish wish = {}) {
  const BuiltTown town = lesson_town();
  wish::Answer answer = true_answer(town, "ABrstuLWZAB", std::move(wish));
  lie(answer);
  return falsehood(town, answer);
}

/// Names the first pass of a kind as what the first want is practised by. Rules: there is one.
inline void practise(wish::Loop& loop, road::Kind kind) {
  const auto pass = std::find_if(loop.passes.begin(), loop.passes.end(),
                                 [&](const wish::Pass& p) { return p.kind == kind; });
  loop.met.at(0).practised = {static_cast<std::size_t>(pass - loop.passes.begin())};
}

/// The same, for lies about the only loop.
template <class Lie>
std::string loop_with(Lie&& lie, wish::Wish wish = {}) {
  return lesson_with([&](wish::Answer& answer) { lie(answer.loops.front()); }, std::move(wish));
}

}  // namespace loopwright::test
