// What a pupil may practise at home. Common practice, no source: what was done without help in lessons, and lately. The law
// on who sits beside: "Driving lessons and learning to drive: practising with family or friends", gov.uk, and Road Safety
// Authority, both read in copies (src/rules/at_home.txt).
#include <catch2/catch.hpp>

#include <algorithm>

#include "book/sample.hpp"
#include "loopwright/book/at_home.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/say/words.hpp"

namespace loopwright::book {
namespace {

using road::Kind;
using road::Movement;

constexpr Date today{2026, 11, 28};

LessonPass seen(Kind kind, Movement movement, std::optional<int> level) {
  return {{kind, movement}, 2, "", true, level};
}

/// Driven so many days before today.
Lesson lesson_before(int days, std::vector<LessonPass> passes) {
  Lesson lesson;
  lesson.state = LessonState::driven;
  lesson.plan.start = {(days_since_epoch(today) - days) * 24 * 3600 + 10 * 3600, 0};
  lesson.log.passes = std::move(passes);
  return lesson;
}

std::vector<PracticeAtHome> practices_of(const std::vector<Lesson>& lessons,
                                         std::vector<Kind> avoids = {}) {
  Pupil pupil = test::wren();
  pupil.avoids = std::move(avoids);
  return practices_at_home({pupil, *find_scheme("car-27"), lessons, today});
}

NotAtHome why_of(const std::vector<PracticeAtHome>& all, const Practice& what) {
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const PracticeAtHome& one) { return one.what == what; });
  REQUIRE(found != all.end());
  return found->why_not;
}

bool avoids(const std::vector<Practice>& alone, Kind kind, Movement movement = Movement::none) {
  const auto all = all_but(alone);
  return std::any_of(all.begin(), all.end(), [&](const wish::Avoid& avoid) {
    return wish::is_avoided(avoid, kind, movement);
  });
}

TEST_CASE("without a lesson nothing is for home, and all is kept off", "[book][at-home]") {
  CHECK(practices_of({}).empty());
  for (const Kind kind : road::all_kinds()) {
    const bool on_roads =
        road::form_of(kind) != road::KindForm::manoeuvre && kind != Kind::independent_stretch;
    CHECK(avoids({}, kind) == on_roads);
  }
}

TEST_CASE("four and above is for home, three isn't", "[book][at-home]") {
  const auto all = practices_of({lesson_before(
      7, {seen(Kind::emerge, Movement::left, 4), seen(Kind::emerge, Movement::right, 3),
          seen(Kind::zebra, Movement::none, 5)})});
  CHECK(why_of(all, {Kind::emerge, Movement::left}) == NotAtHome::no);
  CHECK(why_of(all, {Kind::emerge, Movement::right}) == NotAtHome::below);
  CHECK(why_of(all, {Kind::zebra, Movement::none}) == NotAtHome::no);
  const auto alone = alone_of(all);
  CHECK(alone.size() == 2);
  CHECK_FALSE(avoids(alone, Kind::emerge, Movement::left));
  CHECK(avoids(alone, Kind::emerge, Movement::right));
  CHECK_FALSE(avoids(alone, Kind::zebra));
  CHECK(avoids(alone, Kind::signal_crossing));
}

TEST_CASE("a level that went down again takes it off the sheet", "[book][at-home]") {
  const auto all = practices_of({lesson_before(21, {seen(Kind::zebra, Movement::none, 5)}),
                                 lesson_before(7, {seen(Kind::zebra, Movement::none, 2)})});
  CHECK(why_of(all, {Kind::zebra, Movement::none}) == NotAtHome::below);
}

TEST_CASE("where one stepped in on the last day isn't for home, whatever the level",
          "[book][at-home]") {
  Lesson lesson = lesson_before(7, {seen(Kind::multi_lane_roundabout, Movement::right, 4),
                                    seen(Kind::multi_lane_roundabout, Movement::left, 4)});
  lesson.log.interventions = {
      {Intervention::words, 1, Practice{Kind::roundabout, Movement::right}, ""}};
  const auto all = practices_of({lesson});
  CHECK(why_of(all, {Kind::multi_lane_roundabout, Movement::right}) == NotAtHome::stepped_in);
  CHECK(why_of(all, {Kind::multi_lane_roundabout, Movement::left}) == NotAtHome::no);
  const auto later = practices_of(
      {lesson, lesson_before(1, {seen(Kind::multi_lane_roundabout, Movement::right, 4)})});
  CHECK(why_of(later, {Kind::multi_lane_roundabout, Movement::right}) == NotAtHome::no);
}

TEST_CASE("what was seen long ago isn't for home", "[book][at-home]") {
  const int within = at_home_rules().seen_within_days;
  const auto at = [&](int days) {
    return why_of(practices_of({lesson_before(days, {seen(Kind::zebra, Movement::none, 5)})}),
                  {Kind::zebra, Movement::none});
  };
  CHECK(at(within) == NotAtHome::no);
  CHECK(at(within + 1) == NotAtHome::long_ago);
}

