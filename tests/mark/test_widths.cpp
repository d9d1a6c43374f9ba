#include <catch2/catch.hpp>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

using road::RoadClass;

Widths two_way(Tags tags) {
  return widths_of(tags, RoadClass::residential, false);
}

TEST_CASE("a road without width tags has no width, and nobody makes one up", "[mark]") {
  const Widths widths = two_way({});
  CHECK(widths.width_m == 0);
  CHECK(widths.usable_m == 0);
  CHECK_FALSE(widths.narrow);
  CHECK_FALSE(widths.single_track);
  CHECK(widths.tag.empty());
}

// OSM wiki, Key:width.
TEST_CASE("widths are read in metres, or in feet and inches", "[mark]") {
  CHECK(read_width("4.5") == 4.5);
  CHECK(read_width("4.5 m") == 4.5);
  CHECK(read_width("4.5m") == 4.5);
  CHECK(read_width("12'6\"").value() == Approx(3.81));
  CHECK(read_width("12' 6\"").value() == Approx(3.81));
  CHECK(read_width("16'").value() == Approx(4.8768));
  CHECK(read_width("16 ft").value() == Approx(4.8768));
}

TEST_CASE("wrong forms of a width are not read", "[mark]") {
  for (const char* text :
       {"", "narrow", "2km", "0,6", "4-5", "'", "12'6", "-3", "12'x\"", "3 m m"}) {
    CHECK_FALSE(read_width(text));
  }
}

// Manual for Streets, figure 7.1 (secondary quotations): 4.1 m two cars, 4.8 m car and lorry.
TEST_CASE("two-way roads are sorted by the width of their carriageway", "[mark]") {
  CHECK(two_way({{"width", "4.0"}}).single_track);
  CHECK_FALSE(two_way({{"width", "4.1"}}).single_track);
  CHECK(two_way({{"width", "4.1"}}).narrow);
  CHECK(two_way({{"width", "4.7"}}).narrow);
  CHECK_FALSE(two_way({{"width", "4.8"}}).narrow);
  CHECK(two_way({{"width", "4.5"}}).certain);
  CHECK(two_way({{"width", "4.5"}}).tag == "width=4.5");
  CHECK(two_way({{"width", "12'6\""}}).single_track);
}

TEST_CASE("a guessed width is no certain one", "[mark]") {
  CHECK(two_way({{"est_width", "4"}}).single_track);
  CHECK_FALSE(two_way({{"est_width", "4"}}).certain);
  CHECK(two_way({{"est_width", "4"}, {"width", "6"}}).width_m == 6);
  CHECK(two_way({{"width", "900"}}).width_m == 0);
}

TEST_CASE("one lane for both directions is single-track", "[mark]") {
  const Widths widths = two_way({{"lanes", "1"}});
  CHECK(widths.single_track);
  CHECK(widths.certain);
  CHECK(widths.tag == "lanes=1");
  CHECK(widths.width_m == 0);
  CHECK(two_way({{"lanes", "1.5"}}).narrow);
  CHECK_FALSE(two_way({{"lanes", "1.5"}}).single_track);
  CHECK_FALSE(two_way({{"lanes", "2"}}).narrow);
}

TEST_CASE("one lane on a wide carriageway only lacks its line", "[mark]") {
  CHECK_FALSE(two_way({{"lanes", "1"}, {"width", "5.5"}}).narrow);
}

TEST_CASE("passing places and narrow=yes say what they say", "[mark]") {
  CHECK(two_way({{"passing_places", "yes"}}).single_track);
  CHECK(two_way({{"narrow", "yes"}}).narrow);
  CHECK_FALSE(two_way({{"narrow", "yes"}}).single_track);
}

TEST_CASE("cars parked both sides of a 6 m road leave 2 m: single file, not blocked", "[mark]") {
  for (const Tags& tags : {Tags{{"width", "6"}, {"parking:both", "lane"}},
                           Tags{{"width", "6"}, {"parking:lane:both", "parallel"}}}) {
    const Widths widths = two_way(tags);
    CHECK(widths.width_m == 6);
    CHECK(widths.usable_m == 2);
    CHECK(widths.parked_both);
    CHECK(widths.narrow);
    CHECK_FALSE(widths.single_track);
    CHECK_FALSE(widths.certain);
  }
  CHECK(two_way({{"width", "6"}, {"parking:both", "lane"}}).tag == "width=6 parking:both=lane");
}

