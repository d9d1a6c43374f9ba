// Method: which of the table's phrases fits a junction.
// 1. Roundabouts and minis: the movement and the exit's number.
// 2. Lights and crossroads: which of those met since speaking, and the movement.
// 3. Other junctions, by where the nearest other road ahead lies:
//    - it lies plainly ahead, we turn off: the nth road on that side, counted since speaking;
//    - it lies as near ahead as ours: the road divides, keep to a side;
//    - none lies ahead: the road ends, or the main road bends and we go with it.
// 4. Whatever another road there could be taken for is told apart by name, or by how sharp it is.
#include "say/phrasing.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::say {
namespace {

using road::Movement;

/// Another road is plainly ahead when ours bends off at least this much more; within it the road
/// divides. Our judgement, the same as for what goes without saying.
constexpr double plain_by_deg = 30;
constexpr double ahead_deg = 45;
/// Both ways of a road that divides lie within this of ahead; wider, and the road ends.
constexpr double divides_deg = 60;
/// Joining a road less sharply than this is following it.
constexpr double bears_deg = 20;
/// Roads are counted up to the third; beyond it a listener loses count (TRADE.md 1.3).
constexpr int most_counted = 3;

const Arm* nearest_ahead(const Junction& junction, Seen seen) {
  const Arm* nearest = nullptr;
  for (const Arm& arm : junction.others)
    if (arm.seen == seen &&
        (nearest == nullptr || std::abs(arm.angle_deg) < std::abs(nearest->angle_deg)))
      nearest = &arm;
  return nearest;
}

Movement side_of(double angle_deg) {
  return angle_deg < 0 ? Movement::left : Movement::right;
}

/// True when every road that leads on lies to one side of the way taken.
bool at_the_edge(const Junction& junction, Movement side) {
  return std::all_of(junction.others.begin(), junction.others.end(), [&](const Arm& arm) {
    return arm.seen != Seen::road || std::abs(arm.angle_deg) > 2 * divides_deg ||
           (arm.angle_deg > junction.angle_deg) == (side == Movement::left);
  });
}

bool is_link(const road::Piece& piece) {
  using road::RoadClass;
  return piece.road_class >= RoadClass::motorway_link &&
         piece.road_class <= RoadClass::tertiary_link;
}

bool fits(const std::string& text) {
  return spoken_words(text) <= most_words;
}

}  // namespace

std::string Phrasing::side(Movement movement) const {
  return std::string(words_.at(movement == Movement::left ? "side.left" : "side.right"));
}

std::string Phrasing::at(std::string_view place, std::string_view turn) const {
  return words_.fill("say.at", {{"place", std::string(place)}, {"turn", std::string(turn)}});
}

std::string Phrasing::of(const Moment& moment, Approach& approach) const {
  switch (moment.kind) {
    case MomentKind::leave:
      return leaving();
    case MomentKind::roundabout:
    case MomentKind::mini:
      return round_ring(moment);
    case MomentKind::ring_leave:
      return off_ring(moment);
    case MomentKind::lights:
      return at_lights(moment, approach);
    case MomentKind::crossroads:
      return at_crossroads(moment, approach);
    case MomentKind::junction:
      return at_junction(moment.junction, approach);
    case MomentKind::turn_round:
      return std::string(words_.at("turn_round"));
    case MomentKind::warn:
      return warning(moment);
    case MomentKind::pull_up:
      break;
  }
  const bool left = drive_.roads().info().region.side == Side::left;
  return words_.fill("pull_up", {{"side", side(left ? Movement::left : Movement::right)}});
}

std::string Phrasing::leaving() const {
  const road::Roads& roads = drive_.roads();
  const std::string street = drive_.street(drive_.at(0));
  std::string towards;
  for (std::size_t joint = 0; joint + 1 < drive_.size() && towards.empty(); ++joint) {
    std::vector<StretchId> met{drive_.at(joint + 1)};
    for (const Arm& arm : junction_between(roads, drive_.at(joint), met[0]).others)
      if (arm.seen == Seen::road) met.push_back(arm.leaving);
    for (const StretchId arm : met)
      if (towards.empty() && drive_.street(arm) != street) towards = drive_.street(arm);
  }
  const double bearing = road::bearing_in_deg(roads, drive_.at(0));
  const std::string compass = "compass." + std::to_string(std::lround(bearing / 45) % 8);
  const std::string off = street.empty() ? "set_off" : "leave";
  if (!towards.empty()) {
    const std::string text =
        words_.fill(off + ".towards", {{"street", street}, {"towards", towards}});
    if (fits(text)) return text;
  }
  const std::string text = words_.fill(
      off + ".heading", {{"street", street}, {"compass", std::string(words_.at(compass))}});
  if (fits(text)) return text;
  return words_.fill("set_off.heading", {{"compass", std::string(words_.at(compass))}});
}

