// Humps that only the instructor knows of slow the car as mapped ones do.
#include <catch2/catch.hpp>

#include "loopwright/pace/pace.hpp"
#include "mark/noted_town.hpp"
#include "pace/plain_roads.hpp"

namespace loopwright::test {
namespace {

using road::Note;
using road::NoteKind;

constexpr std::string_view streets = R"(
    A    B                        C
         |
         D
  w1 AB highway=residential
  w2 BC highway=residential
  w3 BD highway=residential
)";

double mph_on(const road::Roads& roads, StretchId stretch) {
  return pace::Pace(roads, {.level = 5}, saturday).speed_mps(stretch) / mph;
}

/// Speed on a street of the town with these notes, and without.
struct Speeds {
  double noted = 0, mapped = 0;
};

Speeds speeds(const std::vector<Note>& notes, std::string_view ends) {
  const BuiltTown built = built_town(streets);
  const NotedTown town(built, notes);
  return {mph_on(town.roads(), built.stretch(ends)), mph_on(built.roads(), built.stretch(ends))};
}

Note hump_between(std::string_view ends, double part = 0.5) {
  const BuiltTown built = built_town(streets);
  const road::Roads roads = built.roads();
  const StretchId s = built.stretch(ends);
  return note_at(NoteKind::hump,
                 point_along(roads.shape_of(s.piece()), part * roads.piece(s).length_m));
}

}  // namespace

TEST_CASE("a noted hump slows its street both ways, and no other", "[pace]") {
  const std::vector<Note> notes{hump_between("AB")};
  CHECK(speeds(notes, "AB").noted < speeds(notes, "AB").mapped);
  CHECK(speeds(notes, "BA").noted == speeds(notes, "AB").noted);
  CHECK(speeds(notes, "BD").noted == speeds(notes, "BD").mapped);
}

TEST_CASE("a noted hump is as slow as a mapped one", "[pace]") {
  const BuiltTown humps = built_town("A    B\nw1 AB highway=residential traffic_calming=hump\n");
  CHECK(speeds({hump_between("AB")}, "AB").noted ==
        Approx(mph_on(humps.roads(), humps.stretch("AB"))));
}

TEST_CASE("one noted hump doesn't slow a long street, as many as make a series do", "[pace]") {
  const std::vector<Note> one{hump_between("BC")};
  CHECK(speeds(one, "BC").noted == speeds(one, "BC").mapped);
  const std::vector<Note> series{hump_between("BC", 0.1), hump_between("BC", 0.3),
                                 hump_between("BC", 0.5), hump_between("BC", 0.7),
                                 hump_between("BC", 0.9)};
  CHECK(speeds(series, "BC").noted < speeds(series, "BC").mapped);
}

TEST_CASE("a noted line of humps slows the street it runs along", "[pace]") {
  const BuiltTown built = built_town(streets);
  Note line = note_at(NoteKind::hump, corner(built, 'B'));
  line.line.push_back(corner(built, 'C'));
  CHECK(speeds({line}, "BC").noted < speeds({line}, "BC").mapped);
  CHECK(speeds({line}, "BD").noted == speeds({line}, "BD").mapped);
}

}  // namespace loopwright::test
