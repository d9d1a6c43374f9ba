#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {
namespace {

using road::Kind;
using road::Movement;

TEST_CASE("a kind alone asks for one pass of it", "[wish]") {
  CHECK(read_want("roundabout") == Want{Kind::roundabout, Movement::none, 1});
}

TEST_CASE("a wish is a kind, perhaps a movement, perhaps a count", "[wish]") {
  CHECK(read_want("roundabout=3") == Want{Kind::roundabout, Movement::none, 3});
  CHECK(read_want("roundabout:right=3") == Want{Kind::roundabout, Movement::right, 3});
  CHECK(read_want("mini-roundabout:round") == Want{Kind::mini_roundabout, Movement::round, 1});
  CHECK(read_want("emerge:left=max") == Want{Kind::emerge, Movement::left, std::nullopt});
  CHECK(read_want("level-crossing=99").count == 99);
}

TEST_CASE("a wish reads as it was written", "[wish]") {
  for (const char* text : {"roundabout:right=3", "emerge=max", "zebra=1", "crossroads:ahead=12"}) {
    CHECK(write_want(read_want(text)) == text);
  }
}

TEST_CASE("an unknown kind is refused with the nearest there is", "[wish]") {
  CHECK_THROWS_WITH(read_want("roundabuot=3"),
                    "there is no practice kind 'roundabuot'; did you mean 'roundabout'?");
  CHECK_THROWS_WITH(read_want("ZEBRA"), "there is no practice kind 'ZEBRA'; did you mean 'zebra'?");
  CHECK_THROWS_WITH(read_avoid("motorways"),
                    "there is no practice kind 'motorways'; did you mean 'motorway'?");
  CHECK_THROWS_AS(read_want(""), UsageError);
}

TEST_CASE("a movement the kind doesn't have is refused with those it has", "[wish]") {
  CHECK_THROWS_WITH(
      read_want("roundabout:straight"),
      "'roundabout' has no movement 'straight'; choose one of left, ahead, right, round");
  CHECK_THROWS_WITH(read_want("emerge:ahead=2"),
                    "'emerge' has no movement 'ahead'; choose one of left, right");
  CHECK_THROWS_WITH(read_want("signals:"),
                    "'signals' has no movement ''; choose one of left, ahead, right");
  CHECK_THROWS_WITH(read_want("zebra:usable"), "'zebra' has no movements; leave out ':usable'");
}

TEST_CASE("a kind is avoided whole, or by one movement", "[wish]") {
  CHECK(read_avoid("signals") == Avoid{Kind::signals, Movement::none});
  CHECK(read_avoid("signals:right") == Avoid{Kind::signals, Movement::right});
  for (const char* text : {"signals", "signals:right", "roundabout:round"})
    CHECK(write_avoid(read_avoid(text)) == text);
  CHECK_THROWS_WITH(read_avoid("emerge:ahead"),
                    "'emerge' has no movement 'ahead'; choose one of left, right");
  CHECK_THROWS_WITH(read_avoid("zebra:left"), "'zebra' has no movements; leave out ':left'");
  CHECK_THROWS_WITH(read_avoid("zebra=2"),
                    Catch::StartsWith("there is no practice kind 'zebra=2'"));
}

TEST_CASE("what is avoided by one movement may be passed by another", "[wish]") {
  const Avoid right = read_avoid("roundabout:right");
  CHECK(is_avoided(right, Kind::roundabout, Movement::right));
  CHECK(is_avoided(right, Kind::multi_lane_roundabout, Movement::right));
  CHECK_FALSE(is_avoided(right, Kind::roundabout, Movement::left));
  CHECK_FALSE(is_avoided(right, Kind::mini_roundabout, Movement::right));
  CHECK(is_avoided(read_avoid("roundabout"), Kind::roundabout, Movement::round));
}

TEST_CASE("a bus lane is asked for by what holds on it", "[wish]") {
  CHECK(read_want("bus-lane:usable=2") == Want{Kind::bus_lane, Movement::none, 2, Verdict::usable});
  CHECK(read_want("bus-lane:in-force").verdict == Verdict::in_force);
  CHECK_FALSE(read_want("bus-lane").verdict);
  for (const char* text : {"bus-lane:usable=1", "bus-lane:in-force=max", "bus-lane=1"}) {
    CHECK(write_want(read_want(text)) == text);
  }
}

TEST_CASE("another word behind a bus lane is refused with those it has", "[wish]") {
  CHECK_THROWS_WITH(read_want("bus-lane:open"),
                    "'bus-lane' can't be asked for as 'open'; choose one of usable, in-force, or "
                    "leave out ':open'");
  CHECK_THROWS_WITH(read_want("bus-lane:left=2"),
                    "'bus-lane' can't be asked for as 'left'; choose one of usable, in-force, or "
                    "leave out ':left'");
}

TEST_CASE("a bus lane counts only with the verdict asked for", "[wish]") {
  Pass pass;
  pass.kind = Kind::bus_lane;
  const Want any = read_want("bus-lane"), usable = read_want("bus-lane:usable");
  CHECK_FALSE(counts_for(pass, usable));
  pass.verdict = Verdict::check_the_plate;
  CHECK(counts_for(pass, any));
  CHECK_FALSE(counts_for(pass, usable));
  pass.verdict = Verdict::usable;
  CHECK(counts_for(pass, usable));
  CHECK_FALSE(counts_for(pass, read_want("bus-lane:in-force")));
  CHECK(counts_for(Kind::bus_lane, Movement::none, usable));  // a chance: it may
}

TEST_CASE("a count that is none is refused", "[wish]") {
  for (const char* text :
       {"zebra=0", "zebra=", "zebra=-1", "zebra=many", "zebra=100", "zebra=1.5", "zebra=2=3"}) {
    CHECK_THROWS_WITH(read_want(text),
                      "the count in '" + std::string(text) + "' is not 1 to 99 or 'max'");
  }
}

TEST_CASE("two kinds may be joined with a plus", "[wish]") {
  const Want joined = read_want("turn-off:left+narrow-road=2");
  CHECK(joined == Want{Kind::turn_off, Movement::left, 2, {}, Kind::narrow_road});
  CHECK(read_want("emerge+roundabout").into == Kind::roundabout);
  for (const char* text : {"turn-off:left+narrow-road=2", "emerge+roundabout=max"}) {
    CHECK(write_want(read_want(text)) == text);
  }
}

TEST_CASE("a join of more than two kinds, or of what can't be joined, is refused", "[wish]") {
  CHECK_THROWS_WITH(read_want("emerge+zebra+signals=2"),
                    "more than two kinds joined with '+': 'emerge+zebra+signals'; join two, and "
                    "ask for the third by itself");
  CHECK_THROWS_WITH(read_want("emerge+turn-off:left"),
                    "nothing may follow the second kind of a join: leave out ':left'");
  CHECK_THROWS_WITH(read_want("turn-off+parallel-park"),
                    "'parallel-park' can't be joined with '+': a manoeuvre is a stop; ask for it "
                    "by itself");
  CHECK_THROWS_WITH(read_want("bay-park+zebra"),
                    "'bay-park' can't be joined with '+': a manoeuvre is a stop; ask for it by "
                    "itself");
  CHECK_THROWS_WITH(read_want("bus-lane:usable+zebra"),
                    "'bus-lane:usable' can't be joined with '+'; ask for it by itself");
  CHECK_THROWS_WITH(read_want("emerge+"),
                    Catch::StartsWith("there is no practice kind ''; did you mean "));
}

TEST_CASE("a refused argument exits with 2", "[wish]") {
  try {
    read_want("roundabuot");
    FAIL("was read");
  } catch (const Error& error) {
    CHECK(error.exit_code() == Exit::wrong_arguments);
  }
}

TEST_CASE("a special form counts for its kind, not the other way round", "[wish]") {
  const Want roundabout{Kind::roundabout, Movement::none, 1};
  CHECK(counts_for(Kind::signal_roundabout, Movement::left, roundabout));
  CHECK_FALSE(counts_for(Kind::mini_roundabout, Movement::left, roundabout));
  CHECK_FALSE(counts_for(Kind::narrow_road, Movement::none, {Kind::single_track}));
  CHECK(counts_for(Kind::single_track, Movement::none, {Kind::narrow_road}));
}

TEST_CASE("a movement asked for by name counts only itself", "[wish]") {
  const Want right{Kind::roundabout, Movement::right, 1};
  CHECK(counts_for(Kind::roundabout, Movement::right, right));
  CHECK_FALSE(counts_for(Kind::roundabout, Movement::left, right));
  CHECK_FALSE(counts_for(Kind::roundabout, Movement::round, right));
}

TEST_CASE("going all the way round counts only when asked for by name", "[wish]") {
  CHECK_FALSE(counts_for(Kind::roundabout, Movement::round, {Kind::roundabout}));
  CHECK_FALSE(counts_for(Kind::mini_roundabout, Movement::round, {Kind::mini_roundabout}));
  CHECK(counts_for(Kind::roundabout, Movement::round, {Kind::roundabout, Movement::round, 1}));
  Pass pass;
  pass.kind = Kind::multi_lane_roundabout;
  pass.movement = Movement::round;
  CHECK_FALSE(counts_for(pass, {Kind::roundabout}));
  CHECK(counts_for(pass, {Kind::roundabout, Movement::round, std::nullopt}));
}

TEST_CASE("verdicts on bus lanes read as they are written", "[wish]") {
  CHECK(name(Verdict::usable) == "usable");
  CHECK(name(Verdict::in_force) == "in force");
  CHECK(name(Verdict::check_the_plate) == "check the plate");
  CHECK(parse_verdict("in force") == Verdict::in_force);
  CHECK_FALSE(parse_verdict("open"));
}

}  // namespace
}  // namespace loopwright::wish
