// The picture for the briefing: true to the map, exits counted as signs do, no words on words.
#include <catch2/catch.hpp>

#include <algorithm>

#include "draw/driven.hpp"
#include "draw/on_paper.hpp"
#include "support/tables_of_words.hpp"

namespace loopwright::test {
namespace {

using draw::Picture;

constexpr draw::Size size{92, 125};

constexpr const char* ring = R"(
      N
      B
 W  A   C  E
      D
      S
   w1 ABCDA junction=roundabout highway=tertiary name=Orlham_Ring
   w2 WA highway=tertiary name=Stavely_Road ref=B9951
   w3 NB highway=residential name=North_Street
   w4 CE highway=tertiary name=Orlham_Road
   w5 SD highway=residential name=South_Street
)";

constexpr const char* crossing = R"(
      N
  W   B   E
      S
   w1 WBE highway=tertiary name=High_Street
   w2 NBS highway=residential name=Mill_Street
)";

Picture sketch(const BuiltTown& town, std::string_view letters, draw::At at) {
  return draw::briefing_sketch(town.roads(), driven(town, letters), at,
                               {"Title", size, our_words()});
}

/// Of all between the first road and the last.
Picture sketch(const BuiltTown& town, std::string_view letters) {
  return sketch(town, letters, {0, driven(town, letters).stretches.size() - 1});
}

bool says(const Picture& picture, std::string_view words) {
  const auto labels = labels_in(picture);
  return std::any_of(labels.begin(), labels.end(), [&](const draw::Label& label) {
    return label.text.find(words) != std::string::npos;
  });
}

/// Where a label stands, clockwise from up round the middle of the drawing; -1 when it isn't there.
double seen_deg_of(const Picture& picture, std::string_view words) {
  for (const draw::Label& label : labels_in(picture))
    if (label.text == words) {
      const draw::Extent extent = draw::extent_of(label);
      const double left =
          label.type.align == draw::Align::middle ? label.at.x : label.at.x + extent.width / 2;
      return seen_deg(picture, {left, label.at.y + extent.height / 2});
    }
  return -1;
}

/// Strokes of that width.
std::size_t strokes_of(const Picture& picture, double width) {
  return static_cast<std::size_t>(
      std::count_if(picture.marks.begin(), picture.marks.end(), [&](const draw::Mark& mark) {
        const auto* stroke = std::get_if<draw::Stroke>(&mark);
        return stroke != nullptr && stroke->width == width;
      }));
}

/// Discs of paper with a line round them.
std::size_t wheels_in(const Picture& picture) {
  return static_cast<std::size_t>(
      std::count_if(picture.marks.begin(), picture.marks.end(), [&](const draw::Mark& mark) {
        const auto* disc = std::get_if<draw::Disc>(&mark);
        return disc != nullptr && disc->fill == draw::Ink::paper && disc->radius < 1 &&
               disc->line > 0;
      }));
}

}  // namespace

TEST_CASE("exits of a roundabout are numbered as its signs count them", "[draw]") {
  const BuiltTown town = built_town(ring);
  const Picture picture = sketch(town, "SDABCE");
  CHECK(label_faults(picture).empty());
  CHECK(seen_deg_of(picture, "1") == Approx(270).margin(25));
  CHECK(std::cos(seen_deg_of(picture, "2") * 3.14159 / 180) > 0.9);
  CHECK(seen_deg_of(picture, "3") == Approx(90).margin(25));
  CHECK(seen_deg_of(picture, "4") == Approx(180).margin(25));
  CHECK(says(picture, "Exit 3 of 4"));
  CHECK(says(picture, "Give way to traffic from the right."));
  CHECK(says(picture, "look"));
  for (const char* name : {"B9951 Stavely Road", "North Street", "Orlham Road", "South Street"}) {
    INFO(name);
    CHECK(says(picture, name));
  }
}

TEST_CASE("a note on the count of exits stands behind the number of the exit", "[draw]") {
  const BuiltTown town = built_town(ring);
  const Picture picture = draw::briefing_sketch(town.roads(), driven(town, "SDABCE"), {0, 4},
                                                {"Title", size, our_words(), "Another count."});
  CHECK(label_faults(picture).empty());
  const auto top_of = [&](std::string_view words) {
    for (const draw::Label& label : labels_in(picture))
      if (label.text.starts_with(words)) return label.at.y;
    return -1.0;
  };
  CHECK(top_of("Exit 3 of 4") > 0);
  CHECK(top_of("Exit 3 of 4") < top_of("Another count."));
  CHECK(top_of("Another count.") < top_of("Give way"));
}

