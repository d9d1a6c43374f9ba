// Humps, junctions and spots to practise at as notes add and take them.
#include <algorithm>
#include <catch2/catch.hpp>

#include "mark/noted_town.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;
using road::Movement;
using road::Note;
using road::NoteKind;
using test::corner;
using test::middle;
using test::note_at;
using test::NotedTown;

const char* const cross = R"(
          N


    W     X     E


          S
  w1 WXE highway=tertiary
  w2 NXS highway=residential
  )";

Note practice(Kind kind, Point at) {
  Note note = note_at(NoteKind::practice, at);
  note.kind = kind;
  return note;
}

TEST_CASE("a noted hump is passed by whoever drives its street", "[mark]") {
  const test::BuiltTown built = test::built_town(cross);
  const NotedTown town(built, {note_at(NoteKind::hump, middle(built, "WX"))});
  CHECK(town.said().empty());
  const auto found = town.chances(Kind::calming);
  CHECK(found.size() == 6);  // from W three ways on, and back to W from three
  for (const road::Chance& chance : found) {
    CHECK((chance.entry == built.stretch("WX") || chance.exit == built.stretch("XW")));
    CHECK(chance.confidence == Confidence::noted);
    CHECK(chance.movement == Movement::none);
    CHECK(town.roads().text(chance.tag) == "noted 2026-10-03: hump");
    CHECK(town.roads().nodes_of(chance.place).front() == built.node('X'));
  }
}

TEST_CASE("humps noted near either end of a street are two", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
          N     P

    W     X     Y     E

          S
  w1 WXYE highway=tertiary
  w2 NXS highway=residential
  w3 PY highway=residential
  )");
  const road::Roads roads = built.roads();
  const StretchId street = built.stretch("XY");
  const auto at = [&](double part) {
    return point_along(roads.shape_of(street.piece()), roads.piece(street).length_m * part);
  };
  const NotedTown town(built, {note_at(NoteKind::hump, at(0.2)), note_at(NoteKind::hump, at(0.8))});
  CHECK(town.said().empty());
  const auto found = town.chances(Kind::calming);
  CHECK(std::ranges::count(found, found.front().place, &road::Chance::place) == 6);  // over X
  CHECK(found.size() == 6 + 4);                                                      // and over Y
}

TEST_CASE("a hump noted on two days is passed once", "[mark]") {
  const test::BuiltTown built = test::built_town(cross);
  const Point at = middle(built, "WX");
  const NotedTown town(built, {note_at(NoteKind::hump, at), note_at(NoteKind::hump, at)});
  CHECK(town.said() == "2: another of your notes says it here already");
  CHECK(town.chances(Kind::calming).size() == 6);
}

TEST_CASE("a hump that the map has is left to the map", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
    A      B      C      D
  w1 ABCD highway=residential
  nB traffic_calming=hump
  )");
  const std::size_t mapped = NotedTown(built, {}).chances(Kind::calming).size();
  REQUIRE(mapped > 0);
  const NotedTown town(built, {note_at(NoteKind::hump, corner(built, 'B'))});
  CHECK(town.said() == "1: the map is sure of it too");
  CHECK(town.chances(Kind::calming).size() == mapped);
}

TEST_CASE("a noted box junction is had on every way over it", "[mark]") {
  const test::BuiltTown built = test::built_town(cross);
  const NotedTown town(built, {practice(Kind::box_junction, corner(built, 'X'))});
  const auto found = town.chances(Kind::box_junction);
  CHECK(found.size() == 12);
  CHECK(std::ranges::count(found, Movement::ahead, &road::Chance::movement) == 4);
  CHECK(std::ranges::count(found, Movement::left, &road::Chance::movement) == 4);
}

TEST_CASE("practice noted for one heading is had by that approach", "[mark]") {
  const test::BuiltTown built = test::built_town(cross);
  Note note = practice(Kind::box_junction, corner(built, 'X'));
  note.heading_deg = 0;  // northwards: from S
  const NotedTown town(built, {note});
  const auto found = town.chances(Kind::box_junction);
  CHECK(found.size() == 3);
  for (const road::Chance& chance : found) CHECK(chance.entry == built.stretch("SX"));
}

TEST_CASE("a spot to move off from lies beside each direction", "[mark]") {
  const test::BuiltTown built = test::built_town(cross);
  const std::size_t mapped = NotedTown(built, {}).chances(Kind::move_off).size();
  const NotedTown town(built, {practice(Kind::move_off, middle(built, "XS"))});
  CHECK(town.chances(Kind::move_off).size() == mapped + 2);
}

