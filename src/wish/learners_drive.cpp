// 1. The stretches from the one where the seats are changed to the one where they are again; the first and the last are
//    driven in part, and so last a part of their time.
// 2. Passes, places to pull up and ways home that lie on them are kept, with their indices moved.
#include "loopwright/wish/learners_drive.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace loopwright::wish {
namespace {

/// Stretches of the whole drive, both included.
struct Cut {
  std::size_t first = 0, last = 0;
  [[nodiscard]] bool has(std::size_t stretch) const { return stretch >= first && stretch <= last; }
  [[nodiscard]] std::size_t moved(std::size_t stretch) const {
    return std::clamp(stretch, first, last) - first;
  }
};

Range at_end(const Loop& loop, std::size_t stretch) {
  if (stretch + 1 < loop.stretches.size()) return loop.stretches[stretch + 1].arrive_s;
  const Range& all = loop.seconds;
  return {all.low + loop.stop_seconds, all.likely + loop.stop_seconds,
          all.high + loop.stop_seconds};
}

/// When so much of a stretch is driven.
Range at_share(const Loop& loop, std::size_t stretch, double share) {
  const Range from = loop.stretches[stretch].arrive_s, to = at_end(loop, stretch);
  const auto between = [&](double a, double b) { return a + share * (b - a); };
  return {between(from.low, to.low), between(from.likely, to.likely), between(from.high, to.high)};
}

/// Metres from where the stretch is entered to a place beside it.
double entered_m(const road::Roads& roads, const LoopStretch& driven, Point place) {
  const double along_m = nearest_on_line(roads.shape_of(driven.stretch.piece()), place).along_m;
  return driven.stretch.against() ? roads.piece(driven.stretch).length_m - along_m : along_m;
}

/// Keeps of a stretch the part between two places, in metres from where it is entered.
void keep_part(const road::Roads& roads, LoopStretch& driven, double from_m, double to_m) {
  const double length_m = roads.piece(driven.stretch).length_m;
  driven.metres = std::max(to_m - from_m, 0.0);
  // `partial_m` counts from the node called `from`, which is where the stretch is entered.
  driven.partial_m = std::array{std::clamp(from_m, 0.0, length_m), std::clamp(to_m, 0.0, length_m)};
}

double share_of(const road::Roads& roads, const LoopStretch& driven, double entered_m) {
  const double length_m = roads.piece(driven.stretch).length_m;
  return length_m > 0 ? std::clamp(entered_m / length_m, 0.0, 1.0) : 0;
}

void cut_stretches(const road::Roads& roads, const Wish& wish, const Loop& whole, const Cut& cut,
                   Loop& own) {
  const auto row = [&](std::size_t stretch) {
    return whole.stretches.begin() + static_cast<std::ptrdiff_t>(stretch);
  };
  own.stretches.assign(row(cut.first), row(cut.last) + 1);
  const bool out = whole.practice->at(0) > 0 && wish.drive_out;
  const bool back = whole.practice->at(1) + 1 < whole.stretches.size() && wish.drive_back;
  if (out) {
    LoopStretch& first = own.stretches.front();
    const double at_m = entered_m(roads, first, *wish.drive_out);
    first.arrive_s = at_share(whole, cut.first, share_of(roads, first, at_m));
    keep_part(roads, first, at_m, roads.piece(first.stretch).length_m);
  }
  Range end = at_end(whole, cut.last);
  if (back) {
    LoopStretch& last = own.stretches.back();
    const double at_m = entered_m(roads, last, *wish.drive_back);
    end = at_share(whole, cut.last, share_of(roads, last, at_m));
    keep_part(roads, last, 0, at_m);
  }
  own.seconds = {end.low - whole.stop_seconds, end.likely - whole.stop_seconds,
                 end.high - whole.stop_seconds};
  own.metres = 0;
  for (const LoopStretch& driven : own.stretches) own.metres += driven.metres;
}

/// What of its indices lies in the drive, and their new places.
void keep_passes(const Loop& whole, const Cut& cut, LearnersDrive& own) {
  own.loop.passes.clear();
  for (std::size_t i = 0; i < whole.passes.size(); ++i) {
    Pass pass = whole.passes[i];
    const bool whole_in = pass.first >= cut.first && pass.last <= cut.last;
    const bool reaches_in = pass.first <= cut.last && pass.last >= cut.first;
    if (!whole_in && !(road::is_stretch_like(pass.kind) && reaches_in)) continue;
    pass.first = cut.moved(pass.first), pass.last = cut.moved(pass.last);
    own.loop.passes.push_back(std::move(pass));
    own.passes.push_back(i);
  }
}

void move_practised(std::vector<Met>& all, const std::vector<std::size_t>& passes) {
  for (Met& met : all) {
    if (!met.practised) continue;
    std::vector<std::size_t> moved;
    for (const std::size_t pass : *met.practised)
      if (const auto at = std::ranges::lower_bound(passes, pass); at != passes.end() && *at == pass)
        moved.push_back(static_cast<std::size_t>(at - passes.begin()));
    met.practised = std::move(moved);
  }
}

/// Of a hard pass whose next place to pull up lies behind the change of seats nothing is told: one stops there first.
void keep_stops(const Loop& whole, const Cut& cut, LearnersDrive& own) {
  Loop& loop = own.loop;
  loop.pull_ups.clear(), loop.stops_after.clear();
  std::vector<std::optional<std::size_t>> moved(whole.pull_ups.size());
  for (std::size_t k = 0; k < whole.pull_ups.size(); ++k) {
    if (!cut.has(whole.pull_ups[k].stretch)) continue;
    moved[k] = loop.pull_ups.size();
    loop.pull_ups.push_back(whole.pull_ups[k]);
    loop.pull_ups.back().stretch -= cut.first;
  }
  for (StopAfter after : whole.stops_after) {
    const auto pass = std::ranges::lower_bound(own.passes, after.pass);
    if (pass == own.passes.end() || *pass != after.pass) continue;
    if (after.pull_up && !moved[*after.pull_up]) continue;
    after.pass = static_cast<std::size_t>(pass - own.passes.begin());
    if (after.pull_up) after.pull_up = moved[*after.pull_up];
    loop.stops_after.push_back(after);
  }
}

/// From a corner of the learner's; the last stretch ends at the kerb.
void keep_ways_home(const Cut& cut, bool back, Loop& loop) {
  std::erase_if(loop.ways_home, [&](const WayHome& way) {
    return !cut.has(way.from_stretch) || (back && way.from_stretch == cut.last);
  });
  for (WayHome& way : loop.ways_home) way.from_stretch -= cut.first;
}

template <class Rows>
void keep_rows(const Cut& cut, std::vector<Rows>& all) {
  std::erase_if(all, [&](const Rows& one) { return one.last < cut.first || one.first > cut.last; });
  for (Rows& one : all) one.first = cut.moved(one.first), one.last = cut.moved(one.last);
}

}  // namespace

LearnersDrive learners_drive(const road::Roads& roads, const Wish& wish, const Loop& loop) {
  LearnersDrive own{loop, 0, {}};
  if (!loop.practice) {
    for (std::size_t i = 0; i < loop.passes.size(); ++i) own.passes.push_back(i);
    return own;
  }
  const auto [first, last] = *loop.practice;
  const Cut cut{first == 0 ? 0 : first - 1, std::min(last + 1, loop.stretches.size() - 1)};
  own.before = cut.first;
  cut_stretches(roads, wish, loop, cut, own.loop);
  keep_passes(loop, cut, own);
  keep_stops(loop, cut, own);
  keep_ways_home(cut, last < cut.last, own.loop);
  keep_rows(cut, own.loop.bus_lanes);
  keep_rows(cut, own.loop.parts);
  keep_rows(cut, own.loop.independent);
  move_practised(own.loop.met, own.passes);
  for (LoopPart& part : own.loop.parts) move_practised(part.met, own.passes);
  own.loop.practice = std::array{first - cut.first, last - cut.first};
  return own;
}

}  // namespace loopwright::wish
