#include <catch2/catch.hpp>

#include "mark/shape_town.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using test::is_run;
using test::why_run;

std::string why(const std::string& tags) {
  return why_run(test::built_town("A                B\nw1 AB " + tags + "\n"), "AB",
                 Kind::meeting_traffic);
}

struct Terrace {
  double frontage_m = 5;
  double off_m = 15;  ///< from the middle of the road to the middle of the houses
  bool both_sides = true;
  std::string street = {};  ///< of the addresses
  std::string tags = "highway=residential name=Lantern_Row maxspeed=\"30 mph\"";
  std::string nodes = "A       B";  ///< of the street, 25 m a character
  std::string more = {};            ///< further lines of the drawing
  int flats = 1;                    ///< numbers at each door
  std::string region = "GB-ENG";
};

void add_home(mark::RawMap& raw, Point door, const std::string& street) {
  RawFeature home;
  home.object = {static_cast<std::int64_t>(10'000 + raw.features.size()), ObjectType::node, {}};
  home.at = door;
  home.tags.add("addr:housenumber", std::to_string(raw.features.size() + 1));
  if (!street.empty()) home.tags.add("addr:street", street);
  raw.features.push_back(home);
}

/// A street with rows of houses along it.
test::BuiltTown street_of(const Terrace& terrace) {
  std::string letters;
  for (const char c : terrace.nodes) {
    if (c != ' ') letters += c;
  }
  mark::RawMap raw = test::draw_town(terrace.nodes + "\n" + terrace.more + "w1 " + letters + " " +
                                     terrace.tags + "\n");
  const Point from = raw.find_node(test::osm_node('A'))->at;
  const Point to = raw.find_node(test::osm_node('B'))->at;
  const double whole = distance_m(from, to), lat_off = terrace.off_m / 111'300;
  for (int i = 0; (i + 0.5) * terrace.frontage_m < whole; ++i) {
    for (const int side : {1, -1}) {
      if (side < 0 && !terrace.both_sides) continue;
      const double share = (i + 0.5) * terrace.frontage_m / whole;
      const Point door = point_from_degrees(from.lat() + side * lat_off,
                                            from.lon() + share * (to.lon() - from.lon()));
      for (int flat = 0; flat < terrace.flats; ++flat) add_home(raw, door, terrace.street);
    }
  }
  return test::built_town(raw, terrace.region);
}

bool meets(const Terrace& terrace) {
  return is_run(street_of(terrace), "AB", Kind::meeting_traffic);
}

TEST_CASE("a plain street promises no meeting", "[mark]") {
  CHECK(why("highway=residential").empty());
  CHECK(why("highway=residential width=6").empty());
}

TEST_CASE("cars parked on a road of 6 m leave one to wait, by either scheme", "[mark]") {
  CHECK(why("highway=residential width=6 parking:both=lane") ==
        "width=6 parking:both=lane inferred");
  CHECK(why("highway=residential width=6 parking:lane:left=parallel") ==
        "width=6 parking:lane:left=parallel inferred");
  CHECK(why("highway=residential parking:both=lane") == "parking:both=lane inferred");
}

TEST_CASE("an effective width is what was measured", "[mark]") {
  CHECK(why("highway=residential width=7 width:effective=3.5") == "width:effective=3.5 certain");
  CHECK(why("highway=residential width=7 width:effective=5.5 parking:both=lane").empty());
}

TEST_CASE("a road narrow by itself is a narrow road, not one with parked cars", "[mark]") {
  CHECK(why("highway=residential width=4.5").empty());
  CHECK(why("highway=residential width=4 width:effective=4").empty());
}

TEST_CASE("cars in bays, one-way streets and fast roads make no meeting", "[mark]") {
  CHECK(why("highway=residential width=6 parking:both=street_side").empty());
  CHECK(why("highway=residential oneway=yes width=6 parking:both=lane").empty());
  CHECK(why("highway=tertiary maxspeed=\"40 mph\" width=6 parking:both=lane").empty());
}

TEST_CASE("rows of houses without drives: cars are likely parked, as a guess", "[mark]") {
  const test::BuiltTown town = street_of({});
  CHECK(why_run(town, "AB", Kind::meeting_traffic) ==
        "40 houses in 100 m, no drives mapped: cars likely parked inferred");
  CHECK(is_run(town, "BA", Kind::meeting_traffic));
}

TEST_CASE("houses with room for a drive between them leave the road free", "[mark]") {
  CHECK(meets({.frontage_m = 7}));
  CHECK_FALSE(meets({.frontage_m = 9}));
}

TEST_CASE("a dense terrace on one side fills a street, a loose one doesn't", "[mark]") {
  CHECK(meets({.frontage_m = 5, .both_sides = false}));
  CHECK_FALSE(meets({.frontage_m = 6.5, .both_sides = false}));
}

TEST_CASE("houses far off or of the next street don't fill this one", "[mark]") {
  CHECK_FALSE(meets({.off_m = 40}));
  CHECK_FALSE(meets({.street = "Mill Street"}));
  CHECK(meets({.street = "Lantern Row"}));
}

TEST_CASE("a terrace that the map says is free of parked cars is believed", "[mark]") {
  const std::string street = "highway=residential maxspeed=\"30 mph\" ";
  CHECK_FALSE(meets({.tags = street + "parking:both=no"}));
  CHECK_FALSE(meets({.tags = street + "parking:both=street_side"}));
  CHECK_FALSE(meets({.tags = street + "parking:lane:both=no_parking"}));
  CHECK(meets({.tags = street + "parking:left=no"}));
  CHECK_FALSE(meets({.tags = street + "width=9"}));
  CHECK_FALSE(meets({.tags = street + "oneway=yes"}));
  CHECK_FALSE(meets({.tags = "highway=primary maxspeed=\"30 mph\""}));
  CHECK_FALSE(meets({.tags = "highway=residential maxspeed=\"40 mph\""}));
}

TEST_CASE("flats at one door are one house", "[mark]") {
  CHECK_FALSE(meets({.frontage_m = 9, .flats = 3}));
}

TEST_CASE("drives that the map shows are where the cars stand", "[mark]") {
  const std::string drives =
      " dcfehg\n"
      "w2 Dd highway=service service=driveway\nw3 Cc highway=service service=driveway\n"
      "w4 Ff highway=service service=driveway\nw5 Ee highway=service service=driveway\n"
      "w6 Hh highway=service service=driveway\nw7 Gg highway=service service=driveway\n";
  const std::string street = "highway=residential maxspeed=\"30 mph\"";
  CHECK(meets({.tags = street, .nodes = "ADCFEHGB"}));
  CHECK_FALSE(meets({.tags = street, .nodes = "ADCFEHGB", .more = drives}));
}

TEST_CASE("rows of houses mean parked cars in Britain, elsewhere nobody knows", "[mark]") {
  CHECK(meets({.region = "IE"}));
  CHECK_FALSE(meets({.region = "FR"}));
}

TEST_CASE(
    "on a street of two lanes, of a known width or on a bigger road, parked cars aren't guessed at",
    "[mark]") {
  CHECK(why("highway=residential parking:both=lane lanes=1") == "parking:both=lane inferred");
  CHECK(why("highway=residential parking:both=lane lanes=2").empty());
  CHECK(why("highway=secondary parking:both=lane").empty());
  CHECK(why("highway=residential parking:left=lane").empty());
}

}  // namespace
}  // namespace loopwright::mark
