#include "page/pupil_record.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "loopwright/base/instant.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/scheme.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::page {
namespace {

using Json = nlohmann::json;

Json skills_of(const book::Scheme& scheme, const std::vector<book::Lesson>& lessons) {
  Json skills = Json::array();
  for (const book::SkillLine& line : book::skill_lines(scheme, lessons)) {
    Json seen = Json::array();
    for (const book::Seen& one : line.seen)
      seen.push_back({{"day", road::day_text(one.day)},
                      {"level", one.level},
                      {"word", scheme.level_name(one.level)}});
    skills.push_back(
        {{"group", line.skill->group}, {"name", line.skill->name}, {"seen", std::move(seen)}});
  }
  return skills;
}

Json exposure_rows(const std::vector<book::Lesson>& lessons) {
  Json rows = Json::array();
  for (const book::Exposure& on : book::exposure_of(lessons))
    rows.push_back({{"road", on.road},
                    {"light", on.conditions.light},
                    {"weather", on.conditions.weather},
                    {"traffic", on.conditions.traffic},
                    {"minutes", std::lround(on.minutes)}});
  return rows;
}

/// Whether a wish's words name the kind as wanted.
bool is_named(std::string_view wish, road::Kind kind) {
  const std::string name(road::name(kind));
  constexpr std::string_view before = " ,+", behind = ":=,+\n";
  for (auto at = wish.find(name); at != std::string_view::npos; at = wish.find(name, at + 1)) {
    const std::size_t line = wish.rfind('\n', at) + 1;  // npos + 1: the first one
    const std::size_t end = at + name.size();
    if ((wish.substr(line).starts_with("want ") || wish.substr(line).starts_with("part ")) &&
        before.find(wish[at - 1]) != std::string_view::npos &&
        (end == wish.size() || behind.find(wish[end]) != std::string_view::npos))
      return true;
  }
  return false;
}

/// A pass of that kind counts for what a wish's words want.
bool is_wanted(std::string_view wish, road::Kind kind) {
  return std::ranges::any_of(road::all_kinds(), [&](road::Kind wanted) {
    return road::meets(kind, wanted) && is_named(wish, wanted);
  });
}

/// What is practised on a lesson, in the words of a log, and on how many passes: what was asked for first, then the
/// rest; either in the order in which it comes.
Json practice_of(const std::vector<book::LessonPass>& passes, std::string_view wish) {
  Json rows = Json::array();
  for (const book::LessonPass& pass : passes) {
    const std::string what = book::words_of(pass.what);
    const bool wanted = is_wanted(wish, pass.what.kind);
    const auto known =
        std::ranges::find_if(rows, [&](const Json& row) { return row["what"] == what; });
    if (known == rows.end())
      rows.push_back({{"what", what}, {"passes", 1}, {"wanted", wanted}});
    else
      (*known)["passes"] = (*known)["passes"].get<int>() + 1;
  }
  std::stable_partition(rows.begin(), rows.end(),
                        [](const Json& row) { return row["wanted"].get<bool>(); });
  return rows;
}

Json lesson_row(const book::Lesson& lesson) {
  const bool driven = lesson.state == book::LessonState::driven;
  const auto& passes = driven ? lesson.log.passes : lesson.plan.passes;
  int stepped_in = 0;
  for (const book::LessonIntervention& one : lesson.log.interventions) stepped_in += one.count;
  return {{"number", lesson.number},
          {"state", book::name(lesson.state)},
          {"mock", book::is_mock_plan(lesson.plan)},
          {"day", road::day_text(book::day_of(lesson))},
          {"start", write_clock(lesson.plan.start)},
          {"length", lesson.plan.length_minutes},
          {"likely", std::lround(lesson.plan.likely_s / 60)},
          {"passes",
           driven ? std::ranges::count_if(passes, &book::LessonPass::driven) : std::ssize(passes)},
          {"practice", practice_of(passes, lesson.plan.wish)},
          {"stepped_in", stepped_in}};
}

Json ticks_of(const book::Pupil& pupil) {
  Json ticks = Json::object();
  for (const auto& [tick, day] : pupil.ticks)
    ticks[std::string(book::name(tick))] = road::day_text(day);
  return ticks;
}

}  // namespace

Json record_of_pupil(const book::Book& book, std::string_view code) {
  const book::Pupil pupil = book::pupil_of(book, code);
  const auto lessons = book::lessons_of(book, pupil.code);
  Json rows = Json::array(), avoids = Json::array();
  for (const book::Lesson& lesson : lessons) rows.push_back(lesson_row(lesson));
  for (const road::Kind kind : pupil.avoids) avoids.push_back(road::name(kind));
  const book::Scheme* scheme = book::find_scheme(pupil.scheme);
  return {{"code", pupil.code},
          {"home", pupil.home},
          {"scheme", scheme == nullptr ? pupil.scheme : std::string(scheme->name)},
          {"added", road::day_text(pupil.added)},
          {"test", pupil.test_day ? Json(road::day_text(*pupil.test_day)) : Json()},
          {"ticks", ticks_of(pupil)},
          {"avoids", std::move(avoids)},
          {"my_your", pupil.my_your},
          {"level",
           scheme == nullptr ? Json() : Json(book::wish_level(book::level_now(*scheme, lessons)))},
          {"skills", scheme == nullptr ? Json::array() : skills_of(*scheme, lessons)},
          {"exposure", exposure_rows(lessons)},
          {"lessons", std::move(rows)}};
}

}  // namespace loopwright::page
