// Rails in the road and across it. Sources: OSM wiki Tag:railway=tram, Key:embedded_rails,
// Tag:railway=tram_level_crossing. Distances are ours.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// Tracks drawn beside a road of 120 m, by rows of two metres.
BuiltTown tracks_beside(int rows, const std::string& tags = "") {
  std::string drawing = "W" + std::string(59, ' ') + "E";
  for (int i = 0; i < rows; ++i) drawing += i + 1 < rows ? "\n." : "\n";
  drawing += "p" + std::string(59, ' ') + "q\nw1 WE highway=tertiary\nw11 pq railway=tram " + tags;
  return built_town(draw_town(drawing, 2), "GB-ENG");
}

TEST_CASE("a town without trams has no rails in its roads", "[mark][trams]") {
  const BuiltTown town = built_town("A   B\nw1 AB highway=tertiary\n");
  CHECK(run_facts(town, Kind::tram).empty());
  CHECK(places(town, Kind::tram_crossing).empty());
}

TEST_CASE("a tram on the road's own points runs in the road", "[mark][trams]") {
  const BuiltTown town = built_town(R"(
        p       q
W       a   b       E
w1 WabE highway=tertiary
w11 pabq railway=tram
)");
  CHECK(run_facts(town, Kind::tram) ==
        Texts{"EW certain railway=tram on way 11", "WE certain railway=tram on way 11"});
  CHECK(places(town, Kind::tram_crossing).empty());
}

TEST_CASE("a road says of itself that rails lie in it", "[mark][trams]") {
  CHECK(run_facts(built_town("A   B\nw1 AB highway=tertiary embedded_rails=tram\n"), Kind::tram) ==
        Texts{"AB certain embedded_rails=tram", "BA certain embedded_rails=tram"});
  CHECK(run_facts(built_town("A   B\nw1 AB highway=tertiary embedded_rails=disused\n"), Kind::tram)
            .empty());
}

TEST_CASE("tracks 2 m beside the road's line lie in it, by inference", "[mark][trams]") {
  CHECK(run_facts(tracks_beside(1), Kind::tram) ==
        Texts{"EW inferred railway=tram beside its line",
              "WE inferred railway=tram beside its line"});
}

TEST_CASE("tracks 6 m beside the road's line, or under it, don't lie in it", "[mark][trams]") {
  CHECK(run_facts(tracks_beside(3), Kind::tram).empty());
  CHECK(run_facts(tracks_beside(1, "tunnel=yes layer=-1"), Kind::tram).empty());
}

TEST_CASE("rails across the road are a tram crossing, tagged or not", "[mark][trams]") {
  const std::string drawing = R"(
    p
W   a   E
    q
w1 WaE highway=tertiary
w11 paq railway=tram
)";
  const BuiltTown plain = built_town(drawing);
  CHECK(chances(plain, Kind::tram_crossing) == Texts{"EaW", "WaE"});
  CHECK(reasons(plain, Kind::tram_crossing) == Texts{"certain railway=tram across the road na"});
  CHECK(run_facts(plain, Kind::tram).empty());
  const BuiltTown tagged = built_town(drawing + "na railway=tram_level_crossing\n");
  CHECK(reasons(tagged, Kind::tram_crossing) == Texts{"certain railway=tram_level_crossing na"});
}

TEST_CASE("two tracks close together are one tram crossing", "[mark][trams]") {
  const BuiltTown town = built_town(R"(
    pr
W   ab   E
    qs
w1 WabE highway=tertiary
w11 paq railway=tram
w12 rbs railway=tram
)");
  CHECK(places(town, Kind::tram_crossing) == Texts{"na"});
  CHECK(chances(town, Kind::tram_crossing) == Texts{"EbaW", "WabE"});
}

TEST_CASE("driving over a street of trams crosses its rails, turning into it doesn't",
          "[mark][trams]") {
  const BuiltTown town = built_town(R"(
    N
W   j   E
    S
w1 WjE highway=tertiary
w2 NjS highway=residential
w11 WjE railway=tram
)");
  CHECK(chances(town, Kind::tram_crossing) == Texts{"NjS", "SjN"});
  CHECK(run_facts(town, Kind::tram).size() == 4);
}

TEST_CASE("where a tram leaves the road it ran along, nothing is crossed", "[mark][trams]") {
  const BuiltTown town = built_town(R"(
        q
W   a   E   F
w1 WaE highway=tertiary
w2 EF highway=tertiary
w11 WaEq railway=tram
)");
  CHECK(places(town, Kind::tram_crossing).empty());
}

TEST_CASE("a level crossing of nothing but a tram is a tram crossing", "[mark][trams]") {
  const BuiltTown town = built_town(R"(
    p
W   a   E
    q
w1 WaE highway=tertiary
w11 paq railway=tram
na railway=level_crossing
)");
  CHECK(places(town, Kind::level_crossing).empty());
  CHECK(places(town, Kind::tram_crossing) == Texts{"na"});
}

}  // namespace
}  // namespace loopwright::test
