// What must hold of any answer to any wish in any town: it is proved, lies within its minutes, is the same when
// asked again, and comes back from its file as it was.
#include <array>
#include <catch2/catch.hpp>

#include "find/answer_of.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/proof/proof.hpp"
#include "support/built_town.hpp"
#include "support/random_town.hpp"

namespace loopwright::test {
namespace {

constexpr int wishes = 40;
constexpr std::array wants{"turn-off:left=1", "turn-off:right=2", "emerge=2",
                           "emerge:left=1",   "crossroads=1",     "crossroads:right=1",
                           "twenty-limit=1",  "limit-change=2",   "turn-off=max",
                           "crossroads=max",  "roundabout=1"};

struct AnyWish {
  explicit AnyWish(std::uint64_t seed) : dice(seed) {
    wish.home = any_place();
    wish.start =
        setting.on_clock({1795878000 + 60 * static_cast<std::int64_t>(dice.below(100'000)), 0});
    wish.minutes = 8 + static_cast<int>(dice.below(20));
    wish.alternatives = 1 + static_cast<int>(dice.below(3));
    wish.wants.push_back(wish::read_want(wants[dice.below(wants.size())]));
    if (dice.below(2) == 0) wish.reserve_minutes = static_cast<int>(dice.below(3));
    if (dice.below(3) == 0) wish.end = any_place();
  }
  /// The end of a road that a learner may drive.
  Point any_place() {
    for (;;) {
      const StretchId stretch{dice.below(roads.stretch_count())};
      if (roads.drivable(stretch)) return roads.nodes[roads.to_node(stretch).index()].at;
    }
  }

  Dice dice;
  std::string drawing = random_town(dice);
  BuiltTown town = built_town(draw_town(drawing, 100), "GB-ENG");
  road::Roads roads = town.roads();
  hours::Setting setting = setting_of(roads);
  wish::Wish wish;

  [[nodiscard]] wish::Answer answer() const {
    return answer_of(roads, wish, find::find_loops(roads, wish, setting));
  }
};

}  // namespace

TEST_CASE("any answer is proved, in its minutes, or says what falls short", "[find]") {
  const AnyWish any(static_cast<std::uint64_t>(GENERATE(range(1, wishes))));
  INFO(any.drawing);
  const wish::Answer answer = any.answer();
  CHECK(proof::prove(any.roads, answer, any.setting).false_claim.value_or("") == "");
  CHECK((answer.shortfall || !answer.loops.empty()));
  for (const wish::Loop& loop : answer.loops) {
    const double most_s = 60.0 * (*any.wish.minutes - any.wish.reserve_minutes);
    CHECK(loop.seconds.likely + loop.stop_seconds <= most_s);
    CHECK(loop.seconds.low <= loop.seconds.likely);
    CHECK(loop.seconds.likely <= loop.seconds.high);
    if (!answer.shortfall)
      for (const wish::Met& met : loop.met) CHECK(met.got >= met.want.count.value_or(0));
  }
}

TEST_CASE("any wish has the same answer when it is asked again", "[find]") {
  const AnyWish any(static_cast<std::uint64_t>(GENERATE(range(1, wishes / 2))));
  CHECK(file::write_answer(any.answer()) == file::write_answer(any.answer()));
}

TEST_CASE("any answer comes back from its file, and is written the same again", "[find]") {
  const AnyWish any(static_cast<std::uint64_t>(GENERATE(range(1, wishes / 2))));
  const std::string text = file::write_answer(any.answer());
  const wish::Answer read = file::read_answer(text, "loops.json");
  CHECK(file::write_answer(read) == text);
}

}  // namespace loopwright::test
