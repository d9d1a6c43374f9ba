// Turn restrictions, kind by kind. Meanings: OSM wiki, Relation:restriction.
#include <catch2/catch.hpp>

#include "support/built_town.hpp"

namespace loopwright::read {
namespace {

using test::built_town;
using test::BuiltTown;

/// A crossing whose roads end in dead ends, with one restriction line added.
BuiltTown crossing_with(const std::string& restriction) {
  return built_town(R"(
    N
    .
W . X . E
    .
    S
w1 WX highway=primary
w2 XE highway=primary
w3 XN highway=residential
w4 XS highway=residential
)" + restriction + "\n");
}

/// Two carriageways joined by a link with a crossing in its middle; G lies beyond the link.
BuiltTown dual_with(const std::string& restriction) {
  return built_town(R"(
A   B   C
    h
D   E   F
    G
w1 CB highway=primary oneway=yes
w2 BA highway=primary oneway=yes
w3 DE highway=primary oneway=yes
w4 EF highway=primary oneway=yes
w5 Bh highway=primary_link
w6 hE highway=primary_link
w7 AD highway=residential
w8 CF highway=residential
w9 EG highway=residential
nh highway=crossing crossing=traffic_signals
)" + restriction + "\n");
}

void check_unusable(const std::string& restriction, const std::string& why) {
  INFO(restriction);
  const BuiltTown town = crossing_with(restriction);
  CHECK(town.roads().turn_rules.empty());
  CHECK(town.report.counted("turn restrictions that can't be used") == 1);
  REQUIRE(town.report.oddities().size() == 1);
  CHECK(town.report.oddities()[0].object == OsmObject{1, ObjectType::relation});
  CHECK(town.report.oddities()[0].what == "turn restriction can't be used");
  CHECK(town.report.oddities()[0].detail == why);
}

}  // namespace

TEST_CASE("no turn to the left means this turn and no other", "[read]") {
  const BuiltTown town = crossing_with("r1 no_left_turn from=w1 via=X to=w3");
  CHECK_FALSE(town.drives("WXN"));
  CHECK(town.drives("WXE"));
  CHECK(town.drives("EXN"));
  CHECK(town.drives("NXW"));
  REQUIRE(town.roads().turn_rules.size() == 1);
  const road::TurnRule& rule = town.roads().turn_rules[0];
  CHECK(rule.relation == 1);
  CHECK(town.roads().text(rule.text) == "restriction=no_left_turn");
  CHECK(town.roads().text(rule.condition).empty());
  CHECK(rule.only == 0);
  CHECK(town.report.counted("turn restrictions") == 1);
  CHECK(town.report.counted("turn restrictions used") == 1);
}

TEST_CASE("what begins with no_ bans by its members, whatever it is called", "[read]") {
  for (const char* kind : {"no_right_turn", "no_straight_on", "no_u_turn", "no_turn"}) {
    INFO(kind);
    const BuiltTown town = crossing_with("r1 " + std::string(kind) + " from=w1 via=X to=w2");
    CHECK_FALSE(town.drives("WXE"));
    CHECK(town.drives("WXS"));
  }
}

TEST_CASE("only straight on means no other way", "[read]") {
  const BuiltTown town = crossing_with("r1 only_straight_on from=w1 via=X to=w2");
  CHECK(town.drives("WXE"));
  CHECK_FALSE(town.drives("WXN"));
  CHECK_FALSE(town.drives("WXS"));
  CHECK(town.drives("EXN"));
  CHECK(town.roads().turn_rules[0].only == 1);
}

TEST_CASE("no entry shuts a road from several others", "[read]") {
  const BuiltTown town = crossing_with("r1 no_entry from=w1,w2 via=X to=w3");
  CHECK_FALSE(town.drives("WXN"));
  CHECK_FALSE(town.drives("EXN"));
  CHECK(town.drives("SXN"));
}

TEST_CASE("no exit shuts several roads from one", "[read]") {
  const BuiltTown town = crossing_with("r1 no_exit from=w1 via=X to=w3,w4");
  CHECK_FALSE(town.drives("WXN"));
  CHECK_FALSE(town.drives("WXS"));
  CHECK(town.drives("WXE"));
}

TEST_CASE("a ban on turning round at a dead end leaves no way out of it", "[read]") {
  const BuiltTown town = crossing_with("r1 no_u_turn from=w3 via=N to=w3");
  CHECK_FALSE(town.roads().drivable(town.stretch("XN")));
  CHECK(town.drives("XSX"));
}

TEST_CASE("an order to turn round is kept", "[read]") {
  const BuiltTown town = crossing_with("r1 only_u_turn from=w3 via=N to=w3");
  CHECK(town.drives("XNX"));
  CHECK(town.roads().turn_rules.size() == 1);
}

TEST_CASE("on a way that goes on through the junction the one-way part is meant", "[read]") {
  const BuiltTown town = built_town(R"(
A   B   C
F   E   D
w1 ABC highway=primary oneway=yes
w2 BE  highway=residential
w3 CD  highway=residential
w4 DEF highway=residential
w5 FA  highway=residential
r1 no_right_turn from=w1 via=B to=w2
)");
  CHECK_FALSE(town.drives("ABE"));
  CHECK(town.drives("ABC"));
  CHECK(town.report.counted("turn restrictions used") == 1);
}

TEST_CASE("a ban over a link binds only those who came by its from road", "[read]") {
  const BuiltTown town = dual_with("r1 no_u_turn from=w1 via=w5,w6 to=w4");
  CHECK_FALSE(town.drives("CBhEF"));
  CHECK(town.drives("CBhEG"));
  CHECK(town.drives("hEF"));
  CHECK(town.drives("CBA"));
  CHECK(town.report.counted("states with memory") == 2);
}

TEST_CASE("via ways in the wrong order are put right", "[read]") {
  const BuiltTown town = dual_with("r1 no_u_turn from=w1 via=w6,w5 to=w4");
  CHECK_FALSE(town.drives("CBhEF"));
  CHECK(town.drives("CBhEG"));
}

TEST_CASE("closed via ways named again and again don't keep the build from ending", "[read]") {
  const std::string town = R"(
    A  B  C  D
    .  .  .  .
    E  F  G  H
    .  .  .  .
    I  J  K  L
  w1 AB highway=residential
  w2 BCGKJFB highway=residential
  w3 CD highway=residential
  w4 EFG highway=residential
  w5 GH highway=residential
  w6 IJ highway=residential
  w7 KL highway=residential
  w8 AEI highway=residential
  w9 DHL highway=residential
  )";
  // Once round is a restriction as any other.
  const BuiltTown once = built_town(town + "r1 no_left_turn from=w1 via=w2 to=w3");
  CHECK(once.report.counted("turn restrictions used") == 1);
  std::string often = "r1 no_left_turn from=w1 via=w2";
  for (int k = 0; k < 40; ++k) often += ",w2";
  const BuiltTown again = built_town(town + often + " to=w3");
  CHECK(again.report.counted("turn restrictions that can't be used") == 1);
  REQUIRE(again.report.oddities().size() == 1);
  CHECK(again.report.oddities()[0].detail == "its ways join in too many ways");
}