TEST_CASE("spots far apart beside one street are two, the same spot noted again is one", "[mark]") {
  const test::BuiltTown built = test::built_town(cross);
  const road::Roads roads = built.roads();
  const StretchId street = built.stretch("WX");
  const auto spot = [&](double part) {
    const double along_m = roads.piece(street).length_m * part;
    return practice(Kind::move_off, point_along(roads.shape_of(street.piece()), along_m));
  };
  REQUIRE(roads.piece(street).length_m > 60);
  const std::size_t mapped = NotedTown(built, {}).chances(Kind::move_off).size();
  CHECK(NotedTown(built, {spot(0.2), spot(0.8)}).chances(Kind::move_off).size() == mapped + 4);
  const NotedTown again(built, {spot(0.2), spot(0.2)});
  CHECK(again.chances(Kind::move_off).size() == mapped + 2);
  CHECK(again.said() == "2: another of your notes says it here already");
}

TEST_CASE("what can't be noted is told", "[mark]") {
  const test::BuiltTown built = test::built_town(cross);
  const NotedTown town(built, {practice(Kind::roundabout, corner(built, 'X')),
                               practice(Kind::emerge, middle(built, "WX")),
                               note_at(NoteKind::hump, point_from_degrees(54.2, 2.6))});
  CHECK(town.said() ==
        "1: a roundabout can't be noted: its arms must be mapped; 2: no junction within 30 m; "
        "3: no road that it fits within 30 m");
}

TEST_CASE("a zebra that isn't there any more isn't passed", "[mark]") {
  const test::BuiltTown built = test::built_town(R"(
    A       B       C       D
  w1 ABCD highway=tertiary
  nB highway=crossing crossing=zebra
  nC highway=crossing crossing=zebra
  )");
  REQUIRE(NotedTown(built, {}).chances(Kind::zebra).size() == 4);
  Note note = note_at(NoteKind::not_so, corner(built, 'B'));
  note.kind = Kind::zebra;
  const NotedTown town(built, {note});
  const auto left = town.chances(Kind::zebra);
  REQUIRE(left.size() == 2);
  for (const road::Chance& chance : left) {
    CHECK(town.roads().nodes_of(chance.place).front() == built.node('C'));
  }
  note.line = {corner(built, 'D')};
  CHECK(NotedTown(built, {note}).said() == "1: the map has no zebra here");
}

TEST_CASE("of a wide signalled junction a note takes the ways that come by it", "[mark]") {
  const test::BuiltTown built = test::built_town(test::draw_town(R"(
          E  F  G

    A     B  C  D     H
  w1 ABCDH highway=primary
  w2 EB    highway=secondary
  w3 FC    highway=secondary
  w4 GD    highway=secondary
  nB highway=traffic_signals
  nC highway=traffic_signals
  nD highway=traffic_signals
  )",
                                                                 12),
                                                 "GB-ENG");
  const auto mapped = NotedTown(built, {}).chances(Kind::signals);
  REQUIRE_FALSE(mapped.empty());
  for (const road::Chance& chance : mapped) REQUIRE(chance.place == mapped.front().place);
  Note note = note_at(NoteKind::not_so, corner(built, 'B'));
  note.kind = Kind::signals;
  const NotedTown town(built, {note});
  const auto left = town.chances(Kind::signals);
  CHECK(left.size() < mapped.size());
  REQUIRE_FALSE(left.empty());
  for (const road::Chance& chance : left)
    for (const StretchId stretch : town.roads().path_of(chance))
      CHECK(nearest_on_line(town.roads().shape_of(stretch.piece()), corner(built, 'B')).off_m >
            road::note_reach_m);
}

TEST_CASE("practice noted along a line is had where the line begins", "[mark]") {
  const test::BuiltTown built = test::built_town(cross);
  Note note = practice(Kind::box_junction, corner(built, 'X'));
  note.line.push_back(middle(built, "XS"));
  note.line.push_back(corner(built, 'S'));
  const NotedTown town(built, {note});
  const auto found = town.chances(Kind::box_junction);
  REQUIRE_FALSE(found.empty());
  CHECK(town.roads().places[found[0].place.index()].at == corner(built, 'X'));
  for (const road::Chance& chance : found) {
    const auto path = town.roads().path_of(chance);
    CHECK((path.front() == chance.entry && path.back() == chance.exit));
  }
}

}  // namespace
}  // namespace loopwright::mark
