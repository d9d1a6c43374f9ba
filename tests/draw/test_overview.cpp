// The overview map: where the way, its numbers and all words lie, and what its scale and north say.
#include <catch2/catch.hpp>

#include "draw/on_paper.hpp"
#include "draw/some_loops.hpp"
#include "loopwright/base/point_between.hpp"
#include "loopwright/draw/overview.hpp"
#include "support/tables_of_words.hpp"

namespace loopwright::test {
namespace {

using draw::MapFrame;
using draw::Picture;
using draw::Spot;

// What two lines side by side are apart and the radius of the smallest ring: the way may lie that far
// from the road's middle.
constexpr double off_the_road_mm = 2.6 / 2 + 1.9;

constexpr draw::Extent a4_box{186, 250}, a5_box{128, 185};

mark::RawMap drawn_square(double metres_per_character = 25) {
  return draw_town(R"(
    A    B    C
              
    
    F    E    D
  w1 AB   highway=residential name=Lantern_Row
  w2 BC   highway=residential name=Mill_Orchard
  w3 CD   highway=residential name=Ostler_Street
  w4 DE   highway=residential name=Signal_Terrace
  w5 EF   highway=residential name=Cooper's_Reach
  w6 FA   highway=residential name=Corn_Hill
  w7 BE   highway=residential name=Butter_Lane
  )",
                   metres_per_character);
}

BuiltTown square(double metres_per_character = 25) {
  return built_town(drawn_square(metres_per_character), "GB-ENG");
}

/// Points of a loop's shapes that are drawn: all but those of the door's stretches.
std::vector<Point> driven_points(const road::Roads& roads, const wish::Loop& loop) {
  std::vector<Point> points;
  for (std::size_t i = 1; i + 1 < loop.stretches.size(); ++i)
    for (const Point at : roads.shape_of(loop.stretches[i].stretch.piece())) points.push_back(at);
  return points;
}

/// Driven points that aren't on the ink of the first page.
std::size_t off_the_way(const road::Roads& roads, const wish::Loop& loop,
                        const draw::OverviewAsked& asked, const Picture& page) {
  const MapFrame frame = draw::frame_of(roads, loop, asked);
  std::size_t off = 0;
  for (const Point at : driven_points(roads, loop))
    off += distance_to_ink(page, frame.spot_of(at)) > off_the_road_mm ? 1 : 0;
  return off;
}

const Words* find_words(const std::vector<Words>& words, std::string_view text) {
  for (const Words& one : words)
    if (one.text == text) return &one;
  return nullptr;
}

/// True when a number that found no room in the way stands near the junction it belongs to.
bool beside_its_junction(const road::Roads& roads, const wish::Loop& loop,
                         const draw::Numbered& number, const MapFrame& frame, const Words& set) {
  const NodeId node = roads.to_node(loop.stretches[number.stretch].stretch);
  const Spot junction = frame.spot_of(roads.nodes[node.index()].at);
  return std::hypot(middle_of(set).x - junction.x, middle_of(set).y - junction.y) < 15;
}

/// Numbers on the first page that don't lie on the drive, each after the one before.
std::size_t out_of_order(const road::Roads& roads, const wish::Loop& loop,
                         const draw::OverviewAsked& asked, const Picture& page) {
  const MapFrame frame = draw::frame_of(roads, loop, asked);
  std::vector<Spot> line;
  for (std::size_t i = 1; i + 1 < loop.stretches.size(); ++i) {
    const auto shape = roads.shape_of(loop.stretches[i].stretch.piece());
    std::vector<Spot> spots;
    for (const Point at : shape) spots.push_back(frame.spot_of(at));
    if (loop.stretches[i].stretch.against()) std::reverse(spots.begin(), spots.end());
    line.insert(line.end(), spots.begin(), spots.end());
  }
  const std::vector<Words> words = words_on(page);
  std::size_t bad = 0, from = 0;
  for (const draw::Numbered& number : asked.numbers) {
    const Words* set = find_words(words, number.text);
    if (set == nullptr) continue;
    std::size_t i = from;
    while (i + 1 < line.size() &&
           distance_to_segment(middle_of(*set), line[i], line[i + 1]) > off_the_road_mm)
      ++i;
    if (i + 1 < line.size()) {
      from = i;
    } else {
      bad += beside_its_junction(roads, loop, number, frame, *set) ? 0 : 1;
    }
  }
  return bad;
}

/// Numbers that stand on no page; those said at the door stand before the word "start".
std::vector<std::string> not_shown(const draw::OverviewAsked& asked,
                                   const std::vector<Picture>& pages) {
  std::vector<std::string> missing;
  for (const draw::Numbered& number : asked.numbers) {
    const bool shown = std::any_of(pages.begin(), pages.end(), [&](const Picture& page) {
      return find_words(words_on(page), number.text) != nullptr;
    });
    if (!shown && number.stretch > 0) missing.push_back(number.text);
  }
  return missing;
}

/// What the foot of the page says of numbers without room; empty when it says nothing.
std::string no_room_on(const Picture& page) {
  for (const Words& words : words_on(page)) {
    const std::size_t at = words.text.find("no room for ");
    if (at != std::string::npos) return words.text.substr(at);
    if (words.text.ends_with("some numbers have no room")) return "some";
  }
  return {};
}

/// The numbers that stand nowhere are named in order, as far as the line is long.
bool are_told(const draw::OverviewAsked& asked, const std::vector<std::string>& missing,
              const Picture& page) {
  const std::string said = no_room_on(page) + ",";
  if (missing.empty() || said == "some,") return true;
  const auto named = [&](const std::string& number) {
    return said.find(" " + number + ",") != std::string::npos ||
           said.find(" " + number + " …") != std::string::npos;
  };
  std::size_t last = 0;  // beyond this a line cut short names none
  for (std::size_t i = 0; i < asked.numbers.size(); ++i)
    if (named(asked.numbers[i].text)) last = i;
  const bool cut = said.ends_with("…,");
  for (std::size_t i = 0; i < asked.numbers.size(); ++i) {
    const std::string& number = asked.numbers[i].text;
    const bool is_missing = std::find(missing.begin(), missing.end(), number) != missing.end();
    if (is_missing && !named(number) && !(cut && i > last)) return false;
  }
  return true;
}

/// "A" of the second page.
std::string part_name(std::size_t page) {
  return std::string(1, static_cast<char>('A' + page - 1));
}

/// A part's name stands on its own sheet, and on that which frames it.
std::ptrdiff_t sheets_with(const std::vector<Picture>& pages, const std::string& part) {
  return std::count_if(pages.begin(), pages.end(), [&](const Picture& page) {
    return find_words(words_on(page), part) != nullptr;
  });
}

/// The first sheet names the start, or the part that does.
bool names_start(const std::vector<Picture>& pages) {
  const auto has = [](const Picture& page, std::string_view part) {
    const std::vector<Words> words = words_on(page);
    return std::any_of(words.begin(), words.end(), [&](const Words& one) {
      return part.empty() ? one.text.ends_with("start")
                          : one.text.find("start: see " + std::string(part)) != std::string::npos;
    });
  };
  if (has(pages[0], "")) return true;
  for (std::size_t i = 1; i < pages.size(); ++i)
    if (has(pages[0], part_name(i))) return has(pages[i], "");
  return false;
}

/// What must hold of the map of any loop. least_shown: part of its numbers that stand on some page.
void check_map(const road::Roads& roads, const wish::Loop& loop, draw::Extent box,
               double least_shown) {
  draw::OverviewAsked asked = numbered(roads, loop);
  asked.width = box.width, asked.height = box.height;
  asked.credit = "map © OpenStreetMap contributors, as of 12 Nov 2026";
  const std::vector<Picture> pages = draw::overview(roads, loop, asked, our_words());
  CHECK(off_the_way(roads, loop, asked, pages[0]) == 0);
  CHECK(out_of_order(roads, loop, asked, pages[0]) == 0);
  const auto numbers = static_cast<double>(asked.numbers.size());
  const std::vector<std::string> missing = not_shown(asked, pages);
  CAPTURE(missing, asked.numbers.size(), pages.size());
  CHECK(static_cast<double>(missing.size()) <= (1 - least_shown) * numbers);
  CHECK(are_told(asked, missing, pages[0]));
  for (std::size_t i = 1; i < pages.size(); ++i) CHECK(sheets_with(pages, part_name(i)) >= 2);
  CHECK(names_start(pages));
  for (const Picture& page : pages) {
    CHECK(badly_set(page) == std::vector<std::string>{});
    for (const Words& words : words_on(page)) CHECK(words.points >= 7.5);
  }
}

}  // namespace

