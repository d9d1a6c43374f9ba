// 1. The drive is described as any is; its parts, its practice and what they got are put on top.
// 2. Score: as of any drive (plan.cpp), of what the learner drives. A part off its minutes is off the window by as
//    much; a row off its part's roads, a pass too hard for its part or the ramp, is off it by `fault_ms`.
#include "find/lesson_loop.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "find/counting.hpp"
#include "find/describe.hpp"
#include "find/lesson_counts.hpp"
#include "find/pull_ups.hpp"
#include "find/stops.hpp"
#include "find/street_caps.hpp"
#include "loopwright/road/kind_table.hpp"
#include "loopwright/wish/stops.hpp"
#include "loopwright/wish/turn_round.hpp"

namespace loopwright::find {

namespace {

/// What breaks a rule is worse than any minutes.
constexpr std::int64_t fault_ms = 3'600'000;
// A wait or a rounding more or less is no fault.
constexpr double a_hair_s = 0.05;

/// The rows the learner drives, as a drive of its own.
Drive practised_drive(const road::Roads& roads, const Drive& drive, wish::RowSpan rows) {
  Drive part;
  part.states.assign(drive.states.begin() + static_cast<std::ptrdiff_t>(rows.first),
                     drive.states.begin() + static_cast<std::ptrdiff_t>(rows.last) + 1);
  part.start_m = rows.first == 0 ? drive.start_m : 0;
  part.end_m = rows.last + 1 == drive.states.size()
                   ? drive.end_m
                   : roads.piece(roads.stretch_of(part.states.back())).length_m;
  return part;
}

class LessonJudge {
 public:
  LessonJudge(const Ground& ground, const LessonDrive& lesson,
              const std::optional<wish::Ramp>& ramp)
      : ground_(ground), lesson_(lesson), ramp_(ramp) {}

  LessonLoop judge() {
    loop_ = describe(ground_, lesson_.drive);
    loop_.practice = lesson_.drive.practice;
    for (const wish::RowSpan& rows : lesson_.parts)
      loop_.parts.push_back({rows.first, rows.last, {}});
    add_pull_ups(ground_, lesson_.drive, loop_);
    count();
    score_.off_window_ms = off_window_ms() + fault_ms * faults();
    return {std::move(loop_), score_};
  }

 private:
  void count() {
    const road::Roads& roads = ground_.roads;
    std::vector<PlacePass> passes = passes_of(roads, lesson_.drive);
    time_passes(ground_, lesson_.drive, passes);
    const LessonCounts counts(ground_, passes, loop_);
    const bool in_parts = !loop_.parts.empty();
    if (!in_parts) loop_.met = counts.met().front();
    for (std::size_t p = 0; p < loop_.parts.size(); ++p) loop_.parts[p].met = counts.met()[p];
    for (const auto& of_part : counts.met())
      for (const wish::Met& met : of_part) {
        if (!met.want.count) continue;
        score_.missing += std::max(0, *met.want.count - met.got);
        score_.surplus += std::max(0, met.got - *met.want.count);
      }
    const wish::RowSpan practice = wish::practice_of(loop_);
    const Drive part = practised_drive(roads, lesson_.drive, practice);
    const std::vector<wish::Want> wants = wish::all_wants(ground_.wish);
    const bool has_worth =
        wish::welcomes_practice(ground_.wish) ||
        std::ranges::any_of(wants, [](const wish::Want& want) { return !want.count; });
    const std::uint32_t twice_flags = has_worth ? road::piece_flag::quiet : 0;
    score_.value = -std::llround(metres_twice(roads, part, twice_flags));
    if (has_worth) score_.value += counts.worth();
    score_.over_caps = over_caps(part);
    score_.turnings = static_cast<int>(wish::turns_round(loop_).size());
    Circlings circlings;
    for (const StateId state : part.states) circlings.take(roads, roads.stretch_of(state));
    score_.circlings = circlings.on_rings(), score_.tiny_rounds = circlings.elsewhere();
    score_.unplaced = lesson_.drive.unplaced;
  }

  [[nodiscard]] int over_caps(const Drive& practised) const {
    std::map<PieceId, int> drives;
    for (const StateId state : practised.states) ++drives[ground_.roads.stretch_of(state).piece()];
    const StreetCaps caps(ground_.roads, ground_.wish, ground_.caps);
    int over = 0;
    for (const auto& [piece, times] : drives)
      if ((ground_.roads.pieces[piece.index()].flags & road::piece_flag::quiet) != 0)
        over += std::max(0, times - caps.most(piece));
    return over;
  }

