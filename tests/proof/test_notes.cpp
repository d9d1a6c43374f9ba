// Loops made with notes: true ones hold, and each lie about a note is told.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <optional>

#include "loopwright/mark/noted.hpp"
#include "loopwright/wish/lesson.hpp"
#include "proof/towns.hpp"
#include "support/honest_loop.hpp"

using namespace loopwright;
using namespace loopwright::test;
using road::Kind;
using road::Note;
using road::NoteKind;

namespace {

const char* const drawing = R"town(
A     B     C

D     E     F
w1 AB highway=residential name=North_Street maxspeed=30_mph
w2 BC highway=residential name=North_Street maxspeed=30_mph
w3 AD highway=residential name=West_Street maxspeed=30_mph
w4 BE highway=residential name=Middle_Street maxspeed=30_mph
w5 CF highway=residential name=East_Street maxspeed=30_mph
w6 DE highway=residential name=South_Street maxspeed=30_mph
w7 EF highway=residential name=South_Street maxspeed=30_mph
)town";

Note on(const BuiltTown& town, std::string_view ends, NoteKind says) {
  const road::Roads roads = town.roads();
  const StretchId s = town.stretch(ends);
  const Point middle = point_along(roads.shape_of(s.piece()), roads.piece(s).length_m / 2);
  Note note;
  note.says = says, note.line = {middle}, note.seen = {2026, 10, 3};
  return note;
}

/// A drive over the roads as some notes make them, told the truth about.
struct NotedLesson {
  explicit NotedLesson(std::vector<Note> made_with)
      : map(town.roads()), notes(std::move(made_with)) {
    wish::Answer plain = honest_answer(town, "ABEDAB");
    noted.emplace(mark::with_notes(map, notes, wish::lesson_time(plain.wish, setting_of(map))));
  }
  NotedLesson(const NotedLesson&) = delete;
  NotedLesson& operator=(const NotedLesson&) = delete;

  /// The drive A B E D A B with home in the middle of AB.
  [[nodiscard]] wish::Answer answer() const {
    find::Drive drive;
    const road::Roads& roads = noted->roads();
    for (const char* ends : {"AB", "BE", "ED", "DA", "AB"}) {
      drive.states.push_back(StateId{town.stretch(ends).index()});
    }
    const double half = roads.piece(town.stretch("AB")).length_m / 2;
    drive.start_m = half, drive.end_m = half;
    wish::Answer answer = honest_answer(roads, drive);
    answer.wish.minutes.reset();
    answer.wish.through = {roads.nodes[town.node('E').index()].at};
    return answer;
  }
  /// What a proof says of an answer, by these notes.
  [[nodiscard]] std::string falsehood(const wish::Answer& said, std::span<const Note> by) const {
    return proof::prove({map, noted->roads(), by}, said, setting_of(map)).false_claim.value_or("");
  }

  BuiltTown town = built_town(drawing);
  road::Roads map;
  std::vector<Note> notes;
  std::optional<mark::Noted> noted;
};

Note with_kind(Note note, Kind kind) {
  note.kind = kind;
  return note;
}

}  // namespace

TEST_CASE("a loop made with notes agrees with the map and the notes", "[proof]") {
  const BuiltTown town = built_town(drawing);
  Note limit = on(town, "BE", NoteKind::limit);
  limit.limit = 20;
  Note closed = on(town, "EF", NoteKind::closed);
  const NotedLesson lesson(
      {on(town, "DE", NoteKind::narrow), limit, closed, on(town, "AD", NoteKind::hump)});
  const wish::Answer answer = lesson.answer();
  // The lane, the hump, and the new limit's end.
  CHECK(std::ranges::count(answer.loops[0].passes, road::Confidence::noted,
                           &wish::Pass::confidence) == 3);
  CHECK(answer.loops[0].stretches[1].limit.confidence == road::LimitConfidence::noted);
  CHECK(lesson.falsehood(answer, lesson.notes) == "");
}

