// What each turn makes a driver deal with. The words of the controls are those of src/rules/pace.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

/// A T-junction with a bend-free main road; N is a service road opposite when asked for.
BuiltTown tee(const std::string& through, const std::string& stem, const std::string& more = "",
              std::string_view region = "GB-ENG") {
  return built_town(std::string(R"(
W   j   E
    g
.
.
    S
w1 WjE highway=)") + through +
                        "\nw2 Sgj highway=" + stem + "\n" + more,
                    region);
}

TEST_CASE("where a road only goes on there is nothing to deal with", "[mark][controls]") {
  const BuiltTown town = built_town("W   a   E\nw1 Wa highway=tertiary\nw2 aE highway=tertiary\n");
  CHECK(control(town, "WaE") == "none");
}

TEST_CASE("at a dead end one turns round", "[mark][controls]") {
  const BuiltTown town = built_town("W   E\nw1 WE highway=tertiary\n");
  CHECK(control(town, "WEW") == "turn-round");
}

TEST_CASE("out of a smaller road one gives way, near side and far side", "[mark][controls]") {
  const BuiltTown town = tee("secondary", "residential");
  CHECK(control(town, "SjW") == "give-way-near");
  CHECK(control(town, "SjE") == "give-way-far");
}

TEST_CASE("on the bigger road one keeps priority, but turns off across oncoming traffic",
          "[mark][controls]") {
  const BuiltTown town = tee("secondary", "residential");
  CHECK(control(town, "WjE") == "priority");
  CHECK(control(town, "EjS") == "priority");
  CHECK(control(town, "WjS") == "across");
}

TEST_CASE("where one drives on the right, near and far side are the other way round",
          "[mark][controls]") {
  const BuiltTown town = tee("secondary", "residential", "", "LI");
  CHECK(control(town, "SjW") == "give-way-far");
  CHECK(control(town, "SjE") == "give-way-near");
  CHECK(control(town, "EjS") == "across");
  CHECK(control(town, "WjS") == "priority");
}

TEST_CASE("on a one-way road nothing comes towards one who turns off", "[mark][controls]") {
  const BuiltTown town = built_town(R"(
W   j   E
.
    S   T
w1 WjE highway=secondary oneway=yes
w2 Sj highway=residential
w3 ETSW highway=secondary
)");
  CHECK(control(town, "WjS") == "priority");
}

TEST_CASE("a stop sign is stopped at", "[mark][controls]") {
  const BuiltTown town = tee("residential", "residential", "ng highway=stop\n");
  CHECK(control(town, "gjW") == "stop-near");
  CHECK(control(town, "gjE") == "stop-far");
  CHECK(control(town, "Sgj") == "none");
}

TEST_CASE("between equal roads the angle decides", "[mark][controls]") {
  const BuiltTown town = built_town(R"(
    N
.
.
W   x   E
.
.
    S
w1 WxE highway=residential
w2 NxS highway=residential
)");
  CHECK(control(town, "SxW") == "give-way-near");
  CHECK(control(town, "SxN") == "give-way-far");
  CHECK(control(town, "SxE") == "give-way-far");
  CHECK(control(town, "WxE") == "give-way-far");
}

TEST_CASE("the entry of a roundabout counts, the ring and the exit don't", "[mark][controls]") {
  const auto town = [](const std::string& tags) {
    return built_town(draw_town(R"(
     N
.
     a
W   d b   E
     c
w1 abcda highway=tertiary junction=roundabout )" +
                                    tags + R"(
w2 Na highway=tertiary
w3 Eb highway=tertiary
w4 Wd highway=tertiary
)",
                                20),
                      "GB-ENG");
  };
  CHECK(control(town(""), "Nab") == "roundabout");
  CHECK(control(town(""), "abd") == "none");
  CHECK(control(town(""), "abE") == "none");
  CHECK(control(town("lanes=2"), "Nab") == "multi-lane-roundabout");
  CHECK(control(town("central_island:traversable=yes"), "Nab") == "mini-roundabout");
  CHECK(control(town("lanes=2\nnb highway=traffic_signals"), "Nab") == "signal-roundabout");
}

TEST_CASE("a mini-roundabout counts whichever way it is passed", "[mark][controls]") {
  const BuiltTown town = tee("secondary", "residential", "nj highway=mini_roundabout\n");
  CHECK(control(town, "SjE") == "mini-roundabout");
  CHECK(control(town, "WjE") == "mini-roundabout");
}

TEST_CASE("lights are waited at once for all of a junction", "[mark][controls]") {
  const BuiltTown town = built_town(draw_town(R"(
      N
.
.
      n
W    wxe    E
      s
.
.
      S
w1 WwxeE highway=secondary
w2 NnxsS highway=tertiary
nn highway=traffic_signals
ne highway=traffic_signals
ns highway=traffic_signals
nw highway=traffic_signals
nx highway=traffic_signals
)",
                                              20),
                                    "GB-ENG");
  CHECK(control(town, "Wwx") == "signals");
  CHECK(control(town, "wxe") == "none");
  CHECK(control(town, "wxs") == "none");
  CHECK(control(town, "xeE") == "none");
}

TEST_CASE("zebras and signal crossings count in both directions", "[mark][controls]") {
  const BuiltTown town = built_town(R"(
W   a   b   E
w1 WabE highway=tertiary
na highway=crossing crossing=zebra
nb highway=crossing crossing=traffic_signals
)");
  CHECK(control(town, "Wab") == "zebra");
  CHECK(control(town, "baW") == "zebra");
  CHECK(control(town, "abE") == "signal-crossing");
}

TEST_CASE("a level crossing over several tracks counts once", "[mark][controls]") {
  const BuiltTown town = built_town(R"(
    pq
W   ab   E
    st
w1 WabE highway=tertiary
w11 pas railway=rail
w12 qbt railway=rail
na railway=level_crossing
nb railway=level_crossing
)");
  CHECK(control(town, "Wab") == "level-crossing");
  CHECK(control(town, "abE") == "none");
  CHECK(control(town, "Eba") == "level-crossing");
}

TEST_CASE("a gate one may pass counts, a cattle grid doesn't", "[mark][controls]") {
  const BuiltTown town = built_town(R"(
W   a   b   E
w1 Wa highway=tertiary
w2 ab highway=tertiary
w3 bE highway=tertiary
na barrier=gate motor_vehicle=yes
nb barrier=cattle_grid
)");
  CHECK(control(town, "Wab") == "barrier");
  CHECK(control(town, "abE") == "none");
}

TEST_CASE("a turn that remembers a ban has the control of the plain turn", "[mark][controls]") {
  // Who comes by way 3 may not go on from way 1 to way 4: a copy of way 1's stretch remembers.
  const BuiltTown town = built_town(R"(
    N       M
.
.
W   a       b   E
w1 ab highway=secondary
w2 Wa highway=secondary
w3 Na highway=residential
w4 bM highway=residential
w5 bE highway=secondary
r1 no_left_turn from=w3 via=w1 to=w4
)");
  const road::Roads roads = town.roads();
  REQUIRE(roads.copies.size() > 0);
  const StateId copy{roads.stretch_count()};
  REQUIRE(roads.stretch_of(copy) == town.stretch("ab"));
  REQUIRE(roads.turns_from(copy).size() == 1);
  CHECK(name(roads.turns_from(copy)[0].control) == control(town, "abE"));
}

}  // namespace
}  // namespace loopwright::test
