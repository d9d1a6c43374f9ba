// 1. Parse; refuse what is no JSON, no loop file or of another version.
// 2. Each object of the loop file by a function of its own, member by member, with the range each
//    number may have. What a later version adds may be missing.
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

#include "file/cursor.hpp"
#include "file/read_drive.hpp"
#include "file/read_lesson.hpp"
#include "file/read_values.hpp"
#include "file/words.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/wish/variant.hpp"

namespace loopwright::file {
namespace {

using namespace values;

constexpr std::string_view make_again = "; make it again with 'loopwright loops'";
constexpr std::size_t most_loops = 1000;

OsmObject object(const Cursor& value) {
  OsmObject object;
  object.type = value.at("type").word(parse_object_type, "node, way or relation");
  object.id = map_id(value.at("id"));
  return object;
}

wish::AreaName area(const Cursor& value) {
  return {value.at("file").text(),          value.at("id").text(),
          value.at("region").text(),        one_of(value.at("side"), {"left", "right"}),
          value.at("map_timestamp").text(), value.at("credit").text()};
}

wish::NotesName notes(const Cursor& value) {
  return {value.at("file").text(), value.at("sha256").text()};
}

/// Which stretches of a loop something covers.
struct Cover {
  std::size_t first, last;
};

Cover cover(const Cursor& value, const wish::Loop& loop) {
  const auto count = static_cast<std::int64_t>(loop.stretches.size());
  const std::int64_t first = value.at("first").whole(0, count - 1);
  const std::int64_t last = value.at("last").whole(first, count - 1);
  return {static_cast<std::size_t>(first), static_cast<std::size_t>(last)};
}

wish::Pass pass(const Cursor& value, const wish::Loop& loop) {
  const Cover where = cover(value, loop);
  wish::Pass pass;
  pass.kind = kind(value.at("kind"));
  pass.movement = movement(value.at("movement"));
  pass.exit =
      or_none(value.at("exit"), [](const Cursor& exit) { return small(exit, 1, 255); }).value_or(0);
  pass.first = where.first;
  pass.last = where.last;
  pass.hardness = small(value.at("hardness"), 1, 5);
  pass.confidence =
      value.at("confidence").word(road::parse_confidence, "certain, inferred or noted");
  pass.source = object(value.at("source"));
  pass.tag = value.at("source").at("tag").text();
  if (const auto stop = value.find("stop_s")) pass.stop_s = seconds(*stop);
  if (const auto judged = value.find("verdict")) pass.verdict = or_none(*judged, verdict);
  return pass;
}

std::string clock(const Cursor& value) {
  const std::string text = value.text();
  if (!read_time("2026-01-01T" + text) || text.size() != 5) value.fail("a time like \"15:41\"");
  return text;
}

wish::BusLanePass bus_lane(const Cursor& value, const wish::Loop& loop) {
  const Cover where = cover(value, loop);
  wish::BusLanePass lane;
  lane.first = where.first;
  lane.last = where.last;
  lane.side = one_of(value.at("side"), {"left", "right", "unknown"});
  lane.hours = or_none(value.at("hours"), [](const Cursor& hours) { return hours.text(); });
  const auto arrive = value.at("arrive").items(2);
  if (arrive.size() != 2) value.at("arrive").fail("a list of two times");
  lane.arrive_from = clock(arrive[0]);
  lane.arrive_to = clock(arrive[1]);
  lane.verdict = verdict(value.at("verdict"));
  lane.why = value.at("why").text();
  lane.source = object(value.at("source"));
  lane.tag = value.at("source").at("tag").text();
  return lane;
}

int times(const Cursor& value) {
  return small(value, 0, static_cast<int>(most_passes));
}

wish::Certificate certificate(const Cursor& value) {
  wish::Certificate certificate;
  certificate.state = one_of(value.at("state"), {"best possible", "within", "searched"});
  certificate.value = value.at("value").whole(-greatest_id, greatest_id);
  certificate.bound = or_none(value.at("bound"), map_id);
  certificate.candidates = value.at("candidates").whole(0, greatest_id);
  certificate.left_out = value.at("left_out").whole(0, certificate.candidates);
  if (const auto reasons = value.find("reasons"))
    certificate.reasons = list(*reasons, most_wants, [](const Cursor& reason) {
      return wish::LeftOut{reason.at("why").text(), reason.at("count").whole(1, greatest_id)};
    });
  const auto gap = or_none(value.at("gap"), [](const Cursor& written) {
    return written.number(0, std::numeric_limits<double>::max());
  });
  if (gap != gap_of(certificate)) value.at("gap").fail("bound / value - 1, or null for no bound");
  return certificate;
}

wish::Met met(const Cursor& value, const wish::Loop& loop) {
  wish::Met met{want(value, "asked"), times(value.at("got"))};
  if (const auto practised = value.find("practised"))
    met.practised = list(*practised, most_passes,
                         [&loop](const Cursor& row) { return row_of(row, loop.passes.size()); });
  return met;
}

wish::Loop loop(const Cursor& value) {
  wish::Loop loop;
  loop.id = small(value.at("id"), 1, static_cast<int>(most_loops));
  loop.start = instant(value.at("start"));
  if (const auto end = value.find("end")) loop.end = instant(*end);
  loop.seconds = range(value.at("seconds"));
  loop.stop_seconds = seconds(value.at("stop_seconds"));
  loop.metres = metres(value.at("metres"));
  if (const auto twice = value.find("metres_twice")) loop.metres_twice = metres(*twice);
  loop.stretches = list(value.at("stretches"), most_stretches, stretch);
  loop.passes =
      list(value.at("passes"), most_passes, [&loop](const Cursor& row) { return pass(row, loop); });
  loop.bus_lanes = list(value.at("bus_lanes"), most_passes,
                        [&loop](const Cursor& row) { return bus_lane(row, loop); });
  read_pull_ups(value, loop);
  read_ways_home(value, loop);
  read_independent(value, loop);
  if (const auto variant = value.find("variant"))
    loop.variant = one_of(*variant, {wish::easier_variant, wish::harder_variant});
  read_lesson(value, loop);
  loop.met =
      list(value.at("met"), most_wants, [&loop](const Cursor& row) { return met(row, loop); });
  loop.certificate = certificate(value.at("certificate"));
  return loop;
}

double minutes(const Cursor& value) {
  return value.number(0, greatest_seconds / 60);
}

wish::Missing missing(const Cursor& value) {
  return {want(value, "asked"),
          times(value.at("got")),
          value.at("why").text(),
          or_none(value.at("nearest"), object),
          or_none(value.at("nearest_minutes"), minutes),
          or_none(value.at("needs_minutes"), minutes)};
}

wish::Shortfall shortfall(const Cursor& value) {
  wish::Shortfall shortfall;
  shortfall.why = value.at("why").text();
  shortfall.missing = list(value.at("missing"), most_wants, missing);
  shortfall.least_minutes = or_none(value.at("least_minutes"), minutes);
  if (const auto better = value.find("better_starts"))
    shortfall.better_starts = list(*better, most_wants, instant);
  if (const auto at_least = value.find("at_least_minutes"))
    shortfall.at_least_minutes = minutes(*at_least);
  if (const auto costs = value.find("costs"))
    shortfall.costs = list(*costs, most_wants, [](const Cursor& row) {
      return wish::WantCost{want(row, "asked"), minutes(row.at("minutes"))};
    });
  if (const auto names = value.find("not_taken"))
    shortfall.not_taken = list(*names, most_wants, [](const Cursor& text) { return text.text(); });
  if (const auto stops = value.find("stops"))
    shortfall.stops = list(*stops, most_wants, [](const Cursor& text) { return text.text(); });
  return shortfall;
}

nlohmann::json json_of(std::string_view text, const std::string& name) {
  if (text.empty()) throw InputError(name + ": is empty" + std::string(make_again));
  try {
    return nlohmann::json::parse(text);
  } catch (const nlohmann::json::parse_error& error) {
    throw InputError(name + ": is no JSON at byte " + std::to_string(error.byte) +
                     std::string(make_again));
  } catch (const nlohmann::json::out_of_range&) {
    throw InputError(name + ": holds a number that is too large" + std::string(make_again));
  }
}

void expect_loop_file(const nlohmann::json& json, const std::string& name) {
  if (!json.is_object() || !json.contains("format") || json["format"] != loop_format) {
    throw InputError(name + ": is not a loop file; make one with 'loopwright loops'");
  }
  const std::int64_t version = Cursor(json, name).at("version").whole(0, greatest_id);
  if (version != loop_version) {
    throw InputError(name + ": was written by another version (loop file " +
                     std::to_string(version) + ", this program reads " +
                     std::to_string(loop_version) + ")" + std::string(make_again));
  }
}

}  // namespace

wish::Answer read_answer(std::string_view text, std::string_view file_name) {
  const std::string name(file_name);
  const nlohmann::json json = json_of(text, name);
  expect_loop_file(json, name);
  const Cursor file(json, name);
  wish::Answer answer;
  answer.area = area(file.at("area"));
  answer.notes = or_none(file.at("notes"), notes);
  answer.wish = read_wish(file.at("wish"));
  answer.loops = list(file.at("loops"), most_loops, loop);
  if (const auto because = file.find("fewer_because")) {
    answer.fewer_because =
        or_none(*because, [](const Cursor& why) { return why.text(); }).value_or("");
  }
  answer.shortfall = or_none(file.at("shortfall"), shortfall);
  return answer;
}

}  // namespace loopwright::file
