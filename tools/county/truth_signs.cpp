// What stands at a point of a road, by its tags: MAP-TAGS 1.3, 1.4 and 1.8. What lies on driveways and
// aisles alone has no force in law and is left out.
#include <algorithm>
#include <cmath>

#include "county/truth_parts.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

using road::bit;
using road::Kind;
constexpr double cluster_m = 40;  // lights of one junction
constexpr double asl_m = 60;      // src/rules/kinds.txt

bool any_word(const std::string& text, std::initializer_list<std::string_view> words) {
  return std::ranges::any_of(split(text, ';'), [&](std::string_view word) {
    return std::ranges::find(words, word) != words.end();
  });
}

/// How far from a point something is looked for among the points of roads.
bool near_any(const std::vector<Spot>& places, Spot from, double metres) {
  return std::ranges::any_of(places, [&](Spot p) { return apart(p, from) <= metres; });
}

class Signs {
 public:
  Signs(const Net& net, Rows& rows) : net_(net), rows_(rows) { gather(); }
  void tell() {
    for (const Spot p : net_.tagged("highway")) tell_highway(p);
    for (const Spot p : net_.tagged("railway")) tell_railway(p);
    for (const Spot p : net_.tagged("traffic_calming")) tell_calming(p);
    for (const Spot p : net_.tagged("priority")) tell_narrowing(p);
    for (const Spot p : net_.tagged("cycleway")) tell_advanced_line(p);
    for (const Spot p : net_.tagged("ford")) tell_plain(p, Kind::ford);
    for (const char* key : {"road_marking", "junction", "box_junction"})
      for (const Spot p : net_.tagged(key)) tell_box(p, key);
    for (const Road& road : net_.roads()) tell_way(road);
  }

 private:
  void gather() {
    for (const Spot p : net_.tagged("highway")) {
      if (!says(net_.tags(p), "highway", {"traffic_signals"})) continue;
      lights_.push_back(p);
      const bool on_feet = !value(net_.tags(p), "crossing").empty();
      if (!on_feet) junction_lights_.push_back(p);
    }
    for (const Spot p : net_.points()) {
      const auto arms = net_.arms(p);
      const auto roads =
          std::ranges::count_if(arms, [&](const Arm& a) { return !net_.road(a).service(); });
      if (roads >= 3) junctions_.push_back(p);
    }
    for (const Road& road : net_.roads())
      if (road.ring)
        rings_.insert(rings_.end(), road.line->points.begin(), road.line->points.end());
  }
  /// A lesson drives here on a road, not only on a yard.
  [[nodiscard]] bool matters(Spot p) const {
    return std::ranges::any_of(net_.arms(p), [&](const Arm& arm) {
      return net_.road(arm).learner && !net_.road(arm).service();
    });
  }
  void tell_plain(Spot p, Kind kind, double within = 25) {
    if (matters(p))
      rows_.must_at(kind, p, within);
    else
      rows_.may_at(bit(kind), p, within);
  }
  void tell_highway(Spot p);
  void tell_crossing(Spot p);
  void tell_railway(Spot p);
  void tell_calming(Spot p);
  void tell_narrowing(Spot p);
  void tell_advanced_line(Spot p);
  void tell_box(Spot p, const char* key);
  void tell_way(const Road& road);
  [[nodiscard]] bool wider_before(const Road& road) const;

  const Net& net_;
  Rows& rows_;
  std::vector<Spot> lights_, junction_lights_, junctions_, rings_;
};

void Signs::tell_highway(Spot p) {
  const Tags& tags = net_.tags(p);
  if (says(tags, "highway", {"crossing"})) return tell_crossing(p);
  if (says(tags, "highway", {"stop"})) {
    if (matters(p) && near_any(junctions_, p, 30))
      rows_.must_at(Kind::stop_line, p, 35);
    else
      rows_.may_at(bit(Kind::stop_line), p, 35);
  }
  if (!says(tags, "highway", {"traffic_signals"})) return;
  // A light with the tags of a crossing is one for feet, unless a junction is there.
  const bool certain = matters(p) && value(tags, "crossing").empty() && !near_any(rings_, p, 45) &&
                       near_any(junctions_, p, 25);
  if (certain)
    rows_.must_at(Kind::signals, p, 45);
  else
    rows_.may_at(bit(Kind::signals) | bit(Kind::signal_crossing), p, 60);
}