TEST_CASE("where one drives on the right one gives way to the left on a roundabout", "[draw]") {
  const BuiltTown town = right_driving_ring();
  const Picture picture = sketch(town, "SDCBAW");
  CHECK(label_faults(picture).empty());
  CHECK(says(picture, "Give way to traffic from the left."));
  CHECK(seen_deg_of(picture, "1") == Approx(90).margin(25));
  CHECK(seen_deg_of(picture, "3") == Approx(270).margin(25));
  const double look = seen_deg_of(picture, "look");
  CHECK(look > 180);
}

TEST_CASE("the way keeps to its side of the road", "[draw]") {
  for (const auto& [region, on_left] : {std::pair{"GB-ENG", true}, std::pair{"DE", false}}) {
    const BuiltTown town = built_town(crossing, region);
    const Picture picture = sketch(town, "SBN");
    const auto way = way_in(picture);
    CHECK((way.front().x < picture.width / 2 - 0.5) == on_left);
    CHECK((way.front().x > picture.width / 2 + 0.5) == !on_left);
    CHECK(way.back().y < way.front().y);
  }
}

TEST_CASE("what the map doesn't say is said to be missing", "[draw]") {
  const BuiltTown plain = built_town(crossing);
  CHECK(says(sketch(plain, "SBE"), "not mapped"));
  const BuiltTown wide = built_town(R"(
      N
  W   B   E
      S
   w1 WBE highway=tertiary
   w2 NBS highway=residential width=6.4
)");
  CHECK_FALSE(says(sketch(wide, "SBE"), "Width"));
}

TEST_CASE("at a side road one gives way, and looks both ways when crossing traffic", "[draw]") {
  const BuiltTown town = built_town(R"(
  W   B   E
      S
   w1 WBE highway=tertiary
   w2 BS highway=residential
)");
  const Picture right = sketch(town, "SBE");
  CHECK(says(right, "Give way to traffic from both sides."));
  const auto labels = labels_in(right);
  CHECK(std::count_if(labels.begin(), labels.end(),
                      [](const draw::Label& label) { return label.text == "look"; }) == 2);
  CHECK(says(sketch(town, "SBW"), "Give way to traffic from the right."));
  CHECK(says(sketch(town, "EBS"), "first, but after people crossing"));
  CHECK(says(sketch(town, "WBS"), "Give way to oncoming traffic"));
}

TEST_CASE("a box junction is hatched between the roads that meet there", "[draw]") {
  const BuiltTown town = built_town(std::string(crossing) + "nB road_marking=box_junction\n");
  const Picture picture = sketch(town, "SBN");
  constexpr double hatch = 0.2;
  CHECK(strokes_of(picture, hatch) > 6);
  for (const draw::Mark& mark : picture.marks)
    if (const auto* stroke = std::get_if<draw::Stroke>(&mark))
      if (stroke->width == hatch)
        for (const draw::Spot spot : stroke->way) {
          // The roads are 6 m wide or less, the ground shown is 32 m from the middle to the edge.
          CHECK(std::abs(spot.x - picture.width / 2) < 10);
        }
  CHECK(says(picture, "Hatched box"));
  CHECK(strokes_of(sketch(built_town(crossing), "SBN"), hatch) == 0);
  CHECK_FALSE(says(sketch(built_town(crossing), "SBN"), "Hatched box"));
}

TEST_CASE("a box for cyclists lies before the lights of the road that has one", "[draw]") {
  constexpr const char* lights = R"(
      N
  W   B   E
      A
      S
   w1 WBE highway=tertiary
   w2 NBAS highway=residential
   nB highway=traffic_signals
)";
  const BuiltTown plain = built_town(draw_town(lights, 15), "GB-ENG");
  const BuiltTown boxed = built_town(
      draw_town(std::string(lights) + "nA cycleway=asl direction=backward\n", 15), "GB-ENG");
  const Picture picture = sketch(boxed, "SABN", {1, 2});
  CHECK(label_faults(picture).empty());
  CHECK(wheels_in(picture) == 2);
  CHECK(wheels_in(sketch(plain, "SBN")) == 0);
  CHECK(says(picture, "box for cyclists"));
  CHECK_FALSE(says(sketch(plain, "SBN"), "box for cyclists"));
  // It is for who comes from S: told to nobody else, but drawn.
  const Picture other = sketch(boxed, "NBAS", {0, 1});
  CHECK(wheels_in(other) == 2);
  CHECK_FALSE(says(other, "box for cyclists"));
}

