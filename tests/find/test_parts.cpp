// Lessons in parts, easy first, and with roads that the instructor drives. Each is written, read again and proved.
#include <catch2/catch.hpp>

#include <algorithm>

#include "find/crossing_lesson.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/card/card.hpp"
#include "loopwright/road/kind_table.hpp"
#include "loopwright/wish/asked.hpp"
#include "loopwright/wish/learners_drive.hpp"
#include "loopwright/wish/parts.hpp"
#include "loopwright/wish/resolve.hpp"

namespace loopwright::test {
namespace {

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using wish::RowSpan;

wish::Wish lesson(std::initializer_list<std::string_view> parts, int minutes) {
  wish::Wish wish = crossing_wish(town(), minutes, {});
  for (const std::string_view part : parts) wish.parts.push_back(wish::read_part(part));
  return wish;
}

wish::Answer proved(const wish::Wish& wish) {
  wish::Answer answer = answer_in(town(), wish);
  CHECK(false_claim_in(town(), answer) == "");
  return answer;
}

Point at(char letter) {
  const road::Roads roads = town().roads();
  return roads.nodes[town().node(letter).index()].at;
}

Point between(char one, char other) {
  const Point a = at(one), b = at(other);
  return {a.lat_e7 / 2 + b.lat_e7 / 2, a.lon_e7 / 2 + b.lon_e7 / 2};
}

bool is_quiet(const wish::LoopStretch& row) {
  const road::Roads roads = town().roads();
  return (roads.piece(wish::find_stretch(roads, row)).flags & road::piece_flag::quiet) != 0;
}

double minutes_of(const wish::Loop& loop, std::size_t part) {
  return wish::driven_s(loop, wish::rows_of(loop.parts[part])) / 60;
}

TEST_CASE("a lesson of one part is that part", "[find][parts]") {
  const wish::Answer answer = proved(lesson({"20: roundabout=2"}, 20));
  REQUIRE(answer.loops.size() == 1);
  const wish::Loop& loop = answer.loops[0];
  CHECK_FALSE(answer.shortfall);
  REQUIRE(loop.parts.size() == 1);
  CHECK(wish::rows_of(loop.parts[0]) == RowSpan{0, loop.stretches.size() - 1});
  CHECK(loop.parts[0].met.at(0).got >= 2);
  CHECK(loop.met.empty());
  CHECK_FALSE(loop.practice);
}

TEST_CASE("parts follow each other, each with its minutes, its roads and what it is for",
          "[find][parts]") {
  const wish::Answer answer = proved(lesson({"5 quiet: turn-off:left=1", "15: roundabout=2"}, 20));
  INFO((answer.shortfall ? answer.shortfall->why : std::string()));
  REQUIRE(answer.loops.size() == 1);
  const wish::Loop& loop = answer.loops[0];
  CHECK_FALSE(answer.shortfall);
  REQUIRE(loop.parts.size() == 2);
  CHECK(loop.parts[1].first == loop.parts[0].last + 1);
  CHECK(minutes_of(loop, 0) >= 3);
  CHECK(minutes_of(loop, 0) <= 5.01);
  for (std::size_t row = loop.parts[0].first; row <= loop.parts[0].last; ++row)
    CHECK(is_quiet(loop.stretches[row]));
  CHECK(loop.parts[0].met.at(0).got >= 1);
  CHECK(loop.parts[1].met.at(0).got >= 2);
  CHECK(loop.certificate.state == "searched");
  CHECK_FALSE(loop.certificate.bound);
}

TEST_CASE("the last part takes what the minutes leave", "[find][parts]") {
  const wish::Answer answer = proved(lesson({"8", "8: mini-roundabout=1"}, 30));
  REQUIRE(answer.loops.size() == 1);
  CHECK(minutes_of(answer.loops[0], 0) <= 8.1);
  CHECK(minutes_of(answer.loops[0], 1) >= 20);
}

TEST_CASE("a part as many as fit names the passes it is practised by", "[find][parts]") {
  const wish::Answer answer = proved(lesson({"10", "15: roundabout=max"}, 25));
  REQUIRE(answer.loops.size() == 1);
  const wish::Met& met = answer.loops[0].parts.at(1).met.at(0);
  REQUIRE(met.practised);
  CHECK(met.practised->size() >= 2);
  CHECK(answer.loops[0].certificate.value > 1000);
}

TEST_CASE("nothing in a part is harder than it allows", "[find][parts]") {
  const wish::Answer answer = proved(lesson({"6 hardest 3", "15: level-crossing=1"}, 21));
  REQUIRE(answer.loops.size() == 1);
  const wish::Loop& loop = answer.loops[0];
  for (const wish::Pass& pass : loop.passes)
    if (wish::touches(pass, wish::rows_of(loop.parts[0]))) CHECK(pass.hardness <= 3);
}

TEST_CASE("a part that can't be driven is named", "[find][parts]") {
  // Quiet streets are driven twice at most, and there aren't so many.
  const wish::Answer answer = proved(lesson({"150 quiet", "10"}, 160));
  CHECK(answer.loops.empty());
  REQUIRE(answer.shortfall);
  CHECK_THAT(
      answer.shortfall->why,
      StartsWith("no drive of about 150 minutes on quiet streets alone was found for part 1"));
}

TEST_CASE("what a part lacks is told with its number", "[find][parts]") {
  const wish::Answer answer = proved(lesson({"8", "10: level-crossing=9"}, 18));
  REQUIRE(answer.shortfall);
  REQUIRE(answer.shortfall->missing.size() == 1);
  CHECK_THAT(answer.shortfall->missing[0].why, StartsWith("part 2: "));
}

TEST_CASE("what the instructor drives counts for nothing", "[find][parts]") {
  wish::Wish wish = crossing_wish(town(), 30, {"roundabout=1", "mini-roundabout=1"});
  wish.drive_out = between('O', 'P');
  wish.drive_back = between('D', 'H');
  const wish::Answer answer = proved(wish);
  REQUIRE(answer.loops.size() == 1);
  const wish::Loop& loop = answer.loops[0];
  REQUIRE(loop.practice);
  const auto [first, last] = *loop.practice;
  CHECK(loop.stretches.at(first - 1).street == "South Street");
  CHECK(loop.stretches.at(last + 1).street == "East Way");
  const auto practised =
      std::ranges::count_if(loop.passes, [&, span = wish::practice_of(loop)](const auto& pass) {
        return pass.kind == road::Kind::mini_roundabout && wish::lies_in(pass, span) &&
               pass.movement != road::Movement::round;
      });
  CHECK(loop.met.at(1).got == practised);
  CHECK((loop.seconds.likely + loop.stop_seconds) / 60 <= 30.01);
}

TEST_CASE("what is too hard for the level is kept off the learner's roads alone", "[find][parts]") {
  const auto hardest = [](const wish::Loop& loop) {
    int most = 0;
    for (const wish::Pass& pass : loop.passes)
      if (wish::touches(pass, wish::practice_of(loop)) && !road::is_of_choice(pass.kind))
        most = std::max(most, pass.hardness);
    return most;
  };
  for (const int most : {3, 4}) {
    wish::Wish wish = crossing_wish(town(), 30, {"turn-off=2"});
    wish.drive_out = between('O', 'P');
    wish.drive_back = between('D', 'H');
    wish.hardest = most;
    const wish::Answer answer = proved(wish);
    INFO(most << ": " << (answer.shortfall ? answer.shortfall->why : std::string()));
    REQUIRE(answer.loops.size() == 1);
    CHECK(hardest(answer.loops[0]) <= most);
  }
}

TEST_CASE("a card begins where the learner takes the wheel, with the kerb and the minute",
          "[find][parts]") {
  wish::Wish wish = crossing_wish(town(), 30, {"turn-off=2"});
  wish.drive_out = between('O', 'P');
  wish.drive_back = between('D', 'H');
  const road::Roads roads = town().roads();
  wish::Answer answer = proved(wish);
  REQUIRE(answer.loops.size() == 1);
  wish::Loop& loop = answer.loops[0];
  wish::resolve(roads, loop);
  const std::string card = card::write_text({roads, answer, loop, setting_of(roads)});
  INFO(card);
  CHECK_THAT(card, Contains("\nYou drive to South Street: "));
  CHECK_THAT(card, Contains("\nCHANGE OVER in South Street, about 15:0"));
  CHECK_THAT(card, Contains("  1  Leave South Street towards "));
  CHECK_THAT(card, Contains("limit 30"));
  CHECK_THAT(card, Contains("\nCHANGE OVER in East Way, about 15:"));
  CHECK_THAT(card, Contains("\nYou drive back from East Way: "));
  CHECK_THAT(card, Contains("; the learner drives "));

  const wish::LearnersDrive own = wish::learners_drive(roads, answer.wish, loop);
  CHECK(own.before == loop.practice->at(0) - 1);
  CHECK(own.loop.stretches.size() == loop.practice->at(1) - loop.practice->at(0) + 3);
  CHECK(own.loop.metres < loop.metres);
  CHECK(own.loop.passes.size() < loop.passes.size());
  // What counts is counted as before, and nothing on the instructor's roads.
  const auto count = [&](const wish::Loop& of) {
    std::ptrdiff_t n = 0;
    for (std::size_t i = 0; i < of.passes.size(); ++i)
      if (wish::lies_in(of.passes[i], wish::practice_of(of)) &&
          wish::counts_for(i, of.passes, wish.wants[0]))
        ++n;
    return n;
  };
  CHECK(count(own.loop) == count(loop));
  // The learner takes the wheel within the stretch of the place, and gives it back so.
  const double begins_s = own.loop.stretches.front().arrive_s.likely;
  CHECK(begins_s >= wish::begins_s(loop, loop.practice->at(0) - 1));
  CHECK(begins_s <= wish::begins_s(loop, loop.practice->at(0)));
  const double ends_s = wish::begins_s(own.loop, own.loop.stretches.size());
  CHECK(ends_s >= wish::begins_s(loop, loop.practice->at(1) + 1));
  CHECK(ends_s <= wish::begins_s(loop, loop.practice->at(1) + 2));
}

TEST_CASE("the instructor's drive is a line of the card", "[find][parts]") {
  wish::Wish wish = lesson({"6", "10: roundabout=1"}, 30);
  wish.drive_out = between('O', 'P');
  const road::Roads roads = town().roads();
  wish::Answer answer = proved(wish);
  REQUIRE(answer.loops.size() == 1);
  wish::resolve(roads, answer.loops[0]);
  const std::string card = card::write_text({roads, answer, answer.loops[0], setting_of(roads)});
  CHECK_THAT(card, Contains("\nYou drive to South Street: "));
  CHECK_THAT(card, Contains("\nPART 1: "));
  CHECK_THAT(card, Contains("\nPART 2: "));
  CHECK_THAT(card, Contains("Goal: 2 parts, in order"));
}

TEST_CASE("a place to change seats that is the door itself is refused", "[find][parts]") {
  wish::Wish wish = crossing_wish(town(), 20, {});
  wish.drive_out = wish.home;
  CHECK_THROWS_WITH(find::find_loops(town().roads(), wish, {}),
                    "--drive-out lies where the lesson begins anyway; leave it out");
}

TEST_CASE("a lesson is easy first, or says what isn't", "[find][parts]") {
  wish::Wish wish = crossing_wish(town(), 25, {"roundabout=1", "level-crossing=1"});
  wish.easy_first = true;
  const wish::Answer answer = proved(wish);
  REQUIRE(answer.loops.size() == 1);
  const bool easy = wish::off_ramp(answer.loops[0], {0.2, 0.1, 3, 3}).empty();
  CHECK(easy != (answer.shortfall && answer.shortfall->why.starts_with("not easy as asked: ")));
}

}  // namespace
}  // namespace loopwright::test
