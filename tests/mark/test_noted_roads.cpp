// Runs of road, limits, closures, plates and kerbs as notes change them.
#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "mark/noted_town.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;
using road::Note;
using road::NoteKind;
using test::middle;
using test::note_at;
using test::NotedTown;

const char* const three_streets = R"(
    A     B       C     D
                  |
                  E
  w1 AB highway=tertiary maxspeed="30 mph"
  w2 BC highway=tertiary maxspeed="30 mph"
  w3 CD highway=tertiary maxspeed="30 mph"
  w4 CE highway=tertiary maxspeed="30 mph"
  )";

TEST_CASE("without notes the roads are the map's, and nothing is copied", "[mark]") {
  const NotedTown town(test::built_town(three_streets), {});
  CHECK(town.roads().stretches.data() == town.base.stretches.data());
  CHECK(town.roads().chances.data() == town.base.chances.data());
  CHECK(town.roads().text_bytes.data() == town.base.text_bytes.data());
  CHECK(town.said().empty());
}

TEST_CASE("a street noted as narrow is met from both its ends", "[mark]") {
  const test::BuiltTown built = test::built_town(three_streets);
  const NotedTown town(built, {note_at(NoteKind::narrow, middle(built, "BC"))});
  CHECK(town.is("BC", Kind::narrow_road));
  CHECK(town.is("CB", Kind::narrow_road));
  CHECK_FALSE(town.is("CD", Kind::narrow_road));
  const auto found = town.chances(Kind::narrow_road);
  REQUIRE(found.size() == 2);
  for (const road::Chance& chance : found) {
    CHECK(chance.confidence == Confidence::noted);
    CHECK(town.roads().text(chance.tag) == "noted 2026-10-03: narrow");
    CHECK(chance.source == OsmObject{2, ObjectType::way, {}});
  }
  CHECK(std::ranges::is_sorted(town.roads().chances, {}, &road::Chance::entry));
  CHECK(town.roads().run_facts_of(built.stretch("BC")).size() == 1);
  CHECK(town.base.run_facts_of(built.stretch("BC")).empty());
  CHECK(town.roads().nodes.data() == town.base.nodes.data());
  CHECK(town.roads().turns.data() == town.base.turns.data());
}

TEST_CASE("a noted street makes one run with the narrow road it goes on from", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
    A     B     C     D     E
  w1 AB highway=tertiary
  w2 BC highway=tertiary width=4.5
  w3 CD highway=tertiary
  w4 DE highway=tertiary
  )");
  const NotedTown town(built, {note_at(NoteKind::narrow, middle(built, "CD"))});
  const road::RunFact mapped = town.fact("BC", Kind::narrow_road);
  const road::RunFact noted = town.fact("CD", Kind::narrow_road);
  CHECK(mapped.confidence == Confidence::certain);
  CHECK(noted.confidence == Confidence::noted);
  CHECK(noted.place == mapped.place);
  CHECK(town.roads().places[mapped.place.index()].length_m == Approx(300).margin(2));
  const auto found = town.chances(Kind::narrow_road);
  REQUIRE(found.size() == 2);  // into the map's part, and into the noted one
  CHECK(found[0].confidence != found[1].confidence);
}

TEST_CASE("a note for one heading speaks of one direction", "[mark]") {
  const test::BuiltTown built = test::built_town(three_streets);
  Note note = note_at(NoteKind::narrow, middle(built, "BC"));
  note.heading_deg = 90;  // eastwards, as the row of letters runs
  const NotedTown town(built, {note});
  CHECK(town.is("BC", Kind::narrow_road));
  CHECK_FALSE(town.is("CB", Kind::narrow_road));
}

TEST_CASE("a noted line speaks of the streets it runs along, not of those it passes", "[mark]") {
  const test::BuiltTown built = test::built_town(three_streets);
  Note note = note_at(NoteKind::narrow, test::corner(built, 'B'));
  note.line.push_back(test::corner(built, 'D'));
  const NotedTown town(built, {note});
  CHECK(town.is("BC", Kind::narrow_road));
  CHECK(town.is("CD", Kind::narrow_road));
  CHECK_FALSE(town.is("CE", Kind::narrow_road));
  CHECK_FALSE(town.is("AB", Kind::narrow_road));
}

TEST_CASE("a note that can't be laid is told, and changes nothing", "[mark]") {
  const test::BuiltTown built = test::built_town(three_streets);
  const NotedTown town(built, {note_at(NoteKind::narrow, point_from_degrees(54.31, 2.61)),
                               note_at(NoteKind::narrow, middle(built, "CE"))});
  CHECK(town.said() ==
        "1: no road that it fits within 30 m; "
        "2: too short: a pass of narrow-road takes 100 m");
  CHECK(town.chances(Kind::narrow_road).empty());
}