void Signs::tell_crossing(Spot p) {
  const Tags& tags = net_.tags(p);
  const bool signals = says(tags, "crossing", {"traffic_signals"}) ||
                       says(tags, "crossing:signals", {"yes"}) ||
                       says(tags, "crossing_ref", {"pelican", "puffin", "toucan", "pegasus"});
  const bool zebra = says(tags, "crossing", {"zebra"}) || says(tags, "crossing_ref", {"zebra"}) ||
                     value(tags, "crossing:markings").starts_with("zebra");
  if (signals && matters(p) && !near_any(junction_lights_, p, 60))
    rows_.must_at(Kind::signal_crossing, p, 25);
  else if (signals)
    rows_.may_at(bit(Kind::signal_crossing) | bit(Kind::signals), p, 60);
  else if (zebra)
    tell_plain(p, Kind::zebra);
  else if (says(tags, "crossing", {"marked", "uncontrolled"}))
    rows_.may_at(bit(Kind::zebra), p, 25);
}

void Signs::tell_railway(Spot p) {
  const Tags& tags = net_.tags(p);
  if (says(tags, "railway", {"tram_level_crossing"})) return tell_plain(p, Kind::tram_crossing);
  if (!says(tags, "railway", {"level_crossing"})) return;
  const bool in_use = std::ranges::any_of(net_.county().lines, [&](const Line& line) {
    return line.kind == LineKind::rail && std::ranges::count(line.points, p) > 0 &&
           says(line.tags, "railway", {"rail", "light_rail", "narrow_gauge", "preserved"});
  });
  if (in_use) tell_plain(p, Kind::level_crossing, 30);
}

void Signs::tell_calming(Spot p) {
  const std::string& words = value(net_.tags(p), "traffic_calming");
  if (any_word(words, {"choker", "chicane"})) tell_narrowing(p);
  if (any_word(words, {"bump", "hump", "table", "cushion"}))
    tell_plain(p, Kind::calming, 30);
  else if (any_word(words, {"rumble_strip", "dip", "dynamic_bump", "yes", "mini_bumps"}))
    rows_.may_at(bit(Kind::calming), p, 30);
}

void Signs::tell_narrowing(Spot p) {
  const bool said = says(net_.tags(p), "priority", {"forward", "backward"}) ||
                    any_word(value(net_.tags(p), "traffic_calming"), {"choker", "chicane"});
  if (said && !near_any(lights_, p, cluster_m))
    tell_plain(p, Kind::pinch_point, 30);
  else
    rows_.may_at(bit(Kind::pinch_point), p, 30);
}

void Signs::tell_advanced_line(Spot p) {
  if (!says(net_.tags(p), "cycleway", {"asl"})) return;
  if (matters(p) && near_any(lights_, p, asl_m - 2))
    rows_.must_at(Kind::advanced_stop_line, p, asl_m);
  else
    rows_.may_at(bit(Kind::advanced_stop_line), p, asl_m);
}

void Signs::tell_box(Spot p, const char* key) {
  if (says(net_.tags(p), key, {"box_junction", "yellow_box", "yes"}))
    tell_plain(p, Kind::box_junction, 40);
}

/// A bridge of one lane in a lane of one lane is nothing to wait for.
bool Signs::wider_before(const Road& road) const {
  const auto wide = [&](Spot end) {
    return std::ranges::all_of(net_.arms(end), [&](const Arm& arm) {
      return &net_.road(arm) == &road || is_single_track(net_.road(arm)) == Answer::no;
    });
  };
  return wide(road.line->points.front()) && wide(road.line->points.back());
}

/// Narrowings that a way's tags tell: a priority, or a bridge of one lane.
void Signs::tell_way(const Road& road) {
  if (road.service() || !road.two_way()) return;
  const auto width = room_of(road).width;
  const bool one_lane = !road.tag("bridge").empty() && road.tag("bridge") != "no" &&
                        (road.tag("lanes") == "1" || (width && *width < 4));
  const bool priority = says(road.line->tags, "priority", {"forward", "backward"});
  const bool built = any_word(road.tag("traffic_calming"), {"choker", "chicane"});
  const Spot middle = along(road.line->points, road.length / 2);
  if (any_word(road.tag("traffic_calming"), {"hump", "bump", "table", "cushion", "yes"}))
    rows_.may_at(bit(Kind::calming), middle, road.length / 2 + 30);
  if (!one_lane && !priority && !built) return;
  const bool lit = std::ranges::any_of(road.line->points,
                                       [&](Spot p) { return near_any(lights_, p, cluster_m); });
  if (road.learner && !lit && (priority || built || wider_before(road)))
    rows_.must_at(Kind::pinch_point, middle, road.length / 2 + 30);
  else
    rows_.may_at(bit(Kind::pinch_point), middle, road.length / 2 + 30);
}

}  // namespace

void tell_signs(const Net& net, Rows& rows) {
  Signs(net, rows).tell();
}

}  // namespace loopwright::county
