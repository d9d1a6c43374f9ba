// May one stop for the whole of a talk? Rules: Highway Code 238, 240, 243; a stay that touches a ban
// for a minute is forbidden.
#include <catch2/catch.hpp>

#include "loopwright/lanes/stopping.hpp"

namespace loopwright::test {
namespace {

namespace flag = road::pull_up_flag;

/// On Saturday 28 November 2026.
Instant at(int hour, int minute) {
  return {civil_seconds({{2026, 11, 28}, hour, minute, 0}), 0};
}

std::string told(std::string_view hours, std::uint16_t flags, const lanes::Stay& stay) {
  road::Tables tables;
  tables.text_bytes.assign(hours.begin(), hours.end());
  tables.text_first = {0, 0, static_cast<std::uint32_t>(hours.size())};
  road::PullUp place;
  place.why = TextId{std::size_t{0}};
  place.hours = TextId{std::size_t{hours.empty() ? 0U : 1U}};
  place.flags = flags;
  const auto judged = lanes::may_stop(road::view_of(tables, {}), place, stay, hours::Setting());
  return std::string(lanes::name(judged.verdict)) + ": " + judged.why;
}

TEST_CASE("a kerb without a mapped ban is usable, and to be checked", "[lanes][stopping]") {
  CHECK(told("", 0, {at(15, 0), at(15, 6)}) ==
        "usable: no ban mapped: check lines, signs and drives");
}

TEST_CASE("a stay outside the hours of a ban is usable", "[lanes][stopping]") {
  CHECK(told("Mo-Sa 07:00-10:00", flag::hours, {at(10, 0), at(10, 6)}) ==
        "usable: no stopping Monday to Saturday, seven till ten; you stop 10:00 to 10:06");
}

TEST_CASE("a stay within the hours, or touching them, is forbidden", "[lanes][stopping]") {
  CHECK(told("Mo-Sa 07:00-10:00", flag::hours, {at(8, 0), at(8, 6)}) ==
        "forbidden: no stopping Monday to Saturday, seven till ten; you stop 08:00 to 08:06");
  CHECK(told("Mo-Sa 07:00-10:00", flag::hours, {at(9, 58), at(10, 4)}).starts_with("forbidden"));
  CHECK(told("Mo-Sa 16:00-19:00", flag::lane, {at(15, 57), at(16, 3)}).starts_with("forbidden"));
}

TEST_CASE("a stay beside hours that can't be read is to be checked on the plate",
          "[lanes][stopping]") {
  CHECK(told("when busy", flag::hours, {at(15, 0), at(15, 6)}) ==
        "check: hours can't be read: when busy");
}

TEST_CASE("bays for some and for money: check the plate, inside and outside hours",
          "[lanes][stopping]") {
  CHECK(told("", flag::residents, {at(15, 0), at(15, 6)}) ==
        "check: bays for some: read the plate");
  CHECK(told("", flag::fee, {at(15, 0), at(15, 6)}) == "check: a ticket or disc is asked for");
  CHECK(told("Mo-Sa 07:00-10:00", flag::hours | flag::fee, {at(15, 0), at(15, 6)}) ==
        "check: a ticket or disc is asked for");
  CHECK(told("Mo-Sa 07:00-10:00", flag::hours | flag::fee, {at(8, 0), at(8, 6)})
            .starts_with("forbidden"));
}

}  // namespace
}  // namespace loopwright::test