TEST_CASE("what a tag is sure of stays the map's", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
    A     B     C     D
  w1 AB highway=tertiary
  w2 BC highway=tertiary width=4.5
  w3 CD highway=tertiary width=7
  )");
  const NotedTown town(built, {note_at(NoteKind::narrow, middle(built, "BC")),
                               note_at(NoteKind::narrow, middle(built, "CD"))});
  CHECK(town.said() ==
        "1: the map is sure of it too; 2: the map has a width in which two cars pass");
  CHECK(town.fact("BC", Kind::narrow_road).confidence == Confidence::certain);
  CHECK(town.fact("CD", Kind::narrow_road).confidence == Confidence::noted);
}

TEST_CASE("a road that isn't narrow after all is none", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
    A     B     C     D
  w1 AB highway=tertiary
  w2 BC highway=tertiary width=4.5
  w3 CD highway=tertiary
  )");
  Note note = note_at(NoteKind::not_so, middle(built, "BC"));
  note.kind = Kind::narrow_road;
  Note needless = note;
  needless.line = {middle(built, "CD")};
  const NotedTown town(built, {note, needless});
  CHECK_FALSE(town.is("BC", Kind::narrow_road));
  CHECK(town.chances(Kind::narrow_road).empty());
  CHECK(town.said() == "2: the map has no narrow-road here");
}

TEST_CASE("a closed road isn't driven while it is closed", "[mark]") {
  const test::BuiltTown built = test::built_town(three_streets);
  Note note = note_at(NoteKind::closed, middle(built, "BC"));
  note.from = Date{2026, 11, 2}, note.until = Date{2026, 11, 28};
  const NotedTown shut(built, {note});
  CHECK_FALSE(shut.roads().drivable(built.stretch("BC")));
  CHECK_FALSE(shut.roads().drivable(built.stretch("CB")));
  CHECK(shut.roads().turns_from(StateId{built.stretch("AB").index()}).size() <
        shut.base.turns_from(StateId{built.stretch("AB").index()}).size());
  for (const road::Turn& turn : shut.roads().turns) {
    CHECK(shut.roads().drivable(shut.roads().stretch_of(turn.to)));
  }
  for (const road::Chance& chance : shut.roads().chances) {
    for (const StretchId s : shut.roads().path_of(chance)) CHECK(shut.roads().drivable(s));
  }
  note.until = Date{2026, 11, 27};
  const NotedTown open(built, {note});
  CHECK(open.roads().drivable(built.stretch("BC")));
  CHECK(open.roads().stretches.data() == open.base.stretches.data());
}

TEST_CASE("a road for never is shut at its hours, and always when they can't be read", "[mark]") {
  const test::BuiltTown built = test::built_town(three_streets);
  const auto drivable_with = [&](const char* hours) {
    Note note = note_at(NoteKind::never, middle(built, "BC"));
    note.hours = hours;
    return NotedTown(built, {note}).roads().drivable(built.stretch("BC"));
  };
  CHECK(drivable_with("Mo-Fr 08:00-09:00"));
  CHECK_FALSE(drivable_with("Sa 15:55-17:00"));  // its last five minutes
  CHECK_FALSE(drivable_with(""));
  CHECK_FALSE(drivable_with("when the bell rings"));
}

TEST_CASE("a closed road that the map has shut too is told", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
    A     B       C
  w1 AB highway=tertiary
  w2 BC highway=tertiary access=no
  )");
  CHECK(NotedTown(built, {note_at(NoteKind::closed, middle(built, "BC"))}).said() ==
        "1: the map has that road shut to a learner too");
}

TEST_CASE("a noted limit is the road's, and makes it a 20 limit", "[mark]") {
  const test::BuiltTown built = test::built_town(three_streets);
  Note note = note_at(NoteKind::limit, middle(built, "BC"));
  note.limit = 20;
  const NotedTown town(built, {note});
  const road::LimitLaw law = road::law_of(town.roads().info());
  const road::LimitFact& fact = town.roads().stretch(built.stretch("BC")).limit;
  CHECK(law.on(fact, {2026, 11, 28}).value == 20);
  CHECK(law.on(fact, {2026, 11, 28}).confidence == road::LimitConfidence::noted);
  CHECK(town.roads().text(fact.source) == "noted 2026-10-03: limit");
  CHECK(town.is("BC", Kind::twenty_limit));
  CHECK(town.said() == "1: the map has another limit, by a sign");
  note.limit = 30;
  CHECK(NotedTown(built, {note}).said() == "1: the map has the same limit");
}

