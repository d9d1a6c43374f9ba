// Method: which of the table's phrases fits a junction.
// 1. Roundabouts and minis: phrasing_rings.cpp.
// 2. Lights and crossroads: which of those met since speaking, and the movement.
// 3. Other junctions by their layout (layout.cpp); roads to a side are counted from where one speaks.
// 4. Whatever another road there could be taken for is told apart by name, or by how sharp it is.
#include "say/phrasing.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::say {
namespace {

using road::Movement;

/// Roads are counted up to the third; beyond it a listener loses count (common practice, no source).
constexpr int most_counted = 3;

/// Sharper than all of these.
bool is_sharpest(const Junction& junction, const std::vector<Arm>& rivals) {
  return std::all_of(rivals.begin(), rivals.end(), [&](const Arm& arm) {
    return std::abs(arm.angle_deg) < std::abs(junction.angle_deg);
  });
}

}  // namespace

/// The instructor sits on the side one drives on: left in Britain.
std::string_view Phrasing::side_key(Movement movement) const {
  const bool left = movement == Movement::left;
  if (sides_ == Sides::left_right) return left ? "side.left" : "side.right";
  const bool drives_left = drive_.roads().info().region.side == Side::left;
  return left == drives_left ? "side.mine" : "side.yours";
}

std::string Phrasing::side(Movement movement) const {
  return std::string(words_.item(side_key(movement), 1));
}

std::string Phrasing::the_side(Movement movement) const {
  return std::string(words_.item(side_key(movement), 2));
}

std::string Phrasing::turn(Movement movement) const {
  if (movement == Movement::ahead) return std::string(words_.at("turn.ahead"));
  return words_.fill("turn.aside", {{"side", side(movement)}});
}

std::string Phrasing::at(std::string_view place, std::string_view turn) const {
  return words_.fill("say.at", {{"place", std::string(place)}, {"turn", std::string(turn)}});
}

std::string Phrasing::of(const Moment& moment, Approach& approach) const {
  switch (moment.kind) {
    case RowKind::leave:
      return leaving();
    case RowKind::roundabout:
    case RowKind::mini:
      return round_ring(moment);
    case RowKind::ring_leave:
      return off_ring(moment);
    case RowKind::lights:
      return at_lights(moment, approach);
    case RowKind::crossroads:
      return at_crossroads(moment, approach);
    case RowKind::junction:
      return at_junction(moment.junction, approach);
    case RowKind::turn_round:
      return std::string(words_.at("turn_round"));
    case RowKind::warn:
      return warning(moment);
    case RowKind::pull_up:
      break;
  }
  const bool left = drive_.roads().info().region.side == Side::left;
  return words_.fill("pull_up", {{"the_side", the_side(left ? Movement::left : Movement::right)}});
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
  const bool small = is_small_road(drive_.roads(), junction.exit) &&
                     !is_small_road(drive_.roads(), junction.entry) && leads_off(junction);
  const std::string plain = at(place, small ? turn_into_small(movement) : turn(movement));
  if (small) return fits(plain) ? plain : turn_into_small(movement);
  const std::vector<Arm> rivals = rivals_of(junction);
  if (rivals.empty() && !doubtful) return plain;
  const std::string name = unmistakable_name(junction, {});
  const std::string named = words_.fill("say.into", {{"phrase", plain}, {"street", name}});
  if (!name.empty() && fits(named)) return named;
  if (const std::string text = short_named(junction, name); !text.empty()) return text;
  const double angle = junction.angle_deg;
  const auto all = [&](auto differs) {
    return !rivals.empty() && std::all_of(rivals.begin(), rivals.end(), differs);
  };
  // Left of all others ahead, or right of them; sharper than all others on its side, or less.
  const bool leftmost = all([&](const Arm& a) { return angle < a.angle_deg; });
  const bool rightmost = all([&](const Arm& a) { return angle > a.angle_deg; });
  if (!leftmost && !rightmost) return plain;
  const Movement edge = leftmost ? Movement::left : Movement::right;
  if (movement == Movement::ahead)
    return at(place, words_.fill("turn.keep", {{"side", side(edge)}}));
  const bool sharp = movement == edge;
  const std::string text =
      at(place, words_.fill(sharp ? "turn.sharp" : "turn.bear", {{"side", side(movement)}}));
  if (!sharp || fits(text)) return text;
  return at(place, words_.fill("turn.sharp_short", {{"side", side(movement)}}));
}

/// A road that isn't small leads off here.
bool Phrasing::leads_off(const Junction& junction) const {
  return std::any_of(junction.others.begin(), junction.others.end(), [&](const Arm& arm) {
    return arm.seen != Seen::not_counted && !is_service(drive_.roads(), arm.leaving);
  });
}

std::string Phrasing::turn_into_small(Movement movement) const {
  if (movement == Movement::ahead) return std::string(words_.at("small.ahead"));
  return words_.fill("small.turn", {{"side", side(movement)}});
}

/// Without the place, when all doesn't fit: the name says where.
std::string Phrasing::short_named(const Junction& junction, const std::string& name) const {
  constexpr double plain_side_deg = 5;
  if (name.empty() || std::abs(junction.angle_deg) <= plain_side_deg) return {};
  const Movement to = junction.angle_deg < 0 ? Movement::left : Movement::right;
  const bool ahead = movement_of(junction.angle_deg) == Movement::ahead;
  const std::string text =
      words_.fill(ahead ? "keep.named" : "road.named", {{"side", side(to)}, {"street", name}});
  return fits(text) ? text : std::string();
}

