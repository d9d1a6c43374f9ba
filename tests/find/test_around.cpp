// What there is around a door. Limits are those drawn (OSM wiki, Key:maxspeed); the nearest of a form is held to what
// `near` finds by a search of its own for each kind.
#include <catch2/catch.hpp>
#include <set>

#include "loopwright/find/around.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/hours/zone.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

BuiltTown town_with(std::string_view more = "") {
  return built_town(draw_town(std::string(crossing_streets) + std::string(more), 100), "GB-ENG");
}

const BuiltTown& town() {
  static const BuiltTown built = town_with();
  return built;
}

/// From the street east of A, on a Monday at eleven.
wish::Wish wish_in(const BuiltTown& built) {
  const road::Roads roads = built.roads();
  const Point a = roads.nodes[built.node('A').index()].at;
  wish::Wish wish;
  wish.home = point_from_degrees(a.lat(), a.lon() + 0.003);
  wish.start = hours::instant_in("Europe/London", {{2026, 11, 30}, 11, 0, 0});
  return wish;
}

find::Around around_in(const BuiltTown& built, const wish::Wish& wish, double minutes) {
  const road::Roads roads = built.roads();
  return find::around(roads, wish, minutes, setting_of(roads));
}

const find::FormAround* form_in(const find::Around& there, Kind kind) {
  for (const find::FormAround& form : there.forms)
    if (form.kind == kind) return &form;
  return nullptr;
}

std::set<int> limits_in(const find::Around& there) {
  std::set<int> limits;
  for (const find::LimitAround& one : there.limits) limits.insert(one.limit.value);
  return limits;
}

TEST_CASE("each form's places are the easiest and the nearest that near finds", "[find][around]") {
  const road::Roads roads = town().roads();
  const wish::Wish wish = wish_in(town());
  const find::Around there = around_in(town(), wish, 25);
  CHECK(there.forms.size() > 10);
  for (const find::FormAround& form : there.forms) {
    INFO(road::name(form.kind) << ' ' << road::name(form.movement));
    wish::Want want;
    want.kind = form.kind;
    want.movement = form.movement;
    double nearest = 1e9;
    int easiest = 5;
    std::set<PlaceId> places;
    for (const auto& near : find::chances_near(roads, {wish, want, 25}, setting_of(roads))) {
      const road::Chance& chance = roads.chances[near.chance.index()];
      if (chance.kind != form.kind || chance.movement != form.movement) continue;
      nearest = std::min(nearest, near.there_minutes);
      easiest = std::min<int>(easiest, chance.hardness);
      places.insert(chance.place);
    }
    REQUIRE(form.places.size() == std::min<std::size_t>(places.size(), 2));
    CHECK(form.places.front().hardness == easiest);
    double told = 1e9;
    for (const auto& place : form.places) told = std::min(told, place.there_minutes);
    CHECK(told == Approx(nearest));
  }
}

TEST_CASE("every kind that can be met is around, and no manoeuvre is", "[find][around]") {
  const road::Roads roads = town().roads();
  const wish::Wish wish = wish_in(town());
  const find::Around there = around_in(town(), wish, 25);
  for (const Kind kind : road::all_kinds()) {
    INFO(road::name(kind));
    wish::Want want;
    want.kind = kind;
    bool is_near = false;
    for (const auto& near : find::chances_near(roads, {wish, want, 25}, setting_of(roads)))
      is_near = is_near || roads.chances[near.chance.index()].kind == kind;
    const bool is_manoeuvre = road::form_of(kind) == road::KindForm::manoeuvre;
    CHECK((form_in(there, kind) != nullptr) == (is_near && !is_manoeuvre));
  }
}

TEST_CASE("forms, limits and sorts come the easiest first", "[find][around]") {
  const find::Around there = around_in(town(), wish_in(town()), 25);
  const auto is_in_order = [](const auto& rows) {
    return std::ranges::is_sorted(rows, [](const auto& a, const auto& b) {
      return std::pair(a.places[0].hardness, a.places[0].there_minutes) <
             std::pair(b.places[0].hardness, b.places[0].there_minutes);
    });
  };
  CHECK(is_in_order(there.forms));
  CHECK(is_in_order(there.limits));
  CHECK(is_in_order(there.sorts));
}

