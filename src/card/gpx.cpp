// GPX 1.1 as TopoGrafix's schema orders it (http://www.topografix.com/GPX/1/1/):
//   gpx(version, creator)
//     metadata: name, desc, copyright(author): license, time, bounds
//     wpt:      name, desc                                          one for each planned stop
//     rte:      name, desc, rtept(lat, lon)*: name, desc, type      one for each spoken row
//     trk:      name, trkseg: trkpt(lat, lon)*                      the road, corner to corner
// Times are UTC, as the schema asks; degrees have 7 decimals, all that the map has.
#include <algorithm>
#include <array>
#include <cstdio>
#include <set>

#include "card/drive_line.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"
#include "card/subject_of.hpp"
#include "card/xml.hpp"
#include "loopwright/card/card.hpp"

namespace loopwright::card {
namespace {

/// Degrees with exactly 7 decimals.
std::string degrees(std::int32_t e7) {
  constexpr std::int64_t units = 10'000'000;
  const std::int64_t size = std::abs(static_cast<std::int64_t>(e7));
  std::array<char, 24> text{};
  std::snprintf(text.data(), text.size(), "%s%lld.%07lld", e7 < 0 ? "-" : "",
                static_cast<long long>(size / units), static_cast<long long>(size % units));
  return text.data();
}

std::string utc(const Instant& at) {
  constexpr std::size_t date_and_time = std::string_view("2026-11-28T15:00:00").size();
  return write_time({at.unix_s, 0}).substr(0, date_and_time) + "Z";
}

/// What isn't sure of the passes of a row, each once.
std::set<std::string> unsure_in(const say::Row& row, const wish::Loop& loop,
                                const say::Words& words) {
  std::set<std::string> texts;
  for (const std::size_t index : row.passes) {
    const wish::Pass& pass = loop.passes[index];
    if (pass.confidence == road::Confidence::inferred) texts.insert(write_unsure(words, pass.kind));
  }
  return texts;
}

std::string describe(const say::Row& row, const wish::Loop& loop, const say::Words& words,
                     SpeedUnit unit) {
  std::vector<std::string> parts;
  if (!row.where.empty()) parts.push_back(row.where);
  if (row.new_limit) {
    const std::string limit = write_limit(words, *row.new_limit);
    const bool sure = road::is_sure(row.new_limit->confidence);
    parts.push_back(sure ? limit : words.fill("limit.look", {{"limit", limit}}));
  }
  parts.insert(parts.end(), row.briefs.begin(), row.briefs.end());
  if (!row.hazards.empty())
    parts.push_back(words.fill("card.then", {{"hazards", joined(row.hazards, ", ")}}));
  if (row.to_next_m > 0)
    parts.push_back(words.fill("card.next", {{"distance", say::say_distance(row.to_next_m, unit)},
                                             {"minutes", write_minutes(words, row.to_next_s)}}));
  for (const std::string& unsure : unsure_in(row, loop, words)) parts.push_back(unsure);
  return joined(parts, "; ");
}

/// What the file says of itself.
struct Described {
  std::string title, cautions, licence;
};

void add_metadata(XmlWriter& xml, const wish::Loop& loop, const Described& described,
                  const std::vector<Point>& line) {
  const auto [south, north] = std::minmax_element(
      line.begin(), line.end(), [](Point a, Point b) { return a.lat_e7 < b.lat_e7; });
  const auto [west, east] = std::minmax_element(
      line.begin(), line.end(), [](Point a, Point b) { return a.lon_e7 < b.lon_e7; });
  xml.open("metadata");
  xml.leaf("name", described.title);
  xml.leaf("desc", described.cautions);
  xml.open("copyright", {{"author", "OpenStreetMap contributors"}});
  xml.leaf("license", described.licence);
  xml.close();
  xml.leaf("time", utc(loop.start));
  xml.empty("bounds", {{"minlat", degrees(south->lat_e7)},
                       {"minlon", degrees(west->lon_e7)},
                       {"maxlat", degrees(north->lat_e7)},
                       {"maxlon", degrees(east->lon_e7)}});
  xml.close();
}

}  // namespace

std::string write_gpx(const Lesson& lesson) {
  const SubjectOf all(lesson);
  const auto& [roads, answer, loop, rows, words, setting, timed, kerbs, ground, whole, before,
               help] = all.get();
  const std::vector<Point> line = drive_line(roads, whole);
  const std::string title = words.fill("card.title", {{"n", std::to_string(loop.id)}});
  XmlWriter xml;
  xml.open("gpx",
           {{"version", "1.1"},
            {"creator", "Loopwright"},
            {"xmlns", "http://www.topografix.com/GPX/1/1"},
            {"xmlns:xsi", "http://www.w3.org/2001/XMLSchema-instance"},
            {"xsi:schemaLocation",
             "http://www.topografix.com/GPX/1/1 http://www.topografix.com/GPX/1/1/gpx.xsd"}});
  const Described described{title, cautions_in_one(words, loop, timed),
                            std::string(words.at("card.licence"))};
  add_metadata(xml, loop, described, line);
  for (const wish::PullUp& place : loop.pull_ups) {
    if (place.purpose.empty()) continue;
    const Point at = point_of(roads, loop, place);
    xml.open("wpt", {{"lat", degrees(at.lat_e7)}, {"lon", degrees(at.lon_e7)}});
    xml.leaf("name", purpose_words(words, place));
    xml.leaf("desc", place.why + ": " + place.check);
    xml.close();
  }
  xml.open("rte");
  xml.leaf("name", title);
  std::string about = write_credit(words, roads);
  for (const Timed& met : timed) about += "; " + hours_in_one(words, met);
  xml.leaf("desc", about);
  for (std::size_t k = 0; k < rows.size(); ++k) {
    const say::Row& row = rows[k];
    xml.open("rtept", {{"lat", degrees(row.at.lat_e7)}, {"lon", degrees(row.at.lon_e7)}});
    xml.leaf("name", row.say);
    std::string text = describe(row, loop, words, roads.info().region.unit);
    const std::string kerb = write_kerb(words, kerbs, k, rows.size());
    if (!kerb.empty()) text += (text.empty() ? "" : "; ") + kerb;
    if (!text.empty()) xml.leaf("desc", text);
    xml.close();
  }
  xml.close();
  xml.open("trk");
  xml.leaf("name", title);
  xml.open("trkseg");
  for (const Point at : line)
    xml.empty("trkpt", {{"lat", degrees(at.lat_e7)}, {"lon", degrees(at.lon_e7)}});
  xml.close();
  xml.close();
  xml.close();
  return xml.text();
}

}  // namespace loopwright::card
