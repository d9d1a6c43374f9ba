// What must hold of the area of any town: it comes back as it was written, its bytes hang on nothing else, and no
// byte of it can change unseen.
#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/store/area.hpp"
#include "support/built_town.hpp"
#include "support/random_town.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright::test {
namespace {

constexpr int towns = 20, flips_of_each = 60;

BuiltTown any_town(Dice& dice) {
  return built_town(draw_town(random_town(dice), 100), "GB-ENG");
}

}  // namespace

TEST_CASE("the area of any town is the same bytes whenever it is built", "[read]") {
  const auto seed = static_cast<std::uint64_t>(GENERATE(range(1, towns)));
  const ScratchFolder folder;
  std::string ids[2];
  for (const int time : {0, 1}) {
    Dice dice(seed);
    const BuiltTown town = any_town(dice);
    ids[time] =
        store::write_area(folder / std::to_string(time), town.built.tables, town.built.info);
  }
  CHECK(ids[0] == ids[1]);
  CHECK(read_bytes(folder / "0") == read_bytes(folder / "1"));
}

TEST_CASE("every column of any town comes back from its area", "[read]") {
  Dice dice(static_cast<std::uint64_t>(GENERATE(range(1, towns))));
  const ScratchFolder folder;
  const BuiltTown town = any_town(dice);
  const auto file = folder / "any.area";
  store::write_area(file, town.built.tables, town.built.info);
  store::verify_area(file);
  const store::Area area = store::open_area(file);
  const road::Roads &there = area.roads(), here = town.roads();
  CHECK(there.stretch_count() == here.stretch_count());
  CHECK(there.state_count() == here.state_count());
  REQUIRE(there.pieces.size() == here.pieces.size());
  for (std::size_t row = 0; row < here.pieces.size(); ++row) {
    CHECK(there.pieces[row].way == here.pieces[row].way);
    CHECK(there.text(there.pieces[row].name) == here.text(here.pieces[row].name));
  }
  REQUIRE(there.chances.size() == here.chances.size());
  for (std::size_t row = 0; row < here.chances.size(); ++row) {
    CHECK(there.chances[row].kind == here.chances[row].kind);
    CHECK(there.chances[row].entry == here.chances[row].entry);
  }
}

TEST_CASE("no byte of any area changes unseen", "[read]") {
  Dice dice(static_cast<std::uint64_t>(GENERATE(range(1, towns))));
  const ScratchFolder folder;
  const BuiltTown town = any_town(dice);
  const auto file = folder / "any.area";
  store::write_area(file, town.built.tables, town.built.info);
  const std::string whole = read_bytes(file);
  for (int flip = 0; flip < flips_of_each; ++flip) {
    std::string spoiled = whole;
    const std::size_t at = dice.below(whole.size());
    spoiled[at] = static_cast<char>(spoiled[at] ^ (1 << dice.below(8)));
    write_bytes(file, spoiled);
    INFO("byte " << at);
    CHECK_THROWS_AS(store::verify_area(file), InputError);
  }
}

}  // namespace loopwright::test