TEST_CASE("a level crossing tells its kind as far as it is mapped", "[draw]") {
  const BuiltTown town = built_town(R"(
     S  X  N
        R
   w1 SXN highway=tertiary
   w9 RX railway=rail
   nX railway=level_crossing crossing:barrier=half crossing:light=yes
)");
  const Picture picture = sketch(town, "SXN");
  CHECK(says(picture, "Half barriers, lights."));
  CHECK(says(picture, "never stop on it"));
  CHECK(label_faults(picture).empty());
}

TEST_CASE("the way keeps to the lane whose arrows lead there, and the words name it", "[draw]") {
  const BuiltTown town = built_town(R"(
      N
  W   B   E
      S
   w1 WBE highway=tertiary
   w2 NB highway=residential
   w3 SB highway=residential lanes=3 lanes:forward=2 lanes:backward=1 turn:lanes:forward="left;through|right"
   nB highway=traffic_signals
)");
  const Picture left = sketch(town, "SBW");
  const Picture right = sketch(town, "SBE");
  // Two lanes of three metres: the left ones, the second of them in the middle of the road.
  CHECK(way_in(left).front().x < left.width / 2 - 2);
  CHECK(way_in(right).front().x == Approx(right.width / 2).margin(0.5));
  CHECK(says(left, "2 lanes on the way in: the left one, by the arrows mapped."));
  CHECK(says(right, "2 lanes on the way in: the right one, by the arrows mapped."));
}

TEST_CASE("at lights one gives way to oncoming traffic only where a road lies ahead", "[draw]") {
  const BuiltTown cross = built_town(R"(
      N
  W   B   E
      S
   w1 WBE highway=tertiary
   w2 NBS highway=residential
   nB highway=traffic_signals
)");
  CHECK(says(sketch(cross, "SBE"), "going right, give way to oncoming traffic"));
  CHECK_FALSE(says(sketch(cross, "SBN"), "oncoming"));
  const BuiltTown tee = built_town(R"(
  W   B   E
      S
   w1 WBE highway=tertiary
   w2 BS highway=residential
   nB highway=traffic_signals
)");
  CHECK_FALSE(says(sketch(tee, "SBE"), "oncoming"));
  CHECK_FALSE(says(sketch(tee, "SBE"), "look"));
}

TEST_CASE("a road one may not enter says so", "[draw]") {
  const BuiltTown town = built_town(R"(
      N
  W   B   E
      S
   w1 WBE highway=tertiary
   w2 NB highway=residential oneway=yes name=North_Street
   w3 SB highway=residential
)");
  CHECK(says(sketch(town, "SBE"), "North Street\nno entry"));
  CHECK_FALSE(says(sketch(built_town(crossing), "SBE"), "no entry"));
}

TEST_CASE("on a sheet wider than high the words stand beside the picture", "[draw]") {
  const BuiltTown town = built_town(ring);
  const wish::Loop loop = driven(town, "WABCE");
  constexpr draw::Size wide{133, 86};
  const Picture picture = draw::briefing_sketch(town.roads(), loop, {0, loop.stretches.size() - 1},
                                                {"Title", wide, our_words()});
  CHECK(badly_set(picture).empty());
  std::size_t beside = 0;
  for (const Words& words : words_on(picture)) {
    if (words.text.find("North Street") != std::string::npos)
      CHECK(words.corners[1].x < wide.width * 2 / 3);
    if (!words.text.starts_with("Exit ") && !words.text.starts_with("Hardness")) continue;
    ++beside;
    CHECK(words.corners[0].x > wide.width * 2 / 3);
    CHECK(words.corners[2].y < wide.height);
  }
  CHECK(beside == 2);
}

TEST_CASE("no words in a picture are smaller than 9 pt", "[draw]") {
  const BuiltTown town = built_town(ring);
  for (const draw::Label& label : labels_in(sketch(town, "SDABCE"))) CHECK(label.type.points >= 9);
}

}  // namespace loopwright::test