TEST_CASE("cars on the kerb or in bays take less or nothing", "[mark]") {
  const auto left = [](Tags tags) { return two_way(std::move(tags)).usable_m; };
  CHECK(left({{"width", "8"}, {"parking:left", "lane"}}) == 6);
  CHECK(left({{"width", "8"}, {"parking:both", "half_on_kerb"}}) == 6);
  CHECK(left({{"width", "8"}, {"parking:both", "on_kerb"}}) == 8);
  CHECK(left({{"width", "8"}, {"parking:both", "street_side"}}) == 8);
  CHECK(
      left({{"width", "9"}, {"parking:left", "lane"}, {"parking:left:orientation", "diagonal"}}) ==
      4.5);
  CHECK(left({{"width", "9"},
              {"parking:right", "lane"},
              {"parking:both:orientation", "perpendicular"}}) == 4);
}

TEST_CASE("a road that parked cars would fill has no width that is known", "[mark]") {
  CHECK(two_way({{"width", "5"}, {"parking:both", "lane"}}).usable_m == 0);
  CHECK(two_way({{"width", "5"}, {"parking:left", "lane"}}).usable_m == 3);
}

TEST_CASE("a side where parking is banned at all times holds no cars", "[mark]") {
  CHECK(two_way(
            {{"width", "6"}, {"parking:both", "lane"}, {"parking:left:restriction", "no_parking"}})
            .usable_m == 4);
  CHECK(two_way({{"width", "6"}, {"parking:left", "no"}, {"parking:right", "no"}}).usable_m == 6);
}

// OSM wiki, Key:parking:lane (deprecated, still in the map).
TEST_CASE("the older parking tags are read too", "[mark]") {
  const auto left = [](Tags tags) { return two_way(std::move(tags)).usable_m; };
  CHECK(left({{"width", "8"}, {"parking:lane:left", "parallel"}}) == 6);
  CHECK(left({{"width", "8"},
              {"parking:lane:both", "parallel"},
              {"parking:lane:both:parallel", "half_on_kerb"}}) == 6);
  CHECK(left({{"width", "8"}, {"parking:lane:both", "no_parking"}}) == 8);
  CHECK(left({{"width", "9"}, {"parking:lane:right", "orthogonal"}}) == 4);
  CHECK(left({{"width", "8"}, {"parking:lane:left", "parallel"}, {"parking:left", "no"}}) == 8);
}

TEST_CASE("a terrace parked both sides is narrow, though nobody measured it", "[mark]") {
  const Widths widths = two_way({{"parking:both", "lane"}});
  CHECK(widths.narrow);
  CHECK_FALSE(widths.certain);
  CHECK(widths.usable_m == 0);
  CHECK(widths.tag == "parking:both=lane");
  CHECK_FALSE(two_way({{"parking:both", "lane"}, {"lanes", "2"}}).narrow);
  CHECK_FALSE(two_way({{"parking:left", "lane"}}).narrow);
  CHECK_FALSE(widths_of({{"parking:both", "lane"}}, RoadClass::primary, false).narrow);
}

TEST_CASE("parking that leaves no room for a car contradicts the width", "[mark]") {
  const Widths widths = two_way({{"width", "4.5"}, {"parking:both", "lane"}});
  CHECK(widths.usable_m == 0);
  CHECK(widths.narrow);
  CHECK_FALSE(widths.certain);
}

TEST_CASE("a measured effective width is believed", "[mark]") {
  const Widths widths =
      two_way({{"width", "7"}, {"parking:both", "lane"}, {"width:effective", "4.2"}});
  CHECK(widths.usable_m == 4.2);
  CHECK(widths.narrow);
  CHECK(widths.certain);
  CHECK(widths.tag == "width:effective=4.2");
}

TEST_CASE("a mandatory cycle lane takes its part of the road", "[mark]") {
  CHECK(two_way({{"width", "7"}, {"cycleway:both", "lane"}, {"cycleway:both:lane", "exclusive"}})
            .usable_m == 4);
  CHECK(two_way({{"width", "7"}, {"cycleway:both", "lane"}, {"cycleway:both:lane", "advisory"}})
            .usable_m == 7);
  // More than there is: the tags contradict each other, and what is left isn't known.
  CHECK(two_way({{"width", "2.5"}, {"cycleway:both", "lane"}, {"cycleway:both:lane", "exclusive"}})
            .usable_m == 0);
}

TEST_CASE("a one-way street is narrow only when it is single file and tight", "[mark]") {
  const auto one_way = [](Tags tags) { return widths_of(tags, RoadClass::residential, true); };
  CHECK_FALSE(one_way({{"lanes", "1"}}).narrow);
  CHECK_FALSE(one_way({{"width", "3"}}).narrow);
  CHECK(one_way({{"width", "2.7"}}).narrow);
  CHECK_FALSE(one_way({{"width", "2.7"}}).single_track);
  CHECK(one_way({{"width", "4.5"}, {"parking:left", "lane"}}).narrow);
}

}  // namespace
}  // namespace loopwright::mark
