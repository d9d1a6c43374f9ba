#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/wish/asked.hpp"

namespace loopwright::wish {
namespace {

using road::Kind;
using road::Movement;

Pass pass_of(Kind kind, std::size_t first, std::size_t last) {
  Pass pass;
  pass.kind = kind, pass.first = first, pass.last = last;
  return pass;
}

TEST_CASE("a kind alone is welcome", "[wish]") {
  CHECK(read_welcome("zebra") == Kind::zebra);
  CHECK_THROWS_WITH(read_welcome("zebra=2"),
                    "'zebra=2' can't be welcomed: a kind alone can, without ':', '=' or '+'");
  CHECK_THROWS_WITH(read_welcome("zebr"),
                    "there is no practice kind 'zebr'; did you mean 'zebra'?");
  CHECK_THROWS_WITH(read_welcome("bay-park"),
                    "'bay-park' can't be welcomed: a manoeuvre is only done when asked for; use "
                    "--want");
}

TEST_CASE("a spacing is a kind and minutes", "[wish]") {
  CHECK(read_spacing("roundabout=5") == Spacing{Kind::roundabout, 300});
  CHECK(write_spacing(read_spacing("signals=60")) == "signals=60");
  CHECK_THROWS_WITH(read_spacing("roundabout"),
                    "'roundabout' is no spacing; write a kind and minutes, such as signals=4");
  CHECK_THROWS_WITH(read_spacing("roundabout=0"), "the minutes in 'roundabout=0' are not 1 to 60");
  CHECK_THROWS_WITH(read_spacing("roundabout=2.5"),
                    "the minutes in 'roundabout=2.5' are not 1 to 60");
  CHECK_THROWS_WITH(read_spacing("roundabout:left=5"),
                    "'roundabout:left' can't be spaced: a kind alone can, without ':' or '+'");
  CHECK_THROWS_AS(read_spacing("roundabuot=5"), UsageError);
}

TEST_CASE("a spacing holds for the special forms of its kind, the greatest counts", "[wish]") {
  Wish wish;
  CHECK_FALSE(spacing_s(wish, read_want("roundabout=2")));
  wish.spacings = {{Kind::roundabout, 300}, {Kind::signal_roundabout, 120}};
  CHECK(spacing_s(wish, read_want("roundabout:left=2")) == 300);
  CHECK(spacing_s(wish, read_want("signal-roundabout=2")) == 300);
  CHECK_FALSE(spacing_s(wish, read_want("mini-roundabout=2")));
}

TEST_CASE("a pass counts for a joined want only when it leads into the second kind", "[wish]") {
  const Want joined = read_want("turn-off+narrow-road");
  std::vector<Pass> passes{pass_of(Kind::turn_off, 2, 3), pass_of(Kind::narrow_road, 4, 6)};
  CHECK_FALSE(counts_for(0, passes, joined));
  passes[1].first = 3;
  CHECK(counts_for(0, passes, joined));
  CHECK_FALSE(counts_for(1, passes, joined));
  passes[1].kind = Kind::single_track;  // a special form
  CHECK(counts_for(0, passes, joined));
  passes[1] = pass_of(Kind::narrow_road, 1, 2);  // left by the turn
  CHECK_FALSE(counts_for(0, passes, joined));
}

TEST_CASE("a pass doesn't lead into itself", "[wish]") {
  const Want twice = read_want("turn-off+turn-off");
  const std::vector<Pass> one{pass_of(Kind::turn_off, 2, 3)};
  CHECK_FALSE(counts_for(0, one, twice));
  const std::vector<Pass> two{pass_of(Kind::turn_off, 2, 3), pass_of(Kind::turn_off, 3, 4)};
  CHECK(counts_for(0, two, twice));
  CHECK_FALSE(counts_for(1, two, twice));
}

}  // namespace
}  // namespace loopwright::wish
