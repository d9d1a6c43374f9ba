// Method: what couldn't be driven is named by its part, minutes, roads and hardness; a want that is lacking by its
// part and the nearest chance of it; what isn't easy by the pass, its street and where in the lesson it is.
#include "find/lesson_shortfall.hpp"

#include <algorithm>
#include <cmath>

#include "find/reached_chances.hpp"
#include "find/shortfall.hpp"
#include "loopwright/road/kind_table.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::find {

namespace {

std::string minutes_words(std::int64_t ms) {
  const std::int64_t minutes = std::llround(static_cast<double>(ms) / 60'000);
  return std::to_string(minutes) + (minutes == 1 ? " minute" : " minutes");
}

constexpr int most_hardness = 5;

/// ": Lantern Row, where it begins, is itself a narrow-road of hardness 3"; empty when the door's road isn't so hard
/// whichever way one leaves.
std::string door_words(const Ground& lesson, int hardest) {
  const road::RunFact* least = nullptr;
  for (const reach::Seed& start : lesson.starts) {
    const road::RunFact* most = nullptr;
    for (const road::RunFact& fact :
         lesson.roads.run_facts_of(lesson.roads.stretch_of(start.state)))
      if (!road::is_of_choice(fact.kind) && fact.hardness > hardest &&
          (most == nullptr || fact.hardness > most->hardness))
        most = &fact;
    if (most == nullptr) return {};
    if (least == nullptr || most->hardness < least->hardness) least = most;
  }
  if (least == nullptr) return {};
  const std::string street(lesson.roads.text(lesson.roads.pieces[lesson.home.piece.index()].name));
  return ": " + (street.empty() ? std::string("the road") : street) +
         ", where it begins, is itself " + std::string(road::name(least->kind)) + " of hardness " +
         std::to_string(least->hardness);
}

std::string roads_words(const wish::Part& part) {
  std::string text;
  if (part.roads == wish::RoadsAllowed::quiet) text = " on quiet streets alone";
  if (part.roads == wish::RoadsAllowed::busier) text = " on busier roads alone";
  if (part.hardest && *part.hardest < most_hardness)
    text += ", nothing harder than " + std::to_string(*part.hardest) + ",";
  return text;
}

/// Of the section that couldn't be driven.
std::string stuck_words(const Ground& lesson, const SectionPlan& plan) {
  const wish::Wish& wish = lesson.wish;
  const int street_passes = lesson.caps.quiet_passes;
  const bool in_parts = !wish.parts.empty();
  std::string which = in_parts ? "part " + std::to_string(plan.part + 1) : "the lesson";
  if (!in_parts && plan.gentle) which = "its gentle last stretch home";
  std::string text = "no drive of about " + minutes_words(60'000LL * plan.what.minutes) +
                     roads_words(plan.what) + " was found for " + which;
  if (plan.what.roads == wish::RoadsAllowed::quiet)
    text += ", no quiet street driven more than " + std::to_string(street_passes) +
            (street_passes == 1 ? " time" : " times");
  if (plan.what.hardest && plan.part == 0) text += door_words(lesson, *plan.what.hardest);
  return text;
}

/// An easy-first lesson of one part from the door, some want of which can't even be reached: what is in the way of that is
/// the reason, not the minutes of a section.
bool lacks_way(const Ground& lesson) {
  const wish::Wish& wish = lesson.wish;
  if (!wish.parts.empty() || wish.drive_out || wish.drive_back) return false;
  return std::any_of(wish.wants.begin(), wish.wants.end(), [&](const wish::Want& want) {
    return want.count && reached_chances(lesson, want, longest_ms).empty();
  });
}

std::string bare(const wish::Want& want) {
  const std::string text = wish::write_want(want);
  return text.substr(0, text.rfind('='));
}

wish::Missing missing_of(const Ground& ground, const wish::Met& met, const std::string& where) {
  wish::Missing missing{met.want, met.got, {}, {}, {}, {}};
  const auto reached = reached_chances(ground, met.want, longest_ms);
  if (reached.empty()) {
    missing.why = where + "no " + bare(met.want) + " can be reached and left for home";
    return missing;
  }
  const auto least =
      std::min_element(reached.begin(), reached.end(),
                       [](const auto& a, const auto& b) { return a.loop_ms < b.loop_ms; });
  missing.nearest = ground.roads.chances[reached.front().chance.index()].source;
  missing.nearest_minutes = static_cast<double>(reached.front().there_ms) / 60'000;
  missing.needs_minutes = static_cast<double>(least->loop_ms) / 60'000;
  missing.why = where + std::to_string(met.got) + " of " +
                std::to_string(met.want.count.value_or(0)) + " " + bare(met.want) +
                " found in its minutes and on its roads";
  return missing;
}

/// The row on which it begins or ends, which no choice of roads leaves out.
bool is_door_row(const wish::Loop& loop, std::size_t row) {
  return row == 0 || row + 1 == loop.stretches.size();
}

/// "the last stretch home passes roundabout:right, hardness 3, in Osk Road"
std::string hard_words(const wish::Loop& loop, const wish::Ramp& ramp,
                       const std::vector<std::size_t>& off) {
  const wish::RowSpan practice = wish::practice_of(loop);
  const double begin_s = wish::begins_s(loop, practice.first);
  const double half_s = (begin_s + wish::begins_s(loop, practice.last + 1)) / 2;
  const auto is_late = [&](std::size_t pass) {
    return wish::begins_s(loop, wish::begin_row(loop.passes[pass])) > half_s;
  };
  const bool late = is_late(off.back());
  // Of those at that end the hardest is named.
  const wish::Pass* hardest = nullptr;
  for (const std::size_t pass : off)
    if (is_late(pass) == late &&
        (hardest == nullptr || loop.passes[pass].hardness > hardest->hardness))
      hardest = &loop.passes[pass];
  const std::string& street = loop.stretches[wish::begin_row(*hardest)].street;
  std::string what(road::name(hardest->kind));
  if (hardest->movement != road::Movement::none)
    what.append(":").append(road::name(hardest->movement));
  return std::string(late ? "the last stretch home" : "the first stretch") + " passes " + what +
         ", hardness " + std::to_string(hardest->hardness) +
         (street.empty() ? "" : ", by " + street) +
         (is_door_row(loop, wish::begin_row(*hardest)) ? ", the road of the door itself" : "") +
         ", more than " + std::to_string(late ? ramp.late : ramp.early);
}

}  // namespace

wish::Shortfall explain_no_lesson(const Ground& lesson, const std::vector<LessonEnds>& ends,
                                  const LessonSearch& search) {
  if (search.stuck_at() && lacks_way(lesson)) {
    Nearest nothing;
    nothing.got.resize(lesson.wish.wants.size());
    return explain(lesson, nothing);
  }
  wish::Shortfall shortfall;
  const std::int64_t kept_ms = 1000 * wish::kept_for_stops_s(lesson.wish);
  const std::int64_t whole_ms =
      60'000LL * (lesson.wish.minutes.value_or(0) - lesson.wish.reserve_minutes);
  std::int64_t parts_ms = 0;
  for (const wish::Part& part : lesson.wish.parts) parts_ms += 60'000LL * part.minutes;
  if (ends.empty()) {
    shortfall.why =
        "no way to where the learner begins, or from where the learner ends, that may "
        "be driven within this wish";
  } else if (const std::int64_t driven_ms = ends.front().out_ms + ends.front().back_ms;
             driven_ms + parts_ms + kept_ms > whole_ms) {
    shortfall.why = "your own driving takes " + minutes_words(driven_ms) +
                    ", which leaves too few of the " + minutes_words(whole_ms) + " for the lesson";
  } else if (search.stuck_at()) {
    shortfall.why = stuck_words(lesson, *search.stuck_at());
  } else {
    shortfall.why = "no lesson was found that keeps to all of this";
  }
  const auto lacks = [&](const wish::Want& want) {
    if (want.count) shortfall.missing.push_back(missing_of(lesson, {want, 0}, ""));
  };
  if (!search.stuck_at() && !ends.empty())
    for (const wish::Want& want : wish::all_wants(lesson.wish)) lacks(want);
  return shortfall;
}

void add_lacking(const Ground& lesson, const std::vector<wish::Loop>& loops,
                 std::optional<wish::Shortfall>& shortfall) {
  std::vector<wish::Missing> missing;
  const auto add = [&](const std::vector<wish::Met>& all, const std::string& where) {
    for (const wish::Met& met : all)
      if (met.got < met.want.count.value_or(0)) missing.push_back(missing_of(lesson, met, where));
  };
  const wish::Loop& first = loops.front();
  add(first.met, "");
  for (std::size_t p = 0; p < first.parts.size(); ++p)
    add(first.parts[p].met, "part " + std::to_string(p + 1) + ": ");
  std::string not_easy;
  if (lesson.wish.easy_first) {
    const wish::Ramp ramp = ramp_of(lesson.wish, lesson.caps);
    for (const wish::Loop& loop : loops) {
      const std::vector<std::size_t> off = wish::off_ramp(loop, ramp);
      if (off.empty()) continue;
      // Appended: gcc 12 warns of a sum that begins with so short a string.
      not_easy = wish::not_easy;
      not_easy += "as asked: " + hard_words(loop, ramp, off) + "; no easier one was found";
      break;
    }
  }
  if (missing.empty() && not_easy.empty()) return;
  if (!shortfall) shortfall.emplace();
  if (!not_easy.empty())
    shortfall->why = not_easy;
  else if (!missing.empty())
    shortfall->why = missing.front().why;
  shortfall->missing = std::move(missing);
}

}  // namespace loopwright::find
