// What must hold for everything that grows, whatever the dice: nothing crosses without meeting, side
// streets leave at 60 to 120 degrees, all hangs together, one seed gives one county.
#include <algorithm>
#include <catch2/catch.hpp>
#include <chrono>
#include <cmath>
#include <deque>
#include <numbers>
#include <set>
#include <string>
#include <unordered_map>
#include <unordered_set>

#include "county/draw.hpp"
#include "county/grow_ground.hpp"
#include "county/line_grid.hpp"

using namespace loopwright;
using namespace loopwright::county;

namespace {

const std::string country =
    "origin 54.3 2.6\n"
    "set town maxspeed=\"30 mph\" maxspeed:type=GB:nsl_restricted lit=yes\n"
    "set open maxspeed=\"60 mph\" maxspeed:type=GB:nsl_single lit=no\n"
    "road \"Long Road\" secondary -3500,0 -1500,100 0,0 1500,-120 3500,0 first=edge last=edge "
    "open\n"
    "road \"Cross Road\" tertiary 0,0 150,1200 -100,2600 0,3500 last=edge open\n"
    "road \"South Road\" tertiary 0,0 -100,-1200 100,-2600 0,-3500 last=edge open\n"
    "rail 1 -3500,-1500 -1000,-1300 1000,-1400 3500,-1250\n"
    "crossing -95,-1350 crossing:barrier=half crossing:light=yes\n"
    "water \"Test Water\" 12 -3500,2000 -1500,2150 -80,2100 1200,2250 3500,2100 layer=-1\n"
    "town \"Alderby\" 0,0 700 town\n"
    "village \"Bexcote\" -50,2700 350\n"
    "quarter \"Carr\" works 1500,-200 2300,-200 2300,-800 1500,-800 town\n"
    "lanes \"Country\" -3400,-3400 3400,-3400 3400,3400 -3400,3400\n";

Drawing grown(std::uint64_t seed) {
  return draw(read_plan(country, "country.plan"), seed);
}

bool driven(const Line& line) {
  return rank(line) >= 0;
}

bool holds(const std::vector<Spot>& points, Spot at) {
  return std::find(points.begin(), points.end(), at) != points.end();
}

/// Places where two lines of one layer cross and don't share a Spot within 2 cm.
std::vector<Spot> bare_crossings(const Drawing& county) {
  LineGrid grid;
  for (std::size_t n = 0; n < county.lines.size(); ++n) grid.put(n, county.lines[n].points);
  std::vector<Spot> found;
  for (std::size_t n = 0; n < county.lines.size(); ++n)
    for (const std::size_t m : grid.near(county.lines[n].points, 1)) {
      const Line& a = county.lines[n];
      const Line& b = county.lines[m];
      if (m <= n || a.layer != b.layer || (!a.grown && !b.grown)) continue;
      for (std::size_t i = 1; i < a.points.size(); ++i)
        for (std::size_t j = 1; j < b.points.size(); ++j) {
          const auto at = meeting(a.points[i - 1], a.points[i], b.points[j - 1], b.points[j]);
          if (!at) continue;
          const bool at_end = a.points[i - 1] == b.points[j - 1] ||
                              a.points[i - 1] == b.points[j] || a.points[i] == b.points[j - 1] ||
                              a.points[i] == b.points[j];
          if (at_end) continue;  // of two nearly straight on, meeting() may name any place near by
          const auto shared = [&](Spot p) { return apart(p, *at) < 0.02 && holds(b.points, p); };
          if (std::none_of(a.points.begin(), a.points.end(), shared)) found.push_back(*at);
        }
    }
  return found;
}

using Arms = std::unordered_map<Spot, std::vector<Spot>, SpotHash>;

Arms arms_of(const Drawing& county, int least_rank) {
  Arms arms;
  for (const Line& line : county.lines) {
    if (rank(line) < least_rank) continue;
    for (std::size_t i = 1; i < line.points.size(); ++i) {
      arms[line.points[i - 1]].push_back(line.points[i]);
      arms[line.points[i]].push_back(line.points[i - 1]);
    }
  }
  return arms;
}

/// Whether two of a junction's arms make a straight road, within 40 degrees.
bool has_through_road(Spot at, const std::vector<Spot>& arms) {
  for (std::size_t i = 0; i < arms.size(); ++i)
    for (std::size_t j = i + 1; j < arms.size(); ++j)
      if (std::abs(turn_at(arms[i], at, arms[j])) < 40 * std::numbers::pi / 180) return true;
  return false;
}

}  // namespace

TEST_CASE("what grows crosses nothing without a shared point", "[county][grow]") {
  for (const std::uint64_t seed : {1, 2, 3}) {
    const Drawing county = grown(seed);
    INFO("seed " << seed);
    CHECK(county.troubles.empty());
    CHECK(county.lines.size() > 600);
    for (const Spot at : bare_crossings(county)) FAIL_CHECK("at " << at.x() << "," << at.y());
  }
}

