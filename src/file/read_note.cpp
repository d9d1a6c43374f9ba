// 1. Geometry: a Point or a LineString; heights are skipped (RFC 7946 3.1.1 allows a third number).
// 2. What every note has: says, seen, and perhaps a remark.
// 3. What its kind needs; a value of ours that its kind has no use for is refused, since whoever
//    wrote it meant something by it. Values that aren't ours are left alone.
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>

#include "file/note_json.hpp"
#include "file/read_values.hpp"

namespace loopwright::file {
namespace {

using road::Note;
using road::NoteKind;
using values::date;

constexpr std::size_t most_points = 10'000;
constexpr double greatest_length_m = 1000;
constexpr int least_limit = 5, greatest_limit = 150;

std::int32_t degrees_e7(const Cursor& value, double most) {
  return static_cast<std::int32_t>(std::lround(value.number(-most, most) * 1e7));
}

/// Longitude, then latitude.
Point position(const Cursor& value) {
  const auto numbers = value.items(3);
  if (numbers.size() < 2) value.fail("a position of longitude and latitude");
  return {degrees_e7(numbers[1], 90), degrees_e7(numbers[0], 180)};
}

std::vector<Point> line(const Cursor& geometry) {
  const std::string type = geometry.at("type").text();
  if (type == "Point") return {position(geometry.at("coordinates"))};
  if (type != "LineString") geometry.at("type").fail("\"Point\" or \"LineString\"");
  std::vector<Point> points;
  for (const Cursor& item : geometry.at("coordinates").items(most_points)) {
    points.push_back(position(item));
  }
  if (points.size() < 2) geometry.at("coordinates").fail("a list of two positions or more");
  return points;
}

road::NoteWay way(const Cursor& value) {
  const auto parse = [](std::string_view text) -> std::optional<road::NoteWay> {
    if (text == "both") return road::NoteWay::both;
    return text == "along" ? std::optional(road::NoteWay::along) : std::nullopt;
  };
  return value.word(parse, "\"both\" or \"along\"");
}

std::string hours(const Cursor& value) {
  std::string text = value.text();
  if (text.empty()) value.fail("hours like \"Mo-Fr 08:00-09:00\"");
  return text;
}

/// Our properties that only some kinds of notes have, and which.
struct Special {
  std::string_view key;
  std::array<NoteKind, 2> kinds;
};
constexpr std::array specials{
    Special{"kind", {NoteKind::practice, NoteKind::not_so}},
    Special{"hours", {NoteKind::never, NoteKind::plate}},
    Special{"from", {NoteKind::closed, NoteKind::never}},
    Special{"until", {NoteKind::closed, NoteKind::never}},
    Special{"limit", {NoteKind::limit, NoteKind::limit}},
    Special{"unit", {NoteKind::limit, NoteKind::limit}},
    Special{"length_m", {NoteKind::pull_up, NoteKind::pull_up}},
};

void refuse_useless(const Cursor& properties, const Note& note) {
  const auto refuse = [&](std::string_view key, std::string_view holder) {
    if (const auto value = properties.find(key)) value->fail("nothing: " + std::string(holder));
  };
  for (const Special& special : specials) {
    if (std::ranges::find(special.kinds, note.says) != special.kinds.end()) continue;
    refuse(special.key, "a note that says \"" + std::string(road::name(note.says)) + "\" has none");
  }
  if (note.line.size() > 1) refuse("heading", "only a Point has one");
  if (note.line.size() == 1) refuse("way", "only a LineString has one");
}

/// First and last day, each of which may be left open.
void read_days(const Cursor& properties, Note& note) {
  if (const auto from = properties.find("from")) note.from = date(*from);
  if (const auto until = properties.find("until")) note.until = date(*until);
  if (note.from && note.until && *note.until < *note.from) {
    properties.at("until").fail("a day not before \"from\"");
  }
}

/// Step 3.
void read_special(const Cursor& properties, Note& note) {
  if (note.says == NoteKind::practice || note.says == NoteKind::not_so) {
    note.kind = properties.at("kind").word(road::parse_kind, "a practice kind");
  }
  if (note.says == NoteKind::plate) note.hours = hours(properties.at("hours"));
  if (note.says == NoteKind::never) {
    if (const auto text = properties.find("hours")) note.hours = hours(*text);
  }
  if (note.says == NoteKind::closed || note.says == NoteKind::never) read_days(properties, note);
  if (note.says == NoteKind::closed && !note.from && !note.until)
    note.from = date(properties.at("from"));
  if (note.says == NoteKind::limit) {
    note.limit = static_cast<int>(properties.at("limit").whole(least_limit, greatest_limit));
    note.unit = properties.at("unit").word(parse_speed_unit, "\"mph\" or \"km/h\"");
  }
  if (note.says == NoteKind::pull_up) {
    if (const auto metres = properties.find("length_m")) {
      note.length_m = metres->number(1, greatest_length_m);
    }
  }
}

}  // namespace

road::Note read_note(const Cursor& feature) {
  if (feature.at("type").text() != "Feature") feature.at("type").fail("\"Feature\"");
  Note note;
  note.line = line(feature.at("geometry"));
  const Cursor properties = feature.at("properties");
  note.says = properties.at("says").word(
      road::parse_note_kind, "narrow, pull-up, never, closed, hump, plate, limit, practice or not");
  note.seen = date(properties.at("seen"));
  if (const auto remark = properties.find("remark")) note.remark = remark->text();
  refuse_useless(properties, note);
  if (const auto heading = properties.find("heading")) {
    note.heading_deg = static_cast<int>(heading->whole(0, 359));
  }
  if (const auto sense = properties.find("way")) note.way = way(*sense);
  read_special(properties, note);
  return note;
}

}  // namespace loopwright::file
