// An area cut out of an extract. Outside reference: osmium-tool's extracts of the same outline.
#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>
#include <numbers>
#include <random>
#include <set>
#include <tuple>

#include "loopwright/base/error.hpp"
#include "loopwright/read/build.hpp"
#include "support/built_town.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright::read {
namespace {

constexpr Point north_sea{543000000, 26000000};

Point beside(Point at, double east_deg, double north_deg) {
  return point_from_degrees(at.lat() + north_deg, at.lon() + east_deg);
}

/// A square with its south-west corner there.
std::vector<Point> square(Point corner, double degrees) {
  return {corner, beside(corner, degrees, 0), beside(corner, degrees, degrees),
          beside(corner, 0, degrees)};
}

/// An outline with a notch and a hole over the middle of Quillham.
const std::vector<Ring> notched{Ring{{{542850000, 25800000},
                                      {543100000, 25800000},
                                      {543100000, 26200000},
                                      {543010000, 26030000},
                                      {542850000, 26200000}}},
                                Ring{{{542950000, 25900000},
                                      {542950000, 25940000},
                                      {542990000, 25940000},
                                      {542990000, 25900000}},
                                     Ring::Role::hole}};
constexpr std::string_view notched_poly =
    "notched\n1\n2.58 54.285\n2.58 54.31\n2.62 54.31\n2.603 54.301\n2.62 54.285\n2.58 54.285\nEND\n"
    "!2\n2.59 54.295\n2.594 54.295\n2.594 54.299\n2.59 54.299\n2.59 54.295\nEND\nEND\n";

Built built_of(const std::filesystem::path& map, const std::vector<Ring>& rings) {
  BuildOptions options;
  options.region = find_region("GB-ENG").value();
  if (!rings.empty()) options.outline = std::make_shared<Outline>(rings);
  road::Report report;
  return build_area(map, options, report, {});
}

const std::filesystem::path county = LOOPWRIGHT_COUNTY;

/// The nodes that osmium's extract of the outline holds; none when osmium isn't installed.
std::set<Point> inside_by_osmium() {
  if (std::system("osmium --version >/dev/null 2>&1") != 0) return {};
  const test::ScratchFolder folder;
  const auto poly = folder / "notched.poly", nodes = folder / "inside.opl";
  test::write_bytes(poly, std::string(notched_poly));
  const std::string command = "osmium extract -s simple -p " + poly.string() + " " +
                              county.string() + " -f opl -o - 2>/dev/null | grep ^n >" +
                              nodes.string();
  REQUIRE(std::system(command.c_str()) == 0);
  std::set<Point> inside;
  std::ifstream lines(nodes);  // "n17 v1 … x2.6 y54.3"
  for (std::string line; std::getline(lines, line);) {
    const auto x = line.rfind(" x"), y = line.rfind(" y");
    inside.insert(point_from_degrees(std::stod(line.substr(y + 2)), std::stod(line.substr(x + 2))));
  }
  return inside;
}

/// A stretch by its map: way, positions in it, direction.
using Key = std::tuple<std::int64_t, std::uint32_t, std::uint32_t, bool>;

Key key_of(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  return {piece.way, piece.from_index, piece.to_index, stretch.against()};
}

/// Of drivable stretches, by key, the points.
std::map<Key, std::vector<Point>> driven(const road::Roads& roads, std::uint32_t flags) {
  std::map<Key, std::vector<Point>> all;
  for (std::size_t s = 0; s < roads.stretch_count(); ++s) {
    const StretchId stretch{s};
    if ((roads.stretches[s].flags & flags) == 0) continue;
    const road::Piece& piece = roads.piece(stretch);
    const auto shape = std::span(roads.shape).subspan(piece.shape_first, piece.shape_count);
    all[key_of(roads, stretch)] = {shape.begin(), shape.end()};
  }
  return all;
}

/// Those of the second that the first lacks, in words.
std::string missing_in(const std::set<Key>& has, const std::set<Key>& wanted) {
  std::string text;
  for (const auto& [way, from, to, against] : wanted)
    if (!has.contains({way, from, to, against}))
      text += "way " + std::to_string(way) + ", " + std::to_string(from) + " to " +
              std::to_string(to) + (against ? " against; " : "; ");
  return text;
}

TEST_CASE("what is inside an outline lies on the same side of its rings as on paper", "[read]") {
  const Outline one({square(north_sea, 0.02)});
  CHECK(one.contains(beside(north_sea, 0.01, 0.01)));
  CHECK_FALSE(one.contains(beside(north_sea, 0.021, 0.01)));
  CHECK_FALSE(one.contains(beside(north_sea, -0.001, 0.01)));
  CHECK_FALSE(one.contains(beside(north_sea, 0.01, 0.0201)));
  CHECK_FALSE(one.contains(beside(north_sea, 0.01, -0.0001)));
  // A diamond: level with its corners to the side, the line to the east touches one of them.
  const Outline diamond({Ring{{beside(north_sea, 0.01, 0), beside(north_sea, 0.02, 0.01),
                               beside(north_sea, 0.01, 0.02), beside(north_sea, 0, 0.01)}}});
  CHECK(diamond.contains(beside(north_sea, 0.01, 0.01)));
  CHECK_FALSE(diamond.contains(beside(north_sea, -0.01, 0.01)));
  CHECK_FALSE(diamond.contains(beside(north_sea, -0.01, 0.02)));
  const Outline holed({square(north_sea, 0.02),
                       Ring{square(beside(north_sea, 0.005, 0.005), 0.01), Ring::Role::hole}});
  CHECK_FALSE(holed.contains(beside(north_sea, 0.01, 0.01)));
  CHECK(holed.contains(beside(north_sea, 0.002, 0.01)));
}

TEST_CASE("areas that overlap are taken together, and a hole is one of its own area alone",
          "[read]") {
  const Point second = beside(north_sea, 0.01, 0.01);
  const Outline both({square(north_sea, 0.02), square(second, 0.02)});
  CHECK(both.contains(beside(north_sea, 0.005, 0.005)));
  CHECK(both.contains(beside(north_sea, 0.015, 0.015)));  // in both
  CHECK(both.contains(beside(north_sea, 0.025, 0.025)));
  CHECK_FALSE(both.contains(beside(north_sea, 0.025, 0.005)));
  const Outline holed({square(north_sea, 0.02), Ring{square(second, 0.008), Ring::Role::hole},
                       square(second, 0.004)});
  CHECK(holed.contains(beside(second, 0.002, 0.002)));
  CHECK_FALSE(holed.contains(beside(second, 0.006, 0.006)));
  CHECK(holed.contains(beside(second, -0.002, 0.006)));
}

TEST_CASE("an outline of 200,000 points answers as its plain reading does, and at once", "[read]") {
  constexpr int corners = 200'000;
  std::vector<Point> ring;  // a star with fine teeth, so that hardly any edge is level
  for (int k = 0; k < corners; ++k) {
    const double angle = 2 * std::numbers::pi * k / corners, far = k % 2 == 0 ? 0.5 : 0.499;
    ring.push_back(beside(north_sea, far * std::cos(angle), far * std::sin(angle)));
  }
  const Outline outline({Ring{ring}});
  std::mt19937 dice(20261130);
  std::uniform_real_distribution<double> part(-0.6, 0.6);
  const auto before = std::chrono::steady_clock::now();
  int inside = 0;
  for (int k = 0; k < 200'000; ++k) {
    const double east = part(dice), north = part(dice), off = std::hypot(east, north);
    const bool is_inside = outline.contains(beside(north_sea, east, north));
    inside += is_inside ? 1 : 0;
    if (off < 0.4985 || off > 0.5001) CHECK(is_inside == (off < 0.4985));
  }
  CHECK(inside > 50'000);
  CHECK(std::chrono::steady_clock::now() - before < std::chrono::seconds(10));
}

TEST_CASE("an outline sees all within its reach and nothing three times as far off", "[read]") {
  std::mt19937 dice(20261129);
  std::uniform_real_distribution<double> part(-0.12, 0.14);
  for (const double north : {0.0, 12.0, -80.0}) {
    const Point corner = beside(north_sea, 0, north);
    const std::vector<Point> ring = square(corner, 0.02);
    const Outline outline({ring});
    for (int k = 0; k < 4000; ++k) {
      const Point at = beside(corner, part(dice) * 2, part(dice));
      double off_m = 1e9;
      for (std::size_t c = 0; c < ring.size(); ++c) {
        // The nearest of many points of the side: 20 m apart at most, so 10 m more at most.
        const Point a = ring[c], b = ring[(c + 1) % ring.size()];
        for (double p = 0; p <= 1; p += 1.0 / 128)
          off_m = std::min(off_m,
                           distance_m(at, point_from_degrees(a.lat() + p * (b.lat() - a.lat()),
                                                             a.lon() + p * (b.lon() - a.lon()))));
      }
      if (outline.contains(at) || off_m <= seen_beyond_m) CHECK(outline.sees(at));
      if (!outline.contains(at) && off_m > 3.5 * seen_beyond_m) CHECK_FALSE(outline.sees(at));
    }
  }
}

TEST_CASE("an outline without a ring, or half round the earth, is refused", "[read]") {
  CHECK_THROWS_AS(Outline(std::vector<Ring>{}), InputError);
  CHECK_THROWS_AS(Outline(std::vector{Ring{{{0, -1'000'000'000}, {0, 900'000'000}, {10, 0}}}}),
                  InputError);
}

TEST_CASE("a junction at the outline keeps its arms, and the road out is no dead end", "[read]") {
  const mark::RawMap raw = test::draw_town(R"(
          C
      A   B   D
          E
    w1 AB  highway=residential name=Mill_Street
    w2 BD  highway=residential name=Pell_Way
    w3 CB  highway=residential
    w4 BE  highway=residential
    )");
  BuildOptions options;
  options.region = find_region("GB-ENG").value();
  // All but D, which lies 100 m east of B.
  const Point b = raw.find_node(test::osm_node('B'))->at;
  options.outline = std::make_shared<Outline>(
      std::vector{Ring{{beside(b, -0.01, -0.01), beside(b, 0.001, -0.01), beside(b, 0.001, 0.01),
                        beside(b, -0.01, 0.01)}}});
  const test::BuiltTown town = test::built_town(raw, "GB-ENG", options);
  const road::Roads roads = town.roads();
  CHECK(roads.leaving(town.node('B')).size() == 4);
  CHECK(town.drives("ABC"));
  CHECK_FALSE(roads.drivable(town.stretch("BD")));
  CHECK_FALSE(roads.drivable(town.stretch("DB")));
  CHECK(roads.text(roads.piece(town.stretch("BD")).access_source) == "beyond the outline");
  const auto dead_end = [&](char letter) {
    return (roads.nodes[town.node(letter).index()].flags & road::node_flag::dead_end) != 0;
  };
  CHECK(dead_end('A'));
  CHECK_FALSE(dead_end('D'));
}

TEST_CASE("an outline beside all roads is told", "[read]") {
  CHECK_THROWS_WITH(
      built_of(county, {square(beside(north_sea, -2, 0), 0.01)}),
      county.string() + ": holds no road for cars inside that outline; choose another");
}

TEST_CASE("what is driven is what osmium's extract of the outline has", "[read]") {
  const std::set<Point> inside = inside_by_osmium();
  if (inside.empty()) return;  // the tests' packages aren't there
  const Built whole = built_of(county, {}), part = built_of(county, notched);
  using namespace road::stretch_flag;
  const auto of_whole = driven(road::view_of(whole.tables, whole.info), drivable);
  const auto of_part = driven(road::view_of(part.tables, part.info), drivable | cut_off);
  REQUIRE(of_part.size() > 1000);
  std::set<Key> expected, found;
  for (const auto& [key, shape] : of_whole)
    if (std::ranges::all_of(shape, [&](Point at) { return inside.contains(at); }))
      expected.insert(key);
  for (const auto& [key, shape] : of_part)
    if (of_whole.contains(key)) found.insert(key);
  CHECK(missing_in(found, expected) == "");
  CHECK(missing_in(expected, found) == "");
  for (const auto& [key, shape] : of_part)
    CHECK(std::ranges::all_of(shape, [&](Point at) { return inside.contains(at); }));
}

/// A way of passing a junction as the map tells it. Left out: where the limit changes, which counts at a junction when
/// only one way leads on, and beside the outline that may be so; runs of road, which may begin or end there; spots to
/// stop at and roads to find the way on, which are chosen among many.
using Passing = std::tuple<std::string_view, road::Movement, int, int, std::vector<Key>>;

std::set<Passing> passings(const road::Roads& roads) {
  std::set<Passing> all;
  for (const road::Chance& chance : roads.chances) {
    if (road::form_of(chance.kind) != road::KindForm::junction ||
        chance.kind == road::Kind::limit_change)
      continue;
    std::vector<Key> path;
    for (const StretchId stretch : roads.path_of(chance)) path.push_back(key_of(roads, stretch));
    all.insert({road::name(chance.kind), chance.movement, chance.exit_number, chance.hardness,
                std::move(path)});
  }
  return all;
}

/// Which kinds of run each driven stretch belongs to, and its limit on a day.
std::set<std::tuple<Key, std::string_view, std::string>> along(const road::Roads& roads,
                                                               const std::set<Key>& stretches) {
  std::set<std::tuple<Key, std::string_view, std::string>> all;
  const road::LimitLaw law = road::law_of(roads.info());
  for (const road::RunFact& fact : roads.run_facts)
    if (const Key key = key_of(roads, fact.stretch); stretches.contains(key))
      all.insert({key, road::name(fact.kind), std::string(roads.text(fact.tag))});
  for (std::size_t s = 0; s < roads.stretch_count(); ++s) {
    const Key key = key_of(roads, StretchId{s});
    const road::LimitOnDay limit = law.on(roads.stretches[s].limit, {2026, 11, 28});
    if (stretches.contains(key)) all.insert({key, "limit", std::to_string(limit.value)});
  }
  return all;
}

TEST_CASE("no junction of a cut area is another than in the whole", "[read]") {
  const Built whole = built_of(county, {}), part = built_of(county, notched);
  const road::Roads all = road::view_of(whole.tables, whole.info);
  const road::Roads cut = road::view_of(part.tables, part.info);
  const std::set<Passing> of_all = passings(all), of_cut = passings(cut);
  std::set<Key> drivable;
  for (const auto& [key, shape] : driven(cut, road::stretch_flag::drivable)) drivable.insert(key);
  REQUIRE(of_cut.size() > 2000);
  std::vector<Passing> invented, lost;
  std::ranges::set_difference(of_cut, of_all, std::back_inserter(invented));
  for (const Passing& passing : of_all) {
    const auto& path = std::get<4>(passing);
    if (!of_cut.contains(passing) &&
        std::ranges::all_of(path, [&](const Key& key) { return drivable.contains(key); }))
      lost.push_back(passing);
  }
  const auto told = [](const std::vector<Passing>& passings_of) {
    std::string text;
    for (const Passing& passing : passings_of)
      text += std::string(std::get<0>(passing)) + " at way " +
              std::to_string(std::get<0>(std::get<4>(passing).front())) + "; ";
    return text;
  };
  INFO("invented: " << told(invented));
  INFO("lost: " << told(lost));
  CHECK(invented.empty());
  CHECK(lost.empty());
  const auto along_all = along(all, drivable), along_cut = along(cut, drivable);
  CHECK(along_cut.size() > drivable.size());
  CHECK(std::ranges::includes(along_all, along_cut));
}

}  // namespace
}  // namespace loopwright::read
