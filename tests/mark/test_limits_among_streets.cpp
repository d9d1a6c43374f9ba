// A road that says nothing of its limit, among streets that do. Rule and distances: ours.
#include <catch2/catch.hpp>

#include "support/built_town.hpp"

namespace loopwright::test {

namespace {

road::LimitFact limit_of(const BuiltTown& town, std::string_view letters) {
  return town.roads().stretch(town.stretch(letters)).limit;
}

}  // namespace

TEST_CASE("a short road between two town streets has the town's limit, to be checked", "[mark]") {
  const BuiltTown town = built_town(R"(
    A    B    C

    D    E    F
  w1 ABC highway=residential
  w2 DEF highway=tertiary maxspeed="30 mph"
  w3 BE  highway=unclassified
  w4 AD  highway=residential
  w5 CF  highway=residential
)");
  CHECK(limit_of(town, "BE").rule == road::LimitRule::restricted);
  CHECK(limit_of(town, "BE").confidence == road::LimitConfidence::check);
  CHECK(town.roads().text(limit_of(town, "BE").source) ==
        "highway=unclassified among streets of a town");
}

TEST_CASE("a country road between a town and nothing keeps the national limit", "[mark]") {
  const BuiltTown town = built_town(R"(
    A    B

    D    E          F

         G          H
  w1 AB highway=residential
  w2 AD highway=residential
  w3 DE highway=residential
  w4 BE highway=residential
  w5 EF highway=unclassified
  w6 FHGE highway=unclassified
)");
  CHECK(limit_of(town, "EF").rule == road::LimitRule::national_single);
}

TEST_CASE("a road said to be unlit keeps the national limit, even among streets", "[mark]") {
  const BuiltTown town = built_town(R"(
    A    B    C

    D    E    F
  w1 ABC highway=residential
  w2 DEF highway=residential
  w3 BE  highway=unclassified lit=no
  w4 AD  highway=residential
  w5 CF  highway=residential
)");
  CHECK(limit_of(town, "BE").rule == road::LimitRule::national_single);
}

TEST_CASE("a long road isn't settled by the streets at its ends", "[mark]") {
  const BuiltTown town = built_town(draw_town(R"(
    A    B    C

    D    E    F
  w1 ABC highway=residential
  w2 DEF highway=residential
  w3 BE  highway=unclassified
  w4 AD  highway=residential
  w5 CF  highway=residential
)",
                                              250),
                                    "GB-ENG");
  CHECK(limit_of(town, "BE").rule == road::LimitRule::national_single);
}

// Rows are 25 m apart, each street 400 m long; the road from Y to Z joins none of them.
constexpr std::string_view road_and_streets = R"(
    A               B
    C               D
    E               F
    G               H
    I               J
U   Y           Z               V
    K               L
    M               N
    O               P
    Q               R
    S               T
  w1 YZ  highway=tertiary
  w2 UY  highway=unclassified lit=no
  w3 ZV  highway=unclassified lit=no
)";

std::string streets(std::string_view letters, std::string_view tags) {
  std::string ways;
  for (std::size_t at = 0; at + 1 < letters.size(); at += 2) {
    ways += "  w" + std::to_string(11 + at) + " " + std::string(letters.substr(at, 2)) + " " +
            std::string(tags) + "\n";
  }
  return ways;
}

BuiltTown amid(const std::string& ways, std::string_view region = "GB-ENG") {
  return built_town(std::string(road_and_streets) + ways, region);
}

constexpr std::string_view all_streets = "ABCDEFGHIJKLMNOPQRST";

TEST_CASE("a road amid many streets of a town has the town's limit, to be checked", "[mark]") {
  const BuiltTown town = amid(streets(all_streets, "highway=residential"));
  CHECK(limit_of(town, "YZ").rule == road::LimitRule::restricted);
  CHECK(limit_of(town, "YZ").confidence == road::LimitConfidence::check);
  CHECK(town.roads().text(limit_of(town, "YZ").source) ==
        "highway=tertiary among streets of a town");
  CHECK(limit_of(town, "UY").rule == road::LimitRule::national_single);  // said to be unlit
  CHECK(limit_of(amid(streets(all_streets, "highway=residential"), "IE"), "YZ").rule ==
        road::LimitRule::urban);
}

TEST_CASE("a road with a street or two beside it isn't amid a town", "[mark]") {
  const BuiltTown town = amid(streets("ABCDKL", "highway=residential"));
  CHECK(limit_of(town, "YZ").rule == road::LimitRule::national_single);
}

TEST_CASE("a main road has the town's limit only amid its streets and between two of them",
          "[mark]") {
  const auto limit_with = [](std::string ends, std::string_view round) {
    std::string drawing = std::string(road_and_streets) + streets(round, "highway=residential");
    const auto put = [&](const std::string& what, const std::string& instead) {
      for (auto at = drawing.find(what); at != std::string::npos; at = drawing.find(what))
        drawing.replace(at, what.size(), instead);
    };
    put("highway=tertiary", "highway=primary");
    put("highway=unclassified lit=no", ends);
    return limit_of(built_town(drawing), "YZ").rule;
  };
  CHECK(limit_with("highway=residential", all_streets) == road::LimitRule::restricted);
  CHECK(limit_with("highway=trunk lit=no", all_streets) == road::LimitRule::national_single);
  CHECK(limit_with("highway=residential", "ABCDKL") == road::LimitRule::national_single);
}

TEST_CASE("roads that aren't streets make no town", "[mark]") {
  for (const char* tags :
       {"highway=service", "highway=tertiary maxspeed=\"50 mph\"", "highway=unclassified lit=no"}) {
    CHECK(limit_of(amid(streets(all_streets, tags)), "YZ").rule ==
          road::LimitRule::national_single);
  }
}

TEST_CASE("what a tag says of a road's limit stays, whatever lies round it", "[mark]") {
  const std::string round = streets(all_streets, "highway=residential");
  std::string drawing = std::string(road_and_streets) + round;
  const std::string plain = "w1 YZ  highway=tertiary";
  for (const char* more : {" maxspeed=\"60 mph\"", " maxspeed:type=GB:nsl_single", " lit=no"}) {
    std::string told = drawing;
    told.insert(told.find(plain) + plain.size(), more);
    const road::LimitFact limit = limit_of(built_town(told), "YZ");
    CHECK(limit.rule != road::LimitRule::restricted);
    CHECK(limit.confidence != road::LimitConfidence::check);
  }
}

}  // namespace loopwright::test