TEST_CASE("a loop of the door's own road alone is a bar at its corner", "[draw]") {
  const BuiltTown town = square();
  wish::Loop loop = honest_answer(town, "ABCDEFAB").loops[0];
  loop.stretches.resize(1);
  const auto pages = draw::overview(town.roads(), loop, {}, our_words());
  REQUIRE(pages.size() == 1);
  CHECK(badly_set(pages[0]).empty());
  CHECK(find_words(words_on(pages[0]), "start") != nullptr);
}

TEST_CASE("a map shows the way between the corners next to the door, and never the door",
          "[draw]") {
  const BuiltTown town = square();
  const wish::Loop loop = honest_answer(town, "ABCDEFAB").loops[0];
  const draw::OverviewAsked asked = numbered(town.roads(), loop);
  const Picture page = draw::overview(town.roads(), loop, asked, our_words())[0];
  CHECK(off_the_way(town.roads(), loop, asked, page) == 0);
  const MapFrame frame = draw::frame_of(town.roads(), loop, asked);
  const auto spot = [&](char letter) {
    return frame.spot_of(town.roads().nodes[town.node(letter).index()].at);
  };
  // Home is the middle of AB; the way drawn ends at A and begins at B.
  const Spot door{(spot('A').x + spot('B').x) / 2, spot('A').y};
  CHECK(distance_to_ink(page, door) > 10);
  CHECK(distance_to_ink(page, spot('B')) < 0.1);
  CHECK(distance_to_ink(page, spot('A')) < 0.1);
  const Spot not_driven{spot('B').x, (spot('B').y + spot('E').y) / 2};
  CHECK(distance_to_ink(page, not_driven) > 10);
}