TEST_CASE("where a noted limit begins and ends, the limit changes", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
    A     B       C     D
  w1 AB highway=tertiary maxspeed="30 mph"
  w2 BC highway=tertiary maxspeed="30 mph"
  w3 CD highway=tertiary maxspeed="40 mph"
  )");
  REQUIRE(NotedTown(built, {}).chances(Kind::limit_change).size() == 2);  // both ways over C
  Note note = note_at(NoteKind::limit, middle(built, "BC"));
  note.limit = 40;
  const NotedTown town(built, {note});
  const auto found = town.chances(Kind::limit_change);
  REQUIRE(found.size() == 2);  // both ways over B now
  for (const road::Chance& chance : found) {
    CHECK(town.roads().nodes_of(chance.place).front() == built.node('B'));
    CHECK(chance.confidence == Confidence::noted);
    CHECK(town.roads().text(chance.tag) == "noted 2026-10-03: limit");
  }
}

TEST_CASE("a noted 30 ends the 20 zone of the map", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
    A     B       C     D
  w1 AB highway=residential maxspeed="30 mph"
  w2 BC highway=residential maxspeed="20 mph" maxspeed:type=GB:zone20
  w3 CD highway=residential maxspeed="30 mph"
  )");
  Note note = note_at(NoteKind::limit, middle(built, "BC"));
  note.limit = 30;
  const NotedTown town(built, {note});
  CHECK_FALSE(town.is("BC", Kind::twenty_zone));
  CHECK(town.chances(Kind::twenty_zone).empty());
}

// Highway Code rule 124: 60 mph is the national limit of a single carriageway.
TEST_CASE("a noted limit below the national one makes a road no country road", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
    A     B             C     D
  w1 AB highway=secondary maxspeed:type=GB:nsl_single
  w2 BC highway=secondary maxspeed:type=GB:nsl_single
  w3 CD highway=secondary maxspeed:type=GB:nsl_single
  )");
  REQUIRE(NotedTown(built, {}).is("BC", Kind::country_road));
  Note note = note_at(NoteKind::limit, middle(built, "BC"));
  for (const int limit : {30, 50}) {
    note.limit = limit;
    const NotedTown town(built, {note});
    CHECK_FALSE(town.is("BC", Kind::country_road));
    CHECK_FALSE(town.is("CB", Kind::country_road));
    CHECK(town.is("AB", Kind::country_road));
  }
  note.limit = 60;
  CHECK(NotedTown(built, {note}).is("BC", Kind::country_road));
}

TEST_CASE("hours read off a plate are the bus lane's", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
    A       B       C
  w1 AB highway=primary lanes=3 lanes:forward=2 lanes:backward=1 lanes:bus:forward=1
  w2 BC highway=primary
  )");
  REQUIRE(built.roads().bus_lanes.size() == 1);
  Note note = note_at(NoteKind::plate, middle(built, "AB"));
  note.hours = "Mo-Sa 07:00-19:00";
  Note elsewhere = note;
  elsewhere.line = {middle(built, "BC")};
  const NotedTown town(built, {note, elsewhere});
  CHECK(town.roads().text(town.roads().bus_lanes[0].hours) == "Mo-Sa 07:00-19:00");
  CHECK(town.roads().text(town.roads().bus_lanes[0].source) == "noted 2026-10-03: plate");
  CHECK(town.said() == "2: no mapped bus lane on the nearest road");
}

TEST_CASE("hours read off a plate settle what the tags contradict", "[mark]") {
  const test::BuiltTown built = test::built_town(R"town(
    A       B
  w1 AB highway=primary lanes:bus:forward=1 lanes:bus:forward:conditional="1 @ (Sa)"
  )town");
  REQUIRE(built.roads().bus_lanes[0].doubtful == 1);
  Note note = note_at(NoteKind::plate, middle(built, "AB"));
  note.hours = "Mo-Sa 07:00-10:00";
  const NotedTown town(built, {note});
  const road::BusLane& lane = town.roads().bus_lanes[0];
  CHECK(town.roads().text(lane.hours) == note.hours);
  CHECK(lane.doubtful == 0);
  CHECK(town.roads().text(lane.doubt).empty());
}

