// The checks of the course must fail where they are to: one falsehood planted at a time.
#include <algorithm>
#include <catch2/catch.hpp>

#include "course/lesson_checks.hpp"
#include "course/streets.hpp"
#include "loopwright/book/progress.hpp"
#include "support/long_street.hpp"

namespace loopwright::test {
namespace {

using road::Kind;
using road::Movement;

constexpr Date monday{2026, 3, 2};

Date later(int days) {
  return date_from_days(days_since_epoch(monday) + days);
}

/// The way out and back drives its last, quiet piece twice; the first lies at the door.
struct Street {
  LongStreet street;
  road::Roads roads = street.roads();
  wish::Wish wish = wish_at_door();
  wish::Loop loop = out_and_back();
  StreetTally tally;
  std::vector<std::string> drive(int day) { return tally.add({roads, wish, loop}, later(day)); }
};

TEST_CASE("a quiet street is driven six times a day, not more", "[course]") {
  Street street;
  for (int n = 0; n < 3; ++n) CHECK(street.drive(0).empty());
  CHECK(street.drive(0) ==
        std::vector<std::string>{"quiet street of way 7 is driven 8 times on the day"});
  CHECK(street.tally.most_a_day() == 8);
  CHECK(street.drive(1).empty());
}

TEST_CASE("a quiet street is driven twenty times in thirty days, and then waits", "[course]") {
  Street street;
  for (int day = 0; day < 10; ++day) CHECK(street.drive(day).empty());
  CHECK(street.drive(29) ==
        std::vector<std::string>{"quiet street of way 7 is driven 22 times in thirty days"});
  street.tally.take_back({street.roads, street.wish, street.loop}, later(29));
  CHECK(street.drive(30).empty());  // the first day is over thirty days ago
}

TEST_CASE("a quiet street is driven twice in a lesson, at the door too", "[course]") {
  Street street;
  const auto again = street.loop.stretches;
  street.loop.stretches.insert(street.loop.stretches.end(), again.begin(), again.end());
  CHECK(street.drive(0).size() == 2);
}

/// A lesson of an hour that holds.
struct Planned {
  Planned() {
    book::Lesson before;
    before.state = book::LessonState::driven;
    before.plan.start = {days_since_epoch(monday) * 24 * 3600, 0};
    before.log.passes = {{{Kind::emerge, Movement::left}, 2, "", true, 4},
                         {{Kind::emerge, Movement::left}, 2, "", true, 3}};
    before.log.observations =
        book::observed(*book::find_scheme("car-27"), monday, before.log.passes, {});
    lessons = {before};
    plan.proposal.goal = "roundabout left: begin it";
    plan.proposal.topics = {{{Kind::roundabout, Movement::left}, 4, true, 0, "not begun yet"}};
    plan.found.claims = 1;
    wish::Answer& answer = plan.found.answer;
    answer.wish.minutes = 43;
    answer.wish.reserve_minutes = 5;
    answer.wish.level = 3;
    answer.wish.level_given = true;
    answer.wish.wants = {{.kind = Kind::roundabout, .movement = Movement::left, .count = 1}};
    wish::Loop loop;
    loop.seconds.likely = 37 * 60;
    wish::Pass pass;
    pass.kind = Kind::roundabout;
    pass.movement = Movement::left;
    pass.hardness = 3;
    loop.passes = {pass};
    loop.met = {{answer.wish.wants.front(), 1}};
    answer.loops = {loop};
  }
  [[nodiscard]] std::string fault() const {
    const auto all = faults_of({pupil, lessons, plan, 1});
    return all.empty() ? "" : all.front();
  }
  [[nodiscard]] wish::Loop& loop() { return plan.found.answer.loops.front(); }
  [[nodiscard]] book::ProposedTopic& topic() { return plan.proposal.topics.front(); }

  book::Pupil pupil{.code = "FINCH", .scheme = "car-27"};
  std::vector<book::Lesson> lessons;
  command::NextPlan plan{};
};

template <class Change>
std::string fault_of(Change change) {
  Planned planned;
  change(planned);
  return planned.fault();
}

TEST_CASE("a lesson that holds has no fault, and each falsehood in one is found", "[course]") {
  CHECK(Planned().fault().empty());
  CHECK(fault_of([](Planned& of) { of.topic().why.clear(); }) == "roundabout left: no reason");
  CHECK(fault_of([](Planned& of) { of.plan.proposal.goal.clear(); }) == "no goal");
  CHECK(fault_of([](Planned& of) { of.plan.proposal.topics.push_back(of.topic()); }) ==
        "two new topics");
  CHECK(fault_of([](Planned& of) { of.plan.found.claims = 0; }) == "nothing was proved");
  CHECK(fault_of([](Planned& of) { of.lessons[0].log.passes[0].level = 2; }) ==
        "roundabout is begun with emerge at 2");
  CHECK(fault_of([](Planned& of) { of.topic().what = {Kind::signal_roundabout}; }) ==
        "signal-roundabout is begun with multi-lane-roundabout at 0");
  CHECK(fault_of([](Planned& of) { of.plan.found.answer.wish.level = 4; }) ==
        "the wish isn't of the learner's level");
  CHECK(fault_of([](Planned& of) {
          of.loop().passes.push_back(of.loop().passes[0]);
          of.loop().passes[1].kind = Kind::tram;
          of.loop().passes[1].hardness = 5;
        }) == "tram of hardness 5 at level 3");
  CHECK(fault_of([](Planned& of) { of.loop().seconds.likely = 36 * 60; }).starts_with("away 36.0"));
  CHECK(fault_of([](Planned& of) { of.plan.found.answer.wish.pace = 1.2; }) ==
        "planned by another pace than the pupil's");
  CHECK(fault_of([](Planned& of) { of.loop().stop_seconds = 120; }).starts_with("away 39.0"));
  CHECK(fault_of([](Planned& of) {
          of.plan.found.answer.wish.minutes = 53;
          of.loop().seconds.likely = 47 * 60;
        }).starts_with("the wheels turn 47.0"));
  CHECK(fault_of([](Planned& of) {
          of.pupil.avoids = {Kind::zebra};
          of.loop().passes.push_back(of.loop().passes[0]);
          of.loop().passes[1].kind = Kind::zebra;
        }) == "zebra is kept off and driven");
  CHECK(fault_of([](Planned& of) { of.loop().met[0].got = 2; }) ==
        "roundabout:left=1: 2 told, 1 driven");
}

}  // namespace
}  // namespace loopwright::test
