// The answer as a JSON tree, member by member in the order of the loop file's description, then as
// text with one blank for each level. Digits: seconds to 0.001, metres and minutes to 0.01, degrees
// to 1e-7 (all that the map has).
#include <nlohmann/json.hpp>

#include "file/words.hpp"
#include "file/write_drive.hpp"
#include "file/write_lesson.hpp"
#include "file/write_values.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::file {
namespace {

using namespace values;

double minutes(double value) {
  return rounded(value, 1e2);
}

Json object_and_tag(const OsmObject& object, std::string_view tag) {
  return {{"type", name(object.type)}, {"id", object.id}, {"tag", tag}};
}

Json area(const wish::AreaName& area) {
  return {{"file", area.file},
          {"id", area.id},
          {"region", area.region},
          {"side", area.side},
          {"map_timestamp", area.map_timestamp},
          {"credit", area.credit}};
}

Json notes(const wish::NotesName& notes) {
  return {{"file", notes.file}, {"sha256", notes.sha256}};
}

Json pass(const wish::Pass& pass) {
  Json result = {{"kind", road::name(pass.kind)},
                 {"movement", text_or_null(road::name(pass.movement))},
                 {"exit", pass.exit == 0 ? Json(nullptr) : Json(pass.exit)},
                 {"first", pass.first},
                 {"last", pass.last},
                 {"hardness", pass.hardness},
                 {"confidence", road::name(pass.confidence)},
                 {"source", object_and_tag(pass.source, pass.tag)}};
  if (pass.stop_s > 0) result["stop_s"] = seconds(pass.stop_s);
  if (pass.verdict) result["verdict"] = wish::name(*pass.verdict);
  return result;
}

Json bus_lane(const wish::BusLanePass& lane) {
  return {{"first", lane.first},
          {"last", lane.last},
          {"side", lane.side},
          {"hours", or_null(lane.hours, [](const std::string& hours) { return hours; })},
          {"arrive", {lane.arrive_from, lane.arrive_to}},
          {"verdict", wish::name(lane.verdict)},
          {"why", lane.why},
          {"source", object_and_tag(lane.source, lane.tag)}};
}

Json met(const wish::Met& met) {
  Json result = want(met.want, "asked");
  result["got"] = met.got;
  if (met.practised) result["practised"] = *met.practised;
  return result;
}

Json certificate(const wish::Certificate& certificate) {
  Json result = {{"state", certificate.state},
                 {"value", certificate.value},
                 {"bound", or_null(certificate.bound, [](std::int64_t bound) { return bound; })},
                 {"gap", or_null(gap_of(certificate), [](double gap) { return gap; })},
                 {"candidates", certificate.candidates},
                 {"left_out", certificate.left_out}};
  if (!certificate.reasons.empty())
    result["reasons"] = list(certificate.reasons, [](const wish::LeftOut& left_out) {
      return Json{{"why", left_out.why}, {"count", left_out.count}};
    });
  return result;
}

Json loop(const wish::Loop& loop) {
  Json result = {{"id", loop.id}, {"start", write_time(loop.start)}};
  if (!loop.variant.empty()) result["variant"] = loop.variant;
  if (loop.end) result["end"] = write_time(*loop.end);
  result["seconds"] = range(loop.seconds);
  result["stop_seconds"] = seconds(loop.stop_seconds);
  result["metres"] = metres(loop.metres);
  result["metres_twice"] = metres(loop.metres_twice);
  result["stretches"] = list(loop.stretches, stretch);
  result["passes"] = list(loop.passes, pass);
  result["bus_lanes"] = list(loop.bus_lanes, bus_lane);
  result["pull_ups"] = list(loop.pull_ups, pull_up);
  result["stops_after"] = list(loop.stops_after, stop_after);
  result["ways_home"] = list(loop.ways_home, way_home);
  if (!loop.independent.empty()) result["independent"] = list(loop.independent, independent);
  result["met"] = list(loop.met, met);
  write_lesson(loop, result);
  result["certificate"] = certificate(loop.certificate);
  return result;
}

Json missing(const wish::Missing& missing) {
  Json result = want(missing.want, "asked");
  result["got"] = missing.got;
  result["why"] = missing.why;
  result["nearest"] = or_null(missing.nearest, [](const OsmObject& object) {
    return Json{{"type", name(object.type)}, {"id", object.id}};
  });
  result["nearest_minutes"] = or_null(missing.nearest_minutes, minutes);
  result["needs_minutes"] = or_null(missing.needs_minutes, minutes);
  return result;
}

Json want_cost(const wish::WantCost& cost) {
  Json result = want(cost.want, "asked");
  result["minutes"] = minutes(cost.minutes);
  return result;
}

Json shortfall(const wish::Shortfall& shortfall) {
  Json result = {{"why", shortfall.why},
                 {"missing", list(shortfall.missing, missing)},
                 {"least_minutes", or_null(shortfall.least_minutes, minutes)},
                 {"better_starts", list(shortfall.better_starts, write_time)}};
  if (!shortfall.not_taken.empty()) result["not_taken"] = shortfall.not_taken;
  if (!shortfall.stops.empty()) result["stops"] = shortfall.stops;
  if (shortfall.at_least_minutes) result["at_least_minutes"] = minutes(*shortfall.at_least_minutes);
  if (!shortfall.costs.empty()) result["costs"] = list(shortfall.costs, want_cost);
  return result;
}

}  // namespace

std::string write_answer(const wish::Answer& answer) {
  const Json file = {{"format", loop_format},
                     {"version", loop_version},
                     {"area", area(answer.area)},
                     {"notes", or_null(answer.notes, notes)},
                     {"wish", write_wish(answer.wish)},
                     {"loops", list(answer.loops, loop)},
                     {"fewer_because", text_or_null(answer.fewer_because)},
                     {"shortfall", or_null(answer.shortfall, shortfall)}};
  // Names in the map may hold bytes that are no UTF-8; these become U+FFFD.
  return file.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace loopwright::file