TEST_CASE("a map of a way over the 180th meridian is the map of that way elsewhere", "[draw]") {
  mark::RawMap raw = drawn_square();
  const Point b = raw.find_node(osm_node('B'))->at;
  // Far enough for the letters left of B to lie west of it.
  for (mark::RawNode& node : raw.nodes)
    node.at = point_of_turn(node.at.lat_e7, 1'800'000'000 + lon_difference_e7(b, node.at));
  const BuiltTown across = built_town(raw, "GB-ENG"), elsewhere = square();
  const wish::Loop loop = honest_answer(across, "ABCDEFAB").loops[0];
  const draw::OverviewAsked asked = numbered(across.roads(), loop);
  const MapFrame frame = draw::frame_of(across.roads(), loop, asked);
  CHECK(frame.mm_per_m ==
        Approx(draw::frame_of(elsewhere.roads(), loop, asked).mm_per_m).epsilon(1e-6));
  CHECK(std::abs(frame.middle.lon()) == Approx(180).margin(1e-3));
  const auto pages = draw::overview(across.roads(), loop, asked, our_words());
  REQUIRE(pages.size() == 1);
  CHECK(off_the_way(across.roads(), loop, asked, pages[0]) == 0);
}

TEST_CASE("a map's scale bar is as long as it says, and its north is up", "[draw]") {
  const BuiltTown town = square();
  const wish::Loop loop = honest_answer(town, "ABCDEFAB").loops[0];
  const Picture page = draw::overview(town.roads(), loop, {}, our_words())[0];
  const MapFrame frame = draw::frame_of(town.roads(), loop, {});
  const std::vector<Words> words = words_on(page);
  const Words* said = find_words(words, "100 yd");
  REQUIRE(said != nullptr);
  // The bar is the level stroke left of its words.
  double bar = 0;
  for (const draw::Mark& mark : page.marks)
    if (const auto* stroke = std::get_if<draw::Stroke>(&mark))
      if (stroke->way.size() == 2 && stroke->way[0].y == stroke->way[1].y &&
          std::abs(stroke->way[0].y - middle_of(*said).y) < 2 && stroke->way[0].x < 2)
        bar = stroke->way[1].x - stroke->way[0].x;
  // C and D lie three rows of the drawing apart, 75 m; A and C ten columns, 250 m. A yard is 0.9144 m.
  const auto spot = [&](char letter) {
    return frame.spot_of(town.roads().nodes[town.node(letter).index()].at);
  };
  const double mm_per_m = bar / (100 * 0.9144);
  CHECK(spot('D').y - spot('C').y == Approx(75 * mm_per_m).epsilon(0.005));
  CHECK(spot('C').x - spot('A').x == Approx(250 * mm_per_m).epsilon(0.005));
  const Words* north = find_words(words, "N");
  REQUIRE(north != nullptr);
  CHECK(spot('C').y < spot('D').y);
}

TEST_CASE("a road driven both ways is two lines, each on the side one drives on", "[draw]") {
  const BuiltTown town = built_town(R"(
    A    B    C    D
  w1 AB   highway=residential
  w2 BC   highway=residential
  w3 CD   highway=residential
  )");
  const wish::Loop loop = honest_answer(town, "ABCDCBA").loops[0];
  const Picture page = draw::overview(town.roads(), loop, {}, our_words())[0];
  const MapFrame frame = draw::frame_of(town.roads(), loop, {});
  const auto at = [&](char letter) {
    return frame.spot_of(town.roads().nodes[town.node(letter).index()].at);
  };
  const Spot middle{(at('B').x + at('C').x) / 2, at('B').y};
  CHECK(distance_to_ink(page, middle) > 0.2);
  CHECK(distance_to_ink(page, {middle.x, middle.y - 1.3}) < 0.1);
  CHECK(distance_to_ink(page, {middle.x, middle.y + 1.3}) < 0.1);
}

TEST_CASE("a street that passes a small roundabout isn't led round it", "[draw]") {
  // The ring npqr is 60 m across; the loop drives the street south of it, 70 m from its middle.
  const BuiltTown town = built_town(draw_town(R"(
    A                B


           n
          r p
           q
    E      x         F
    I                J
  w1 AB    highway=residential
  w2 BF    highway=residential
  w3 FxE   highway=residential
  w4 EA    highway=residential
  w5 npqrn highway=tertiary junction=roundabout
  w6 AI    highway=residential
  w7 IJ    highway=residential
  w8 JB    highway=residential
  )",
                                              35),
                                    "GB-ENG");
  const wish::Loop loop = honest_answer(town, "ABFEAB").loops[0];
  const draw::OverviewAsked small{60, 72};
  const Picture page = draw::overview(town.roads(), loop, small, our_words())[0];
  const MapFrame frame = draw::frame_of(town.roads(), loop, small);
  const auto at = [&](char letter) {
    return frame.spot_of(town.roads().nodes[town.node(letter).index()].at);
  };
  const double middle = (at('E').x + at('F').x) / 2;
  // The ink is straight from E to F.
  for (const double x : {middle - 8, middle, middle + 8})
    CHECK(distance_to_ink(page, {x, at('E').y - 1.9}) > 0.5);
}

