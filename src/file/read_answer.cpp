// 1. Parse; refuse what is no JSON, no loop file or of another version.
// 2. Each object of the loop file by a function of its own, member by member, with the range each
//    number may have. What a later version adds may be missing; what this version can't keep
//    (pull-ups, ways home) must be empty, so that no claim is silently dropped.
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

#include "file/cursor.hpp"
#include "file/words.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/file/loop_file.hpp"

namespace loopwright::file {
namespace {

constexpr std::string_view make_again = "; make it again with 'loopwright loops'";
/// Whole numbers that every JSON reader keeps exactly (RFC 8259 section 6).
constexpr std::int64_t greatest_id = 9007199254740991;
constexpr double greatest_seconds = 1e6;  ///< eleven days
constexpr double greatest_metres = 1e8;
constexpr std::size_t most_loops = 1000;
constexpr std::size_t most_stretches = 100'000;
constexpr std::size_t most_passes = 100'000;
constexpr std::size_t most_wants = 1000;
constexpr int most_minutes = 24 * 60;

int small(const Cursor& value, int least, int most) {
  return static_cast<int>(value.whole(least, most));
}

std::int64_t map_id(const Cursor& value) {
  return value.whole(-greatest_id, greatest_id);
}

double seconds(const Cursor& value) {
  return value.number(0, greatest_seconds);
}
double metres(const Cursor& value) {
  return value.number(0, greatest_metres);
}

template <class Read>
auto or_none(const Cursor& value, Read read) -> std::optional<decltype(read(value))> {
  const auto there = value.unless_null();
  return there ? std::optional(read(*there)) : std::nullopt;
}

template <class Read>
auto list(const Cursor& value, std::size_t most, Read read) {
  std::vector<decltype(read(value))> result;
  for (const Cursor& item : value.items(most)) result.push_back(read(item));
  return result;
}

/// A text that is one of a few.
std::string one_of(const Cursor& value, std::initializer_list<std::string_view> words) {
  const std::string text = value.text();
  std::string expected;
  for (const std::string_view word : words) {
    if (word == text) return text;
    expected += (expected.empty() ? "\"" : " or \"") + std::string(word) + "\"";
  }
  value.fail(expected);
}

Point point(const Cursor& value) {
  const auto degrees_e7 = [](const Cursor& degrees, double most) {
    return static_cast<std::int32_t>(std::lround(degrees.number(-most, most) * 1e7));
  };
  return {degrees_e7(value.at("lat"), 90), degrees_e7(value.at("lon"), 180)};
}

Instant instant(const Cursor& value) {
  const auto written = read_time(value.text());
  if (!written || !written->offset_s) value.fail("a time like \"2026-11-28T15:00:00+00:00\"");
  return {civil_seconds(written->civil) - *written->offset_s, *written->offset_s};
}

wish::Range range(const Cursor& value) {
  return {seconds(value.at("low")), seconds(value.at("likely")), seconds(value.at("high"))};
}

road::Kind kind(const Cursor& value) {
  return value.word(road::parse_kind, "a practice kind");
}

road::Movement movement(const Cursor& value) {
  const auto read = [](const Cursor& text) {
    return text.word(road::parse_movement, "left, ahead, right, round or null");
  };
  return or_none(value, read).value_or(road::Movement::none);
}

std::optional<int> count(const Cursor& value) {
  // A text here can only be "max".
  if (value.is_text()) {
    one_of(value, {"max"});
    return std::nullopt;
  }
  return small(value, 1, 1000);
}

wish::Verdict verdict(const Cursor& value) {
  return value.word(wish::parse_verdict, "usable, in force or check the plate");
}

/// A verdict that may be asked for of this kind.
wish::Verdict asked_verdict(const Cursor& value, road::Kind kind) {
  const auto asked = verdict(value);
  const auto known = wish::verdicts_of(kind);
  if (known.empty()) value.fail("no verdict: only bus-lane has any");
  if (std::find(known.begin(), known.end(), asked) == known.end()) value.fail("usable or in force");
  return asked;
}

wish::Want want(const Cursor& value, std::string_view count_key) {
  wish::Want want{kind(value.at("kind")), movement(value.at("movement")),
                  count(value.at(count_key))};
  if (const auto asked = value.find("verdict")) {
    want.verdict =
        or_none(*asked, [&](const Cursor& text) { return asked_verdict(text, want.kind); });
  }
  return want;
}

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

Date date(const Cursor& value) {
  return value.word([](std::string_view text) { return read_date(text); },
                    "a date like \"2026-09-02\"");
}

/// In order, none overlapping, each ending no sooner than it begins: as a file of --terms gives them.
hours::SchoolTerms terms(const Cursor& value) {
  std::vector<hours::TermPart> parts;
  for (const Cursor& item : value.items(wish::most_term_parts)) {
    const hours::TermPart part{date(item.at("first")), date(item.at("last"))};
    if (part.last < part.first) item.at("last").fail("a day not before \"first\"");
    if (!parts.empty() && part.first <= parts.back().last) {
      item.at("first").fail("a day after the part before it");
    }
    parts.push_back(part);
  }
  return hours::SchoolTerms(std::move(parts));
}

wish::Wish wish_asked(const Cursor& value) {
  wish::Wish wish;
  wish.home = point(value.at("home"));
  wish.end = or_none(value.at("end"), point);
  if (const auto through = value.find("through")) wish.through = list(*through, most_wants, point);
  wish.start = instant(value.at("start"));
  wish.minutes = or_none(value.at("minutes"),
                         [](const Cursor& minutes) { return small(minutes, 1, most_minutes); });
  wish.reserve_minutes = small(value.at("reserve_minutes"), 0, most_minutes);
  wish.level = small(value.at("level"), 1, 5);
  if (const auto given = value.find("level_given")) wish.level_given = given->yes_no();
  if (const auto several = value.find("alternatives")) wish.alternatives = small(*several, 1, 1000);
  wish.wants =
      list(value.at("wants"), most_wants, [](const Cursor& asked) { return want(asked, "count"); });
  wish.avoids = list(value.at("avoids"), most_wants,
                     [](const Cursor& avoid) { return wish::Avoid{kind(avoid.at("kind"))}; });
  if (const auto given = value.find("terms")) wish.terms = terms(*given);
  return wish;
}

road::LimitOnDay limit(const Cursor& value) {
  const auto number = or_none(value.at("value"), [](const Cursor& v) { return small(v, 1, 999); });
  road::LimitOnDay limit;
  limit.value = number.value_or(0);
  limit.unit = value.at("unit").word(parse_speed_unit, "\"mph\" or \"km/h\"");
  limit.confidence = value.at("confidence")
                         .word(road::parse_limit_confidence, "certain, inferred, check or noted");
  return limit;
}

std::uint32_t way_index(const Cursor& value) {
  return static_cast<std::uint32_t>(value.whole(0, std::numeric_limits<std::uint32_t>::max()));
}

std::array<double, 2> pair_of_metres(const Cursor& value) {
  const auto both = value.items(2);
  if (both.size() != 2) value.fail("a list of two numbers");
  return {metres(both[0]), metres(both[1])};
}

wish::LoopStretch stretch(const Cursor& value) {
  wish::LoopStretch stretch;
  stretch.way = map_id(value.at("way"));
  stretch.from = map_id(value.at("from"));
  stretch.to = map_id(value.at("to"));
  stretch.against = one_of(value.at("direction"), {"along", "against"}) == "against";
  stretch.from_index = way_index(value.at("from_index"));
  stretch.to_index = way_index(value.at("to_index"));
  stretch.metres = metres(value.at("metres"));
  if (const auto part = value.find("partial_m")) stretch.partial_m = pair_of_metres(*part);
  stretch.limit = limit(value.at("limit"));
  stretch.arrive_s = range(value.at("arrive_s"));
  stretch.street = value.at("street").text();
  return stretch;
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
  const auto gap = or_none(value.at("gap"), [](const Cursor& written) {
    return written.number(0, std::numeric_limits<double>::max());
  });
  if (gap != gap_of(certificate)) value.at("gap").fail("bound / value - 1, or null for no bound");
  return certificate;
}

void expect_empty(const Cursor& loop, std::string_view key) {
  const auto rows = loop.find(key);
  if (rows && !rows->items(most_passes).empty()) {
    rows->fail("an empty list (this version plans none)");
  }
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
  expect_empty(value, "pull_ups");
  expect_empty(value, "ways_home");
  loop.met = list(value.at("met"), most_wants, [](const Cursor& row) {
    return wish::Met{want(row, "asked"), times(row.at("got"))};
  });
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
  wish::Shortfall shortfall{value.at("why").text(),
                            list(value.at("missing"), most_wants, missing),
                            or_none(value.at("least_minutes"), minutes),
                            {}};
  if (const auto better = value.find("better_starts"))
    shortfall.better_starts = list(*better, most_wants, instant);
  return shortfall;
}

nlohmann::json parse(std::string_view text, const std::string& name) {
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
  const nlohmann::json json = parse(text, name);
  expect_loop_file(json, name);
  const Cursor file(json, name);
  wish::Answer answer;
  answer.area = area(file.at("area"));
  answer.notes = or_none(file.at("notes"), notes);
  answer.wish = wish_asked(file.at("wish"));
  answer.loops = list(file.at("loops"), most_loops, loop);
  if (const auto because = file.find("fewer_because")) {
    answer.fewer_because =
        or_none(*because, [](const Cursor& why) { return why.text(); }).value_or("");
  }
  answer.shortfall = or_none(file.at("shortfall"), shortfall);
  return answer;
}

}  // namespace loopwright::file