TEST_CASE("an order over a link holds to its end for those who came that way", "[read]") {
  const BuiltTown town = dual_with("r1 only_straight_on from=w1 via=w5,w6 to=w9");
  CHECK(town.drives("CBhEG"));
  CHECK_FALSE(town.drives("CBhEF"));
  CHECK(town.drives("CBA"));  // the link itself is nobody's order
  CHECK(town.drives("hEF"));
}

TEST_CASE("a restriction for other vehicles doesn't bind a learner's car", "[read]") {
  for (const char* line : {"r1 no_left_turn from=w1 via=X to=w3 except=motorcar",
                           "r1 no_left_turn from=w1 via=X to=w3 except=bus;motor_vehicle",
                           "r1 - from=w1 via=X to=w3 restriction:hgv=no_left_turn",
                           "r1 - from=w1 via=X to=w3 restriction:bus=no_left_turn",
                           "r1 no_left_turn from=w1 via=X to=w3 restriction:motorcar=none",
                           "r1 - from=w1 via=X to=w3 "
                           "restriction:conditional=\"no_left_turn @ (weight>7.5)\""}) {
    INFO(line);
    const BuiltTown town = crossing_with(line);
    CHECK(town.drives("WXN"));
    CHECK(town.report.counted("turn restrictions for other vehicles") == 1);
    CHECK(town.report.oddities().empty());
  }
}

TEST_CASE("a restriction for cars binds, and one that excepts buses too", "[read]") {
  for (const char* line : {"r1 no_left_turn from=w1 via=X to=w3 except=psv;bicycle",
                           "r1 - from=w1 via=X to=w3 restriction:motorcar=no_left_turn",
                           "r1 - from=w1 via=X to=w3 restriction:motor_vehicle=no_left_turn",
                           "r1 none from=w1 via=X to=w3 restriction:vehicle=no_left_turn"}) {
    INFO(line);
    CHECK_FALSE(crossing_with(line).drives("WXN"));
  }
}

