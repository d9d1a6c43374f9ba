// Tags with conditions that never change anything for a learner's car are kept for lists, and for
// nothing else.
#include <catch2/catch.hpp>
#include <string>

#include "support/built_town.hpp"

namespace loopwright::test {
namespace {

using road::Idle;

std::string told(const BuiltTown& town) {
  const road::Roads roads = town.roads();
  std::string all;
  for (const road::IdleRule& rule : roads.idle_rules) {
    constexpr std::string_view why[] = {"others", "same", "unread"};
    constexpr std::string_view types[] = {"node", "way", "relation"};
    all.append(all.empty() ? "" : " | ")
        .append(types[static_cast<std::size_t>(rule.source.type)])
        .append(" ")
        .append(roads.text(rule.tag))
        .append(": ")
        .append(why[static_cast<std::size_t>(rule.why)]);
  }
  return all;
}

std::string of_street(const std::string& tags) {
  return told(built_town("A       B\nw1 AB highway=residential " + tags + "\n"));
}

TEST_CASE("a street without conditions has nothing to list", "[mark][hours]") {
  CHECK(of_street("") == "");
  CHECK(of_street("hgv=no maxspeed=\"20 mph\"") == "");
}

TEST_CASE("conditions for bicycles, lorries and weights are kept as others'", "[mark][hours]") {
  CHECK(of_street("bicycle:conditional=\"no @ (11:00-17:00)\"") ==
        "way bicycle:conditional=no @ (11:00-17:00): others");
  CHECK(of_street("hgv:conditional=\"no @ (Mo-Fr)\"") ==
        "way hgv:conditional=no @ (Mo-Fr): others");
  CHECK(of_street("maxspeed:hgv:conditional=\"20 mph @ (wet)\"") ==
        "way maxspeed:hgv:conditional=20 mph @ (wet): others");
  CHECK(of_street("maxweight:conditional=\"0 @ destination\"") ==
        "way maxweight:conditional=0 @ destination: others");
  CHECK(of_street("maxweight:conditional=\"7.5 @ (22:00-06:00)\"") ==
        "way maxweight:conditional=7.5 @ (22:00-06:00): others");
  CHECK(of_street("access:conditional=\"no @ (bicycle)\"") ==
        "way access:conditional=no @ (bicycle): others");
  CHECK(of_street("motor_vehicle:conditional=\"no @ (weight>7.5 AND Mo-Fr 08:00-18:00)\"") ==
        "way motor_vehicle:conditional=no @ (weight>7.5 AND Mo-Fr 08:00-18:00): others");
}

TEST_CASE("hours at which only deliveries may come are the same to a learner's car",
          "[mark][hours]") {
  CHECK(of_street("motor_vehicle=no motor_vehicle:conditional=\"delivery @ (06:00-10:00)\"") ==
        "way motor_vehicle:conditional=delivery @ (06:00-10:00): same");
  CHECK(of_street("access=private maxspeed:conditional=\"20 mph @ (Mo-Fr)\"") ==
        "way maxspeed:conditional=20 mph @ (Mo-Fr): same");
  CHECK(of_street("access:conditional=\"yes @ (Sa)\"") ==
        "way access:conditional=yes @ (Sa): same");
}

TEST_CASE("what has a rule by the hour isn't kept twice", "[mark][hours]") {
  CHECK(of_street("motor_vehicle:conditional=\"no @ (Mo-Fr 08:00-09:00)\"") == "");
  CHECK(of_street("maxspeed:conditional=\"20 mph @ (Mo-Fr 08:00-09:00)\"") == "");
  CHECK(of_street("oneway:motorcar:conditional=\"yes @ (Mo-Fr 08:00-09:00)\"") == "");
  CHECK(of_street("lanes=3 bus:lanes:forward=\"designated|yes\" "
                  "motor_vehicle:lanes:forward:conditional=\"no|yes @ (Mo-Fr 07:00-10:00)\"") ==
        "");
}

TEST_CASE("a condition that no rule reads is told as unread, not as others'", "[mark][hours]") {
  CHECK(of_street("turn:lanes:forward:conditional=\"left|through @ (Mo-Fr)\"") ==
        "way turn:lanes:forward:conditional=left|through @ (Mo-Fr): unread");
  CHECK(of_street("maxweight:conditional=\"1 @ (22:00-06:00)\"") ==
        "way maxweight:conditional=1 @ (22:00-06:00): unread");
  CHECK(of_street("overtaking:conditional=yes") == "way overtaking:conditional=yes: unread");
}

TEST_CASE("each piece of a road has its row, in the direction the key names", "[mark][hours]") {
  const BuiltTown town = built_town(R"town(
    A   B   C
        |
        D
  w1 ABC highway=residential bus:backward:conditional="no @ (Su)"
  w2 BD  highway=residential
  )town");
  const auto rows = town.roads().idle_rules;
  REQUIRE(rows.size() == 2);
  CHECK(rows[0].stretch == town.stretch("BA"));
  CHECK(rows[1].stretch == town.stretch("CB"));
}

TEST_CASE("a point's and a turn restriction's conditions are kept with their own object",
          "[mark][hours]") {
  CHECK(told(built_town(R"town(
    A   B   C
  w1 ABC highway=residential
  nB barrier=bollard motor_vehicle:conditional="delivery @ (06:00-10:00)"
  )town"))
            .starts_with("node motor_vehicle:conditional=delivery @ (06:00-10:00): same"));
  CHECK(told(built_town(R"town(
    N
W . X . E
w1 WX highway=primary
w2 XE highway=primary
w3 XN highway=residential
r1 - from=w1 via=X to=w3 restriction:hgv:conditional="no_left_turn @ (Mo-Fr)"
)town")) == "relation restriction:hgv:conditional=no_left_turn @ (Mo-Fr): others");
}

TEST_CASE("a turn restriction that excepts cars is for others, whatever its hours",
          "[mark][hours]") {
  const auto of_restriction = [](const std::string& tags) {
    return told(
        built_town("    N\nW . X . E\nw1 WX highway=primary\nw2 XE highway=primary\n"
                   "w3 XN highway=residential\nr1 - from=w1 via=X to=w3 " +
                   tags + "\n"));
  };
  const std::string timed = "restriction:conditional=\"no_left_turn @ (Mo-Fr 07:00-10:00)\"";
  CHECK(of_restriction(timed + " except=\"bus;motorcar\"") ==
        "relation restriction:conditional=no_left_turn @ (Mo-Fr 07:00-10:00): others");
}

TEST_CASE("hours of a kerb that is banned are no idle condition", "[mark][hours][kerb]") {
  CHECK(of_street(
            "width=4 parking:left:restriction:conditional=\"no_parking @ (Mo-Fr 08:00-09:00)\"") ==
        "");
}

TEST_CASE("idle conditions of every street are kept", "[mark][hours]") {
  CHECK(told(built_town("A   B   C   D\n"
                        "w1 AB highway=residential\n"
                        "w2 BC highway=residential hgv:conditional=\"no @ (Mo-Fr)\"\n"
                        "w3 CD highway=residential bicycle:conditional=\"no @ (Sa)\"\n")) ==
        "way hgv:conditional=no @ (Mo-Fr): others | way bicycle:conditional=no @ (Sa): others");
}

}  // namespace
}  // namespace loopwright::test
