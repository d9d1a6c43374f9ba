// The words of a part of a lesson.
#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::wish {
namespace {

TEST_CASE("a part is its minutes, and what it is for", "[wish][parts]") {
  CHECK(read_part("20") == Part{20, RoadsAllowed::any, std::nullopt, {}});
  CHECK(read_part(" 20 quiet ") == Part{20, RoadsAllowed::quiet, std::nullopt, {}});
  CHECK(read_part("20 quiet: turn-off:left=3, emerge:left=2") ==
        Part{20,
             RoadsAllowed::quiet,
             std::nullopt,
             {read_want("turn-off:left=3"), read_want("emerge:left=2")}});
  CHECK(read_part("30 busier hardest 4: roundabout=max").hardest == 4);
  CHECK(read_part("30 hardest 4 any").roads == RoadsAllowed::any);
}

TEST_CASE("a part is written as it is read", "[wish][parts]") {
  for (const char* text : {"20", "20 quiet", "30 busier hardest 4: roundabout=max, signals:right=2",
                           "12: bus-lane:usable=1", "9 hardest 2"})
    CHECK(write_part(read_part(text)) == text);
}

TEST_CASE("a part that can't be meant is refused plainly", "[wish][parts]") {
  CHECK_THROWS_WITH(read_part(""),
                    "a part begins with its minutes, such as '20 quiet: turn-off:left=3', not ''");
  CHECK_THROWS_WITH(read_part("roundabout:right=3"),
                    "a part begins with its minutes, such as '20 quiet: turn-off:left=3', not "
                    "'roundabout'");
  CHECK_THROWS_WITH(read_part("2"), "the minutes of a part are 3 to 600, not '2'");
  CHECK_THROWS_WITH(read_part("20 leafy"),
                    "of a part's roads there is no 'leafy'; they are any, quiet or busier, and "
                    "'hardest 3' may stand behind");
  CHECK_THROWS_WITH(read_part("20 hardest 6"),
                    "the hardest of a part is 1 to 5, such as '20 quiet hardest 3', not '6'");
  CHECK_THROWS_WITH(read_part("20 hardest"),
                    "the hardest of a part is 1 to 5, such as '20 quiet hardest 3'");
  CHECK_THROWS_WITH(read_part("20 quiet:"),
                    "behind the colon of a part stands what to practise: '20 quiet:'");
  CHECK_THROWS_AS(read_part("20: roundabuot"), UsageError);
}

/// A loop of four rows a minute each, with a pass that begins and ends where it is told to.
Loop with_pass(std::size_t first, std::size_t last, int hardness) {
  Loop loop;
  for (int row = 0; row < 10; ++row) {
    LoopStretch stretch;
    stretch.arrive_s.likely = 60.0 * row;
    loop.stretches.push_back(stretch);
  }
  loop.seconds.likely = 600;
  Pass pass;
  pass.kind = road::Kind::crossroads;
  pass.first = first, pass.last = last, pass.hardness = hardness;
  loop.passes = {pass};
  return loop;
}

TEST_CASE("the ramp holds for what begins early and what ends late", "[wish][parts]") {
  const Ramp ramp{0.2, 0.1, 2, 2};
  CHECK(off_ramp(with_pass(0, 1, 2), ramp).empty());
  CHECK(off_ramp(with_pass(0, 1, 3), ramp).size() == 1);
  CHECK(off_ramp(with_pass(1, 2, 3), ramp).empty());  // begins at the end of the first fifth
  CHECK(off_ramp(with_pass(7, 8, 5), ramp).empty());
  CHECK(off_ramp(with_pass(8, 9, 3), ramp).empty());  // is over where the last tenth begins
}

TEST_CASE("the ramp is of what the learner drives", "[wish][parts]") {
  Loop loop = with_pass(0, 1, 5);
  loop.practice = {2, 9};
  CHECK(off_ramp(loop, {0.2, 0.1, 2, 2}).empty());
}

}  // namespace
}  // namespace loopwright::wish
