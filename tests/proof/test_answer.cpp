#include <catch2/catch.hpp>

#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;
using road::Kind;
using road::Movement;
using wish::Answer;
using wish::Missing;
using wish::Want;
using wish::Wish;

namespace {

const Want three_roundabouts{Kind::roundabout, Movement::none, 3};

/// A lesson that falls two roundabouts short, and says so.
Answer short_of_roundabouts(const BuiltTown& town) {
  Wish wish;
  wish.wants = {three_roundabouts};
  Answer answer = true_answer(town, "ABrstuLWZAB", wish);
  answer.shortfall.emplace().why = "1 of 3 roundabout found";
  Missing missing;
  missing.want = three_roundabouts;
  missing.got = 1;
  missing.why = "1 of 3 roundabout found";
  missing.nearest = OsmObject{3, ObjectType::way, {}};
  missing.nearest_minutes = 1;
  missing.needs_minutes = 3;
  answer.shortfall->missing = {missing};
  return answer;
}

template <class Lie>
std::string shortfall_with(Lie&& lie) {
  const BuiltTown town = lesson_town();
  Answer answer = short_of_roundabouts(town);
  lie(answer);
  return falsehood(town, answer);
}

}  // namespace

TEST_CASE("no loops and no reason are told", "[proof]") {
  CHECK(lesson_with([](Answer& answer) { answer.loops.clear(); }) ==
        "loops: there are 0 of 1 asked, and nothing says why");
  CHECK(lesson_with([](Answer& answer) {
          answer.loops.clear(), answer.fewer_because = "it rained";
        }) == "loops: there are none, and no shortfall");
}

TEST_CASE("a file made from another area is told", "[proof]") {
  CHECK(lesson_with([](Answer& answer) { answer.area.id = "0123abcd"; }) ==
        "area, id: the file says '0123abcd', the area says ''");
  CHECK(lesson_with([](Answer& answer) { answer.area.region = "GB-WLS"; }) ==
        "area, region: the file says 'GB-WLS', the area says 'GB-ENG'");
  CHECK(lesson_with([](Answer& answer) { answer.area.side = "right"; }) ==
        "area, side: the file says 'right', the area says 'left'");
  CHECK(lesson_with([](Answer& answer) {
          answer.area.map_timestamp = "2020-01-01T00:00:00Z";
        }).starts_with("area, map timestamp: the file says '2020-01-01T00:00:00Z'"));
}

TEST_CASE("a level there is none of is told", "[proof]") {
  CHECK(lesson_with([](Answer& answer) { answer.wish.level = 9; }) == "wish: there is no level 9");
}

TEST_CASE("loops that are wrongly numbered, or more than asked, are told", "[proof]") {
  CHECK(lesson_with([](Answer& answer) { answer.loops[0].id = 2; }) ==
        "loops, id of number 0: the file says '2', the area says '1'");
  CHECK(lesson_with([](Answer& answer) {
          answer.loops.push_back(answer.loops[0]);
          answer.loops[1].id = 2;
        }) == "loops: there are 2, asked were 1");
}

TEST_CASE("two loops along the same roads are told", "[proof]") {
  CHECK(lesson_with([](Answer& answer) {
          answer.wish.alternatives = 2;
          answer.loops.push_back(answer.loops[0]);
          answer.loops[1].id = 2;
        }) == "loop 2: it shares 6.1 m of 6.1 m with loop 1, not less than 40.0 %");
}

TEST_CASE("fewer loops than asked without a reason are told", "[proof]") {
  CHECK(lesson_with([](Answer& answer) { answer.wish.alternatives = 3; }) ==
        "loops: there are 1 of 3 asked, and nothing says why");
  CHECK(lesson_with([](Answer& answer) {
          answer.wish.alternatives = 3;
          answer.fewer_because = "further loops share 40 % or more of their road with these";
        }) == "");
}

TEST_CASE("a true shortfall is believed", "[proof]") {
  CHECK(shortfall_with([](Answer&) {}) == "");
}

TEST_CASE("a want that falls short without a word is told", "[proof]") {
  CHECK(shortfall_with([](Answer& answer) { answer.shortfall.reset(); }) ==
        "loop 1: it has 1 of roundabout=3, and the shortfall doesn't say so");
  CHECK(shortfall_with([](Answer& answer) { answer.shortfall->missing.clear(); }) ==
        "loop 1: it has 1 of roundabout=3, and the shortfall doesn't say so");
}

TEST_CASE("a better start that is the start asked, or hours away, is told", "[proof]") {
  const auto with_start = [](std::int64_t later_s) {
    return shortfall_with([&](Answer& answer) {
      answer.shortfall->better_starts = {answer.wish.start.plus_seconds(later_s)};
    });
  };
  CHECK(with_start(3600) == "");
  CHECK_THAT(with_start(0), Catch::StartsWith("shortfall: the better start "));
  CHECK_THAT(with_start(5 * 3600), Catch::StartsWith("shortfall: the better start "));
}

TEST_CASE("a shortfall without a reason is told", "[proof]") {
  CHECK(shortfall_with([](Answer& answer) { answer.shortfall->why.clear(); }) ==
        "shortfall: it gives no reason");
}