TEST_CASE("maps of lessons from several doors show nearly every number, with all words apart",
          "[draw]") {
  const read::Built county = built_map(county_file(), "GB-ENG");
  const road::Roads roads = road::view_of(county.tables, county.info);
  for (const road::NamedSpot& spot : roads.named_spots) {
    if (roads.text(spot.what) != "place=town") continue;
    INFO(roads.text(spot.name));
    const wish::Loop loop =
        lesson_loop(roads, nearest_door(roads, spot.at), {"turn-off:left=2", "emerge=2"});
    check_map(roads, loop, a4_box, 0.93);
    check_map(roads, loop, a5_box, 0.93);
  }
}

TEST_CASE("maps of random drives in the county hold their words apart", "[draw]") {
  const read::Built county = built_map(county_file(), "GB-ENG");
  const road::Roads roads = road::view_of(county.tables, county.info);
  for (const std::uint32_t seed : {1U, 2U, 3U, 4U}) {
    INFO("seed " << seed);
    const wish::Loop loop = random_loop(roads, seed, 150);
    check_map(roads, loop, a4_box, 1);
    check_map(roads, loop, a5_box, 1);
  }
}

TEST_CASE("what has no room on an enlarged part is shown on a part of it", "[draw]") {
  const read::Built county = built_map(county_file(), "GB-ENG");
  const road::Roads roads = road::view_of(county.tables, county.info);
  std::size_t nested = 0;
  for (std::uint32_t seed = 1; seed <= 12; ++seed) {
    const wish::Loop loop = random_loop(roads, seed, 150);
    draw::OverviewAsked asked = numbered(roads, loop);
    asked.width = a5_box.width, asked.height = a5_box.height;
    const std::vector<Picture> pages = draw::overview(roads, loop, asked, our_words());
    for (std::size_t i = 1; i < pages.size(); ++i)
      nested += find_words(words_on(pages[0]), part_name(i)) == nullptr ? 1 : 0;
  }
  CHECK(nested > 0);
}

TEST_CASE("maps of lessons in a real town show nearly every number, with all words apart",
          "[draw][real]") {
  if (!std::filesystem::exists(newport_file())) return;
  const read::Built town = built_map(newport_file(), "GB-WLS");
  const road::Roads roads = road::view_of(town.tables, town.info);
  for (const auto& [lat, lon] :
       {std::pair(51.5877, -2.9984), std::pair(51.59456, -2.9681), std::pair(51.5712, -3.0180)}) {
    INFO(lat << "," << lon);
    const Point door = nearest_door(roads, point_from_degrees(lat, lon));
    const wish::Loop loop = lesson_loop(roads, door, {"roundabout=3", "turn-off:right=4"});
    check_map(roads, loop, a4_box, 0.93);
    check_map(roads, loop, a5_box, 0.9);
  }
  for (const std::uint32_t seed : {1U, 2U, 3U}) {
    INFO("seed " << seed);
    const wish::Loop loop = random_loop(roads, seed, 150);
    // A drive at random comes through the same streets again and again.
    check_map(roads, loop, a4_box, 0.7);
    check_map(roads, loop, a5_box, 0.6);
  }
}

}  // namespace loopwright::test
