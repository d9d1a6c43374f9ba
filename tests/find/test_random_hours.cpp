// Random wishes in a drawn town whose streets and turns have random hours, begun on days that are
// hard to tell: bank holidays, the nights in which the clocks are changed, school holidays and terms.
// What is driven is asked minute by minute, by the plain question of room hours for one minute, which
// neither search nor proof uses; and what the proof lets pass is asked likewise.
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <string>

#include "find/answer_of.hpp"
#include "loopwright/base/dice.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/hours/condition.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/proof/proof.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

constexpr std::array conditions{"Mo-Fr 08:15-09:15",
                                "Mo-Sa 07:00-10:00,16:00-19:00",
                                "Mo-Fr 08:15-09:15; SH off",
                                "Mo-Fr 08:00-09:30; PH off",
                                "01:00-02:00",
                                "00:30-01:30",
                                "22:00-02:00",
                                "SH Mo-Fr 10:00-16:00",
                                "PH 00:00-24:00",
                                "sunset-sunrise",
                                "Su,PH 08:00-12:00",
                                "07:00+",
                                "flashing",
                                "Oct 25 00:00-24:00",
                                "Mo-Fr 08:30-09:30 unknown",
                                "week 44-52 Mo-Fr 08:00-10:00"};

constexpr std::array streets{"w1",  "w3",  "w4",  "w8",  "w9",  "w11", "w12", "w14",
                             "w15", "w16", "w17", "w18", "w20", "w22", "w24"};

/// Moments near which something changes: a bank holiday of England and a day beside it, both nights
/// of the clocks, the last day of a term, the first of the holidays, an ordinary Monday.
constexpr std::array starts{
    CivilTime{{2026, 12, 25}, 8, 0, 0},  CivilTime{{2026, 12, 28}, 8, 10, 0},
    CivilTime{{2026, 5, 4}, 8, 5, 0},    CivilTime{{2026, 8, 31}, 9, 20, 0},
    CivilTime{{2026, 10, 25}, 0, 50, 0}, CivilTime{{2026, 10, 25}, 1, 40, 0},
    CivilTime{{2026, 3, 29}, 0, 40, 0},  CivilTime{{2026, 3, 29}, 2, 5, 0},
    CivilTime{{2026, 10, 23}, 8, 0, 0},  CivilTime{{2026, 10, 26}, 8, 5, 0},
    CivilTime{{2026, 11, 30}, 9, 0, 0},  CivilTime{{2026, 11, 29}, 23, 50, 0}};

std::string random_town(Dice& dice) {
  std::string drawing(crossing_streets);
  const int tagged = 1 + static_cast<int>(dice.below(9));
  for (int k = 0; k < tagged; ++k) {
    const std::string way = std::string("  ") + streets[dice.below(streets.size())] + " ";
    const std::string when = conditions[dice.below(conditions.size())];
    const std::size_t end = drawing.find('\n', drawing.find(way));
    if (drawing.substr(drawing.find(way), end - drawing.find(way)).find(":conditional") !=
        std::string::npos)
      continue;
    const std::string value = dice.below(4) == 0
                                  ? "motor_vehicle=no motor_vehicle:conditional=\"yes @ (" + when
                                  : "motor_vehicle:conditional=\"no @ (" + when;
    drawing.insert(end, " " + value + ")\"");
  }
  if (dice.below(2) == 0)
    drawing +=
        std::string("  r1 - from=w14 via=G to=w11 restriction:conditional=\"no_left_turn @ (") +
        conditions[dice.below(6)] + ")\"\n";
  if (dice.below(2) == 0)
    drawing +=
        std::string("  r2 - from=w17 via=J to=w10 restriction:conditional=\"no_right_turn @ (") +
        conditions[dice.below(6)] + ")\"\n";
  return drawing;
}

hours::SchoolTerms random_terms(Dice& dice) {
  if (dice.below(2) == 0) return {};
  return hours::SchoolTerms({{{2026, 4, 13}, {2026, 5, 22}},
                             {{2026, 9, 2}, {2026, 10, 23}},
                             {{2026, 11, 2}, {2026, 12, 18}}});
}

/// Empty, or the minute at which a street of the loop is or may be shut while the drive may be in it.
std::string shut_at(const road::Roads& roads, const wish::Loop& loop,
                    const hours::Setting& setting) {
  const auto& rows = loop.stretches;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double leaves =
        i + 1 < rows.size() ? rows[i + 1].arrive_s.high : loop.seconds.high + loop.stop_seconds;
    for (const road::TimedRule& rule : roads.timed_rules_of(rows[i].stretch)) {
      if (rule.about == road::Timed::limit) continue;
      const auto read = hours::read_conditional(roads.text(rule.base), roads.text(rule.text));
      for (double s = std::floor(rows[i].arrive_s.low); s < leaves + 1; s += 1) {
        const Instant at = setting.on_clock(loop.start.plus_seconds(static_cast<std::int64_t>(s)));
        const hours::Possible possible = read.at(at.civil(), setting);
        for (std::size_t bit = 0; bit <= read.rows().size(); ++bit)
          if (possible.has(bit) && read.value(bit) != "yes")
            return std::string(roads.text(rule.source)) + " at " + write_time(at);
      }
    }
  }
  return "";
}