TEST_CASE("a shortfall of what wasn't asked for, or is enough, is told", "[proof]") {
  CHECK(shortfall_with([](Answer& answer) {
          answer.shortfall->missing.push_back(answer.shortfall->missing[0]);
          answer.shortfall->missing[1].want.kind = Kind::zebra;
        }) == "shortfall, zebra=3: the wish doesn't ask for it");
  CHECK(shortfall_with([](Answer& answer) { answer.shortfall->missing[0].got = 3; }) ==
        "shortfall, roundabout=3: 3 got is enough");
  CHECK(shortfall_with([](Answer& answer) { answer.shortfall->missing[0].got = 2; }) ==
        "shortfall, roundabout=3: loop 1 has 1");
  CHECK(lesson_with(
            [](Answer& answer) {
              answer.shortfall.emplace().why = "none";
              answer.shortfall->missing.push_back({answer.wish.wants[0], 0, "none", {}, {}, {}});
            },
            [] {
              Wish wish;
              wish.wants = {{Kind::roundabout, Movement::none, 1}};
              return wish;
            }()) == "shortfall, roundabout=1: loop 1 has 1");
}

TEST_CASE("a nearest chance that is none is told", "[proof]") {
  CHECK(shortfall_with([](Answer& answer) { answer.shortfall->missing[0].nearest->id = 7; }) ==
        "shortfall, roundabout=3: the nearest, way 7, is none of the area's");
}

TEST_CASE("a map that is said to have none though it has some is told", "[proof]") {
  CHECK(shortfall_with([](Answer& answer) {
          answer.shortfall->missing[0].nearest.reset();
          answer.shortfall->missing[0].why = "the map has no roundabout in this area";
        }) == "shortfall, roundabout=3: the area has some");
}

TEST_CASE("minutes there and home that are fewer than those there are told", "[proof]") {
  CHECK(shortfall_with([](Answer& answer) { answer.shortfall->missing[0].nearest_minutes = 9; }) ==
        "shortfall, roundabout=3: 9.0 min there can't be part of 3.0 min there and home");
}

TEST_CASE("a better start is within four hours, before or after", "[proof]") {
  const auto with_start = [](std::int64_t later_s) {
    return shortfall_with([&](Answer& answer) {
      answer.shortfall->better_starts = {answer.wish.start.plus_seconds(later_s)};
    });
  };
  for (const std::int64_t edge_s : {4 * 3600, -4 * 3600, 1, -1}) CHECK(with_start(edge_s) == "");
  CHECK(with_start(4 * 3600 + 1) ==
        "shortfall: the better start 2026-11-28T19:00:01+00:00 isn't within four hours of "
        "2026-11-28T15:00:00+00:00");
  CHECK_THAT(with_start(-4 * 3600 - 1), Catch::StartsWith("shortfall: the better start "));
}

TEST_CASE("levels are 1 to 5, and a pace that of learners", "[proof]") {
  const auto with_level = [](int level) {
    return lesson_with([&](Answer& answer) { answer.wish.level = level; });
  };
  for (const int level : {0, 6})
    CHECK(with_level(level) == "wish: there is no level " + std::to_string(level));
  for (const int level : {1, 5})
    CHECK(with_level(level).find("there is no level") == std::string::npos);
  const auto with_pace = [](double pace) {
    return lesson_with([&](Answer& answer) { answer.wish.pace = pace; });
  };
  for (const double pace : {0.79, 1.61})
    CHECK(with_pace(pace) == "wish: there is no pace " + std::to_string(pace));
  for (const double pace : {0.8, 1.6})
    CHECK(with_pace(pace).find("there is no pace") == std::string::npos);
}

// The share: DECISIONS, "Alternatives". By way and direction, 500 m at either end exempt.
TEST_CASE("alternatives share less than 40 % of the shorter one's middle", "[proof]") {
  // Home lies in the middle of HA, 500 m from A: all that lies behind A counts. AB is 1 km, BC 500 m.
  const BuiltTown town = built_town(draw_town("H A B E\n. D C F\n. G I J\n"
                                              "w1 HA highway=tertiary\nw2 AB highway=tertiary\n"
                                              "w3 BC highway=tertiary\nw4 CD highway=tertiary\n"
                                              "w5 DA highway=tertiary\nw6 BE highway=tertiary\n"
                                              "w7 EF highway=tertiary\nw8 FC highway=tertiary\n"
                                              "w9 DG highway=tertiary\nw10 GI highway=tertiary\n"
                                              "w11 IC highway=tertiary\n"
                                              "w12 FJ highway=tertiary\nw13 JI highway=tertiary\n",
                                              500),
                                    "GB-ENG");
  const auto both = [&](std::string_view one, std::string_view other) {
    Answer answer = own_drive(town, one);
    answer.wish.alternatives = 2;
    answer.loops.push_back(true_loop(town, other, answer.wish));
    answer.loops[1].id = 2;
    return falsehood(town, answer);
  };
  CHECK_THAT(both("HABCDAH", "HABCDAH"), Catch::StartsWith("loop 2: it shares "));
  CHECK(both("HABCDAH", "HADCBAH") == "");  // the same road, the other way
  CHECK(both("HABCDAH", "HABCIGDAH") ==
        "loop 2: it shares 2000.0 m of 3000.1 m with loop 1, not less than 40.0 %");
  // Of the longer one it would be a quarter.
  CHECK(both("HABCDAH", "HABEFCIGDAH") ==
        "loop 2: it shares 1500.0 m of 3000.1 m with loop 1, not less than 40.0 %");
  CHECK(both("HABEFCIGDAH", "HABCDAH") ==
        "loop 2: it shares 1500.0 m of 3000.1 m with loop 1, not less than 40.0 %");
  // 1500 m of 4000 m: 37.5 %.
  CHECK(both("HABEFCDAH", "HABCIGDAH") == "");
}
