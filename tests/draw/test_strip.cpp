// The strip map: rows in driving order from the foot of each column, words apart, lengths true.
#include <catch2/catch.hpp>

#include "draw/on_paper.hpp"
#include "draw/some_loops.hpp"
#include "loopwright/draw/strip.hpp"
#include "support/crossing_streets.hpp"
#include "support/tables_of_words.hpp"

namespace loopwright::test {
namespace {

using draw::Picture;
using draw::StripAsked;

/// Numbers of rows as they are read: page by page, column by column, from the foot upwards.
std::vector<std::string> as_read(const std::vector<Picture>& pages, double column_mm) {
  struct At {
    std::size_t page;
    int column;
    double y;
    std::string text;
  };
  std::vector<At> found;
  for (std::size_t page = 0; page < pages.size(); ++page)
    for (const Words& words : words_on(pages[page]))
      if (words.points == 12)
        found.push_back({page, static_cast<int>(middle_of(words).x / column_mm),
                         -middle_of(words).y, words.text});
  std::sort(found.begin(), found.end(), [](const At& a, const At& b) {
    return std::tie(a.page, a.column, a.y) < std::tie(b.page, b.column, b.y);
  });
  std::vector<std::string> texts;
  for (const At& at : found) texts.push_back(at.text);
  return texts;
}

void check_strip(const road::Roads& roads, const wish::Loop& loop, StripAsked asked) {
  const std::vector<Picture> pages = draw::strip_map(roads, loop, asked, our_words());
  for (const Picture& page : pages) {
    CHECK(page.width == asked.width);
    CHECK(page.height == asked.height);
    CHECK(badly_set(page) == std::vector<std::string>{});
    for (const Words& words : words_on(page)) CHECK(words.points >= 9);
  }
  std::vector<std::string> numbers;
  for (const draw::StripRow& row : asked.rows) numbers.push_back(row.number);
  const double columns = std::floor(asked.width / 56);
  CHECK(as_read(pages, asked.width / columns) == numbers);
}

/// Level strokes of that width, as ticks are.
std::size_t ticks_on(const Picture& page) {
  std::size_t ticks = 0;
  for (const draw::Mark& mark : page.marks)
    if (const auto* stroke = std::get_if<draw::Stroke>(&mark))
      ticks += stroke->width == 0.35 && stroke->way[0].y == stroke->way[1].y ? 1 : 0;
  return ticks;
}

}  // namespace

TEST_CASE("a strip without rows is one ribbon from bar to bar", "[draw]") {
  const BuiltTown town = built_town(crossing_streets);
  const wish::Loop loop = honest_answer(town, "ABnpGCBA").loops[0];
  const auto pages = draw::strip_map(town.roads(), loop, {}, our_words());
  REQUIRE(pages.size() == 1);
  CHECK(badly_set(pages[0]).empty());
}

TEST_CASE("a strip has a tick for each quarter of a mile driven, or each 500 m", "[draw]") {
  for (const auto& [region, ticks] : {std::pair("GB-ENG", 3), std::pair("LI", 2)}) {
    const BuiltTown town = built_town(draw_town(R"(
    A  B            C  D
  w1 AB   highway=residential
  w2 BC   highway=residential
  w3 CD   highway=residential
  )",
                                                100),
                                      region);
    // From B to C, 1300 m: a quarter of a mile is 402 m.
    const wish::Loop loop = honest_answer(town, "ABCD").loops[0];
    CHECK(ticks_on(draw::strip_map(town.roads(), loop, {}, our_words())[0]) ==
          static_cast<std::size_t>(ticks));
  }
}

TEST_CASE("strips of the county are read upwards row by row with all words apart", "[draw]") {
  const read::Built county = built_map(county_file(), "GB-ENG");
  const road::Roads roads = road::view_of(county.tables, county.info);
  for (const std::uint32_t seed : {1U, 2U, 3U, 4U, 5U, 6U}) {
    INFO("seed " << seed);
    const wish::Loop loop = random_loop(roads, seed, 150);
    StripAsked asked = with_rows(roads, loop);
    check_strip(roads, loop, asked);
    asked.width = 128, asked.height = 185;  // A5
    check_strip(roads, loop, asked);
  }
}

TEST_CASE("strips of a real town are read upwards row by row with all words apart",
          "[draw][real]") {
  if (!std::filesystem::exists(newport_file())) return;
  const read::Built town = built_map(newport_file(), "GB-WLS");
  const road::Roads roads = road::view_of(town.tables, town.info);
  for (const std::uint32_t seed : {1U, 2U, 3U}) {
    INFO("seed " << seed);
    const wish::Loop loop = random_loop(roads, seed, 150);
    check_strip(roads, loop, with_rows(roads, loop));
  }
}

}  // namespace loopwright::test
