// Method: the words for roundabouts and minis.
// 1. The movement and the exit's number, as the signs count them; the number alone where the way bends
//    so that the movement would mislead.
// 2. Where an eye counts otherwise than the signs (exits.cpp), the name of the road instead; without
//    one what the eye counts, and the row is marked.
#include <algorithm>

#include "say/phrasing.hpp"

namespace loopwright::say {

using road::Movement;

std::string Phrasing::round_ring(const Moment& moment) const {
  const bool mini = moment.kind == RowKind::mini;
  const wish::Pass& pass = *moment.pass;
  const Movement movement = pass.movement;
  const std::string place(words_.at(mini ? "place.mini" : "place.roundabout"));
  const ExitSeen seen = exit_seen(drive_, moment);
  if (seen.count != pass.exit) return off_unlike_signs(moment, seen);
  const bool numbered = words_.has("nth." + std::to_string(pass.exit));
  // The first exit of a bent approach may lie to the far side: the number says it better.
  const bool drives_left = drive_.roads().info().region.side == Side::left;
  const bool near = movement == (drives_left ? Movement::left : Movement::right);
  const bool far = movement == (drives_left ? Movement::right : Movement::left);
  if (numbered && ((far && pass.exit == 1) || (near && pass.exit > 2)))
    return words_.fill("say.take_exit", {{"place", place}, {"nth", words_.nth(pass.exit)}});
  const std::string phrase = movement == Movement::round
                                 ? std::string(words_.at(mini ? "round.mini" : "round.roundabout"))
                                 : at(place, turn(movement));
  if (!numbered) return phrase;
  return words_.fill("say.exit", {{"phrase", phrase}, {"nth", words_.nth(pass.exit)}});
}

/// Where the signs count exits otherwise than the eye does, the name of the road tells which it is. When
/// it has none, or a road passed on the ring has the same, what the eye counts: the row is marked so.
std::string Phrasing::off_unlike_signs(const Moment& moment, const ExitSeen& seen) const {
  const bool mini = moment.kind == RowKind::mini;
  const std::string name = drive_.street(drive_.at(moment.exit));
  const bool passed = std::any_of(seen.passed.begin(), seen.passed.end(),
                                  [&](StretchId s) { return drive_.street(s) == name; });
  if (!name.empty() && !passed) {
    const std::string text = words_.fill(mini ? "mini.into" : "ring.into", {{"street", name}});
    if (fits(text)) return text;
  }
  const std::string place(words_.at(mini ? "place.mini" : "place.roundabout"));
  if (seen.small && mini) {
    const Junction there =
        junction_between(drive_.roads(), drive_.at(moment.entry), drive_.at(moment.exit));
    const std::string text = at(place, turn_into_small(movement_of(there.angle_deg)));
    return fits(text) ? text : std::string(words_.at("mini.small"));
  }
  const std::string nth = words_.nth(seen.count);
  if (seen.small) return words_.fill("ring.small", {{"nth", nth}});
  return words_.fill("say.take_exit", {{"place", place}, {"nth", nth}});
}

std::string Phrasing::off_ring(const Moment& moment) const {
  int nth = 1;
  for (std::size_t joint = moment.exit - 1; joint > 0 && drive_.on_ring(joint - 1); --joint) {
    const Junction passed =
        junction_between(drive_.roads(), drive_.at(joint - 1), drive_.at(joint));
    nth += static_cast<int>(std::count_if(passed.others.begin(), passed.others.end(),
                                          [](const Arm& a) { return a.seen == Seen::road; }));
  }
  return words_.fill("ring.leave", {{"nth", words_.nth(nth)}});
}

}  // namespace loopwright::say
