// Every kind has a symbol that is told from all others when printed at 5 mm.
#include <catch2/catch.hpp>

#include "draw/dots.hpp"
#include "loopwright/draw/render.hpp"
#include "loopwright/draw/symbols.hpp"

namespace loopwright::test {
namespace {

/// As printed at 5 mm and 300 dots an inch, dark dots true.
Dots printed(road::Kind kind) {
  draw::Picture paper{5, 5};
  draw::place(paper, draw::kind_symbol(kind), {0, 0}, 0.5);
  return dark_dots(paper, 300);
}

}  // namespace

TEST_CASE("every kind's symbol has enough ink and keeps within its box", "[draw]") {
  for (const road::Kind kind : road::all_kinds()) {
    INFO(road::name(kind));
    const Dots dots = printed(kind);
    CHECK(dots.share() > 0.08);
    CHECK(dots.share() < 0.7);
    // Drawn with a rim of paper around it: nothing may stand there.
    draw::Picture paper{14, 14};
    draw::place(paper, draw::kind_symbol(kind), {2, 2});
    const Dots wide = dark_dots(paper, 254);
    for (std::size_t y = 0; y < wide.height; ++y)
      for (std::size_t x = 0; x < wide.width; ++x)
        if (x < 17 || y < 17 || x > 122 || y > 122) REQUIRE_FALSE(wide.dark[y * wide.width + x]);
  }
}

TEST_CASE("no two symbols look alike at 5 mm", "[draw]") {
  std::vector<Dots> all;
  for (const road::Kind kind : road::all_kinds()) all.push_back(printed(kind));
  for (std::size_t a = 0; a < all.size(); ++a) {
    for (std::size_t b = a + 1; b < all.size(); ++b) {
      INFO(road::name(road::all_kinds()[a]) << " and " << road::name(road::all_kinds()[b]));
      CHECK(differing(all[a], all[b]) > 0.1);
    }
  }
}

}  // namespace loopwright::test
