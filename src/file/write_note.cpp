// Members in the order in which DEVELOPERS.md tells them; what a note doesn't have is left out. One
// division by 1e7 gives the coordinate nearest to the decimal (geojson.cpp).
#include <nlohmann/json.hpp>

#include "file/note_json.hpp"

namespace loopwright::file {
namespace {

using Json = nlohmann::ordered_json;
using road::day_text;
using road::Note;

Json position(Point at) {
  return Json::array({at.lon_e7 / 1e7, at.lat_e7 / 1e7});
}

Json geometry(const Note& note) {
  if (note.line.size() == 1) {
    return {{"type", "Point"}, {"coordinates", position(note.line.front())}};
  }
  Json positions = Json::array();
  for (const Point at : note.line) positions.push_back(position(at));
  return {{"type", "LineString"}, {"coordinates", std::move(positions)}};
}

Json properties(const Note& note) {
  Json json = {{"says", road::name(note.says)}};
  if (note.kind) json["kind"] = road::name(*note.kind);
  if (note.limit != 0) json["limit"] = note.limit, json["unit"] = name(note.unit);
  if (!note.hours.empty()) json["hours"] = note.hours;
  if (note.from) json["from"] = day_text(*note.from);
  if (note.until) json["until"] = day_text(*note.until);
  if (note.length_m) json["length_m"] = *note.length_m;
  if (note.heading_deg) json["heading"] = *note.heading_deg;
  if (note.way == road::NoteWay::along) json["way"] = "along";
  json["seen"] = day_text(note.seen);
  if (!note.remark.empty()) json["remark"] = note.remark;
  return json;
}

}  // namespace

nlohmann::ordered_json json_of(const Note& note) {
  return {{"type", "Feature"}, {"geometry", geometry(note)}, {"properties", properties(note)}};
}

}  // namespace loopwright::file
