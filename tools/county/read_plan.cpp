// 1. Each line is cut into words; the first names the command.
// 2. A command takes its words in order and leaves plain data; sets and rings must stand before
//    they are used, so that a name that is typed wrong is found at its line.
#include <algorithm>
#include <set>

#include "county/joining.hpp"
#include "county/plan.hpp"
#include "county/plan_words.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

constexpr double river_m = 5;  // a stream under it; ours, for the wiki says "can be jumped over"

/// Takes a tag out of some tags; empty when it isn't there.
std::string take(Tags& tags, const std::string& key) {
  const auto found = tags.find(key);
  if (found == tags.end()) return {};
  std::string value = std::move(found->second);
  tags.erase(found);
  return value;
}

/// These tags, and of the others those whose keys they lack.
Tags joined(Tags first, const Tags& others) {
  first.insert(others.begin(), others.end());
  return first;
}

class Reader {
 public:
  Plan read(std::string_view text, const std::string& file);

 private:
  void command(PlanWords& words);
  bool line_command(const std::string& name, PlanWords& words);
  bool late_command(const std::string& name, PlanWords& words);
  bool growth_command(const std::string& name, PlanWords& words);
  void ring(PlanWords& words);
  void round(PlanWords& words);
  void road(PlanWords& words, bool dual);
  void rail(PlanWords& words);
  void tram(PlanWords& words);
  void water(PlanWords& words);
  void ban(PlanWords& words);
  void stop(PlanWords& words);
  void grow(Grow what, PlanWords& words);
  void trap(PlanWords& words);
  PlanTags tagged(PlanWords& words);
  static std::array<End, 2> ends(Tags& tags, const PlanWords& words);

  Plan plan_;
  TagSets sets_;
  std::set<std::string> rings_;
  int number_ = 0;
};

Plan Reader::read(std::string_view text, const std::string& file) {
  plan_.file = file;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    ++number_;
    PlanWords words(text.substr(at, end - at), file + " line " + std::to_string(number_), sets_);
    if (!words.empty()) command(words);
    at = end + 1;
  }
  return std::move(plan_);
}

void Reader::command(PlanWords& words) {
  const std::string name = words.word("a command");
  if (name == "origin") {
    plan_.origin_lat = words.number("the latitude");
    plan_.origin_lon = words.number("the longitude");
    if (std::abs(plan_.origin_lat) > 80 || std::abs(plan_.origin_lon) > 179)
      words.fail("the origin must lie between 80 south and 80 north, 179 west and 179 east");
  } else if (name == "set") {
    const std::string set = words.word("the name of the set");
    sets_[set] = words.tags();
  } else if (name == "hill") {
    const Spot summit = words.point();
    const double height = words.number("the height");
    plan_.hills.push_back(
        {.summit = summit, .height_m = height, .reach_m = words.size("the reach")});
  } else if (name == "trap") {
    trap(words);
  } else if (!line_command(name, words) && !late_command(name, words) &&
             !growth_command(name, words)) {
    words.fail("there is no command '" + name + "'; tools/county/plan.hpp lists them");
  }
  if (!words.empty()) words.fail("'" + words.word("a word") + "' is one word too many");
}

bool Reader::line_command(const std::string& name, PlanWords& words) {
  if (name == "ring") return ring(words), true;
  if (name == "road") return road(words, false), true;
  if (name == "dual") return road(words, true), true;
  if (name == "rail") return rail(words), true;
  if (name == "tram") return tram(words), true;
  if (name == "water") return water(words), true;
  if (name == "crossing") return plan_.crossings.push_back(tagged(words)), true;
  if (name == "round") return round(words), true;
  if (name == "area") {
    std::vector<Spot> corners = words.points(3);
    return plan_.areas.push_back({.corners = std::move(corners), .tags = words.tags()}), true;
  }
  if (name != "spot") return false;
  const Spot at = words.point();
  return plan_.lone.push_back({.at = at, .tags = words.tags()}), true;
}

bool Reader::late_command(const std::string& name, PlanWords& words) {
  if (name == "at") return plan_.late.emplace_back(PlanSign{tagged(words)}), true;
  if (name == "junction") return plan_.late.emplace_back(PlanControl{tagged(words)}), true;
  if (name == "houses") {
    PlanHouses houses{
        .number = number_, .street = words.word("the street"), .step_m = 0, .tags = {}};
    houses.step_m = words.size("the step");
    houses.tags = words.tags();
    return plan_.late.emplace_back(std::move(houses)), true;
  }
  if (name == "stop") return stop(words), true;
  if (name == "ban") return ban(words), true;
  if (name != "bus") return false;
  PlanBus bus{.number = number_, .ref = words.word("the route's number"), .streets = {}};
  while (!words.empty()) bus.streets.push_back(words.word("a street"));
  return plan_.buses.push_back(std::move(bus)), true;
}

bool Reader::growth_command(const std::string& name, PlanWords& words) {
  if (name == "quarter") return grow(Grow::quarter, words), true;
  if (name == "infill") return grow(Grow::infill, words), true;
  if (name == "town") return grow(Grow::town, words), true;
  if (name == "village") return grow(Grow::village, words), true;
  if (name == "lanes") return grow(Grow::lanes, words), true;
  return false;
}

PlanTags Reader::tagged(PlanWords& words) {
  const Spot at = words.point();
  return {.number = number_, .at = at, .tags = words.tags()};
}

std::array<End, 2> Reader::ends(Tags& tags, const PlanWords& words) {
  std::array<End, 2> out{End::meets, End::meets};
  for (const std::size_t side : {0U, 1U}) {
    const std::string mark = take(tags, side == 0 ? "first" : "last");
    if (mark.empty()) continue;
    const auto known = end_named(mark);
    if (!known)
      words.fail(
          "no road ends in '" + mark +
          "'; first= and last= take give_way, stop, signals, turning_circle, closed or edge");
    out[side] = *known;
  }
  return out;
}

