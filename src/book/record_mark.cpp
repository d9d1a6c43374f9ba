// Method: every value in a fixed order, each with its length before it so that no two lists read alike, through XXH3.
#include "loopwright/book/record_mark.hpp"

#include <xxhash.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <string_view>
#include <vector>

#include "loopwright/base/hex.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::book {
namespace {

/// The text of what was told, and its mark.
class Told {
 public:
  void add(std::string_view text) {
    text_ += std::to_string(text.size());
    text_ += ':';
    text_ += text;
  }
  void add(std::int64_t number) { add(std::string_view(std::to_string(number))); }
  void add(int number) { add(std::int64_t{number}); }
  void add(double number) {
    std::array<char, 32> shortest{};
    const auto end = std::to_chars(shortest.data(), shortest.data() + shortest.size(), number).ptr;
    add(std::string_view(shortest.data(), static_cast<std::size_t>(end - shortest.data())));
  }
  void add(Date day) { add(std::string_view(road::day_text(day))); }
  void add(const std::optional<int>& number) {
    add(number ? std::string_view(std::to_string(*number)) : std::string_view("-"));
  }
  void add(const Practice& what) {
    add(road::name(what.kind));
    add(road::name(what.movement));
  }
  void add(const std::optional<Practice>& what) {
    add(what ? 1 : 0);
    if (what) add(*what);
  }

  [[nodiscard]] std::string mark() const {
    XXH128_canonical_t canonical;
    XXH128_canonicalFromHash(&canonical, XXH3_128bits(text_.data(), text_.size()));
    return hex(canonical.digest);
  }

 private:
  std::string text_;
};

void tell_plan(Told& told, const Plan& plan) {
  told.add(plan.start.unix_s);
  told.add(plan.start.offset_s);
  told.add(plan.length_minutes);
  for (const std::string* text : {&plan.area, &plan.notes, &plan.terms, &plan.wish})
    told.add(std::string_view(*text));
  told.add(plan.likely_s);
  for (const Plan::Road& road : plan.roads) {
    told.add(std::string_view(road.name));
    told.add(road.minutes);
  }
  for (const Plan::Limit& limit : plan.limits) {
    told.add(limit.value);
    told.add(limit.minutes);
  }
  for (const LetteredFact& one : plan.to_check)
    for (const std::string* text : {&one.letter, &one.fact.what, &one.fact.object})
      told.add(std::string_view(*text));
}

void tell_passes(Told& told, const std::vector<LessonPass>& passes) {
  told.add(static_cast<int>(passes.size()));
  for (const LessonPass& pass : passes) {
    told.add(pass.what);
    told.add(pass.hardness);
    told.add(std::string_view(pass.place));
    told.add(pass.driven ? 1 : 0);
    told.add(pass.level);
    told.add(pass.help ? name(*pass.help) : std::string_view());
    told.add(pass.traced ? 1 : 0);
  }
}

void tell_marks(Told& told, const Log& log) {
  told.add(static_cast<int>(log.faults.size()));
  for (const LessonFault& fault : log.faults) {
    told.add(std::string_view(fault.heading));
    told.add(name(fault.grade));
    told.add(fault.count);
    told.add(fault.what);
  }
  told.add(static_cast<int>(log.interventions.size()));
  for (const LessonIntervention& one : log.interventions) {
    told.add(name(one.how));
    told.add(one.count);
    told.add(one.what);
    told.add(std::string_view(one.why));
  }
  told.add(static_cast<int>(log.observations.size()));
  for (const Observation& one : log.observations) {
    told.add(std::string_view(one.skill));
    told.add(one.day);
    told.add(one.level);
    told.add(one.said ? 1 : 0);
  }
}

void tell_log(Told& told, const Log& log) {
  told.add(log.minutes);
  tell_passes(told, log.passes);
  tell_marks(told, log);
  told.add(log.mock ? 1 : 0);
  if (log.mock) {
    told.add(log.mock->day);
    for (const int count :
         {log.mock->faults.driving, log.mock->faults.serious, log.mock->faults.dangerous})
      told.add(count);
  }
  for (const std::string* text : {&log.conditions.light, &log.conditions.weather,
                                  &log.conditions.traffic, &log.said, &log.remark})
    told.add(std::string_view(*text));
  for (const auto* texts : {&log.goals, &log.reached}) {
    told.add(static_cast<int>(texts->size()));
    for (const std::string& text : *texts) told.add(std::string_view(text));
  }
  told.add(log.private_minutes);
}

void tell_lesson(Told& told, const Lesson& lesson) {
  told.add(lesson.number);
  told.add(name(lesson.state));
  tell_plan(told, lesson.plan);
  tell_passes(told, lesson.plan.passes);
  tell_log(told, lesson.log);
}

}  // namespace

std::string mark_of(const Lesson& lesson) {
  Told told;
  tell_lesson(told, lesson);
  return told.mark();
}

std::string mark_of(const Pupil& pupil, std::span<const Lesson> lessons) {
  Told told;
  told.add(std::string_view(pupil.scheme));
  told.add(std::string_view(pupil.home));
  told.add(pupil.added);
  if (pupil.test_day) told.add(*pupil.test_day);
  for (const auto& [tick, day] : pupil.ticks) {
    told.add(name(tick));
    told.add(day);
  }
  for (const road::Kind kind : pupil.avoids) told.add(road::name(kind));
  std::vector<const Lesson*> driven;
  for (const Lesson& lesson : lessons)
    if (lesson.state == LessonState::driven) driven.push_back(&lesson);
  std::ranges::sort(driven, {}, [](const Lesson* lesson) { return lesson->number; });
  for (const Lesson* lesson : driven) tell_lesson(told, *lesson);
  return told.mark();
}

}  // namespace loopwright::book