TEST_CASE("grown streets leave a road that goes straight on, no nearer than 60 degrees",
          "[county][grow]") {
  const Drawing county = grown(4);
  const Arms streets = arms_of(county, 1);
  std::size_t junctions = 0;
  for (const Line& line : county.lines) {
    if (!line.grown || line.kind != LineKind::road || line.layer != 0) continue;
    for (const Spot at : {line.points.front(), line.points.back()}) {
      const std::vector<Spot>& arms = streets.at(at);
      if (arms.size() < 3) continue;
      ++junctions;
      INFO(at.x() << "," << at.y());
      CHECK(arms.size() <= 4);
      CHECK(has_through_road(at, arms));
      for (std::size_t i = 0; i < arms.size(); ++i)
        for (std::size_t j = i + 1; j < arms.size(); ++j)
          CHECK(std::abs(turn_at(arms[i], at, arms[j])) < 125 * std::numbers::pi / 180);
    }
  }
  CHECK(junctions > 300);
}

TEST_CASE("no grown line stands still or is shorter than two points", "[county][grow]") {
  const Drawing county = grown(4);
  for (const Line& line : county.lines) {
    CHECK(line.points.size() >= 2);
    for (std::size_t i = 1; i < line.points.size(); ++i)
      CHECK(line.points[i - 1] != line.points[i]);
  }
}

TEST_CASE("everything that grows hangs on the plan's roads", "[county][grow]") {
  const Drawing county = grown(5);
  const Arms roads = arms_of(county, 0);
  std::unordered_set<Spot, SpotHash> seen{county.lines.front().points.front()};
  std::deque<Spot> open(seen.begin(), seen.end());
  for (; !open.empty(); open.pop_front())
    for (const Spot next : roads.at(open.front()))
      if (seen.insert(next).second) open.push_back(next);
  for (const Line& line : county.lines) {
    if (!driven(line)) continue;
    INFO(line.points.front().x() << "," << line.points.front().y());
    CHECK(seen.contains(line.points.front()));
  }
}

TEST_CASE("one seed grows one county, another seed another", "[county][grow]") {
  const auto points = [](const Drawing& county) {
    std::vector<std::vector<Spot>> all;
    for (const Line& line : county.lines) all.push_back(line.points);
    return all;
  };
  const auto first = points(grown(6));
  CHECK(first == points(grown(6)));
  CHECK(first != points(grown(7)));
}

TEST_CASE("the plan's road has the village's limit within it and its own beyond",
          "[county][grow]") {
  const Drawing county = grown(8);
  const auto limit_at = [&](Spot place) {
    for (const Line& line : county.lines)
      if (!line.grown && driven(line) && nearest(line.points, place).off_m < 1)
        return line.tags.at("maxspeed");
    return std::string();
  };
  const auto on_cross_road = [&](double y) {
    for (const Line& line : county.lines)
      if (line.tags.contains("name") && line.tags.at("name") == "Cross Road")
        for (const Spot p : line.points)
          if (std::abs(p.y() - y) < 60) return p;
    return Spot{};
  };
  CHECK(limit_at(on_cross_road(2750)) == "30 mph");
  CHECK(limit_at(on_cross_road(1500)) == "60 mph");
}

TEST_CASE("no two grown streets of a county have one name unless they are one road",
          "[county][grow]") {
  const Drawing county = grown(9);
  std::map<std::string, std::set<std::string>> quarters;
  for (const Line& line : county.lines) {
    if (!line.grown || line.kind != LineKind::road) continue;
    REQUIRE(line.tags.contains("name"));
    quarters[line.tags.at("name")].insert(line.quarter);
  }
  for (const auto& [name, where] : quarters) {
    INFO(name);
    CHECK(where.size() == 1);
  }
}

TEST_CASE("house numbers stand beside the street they name", "[county][grow]") {
  const Drawing county = grown(10);
  std::multimap<std::string, const Line*> streets;
  for (const Line& line : county.lines)
    if (line.tags.contains("name")) streets.emplace(line.tags.at("name"), &line);
  std::size_t houses = 0;
  for (const Lone& lone : county.lone) {
    if (!lone.tags.contains("addr:housenumber")) continue;
    ++houses;
    double off = 1000;
    const auto [from, to] = streets.equal_range(lone.tags.at("addr:street"));
    for (auto street = from; street != to; ++street)
      off = std::min(off, nearest(street->second->points, lone.at).off_m);
    CHECK(off < 12);
    CHECK(lone.tags.at("addr:postcode").starts_with("QM"));
  }
  CHECK(houses > 300);
}

TEST_CASE("one-way streets leave every place within reach of every other", "[county][grow]") {
  const Drawing county = grown(11);
  std::unordered_map<Spot, std::vector<Spot>, SpotHash> out;
  std::unordered_map<Spot, std::vector<Spot>, SpotHash> in;
  const auto put = [&](Spot a, Spot b) {
    out[a].push_back(b);
    in[b].push_back(a);
  };
  std::size_t one_way = 0;
  for (const Line& line : county.lines) {
    if (!driven(line)) continue;
    const bool single = line.tags.contains("oneway");
    one_way += single ? 1 : 0;
    for (std::size_t i = 1; i < line.points.size(); ++i) {
      put(line.points[i - 1], line.points[i]);
      if (!single) put(line.points[i], line.points[i - 1]);
    }
  }
  const auto reached = [&](auto& net) {
    std::unordered_set<Spot, SpotHash> seen{county.lines.front().points.front()};
    std::deque<Spot> open(seen.begin(), seen.end());
    for (; !open.empty(); open.pop_front())
      for (const Spot next : net[open.front()])
        if (seen.insert(next).second) open.push_back(next);
    return seen.size();
  };
  CHECK(one_way > 5);
  CHECK(reached(out) == reached(in));
}