  /// Of the whole drive and of each part.
  std::int64_t off_window_ms() {
    const std::int64_t kept_ms = 1000 * wish::kept_for_stops_s(ground_.wish);
    const std::int64_t most_ms =
        60'000LL * (ground_.wish.minutes.value_or(0) - ground_.wish.reserve_minutes);
    const auto least_ms = static_cast<std::int64_t>(
        std::ceil(ground_.caps.window_share * static_cast<double>(most_ms)));
    score_.ms = std::llround(1000 * loop_.seconds.likely) + stops_ms(ground_.roads, lesson_.drive);
    double off_ms = static_cast<double>(
        std::max({std::int64_t{0}, least_ms - kept_ms - score_.ms, score_.ms - most_ms + kept_ms}));
    for (std::size_t p = 0; p < loop_.parts.size(); ++p) {
      const int minutes = ground_.wish.parts[p].minutes;
      const double leeway_s = ground_.caps.part_leeway.of(minutes);
      const double more_s = wish::driven_s(loop_, wish::rows_of(loop_.parts[p])) - 60.0 * minutes;
      const bool last = p + 1 == loop_.parts.size();
      off_ms += 1000 * std::max({0.0, -more_s - leeway_s, last ? 0.0 : more_s - leeway_s});
    }
    return std::llround(off_ms);
  }

  [[nodiscard]] int faults() const {
    int faults = 0;
    for (std::size_t p = 0; p < loop_.parts.size(); ++p)
      faults += (keeps_to_roads(p) ? 0 : 1) +
                too_hard(wish::rows_of(loop_.parts[p]), ground_.wish.parts[p]);
    wish::Part whole;
    whole.wants = ground_.wish.wants;
    if (loop_.parts.empty()) faults += too_hard(wish::practice_of(loop_), whole);
    if (ramp_) faults += static_cast<int>(wish::off_ramp(loop_, *ramp_).size());
    return faults;
  }

  /// A part's rows are its roads', but for a link to them and, at the end of the last, one home.
  [[nodiscard]] bool keeps_to_roads(std::size_t p) const {
    const wish::RowSpan rows = wish::rows_of(loop_.parts[p]);
    const auto is_own = [&](std::size_t row) {
      return wish::allows(ground_.wish.parts[p].roads,
                          ground_.roads.piece(loop_.stretches[row].stretch).flags);
    };
    std::size_t first = rows.first, end = rows.last + 1;
    while (first < end && !is_own(first)) ++first;
    if (first == end) return false;
    if (p + 1 == loop_.parts.size())
      while (!is_own(end - 1)) --end;
    for (std::size_t row = first; row < end; ++row)
      if (!is_own(row)) return false;
    const double most_s = static_cast<double>(ground_.caps.part_link_ms) / 1000 + a_hair_s;
    return (first == rows.first || wish::driven_s(loop_, {rows.first, first - 1}) <= most_s) &&
           (end > rows.last || wish::driven_s(loop_, {end, rows.last}) <= most_s);
  }

  [[nodiscard]] int too_hard(wish::RowSpan rows, const wish::Part& part) const {
    const wish::Wish& wish = ground_.wish;
    const int most = std::min(part.hardest.value_or(5), wish.hardest.value_or(5));
    return static_cast<int>(std::ranges::count_if(loop_.passes, [&](const wish::Pass& pass) {
      if (!wish::touches(pass, rows) || road::is_of_choice(pass.kind)) return false;
      const bool named = std::ranges::any_of(
          part.wants, [&](const wish::Want& want) { return road::meets(pass.kind, want.kind); });
      const bool above = wish.level_given && !named &&
                         pass.hardness > wish.level + ground_.caps.hardness_above_level;
      return above || pass.hardness > most;
    }));
  }

  const Ground& ground_;
  const LessonDrive& lesson_;
  const std::optional<wish::Ramp>& ramp_;
  wish::Loop loop_;
  Score score_;
};

}  // namespace

LessonLoop lesson_loop(const Ground& ground, const LessonDrive& lesson,
                       const std::optional<wish::Ramp>& ramp) {
  return LessonJudge(ground, lesson, ramp).judge();
}

}  // namespace loopwright::find
