// 1. A section's roads are the lesson's less what is too hard in it; its own less those its part doesn't keep to.
// 2. A point to end at is ranked by the likely time from there to the nearest thing the next section wants (or to
//    its roads) and a minute more where nobody can pull up. Those taken lie some way from each other.
#include "find/lesson_nets.hpp"

#include <algorithm>

#include "find/bans.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::find {

namespace {

// Ours: tried on the invented county.
constexpr std::size_t most_transfers = 5;
constexpr double apart_m = 350;
constexpr std::int64_t no_pull_up_ms = 60'000;
constexpr std::int64_t onward_most_ms = 45 * 60'000;

wish::Wish wish_of(const wish::Wish& lesson, const SectionPlan& plan) {
  wish::Wish wish = lesson;
  wish.wants = plan.what.wants;
  wish.end = lesson.end.value_or(lesson.home);
  wish.minutes = std::max(1, plan.what.minutes);
  wish.reserve_minutes = 0;
  wish.alternatives = 1;
  if (plan.what.hardest) wish.hardest = std::min(wish.hardest.value_or(5), *plan.what.hardest);
  wish.stops = {};
  wish.parts.clear();
  wish.easy_first = false;
  wish.drive_out.reset(), wish.drive_back.reset();
  return wish;
}

/// What the part asks for by name may be as hard as it is, in all of its sections.
wish::Wish limits_of(wish::Wish section, const wish::Wish& lesson, std::size_t part) {
  section.wants = lesson.parts.empty() ? lesson.wants : lesson.parts[part].wants;
  return section;
}

void shut_others(SectionNet& net) {
  net.costs = net.open;
  if (net.keeps_to == wish::RoadsAllowed::any) return;
  net.costs.keep_to([&roads = net.roads, keeps_to = net.keeps_to](StretchId s) {
    return wish::allows(keeps_to, roads.piece(s).flags);
  });
}

bool may_pull_up(const road::Roads& roads, StateId state) {
  return !roads.pull_ups_of(roads.stretch_of(state)).empty();
}

}  // namespace

LessonNets::LessonNets(const Ground& free, const wish::Wish& lesson, std::vector<SectionPlan> plans)
    : free_(free), backwards_(free.roads) {
  for (SectionPlan& plan : plans) {
    wish::Wish wish = wish_of(lesson, plan);
    SectionNet net{free.roads, backwards_, plan.what.roads, free.costs, free.costs};
    apply_bans(free.roads, limits_of(wish, lesson, plan.part), free.caps, net.open);
    shut_others(net);
    sections_.push_back({std::move(plan), std::move(wish), std::move(net)});
  }
  onward_.resize(sections_.size());
  for (std::size_t k = 1; k < sections_.size(); ++k) measure_onward(k);
}

void LessonNets::measure_onward(std::size_t k) {
  const SectionNetOf& next = sections_[k];
  const road::Roads& roads = free_.roads;
  std::vector<reach::Seed> seeds;
  const auto add = [&](StretchId s) {
    if (const std::int32_t along = next.net.costs.along_ms(s); along >= 0)
      seeds.push_back({StateId{s.index()}, along});
  };
  for (const road::Chance& chance : roads.chances)
    if (std::ranges::any_of(next.wish.wants, [&](const wish::Want& want) {
          return wish::counts_for(chance.kind, chance.movement, want);
        }))
      add(chance.entry);
  if (seeds.empty() && next.net.keeps_to == wish::RoadsAllowed::any) return;
  if (seeds.empty())
    for (std::size_t row = 0; row < roads.stretch_count(); ++row) add(StretchId{row});
  onward_[k] = std::make_unique<reach::Sweep>(roads, &backwards_);
  onward_[k]->run_back(seeds, next.net.open, onward_most_ms);
}

std::vector<StateId> LessonNets::transfers(std::size_t k, const From& from,
                                           std::span<const reach::Seed> goals) const {
  const road::Roads& roads = free_.roads;
  const bool last_next = k + 2 == sections_.size();
  reach::Costs costs = sections_[k].net.costs;
  if (from.opened.known()) costs.open_as_in(free_.costs, roads.stretch_of(from.opened));
  reach::Sweep out(roads), home(roads, &backwards_);
  out.run(from.seeds, costs, from.within_ms);
  home.run_back(goals, last_next ? sections_[k + 1].net.open : free_.costs, from.left_ms);
  struct Ranked {
    std::int64_t rank_ms = 0;
    StateId state;
  };
  std::vector<Ranked> ranked;
  for (const std::uint32_t row : out.settled()) {
    const StateId state{row};
    if (state == from.opened || !home.reached(state)) continue;
    const reach::Sweep* onward = onward_[k + 1].get();
    if (onward != nullptr && !onward->reached(state)) continue;
    const std::int64_t rank_ms = (onward == nullptr ? 0 : onward->ms(state)) +
                                 (may_pull_up(roads, state) ? 0 : no_pull_up_ms) +
                                 home.ms(state) / 4;
    ranked.push_back({rank_ms, state});
  }
  std::stable_sort(ranked.begin(), ranked.end(),
                   [](const Ranked& a, const Ranked& b) { return a.rank_ms < b.rank_ms; });
  std::vector<StateId> taken;
  const auto at = [&](StateId s) {
    return roads.nodes[roads.to_node(roads.stretch_of(s)).index()].at;
  };
  for (const Ranked& one : ranked) {
    if (taken.size() == most_transfers) break;
    if (std::ranges::none_of(
            taken, [&](StateId other) { return distance_m(at(other), at(one.state)) < apart_m; }))
      taken.push_back(one.state);
  }
  return taken;
}

}  // namespace loopwright::find
