#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "book/sample.hpp"
#include "loopwright/base/dice.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::book {
namespace {

using road::Kind;
using road::Movement;

const Scheme& scheme() {
  return *find_scheme("car-27");
}

/// A lesson so many days before the county's lesson day, that drove these at these levels.
struct Drove {
  Practice what;
  int times = 1, level = 3;
};
Lesson lesson_before(int days, const std::vector<Drove>& drove) {
  Lesson lesson;
  lesson.state = LessonState::driven;
  lesson.plan = test::plan_of_two_passes();
  lesson.plan.start = lesson.plan.start.plus_seconds(-24 * 3600 * days);
  for (const Drove& one : drove)
    for (int n = 0; n < one.times; ++n)
      lesson.log.passes.push_back({one.what, 1, "", true, one.level});
  lesson.log.observations = observed(scheme(), day_of(lesson), lesson.log.passes, {});
  return lesson;
}

Proposal next(const std::vector<Lesson>& lessons,
              const Pupil& pupil = {.code = "FINCH", .scheme = "car-27"}) {
  return proposed({pupil, scheme(), lessons, {2026, 11, 28}});
}

/// All that a learner meets early, at 4, a week ago.
std::vector<Drove> basics() {
  return {{{Kind::move_off}, 2, 4},
          {{Kind::uphill_start}, 1, 4},
          {{Kind::turn_off, Movement::left}, 3, 4},
          {{Kind::turn_off, Movement::right}, 3, 4},
          {{Kind::emerge, Movement::left}, 3, 4},
          {{Kind::emerge, Movement::right}, 3, 4}};
}

TEST_CASE("a first lesson begins at the beginning, and says so", "[book][next]") {
  const Proposal first = next({});
  REQUIRE(first.topics.size() == 1);
  CHECK(first.topics[0].what.kind == Kind::move_off);
  CHECK(first.topics[0].why == "not begun yet");
  CHECK(first.goal == "move-off: begin it");
}

TEST_CASE("a lesson logged before its day is told as one to come", "[book][next]") {
  const Proposal proposal = next({lesson_before(-5, {{{Kind::move_off}, 2, 2}})});
  REQUIRE_FALSE(proposal.topics.empty());
  CHECK(proposal.topics[0].why.find(" on its last day, in five days") != std::string::npos);
}

TEST_CASE("how a learner stands at a practice is told by its last day, else by its skill",
          "[book][next]") {
  const Pupil pupil{.code = "FINCH", .scheme = "car-27"};
  const std::vector<Lesson> lessons{
      lesson_before(18, {{{Kind::roundabout, Movement::right}, 3, 3}}),
      lesson_before(4, {{{Kind::roundabout, Movement::right}, 2, 2}})};
  const Record record{pupil, scheme(), lessons, {2026, 11, 28}};
  CHECK(level_of(record, {Kind::roundabout, Movement::right}) == 2);
  CHECK(level_of(record, {Kind::roundabout, Movement::none}) == 2);
  CHECK(level_of(record, {Kind::level_crossing, Movement::none}) == 0);
}

TEST_CASE("what the instructor stepped in at comes next, with its reasons", "[book][next]") {
  auto drove = basics();
  drove.push_back({{Kind::roundabout, Movement::right}, 3, 2});
  Lesson before = lesson_before(18, drove);
  before.log.interventions = {{Intervention::pedals, 1, test::right_at_roundabout(), ""}};
  const Proposal proposal = next({before});
  REQUIRE_FALSE(proposal.topics.empty());
  CHECK(proposal.topics[0].what == test::right_at_roundabout());
  CHECK(proposal.goal == "roundabout right: from helped (2) to prompted (3)");
  CHECK(proposal.topics[0].why ==
        "level 2 (helped), three passes on its last day, 18 days ago; you stepped in one time; "
        "what comes before it: "
        "emerge at 4");
  CHECK(proposal.topics[0].passes == 4);
}

TEST_CASE("nothing is begun before what comes before it", "[book][next]") {
  const Proposal proposal = next({lesson_before(7, {{{Kind::move_off}, 2, 2}})});
  REQUIRE(proposal.topics.size() == 1);
  CHECK(proposal.topics[0].what.kind == Kind::move_off);
  CHECK(next({lesson_before(7, {{{Kind::move_off}, 2, 4}})}).topics.at(0).fresh);
}

TEST_CASE("a pupil who comes from another instructor isn't begun anew", "[book][next]") {
  const Proposal proposal =
      next({lesson_before(7, {{{Kind::turn_off, Movement::left}, 3, 4}, {{Kind::zebra}, 2, 4}})});
  for (const ProposedTopic& topic : proposal.topics) CHECK(topic.what.kind != Kind::move_off);
}

TEST_CASE("one movement that lags is a topic though its skill is well", "[book][next]") {
  auto drove = basics();
  drove.push_back({{Kind::roundabout, Movement::right}, 2, 2});
  drove.push_back({{Kind::roundabout, Movement::left}, 5, 4});
  Lesson before = lesson_before(7, drove);
  before.log.interventions = {{Intervention::pedals, 1, test::right_at_roundabout(), ""}};
  CHECK(next({before}).topics.at(0).what == test::right_at_roundabout());
}

TEST_CASE("of two topics one is new at most, and they are of two skills", "[book][next]") {
  for (int n = 0; n < 6; ++n) {
    std::vector<Drove> drove = basics();
    drove.resize(static_cast<std::size_t>(n + 1));
    const Proposal proposal = next({lesson_before(30, drove)});
    REQUIRE_FALSE(proposal.topics.empty());
    if (proposal.topics.size() < 2) continue;
    CHECK_FALSE((proposal.topics[0].fresh && proposal.topics[1].fresh));
    CHECK(scheme().skill_of(proposal.topics[0].what.kind) !=
          scheme().skill_of(proposal.topics[1].what.kind));
  }
}

TEST_CASE("what was driven just now and went well gives way to something else", "[book][next]") {
  std::vector<Drove> drove = basics();
  drove.push_back({{Kind::zebra}, 4, 3});
  drove.push_back({{Kind::mini_roundabout, Movement::right}, 2, 3});
  CHECK(next({lesson_before(2, drove)}).topics.at(0).what.kind != Kind::zebra);
}

TEST_CASE("a skill that wasn't driven for weeks comes back", "[book][next]") {
  Pupil pupil{.code = "FINCH", .scheme = "car-27"};
  pupil.test_day = Date{2026, 12, 8};  // so that nothing new is in the way
  const std::vector<Drove> recent{{{Kind::move_off}, 2, 4},
                                  {{Kind::turn_off, Movement::left}, 2, 4}};
  const Proposal proposal = next({lesson_before(60, basics()), lesson_before(3, recent)}, pupil);
  REQUIRE_FALSE(proposal.topics.empty());
  CHECK(proposal.topics[0].what == Practice{Kind::turn_off, Movement::right});
  CHECK(proposal.topics[0].why ==
        "level 4 (independent), three passes on its last day, 60 days ago, longer than the 21 days "
        "it keeps; what comes "
        "before it: move-off at 4");
}

TEST_CASE("a skill that was reached comes back once nothing of it was met for longer than it keeps",
          "[book][next]") {
  Pupil pupil{.code = "FINCH", .scheme = "car-27"};
  pupil.test_day = Date{2026, 12, 8};  // so that nothing new is in the way
  auto recent = basics();
  recent.push_back({{Kind::zebra}, 2, 4});
  const auto topics_after = [&](int days) {
    std::set<Kind> kinds;
    const std::vector<Lesson> lessons{lesson_before(days, {{{Kind::pull_up_right}, 1, 5}}),
                                      lesson_before(3, recent)};
    for (const ProposedTopic& topic : next(lessons, pupil).topics) kinds.insert(topic.what.kind);
    return kinds;
  };
  CHECK_FALSE(topics_after(14).contains(Kind::pull_up_right));
  CHECK(topics_after(90).contains(Kind::pull_up_right));
}

TEST_CASE("what is kept off isn't proposed, nor are motorways", "[book][next]") {
  Pupil pupil{.code = "FINCH", .scheme = "car-27"};
  for (const Kind kind : road::all_kinds())
    if (kind != Kind::motorway && kind != Kind::zebra) pupil.avoids.push_back(kind);
  const Proposal only = next({lesson_before(7, {{{Kind::turn_off, Movement::left}, 3, 4}})}, pupil);
  REQUIRE(only.topics.size() == 1);
  CHECK(only.topics[0].what.kind == Kind::zebra);
}

TEST_CASE("shortly before the test nothing new is begun, and a mock test is spoken of",
          "[book][next]") {
  Pupil pupil{.code = "FINCH", .scheme = "car-27"};
  pupil.test_day = Date{2026, 12, 8};
  const Proposal proposal = next({lesson_before(7, basics())}, pupil);
  REQUIRE_FALSE(proposal.topics.empty());
  for (const ProposedTopic& topic : proposal.topics) CHECK_FALSE(topic.fresh);
  CHECK(proposal.hints.at(0) ==
        "the test is in ten days: nothing new is proposed; no mock test yet");
  CHECK(proposal.mock_due);
  Lesson mock = lesson_before(7, basics());
  mock.log.mock = MockTest{{2026, 11, 21}, {4, 0, 0}};
  CHECK_FALSE(next({mock}, pupil).mock_due);
}

TEST_CASE("light, weather and traffic that were never met are spoken of", "[book][next]") {
  Lesson before = lesson_before(7, basics());
  before.log.conditions = {"day", "dull-wet", "usual"};
  const Proposal proposal = next({before});
  CHECK(proposal.hints ==
        std::vector<std::string>{"not met yet: the dark (a start after sunset) and heavy traffic"});
}

TEST_CASE("a skill no map can serve is spoken of when it is stale", "[book][next]") {
  Lesson before = lesson_before(70, basics());
  before.log.observations.push_back({"mirrors", day_of(before), 4, true});
  CHECK(next({before}).hints.back() ==
        "to weave in, no map can serve it: mirrors (4, 70 days ago)");
}

Proposal next_there(const std::vector<Lesson>& lessons, const std::set<Practice>& there) {
  const Pupil pupil{.code = "FINCH", .scheme = "car-27"};
  return proposed({pupil, scheme(), lessons, {2026, 11, 28}, &there});
}

TEST_CASE("with a map only what can be had from the door is proposed", "[book][next]") {
  auto drove = basics();
  drove.push_back({{Kind::roundabout, Movement::right}, 3, 2});
  const std::vector<Lesson> lessons{lesson_before(18, drove)};
  for (const ProposedTopic& topic : next(lessons).topics) CHECK(topic.what.kind != Kind::zebra);
  const Proposal here = next_there(lessons, {{Kind::zebra}});
  REQUIRE(here.topics.size() == 1);
  CHECK(here.topics[0].what.kind == Kind::zebra);
  CHECK(next_there(lessons, {}).topics.empty());
}

TEST_CASE("of a junction that has no right turn there only the left one is proposed",
          "[book][next]") {
  const Proposal here =
      next_there({lesson_before(7, basics())},
                 {{Kind::roundabout, Movement::left}, {Kind::roundabout, Movement::none}});
  REQUIRE(here.topics.size() == 1);
  CHECK(here.topics[0].what == Practice{Kind::roundabout, Movement::left});
}

TEST_CASE("what can't be had from the door bars nothing behind it, but what comes before it does",
          "[book][next]") {
  std::set<Practice> there{{Kind::dual_carriageway}, {Kind::limit_change}};
  auto drove = basics();
  const Proposal before = next_there({lesson_before(7, drove)}, there);
  REQUIRE(before.topics.size() == 1);
  CHECK(before.topics[0].what.kind == Kind::limit_change);
  there.erase({Kind::limit_change});
  drove.push_back({{Kind::limit_change}, 3, 4});
  const Proposal here = next_there({lesson_before(7, drove)}, there);
  REQUIRE(here.topics.size() == 1);
  CHECK(here.topics[0].what.kind == Kind::dual_carriageway);
  CHECK(here.topics[0].why ==
        "not begun yet; what comes before it: emerge at 4, limit-change at 4 and country-road "
        "isn't had from this door");
}

TEST_CASE("skills of which nothing can be had from the door are named", "[book][next]") {
  std::set<Practice> there;
  for (const Kind kind : road::all_kinds())
    if (kind != Kind::zebra && kind != Kind::signal_crossing) there.insert({kind});
  CHECK(next_there({lesson_before(7, basics())}, there).hints.back() ==
        "not to be had from this door in a lesson so long: pedestrian crossings; a longer one, or "
        "one begun elsewhere (--drive-out), may have it");
}

TEST_CASE("what is there but harder than the level is told apart from what isn't", "[book][next]") {
  std::set<Practice> there, by_name;
  const auto& country = scheme().skill_of(Kind::country_road)->kinds;
  for (const Kind kind : road::all_kinds()) {
    if (kind == Kind::zebra || kind == Kind::signal_crossing) continue;
    by_name.insert({kind});
    if (std::ranges::find(country, kind) == country.end()) there.insert({kind});
  }
  const std::vector<Lesson> lessons{lesson_before(7, basics())};
  const Pupil pupil{.code = "FINCH", .scheme = "car-27"};
  const auto hints = proposed({pupil, scheme(), lessons, {2026, 11, 28}, &there, &by_name}).hints;
  REQUIRE(hints.size() >= 2);
  CHECK(hints[hints.size() - 2] ==
        "there from this door, but harder than roads of this level: country roads; driven when you "
        "ask for it by name, such as --want country-road");
  CHECK(hints.back().starts_with(
      "not to be had from this door in a lesson so long: pedestrian crossings; "));
}

TEST_CASE("three lessons ahead differ, and the first is the next", "[book][next]") {
  const std::vector<Lesson> lessons{lesson_before(7, basics())};
  const Pupil pupil{.code = "FINCH", .scheme = "car-27"};
  const auto ahead = proposed_ahead({pupil, scheme(), lessons, {2026, 11, 28}}, 3);
  REQUIRE(ahead.size() == 3);
  CHECK(ahead[0].goal == next(lessons).goal);
  CHECK(ahead[1].goal != ahead[0].goal);
  CHECK(ahead[2].goal != ahead[1].goal);
}

TEST_CASE("a proposal is a wish in the words of 'loops'", "[book][next]") {
  std::string words;
  for (const WishWord& word : wish_words(next({lesson_before(7, {{{Kind::move_off}, 2, 4}})})))
    words += "--" + word.name + " " + word.value + " ";
  CHECK(words.find("--want ") != std::string::npos);
  CHECK(words.find("--level 4 ") != std::string::npos);
}

/// Which skills that a map can serve, motorways aside, have come to level 4.
std::set<std::string_view> not_reached(const std::vector<Lesson>& lessons) {
  std::set<std::string_view> open;
  for (const SkillLine& line : skill_lines(scheme(), lessons))
    if (!line.skill->kinds.empty() && line.skill->code != "motorways" &&
        std::none_of(line.seen.begin(), line.seen.end(),
                     [](const Seen& seen) { return seen.level >= 4; }))
      open.insert(line.skill->code);
  return open;
}

/// A level further with that chance, now and then one back.
int after(int level, double chance, Dice& dice) {
  const int step = dice.share() < chance ? 1 : dice.share() < 0.1 ? -1 : 0;
  return std::clamp(level + step, 1, 5);
}

/// What is passed on the way without being asked for: three in ten of the kinds a learner is ready for, once each, at
/// its own level or a little below the learner's.
void pass_on_the_way(std::vector<Drove>& drove, const std::vector<Lesson>& lessons, double talent,
                     Dice& dice) {
  const auto lines = practice_lines(lessons);
  const int level = level_now(scheme(), lessons).value_or(1);
  for (const Kind kind : road::all_kinds()) {
    const bool is_ready = road::hardness_of(kind, Movement::none) <= wish_level(level) + 1;
    if (road::form_of(kind) == road::KindForm::manoeuvre || !is_ready || dice.share() > 0.3)
      continue;
    int at = std::max(level - 1, 1);
    for (const PracticeLine& line : lines)
      if (line.what == Practice{kind, Movement::none}) at = std::max(at, line.level());
    drove.push_back({{kind, Movement::none}, 1, after(at, talent / 4, dice)});
  }
}

/// Lessons a week apart; each topic goes a level up with the pupil's talent as the chance.
std::vector<Lesson> course(const Pupil& pupil, double talent, int how_many) {
  Dice dice(7);
  std::vector<Lesson> lessons;
  for (int week = 0; week < how_many; ++week) {
    const Date day = date_from_days(days_since_epoch({2026, 1, 5}) + 7 * week);
    const Proposal proposal = proposed({pupil, scheme(), lessons, day});
    CHECK_FALSE(proposal.goal.empty());
    std::vector<Drove> drove;
    for (const ProposedTopic& topic : proposal.topics) {
      CHECK_FALSE(topic.why.empty());
      drove.push_back({topic.what, topic.passes, after(std::max(topic.level, 1), talent, dice)});
    }
    pass_on_the_way(drove, lessons, talent, dice);
    Lesson lesson = lesson_before(0, drove);
    lesson.plan.start = {days_since_epoch(day) * 24 * 3600, 0};
    lesson.log.observations = observed(scheme(), day, lesson.log.passes, {});
    lessons.push_back(lesson);
  }
  return lessons;
}

// How many lessons a pupil takes is the pupil's affair: 45 hours on average (gov.uk, ready to pass).
TEST_CASE(
    "a course by proposals alone has a reason for every lesson and reaches all a map can serve",
    "[book][next]") {
  struct Course {
    double talent;
    int lessons;
  };
  const Pupil pupil{.code = "FINCH", .scheme = "car-27"};
  for (const Course& of : {Course{1, 40}, Course{0.75, 60}, Course{0.5, 90}}) {
    std::string open;
    for (const std::string_view skill : not_reached(course(pupil, of.talent, of.lessons)))
      open.append(skill).append(" ");
    INFO("talent " << of.talent << ", open: " << open);
    CHECK(open.empty());
  }
}

}  // namespace
}  // namespace loopwright::book