TEST_CASE("without a level of its own the skill's counts, but only for what was driven",
          "[book][at-home]") {
  Lesson lesson = lesson_before(7, {seen(Kind::emerge, Movement::left, std::nullopt)});
  lesson.log.observations = {{"junctions", {2026, 11, 21}, 4, true}};
  const auto all = practices_of({lesson});
  REQUIRE(all.size() == 1);
  CHECK(all[0].why_not == NotAtHome::no);
  CHECK(avoids(alone_of(all), Kind::emerge, Movement::right));
}

TEST_CASE("what the pupil is kept off, and a motorway, are never for home", "[book][at-home]") {
  const auto all = practices_of({lesson_before(7, {seen(Kind::level_crossing, Movement::none, 5),
                                                   seen(Kind::motorway, Movement::none, 5)})},
                                {Kind::level_crossing});
  CHECK(why_of(all, {Kind::level_crossing, Movement::none}) == NotAtHome::kept_off);
  CHECK(why_of(all, {Kind::motorway, Movement::none}) == NotAtHome::kept_off);
  CHECK(nearest_of(all, 5).empty());
}

TEST_CASE("a special form done alone stands for the general one, not the other way",
          "[book][at-home]") {
  const std::vector<Practice> large{{Kind::multi_lane_roundabout, Movement::left}};
  CHECK_FALSE(avoids(large, Kind::roundabout, Movement::left));
  CHECK(avoids(large, Kind::roundabout, Movement::right));
  const std::vector<Practice> plain{{Kind::roundabout, Movement::left}};
  CHECK(avoids(plain, Kind::multi_lane_roundabout, Movement::left));
}

TEST_CASE("the nearest are told by level, the highest first", "[book][at-home]") {
  const auto all = practices_of({lesson_before(
      7, {seen(Kind::zebra, Movement::none, 1), seen(Kind::emerge, Movement::left, 3),
          seen(Kind::emerge, Movement::right, 2)})});
  const auto nearest = nearest_of(all, 2);
  REQUIRE(nearest.size() == 2);
  CHECK(nearest[0].what == Practice{Kind::emerge, Movement::left});
  CHECK(nearest[1].what == Practice{Kind::emerge, Movement::right});
}

TEST_CASE("the law is that of the region, and every sentence has its words", "[book][at-home]") {
  const say::Words words;
  for (const char* region : {"GB-ENG", "GB-WLS", "GB-SCT", "GB-NIR", "IE", "FR"}) {
    const auto laws = laws_at_home(region, today);
    REQUIRE_FALSE(laws.empty());
    for (const AtHomeLaw& law : laws) {
      CHECK(words.has(law.words));
      const std::string text = words.fill(
          law.words, {{"age", std::to_string(law.age)}, {"years", std::to_string(law.years)}});
      CHECK(text.find("0 years") == std::string::npos);
    }
  }
  const auto has = [](const char* region, const char* key) {
    const auto laws = laws_at_home(region, today);
    return std::any_of(laws.begin(), laws.end(),
                       [&](const AtHomeLaw& law) { return law.words == key; });
  };
  CHECK(laws_at_home("GB-ENG", today).front().age == 21);   // gov.uk
  CHECK(laws_at_home("GB-ENG", today).front().years == 3);  // gov.uk
  CHECK(laws_at_home("IE", today).front().years == 2);      // Road Safety Authority
  CHECK(has("GB-WLS", "law.plates_wales"));                 // D plates
  CHECK_FALSE(has("GB-ENG", "law.plates_wales"));
  CHECK(has("FR", "law.elsewhere"));
  CHECK_FALSE(has("GB-SCT", "law.elsewhere"));
}

TEST_CASE("the quiet hours can be read, and a school run isn't among them", "[book][at-home]") {
  const hours::Timetable quiet(at_home_rules().quiet);
  REQUIRE(quiet.readable());
  const hours::Setting setting("GB-ENG", "Europe/London", std::nullopt);
  const auto at = [&](Date day, int hour, int minute) {
    return quiet.at({civil_seconds({day, hour, minute, 0}), 0}, setting).in_force;
  };
  CHECK(at({2026, 11, 30}, 8, 30) == hours::Tri::no);  // Monday; GMT
  CHECK(at({2026, 11, 30}, 15, 15) == hours::Tri::no);
  CHECK(at({2026, 11, 30}, 10, 45) == hours::Tri::yes);
  CHECK(at({2026, 11, 29}, 9, 0) == hours::Tri::yes);   // Sunday
  CHECK(at({2026, 12, 25}, 10, 0) == hours::Tri::yes);  // a bank holiday
}

}  // namespace
}  // namespace loopwright::book
