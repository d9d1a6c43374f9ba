// Directions proved: a driver told nothing but the rows drives the same roads, and does each row
// where it is due.
#include <array>
#include <catch2/catch.hpp>
#include <filesystem>

#include "card/card_town.hpp"
#include "loopwright/read/build.hpp"
#include "loopwright/wish/learners_drive.hpp"
#include "say/blind_driver.hpp"
#include "say/cards.hpp"
#include "say/random_drive.hpp"
#include "say/said.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

/// How many of so many random drives the blind driver gets right.
std::uint32_t driven_right(const road::Roads& roads, std::uint32_t drives, std::size_t stretches) {
  std::uint32_t right = 0;
  for (std::uint32_t seed = 1; seed <= drives; ++seed) {
    const find::Drive drive = RandomDrive(roads, seed).of(stretches);
    const wish::Loop loop = honest_answer(roads, drive).loops[0];
    const std::string why = astray(roads, loop, say::say_loop(roads, loop));
    if (!why.empty()) UNSCOPED_INFO("seed " << seed << ": " << why);
    right += why.empty() ? 1 : 0;
  }
  return right;
}

read::Built built_map(const std::filesystem::path& file, std::string_view region) {
  road::Report report;
  read::BuildOptions options;
  options.region = find_region(region).value();
  return read::build_area(file, options, report, {});
}

/// The same of drives on which the instructor drives the first and the last so many stretches.
std::uint32_t driven_right_between(const road::Roads& roads, std::uint32_t drives,
                                   std::size_t instructors) {
  std::uint32_t right = 0;
  for (std::uint32_t seed = 1; seed <= drives; ++seed) {
    const find::Drive drive = RandomDrive(roads, seed).of(40);
    wish::Answer answer = honest_answer(roads, drive);
    wish::Loop& whole = answer.loops[0];
    std::array practice{instructors, whole.stretches.size() - 1 - instructors};
    const auto middle = [&](std::size_t row) {
      const StretchId s = whole.stretches[row].stretch;
      return point_along(roads.shape_of(s.piece()), roads.piece(s).length_m / 2);
    };
    const auto on_ring = [&](std::size_t row) {
      return (roads.piece(whole.stretches[row].stretch).flags & road::piece_flag::ring) != 0;
    };
    while (on_ring(practice[0] - 1)) ++practice[0];  // nobody changes seats on a ring
    while (on_ring(practice[1] + 1)) --practice[1];
    whole.practice = practice;
    answer.wish.drive_out = middle(practice[0] - 1);
    answer.wish.drive_back = middle(practice[1] + 1);
    const wish::Loop own = wish::learners_drive(roads, answer.wish, whole).loop;
    const std::string why = astray(roads, own, say::say_loop(roads, own));
    if (!why.empty()) UNSCOPED_INFO("seed " << seed << ": " << why);
    right += why.empty() ? 1 : 0;
  }
  return right;
}

}  // namespace

TEST_CASE("who takes the wheel on the way is told all from there", "[say]") {
  const BuiltTown town = town_of(crossing_streets, 100);
  CHECK(driven_right_between(town.roads(), 60, 7) == 60);
}

TEST_CASE("told nothing, a blind driver goes on until there is a choice", "[say]") {
  const BuiltTown town = town_of(R"(
             D
    A  B     C
             E
  w1 AB    highway=residential
  w50 BC   highway=residential
  w2 DCE   highway=residential
  )",
                                 100);
  const Driven driven = drive_blind(town.roads(), town.stretch("AB"), {}, 9);
  CHECK(driven.stretches == std::vector{town.stretch("AB"), town.stretch("BC")});
  CHECK(driven.lost == "more than one way to go, told 'nothing'");
}

TEST_CASE("a blind driver told wrong ends up elsewhere", "[say]") {
  const BuiltTown town = town_of(crossing_streets, 100);
  const wish::Loop loop = honest_answer(town, "ABnpGCBA").loops[0];
  std::vector<say::Row> rows = say::say_loop(town.roads(), loop);
  const auto exit = rows[2].say.find("first");
  rows[2].say.replace(exit, 5, "second");
  const Driven driven =
      drive_blind(town.roads(), loop.stretches[0].stretch, rows, loop.stretches.size());
  CHECK(driven.stretches[4] == town.stretch("qJ"));
}

TEST_CASE("a blind driver finds every way round the drawn towns", "[say]") {
  const BuiltTown streets = town_of(crossing_streets, 100);
  CHECK(driven_right(streets.roads(), 100, 40) == 100);
  const BuiltTown dense = town_of(crossing_streets, 40);
  CHECK(driven_right(dense.roads(), 100, 40) == 100);
  const BuiltTown town = built_card_town();
  CHECK(driven_right(town.roads(), 100, 40) == 100);
  std::string mirrored(crossing_streets);
  mirrored.replace(mirrored.find("npqrn"), 5, "nrqpn");
  mirrored.erase(mirrored.find("direction=clockwise"), 19);
  const BuiltTown abroad = town_of(mirrored, 100, "LI");
  CHECK(driven_right(abroad.roads(), 100, 40) == 100);
}

TEST_CASE("a blind driver finds every way round Quillham", "[say]") {
  const read::Built town =
      built_map(std::filesystem::path(LOOPWRIGHT_ROOT) / "maps/quillham.osm.pbf", "GB-ENG");
  CHECK(driven_right(road::view_of(town.tables, town.info), 200, 60) == 200);
}

TEST_CASE("a blind driver finds every way round a real town", "[say][real]") {
  const auto map =
      std::filesystem::path(LOOPWRIGHT_ROOT).parent_path() / "shared/maps/newport-2023.osm.pbf";
  if (!std::filesystem::exists(map)) return;
  const read::Built town = built_map(map, "GB-WLS");
  CHECK(driven_right(road::view_of(town.tables, town.info), 200, 60) == 200);
}

}  // namespace loopwright::test
