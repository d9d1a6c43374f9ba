// What must hold of every drive, checked on random ones: a walk of legal turns over a drawn town.
#include <catch2/catch.hpp>
#include <numeric>

#include "loopwright/say/words.hpp"
#include "say/random_drive.hpp"
#include "say/said.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

find::Drive random_drive(const road::Roads& roads, std::uint32_t seed, std::size_t stretches) {
  return RandomDrive(roads, seed).of(stretches);
}

/// Public roads one may leave a ring by, from its entry to the exit taken, counted on the map.
int exits_passed(const road::Roads& roads, const wish::Loop& loop, const wish::Pass& pass) {
  int exits = 0;
  for (std::size_t i = pass.first + 1; i < pass.last; ++i)
    for (const StretchId s : roads.leaving(roads.to_node(loop.stretches[i].stretch)))
      if ((roads.piece(s).flags & road::piece_flag::ring) == 0 && roads.drivable(s)) ++exits;
  return exits;
}

void check_row(const say::Row& row) {
  CAPTURE(row.say);
  CHECK_FALSE(row.say.empty());
  CHECK(say::spoken_words(row.say) <= 9);
  CHECK(row.say.find("straight on") == std::string::npos);
  CHECK(row.say.find("turning") == std::string::npos);
  CHECK(row.say.find('{') == std::string::npos);
  CHECK(row.to_next_m >= 0);
  CHECK(row.to_next_s >= 0);
}

void check_rings(const road::Roads& roads, const wish::Loop& loop,
                 const std::vector<say::Row>& rows) {
  const say::Words words;
  for (const wish::Pass& pass : loop.passes) {
    if (pass.kind != road::Kind::roundabout) continue;
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const say::Row& r) {
      return r.stretch == pass.first && r.say.find("roundabout") != std::string::npos;
    });
    REQUIRE(row != rows.end());
    CHECK(row->say.ends_with(words.nth(exits_passed(roads, loop, pass)) + " exit"));
  }
}

}  // namespace

TEST_CASE("every drive is spoken in few, allowed words, with the exits the map has", "[say]") {
  const BuiltTown town = town_of(crossing_streets, 100);
  const road::Roads roads = town.roads();
  for (std::uint32_t seed = 1; seed <= 150; ++seed) {
    CAPTURE(seed);
    const wish::Loop loop = honest_answer(roads, random_drive(roads, seed, 40)).loops[0];
    const auto rows = say::say_loop(roads, loop);
    for (const say::Row& row : rows) check_row(row);
    check_rings(roads, loop, rows);
    const bool by_name = !loop.stretches.front().street.empty();
    CHECK(rows.front().say.starts_with(by_name ? "leave " : "set off "));
    CHECK(rows.back().say == "pull up on the left when it's safe");
  }
}

TEST_CASE("distances between rows add up to the drive from corner to corner", "[say]") {
  const BuiltTown town = town_of(crossing_streets, 100);
  const road::Roads roads = town.roads();
  for (std::uint32_t seed = 1; seed <= 50; ++seed) {
    CAPTURE(seed);
    const wish::Loop loop = honest_answer(roads, random_drive(roads, seed, 30)).loops[0];
    const auto rows = say::say_loop(roads, loop);
    const double spoken = std::accumulate(
        rows.begin(), rows.end(), 0.0, [](double sum, const auto& r) { return sum + r.to_next_m; });
    const double driven =
        loop.metres - loop.stretches.front().metres - loop.stretches.back().metres;
    CHECK(spoken == Approx(driven));
    CHECK(std::is_sorted(rows.begin(), rows.end(),
                         [](const auto& a, const auto& b) { return a.stretch < b.stretch; }));
  }
}

TEST_CASE("every pass of a drive is briefed with just one row", "[say]") {
  const BuiltTown town = town_of(crossing_streets, 100);
  const road::Roads roads = town.roads();
  for (std::uint32_t seed = 1; seed <= 50; ++seed) {
    CAPTURE(seed);
    const wish::Loop loop = honest_answer(roads, random_drive(roads, seed, 30)).loops[0];
    std::vector<std::size_t> briefed;
    for (const say::Row& row : say::say_loop(roads, loop)) {
      int hardest = 0;
      for (const std::size_t index : row.passes)
        hardest = std::max(hardest, loop.passes[index].hardness);
      CHECK(row.hardness == hardest);
      briefed.insert(briefed.end(), row.passes.begin(), row.passes.end());
    }
    std::sort(briefed.begin(), briefed.end());
    std::vector<std::size_t> all(loop.passes.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    CHECK(briefed == all);
  }
}

TEST_CASE("no more than three rows are said in one breath, nor kept in mind", "[say]") {
  const BuiltTown town = town_of(crossing_streets, 25);  // corners a hundred metres apart
  const road::Roads roads = town.roads();
  int ahead = 0;
  for (std::uint32_t seed = 1; seed <= 50; ++seed) {
    std::size_t in_breath = 0;
    const wish::Loop loop = honest_answer(roads, random_drive(roads, seed, 40)).loops[0];
    const auto rows = say::say_loop(roads, loop);
    for (std::size_t k = 0; k < rows.size(); ++k) {
      in_breath = rows[k].joined_to_previous ? in_breath + 1 : (k == 0 ? 0 : 1);
      bool crowded = false;
      for (const std::string& brief : rows[k].briefs) {
        crowded = crowded || brief.starts_with("more than three at once");
        if (!brief.starts_with("close together: say this as soon as row ")) continue;
        ++ahead;
        // Rows are numbered from one: the third before it, and the two between.
        CHECK(brief == "close together: say this as soon as row " + std::to_string(k - 2) +
                           " is done, before rows " + std::to_string(k - 1) + " and " +
                           std::to_string(k) + " are driven");
        CHECK(rows[k].speak_m > 0);
      }
      CHECK((in_breath <= 3 || crowded));
    }
  }
  CHECK(ahead > 0);
}

TEST_CASE("what is spoken on its own is spoken in time", "[say]") {
  // Common practice, no source: at 30 mph 150 to 200 m before; our 14 seconds are 188 m.
  const BuiltTown town = town_of(crossing_streets, 100);
  const auto rows = rows_of(town, "ABnpGCBA");
  CHECK(rows[2].say == "at the roundabout turn left, first exit");
  CHECK(rows[2].speak_m == Approx(14 * 30 * 0.44704).epsilon(0.001));
  CHECK_FALSE(rows[2].joined_to_previous);
}

}  // namespace loopwright::test