std::string Phrasing::round_ring(const Moment& moment) const {
  const bool mini = moment.kind == MomentKind::mini;
  const wish::Pass& pass = *moment.pass;
  const Movement movement = pass.movement;
  const std::string phrase = movement == Movement::round
                                 ? std::string(words_.at(mini ? "round.mini" : "round.roundabout"))
                                 : at(words_.at(mini ? "place.mini" : "place.roundabout"),
                                      words_.at("turn." + std::string(road::name(movement))));
  if (!words_.has("nth." + std::to_string(pass.exit))) return phrase;
  return words_.fill("say.exit", {{"phrase", phrase}, {"nth", words_.nth(pass.exit)}});
}

std::string Phrasing::off_ring(const Moment& moment) const {
  int nth = 1;
  for (std::size_t joint = moment.entry; joint > 0 && drive_.on_ring(joint - 1); --joint) {
    const Junction passed =
        junction_between(drive_.roads(), drive_.at(joint - 1), drive_.at(joint));
    nth += static_cast<int>(std::count_if(passed.others.begin(), passed.others.end(),
                                          [](const Arm& a) { return a.seen == Seen::road; }));
  }
  return words_.fill("ring.leave", {{"nth", words_.nth(nth)}});
}

std::string Phrasing::warning(const Moment& moment) const {
  return std::string(words_.at("ahead." + std::string(road::name(moment.pass->kind))));
}

std::string Phrasing::at_lights(const Moment& moment, Approach& approach) const {
  const Counted met = approach.lights();
  std::string place(words_.at("place.lights"));
  if (met.before > 0)
    place = words_.fill("place.nth_lights", {{"nth", words_.nth(met.before + 1)}});
  else if (met.doubtful)
    place = words_.at("place.after_crossing");
  return told_apart(moment.junction, place, met.doubtful && met.before > 0);
}

std::string Phrasing::at_crossroads(const Moment& moment, Approach& approach) const {
  const Counted met = approach.crossroads();
  std::string place(words_.at("place.crossroads"));
  if (met.before > 0)
    place = words_.fill("place.nth_crossroads", {{"nth", words_.nth(met.before + 1)}});
  return told_apart(moment.junction, place, met.doubtful);
}

/// The name of the road taken, when no other road in sight has it.
std::string Phrasing::unmistakable_name(const Junction& junction,
                                        const std::vector<StretchId>& met) const {
  const std::string name = drive_.street(junction.exit);
  const auto has_it = [&](StretchId s) { return drive_.street(s) == name; };
  if (has_it(junction.entry) || std::any_of(met.begin(), met.end(), has_it)) return {};
  for (const Arm& arm : junction.others)
    if (has_it(arm.leaving)) return {};
  return name;
}

std::string Phrasing::told_apart(const Junction& junction, const std::string& place,
                                 bool doubtful) const {
  const Movement movement = movement_of(junction.angle_deg);
  const std::string plain = at(place, words_.at("turn." + std::string(road::name(movement))));
  const std::vector<Arm> rivals = rivals_of(junction);
  if (rivals.empty() && !doubtful) return plain;
  const std::string name = unmistakable_name(junction, {});
  const std::string named = words_.fill("say.into", {{"phrase", plain}, {"street", name}});
  if (!name.empty() && fits(named)) return named;
  const double angle = junction.angle_deg;
  const auto all = [&](auto differs) {
    return !rivals.empty() && std::all_of(rivals.begin(), rivals.end(), differs);
  };
  // Left of all others ahead, or right of them; sharper than all others on its side, or less.
  const bool leftmost = all([&](const Arm& a) { return angle < a.angle_deg; });
  const bool rightmost = all([&](const Arm& a) { return angle > a.angle_deg; });
  if (!leftmost && !rightmost) return plain;
  const Movement edge = leftmost ? Movement::left : Movement::right;
  const std::string_view how = movement == edge ? "turn.sharp" : "turn.bear";
  const Movement to = movement == Movement::ahead ? edge : movement;
  return at(place, words_.fill(how, {{"side", side(to)}}));
}

