// One FeatureCollection: the road as a line, corner to corner; a point for each spoken row; a point
// for each pass, with the map object that says it is one. Credit and cautions are members of the
// collection itself.
#include "loopwright/file/geojson.hpp"

#include <cmath>

#include "card/drive_line.hpp"
#include "card/independent.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"
#include "card/subject_of.hpp"
#include "loopwright/card/card.hpp"
#include "loopwright/say/say.hpp"

namespace loopwright::card {
namespace {

using file::GeoFeature;

std::string object_name(const OsmObject& object) {
  constexpr std::string_view types[] = {"node", "way", "relation"};
  return std::string(types[static_cast<std::size_t>(object.type)]) + '/' +
         std::to_string(object.id);
}

GeoFeature line_feature(const wish::Loop& loop, std::vector<Point> line) {
  GeoFeature feature;
  feature.values = {{"what", std::string("drive")},
                    {"loop", std::int64_t{loop.id}},
                    {"start", write_time(loop.start)},
                    {"metres", std::int64_t{std::llround(length_m(line))}}};
  feature.line = std::move(line);
  return feature;
}

/// `kerb`: what is told of it there, and `stops` of stopping from there on; both mostly nothing.
GeoFeature row_feature(const say::Row& row, std::size_t number, std::string kerb,
                       const std::string& stops) {
  GeoFeature feature{{row.at},
                     {{"what", std::string("row")},
                      {"number", static_cast<std::int64_t>(number)},
                      {"say", row.say},
                      {"where", row.where},
                      {"joined", row.joined_to_previous},
                      {"speak_metres_before", std::int64_t{std::llround(row.speak_m)}},
                      {"hardness", std::int64_t{row.hardness}}}};
  if (row.new_limit) {
    feature.values.emplace_back("limit", std::int64_t{row.new_limit->value});
    feature.values.emplace_back("unit", std::string(name(row.new_limit->unit)));
    feature.values.emplace_back("limit_is", std::string(road::name(row.new_limit->confidence)));
  }
  std::vector<std::string> notes = row.briefs;
  notes.insert(notes.end(), row.hazards.begin(), row.hazards.end());
  if (!kerb.empty()) notes.push_back(std::move(kerb));
  if (!notes.empty()) feature.values.emplace_back("notes", joined(notes, "; "));
  if (!stops.empty()) feature.values.emplace_back("stops", stops);
  return feature;
}

GeoFeature pass_feature(Point at, const wish::Pass& pass) {
  GeoFeature feature{{at},
                     {{"what", std::string("pass")}, {"kind", std::string(road::name(pass.kind))}}};
  if (pass.movement != road::Movement::none)
    feature.values.emplace_back("movement", std::string(road::name(pass.movement)));
  if (pass.exit > 0) feature.values.emplace_back("exit", std::int64_t{pass.exit});
  feature.values.emplace_back("hardness", std::int64_t{pass.hardness});
  feature.values.emplace_back("confidence", std::string(road::name(pass.confidence)));
  feature.values.emplace_back("source", object_name(pass.source));
  feature.values.emplace_back("tag", pass.tag);
  return feature;
}

Point pass_start(const road::Roads& roads, const wish::Loop& loop, const Visit& visit) {
  return roads.nodes[roads.from_node(loop.stretches[visit.stretch].stretch).index()].at;
}

GeoFeature hours_feature(Point at, const say::Words& words, const Timed& timed) {
  return {{at},
          {{"what", std::string("hours")},
           {"street", timed.thing.street},
           {"says", hours_in_one(words, timed)}}};
}

}  // namespace

std::string write_geojson(const Lesson& lesson) {
  const SubjectOf all(lesson);
  const auto& [roads, answer, loop, rows, words, setting, timed, kerbs, ground, whole, before,
               help] = all.get();
  std::vector<GeoFeature> features;
  // A line needs two positions (RFC 7946, 3.1.4); a drive within one piece has no corner to show.
  std::vector<Point> line = drive_line(roads, whole);
  if (line.size() > 1) features.push_back(line_feature(loop, std::move(line)));
  for (std::size_t k = 0; k < rows.size(); ++k)
    features.push_back(row_feature(rows[k], k + 1, write_kerb(words, kerbs, k, rows.size()),
                                   joined(stop_lines(all.get(), k), "; ")));
  for (const wish::Pass& pass : loop.passes)
    features.push_back(pass_feature(pass_point(roads, loop, pass), pass));
  for (GeoFeature& stop : stop_features(roads, words, loop)) features.push_back(std::move(stop));
  for (GeoFeature& one : independent_features(roads, loop)) features.push_back(std::move(one));
  for (const Timed& met : timed)
    for (const Visit& visit : met.visits)
      features.push_back(
          hours_feature(pass_start(roads, whole, visit), words, {met.thing, {visit}}));
  const std::vector<file::GeoValue> members{
      {"name", words.fill("card.title", {{"n", std::to_string(loop.id)}})},
      {"credit", write_credit(words, roads)},
      {"licence", std::string(words.at("card.licence"))},
      {"cautions", cautions_in_one(words, loop, timed)}};
  return file::write_geojson(features, members);
}

}  // namespace loopwright::card
