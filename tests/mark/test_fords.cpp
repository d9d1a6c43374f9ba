// Source: OSM wiki Key:ford.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

BuiltTown with_fords(std::string_view drawing) {
  read::BuildOptions options;
  options.fords = true;
  return built_town(draw_town(drawing), "GB-ENG", options);
}

constexpr std::string_view at_node = R"(
W   a   E
w1 WaE highway=unclassified
na ford=yes
)";

constexpr std::string_view along_way = R"(
W   ab   E
w1 Wa highway=unclassified
w2 ab highway=unclassified ford=yes
w3 bE highway=unclassified
)";

TEST_CASE("a road without water over it has no ford", "[mark][fords]") {
  CHECK(places(with_fords("W   a   E\nw1 WaE highway=unclassified\nna ford=no\n"), Kind::ford)
            .empty());
}

TEST_CASE("a ford is driven through where the area is built with fords", "[mark][fords]") {
  CHECK(chances(with_fords(at_node), Kind::ford) == Texts{"EaW", "WaE"});
  CHECK(reasons(with_fords(at_node), Kind::ford) == Texts{"certain ford=yes na"});
  CHECK(chances(with_fords(along_way), Kind::ford) == Texts{"EbaW", "WabE"});
  CHECK(reasons(with_fords(along_way), Kind::ford) == Texts{"certain ford=yes w2"});
}

TEST_CASE("without fords built in, a ford is known and not driven", "[mark][fords]") {
  for (const std::string_view drawing : {at_node, along_way}) {
    const BuiltTown town = built_town(drawing);
    CHECK(places(town, Kind::ford).size() == 1);
    CHECK(chances(town, Kind::ford).empty());
  }
  CHECK_FALSE(built_town(at_node).drives("WaE"));
  CHECK(with_fords(at_node).drives("WaE"));
}

TEST_CASE("a ford marked on its way and on a node of it is one", "[mark][fords]") {
  const BuiltTown town = with_fords(R"(
W   amb   E
w1 Wa highway=unclassified
w2 amb highway=unclassified ford=yes
w3 bE highway=unclassified
nm ford=yes
)");
  CHECK(places(town, Kind::ford) == Texts{"w2"});
  CHECK(chances(town, Kind::ford) == Texts{"EbmaW", "WambE"});
}

TEST_CASE("a bridge over the brook is no ford", "[mark][fords]") {
  CHECK(places(with_fords("W   E\nw1 WE highway=unclassified bridge=yes\n"), Kind::ford).empty());
}

}  // namespace
}  // namespace loopwright::test
