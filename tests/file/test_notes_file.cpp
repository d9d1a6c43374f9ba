#include <catch2/catch.hpp>
#include <string>

#include "loopwright/base/error.hpp"
#include "loopwright/file/notes_file.hpp"
#include "support/golden.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright {
namespace {

using road::Note;
using road::NoteKind;

/// Notes of every kind and with every value; golden/sample-notes.geojson is their text, which
/// outside_notes.py shows to other readers.
std::vector<Note> every_kind() {
  const Point shop = point_from_degrees(54.2973, 2.5988), mill = point_from_degrees(54.298, 2.6);
  const Date seen{2026, 10, 3};
  std::vector<Note> notes;
  for (const NoteKind says : road::all_note_kinds()) {
    notes.push_back({.says = says, .line = {shop}, .seen = seen});
  }
  notes[0].line = {shop, mill}, notes[0].way = road::NoteWay::along;
  notes[1].length_m = 18.5, notes[1].heading_deg = 90;
  notes[2].hours = "Mo-Fr 08:15-09:00";
  notes[3].from = Date{2026, 11, 2}, notes[3].until = Date{2026, 12, 18};
  notes[4].remark = "rubber cushion, \"new\" – by the café";
  notes[5].hours = "Mo-Sa 07:00-19:00";
  notes[6].limit = 20, notes[6].unit = SpeedUnit::mph;
  notes[7].kind = road::Kind::meeting_traffic;
  notes[8].kind = road::Kind::zebra;
  notes.push_back({.says = NoteKind::never, .line = {mill}, .seen = seen});
  notes.push_back(
      {.says = NoteKind::closed, .line = {mill}, .until = Date{2027, 1, 4}, .seen = seen});
  return notes;
}

std::string text_of(const std::vector<Note>& notes) {
  file::NotesFile file;
  for (const Note& note : notes) file.add(note);
  return file.text();
}

/// A file with one note, whose properties and geometry are these.
std::string one_note(
    const std::string& properties,
    const std::string& geometry = R"({"type": "Point", "coordinates": [2.6, 54.3]})") {
  return R"({"type": "FeatureCollection", "features": [{"type": "Feature", "geometry": )" +
         geometry + R"(, "properties": )" + properties + "}]}";
}

std::string said_of(const std::string& text) {
  try {
    file::NotesFile::read(text, "n.geojson");
  } catch (const InputError& error) {
    return error.what();
  }
  return "nothing";
}

std::string line(const std::string& coordinates) {
  return R"({"type": "LineString", "coordinates": )" + coordinates + "}";
}

TEST_CASE("a notes file without a note is one", "[file]") {
  const std::string text = file::NotesFile().text();
  CHECK(text == "{\"type\": \"FeatureCollection\",\n\"features\": [\n]}\n");
  CHECK(file::NotesFile::read(text, "n.geojson").notes().empty());
}

TEST_CASE("notes of every kind are written and read again the same", "[file]") {
  const std::string text = text_of(every_kind());
  const auto read = file::NotesFile::read(text, "n.geojson");
  CHECK(read.text() == text);
  CHECK(text_of({read.notes().begin(), read.notes().end()}) == text);
  test::check_golden("sample-notes.geojson", text);
}

TEST_CASE("what we don't know in a notes file is kept when it is rewritten", "[file]") {
  const std::string text =
      R"({"type": "FeatureCollection", "name": "my notes", "features": [)"
      R"({"id": 7, "type": "Feature", "geometry": {"type": "Point", "coordinates": [2.6, 54.3, 11.5]},)"
      R"( "properties": {"pupil": "any", "seen": "2026-10-03", "says": "hump", "colour": [1, {"a": null}]}}],)"
      R"( "bbox": [2, 54, 3, 55]})";
  auto file = file::NotesFile::read(text, "n.geojson");
  file.add(every_kind().front());
  const std::string again = file.text();
  for (const char* kept :
       {R"("name": "my notes")", R"("id":7)", R"(54.3,11.5])", R"("pupil":"any")",
        R"("colour":[1,{"a":null}])", R"("bbox": [2,54,3,55])"}) {
    CHECK(again.find(kept) != std::string::npos);
  }
  CHECK(file::NotesFile::read(again, "n.geojson").notes().size() == 2);
}

// FIPS 180-4's own examples, as NIST publishes them: the empty message and "abc".
TEST_CASE("a notes file is known by its SHA-256", "[file]") {
  CHECK(file::sha256_of("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  CHECK(file::sha256_of("abc") ==
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(
      file::NotesFile::read(one_note(R"({"says": "hump", "seen": "2026-10-03"})"), "n").sha256() ==
      file::sha256_of(one_note(R"({"says": "hump", "seen": "2026-10-03"})")));
}

TEST_CASE("a file that holds no notes is told what it lacks", "[file]") {
  CHECK(said_of("") == "n.geojson: is empty; a notes file is GeoJSON");
  CHECK(said_of("{]") == "n.geojson: is no JSON at byte 2; a notes file is GeoJSON");
  CHECK(said_of(R"({"type": "FeatureCollection", "features": [], "x": )" +
                std::string(100'000, '[') + std::string(100'000, ']') + "}") ==
        "n.geojson: its lists lie too deep in each other; a notes file is GeoJSON");
  CHECK(said_of("[]") == "n.geojson: /: expected an object, found a list of 0");
  CHECK(said_of(R"({"type": "Feature"})") ==
        "n.geojson: /type: expected \"FeatureCollection\", found \"Feature\"");
  CHECK(said_of(R"({"type": "FeatureCollection"})") == "n.geojson: /features: is missing");
  const test::ScratchFolder folder;
  CHECK_THROWS_WITH(
      file::NotesFile::load(folder / "n.geojson"),
      (folder / "n.geojson").string() + ": no such file; make it with 'loopwright note add'");
}

TEST_CASE("a note's place must be a point or a line on earth", "[file]") {
  const std::string hump = R"({"says": "hump", "seen": "2026-10-03"})";
  CHECK(said_of(one_note(hump, R"({"type": "Polygon", "coordinates": []})")) ==
        "n.geojson: /features/0/geometry/type: expected \"Point\" or \"LineString\", found "
        "\"Polygon\"");
  CHECK(said_of(one_note(hump, line("[[2.6, 54.3]]"))) ==
        "n.geojson: /features/0/geometry/coordinates: expected a list of two positions or more, "
        "found a list of 1");
  CHECK(said_of(one_note(hump, line("[[2.6, 54.3], [54.3, 182.6]]"))) ==
        "n.geojson: /features/0/geometry/coordinates/1/1: expected a number from -90.0 to 90.0, "
        "found 182.6");
  CHECK(said_of(one_note(hump, "null")) ==
        "n.geojson: /features/0/geometry: expected an object, found null");
}

TEST_CASE("a note must say what it says, and when it was seen", "[file]") {
  const std::string at = "n.geojson: /features/0/properties";
  CHECK(said_of(one_note("{}")) == at + "/says: is missing");
  CHECK(said_of(one_note(R"({"says": "wide", "seen": "2026-10-03"})")) ==
        at + "/says: expected narrow, pull-up, never, closed, hump, plate, limit, practice or not, "
             "found \"wide\"");
  CHECK(said_of(one_note(R"({"says": "hump"})")) == at + "/seen: is missing");
  CHECK(said_of(one_note(R"({"says": "hump", "seen": "2026-02-30"})")) ==
        at + "/seen: expected a date like \"2026-10-03\", found \"2026-02-30\"");
}

/// A note of a kind with more properties.
std::string with(const std::string& says, const std::string& more) {
  return said_of(one_note(R"({"says": ")" + says + R"(", "seen": "2026-10-03", )" + more + "}"));
}

TEST_CASE("a note must have what its kind needs, and nothing its kind can't have", "[file]") {
  const std::string at = "n.geojson: /features/0/properties";
  CHECK(with("practice", R"("x": 1)") == at + "/kind: is missing");
  CHECK(with("not", R"("kind": "zebras")") ==
        at + "/kind: expected a practice kind, found \"zebras\"");
  CHECK(with("plate", R"("x": 1)") == at + "/hours: is missing");
  CHECK(with("never", R"("hours": "")") ==
        at + "/hours: expected hours like \"Mo-Fr 08:00-09:00\", found \"\"");
  CHECK(with("never", R"("from": "2026-10-03", "until": "2026-10-02")") ==
        at + "/until: expected a day not before \"from\", found \"2026-10-02\"");
  CHECK(with("hump", R"("until": "2026-10-02")") ==
        at + "/until: expected nothing: a note that says \"hump\" has none, found \"2026-10-02\"");
  CHECK(with("closed", R"("x": 1)") == at + "/from: is missing");
  CHECK(with("closed", R"("from": "2026-10-03", "until": "2026-10-02")") ==
        at + "/until: expected a day not before \"from\", found \"2026-10-02\"");
  CHECK(with("limit", R"("limit": 20)") == at + "/unit: is missing");
  CHECK(with("limit", R"("limit": 2, "unit": "mph")") ==
        at + "/limit: expected a whole number from 5 to 150, found 2");
  CHECK(with("pull-up", R"("length_m": "long")") ==
        at + "/length_m: expected a number from 1.0 to 1000.0, found \"long\"");
  CHECK(with("narrow", R"("hours": "Mo")") ==
        at + "/hours: expected nothing: a note that says \"narrow\" has none, found \"Mo\"");
  CHECK(with("narrow", R"("way": "along")") ==
        at + "/way: expected nothing: only a LineString has one, found \"along\"");
  CHECK(with("narrow", R"("heading": 360)") ==
        at + "/heading: expected a whole number from 0 to 359, found 360");
}

/// What a file says of a second note that takes back the first; its place is so far to the east.
std::string said_of_both(const Note& there, const Note& not_there) {
  try {
    text_of({there, not_there});
  } catch (const InputError& error) {
    return error.what();
  }
  return "nothing";
}

Note zebra_note(NoteKind says, Point at) {
  return {.says = says, .line = {at}, .kind = road::Kind::zebra, .seen = {2026, 10, 3}};
}

TEST_CASE("two notes of one place that contradict each other are refused with both", "[file]") {
  const Point at = point_from_degrees(54.3, 2.6), near = point_from_degrees(54.3, 2.6001);
  const Note is = zebra_note(NoteKind::practice, at), isnt = zebra_note(NoteKind::not_so, near);
  const std::string said =
      "note 2 says there is no zebra where note 1 says there is one; take out the one that isn't "
      "so";
  CHECK_THAT(said_of_both(is, isnt), Catch::EndsWith(said));
  // Written by hand they are refused when read.
  file::NotesFile one, other;
  one.add(is), other.add(isnt);
  std::string text = one.text(), more = other.text();
  const std::size_t feature = more.find("{\"type\":\"Feature\"");
  text.insert(text.find("\n]"), ",\n" + more.substr(feature, more.find("\n]") - feature));
  CHECK(said_of(text) == "n.geojson: " + said);
}

TEST_CASE("notes of other kinds, other places or other headings don't contradict", "[file]") {
  const Point at = point_from_degrees(54.3, 2.6);
  const Note is = zebra_note(NoteKind::practice, at);
  Note isnt = zebra_note(NoteKind::not_so, point_from_degrees(54.3, 2.6005));
  CHECK(said_of_both(is, isnt) == "nothing");
  isnt = zebra_note(NoteKind::not_so, at), isnt.kind = road::Kind::school;
  CHECK(said_of_both(is, isnt) == "nothing");
  Note north = is, south = zebra_note(NoteKind::not_so, at);
  north.heading_deg = 0, south.heading_deg = 180;
  CHECK(said_of_both(north, south) == "nothing");
  south.heading_deg = 350;
  CHECK(said_of_both(north, south) != "nothing");
}

TEST_CASE("a hump that is noted and taken back is refused, and so is a line", "[file]") {
  const Point at = point_from_degrees(54.3, 2.6), end = point_from_degrees(54.301, 2.6);
  Note isnt = zebra_note(NoteKind::not_so, at);
  isnt.kind = road::Kind::calming;
  CHECK(said_of_both({.says = NoteKind::hump, .line = {at}, .seen = {2026, 10, 3}}, isnt) !=
        "nothing");
  const Note narrow{.says = NoteKind::narrow, .line = {at, end}, .seen = {2026, 10, 3}};
  Note wide{.says = NoteKind::not_so,
            .line = {end, at},
            .kind = road::Kind::narrow_road,
            .seen = {2026, 10, 3}};
  CHECK(said_of_both(narrow, wide) != "nothing");
  wide.line = {at, point_from_degrees(54.3, 2.602)};
  CHECK(said_of_both(narrow, wide) == "nothing");
}

}  // namespace
}  // namespace loopwright
