// Forms as documented: OSM wiki Conditional restrictions (the last true clause wins; MAP-TAGS.md
// 2.1), Key:maxspeed:conditional, Key:lanes:bus; the values of the 20 mph limit are those of npm
// opening_hours 3.15.0 (MAP-TAGS.md 2.2).
#include <catch2/catch.hpp>

#include "loopwright/hours/condition.hpp"

namespace loopwright::hours {
namespace {

using Clauses = std::vector<Clause>;

const Setting& england() {
  static const Setting setting("GB-ENG", "Europe/London", std::nullopt);
  return setting;
}

CivilTime on(int month, int day, int hour, int minute) {
  return {{2026, month, day}, hour, minute, 0};
}

Instant utc(int month, int day, int hour, int minute) {
  return {civil_seconds(on(month, day, hour, minute)), 0};
}

/// "30 mph", or "30 mph|20 mph" when both may be.
std::string values(const Conditional& conditional, const Possible& possible) {
  std::string text;
  for (std::size_t bit = 0; bit <= conditional.rows().size(); ++bit) {
    if (possible.has(bit)) text += (text.empty() ? "" : "|") + conditional.value(bit);
  }
  return text;
}

std::string value(std::string_view text, const CivilTime& at) {
  const Conditional conditional = read_conditional("base", text);
  return values(conditional, conditional.at(at, england()));
}

std::vector<PartKind> kinds(std::string_view condition) {
  std::vector<PartKind> list;
  for (const ConditionPart& part : parts_of_condition(condition)) list.push_back(part.kind);
  return list;
}

}  // namespace

TEST_CASE("a text without a condition has no clauses", "[hours]") {
  CHECK(split_conditional("").empty());
  CHECK(split_conditional("no").empty());
  CHECK(value("no", on(11, 25, 8, 0)) == "base");
}

TEST_CASE("a conditional value is its value and its condition, brackets off", "[hours]") {
  CHECK(split_conditional("1 @ (Mo-Fr 07:00-10:00,16:00-19:00)") ==
        Clauses{{"1", "Mo-Fr 07:00-10:00,16:00-19:00"}});
  CHECK(split_conditional("20 mph @ flashing") == Clauses{{"20 mph", "flashing"}});
  CHECK(split_conditional("yes|no @(Mo-Fr 07:00-10:00 )") ==
        Clauses{{"yes|no", "Mo-Fr 07:00-10:00"}});
}

TEST_CASE("several clauses are kept in their order", "[hours]") {
  CHECK(split_conditional("none @ 20:00-22:00; 100 @ 22:00-06:00") ==
        Clauses{{"none", "20:00-22:00"}, {"100", "22:00-06:00"}});
  CHECK(split_conditional("no @ (Mo-Sa 07:00-16:00); yes @ (Mo-Sa 13:00-14:00)") ==
        Clauses{{"no", "Mo-Sa 07:00-16:00"}, {"yes", "Mo-Sa 13:00-14:00"}});
}

// Trap 9: brackets forgotten.
TEST_CASE("a piece without a value belongs to the clause before", "[hours]") {
  CHECK(split_conditional("1 @ Mo-Fr 07:00-10:00; PH off") ==
        Clauses{{"1", "Mo-Fr 07:00-10:00; PH off"}});
  CHECK(split_conditional("no; yes @ (Su)") == Clauses{{"no", ""}, {"yes", "Su"}});
}

TEST_CASE("semicolons in brackets and quotes separate nothing", "[hours]") {
  CHECK(split_conditional("no @ (Mo-Fr 08:00-09:00; PH off); yes @ (Sa)") ==
        Clauses{{"no", "Mo-Fr 08:00-09:00; PH off"}, {"yes", "Sa"}});
  CHECK(split_conditional("no @ (07:00-10:00 \"a;(b\"); yes @ Su") ==
        Clauses{{"no", "07:00-10:00 \"a;(b\""}, {"yes", "Su"}});
}

TEST_CASE("only brackets around all of a condition come off", "[hours]") {
  CHECK(split_conditional("no @ (07:00-10:00) AND (weight>7.5)") ==
        Clauses{{"no", "(07:00-10:00) AND (weight>7.5)"}});
  CHECK(split_conditional("no @ (07:00-10:00") == Clauses{{"no", "(07:00-10:00"}});
  CHECK(split_conditional("no @ ((Mo; PH off))") == Clauses{{"no", "Mo; PH off"}});
}

TEST_CASE("each part of a condition is told for what it is", "[hours]") {
  using enum PartKind;
  CHECK(kinds("Mo-Fr 07:00-10:00 AND weight>7.5 AND destination") ==
        std::vector{hours, property, user});
  CHECK(kinds("wet") == std::vector{road_state});
  CHECK(kinds("(Mo-Fr 07:00-10:00; PH off) AND (snow)") == std::vector{hours, road_state});
  CHECK(kinds("(sunset-01:00)-23:00") == std::vector{hours});
  CHECK(kinds("Mo-Fr 0x:00") == std::vector{hours});  // meant as hours, and unreadable
  CHECK(kinds("when it suits") == std::vector{other});
  CHECK(kinds("\"here AND there\"") == std::vector{hours});
}

TEST_CASE("a property is its name, its relation and its number", "[hours]") {
  const ConditionPart weight = parts_of_condition("Weight >= 7.5 t").front();
  CHECK(weight.property == "weight");
  CHECK(weight.relation == ">=");
  CHECK(weight.limit == 7.5);
  CHECK_FALSE(parts_of_condition("width<narrow").front().limit);
}

TEST_CASE("a limit by the hour holds in its hours and is the plain one outside", "[hours]") {
  const std::string_view school = "20 mph @ (Mo-Fr 08:15-09:15,15:00-16:00; PH off)";
  CHECK(value(school, on(11, 25, 8, 30)) == "20 mph");
  CHECK(value(school, on(11, 25, 10, 0)) == "base");
  CHECK(value(school, on(12, 25, 8, 30)) == "base");
}

// Trap 15.
TEST_CASE("a limit while lights flash may hold or not", "[hours]") {
  const Conditional limit = read_conditional("30 mph", "20 mph @ flashing");
  const Possible possible = limit.at(on(11, 25, 8, 30), england());
  CHECK(values(limit, possible) == "30 mph|20 mph");
  CHECK_FALSE(possible.settled());
  CHECK(possible.reason == Reason::road_state);
}

TEST_CASE("of several true clauses the last wins", "[hours]") {
  const std::string_view text = "no @ (Mo-Sa 07:00-16:00); yes @ (Mo-Sa 13:00-14:00)";
  CHECK(value(text, on(11, 25, 12, 59)) == "no");
  CHECK(value(text, on(11, 25, 13, 30)) == "yes");
  CHECK(value(text, on(11, 25, 14, 0)) == "no");
  CHECK(value(text, on(11, 29, 13, 30)) == "base");
}

TEST_CASE("a clause nobody can tell leaves what held before it possible", "[hours]") {
  CHECK(value("no @ (We); yes @ (wet)", on(11, 25, 8, 0)) == "no|yes");
  CHECK(value("yes @ (wet); no @ (We)", on(11, 25, 8, 0)) == "no");
  CHECK(value("yes @ (wet); no @ (We)", on(11, 26, 8, 0)) == "base|yes");
  CHECK(value("yes @ (wet AND We)", on(11, 26, 8, 0)) == "base");
  CHECK(value("a @ (wet); b @ (snow)", on(11, 25, 8, 0)) == "base|a|b");
}

TEST_CASE("of more than sixty-two clauses the last sixty-two are kept", "[hours]") {
  std::string text;
  for (int k = 0; k < 70; ++k) text += (k ? "; v" : "v") + std::to_string(k) + " @ (wet)";
  const Conditional conditional = read_conditional("base", text);
  REQUIRE(conditional.rows().size() == 62);
  CHECK(conditional.rows().front().value == "v8");
  const Possible possible = conditional.at(on(11, 25, 8, 0), england());
  CHECK(possible.has(Possible::base));
  CHECK(conditional.value(62) == "v69");
  CHECK(possible.has(62));
  CHECK(value(text + "; last @ (24/7)", on(11, 25, 8, 0)) == "last");
}

TEST_CASE("an interval has every value that holds in it", "[hours]") {
  const Conditional limit =
      read_conditional("30", "20 @ (Mo-Fr 08:15-09:15); 10 @ (We 08:30-08:40)");
  const auto through = [&](const Instant& from, const Instant& to) {
    return values(limit, limit.through(from, to, england()));
  };
  CHECK(through(utc(11, 25, 8, 20), utc(11, 25, 8, 29)) == "20");
  CHECK(through(utc(11, 25, 8, 20), utc(11, 25, 8, 30)) == "20|10");
  CHECK(through(utc(11, 25, 8, 0), utc(11, 25, 10, 0)) == "30|20|10");
  CHECK(limit.through(utc(11, 25, 8, 0), utc(11, 25, 10, 0), england()).reason == Reason::changes);
}

TEST_CASE("the next change of a value is that of the winning clause", "[hours]") {
  const Conditional limit =
      read_conditional("30", "20 @ (Mo-Fr 08:15-09:15); 10 @ (We 08:30-08:40)");
  const auto change = [&](const Instant& at) {
    const auto next = limit.next_change(at, england());
    return next ? write_time(*next) : "none";
  };
  CHECK(change(utc(11, 25, 8, 20)) == "2026-11-25T08:30:00+00:00");
  CHECK(change(utc(11, 25, 8, 40)) == "2026-11-25T09:15:00+00:00");
  CHECK(change(utc(11, 27, 10, 0)) == "2026-11-30T08:15:00+00:00");
  CHECK_FALSE(read_conditional("30", "20 @ flashing").next_change(utc(11, 25, 8, 0), england()));
  CHECK_FALSE(read_conditional("30", "").next_change(utc(11, 25, 8, 0), england()));
}

TEST_CASE("the value of a limit follows the clocks when they are changed", "[hours]") {
  const Conditional limit = read_conditional("30", "20 @ (01:30-02:00)");
  const auto at = [&](const Instant& moment) {
    const auto next = limit.next_change(moment, england());
    return next ? write_time(*next) : "none";
  };
  CHECK(at(utc(10, 25, 0, 30)) == "2026-10-25T01:00:00+00:00");  // 01:30 summer time
  CHECK(at(utc(10, 25, 1, 0)) == "2026-10-25T01:30:00+00:00");
  CHECK(at(utc(3, 29, 0, 0)) == "2026-03-30T01:30:00+01:00");
}

TEST_CASE("a separator left at the end of a clause is passed over", "[hours]") {
  CHECK(split_conditional("no @ (Mo-Fr 08:00-09:00); ") == Clauses{{"no", "Mo-Fr 08:00-09:00"}});
  CHECK(split_conditional("no @ Mo-Fr 08:00-09:00;;") == Clauses{{"no", "Mo-Fr 08:00-09:00"}});
  CHECK(split_conditional("no @ (Mo) ; ; yes @ (Tu);") == Clauses{{"no", "Mo"}, {"yes", "Tu"}});
  CHECK_FALSE(read_conditional("30", "20 @ (Mo-Fr 08:00-09:00); ").unread());
}

TEST_CASE("what of a conditional can't be read is told with its place", "[hours]") {
  const auto unread = [](std::string_view text) {
    const auto problem = read_conditional("base", text).unread();
    return problem ? std::to_string(problem->at) + ": " + std::string(problem->wanted) : "none";
  };
  CHECK(unread("20 mph @ (Mo-Fr 08:00-09:00); 10 mph @ wet") == "none");
  CHECK(unread("@") == "0: a value before @");
  CHECK(unread("@ (Mo)") == "0: a value before @");
  CHECK(unread("20 @ (Mo); @ (Tu)") == "11: a value before @");
  CHECK(unread("20 @") == "4: a condition after @");
  CHECK(unread("20 @ ()") == "4: a condition after @");
  CHECK(unread("20") == "2: @ and a condition");
  CHECK(unread("") == "0: @ and a condition");
  CHECK(unread("no; yes @ (Su)") == "2: @ and a condition");
  CHECK(unread("20 @ (Mo 08:00-09:00); 10 @ (Tu 08:00-)") == "38: a time");
  CHECK(unread("20 @ (Mo 08:00-09:00 AND whenever)") ==
        "25: hours, a user, a property or a state of the road");
}

TEST_CASE("what can't be read of a conditional may still hold", "[hours]") {
  CHECK(value("no @ (Mo 08:00-)", on(11, 25, 8, 0)) == "base|no");
  CHECK(value("no @ (" + std::string(20'000, '(') + ")", on(11, 25, 8, 0)) == "base|no");
}

TEST_CASE("brackets and clauses by the ten thousand are read in no time", "[hours]") {
  const std::string brackets = "no @ " + std::string(50'000, '(');
  CHECK(split_conditional(brackets).size() == 1);
  const std::string closed = brackets + "Mo" + std::string(50'000, ')');
  CHECK(split_conditional(closed) == Clauses{{"no", "Mo"}});
  std::string clauses;
  while (clauses.size() < 300'000) clauses += "no @ Mo; ";
  CHECK(read_conditional("base", clauses).rows().size() == 62);
}

TEST_CASE("a value that no clock changes says that it never changes", "[hours]") {
  CHECK(read_conditional("30", "20 @ flashing").never_changes());
  CHECK(read_conditional("30", "20 @ (24/7)").never_changes());
  CHECK(read_conditional("30", "").never_changes());
  CHECK_FALSE(read_conditional("30", "20 @ (flashing AND Mo)").never_changes());
  CHECK_FALSE(read_conditional("30", "20 @ (2020 Jan 01)").never_changes());
}

}  // namespace loopwright::hours