/// The same of its turns: a "no" rule whose path is driven.
std::string banned_at(const road::Roads& roads, const wish::Loop& loop,
                      const hours::Setting& setting) {
  const auto& rows = loop.stretches;
  for (const road::TurnRule& rule : roads.turn_rules) {
    const std::string_view condition = roads.text(rule.condition);
    const auto path = roads.path_of(rule);
    if (condition.empty() || rule.only != 0 || path.size() != 2) continue;
    const hours::Timetable bans(condition);
    for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
      if (rows[i].stretch != path[0] || rows[i + 1].stretch != path[1]) continue;
      for (double s = std::floor(rows[i + 1].arrive_s.low); s < rows[i + 1].arrive_s.high; s += 1) {
        const Instant at = setting.on_clock(loop.start.plus_seconds(static_cast<std::int64_t>(s)));
        if (bans.at(at, setting).in_force != hours::Tri::no)
          return std::string(condition) + " at " + write_time(at);
      }
    }
  }
  return "";
}

struct Tally {
  int loops = 0, refused = 0, better = 0;
};

/// One town, one wish; then the same drive begun at other minutes, where the proof is the one to tell.
void try_one(std::uint64_t seed, Tally& tally) {
  Dice dice(seed);
  const std::string drawing = random_town(dice);
  const BuiltTown town = built_town(draw_town(drawing, 100), "GB-ENG");
  const road::Roads roads = town.roads();
  const Point home = roads.nodes[town.node("ACIMP"[dice.below(5)]).index()].at;
  const hours::Setting setting = road::setting_of(roads.info(), home, random_terms(dice));
  wish::Wish wish;
  wish.home = home;
  wish.start = hours::instant_in("Europe/London", starts[dice.below(starts.size())])
                   .plus_seconds(60 * static_cast<std::int64_t>(dice.below(40)));
  wish.start = setting.on_clock(wish.start);
  wish.minutes = 12 + static_cast<int>(dice.below(25));
  wish.wants.push_back(wish::read_want(dice.below(2) == 0 ? "level-crossing=1" : "roundabout=2"));
  INFO("seed " << seed << ", " << write_time(wish.start) << ", " << drawing);
  const wish::Answer answer = answer_of(roads, wish, find::find_loops(roads, wish, setting));
  CHECK(proof::prove(roads, answer, setting).false_claim.value_or("") == "");
  if (answer.shortfall) tally.better += static_cast<int>(answer.shortfall->better_starts.size());
  for (const wish::Loop& loop : answer.loops) {
    ++tally.loops;
    CHECK(shut_at(roads, loop, setting) == "");
    CHECK(banned_at(roads, loop, setting) == "");
  }
  if (answer.loops.empty()) return;
  for (const int minutes : {-70, -25, -10, 10, 25, 45, 70}) {
    wish::Answer moved = answer;
    if (moved.shortfall) moved.shortfall->better_starts.clear();
    moved.wish.start = setting.on_clock(wish.start.plus_seconds(60 * minutes));
    for (wish::Loop& loop : moved.loops) {
      loop.start = moved.wish.start;
      loop.end.reset(), loop.bus_lanes.clear();
    }
    const auto claim = proof::prove(roads, moved, setting).false_claim;
    if (claim) {
      ++tally.refused;
      continue;
    }
    for (const wish::Loop& loop : moved.loops) {
      CHECK(shut_at(roads, loop, setting) == "");
      CHECK(banned_at(roads, loop, setting) == "");
    }
  }
}

}  // namespace

TEST_CASE("random wishes by the hour drive no street that is or may be shut", "[find]") {
  Tally tally;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) try_one(seed, tally);
  CHECK(tally.loops > 20);
  CHECK(tally.refused > 0);
}

TEST_CASE("three hundred more random wishes by the hour", "[find][slow]") {
  Tally tally;
  for (std::uint64_t seed = 1001; seed <= 1300; ++seed) try_one(seed, tally);
  std::printf("loops %d, moved drives refused %d, better starts %d\n", tally.loops, tally.refused,
              tally.better);
  CHECK(tally.loops > 150);
}

}  // namespace loopwright::test
