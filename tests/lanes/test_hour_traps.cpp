// The traps of reading hours, 8 to 15 of the list in tests/mark/test_traps.cpp. What nobody
// can tell beforehand (school terms not given, flashing lights) must never become a firm answer.
// Sources: OSM wiki Key:opening_hours/specification and Conditional restrictions.
#include <catch2/catch.hpp>
#include <string>

#include "loopwright/hours/condition.hpp"
#include "loopwright/lanes/lanes.hpp"

namespace loopwright::test {
namespace {

using hours::read_hours;
using hours::Tri;

const hours::Setting england("GB-ENG", "Europe/London", {});
const hours::Setting scotland("GB-SCT", "Europe/London", {});

/// Wednesday 25 November 2026 and the days after it.
CivilTime at(int day, int hour, int minute = 0) {
  return {{2026, 11, day}, hour, minute, 0};
}

/// The verdict on a bus lane with these hours, passed in one minute of a day in November 2026.
std::string verdict(std::string_view hours, const CivilTime& when,
                    const hours::Setting& in = england) {
  const std::int64_t from = civil_seconds(when);
  return std::string(wish::name(lanes::judge(hours, {{from, 0}, {from + 59, 0}}, in).verdict));
}

}  // namespace

TEST_CASE("trap 8: after ';' the later rule replaces its days, after ',' it adds to them",
          "[lanes][traps]") {
  const auto replaced = read_hours("Mo-Fr 07:00-10:00; Mo-Fr 16:00-19:00");
  CHECK(replaced.at(at(25, 8), england).in_force == Tri::no);
  CHECK(replaced.at(at(25, 17), england).in_force == Tri::yes);
  const auto added = read_hours("Mo-Fr 07:00-10:00, Mo-Fr 16:00-19:00");
  CHECK(added.at(at(25, 8), england).in_force == Tri::yes);
  CHECK(added.at(at(25, 17), england).in_force == Tri::yes);
}

TEST_CASE("trap 9: '; PH off' without brackets stays with its clause", "[lanes][traps]") {
  const auto clauses = hours::split_conditional("1 @ Mo-Fr 07:00-10:00; PH off");
  REQUIRE(clauses.size() == 1);
  CHECK(clauses[0].value == "1");
  CHECK(clauses[0].condition == "Mo-Fr 07:00-10:00; PH off");
  CHECK(verdict(clauses[0].condition, at(25, 8)) == "in force");
}

TEST_CASE("trap 10: the end minute is out", "[lanes][traps]") {
  const auto read = read_hours("Mo-Fr 07:00-10:00");
  CHECK(read.at(at(25, 6, 59), england).in_force == Tri::no);
  CHECK(read.at(at(25, 7), england).in_force == Tri::yes);
  CHECK(read.at(at(25, 9, 59), england).in_force == Tri::yes);
  CHECK(read.at(at(25, 10), england).in_force == Tri::no);
}

TEST_CASE("trap 11: Friday's hours past midnight reach into Saturday, Sunday's aren't there",
          "[lanes][traps]") {
  const auto read = read_hours("Mo-Fr 22:00-06:00");
  CHECK(read.at(at(28, 5, 30), england).in_force == Tri::yes);  // Saturday
  CHECK(read.at(at(28, 8, 30), england).in_force == Tri::no);
  CHECK(read.at(at(28, 23), england).in_force == Tri::no);
  CHECK(read.at(at(30, 5, 30), england).in_force == Tri::no);  // Monday
}

// 25 October 2026, 01:00 UTC (Directive 2000/84/EC, kept in British law).
TEST_CASE("trap 12: the hour that comes twice is in force twice",
          "[lanes][traps]") {
  const Instant before = {civil_seconds({{2026, 10, 25}, 0, 58, 0}), 3600};
  const Instant after = {civil_seconds({{2026, 10, 25}, 1, 2, 0}), 0};
  CHECK(lanes::judge("Mo-Su 01:00-02:00", {before, after}, england).verdict ==
        wish::Verdict::in_force);
  CHECK(lanes::judge("Mo-Su 01:30-02:00", {before, after}, england).verdict ==
        wish::Verdict::check_the_plate);
}

// St Andrew's Day is a bank holiday in Scotland alone: 30 November 2026, a Monday.
TEST_CASE("trap 13: on St Andrew's Day 'PH off' frees a lane in Scotland, and nowhere else",
          "[lanes][traps]") {
  CHECK(verdict("Mo-Fr 07:00-10:00; PH off", at(30, 8, 30), scotland) == "usable");
  CHECK(verdict("Mo-Fr 07:00-10:00; PH off", at(30, 8, 30)) == "in force");
  const hours::Setting elsewhere("LI", "", {});
  CHECK(verdict("Mo-Fr 07:00-10:00; PH off", at(30, 8, 30), elsewhere) == "check the plate");
  CHECK(verdict("Mo-Fr 07:00-10:00", at(30, 8, 30), scotland) == "in force");
}

TEST_CASE("trap 14: school holidays without term dates are unknown", "[lanes][traps]") {
  const std::string_view hours = "Mo-Fr 08:00-09:00,15:00-16:00; SH off";
  CHECK(read_hours(hours).at(at(25, 8, 30), england).in_force == Tri::unknown);
  CHECK(verdict(hours, at(25, 8, 30)) == "check the plate");
}

TEST_CASE("trap 15: 'flashing' can't be told from a clock: unknown", "[lanes][traps]") {
  const auto clauses = hours::split_conditional("20 mph @ flashing");
  REQUIRE(clauses.size() == 1);
  CHECK(read_hours(clauses[0].condition).at(at(25, 8, 30), england).in_force == Tri::unknown);
  CHECK(verdict(clauses[0].condition, at(25, 8, 30)) == "check the plate");
}

}  // namespace loopwright::test
