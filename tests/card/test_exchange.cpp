// GPX and GeoJSON of a drive. What other programs make of the same files: outside_readers.py.
#include <catch2/catch.hpp>
#include <regex>

#include "card/card_town.hpp"
#include "loopwright/card/calendar.hpp"
#include "loopwright/card/card.hpp"
#include "support/golden.hpp"

namespace loopwright::test {
namespace {

using Catch::Contains;

std::string gpx_of(const BuiltTown& town, const wish::Answer& answer) {
  return card::write_gpx({town.roads(), answer, answer.loops[0], {}});
}

std::vector<Point> track_of(const std::string& gpx) {
  const std::regex point("<trkpt lat=\"([-0-9.]+)\" lon=\"([-0-9.]+)\"/>");
  std::vector<Point> track;
  for (auto it = std::sregex_iterator(gpx.begin(), gpx.end(), point); it != std::sregex_iterator();
       ++it)
    track.push_back(point_from_degrees(std::stod((*it)[1]), std::stod((*it)[2])));
  return track;
}

/// Signal Terrace with a bend between both its corners, where the door is.
BuiltTown town_with_a_bend() {
  return built_town(draw_town(R"(
    A     B

  c

    E     F
  w1 AB   highway=residential name=Lantern_Row
  w2 EcA  highway=residential name=Signal_Terrace
  w3 BF   highway=residential name=Mill_Orchard
  w4 FE   highway=residential name=Weir_Street
  )",
                              100),
                    "GB-ENG");
}

}  // namespace

TEST_CASE("the exchange files of a small town are as approved", "[card]") {
  const BuiltTown town = built_card_town();
  const wish::Answer answer = card_answer(town);
  check_golden("town-drive.gpx", gpx_of(town, answer));
  check_golden("town-drive.geojson",
               card::write_geojson({town.roads(), answer, answer.loops[0], {}}));
  check_golden("town-lesson.ics",
               card::write_calendar({town.roads(), answer, answer.loops[0], {}}, {"WREN"}));
}

// RFC 5545, 3.8.2.2: DTEND is when the calendar component ends.
TEST_CASE("a lesson's entry in the calendar ends with the lesson, not with the drive", "[card]") {
  const BuiltTown town = built_card_town();
  const wish::Answer answer = card_answer(town);
  const std::string entry =
      card::write_calendar({town.roads(), answer, answer.loops[0], {}}, {"WREN", 60});
  CHECK_THAT(entry, Contains("DTSTART:20261128T150000Z"));
  CHECK_THAT(entry, Contains("DTEND:20261128T160000Z"));
}

TEST_CASE("an exchange file leads from corner to corner, never to the door", "[card]") {
  const BuiltTown town = town_with_a_bend();
  const road::Roads roads = town.roads();
  const wish::Answer answer = honest_answer(town, "EABFEA");
  const std::vector<Point> track = track_of(gpx_of(town, answer));
  REQUIRE(track.size() == 4);
  CHECK(track.front() == roads.nodes[town.node('A').index()].at);
  CHECK(track.back() == roads.nodes[town.node('E').index()].at);
  const std::string geojson = card::write_geojson({roads, answer, answer.loops[0], {}});
  // The bend 'c' lies on the home piece only; its longitude is west of all corners.
  const Point bend = roads.shape_of(town.stretch("EA").piece())[1];
  std::string digits = std::to_string(bend.lon_e7);
  CHECK_THAT(geojson, !Contains("2." + digits.substr(1)));
  CHECK_THAT(gpx_of(town, answer), !Contains("2." + digits.substr(1)));
}

TEST_CASE("a drive that never leaves its first piece has points but no line", "[card]") {
  const BuiltTown town = built_town(draw_town(R"(
  A       B
  w1 AB highway=residential name=Lantern_Row
  )",
                                              100),
                                    "GB-ENG");
  const wish::Answer answer = honest_answer(town, "ABA");
  CHECK(track_of(gpx_of(town, answer)).size() == 1);
  const std::string geojson = card::write_geojson({town.roads(), answer, answer.loops[0], {}});
  CHECK_THAT(geojson, !Contains("LineString") && Contains("\"Point\""));
}

TEST_CASE("names that look like markup, or aren't text at all, do no harm", "[card]") {
  std::string drawing(card_town);
  const std::string_view street = "name=Fold_Lane";
  drawing.replace(drawing.find(street), street.size(),
                  "name=\"<A> & 'B' \x01\xff \xc0\xaf \xed\xa0\x80 Straße\"");
  const BuiltTown town = built_town(draw_town(drawing, 100), "GB-ENG");
  const std::string gpx = gpx_of(town, card_answer(town));
  const std::string bad = "\uFFFD";
  // Control character, stray byte, overlong '/', surrogate: XML 1.0 section 2.2 and RFC 3629; one
  // mark for each byte that begins nothing: Unicode 15.0, 3.9 (maximal subparts).
  const std::string name = "'B' " + bad + bad + " " + bad + bad + " " + bad + bad + bad + " Straße";
  CHECK_THAT(gpx, Contains("&lt;A&gt; &amp; " + name));
  const std::string geojson =
      card::write_geojson({town.roads(), card_answer(town), card_answer(town).loops[0], {}});
  CHECK_THAT(geojson, Contains("<A> & " + name));
}

TEST_CASE("an exchange file carries the credit and the cautions", "[card]") {
  const BuiltTown town = built_card_town();
  const wish::Answer answer = card_answer(town);
  const std::string gpx = gpx_of(town, answer);
  CHECK_THAT(gpx, Contains("© OpenStreetMap contributors, ODbL") && Contains("opendatacommons") &&
                      Contains("never stop on it") &&
                      Contains("<time>2026-11-28T15:00:00Z</time>"));
  const std::string geojson = card::write_geojson({town.roads(), answer, answer.loops[0], {}});
  CHECK_THAT(geojson,
             Contains("\"credit\": \"map © OpenStreetMap") && Contains("never stop on it"));
}

TEST_CASE("the time of a drive abroad is written in universal time", "[card]") {
  const BuiltTown town = built_card_town("LI");
  wish::Answer answer = honest_answer(town, "EABCGxHLOKGCBAE");
  answer.loops[0].start.offset_s = 3600;
  CHECK_THAT(gpx_of(town, answer), Contains("<time>2026-11-28T15:00:00Z</time>"));
  CHECK_THAT(card::write_text({town.roads(), answer, answer.loops[0], {}}),
             Contains("2026, 16:00"));
}

}  // namespace loopwright::test