/// The turns that some rule forbids, as "restriction=…: condition", in the order of the area.
std::vector<std::string> rules_with(const std::string& restriction) {
  const BuiltTown town = crossing_with(restriction);
  std::vector<std::string> all;
  for (const road::TurnRule& rule : town.roads().turn_rules) {
    const std::string_view when = town.roads().text(rule.condition);
    const std::string_view tag = town.roads().text(rule.text);
    all.push_back(std::string(tag.substr(0, tag.find(' '))) + ": " +
                  (when.empty() ? "always" : std::string(when)));
  }
  return all;
}

using Rules = std::vector<std::string>;

TEST_CASE("a turn banned at some hours is in the graph, and its hours are kept", "[read]") {
  const BuiltTown town = crossing_with(
      "r1 - from=w1 via=X to=w3 "
      "restriction:conditional=\"no_left_turn @ (Mo-Fr 07:00-10:00)\"");
  CHECK(town.drives("WXN"));
  const road::Roads roads = town.roads();
  REQUIRE(roads.turn_rules.size() == 1);
  CHECK(roads.text(roads.turn_rules[0].condition) == "Mo-Fr 07:00-10:00");
  CHECK(roads.text(roads.turn_rules[0].text) ==
        "restriction:conditional=no_left_turn @ (Mo-Fr 07:00-10:00)");
  CHECK(town.report.counted("turn restrictions by the hour") == 1);
}

TEST_CASE("an order by the hour leaves the other turns in the graph", "[read]") {
  const BuiltTown town = crossing_with(
      "r1 - from=w1 via=X to=w2 restriction:conditional=\"only_straight_on @ (Mo-Fr)\"");
  CHECK(town.drives("WXN"));
  CHECK(town.drives("WXE"));
  CHECK(town.roads().turn_rules[0].only == 1);
}

TEST_CASE("a ban over a link by the hour needs no memory", "[read]") {
  const BuiltTown town =
      dual_with("r1 - from=w1 via=w5,w6 to=w4 restriction:conditional=\"no_u_turn @ (Mo-Fr)\"");
  CHECK(town.drives("CBhEF"));
  CHECK(town.report.counted("states with memory") == 0);
  CHECK(town.roads().turn_rules.size() == 1);
}

// OSM wiki, Conditional restrictions: a true condition beats the plain tag, the last of several wins.
TEST_CASE("a ban lifted by the hour holds at all others", "[read]") {
  CHECK(rules_with("r1 no_left_turn from=w1 via=X to=w3 restriction:conditional=\"none @ (Su)\"") ==
        Rules{"restriction=no_left_turn;: yes @ (24/7); no @ (Su)"});
  CHECK(rules_with("r1 - from=w1 via=X to=w3 "
                   "restriction:conditional=\"no_left_turn @ (Mo-Su 07:00-19:00); none @ (PH)\"") ==
        Rules{"restriction:conditional=no_left_turn: yes @ (Mo-Su 07:00-19:00); no @ (PH)"});
  // The same ban plainly and by the hour: it holds at all hours.
  CHECK(rules_with("r1 no_left_turn from=w1 via=X to=w3 "
                   "restriction:conditional=\"no_left_turn @ (Su)\"") ==
        Rules{"restriction=no_left_turn: always"});
}

TEST_CASE("a general condition frees nothing that a special key forbids", "[read]") {
  CHECK(rules_with("r1 - from=w1 via=X to=w3 restriction:motor_vehicle=no_left_turn "
                   "restriction:conditional=\"none @ (Su)\"") ==
        Rules{"restriction:motor_vehicle=no_left_turn: always"});
}

TEST_CASE("a clause with another demand replaces the plain one while it holds", "[read]") {
  CHECK(rules_with("r1 no_left_turn from=w1 via=X to=w3 "
                   "restriction:conditional=\"only_left_turn @ (Su)\"") ==
        Rules{"restriction=no_left_turn;: yes @ (24/7); no @ (Su)",
              "restriction:conditional=only_left_turn: Su"});
}

