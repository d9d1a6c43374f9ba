// The index in the area: the same bytes each time, and no harm from damaged ones.
#include <catch2/catch.hpp>
#include <random>

#include "loopwright/base/error.hpp"
#include "place/named_town.hpp"

namespace loopwright::test {
namespace {

BuiltTown small_town() {
  return built_town(R"(
  h
A   B   C
w1 AB highway=residential name=Lantern_Row
w2 BC highway=residential name=Mill_Street
f1 h  addr:housenumber=4 addr:street="Lantern Row" addr:postcode="ZQ1 4AA"
)");
}

/// A look-up in an area with these bytes for an index; true when it failed as it should.
bool fails_cleanly(BuiltTown& town, const std::string& index) {
  town.built.tables.place_index.assign(index.begin(), index.end());
  try {
    const place::Finder finder(town.roads());
    for (const char* text : {"4 Lantern Row", "Lantrn Row", "ZQ1 4AA", "Lantern Row / Mill Street"})
      (void)finder.find(text);
  } catch (const InputError& error) {
    CHECK(std::string(error.what()).find("build") != std::string::npos);
    return true;
  }
  return false;
}

TEST_CASE("an area without an index says so", "[place]") {
  const BuiltTown town = small_town();
  CHECK_THROWS_WITH(place::Finder(town.roads()),
                    "the area has no index of places; build it again with 'loopwright build', or "
                    "give LAT,LON");
}

TEST_CASE("the same town gives the same index", "[place]") {
  CHECK(place::make_index(small_town().roads()) == place::make_index(small_town().roads()));
}

TEST_CASE("a town without names has an index all the same", "[place]") {
  CHECK(NamedTown("A  B\nw1 AB highway=residential\n").find("Lantern Row").meant == 0);
}

TEST_CASE("an index that is no database is refused", "[place]") {
  BuiltTown town = small_town();
  town.built.tables.place_index.assign(5000, 'x');
  CHECK_THROWS_WITH(place::Finder(town.roads()),
                    "the area's index of places is damaged (file is not a database); build the "
                    "area again with 'loopwright build'");
}

TEST_CASE("an index cut short anywhere ends in one line or in an answer", "[place]") {
  BuiltTown town = small_town();
  const std::string index = place::make_index(town.roads());
  int failed = 0;
  for (std::size_t length = 1; length < index.size(); length += 251) {
    failed += fails_cleanly(town, index.substr(0, length)) ? 1 : 0;
  }
  CHECK(failed > 0);
}

TEST_CASE("an index with wrong bytes ends in one line or in an answer", "[place]") {
  BuiltTown town = small_town();
  const std::string index = place::make_index(town.roads());
  std::mt19937 random(20261128);
  int failed = 0;
  for (int round = 0; round < 1000; ++round) {
    std::string damaged = index;
    for (int change = 0; change < 8; ++change) {
      damaged[random() % damaged.size()] = static_cast<char>(random() % 256);
    }
    failed += fails_cleanly(town, damaged) ? 1 : 0;
  }
  CHECK(failed > 0);
}

TEST_CASE("rows beyond the area's columns are passed over", "[place]") {
  const NamedTown other(R"(
A   B   C   D   E
w1 AB highway=residential name=Lantern_Row
w2 BC highway=residential name=Mill_Street
w3 CD highway=residential name=Osk_Road
)");
  BuiltTown tiny = built_town("A  B\nw1 AB highway=residential name=Lantern_Row\n");
  const auto index = other.roads().place_index;
  tiny.built.tables.place_index.assign(index.begin(), index.end());
  CHECK(place::Finder(tiny.roads()).find("Osk Road").meant == 0);
}

}  // namespace
}  // namespace loopwright::test
