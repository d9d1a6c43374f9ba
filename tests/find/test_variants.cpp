// An easier and a harder variant of the first loop (DEVELOPERS.md, Variants).
#include "loopwright/wish/variant.hpp"

#include <catch2/catch.hpp>

#include "find/answer_of.hpp"
#include "find/crossing_lesson.hpp"
#include "loopwright/card/card.hpp"
#include "loopwright/wish/resolve.hpp"

namespace loopwright::test {
namespace {

using Catch::Matchers::Contains;

wish::Answer with_variants(const wish::Wish& wish) {
  const road::Roads roads = town().roads();
  const hours::Setting setting = setting_of(roads);
  find::FindResult found = find::find_loops(roads, wish, setting);
  find::add_variants(roads, wish, setting, find::Effort::quick, found);
  const wish::Answer answer = test::answer_of(roads, wish, std::move(found));
  return file::read_answer(file::write_answer(answer), "drawn.json");
}

const wish::Loop* variant_of(const wish::Answer& answer, std::string_view variant) {
  for (const wish::Loop& loop : answer.loops)
    if (loop.variant == variant) return &loop;
  return nullptr;
}

TEST_CASE("an easier variant keeps below the first loop, or says what stands in the way",
          "[find][variant]") {
  for (const char* want : {"roundabout=1", "level-crossing=1", "emerge=2", "narrow-road=1"}) {
    const auto answer = with_variants(crossing_wish(town(), 20, {want}));
    REQUIRE(!answer.loops.empty());
    CHECK(false_claim_in(town(), answer) == "");
    const int hardest = wish::hardness_of(answer.loops[0]).hardest;
    if (const wish::Loop* easier = variant_of(answer, "easier"))
      CHECK(wish::hardness_of(*easier).hardest < hardest);
    else
      CHECK_THAT(answer.fewer_because, Contains("no easier loop: "));
  }
}

TEST_CASE("a harder variant is harder, within a grade above what the wish allows",
          "[find][variant]") {
  for (const int allowed : {3, 4}) {
    wish::Wish wish = crossing_wish(town(), 20, {"emerge=2"});
    wish.hardest = allowed;
    const auto answer = with_variants(wish);
    if (answer.loops.empty()) continue;
    CHECK(false_claim_in(town(), answer) == "");
    if (const wish::Loop* harder = variant_of(answer, "harder")) {
      CHECK(wish::hardness_of(*harder) > wish::hardness_of(answer.loops[0]));
      CHECK(wish::hardness_of(*harder).hardest <= allowed + 1);
      CHECK(harder->certificate.state == "searched");
    } else {
      CHECK_THAT(answer.fewer_because, Contains("no harder loop: "));
    }
  }
}

TEST_CASE("a want that is harder stands in the way of an easier loop", "[find][variant]") {
  wish::Wish wish = crossing_wish(town(), 20, {"level-crossing=1"});
  const auto answer = with_variants(wish);
  REQUIRE(variant_of(answer, "easier") == nullptr);
  CHECK_THAT(answer.fewer_because, Contains("no easier loop: level-crossing=1 stands in the way of "
                                            "nothing above hardness "));
}

TEST_CASE("a loop that isn't as wished has no variants", "[find][variant]") {
  const auto answer = with_variants(crossing_wish(town(), 20, {"ford=1"}));
  CHECK(variant_of(answer, "easier") == nullptr);
  CHECK(variant_of(answer, "harder") == nullptr);
  CHECK_THAT(answer.fewer_because, Contains("variants are made of a loop that meets the wish"));
  CHECK(false_claim_in(town(), answer) == "");
}

TEST_CASE("variants don't count as alternatives", "[find][variant]") {
  wish::Wish wish = crossing_wish(town(), 20, {"roundabout=1"});
  wish.alternatives = 2;
  const auto answer = with_variants(wish);
  CHECK(false_claim_in(town(), answer) == "");
  int own = 0;
  for (const wish::Loop& loop : answer.loops) own += loop.variant.empty() ? 1 : 0;
  CHECK(own <= 2);
}

TEST_CASE("the sheet of a variant says so", "[card][variant]") {
  const auto answer = with_variants(crossing_wish(town(), 20, {"emerge=2"}));
  for (wish::Loop loop : answer.loops) {
    wish::resolve(town().roads(), loop);
    const std::string text =
        card::write_text({town().roads(), answer, loop, setting_of(town().roads())});
    CHECK((text.find(" than loop 1: ") != std::string::npos) == !loop.variant.empty());
  }
}

}  // namespace
}  // namespace loopwright::test