std::string Phrasing::at_junction(const Junction& junction, Approach& approach) const {
  const Layout layout = layout_of(drive_.roads(), junction);
  const std::string to = side(layout.side);
  switch (layout.shape) {
    case Shape::turns_off:
    case Shape::at_shut:
      return nth_road(junction, layout, approach);
    case Shape::slip_road:
      return slip_road(junction, layout, approach);
    case Shape::small_ahead:
      return at(words_.at("place.junction"), turn_into_small(Movement::ahead));
    case Shape::small_road:
      return small_road(junction, layout, approach);
    case Shape::divides:
      if (layout.side == Movement::ahead) return std::string(words_.at("fork.middle"));
      return words_.fill("fork", {{"side", to}});
    case Shape::joins:
      return at(words_.at("place.end"), words_.fill("turn.bear", {{"side", to}}));
    case Shape::bends:
      return words_.fill("bend.road", {{"the_side", the_side(layout.side)}});
    case Shape::main_bends:
      return words_.fill("bend.main", {{"the_side", the_side(layout.side)}});
    case Shape::ends:
      return told_apart(junction, std::string(words_.at("place.end")), false);
    case Shape::leaves_bend:
      return told_apart(junction, std::string(words_.at("place.bend")), false);
    case Shape::meets_main:
      return told_apart(junction, std::string(words_.at("place.main")), false);
    case Shape::goes_ahead:
      break;
  }
  return told_apart(junction, std::string(words_.at("place.junction")), false);
}

std::string Phrasing::slip_road(const Junction& junction, const Layout& layout,
                                Approach& approach) const {
  const Counted met = approach.slip_roads(layout.side);
  const std::string to = the_side(layout.side);
  auto rivals = roads_beside(junction, layout);
  std::erase_if(rivals, [&](const Arm& arm) { return !is_link(drive_.roads(), arm.leaving); });
  if (!rivals.empty())
    return words_.fill(is_sharpest(junction, rivals) ? "slip.sharp" : "slip.gentle",
                       {{"nth", words_.nth(met.before + 1)}, {"the_side", to}});
  if (met.before == 0) return words_.fill("slip.first", {{"the_side", to}});
  return words_.fill("slip.nth", {{"the_side", to}, {"nth", words_.nth(met.before + 1)}});
}

std::string Phrasing::small_road(const Junction& junction, const Layout& layout,
                                 Approach& approach) const {
  Counted met = approach.small_roads(layout.side);
  const std::string name = unmistakable_name(junction, met.arms);
  auto rivals = roads_beside(junction, layout);
  std::erase_if(rivals,
                [&](const Arm& arm) { return !is_small_road(drive_.roads(), arm.leaving); });
  const bool another = !rivals.empty();
  if ((met.doubtful || another || met.before >= most_counted) && !name.empty()) {
    const std::string text =
        words_.fill("road.named", {{"side", side(layout.side)}, {"street", name}});
    if (fits(text)) return text;
  }
  if (met.doubtful) {
    const Movement movement = movement_of(junction.angle_deg);
    const std::optional<int> kept = approach.speak_after_doubtful();
    // What leads off nearly along the way could be counted, but nobody turns into it.
    const bool turned = met.before == 0 && met.alongside && !another && movement != Movement::ahead;
    if (!kept && turned) return turn_into_small(movement);
    met.before = kept.value_or(met.before);
  }
  const std::string key =
      another ? (is_sharpest(junction, rivals) ? "small.sharp" : "small.gentle") : "small.nth";
  return words_.fill(key,
                     {{"nth", words_.nth(met.before + 1)}, {"the_side", the_side(layout.side)}});
}

std::string Phrasing::nth_road(const Junction& junction, const Layout& layout,
                               Approach& approach) const {
  Counted met = approach.side_roads(layout.side);
  const std::string to = side(layout.side), on = the_side(layout.side);
  const std::string name = unmistakable_name(junction, met.arms);
  const auto named = [&](std::string_view key) {
    if (name.empty()) return std::string();
    const std::string text = words_.fill(
        key,
        {{"nth", words_.nth(met.before + 1)}, {"side", to}, {"the_side", on}, {"street", name}});
    return fits(text) ? text : std::string();
  };
  if (met.before >= most_counted) {
    if (const std::string text = named("road.named"); !text.empty()) return text;
    met.before = approach.speak_after_all_but(most_counted - 1);
  }
  const std::vector<Arm> rivals = roads_beside(junction, layout);
  if (met.doubtful || !rivals.empty())
    for (const std::string_view key : {"road.nth_named", "road.named"})
      if (const std::string text = named(key); !text.empty()) return text;
  if (met.doubtful) met.before = approach.speak_after_doubtful().value_or(met.before);
  const std::string key =
      rivals.empty() ? "road.nth" : (is_sharpest(junction, rivals) ? "road.sharp" : "road.gentle");
  const auto filled = [&](const std::string& row) {
    return words_.fill(row, {{"nth", words_.nth(met.before + 1)}, {"side", to}, {"the_side", on}});
  };
  const std::string text = filled(key);
  return fits(text) ? text : filled(key + "_short");
}

}  // namespace loopwright::say
