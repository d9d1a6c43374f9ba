// Runs that a way's own tags tell. Service roads and rings belong to none; only a bus lane or a slip
// road lies on a link.
#include <algorithm>

#include "county/truth_parts.hpp"

namespace loopwright::county {
namespace {

using road::bit;
using road::Kind;
constexpr double least_gradient = 8;  // src/rules/kinds.txt, downhill
constexpr double partner_m = 50;      // the other half of a dual carriageway: MAP-TAGS 1.1

Course course_of(const Road& road) {
  return road.two_way() ? Course::both : road.along ? Course::along : Course::against;
}

void tell_width(const Road& road, Rows& rows) {
  const Answer single = is_single_track(road), narrow = is_narrow(road);
  const Kind kind = single == Answer::yes ? Kind::single_track : Kind::narrow_road;
  if (narrow == Answer::yes && single != Answer::maybe)
    rows.must_along(kind, road, course_of(road), road.length);
  else if (narrow != Answer::no)
    rows.may_along(bit(Kind::narrow_road) | bit(Kind::single_track), road, Course::both);
  if (!road.two_way()) return;
  const Room room = room_of(road);
  if (room.parked && room.usable && *room.usable < 4.8 && rank_of(road) >= 4)
    rows.must_along(Kind::meeting_traffic, road, Course::both, road.length);
  else if (rank_of(road) >= 2)
    rows.may_along(bit(Kind::meeting_traffic), road, Course::both);
}

void tell_twenty(const Road& road, Rows& rows) {
  const Tags& tags = road.line->tags;
  const std::string& type =
      value(tags, value(tags, "maxspeed:type").empty() ? "source:maxspeed" : "maxspeed:type");
  const bool zone = type.ends_with(":zone20") || says(tags, "zone:maxspeed", {"GB:20"});
  if (zone) return rows.must_along(Kind::twenty_zone, road, course_of(road), road.length);
  for (const bool along : {true, false}) {
    if (!(along ? road.along : road.against) || limit_mph(road, along) != 20) continue;
    const Course course = along ? Course::along : Course::against;
    if (type.empty() || type == "sign")
      rows.must_along(Kind::twenty_limit, road, course, road.length);
    else
      rows.may_along(bit(Kind::twenty_limit) | bit(Kind::twenty_zone), road, course);
  }
}

/// Another one-way road of the same name or number beside it that leads back.
bool has_partner(const Net& net, const Road& road) {
  const std::vector<Spot>& line = road.line->points;
  const Spot middle = along(line, road.length / 2);
  return std::ranges::any_of(net.roads(), [&](const Road& other) {
    const auto same = [&](const char* key) {
      return !road.tag(key).empty() && road.tag(key) == other.tag(key);
    };
    if (&other == &road || other.two_way() || other.ring || !(same("name") || same("ref")))
      return false;
    return nearest(other.line->points, middle).off_m <= partner_m;
  });
}

void tell_one_way(const Net& net, const Road& road, Rows& rows) {
  const Course course = course_of(road);
  const bool said = says(road.line->tags, "dual_carriageway", {"yes"}) ||
                    road.tag("maxspeed:type") == "GB:nsl_dual";
  const bool denied = says(road.line->tags, "dual_carriageway", {"no"});
  const std::uint64_t either = bit(Kind::dual_carriageway) | bit(Kind::one_way);
  if (road.two_way()) {
    if (said) rows.may_along(bit(Kind::dual_carriageway), road, course);
  } else if (said) {
    rows.must_along(Kind::dual_carriageway, road, course, road.length);
  } else if (!denied && has_partner(net, road)) {
    rows.may_along(either, road, course);
  } else if (road.length >= 60 && road.tag("oneway:conditional").empty()) {
    rows.must_along(Kind::one_way, road, course, road.length);
  } else {
    rows.may_along(bit(Kind::one_way), road, course);
  }
}

void tell_gradient(const Road& road, Rows& rows) {
  const double up = incline_of(road);
  if (up >= least_gradient && road.against)
    rows.must_along(Kind::downhill, road, Course::against, road.length);
  else if (up <= -least_gradient && road.along)
    rows.must_along(Kind::downhill, road, Course::along, road.length);
}

}  // namespace

void tell_streets(const Net& net, Rows& rows) {
  for (const Road& road : net.roads()) {
    const bool motorway = road.road_class == "motorway" && !road.link;
    if (motorway) rows.must_along(Kind::motorway, road, course_of(road), road.length);
    if (!road.learner || road.service() || road.ring || road.link || motorway) continue;
    tell_width(road, rows);
    tell_twenty(road, rows);
    tell_one_way(net, road, rows);
    tell_gradient(road, rows);
  }
}

}  // namespace loopwright::county
