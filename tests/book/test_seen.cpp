// What was seen on the ground, and how long it counts. The days are this project's (src/rules/seen.txt); that a sighting
// falls with the map's own words is a rule of ours, too.
#include <catch2/catch.hpp>

#include "book/sample.hpp"
#include "loopwright/book/rights.hpp"
#include "loopwright/book/seen.hpp"
#include "support/error_text.hpp"

namespace loopwright::book {
namespace {

constexpr Date seen_on{2026, 11, 7}, three_weeks_later{2026, 11, 28};

const wish::MapFact lane{"hours of bus lane along", "way/5", "Mo-Sa 07:00-10:00"};
const wish::MapFact limit{"limit along", "way/6", "30 mph, inferred"};
const wish::MapFact mouth{"emerge from way/7", "node/8", "minor road on a major one"};

SeenFacts facts_of(std::vector<SeenFact> all) {
  SeenFacts facts;
  for (SeenFact& one : all)
    facts.emplace(std::pair(one.fact.what, one.fact.object), std::move(one));
  return facts;
}

Log log_with(std::vector<SeenFact> seen) {
  Log log = test::log_of_two_passes();
  log.seen = std::move(seen);
  return log;
}

TEST_CASE("what nobody saw says nothing", "[book][seen]") {
  const SeenNow now = seen_now(std::vector{lane}, {}, three_weeks_later);
  CHECK(now.state == SeenState::never);
  CHECK(words_of(now, three_weeks_later).empty());
}

TEST_CASE("a plate that was seen is told with its time", "[book][seen]") {
  const SeenNow now =
      seen_now(std::vector{lane}, facts_of({{lane, seen_on, ""}}), three_weeks_later);
  CHECK(now.state == SeenState::seen);
  CHECK(words_of(now, three_weeks_later) == "seen by you three weeks ago");
}

TEST_CASE("a sighting counts no longer once the map says another thing", "[book][seen]") {
  wish::MapFact changed = lane;
  changed.map_text = "Mo-Sa 07:00-19:00";
  const SeenNow now =
      seen_now(std::vector{changed}, facts_of({{lane, seen_on, ""}}), three_weeks_later);
  CHECK(now.state == SeenState::changed);
  CHECK(words_of(now, three_weeks_later) ==
        "the map says another thing since you saw it on 2026-11-07: look again");
}

TEST_CASE("what is long ago is to be looked at again, with the reason", "[book][seen]") {
  const auto at = [](const wish::MapFact& fact, int days) {
    return seen_now(std::vector{fact}, facts_of({{fact, seen_on, ""}}),
                    date_from_days(days_since_epoch(seen_on) + days));
  };
  CHECK(at(lane, 180).state == SeenState::seen);
  CHECK(at(lane, 181).state == SeenState::long_ago);
  CHECK(at(limit, 181).state == SeenState::long_ago);
  CHECK(at(mouth, 181).state == SeenState::seen);
  CHECK(at(mouth, 366).state == SeenState::long_ago);
  CHECK(words_of(at(lane, 190), date_from_days(days_since_epoch(seen_on) + 190)) ==
        "seen by you six months ago; look again, orders on trial are changed within half a year");
}

TEST_CASE("what stands there otherwise is told, and confirms nothing", "[book][seen]") {
  const SeenNow now = seen_now(std::vector{lane}, facts_of({{lane, seen_on, "Mo-Fr 07:00-09:30"}}),
                               three_weeks_later);
  CHECK(now.state == SeenState::otherwise);
  CHECK(words_of(now, three_weeks_later) == "you read there on 2026-11-07: Mo-Fr 07:00-09:30");
}

TEST_CASE("of what the map doesn't know only what stands there counts", "[book][seen]") {
  wish::MapFact unknown = lane;
  unknown.map_text.clear();
  const SeenNow now = seen_now(
      std::vector{unknown}, facts_of({{unknown, seen_on, "Mo-Fr 07:00-09:30"}}), three_weeks_later);
  CHECK(now.state == SeenState::seen);
  CHECK(words_of(now, three_weeks_later) == "seen by you three weeks ago: Mo-Fr 07:00-09:30");
  const std::vector<LetteredFact> sheet{{"A", unknown}, {"B", limit}};
  const std::vector<SaidSeen> bare{{"A", ""}}, read{{"A", "Mo-Fr"}}, all{{"*", ""}};
  CHECK(test::error_text([&] { facts_seen(bare, sheet, seen_on); }) ==
        "'seen A': the map doesn't know what stands there: say it, such as 'seen A: Mo-Fr "
        "07:00-10:00'");
  CHECK(facts_seen(read, sheet, seen_on).size() == 1);
  CHECK(facts_seen(all, sheet, seen_on) == std::vector<SeenFact>{{limit, seen_on, ""}});
}

TEST_CASE("of several facts the worst counts", "[book][seen]") {
  const SeenFacts all = facts_of({{lane, seen_on, ""}, {limit, {2026, 1, 2}, ""}});
  CHECK(seen_now(std::vector{lane, limit}, all, three_weeks_later).state == SeenState::long_ago);
  CHECK(seen_now(std::vector{lane, mouth}, all, three_weeks_later).state == SeenState::never);
  const SeenFacts two = facts_of({{lane, seen_on, ""}, {limit, {2026, 11, 1}, ""}});
  CHECK(seen_now(std::vector{lane, limit}, two, three_weeks_later).day == Date{2026, 11, 1});
}

TEST_CASE("times ago are told as one says them", "[book][seen]") {
  const auto ago = [](int days) {
    return ago_words(seen_on, date_from_days(days_since_epoch(seen_on) + days));
  };
  CHECK(ago(0) == "today");
  CHECK(ago(1) == "yesterday");
  CHECK(ago(5) == "five days ago");
  CHECK(ago(14) == "two weeks ago");
  CHECK(ago(56) == "one month ago");
  CHECK(ago(240) == "eight months ago");
  CHECK(ago(366) == "more than a year ago");
}

TEST_CASE("letters go on after Z", "[book][seen]") {
  CHECK(letter_of(0) == "A");
  CHECK(letter_of(25) == "Z");
  CHECK(letter_of(26) == "AA");
  CHECK(letter_of(26 + 26 * 26) == "AAA");
}

TEST_CASE("a log says by letters what was seen", "[book][seen]") {
  const Said said = read_log("seen a C; rest 4; seen B: Mo-Fr 07:00-09:30");
  CHECK(said.seen == std::vector<SaidSeen>{{"A", ""}, {"C", ""}, {"B", "Mo-Fr 07:00-09:30"}});
  CHECK(read_log("seen all").seen == std::vector<SaidSeen>{{"*", ""}});
  using test::error_text;
  CHECK(error_text([] { read_log("seen"); }) ==
        "'seen': behind 'seen' stand letters of the sheet, such as 'seen A C', or 'seen all'");
  CHECK(error_text([] { read_log("seen 4"); }).starts_with("'seen 4': behind 'seen' stand"));
  CHECK(error_text([] { read_log("seen A B: 20"); }) ==
        "'seen A B: 20': what stands there is said of one letter at a time, such as 'seen B: 20'");
}

TEST_CASE("a letter means all its facts, and one the sheet lacks is refused", "[book][seen]") {
  const std::vector<LetteredFact> sheet{{"A", lane}, {"A", limit}, {"B", mouth}};
  const std::vector<SaidSeen> a{{"A", ""}}, all{{"*", ""}}, c{{"C", ""}};
  CHECK(facts_seen(a, sheet, seen_on) ==
        std::vector<SeenFact>{{lane, seen_on, ""}, {limit, seen_on, ""}});
  CHECK(facts_seen(all, sheet, seen_on).size() == 3);
  using test::error_text;
  CHECK(error_text([&] { facts_seen(c, sheet, seen_on); }) == "'seen C': the sheet has A and B");
  CHECK(error_text([&] { facts_seen(a, {}, seen_on); }) ==
        "'seen A': the sheet of this lesson asks to look at nothing");
}

TEST_CASE("a book keeps what was seen, the latest day of each", "[book][seen]") {
  test::ScratchBook at;
  Plan plan = test::plan_of_two_passes();
  plan.to_check = {{"A", lane}, {"B", mouth}};
  const int number = plan_lesson(at.book, "WREN", plan, {});
  CHECK(lessons_of(at.book, "WREN")[0].plan.to_check == plan.to_check);
  log_lesson(at.book, {"WREN", number}, log_with({{lane, seen_on, ""}}));
  CHECK(lesson_of(at.book, "WREN", number).plan.to_check == plan.to_check);
  CHECK(seen_facts(at.book) == facts_of({{lane, seen_on, ""}}));
  log_lesson(at.book, {"WREN", number}, log_with({{lane, {2026, 11, 1}, "older"}}));
  CHECK(seen_facts(at.book) == facts_of({{lane, seen_on, ""}}));
  log_lesson(at.book, {"WREN", number}, log_with({{lane, three_weeks_later, "newer"}}));
  CHECK(seen_facts(at.book) == facts_of({{lane, three_weeks_later, "newer"}}));
}

TEST_CASE("what all logs of a lesson saw goes when its log is taken back", "[book][seen]") {
  test::ScratchBook at;
  Plan plan = test::plan_of_two_passes();
  const int first = plan_lesson(at.book, "WREN", plan, {});
  plan.start = plan.start.plus_seconds(24 * 3600);
  const int second = plan_lesson(at.book, "WREN", plan, {});
  log_lesson(at.book, {"WREN", first}, log_with({{limit, seen_on, ""}}));
  log_lesson(at.book, {"WREN", second}, log_with({{lane, seen_on, "a slip"}}));
  log_lesson(at.book, {"WREN", second}, log_with({{mouth, seen_on, ""}}));
  log_lesson(at.book, {"WREN", second}, log_with({}));
  CHECK(seen_facts(at.book) ==
        facts_of({{limit, seen_on, ""}, {lane, seen_on, "a slip"}, {mouth, seen_on, ""}}));
  unlog_lesson(at.book, {"WREN", second}, {});
  CHECK(seen_facts(at.book) == facts_of({{limit, seen_on, ""}}));
}

TEST_CASE("what was seen stays when a pupil is erased, for it tells of no pupil", "[book][seen]") {
  test::ScratchBook at;
  Plan plan = test::plan_of_two_passes();
  plan.to_check = {{"A", lane}};
  log_lesson(at.book, {"WREN", plan_lesson(at.book, "WREN", plan, {})},
             log_with({{lane, seen_on, ""}}));
  erase_pupil(at.book, "WREN");
  CHECK(seen_facts(at.book) == facts_of({{lane, seen_on, ""}}));
}

}  // namespace
}  // namespace loopwright::book