TEST_CASE("the old way of writing hours is a condition too", "[read]") {
  const std::string ban = "r1 no_left_turn from=w1 via=X to=w3 ";
  const BuiltTown town =
      crossing_with(ban + "day_on=Monday day_off=Friday hour_on=07:00 hour_off=09:00");
  CHECK(town.drives("WXN"));
  CHECK(town.roads().text(town.roads().turn_rules[0].condition) == "Mo-Fr 07:00-09:00");
  const auto hours = [&](const std::string& tags) {
    return rules_with(ban + tags).front().substr(26);
  };
  CHECK(hours("day_on=sat day_off=Sat") == "Sa");
  CHECK(hours("hour_on=7:00 hour_off=9:30") == "07:00-09:30");
  CHECK(hours("hour_on=seven hour_off=nine") == "hour_on=seven hour_off=nine");
  CHECK(hours("day_on=Monday") == "day_on=Monday");
}

TEST_CASE("a conditional ban without a condition may bind at any time", "[read]") {
  CHECK(rules_with("r1 - from=w1 via=X to=w3 restriction:conditional=no_left_turn") ==
        Rules{"restriction:conditional=no_left_turn: ?"});
}

TEST_CASE("a restriction that can't be used is left out and told by its id", "[read]") {
  check_unusable("r1 no_left_turn via=X to=w3", "a from or to way is missing");
  check_unusable("r1 no_left_turn from=w1 via=X", "a from or to way is missing");
  check_unusable("r1 no_left_turn from=w1 to=w3", "it has no via");
  check_unusable("r1 no_left_turn from=w1 via=X,w2 to=w3", "via is both node and way");
  check_unusable("r1 no_left_turn from=w1 via=X,N to=w3", "it has several via nodes");
  check_unusable("r1 no_left_turn from=w1,w2 via=X to=w3", "it has several from ways");
  check_unusable("r1 only_left_turn from=w1 via=X to=w3,w4", "it has several to ways");
  check_unusable("r1 no_left_turn from=w1 via=X to=w77", "a way isn't a road of this extract");
  check_unusable("r1 no_left_turn from=w1 via=N to=w3", "its via node isn't on both ways");
  check_unusable("r1 no_left_turn from=w1 via=X to=w1", "from and to are the same way");
  check_unusable("r1 no_left_turn from=w1 via=w3 to=w2", "its ways don't join");
  check_unusable("r1 give_way from=w1 via=X to=w3", "its kind isn't known");
}

TEST_CASE("two orders that contradict each other leave no way on, and are told", "[read]") {
  const BuiltTown town = crossing_with(
      "r1 only_straight_on from=w1 via=X to=w2\n"
      "r2 only_left_turn from=w1 via=X to=w3");
  CHECK_FALSE(town.roads().drivable(town.stretch("WX")));
  REQUIRE(town.report.oddities().size() == 2);  // these orders, and w1 which they shut
  CHECK(town.report.oddities()[1].what == "road can't be driven into and out of");
  CHECK(town.report.oddities()[0].object == OsmObject{2, ObjectType::relation});
  CHECK(town.report.oddities()[0].what == "turn restrictions contradict each other");
  CHECK(town.report.oddities()[0].detail == "relation 1 orders another way on; none is driven");
}

TEST_CASE("a road that isn't split at the via node leaves its restriction unclear", "[read]") {
  const BuiltTown town = built_town(R"(
    N
    .
W . X . E
w1 WXE highway=primary
w3 XN  highway=residential
r1 no_left_turn from=w1 via=X to=w3
)");
  CHECK(town.drives("WXN"));
  REQUIRE(town.report.oddities().size() == 1);
  CHECK(town.report.oddities()[0].detail == "a way isn't split at its via node");
}

TEST_CASE("what is forbidden into a closed way is so at both its ends", "[read]") {
  const auto loop_with = [](const std::string& restriction) {
    return built_town(R"(
. . N .
. . A B
W . X .
. . D C
. . S .
w1 WX highway=primary
w2 XABCDX highway=residential
w3 AN highway=residential
w4 DS highway=residential
)" + restriction);
  };
  const BuiltTown forbidden = loop_with("r1 no_entry from=w1 via=X to=w2");
  CHECK_FALSE(forbidden.drives("WXA"));
  CHECK_FALSE(forbidden.drives("WXD"));
  const BuiltTown left = loop_with("r1 no_entry from=w2 via=X to=w1");
  CHECK_FALSE(left.drives("AXW"));
  CHECK_FALSE(left.drives("DXW"));
  const BuiltTown ordered = loop_with("r1 only_left_turn from=w1 via=X to=w2");
  CHECK(ordered.drives("WXA"));
  CHECK(ordered.drives("WXD"));
  REQUIRE(ordered.report.oddities().size() == 1);
  CHECK(ordered.report.oddities()[0].detail == "a way isn't split at its via node");
}

}  // namespace loopwright::read
