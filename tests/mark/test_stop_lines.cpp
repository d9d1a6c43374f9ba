// Stop signs. Sources: OSM wiki Tag:highway=stop, Key:stop, Key:stop:direction; Highway Code 171.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

BuiltTown tee(const std::string& lines) {
  return built_town(R"(
W   j   E
    g
.
.
    S
w1 WjE highway=secondary
w2 Sgj highway=residential
)" + lines);
}

BuiltTown cross(const std::string& lines) {
  return built_town(R"(
    N
.
.
W   x   E
.
.
    S
w1 WxE highway=tertiary
w2 NxS highway=residential
)" + lines);
}

TEST_CASE("without a stop sign there is no stop line", "[mark][stop]") {
  CHECK(places(tee(""), Kind::stop_line).empty());
  CHECK(places(tee("ng highway=give_way\n"), Kind::stop_line).empty());
}

TEST_CASE("a stop sign on the side road stops those who come out of it", "[mark][stop]") {
  const BuiltTown town = tee("ng highway=stop direction=forward\n");
  CHECK(chances(town, Kind::stop_line) == Texts{"gjE right", "gjW left"});
  CHECK(reasons(town, Kind::stop_line) == Texts{"certain highway=stop ng"});
  CHECK(places(town, Kind::stop_line) == Texts{"ng"});
  CHECK(chances(town, Kind::emerge) == Texts{"gjE right", "gjW left"});
}

TEST_CASE("a stop sign without a direction faces the nearer junction", "[mark][stop]") {
  CHECK(chances(tee("ng highway=stop\n"), Kind::stop_line) == Texts{"gjE right", "gjW left"});
}

TEST_CASE("a stop sign that faces away from the junction stops nobody there", "[mark][stop]") {
  CHECK(chances(tee("ng highway=stop stop:direction=backward\n"), Kind::stop_line).empty());
}

TEST_CASE("with stop=all on the junction everybody stops", "[mark][stop]") {
  const BuiltTown town = cross("nx highway=stop stop=all\n");
  CHECK(chances(town, Kind::stop_line).size() == 12);
  CHECK(reasons(town, Kind::stop_line) == Texts{"certain highway=stop nx"});
}

TEST_CASE("with stop=minor on the junction the smaller roads stop, inferred", "[mark][stop]") {
  const BuiltTown town = cross("nx highway=stop stop=minor\n");
  CHECK(chances(town, Kind::stop_line) ==
        Texts{"NxE left", "NxS ahead", "NxW right", "SxE right", "SxN ahead", "SxW left"});
  CHECK(reasons(town, Kind::stop_line) == Texts{"inferred highway=stop nx"});
}

TEST_CASE("a stop sign 75 m from the junction isn't taken for its stop line", "[mark][stop]") {
  const BuiltTown town = built_town(R"(
W   j   E
.
.
    g
    S
w1 WjE highway=secondary
w2 Sgj highway=residential
ng highway=stop direction=forward
)");
  CHECK(places(town, Kind::stop_line).empty());
}

TEST_CASE("a stop sign at lights is left out and counted", "[mark][stop]") {
  const BuiltTown town = tee("ng highway=stop direction=forward\nnj highway=traffic_signals\n");
  CHECK(places(town, Kind::stop_line).empty());
  CHECK(town.report.counted("stop lines at lights or roundabouts") == 1);
}

// Where only a yard joins is no junction to put a sign up for: ours (facing.cpp).
TEST_CASE("a stop sign faces the street, though a yard's road joins nearer behind it",
          "[mark][stop]") {
  const BuiltTown town = built_town(draw_town(R"(
W   j   E
.
    g
Y   y
.
    S
w1 WjE highway=secondary
w2 Sygj highway=residential
w3 Yy highway=service
ng highway=stop
)",
                                              10),
                                    "GB-ENG");
  CHECK(chances(town, Kind::stop_line) == Texts{"gjE right", "gjW left"});
}

}  // namespace
}  // namespace loopwright::test
