// Streets, gates and turns whose hours were kept, asked at a time as the search and the proof ask
// them. Traps 8, 9, 14 and 15 of reading hours from the map, and the rule that the last clause that
// holds wins (OSM wiki, Conditional restrictions; Key:opening_hours/specification).
#include <catch2/catch.hpp>
#include <string>

#include "loopwright/hours/condition.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/road/setting_of.hpp"
#include "support/built_town.hpp"

namespace loopwright::test {
namespace {

BuiltTown street(const std::string& tags, std::string_view region = "GB-ENG") {
  return built_town("A       B\nw1 AB highway=residential " + tags + "\n", region);
}

BuiltTown shut(const std::string& hours, std::string_view region = "GB-ENG") {
  return street("motor_vehicle:conditional=\"" + hours + "\"", region);
}

/// Whether a learner may drive it then: "yes", "no" or "nobody knows".
std::string may_drive(const BuiltTown& town, const CivilTime& at,
                      const hours::SchoolTerms& terms = {}, const char* ends = "AB") {
  const road::Roads roads = town.roads();
  const hours::Setting setting = road::setting_of(roads.info(), std::nullopt, terms);
  std::string may = roads.drivable(town.stretch(ends)) ? "yes" : "no";
  for (const road::TimedRule& rule : roads.timed_rules_of(town.stretch(ends))) {
    if (rule.about == road::Timed::limit) continue;
    const auto hours = hours::read_conditional(roads.text(rule.base), roads.text(rule.text));
    const hours::Possible then = hours.at(at, setting);
    bool yes = false, no = false;
    for (std::size_t bit = 0; bit <= hours.rows().size(); ++bit)
      if (then.has(bit)) (hours.value(bit) == "yes" ? yes : no) = true;
    if (yes && no) return "nobody knows";
    if (no) may = "no";
  }
  return may;
}

constexpr CivilTime monday(int hour, int minute = 0) {
  return {{2026, 11, 30}, hour, minute, 0};  // St Andrew's Day
}
constexpr CivilTime wednesday(int hour, int minute = 0) {
  return {{2026, 11, 25}, hour, minute, 0};
}

}  // namespace

TEST_CASE("a School Street is shut at its hours and open at others", "[mark][hours]") {
  const BuiltTown town = shut("no @ (Mo-Fr 08:00-09:00,15:00-16:00)");
  CHECK(may_drive(town, wednesday(7, 59)) == "yes");
  CHECK(may_drive(town, wednesday(8)) == "no");
  CHECK(may_drive(town, wednesday(9)) == "yes");
  CHECK(may_drive(town, {{2026, 11, 28}, 8, 30, 0}) == "yes");  // a Saturday
}

TEST_CASE("trap 8: of a street's hours, what a rule after ';' replaces is in doubt, one after ',' adds",
          "[mark][hours][traps]") {
  const BuiltTown replaced = shut("no @ (Mo-Fr 08:00-09:00; Mo-Fr 15:00-16:00)");
  CHECK(may_drive(replaced, wednesday(8, 30)) == "nobody knows");
  CHECK(may_drive(replaced, wednesday(11)) == "yes");
  CHECK(may_drive(replaced, wednesday(15, 30)) == "no");
  const BuiltTown added = shut("no @ (Mo-Fr 08:00-09:00, Mo-Fr 15:00-16:00)");
  CHECK(may_drive(added, wednesday(8, 30)) == "no");
  CHECK(may_drive(added, wednesday(15, 30)) == "no");
}

TEST_CASE("trap 9: 'PH off' without brackets opens a street on the nation's own holiday",
          "[mark][hours][traps]") {
  const std::string text = "no @ Mo-Fr 08:00-09:00; PH off";
  CHECK(may_drive(shut(text, "GB-SCT"), monday(8, 30)) == "yes");
  CHECK(may_drive(shut(text, "GB-ENG"), monday(8, 30)) == "no");
}

TEST_CASE("a plate with weekdays is in force on a bank holiday that says nothing else",
          "[mark][hours]") {
  const BuiltTown town = shut("no @ (Mo-Fr 08:00-09:00)");
  CHECK(may_drive(town, {{2026, 12, 25}, 8, 30, 0}) == "no");  // a Friday
}

TEST_CASE("trap 14: whether a School Street is shut hangs on the council's term dates",
          "[mark][hours][traps]") {
  const BuiltTown town = shut("no @ (Mo-Fr 08:00-09:00; SH off)");
  CHECK(may_drive(town, wednesday(8, 30)) == "nobody knows");
  CHECK(may_drive(town, wednesday(12)) == "yes");
  const hours::SchoolTerms terms({{{2026, 9, 2}, {2026, 10, 23}}, {{2026, 11, 2}, {2026, 12, 18}}});
  CHECK(may_drive(town, wednesday(8, 30), terms) == "no");
  CHECK(may_drive(town, {{2026, 10, 28}, 8, 30, 0}, terms) == "yes");
}

TEST_CASE("trap 15: nobody knows beforehand whether lights flash or a road is wet",
          "[mark][hours][traps]") {
  CHECK(may_drive(shut("no @ (flashing)"), wednesday(8, 30)) == "nobody knows");
  CHECK(may_drive(shut("no @ (Mo-Fr 08:00-09:00 AND wet)"), wednesday(8, 30)) == "nobody knows");
  CHECK(may_drive(shut("no @ (Mo-Fr 08:00-09:00 AND wet)"), wednesday(12)) == "yes");
}

TEST_CASE("of several clauses that hold the last wins, the special key's last of all",
          "[mark][hours]") {
  const BuiltTown town = shut("no @ (Mo-Sa 07:00-16:00); yes @ (Mo-Sa 13:00-14:00)");
  CHECK(may_drive(town, wednesday(12, 30)) == "no");
  CHECK(may_drive(town, wednesday(13, 30)) == "yes");
  const BuiltTown keys = street(
      "access:conditional=\"no @ (07:00-16:00)\" motorcar:conditional=\"yes @ (13:00-14:00)\"");
  CHECK(may_drive(keys, wednesday(12, 30)) == "no");
  CHECK(may_drive(keys, wednesday(13, 30)) == "yes");
}

TEST_CASE("what can't be read is never open for certain", "[mark][hours]") {
  CHECK(may_drive(shut("no @ (school days)"), wednesday(3)) == "nobody knows");
  CHECK(may_drive(shut("Mo-Fr 08:00-09:00"), wednesday(3)) == "nobody knows");
  CHECK(may_drive(shut("no @ (Mo-Fr 08:00-09:00"), wednesday(3)) == "nobody knows");
}

TEST_CASE("a bus gate is a wall in force and a street outside its hours", "[mark][hours]") {
  const BuiltTown town =
      street("motor_vehicle=no bus=designated motor_vehicle:conditional=\"yes @ (19:00-07:00)\"");
  CHECK(may_drive(town, wednesday(12)) == "no");
  CHECK(may_drive(town, wednesday(19)) == "yes");
  CHECK(may_drive(town, wednesday(6, 59)) == "yes");
  CHECK(may_drive(town, wednesday(7)) == "no");
}

TEST_CASE("a street that is one-way by the hour may be driven against it at others",
          "[mark][hours]") {
  const BuiltTown town = street("oneway:conditional=\"yes @ (Mo-Fr 07:00-10:00)\"");
  CHECK(may_drive(town, wednesday(8), {}, "BA") == "no");
  CHECK(may_drive(town, wednesday(12), {}, "BA") == "yes");
  CHECK(may_drive(town, wednesday(8), {}, "AB") == "yes");
}

TEST_CASE("a turn banned but on Sundays is free on Sundays", "[mark][hours]") {
  const BuiltTown town = built_town(R"town(
    N
W . X . E
w1 WX highway=primary
w2 XE highway=primary
w3 XN highway=residential
r1 no_left_turn from=w1 via=X to=w3 restriction:conditional="none @ (Su)"
)town");
  const road::Roads roads = town.roads();
  REQUIRE(roads.turn_rules.size() == 1);
  const hours::Timetable banned(roads.text(roads.turn_rules[0].condition));
  const hours::Setting setting = road::setting_of(roads.info(), std::nullopt);
  const Instant sunday{1795953600, 0};  // 29 November 2026, 12:00 UTC
  CHECK(banned.at(sunday, setting).in_force == hours::Tri::no);
  CHECK(banned.at(sunday.plus_seconds(86400), setting).in_force == hours::Tri::yes);
}

TEST_CASE("a limit at hours that is none leaves the signs to be read", "[mark]") {
  const auto limits = [](const std::string& value) {
    const BuiltTown town =
        street("maxspeed=\"30 mph\" maxspeed:conditional=\"" + value + " @ (Mo-Fr 08:00-09:00)\"");
    const road::Roads roads = town.roads();
    std::string texts;
    for (const road::TimedRule& rule : roads.timed_rules_of(town.stretch("AB")))
      texts += roads.text(rule.text);
    return texts;
  };
  CHECK(limits("20 mph") == "20 mph @ (Mo-Fr 08:00-09:00)");
  for (const char* none : {"99999999999 mph", "-5 mph", "twenty", "signals"})
    CHECK(limits(none) == "as the signs say @ (Mo-Fr 08:00-09:00)");
}

}  // namespace loopwright::test