std::string Phrasing::at_junction(const Junction& junction, Approach& approach) const {
  const double angle = junction.angle_deg;
  const Movement movement = movement_of(angle);
  const Arm* other = nearest_ahead(junction, Seen::road);
  const Arm* shut = nearest_ahead(junction, Seen::no_entry);
  const std::string end(words_.at("place.end"));
  const std::string here(words_.at("place.junction"));
  if (other != nullptr && std::abs(other->angle_deg) <= ahead_deg &&
      std::abs(angle) >= std::abs(other->angle_deg) + plain_by_deg) {
    return side_road(junction, *other, approach);
  }
  const bool divides = other != nullptr && std::abs(other->angle_deg) <= divides_deg &&
                       std::abs(angle) <= divides_deg &&
                       std::abs(other->angle_deg) < std::abs(angle) + plain_by_deg;
  for (const Movement edge : {Movement::left, Movement::right})
    if (divides && at_the_edge(junction, edge)) return words_.fill("fork", {{"side", side(edge)}});
  if (movement == Movement::ahead) {
    const bool joins = gives_way(junction) && std::abs(angle) > bears_deg;
    if (!joins) return told_apart(junction, here, false);
    return at(end, words_.fill("turn.bear", {{"side", side(side_of(angle))}}));
  }
  if (other == nullptr && shut == nullptr)
    return words_.fill("bend.road", {{"side", side(movement)}});
  if (other != nullptr && follows_main_road(drive_.roads(), junction))
    return words_.fill("bend.main", {{"side", side(movement)}});
  const bool goes_on_shut = shut != nullptr && std::abs(shut->angle_deg) <= ahead_deg;
  return told_apart(junction, goes_on_shut ? here : end, false);
}

std::string Phrasing::side_road(const Junction& junction, const Arm& ahead,
                                Approach& approach) const {
  const Movement to = side_of(junction.angle_deg - ahead.angle_deg);
  if (follows_main_road(drive_.roads(), junction) && std::abs(junction.angle_deg) > ahead_deg)
    return words_.fill("bend.main", {{"side", side(to)}});
  const road::Roads& roads = drive_.roads();
  if (!is_link(roads.piece(junction.exit)) || is_link(roads.piece(junction.entry)))
    return nth_road(junction, to, approach);
  Counted met = approach.side_roads(to);
  met.before = static_cast<int>(std::count_if(
      met.arms.begin(), met.arms.end(), [&](StretchId s) { return is_link(roads.piece(s)); }));
  if (met.before == 0) return words_.fill("slip.first", {{"side", side(to)}});
  return words_.fill("slip.nth", {{"side", side(to)}, {"nth", words_.nth(met.before + 1)}});
}

std::string Phrasing::nth_road(const Junction& junction, Movement to, Approach& approach) const {
  Counted met = approach.side_roads(to);
  const std::string name = unmistakable_name(junction, met.arms);
  const bool uncountable = met.before >= most_counted;
  if (uncountable && !name.empty()) {
    const std::string named = words_.fill("road.named", {{"side", side(to)}, {"street", name}});
    if (fits(named)) return named;
  }
  if (uncountable) {
    approach.speak_after_all_but(most_counted - 1);
    met.before = most_counted - 1;
  }
  const std::vector<Arm> rivals = rivals_of(junction);
  const std::string nth = words_.nth(met.before + 1);
  if ((met.doubtful || !rivals.empty()) && !name.empty()) {
    for (const std::string_view key : {"road.nth_named", "road.named"}) {
      const std::string named =
          words_.fill(key, {{"nth", nth}, {"side", side(to)}, {"street", name}});
      if (fits(named)) return named;
    }
  }
  std::string_view key = "road.nth";
  if (!rivals.empty()) {
    const bool sharpest = std::all_of(rivals.begin(), rivals.end(), [&](const Arm& arm) {
      return std::abs(arm.angle_deg) < std::abs(junction.angle_deg);
    });
    key = sharpest ? "road.sharp" : "road.gentle";
  }
  return words_.fill(key, {{"nth", nth}, {"side", side(to)}});
}

}  // namespace loopwright::say