TEST_CASE("plates make one run of touching lanes, or part one", "[mark]") {
  const auto places_of = [](const NotedTown& town) {
    std::set<PlaceId> places;
    for (const std::string_view ends : {"BC", "CD"})
      places.insert(town.fact(ends, Kind::bus_lane).place);
    return places.size();
  };
  const test::BuiltTown built = test::built_town(R"town(
    A     B     C     D
                |
                E
  w1 AB highway=primary
  w2 BC highway=primary busway:left=lane
  w3 CD highway=primary busway:left=lane
  w4 CE highway=residential
  )town");
  Note first = note_at(NoteKind::plate, middle(built, "BC"));
  first.hours = "Mo-Sa 07:00-10:00";
  Note second = note_at(NoteKind::plate, middle(built, "CD"));
  second.hours = first.hours, second.seen = {2026, 11, 20};
  CHECK(places_of(NotedTown(built, {})) == 1);
  CHECK(places_of(NotedTown(built, {first})) == 2);
  CHECK(places_of(NotedTown(built, {first, second})) == 1);
  second.hours = "Mo-Sa 16:00-19:00";
  CHECK(places_of(NotedTown(built, {first, second})) == 2);
}

TEST_CASE("a plate with the hours of the map still settles a doubt", "[mark]") {
  const test::BuiltTown built = test::built_town(R"town(
    A       B
  w1 AB highway=primary lanes:bus:forward=1 lanes:bus:forward:conditional="1 @ (Sa)"
  )town");
  REQUIRE(built.roads().bus_lanes[0].doubtful == 1);
  Note note = note_at(NoteKind::plate, middle(built, "AB"));
  note.hours = "Sa";
  const NotedTown town(built, {note});
  CHECK(town.roads().bus_lanes[0].doubtful == 0);
  CHECK(town.said().empty());
}

TEST_CASE("a good place to stop is one on each side it is noted for", "[mark]") {
  const test::BuiltTown built = test::built_town(three_streets);
  Note note = note_at(NoteKind::pull_up, middle(built, "BC"));
  note.length_m = 30, note.heading_deg = 270;
  const NotedTown town(built, {note});
  const auto rows = town.roads().pull_ups_of(built.stretch("CB"));
  const auto noted = std::ranges::find(rows, Confidence::noted, &road::PullUp::confidence);
  REQUIRE(noted != rows.end());
  CHECK(noted->from_m == Approx(85).margin(1));
  CHECK(noted->to_m == Approx(115).margin(1));
  CHECK(town.roads().text(noted->why) == "noted 2026-10-03: pull-up");
  CHECK(town.roads().pull_ups_of(built.stretch("BC")).size() ==
        town.base.pull_ups_of(built.stretch("BC")).size());
}

TEST_CASE("a note for one heading means the direction within 60 degrees of it", "[mark]") {
  const test::BuiltTown built = test::built_town(three_streets);
  const auto narrow = [&](double heading_deg) {
    Note note = note_at(NoteKind::narrow, middle(built, "BC"));
    note.heading_deg = heading_deg;
    const NotedTown town(built, {note});
    return std::string(town.is("BC", Kind::narrow_road) ? "along" : "") +
           (town.is("CB", Kind::narrow_road) ? "against" : "");
  };
  // The street runs east.
  CHECK(narrow(90) == "along");
  CHECK(narrow(35) == "along");
  CHECK(narrow(145) == "along");
  CHECK(narrow(25) == "");
  CHECK(narrow(155) == "");
  CHECK(narrow(270) == "against");
  CHECK(narrow(215) == "against");
  CHECK(narrow(325) == "against");
}

TEST_CASE("a line is noted for both directions, or for the one it is drawn in", "[mark]") {
  const test::BuiltTown built = test::built_town(three_streets);
  const auto narrow = [&](std::string_view from_to, road::NoteWay way) {
    const auto at = [&](char letter) { return test::corner(built, letter); };
    Note note = note_at(NoteKind::narrow, at(from_to[0]));
    note.line.push_back(at(from_to[1]));
    note.way = way;
    const NotedTown town(built, {note});
    return std::string(town.is("BC", Kind::narrow_road) ? "along" : "") +
           (town.is("CB", Kind::narrow_road) ? "against" : "");
  };
  CHECK(narrow("BC", road::NoteWay::both) == "alongagainst");
  CHECK(narrow("CB", road::NoteWay::both) == "alongagainst");
  CHECK(narrow("BC", road::NoteWay::along) == "along");
  CHECK(narrow("CB", road::NoteWay::along) == "against");
}

TEST_CASE("a line along a road that the map has shut is told by where it begins", "[mark]") {
  const test::BuiltTown built = test::built_town(
      "A     B       C     D\n"
      "w1 AB highway=tertiary access=private\nw2 BC highway=tertiary\nw3 CD highway=tertiary\n");
  const Point on = middle(built, "AB");
  Note note = note_at(NoteKind::never, on);
  note.line.push_back({on.lat_e7 + 6000, on.lon_e7});  // 67 m to the north, where no road is
  CHECK(NotedTown(built, {note}).said() == "1: the map has that road shut to a learner too");
}

}  // namespace
}  // namespace loopwright::mark
