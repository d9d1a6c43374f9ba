// Method:
//   1. Lessons are searched between each pair of ends (lesson_ends.cpp, lesson_search.cpp) and judged as wholes
//      (lesson_loop.cpp); what the clock may shut when they pass it becomes a wall, and all is searched again.
//   2. A lesson that can't be easy first is searched with its beginning, or its end, as much harder as it takes.
//   3. What is best is the first loop, with others that share little road with it; what it lacks is told part by
//      part (lesson_shortfall.cpp).
#include "find/parts.hpp"

#include <algorithm>

#include "find/lesson_search.hpp"
#include "find/lesson_shortfall.hpp"
#include "find/plan_pull_ups.hpp"
#include "find/pull_ups.hpp"
#include "find/shortfall.hpp"
#include "find/stops.hpp"
#include "find/ways_home.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::find {

namespace {

struct Lesson {
  LessonDrive drive;
  LessonLoop made;
  std::int64_t candidates = 0;
};

/// The same wish with nothing too hard: for roads the instructor drives, and for sections with limits of their own.
wish::Wish without_limits(const wish::Wish& wish) {
  wish::Wish free = wish;
  free.level_given = false;
  free.hardest.reset();
  return free;
}

/// The same ramp as much harder as the last search needed where it got stuck; none when nothing is too hard any more.
/// Each is harder than the one before at one end at least, so that they come to an end.
std::optional<wish::Ramp> harder(wish::Ramp ramp, const LessonSearch& search) {
  constexpr int hardest = 5;
  const std::optional<SectionPlan>& stuck = search.stuck_at();
  const bool at_end = stuck && stuck->gentle, at_beginning = stuck && search.furthest() == 0;
  if (ramp.early == hardest && ramp.late == hardest) return std::nullopt;
  const bool keep_early = at_end && !at_beginning && ramp.late < hardest;
  const bool keep_late = at_beginning && !at_end && ramp.early < hardest;
  if (!keep_early) ramp.early = std::min(hardest, ramp.early + 1);
  if (!keep_late) ramp.late = std::min(hardest, ramp.late + 1);
  return ramp;
}

class LessonFinder {
 public:
  LessonFinder(const Ground& lesson, const Ground& free, Effort effort)
      : lesson_(lesson),
        effort_(effort),
        search_(lesson, free),
        ends_(ends_of(lesson.wish, free)) {}

  FindResult run() {
    std::optional<wish::Ramp> ramp;
    if (lesson_.wish.easy_first) ramp = ramp_of(lesson_.wish, lesson_.caps);
    for (look(ramp); lessons_.empty() && ramp;) {
      ramp = harder(*ramp, search_);
      if (ramp) look(ramp);
    }
    FindResult result;
    choose(result);
    tell_shortfall(result);
    return result;
  }

  /// What drives met shut, when that left none.
  [[nodiscard]] const std::vector<lanes::Breach>& breaches() const { return breaches_; }

 private:
  /// A first answer that lacks something is looked for as long as usual.
  void look(const std::optional<wish::Ramp>& ramp) {
    search(ramp, effort_);
    const bool is_met = !lessons_.empty() && lessons_.front().made.score.missing == 0;
    if (effort_ < Effort::usual && !is_met) search(ramp, Effort::usual);
  }

  void search(const std::optional<wish::Ramp>& ramp, Effort effort) {
    search_.forget();
    for (const LessonEnds& ends : ends_)
      for (const FoundLesson& found : search_.run(ends, ramp, lesson_work_of(effort))) {
        Lesson lesson{found.drive, {}, found.candidates};
        if (wish::kept_for_stops_s(lesson_.wish) > 0) plan_pull_ups(lesson_, lesson.drive.drive);
        lesson.made = lesson_loop(lesson_, lesson.drive, ramp);
        if (!lesson.made.score.allowed()) continue;
        const auto met = lanes::breaches_on(lesson_.roads, lesson.made.loop, lesson_.setting);
        breaches_.insert(breaches_.end(), met.begin(), met.end());
        if (met.empty()) lessons_.push_back(std::move(lesson));
      }
    std::stable_sort(lessons_.begin(), lessons_.end(), [](const Lesson& a, const Lesson& b) {
      return a.made.score.better_than(b.made.score);
    });
    if (!lessons_.empty()) breaches_.clear();
  }

  void choose(FindResult& result) {
    const auto wanted = static_cast<std::size_t>(lesson_.wish.alternatives);
    for (const Lesson& lesson : lessons_) {
      if (result.loops.size() == wanted) break;
      if (lesson.made.score.missing > lessons_.front().made.score.missing) continue;
      const bool differs = std::ranges::all_of(result.loops, [&](const wish::Loop& chosen) {
        return lacks_the_same(chosen, lesson.made.loop) &&
               shared_part(chosen, lesson.made.loop, lesson_.caps.overlap_exempt_m) <
                   lesson_.caps.overlap_share;
      });
      if (differs) add(result, lesson);
    }
    if (!result.loops.empty() && result.loops.size() < wanted)
      result.fewer_because = "further loops share 40 % or more of their road with these";
  }

  /// A shortfall speaks of all loops, so they must lack the same wants.
  static bool lacks_the_same(const wish::Loop& a, const wish::Loop& b) {
    const auto lacking = [](const wish::Loop& loop) {
      std::vector<bool> lacks;
      const auto add = [&](const std::vector<wish::Met>& all) {
        for (const wish::Met& met : all) lacks.push_back(met.got < met.want.count.value_or(0));
      };
      add(loop.met);
      for (const wish::LoopPart& part : loop.parts) add(part.met);
      return lacks;
    };
    return lacking(a) == lacking(b);
  }

  void add(FindResult& result, const Lesson& lesson) {
    wish::Loop loop = lesson.made.loop;
    loop.id = static_cast<int>(result.loops.size()) + 1;
    const std::int64_t whole_ms = away_ms(lesson_, lesson.drive.drive);
    WaysHome(lesson_, states_before_end(lesson_, whole_ms), whole_ms)
        .add_to(lesson.drive.drive, loop);
    loop.certificate.value = lesson.made.score.value;
    loop.certificate.candidates = lesson.candidates;
    tell_without_place(lesson_, lesson.drive.drive, loop, result.shortfall);
    result.loops.push_back(std::move(loop));
  }

  void tell_shortfall(FindResult& result) {
    if (result.loops.empty()) {
      result.shortfall = explain_no_lesson(lesson_, ends_, search_);
      return;
    }
    add_lacking(lesson_, result.loops, result.shortfall);
  }

  const Ground& lesson_;
  const Effort effort_;
  LessonSearch search_;
  std::vector<LessonEnds> ends_;
  std::vector<Lesson> lessons_;
  std::vector<lanes::Breach> breaches_;
};

}  // namespace

FindResult find_lessons(const road::Roads& roads, const wish::Wish& wish,
                        const hours::Setting& setting, Effort effort) {
  ClockWalls walls(roads, wish, setting);
  const wish::Wish free_wish = without_limits(wish);
  for (;;) {
    const Ground lesson(roads, wish, setting, walls), free(roads, free_wish, setting, walls);
    if (free.starts.empty() || free.goals.empty()) return {{}, explain_shut_in(free), {}};
    LessonFinder finder(lesson, free, effort);
    FindResult result = finder.run();
    if (finder.breaches().empty()) return result;
    if (walls.is_last_round()) return {{}, explain_shut(finder.breaches().front()), {}};
    walls.learn(finder.breaches());
  }
}

}  // namespace loopwright::find
