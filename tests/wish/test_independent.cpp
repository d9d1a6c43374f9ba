// How a direction is told in advance, and what a variant of a loop must meet.
#include "loopwright/wish/independent.hpp"

#include <catch2/catch.hpp>

#include "loopwright/wish/variant.hpp"

namespace loopwright::test {
namespace {

using wish::direction_text;

TEST_CASE("a direction names the street, the exit or the end of the road", "[wish][independent]") {
  CHECK(direction_text({.angle_deg = -90, .street = "Mill Road"}) == "turn left into Mill Road");
  CHECK(direction_text({.angle_deg = 30, .street = "Mill Road"}) == "bear right into Mill Road");
  CHECK(direction_text({.angle_deg = 5, .street = "Mill Road"}) ==
        "follow the road ahead into Mill Road");
  CHECK(direction_text({.road_ends = true, .angle_deg = 80}) ==
        "at the end of the road turn right");
  CHECK(direction_text({.roundabout = true, .exit = 3, .street = "A7904"}) ==
        "at the roundabout take the third exit into A7904");
  CHECK(direction_text({.mini = true, .exit = 1, .back = true}) ==
        "at the mini-roundabout take the first exit");
  CHECK(direction_text({.roundabout = true, .exit = 12}) ==
        "at the roundabout take exit number 12");
  CHECK(direction_text({.mini = true, .angle_deg = 90, .street = "Hay Street"}) ==
        "at the mini-roundabout turn right into Hay Street");
}

TEST_CASE("what nobody could find in advance is no direction", "[wish][independent]") {
  CHECK(direction_text({.angle_deg = -90}) == "");
  CHECK(direction_text({.angle_deg = -90, .street = "High Street", .same_street = true}) == "");
  CHECK(direction_text({.angle_deg = -90, .street = "Mill Road", .met_before = true}) == "");
  CHECK(direction_text({.back = true, .street = "High Street"}) == "");
  CHECK(direction_text({.roundabout = true}) == "");
}

wish::Loop loop_with(std::initializer_list<int> hardness) {
  wish::Loop loop;
  loop.id = 1;
  for (const int hard : hardness) {
    wish::Pass pass;
    pass.hardness = hard;
    loop.passes.push_back(pass);
  }
  wish::Pass signs;  // a matter of choice, it keeps no beginner away
  signs.kind = road::Kind::independent_stretch;
  signs.hardness = 5;
  loop.passes.push_back(signs);
  return loop;
}

std::optional<int> hardest_of(const wish::Wish& wish, const wish::Loop& first,
                              std::string_view variant) {
  const auto other = wish::variant_wish(wish, first, variant, 1);
  return other ? other->hardest : std::nullopt;
}

TEST_CASE("how hard a loop is: the hardest pass, then how often", "[wish][variant]") {
  CHECK(wish::hardness_of(loop_with({2, 4, 3, 4})) == wish::Hardness{4, 2});
  CHECK(wish::hardness_of(loop_with({})) == wish::Hardness{0, 0});
  CHECK(wish::hardness_of(loop_with({4})) < wish::hardness_of(loop_with({4, 4})));
  CHECK(wish::hardness_of(loop_with({3, 3, 3})) < wish::hardness_of(loop_with({4})));
}

TEST_CASE("an easier variant has nothing above a grade below the first loop", "[wish][variant]") {
  CHECK(hardest_of({}, loop_with({2, 4}), "easier") == 3);
  CHECK(hardest_of({}, loop_with({1}), "easier") == std::nullopt);
  CHECK(wish::variant_wish({}, loop_with({1}), "easier", 1) == std::nullopt);
}

TEST_CASE("a harder variant may have a grade above what the wish allows", "[wish][variant]") {
  wish::Wish wish;
  CHECK(hardest_of(wish, loop_with({2}), "harder") == 5);
  wish.hardest = 3;
  CHECK(hardest_of(wish, loop_with({2}), "harder") == 4);
  wish.level = 1, wish.level_given = true;
  CHECK(hardest_of(wish, loop_with({2}), "harder") == 3);
  // What was asked for by name may be harder than the level allows, and stays allowed.
  CHECK(hardest_of(wish, loop_with({5}), "harder") == 5);
  CHECK_FALSE(wish::variant_wish(wish, loop_with({2}), "harder", 1)->level_given);
  CHECK(wish::variant_wish(wish, loop_with({2}), "easier", 1)->level_given);
}

TEST_CASE("a variant says how it differs from the first loop", "[wish][variant]") {
  wish::Answer answer;
  answer.loops = {loop_with({2, 4}), loop_with({2, 3}), loop_with({4, 4, 4}), loop_with({5})};
  answer.loops[1].variant = "easier", answer.loops[2].variant = answer.loops[3].variant = "harder";
  CHECK(wish::variant_words(answer, answer.loops[0]) == "");
  CHECK(wish::variant_words(answer, answer.loops[1]) ==
        "easier than loop 1: nothing above hardness 3");
  CHECK(wish::variant_words(answer, answer.loops[2]) ==
        "harder than loop 1: 3 passes of hardness 4, not 1");
  CHECK(wish::variant_words(answer, answer.loops[3]) ==
        "harder than loop 1: hardness up to 5, not 4");
}

}  // namespace
}  // namespace loopwright::test