TEST_CASE("a short line of which only the end lies within reach bears its limit out", "[proof]") {
  const BuiltTown town = built_town(drawing);
  Note limit = on(town, "AB", NoteKind::limit);
  limit.limit = 20;
  const Point by = limit.line[0];
  const double degree_m = 111'320,
               degree_east_m = degree_m * std::cos(by.lat() * std::numbers::pi / 180);
  limit.line = {point_from_degrees(by.lat() + 32 / degree_m, by.lon()),
                point_from_degrees(by.lat() + 27.5 / degree_m, by.lon() + 7.8 / degree_east_m)};
  const NotedLesson lesson({limit});
  const wish::Answer answer = lesson.answer();
  CHECK(answer.loops[0].stretches[0].limit.value == 20);
  CHECK(lesson.falsehood(answer, lesson.notes) == "");
}

TEST_CASE("a narrow road that nobody noted is told", "[proof]") {
  const BuiltTown town = built_town(drawing);
  const NotedLesson lesson({on(town, "DE", NoteKind::narrow)});
  const std::vector<Note> others{on(town, "BC", NoteKind::narrow)};
  CHECK(lesson.falsehood(lesson.answer(), others) ==
        "loop 1, stretch 2 (way 6): no tag and no note makes it narrow-road");
}

TEST_CASE("a hump that nobody noted, though it slows the drive, is told", "[proof]") {
  const BuiltTown town = built_town(drawing);
  const NotedLesson lesson({on(town, "BE", NoteKind::hump)});
  const std::vector<Note> others{on(town, "CF", NoteKind::hump)};
  CHECK(lesson.falsehood(lesson.answer(), lesson.notes) == "");
  CHECK(lesson.falsehood(lesson.answer(), others) ==
        "loop 1, stretch 1 (way 4): no tag and no note gives it the humps it is slowed by");
}

TEST_CASE("a striped crossing that nobody noted is told", "[proof]") {
  const BuiltTown town = built_town(drawing);
  const NotedLesson lesson({with_kind(on(town, "BE", NoteKind::practice), Kind::zebra)});
  const std::vector<Note> others{with_kind(on(town, "CF", NoteKind::practice), Kind::zebra)};
  CHECK(lesson.falsehood(lesson.answer(), others)
            .starts_with("loop 1: no tag and no note bears out the pass of zebra on stretches "));
}

TEST_CASE("a drive over a closed road is told", "[proof]") {
  const BuiltTown town = built_town(drawing);
  const NotedLesson lesson({on(town, "BC", NoteKind::hump)});
  std::vector<Note> closed{on(town, "DE", NoteKind::closed)};
  CHECK(lesson.falsehood(lesson.answer(), closed) ==
        "loop 1, stretch 2 (way 6): note 1 (closed) shuts it, or may, during the lesson");
  closed[0].until = Date{2026, 11, 27};  // the day before the drive
  CHECK(lesson.falsehood(lesson.answer(), closed) == "");
  closed[0].until.reset();
  closed[0].line = {closed[0].line[0], lesson.map.nodes[town.node('E').index()].at};
  CHECK(lesson.falsehood(lesson.answer(), closed).starts_with("loop 1, stretch 2 (way 6): note 1"));
}

TEST_CASE("a limit that nobody noted, and a noted one that isn't used, are told", "[proof]") {
  const BuiltTown town = built_town(drawing);
  Note limit = on(town, "BE", NoteKind::limit);
  limit.limit = 20;
  const NotedLesson with({limit});
  std::vector<Note> others{on(town, "CF", NoteKind::hump)};
  CHECK(with.falsehood(with.answer(), others) ==
        "loop 1, stretch 1 (way 4): its limit has no tag and no note");
  const NotedLesson without({others[0]});
  CHECK(without.falsehood(without.answer(), std::vector{limit}) ==
        "loop 1, stretch 1 (way 4): its noted limit isn't used");
}

TEST_CASE("a crossing taken off the drive without a note is told", "[proof]") {
  const BuiltTown town = built_town(drawing);
  const wish::Answer plain = honest_answer(town, "ABEDAB");
  REQUIRE_FALSE(plain.loops[0].passes.empty());
  const wish::Pass& first = plain.loops[0].passes.front();
  Note gone = with_kind(on(town, "AB", NoteKind::not_so), first.kind);
  gone.line = {town.roads().nodes[town.node('B').index()].at};
  const NotedLesson lesson({gone});
  const wish::Answer answer = lesson.answer();
  CHECK(lesson.falsehood(answer, lesson.notes) == "");
  CHECK(lesson.falsehood(answer, std::vector{on(town, "CF", NoteKind::hump)})
            .ends_with(", and no note says otherwise"));
}
