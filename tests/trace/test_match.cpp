// Matching on drawn towns, where the way is known; whole maps: drive_traces.cpp.
#include <catch2/catch.hpp>

#include "loopwright/trace/departures.hpp"
#include "loopwright/trace/lesson.hpp"
#include "loopwright/trace/match.hpp"
#include "loopwright/trace/passes.hpp"
#include "support/built_town.hpp"

namespace loopwright::trace {
namespace {

using test::built_town;
using test::BuiltTown;

// A grid of streets, 250 m from letter to letter; no right turn from AB into BE.
constexpr const char* town_text = R"(
    A         B         C









    D         E         F









    G         H         I
w1 AB highway=residential name=Top_Row
w7 BC highway=residential name=Top_Row
w2 DEF highway=residential name=Middle_Row
w3 GHI highway=residential name=Bottom_Row
w4 ADG highway=residential name=West_Lane
w5 BEH highway=residential name=Mid_Lane
w6 CFI highway=residential name=East_Lane
r1 no_right_turn from=w1 via=B to=w5
)";

constexpr double start_s = 1'795'878'000;  // 2026-11-28T15:00:00Z

/// A drive along letters at 8 m/s, a fix each so many seconds.
std::vector<Fix> driven(const BuiltTown& town, std::string_view letters, double every_s = 2) {
  std::vector<Point> line;
  const road::Roads roads = town.roads();
  for (const char letter : letters) line.push_back(roads.nodes[town.node(letter).index()].at);
  std::vector<Fix> fixes;
  const double whole_m = length_m(line);
  for (double s = 0; s * 8 < whole_m; s += every_s)
    fixes.push_back({point_along(line, s * 8), start_s + s});
  fixes.push_back({line.back(), start_s + whole_m / 8});
  return fixes;
}

/// The letters a run drives over.
std::string letters_of(const BuiltTown& town, const Run& run) {
  const road::Roads roads = town.roads();
  std::string letters;
  const auto add = [&](NodeId node) {
    for (const char letter : std::string("ABCDEFGHI"))
      if (town.node(letter) == node && (letters.empty() || letters.back() != letter))
        letters += letter;
  };
  for (const Leg& leg : run.legs) {
    const StretchId stretch = roads.stretch_of(leg.state);
    // Fixes are taken together by seconds, so that both ends of a drive that never stands are a little short.
    constexpr double short_m = 40;
    if (leg.to_m - leg.from_m < short_m) continue;
    add(roads.from_node(stretch));
    if (leg.to_m > roads.piece(stretch).length_m - short_m) add(roads.to_node(stretch));
  }
  return letters;
}

TEST_CASE("without fixes, or with one, there is no drive", "[trace]") {
  const BuiltTown town = built_town(town_text);
  CHECK(match_to_roads(town.roads(), {}).runs.empty());
  const Match one = match_to_roads(town.roads(), std::vector<Fix>{driven(town, "AB").front()});
  CHECK(one.runs.empty());
  REQUIRE(one.off_roads.size() == 1);
}

TEST_CASE("a drive is matched to its streets, by either direction", "[trace]") {
  const BuiltTown town = built_town(town_text);
  for (const std::string letters : {"ABC", "CBA", "ADEBC", "GHEFIHG", "BEHGDA"}) {
    const Match match = match_to_roads(town.roads(), driven(town, letters));
    INFO(letters);
    REQUIRE(match.runs.size() == 1);
    CHECK(letters_of(town, match.runs[0]) == letters);
    CHECK(match.runs[0].metres() ==
          Approx(250.0 * static_cast<double>(letters.size() - 1)).margin(40));
    CHECK(match.off_roads.empty());
  }
}

TEST_CASE("legs have the times at which they were driven", "[trace]") {
  const BuiltTown town = built_town(town_text);
  const Match match = match_to_roads(town.roads(), driven(town, "ADEBC"));
  REQUIRE(match.runs.size() == 1);
  const auto& legs = match.runs[0].legs;
  REQUIRE(legs.size() == 4);
  for (std::size_t k = 1; k < legs.size(); ++k)
    CHECK(legs[k].enter_s - start_s == Approx(250.0 / 8 * static_cast<double>(k)).margin(2));
}

TEST_CASE("ways use no turn that is banned", "[trace]") {
  // Fixes so sparse that the corner isn't seen: straight from AB to BE the way is short, but banned.
  const BuiltTown town = built_town(town_text);
  REQUIRE_FALSE(town.drives("ABE"));
  const Match match = match_to_roads(town.roads(), driven(town, "ABE", 12));
  REQUIRE_FALSE(match.runs.empty());
  for (const Run& run : match.runs)
    for (std::size_t k = 1; k < run.legs.size(); ++k)
      CHECK_FALSE((town.roads().stretch_of(run.legs[k - 1].state) == town.stretch("AB") &&
                   town.roads().stretch_of(run.legs[k].state) == town.stretch("BE")));
}

TEST_CASE("a car that turns round in the road is told, and comes back", "[trace]") {
  const BuiltTown town = built_town(town_text);
  std::vector<Fix> fixes = driven(town, "ABC");
  fixes.resize(fixes.size() * 3 / 4);
  const std::size_t there = fixes.size();
  for (std::size_t k = 1; k < there; ++k)
    fixes.push_back(
        {fixes[there - 1 - k].at, fixes[there - 1].unix_s + 30 + 2.0 * static_cast<double>(k)});
  const Match match = match_to_roads(town.roads(), fixes);
  REQUIRE(match.runs.size() == 1);
  CHECK(std::count_if(match.runs[0].legs.begin(), match.runs[0].legs.end(),
                      [](const Leg& leg) { return leg.turned_round; }) == 1);
  CHECK(match.runs[0].metres() == Approx(750).margin(80));
}

TEST_CASE("while nothing is recorded the shortest way counts, or the plan's that fits the time",
          "[trace]") {
  const BuiltTown town = built_town(town_text);
  std::vector<Fix> fixes = driven(town, "GDABCFI");
  std::erase_if(fixes, [](const Fix& fix) {
    return fix.unix_s > start_s + 20 && fix.unix_s < start_s + 168;  // from GD to FI
  });
  const Match alone = match_to_roads(town.roads(), fixes);
  REQUIRE(alone.runs.size() == 1);
  CHECK(std::any_of(alone.runs[0].legs.begin(), alone.runs[0].legs.end(),
                    [](const Leg& leg) { return !leg.seen; }));
  CHECK(letters_of(town, alone.runs[0]) == "GDEFI");
  const std::vector<StretchId> plan{town.stretch("GD"), town.stretch("DA"), town.stretch("AB"),
                                    town.stretch("BC"), town.stretch("CF"), town.stretch("FI")};
  const Match planned = match_to_roads(town.roads(), fixes, {.plan = plan});
  REQUIRE(planned.runs.size() == 1);
  CHECK(letters_of(town, planned.runs[0]) == "GDABCFI");
}

TEST_CASE("fixes off all roads are told, and the drive goes on behind them", "[trace]") {
  const BuiltTown town = built_town(town_text);
  std::vector<Fix> fixes = driven(town, "ABC");
  const std::vector<Fix> later = driven(town, "IHG");
  for (int k = 0; k < 30; ++k)
    fixes.push_back({point_from_degrees(54.29 - 0.0001 * k, 2.65), fixes.back().unix_s + 5});
  const double begin_s = fixes.back().unix_s + 5 - start_s;
  for (const Fix& fix : later) fixes.push_back({fix.at, fix.unix_s + begin_s});
  const Match match = match_to_roads(town.roads(), fixes);
  REQUIRE(match.runs.size() == 2);
  CHECK(letters_of(town, match.runs[0]) == "ABC");
  CHECK(letters_of(town, match.runs[1]) == "IHG");
  CHECK_FALSE(match.off_roads.empty());
}

TEST_CASE("a single wild fix doesn't lead the drive astray", "[trace]") {
  const BuiltTown town = built_town(town_text);
  std::vector<Fix> fixes = driven(town, "ABC", 5);
  fixes[fixes.size() / 2].at = point_from_degrees(54.2, 2.9);
  const Match match = match_to_roads(town.roads(), fixes);
  REQUIRE(match.runs.size() == 1);
  CHECK(letters_of(town, match.runs[0]) == "ABC");
}

TEST_CASE("where the car stood is told, and for how long", "[trace]") {
  const BuiltTown town = built_town(town_text);
  std::vector<Fix> fixes = driven(town, "ADEBC");
  const std::size_t middle = fixes.size() * 3 / 8;
  for (std::size_t k = middle; k < fixes.size(); ++k) fixes[k].unix_s += 60;
  std::vector<Fix> whole(fixes.begin(), fixes.begin() + static_cast<std::ptrdiff_t>(middle));
  for (int k = 1; k < 30; ++k)
    whole.push_back({fixes[middle].at, fixes[middle].unix_s - 60 + 2 * k});
  whole.insert(whole.end(), fixes.begin() + static_cast<std::ptrdiff_t>(middle), fixes.end());
  const Match match = match_to_roads(town.roads(), whole);
  REQUIRE(match.runs.size() == 1);
  REQUIRE(match.runs[0].stops.size() == 1);
  const Stop& stop = match.runs[0].stops[0];
  CHECK(stop.to_s - stop.from_s == Approx(60).margin(6));
  CHECK(distance_m(stop.at, fixes[middle].at) < 15);
}

TEST_CASE("a drive's passes are those of the map, at their times", "[trace]") {
  const BuiltTown town = built_town(town_text);
  const Match match = match_to_roads(town.roads(), driven(town, "ADEHI"));
  REQUIRE(match.runs.size() == 1);
  const auto passes = passes_of(town.roads(), match.runs[0]);
  const auto at_e = std::find_if(passes.begin(), passes.end(), [](const TracedPass& one) {
    return one.pass.kind == road::Kind::crossroads;
  });
  REQUIRE(at_e != passes.end());
  CHECK(at_e->pass.movement == road::Movement::right);
  CHECK(at_e->to_s - start_s == Approx(500.0 / 8).margin(3));
  CHECK(at_e->seen);
}

TEST_CASE("where a drive left its plan is told, and where it came back", "[trace]") {
  const BuiltTown town = built_town(town_text);
  const std::vector<StretchId> plan{town.stretch("AD"), town.stretch("DE"), town.stretch("EB"),
                                    town.stretch("BC"), town.stretch("CF")};
  const Match match = match_to_roads(town.roads(), driven(town, "ADEFCF"), {.plan = plan});
  const Match same = match_to_roads(town.roads(), driven(town, "ADEBCF"), {.plan = plan});
  CHECK(compared(town.roads(), plan, same.runs).departures.empty());
  const Comparison other = compared(town.roads(), plan, match.runs);
  REQUIRE(other.departures.size() == 1);
  const Departure& one = other.departures[0];
  REQUIRE(one.left.has_value());
  CHECK(town.roads().stretch_of(match.runs[0].legs[one.left->leg].state) == town.stretch("DE"));
  CHECK(one.plan_first == 2);
  CHECK(one.plan_end == 4);
  CHECK(one.driven_m == Approx(500).margin(30));
  CHECK(one.missed_m == Approx(500).margin(5));
  CHECK(other.on_plan_m == Approx(750).margin(60));
}

TEST_CASE("a lesson's times leave out standing at the door", "[trace]") {
  const BuiltTown town = built_town(town_text);
  std::vector<Fix> fixes;
  const std::vector<Fix> drive = driven(town, "ADEBC");
  for (int k = 0; k < 60; ++k) fixes.push_back({drive.front().at, start_s - 120 + 2 * k});
  fixes.insert(fixes.end(), drive.begin(), drive.end());
  for (int k = 1; k < 60; ++k) fixes.push_back({drive.back().at, drive.back().unix_s + 2 * k});
  const Match match = match_to_roads(town.roads(), fixes);
  const pace::Pace pace(town.roads(), {.level = 3}, {static_cast<std::int64_t>(start_s), 0});
  const DrivenLesson lesson = lesson_of(town.roads(), match, pace);
  CHECK(lesson.from_s - start_s == Approx(0).margin(4));
  CHECK(lesson.to_s - drive.back().unix_s == Approx(0).margin(4));
  CHECK(lesson.stops.empty());
  CHECK(lesson.loop.stretches.size() == match.runs[0].legs.size());
  double took_s = 0;
  for (const ControlTime& time : lesson.times) took_s += time.took_s;
  CHECK(took_s == Approx(750.0 / 8).margin(4));  // the last leg ends at no junction
}

// As `loops --drive-out --drive-back` plans it: the instructor drives to the place of practice and back from there.
TEST_CASE("what the plan leaves to the instructor is no practice of the learner's", "[trace]") {
  const BuiltTown town = built_town(town_text);
  const Match match = match_to_roads(town.roads(), driven(town, "ADEBC"));
  wish::Loop plan;
  for (const char* letters : {"AD", "DE", "EB", "BC"}) {
    plan.stretches.emplace_back();
    plan.stretches.back().stretch = town.stretch(letters);
  }
  plan.practice = std::array<std::size_t, 2>{1, 2};
  const pace::Pace pace(town.roads(), {.level = 3}, {static_cast<std::int64_t>(start_s), 0});
  const DrivenLesson lesson = lesson_of(town.roads(), match, pace, &plan);
  REQUIRE(lesson.loop.practice.has_value());
  CHECK(town.roads().stretch_of(match.runs[0].legs[lesson.loop.practice->at(0)].state) ==
        town.stretch("DE"));
  CHECK(town.roads().stretch_of(match.runs[0].legs[lesson.loop.practice->at(1)].state) ==
        town.stretch("EB"));
  int counted = 0;
  for (const ControlTime& time : lesson.times) counted += time.count;
  CHECK(counted == 2);
  CHECK_FALSE(lesson_of(town.roads(), match, pace).loop.practice.has_value());
}

}  // namespace
}  // namespace loopwright::trace