TEST_CASE("the limits around are those mapped, within the minutes", "[find][around]") {
  const find::Around there = around_in(town(), wish_in(town()), 25);
  CHECK(limits_in(there) == std::set{20, 30, 40});
  for (const find::LimitAround& one : there.limits) {
    CHECK(one.limit.unit == SpeedUnit::mph);
    const road::Roads roads = town().roads();
    for (const find::MeetingPlace& place : one.places) {
      CHECK_FALSE(place.chance.known());
      CHECK(roads.stretch(place.at).limit.value == one.limit.value);
    }
  }
  CHECK(limits_in(around_in(town(), wish_in(town()), 0.2)) == std::set{30});
}

// Highway Code, speed limits: lamps mean 30 mph in England unless signs show otherwise; a sign is better evidence.
TEST_CASE("where a sign says the limit goes before where lamps do", "[find][around]") {
  const char* streets = R"(
    A       B       C

    E       F       G
  w1 AB highway=residential name=Osk_Road lit=yes
  w2 BC highway=residential name=Mill_Street %
  w3 CG highway=residential name=Fold_Lane lit=yes
  w4 EFG highway=residential name=Hay_Street lit=yes
  w5 AE highway=residential name=Bell_Yard lit=yes
  )";
  const auto only_limit = [&](const std::string& tags) {
    std::string drawing(streets);
    drawing.replace(drawing.find('%'), 1, tags);
    const BuiltTown built = built_town(drawing);
    const auto there = around_in(built, wish_in(built), 25);
    REQUIRE(there.limits.size() == 1);
    CHECK(there.limits[0].limit.value == 30);
    return std::pair(is_sure(there.limits[0].limit.confidence), there.limits[0].places.size());
  };
  CHECK(only_limit("lit=yes") == std::pair(false, std::size_t{2}));
  CHECK(only_limit("maxspeed=30_mph") == std::pair(true, std::size_t{1}));
}

TEST_CASE("a limit on a few metres of road is none to practise", "[find][around]") {
  // B and C are 50 m apart, the others 200 m.
  const BuiltTown built = built_town(R"(
    A       B C       D

    E       F G       H
  w1 AB highway=tertiary name=Osk_Road maxspeed="30 mph"
  w2 BC highway=tertiary name=Osk_Road maxspeed="50 mph"
  w3 CD highway=tertiary name=Osk_Road maxspeed="40 mph"
  w4 AE highway=residential name=Bell_Yard maxspeed="30 mph"
  w5 DH highway=residential name=Fold_Lane maxspeed="30 mph"
  w6 EFGH highway=residential name=Hay_Street maxspeed="30 mph"
  )");
  CHECK(limits_in(around_in(built, wish_in(built), 25)) == std::set{30, 40});
}

TEST_CASE("what is avoided is not around", "[find][around]") {
  wish::Wish wish = wish_in(town());
  CHECK(form_in(around_in(town(), wish, 25), Kind::level_crossing) != nullptr);
  wish.avoids = {{Kind::level_crossing}};
  CHECK(form_in(around_in(town(), wish, 25), Kind::level_crossing) == nullptr);
}

TEST_CASE("a street that may be shut then leads to nothing", "[find][around]") {
  // East Way, which alone has a limit of 40; OSM wiki, Conditional restrictions.
  std::string drawing(crossing_streets);
  for (const char* way : {"  w12 ", "  w13 ", "  w25 "}) {
    const std::size_t row = drawing.find(way);
    REQUIRE(row != std::string::npos);
    drawing.insert(drawing.find('\n', row),
                   " motor_vehicle:conditional=\"no @ (Mo-Fr 10:00-12:00)\"");
  }
  const BuiltTown built = built_town(draw_town(drawing, 100), "GB-ENG");
  wish::Wish wish = wish_in(built);
  CHECK(limits_in(around_in(built, wish, 25)) == std::set{20, 30});
  wish.start = hours::instant_in("Europe/London", {{2026, 11, 30}, 18, 0, 0});
  CHECK(limits_in(around_in(built, wish, 25)) == std::set{20, 30, 40});
}

TEST_CASE("sorts of road are told with a road of that sort", "[find][around]") {
  const road::Roads roads = town().roads();
  const find::Around there = around_in(town(), wish_in(town()), 25);
  std::set<std::string_view> sorts;
  for (const find::SortAround& one : there.sorts) {
    sorts.insert(one.sort);
    for (const find::MeetingPlace& place : one.places)
      CHECK(((roads.piece(place.at).flags & road::piece_flag::quiet) != 0) ==
            (one.sort == "quiet"));
  }
  CHECK(sorts.contains("quiet"));
  CHECK_FALSE(sorts.contains("motorway"));
}

}  // namespace
}  // namespace loopwright::test
