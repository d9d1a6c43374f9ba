#include <catch2/catch.hpp>

#include "loopwright/road/note.hpp"

namespace loopwright::road {
namespace {

const hours::Setting london("GB-ENG", "Europe/London", {});
const LessonTime saturday{{1795878000, 0}, {1795881600, 0}, london};  // 15:00 to 16:00

TEST_CASE("the name of each kind of note is read back", "[road]") {
  CHECK(all_note_kinds().size() == 9);
  for (const NoteKind kind : all_note_kinds()) CHECK(parse_note_kind(name(kind)) == kind);
  CHECK_FALSE(parse_note_kind("wide"));
}

TEST_CASE("what a note adds says when it was seen", "[road]") {
  Note note{.says = NoteKind::narrow, .line = {}, .seen = {2026, 1, 3}};
  CHECK(tag_of(note) == "noted 2026-01-03: narrow");
  note.says = NoteKind::practice, note.kind = Kind::box_junction;
  CHECK(tag_of(note) == "noted 2026-01-03: box-junction");
}

TEST_CASE("a closed road is shut on both its days", "[road]") {
  Note note{.says = NoteKind::closed, .line = {}, .seen = {2026, 10, 3}};
  CHECK(may_shut(note, saturday));
  note.from = Date{2026, 11, 28};
  CHECK(may_shut(note, saturday));
  note.from = Date{2026, 11, 29};
  CHECK_FALSE(may_shut(note, saturday));
  note.from.reset(), note.until = Date{2026, 11, 28};
  CHECK(may_shut(note, saturday));
  note.until = Date{2026, 11, 27};
  CHECK_FALSE(may_shut(note, saturday));
}

TEST_CASE("a lesson that touches the hours of a road is kept off it", "[road]") {
  Note note{.says = NoteKind::never, .line = {}, .hours = "Sa 16:00-17:00", .seen = {2026, 10, 3}};
  CHECK(may_shut(note, saturday));
  note.hours = "Sa 17:00-18:00";
  CHECK_FALSE(may_shut(note, saturday));
  note.hours = "Sa 16:00-17:00", note.from = Date{2026, 11, 2}, note.until = Date{2026, 11, 28};
  CHECK(may_shut(note, saturday));
  note.until = Date{2026, 11, 27};
  CHECK_FALSE(may_shut(note, saturday));
  note.hours.clear(), note.until.reset();
  CHECK(may_shut(note, saturday));
  note.from = Date{2026, 11, 29};
  CHECK_FALSE(may_shut(note, saturday));
  note.from.reset();
  note.says = NoteKind::plate;  // hours of a lane shut no road
  note.hours = "24/7";
  CHECK_FALSE(may_shut(note, saturday));
}

TEST_CASE("a lesson's time is that of the clock on the spot", "[road]") {
  const Instant three{1795878000, 3600};  // 15:00 UTC, said as 16:00+01:00
  CHECK(lesson_time(three, 60, london).from.civil() == CivilTime{{2026, 11, 28}, 15, 0, 0});
  CHECK(lesson_time(three, 90, london).to.civil() == CivilTime{{2026, 11, 28}, 16, 30, 0});
}

TEST_CASE("of two facts the less sure one counts", "[road]") {
  CHECK(less_sure(Confidence::certain, Confidence::certain) == Confidence::certain);
  CHECK(less_sure(Confidence::certain, Confidence::noted) == Confidence::noted);
  CHECK(less_sure(Confidence::inferred, Confidence::noted) == Confidence::inferred);
}

}  // namespace
}  // namespace loopwright::road