void Reader::ring(PlanWords& words) {
  PlanRing ring{.number = number_, .name = words.word("the ring's name"), .centre = words.point()};
  ring.radius_m = words.size("the radius");
  ring.tags = words.tags();
  ring.tags.insert({"junction", "roundabout"});
  ring.signals = take(ring.tags, "signals") == "yes";
  if (!rings_.insert(ring.name).second) words.fail("there is a ring '" + ring.name + "' already");
  plan_.lines.emplace_back(std::move(ring));
}

void Reader::round(PlanWords& words) {
  PlanRound round{.number = number_, .at = words.point()};
  round.radius_m = words.size("the radius");
  round.tags = words.tags();
  round.tags.insert({"junction", "roundabout"});
  plan_.rounds.push_back(std::move(round));
}

void Reader::road(PlanWords& words, bool dual) {
  PlanRoad road{.number = number_, .dual = dual};
  const std::string name = words.word("the road's name, or '-'");
  Tags given{{"highway", words.word("the road's class")}};
  if (name != "-") given["name"] = name;
  if (dual) given["oneway"] = "yes";
  road.points = words.road_points(dual ? 4 : 2);
  road.tags = joined(words.tags(), given);
  road.ends = ends(road.tags, words);
  for (std::size_t i = 0; i < road.points.size(); ++i) {
    const PlanPoint& point = road.points[i];
    if (point.ring.empty()) continue;
    const bool inner = i > 0 && i + 1 < road.points.size();
    if (inner) words.fail("a ring may only stand at an end of a road");
    if (dual && point.forked) words.fail("a dual carriageway needs no '^' at its rings");
    if (!rings_.contains(point.ring))
      words.fail("there is no ring '" + point.ring + "' above this line");
    if (road.points.size() == 2 && !road.points[1 - i].ring.empty())
      words.fail("between two rings a road needs a point");
  }
  plan_.lines.emplace_back(std::move(road));
}

void Reader::rail(PlanWords& words) {
  PlanTrack track{.number = number_, .kind = LineKind::rail};
  const std::string tracks = words.word("the number of tracks");
  if (tracks != "1" && tracks != "2")
    words.fail("a railway has 1 or 2 tracks, not '" + tracks + "'");
  track.tracks = tracks == "1" ? 1 : 2;
  track.points = words.points(2);
  track.tags = joined(words.tags(), {{"railway", "rail"}});
  plan_.lines.emplace_back(std::move(track));
}

void Reader::tram(PlanWords& words) {
  PlanTrack track{.number = number_, .kind = LineKind::tram};
  track.points = words.points(0);
  if (track.points.empty()) track.along = words.word("the road's name");
  if (track.points.size() == 1) words.fail("it needs at least 2 points");
  track.tags = joined(words.tags(), {{"railway", "tram"}});
  plan_.lines.emplace_back(std::move(track));
}

void Reader::water(PlanWords& words) {
  PlanTrack track{.number = number_, .kind = LineKind::water};
  const std::string name = words.word("the water's name, or '-'");
  const std::string width = words.word("the width");
  const auto metres = read_number(width);
  if (!metres || *metres <= 0) words.fail("a width must be above 0, not '" + width + "'");
  Tags given{{"waterway", *metres < river_m ? "stream" : "river"}, {"width", width}};
  if (name != "-") given["name"] = name;
  track.points = words.points(2);
  track.tags = joined(words.tags(), given);
  plan_.lines.emplace_back(std::move(track));
}

void Reader::ban(PlanWords& words) {
  PlanBan ban{.number = number_, .kind = words.word("the kind of ban"), .from = words.point()};
  ban.over_road = words.takes_tilde();
  ban.via = words.point();
  ban.to = words.point();
  ban.tags = words.tags();
  ban.with_junction = take(ban.tags, "slip") == "junction";
  plan_.bans.push_back(std::move(ban));
}

void Reader::stop(PlanWords& words) {
  PlanStop stop{.number = number_, .name = words.word("the stop's name"), .at = words.point()};
  const std::string side = words.word("'bus' or 'back'");
  if (side != "bus" && side != "back") words.fail("'" + side + "' must be 'bus' or 'back'");
  stop.back = side == "back";
  plan_.late.emplace_back(std::move(stop));
}

void Reader::trap(PlanWords& words) {
  PlanTrap trap{.number = number_, .trap = static_cast<int>(words.size("the trap's number"))};
  trap.at = words.point();
  while (!words.empty()) trap.what += (trap.what.empty() ? "" : " ") + words.word("a word");
  plan_.traps.push_back(std::move(trap));
}

void Reader::grow(Grow what, PlanWords& words) {
  PlanGrowth growth{.number = number_, .what = what, .ground = {}, .settlement = {}};
  const std::string name = words.word("a name");
  if (what == Grow::town || what == Grow::village) {
    growth.settlement.name = name;
    growth.settlement.middle = words.point();
    growth.settlement.reach_m = words.size("the reach");
    growth.settlement.tags = words.tags();
  } else {
    growth.ground.name = name;
    if (what != Grow::lanes) {
      const std::string style = words.word("a style");
      const auto known = style_named(style);
      if (!known)
        words.fail("there is no style '" + style +
                   "'; take terraces, crescents, avenues, works or centre");
      growth.ground.style = *known;
    }
    growth.ground.outline = words.points(3);
    growth.ground.tags = words.tags();
  }
  plan_.growth.push_back(std::move(growth));
}

}  // namespace

Plan read_plan(std::string_view text, const std::string& file) {
  return Reader().read(text, file);
}

}  // namespace loopwright::county
