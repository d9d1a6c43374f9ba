// Method (a beam search over the points at which sections meet):
//   1. The lesson is cut into sections (sections.cpp). From each of the best beginnings so far the next section is
//      driven to several points at which it may end (lesson_nets.cpp), each by the same tries as a whole loop: the
//      best walk of its passage graph and some throws of the dice. The few best beginnings are kept.
//   2. A part that keeps to some roads has a link to them before it, and the last one a link home behind it.
//   3. Drives of one section know nothing of each other: they are shared out to two threads.
//   4. Roads driven before are disliked, and quiet streets have only as many drives left as the lesson leaves them.
#include "find/lesson_search.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <future>
#include <utility>

#include "find/builder.hpp"
#include "find/counting.hpp"
#include "find/find_work.hpp"
#include "find/stops.hpp"
#include "find/street_caps.hpp"
#include "find/walks.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::find {

namespace {

constexpr std::size_t threads = 2;

void add(Score& sum, const Score& more) {
  sum.missing += more.missing;
  sum.over_caps += more.over_caps;
  sum.off_window_ms += more.off_window_ms;
  sum.value += more.value;
  sum.surplus += more.surplus;
  sum.turnings += more.turnings;
  sum.circlings += more.circlings;
  sum.tiny_rounds += more.tiny_rounds;
  sum.corners += more.corners;
}

}  // namespace

LessonWork lesson_work_of(Effort effort) {
  // Ours: tried on the invented county.
  switch (effort) {
    case Effort::quick:
      return {.beam_width = 1, .tries = 1, .tries_when_none = 8, .improvements = 4};
    case Effort::soon:
      return {.beam_width = 2,
              .tries = 2,
              .tries_when_none = 8,
              .improvements = 4,
              .more_worth = MoreWorth::at_once};
    case Effort::usual:
      return {.beam_width = 3,
              .tries_when_good = 1,
              .tries = 4,
              .tries_when_none = 30,
              .improvements = Builder::usual_improvements,
              .more_worth = MoreWorth::at_once};
    case Effort::thorough:
      return {.beam_width = 5,
              .tries_when_good = 3,
              .tries = 8,
              .tries_when_none = 60,
              .improvements = Builder::usual_improvements,
              .more_worth = MoreWorth::small};
  }
  return {};
}

/// What is driven so far, up to the end of its last state.
struct LessonSearch::Lead {
  std::vector<StateId> states;
  std::size_t practice_first = 0;
  std::vector<std::size_t> part_first;  ///< rows at which parts begin
  std::int64_t ms = 0, part_ms = 0;     ///< since the practice, and its part, began
  std::int64_t out_ms = 0;
  std::vector<PlannedStop> stops;
  Score score;
  std::int64_t candidates = 0;
};

/// Where a section may end.
struct LessonSearch::Target {
  std::vector<reach::Seed> goals;
  bool to_door = false;
  std::vector<StateId> link;  ///< behind the goal: home, off the roads the part keeps to
  std::int64_t link_ms = 0;
  std::vector<PieceId> kept = {};  ///< roads of the end, which the last section drives once more
};

/// The drive of a section.
struct LessonSearch::Driven {
  Drive drive;
  Score score;
  std::int64_t ms = 0, candidates = 0;
};

/// What keeps what it was once asked, and so is each thread's own.
struct LessonSearch::Own {
  reach::Costs free_costs;
  hours::Setting setting;
};

/// The roads from which the end can be reached gently hold a drive of the share that must be so: else no search is
/// worth its while.
bool LessonSearch::can_end_gently(const LessonNets& nets, const LessonEnds& ends) const {
  const SectionNetOf& last = nets.section(nets.size() - 1);
  if (!last.plan.gentle) return true;
  const auto needed_ms =
      static_cast<std::int64_t>(ramp_.last_share * static_cast<double>(practice_.low_ms));
  reach::Sweep home(free_.roads, &last.net.backwards);
  home.run_back(ends.goals, last.net.open, needed_ms);
  std::int64_t furthest_ms = 0;
  for (const std::uint32_t row : home.settled())
    furthest_ms = std::max(furthest_ms, home.ms(StateId{row}));
  return 2 * furthest_ms >= needed_ms;
}

std::vector<LessonSearch::Lead> LessonSearch::begin(const LessonEnds& ends) const {
  Lead lead;
  lead.states = ends.out;
  lead.practice_first = ends.out.size();
  lead.out_ms = ends.out_ms;
  return {lead};
}

std::vector<LessonSearch::Lead> LessonSearch::with_links(const LessonNets& nets, std::size_t k,
                                                         const Lead& lead) const {
  const SectionNet& net = nets.section(k).net;
  const std::int64_t most_ms = lesson_.caps.part_link_ms;
  Lead begun = lead;
  if (k == 0 || nets.section(k).plan.part != nets.section(k - 1).plan.part) {
    begun.part_first.push_back(lead.states.size());
    begun.part_ms = 0;
  }
  const bool at_door = lead.states.empty();
  std::vector<Link> links = at_door ? links_from(net, free_.starts, most_ms)
                                    : links_from(net, lead.states.back(), most_ms);
  const bool door_is_own = at_door && std::ranges::any_of(free_.starts, [&](const auto& seed) {
                             return net.is_own(seed.state);
                           });
  if (door_is_own) links = {Link{}};
  std::vector<Lead> leads;
  for (const Link& link : links) {
    Lead& on = leads.emplace_back(begun);
    on.states.insert(on.states.end(), link.states.begin(), link.states.end());
    on.ms += link.ms, on.part_ms += link.ms;
  }
  return leads;
}

std::vector<LessonSearch::Target> LessonSearch::targets(const LessonNets& nets, std::size_t k,
                                                        const Lead& lead,
                                                        const LessonEnds& ends) const {
  const SectionNetOf& section = nets.section(k);
  std::vector<Target> targets;
  if (k + 1 < nets.size()) {
    const TimeWindow window = left_for(section.plan, ramp_, lead.ms, lead.part_ms);
    LessonNets::From from;
    from.seeds = free_.starts;
    if (!lead.states.empty()) from.opened = lead.states.back(), from.seeds = {{from.opened, 0}};
    from.within_ms = window.high_ms;
    from.left_ms = practice_.high_ms - lead.ms - window.low_ms;
    std::vector<PieceId> kept;
    for (const reach::Seed& goal : ends.goals)
      kept.push_back(free_.roads.stretch_of(goal.state).piece());
    std::sort(kept.begin(), kept.end());
    kept.erase(std::unique(kept.begin(), kept.end()), kept.end());
    for (const StateId state : nets.transfers(k, from, ends.goals))
      targets.push_back({{{state, section.net.open.along_ms(free_.roads.stretch_of(state))}},
                         false,
                         {},
                         0,
                         kept});
    return targets;
  }
  const bool own = std::ranges::any_of(
      ends.goals, [&](const reach::Seed& goal) { return section.net.is_own(goal.state); });
  if (own) return {{ends.goals, ends.to_door, {}, 0}};
  const SectionNet left = unworn(section.net, lead);
  for (const LinkBack& back : links_to(left, ends.goals, lesson_.caps.part_link_ms))
    targets.push_back({{{back.last, section.net.costs.along_ms(free_.roads.stretch_of(back.last))}},
                       false,
                       back.link.states,
                       back.link.ms});
  return targets;
}

std::map<PieceId, int> LessonSearch::drives_of(const Lead& lead) const {
  std::map<PieceId, int> drives;
  for (std::size_t row = lead.practice_first; row < lead.states.size(); ++row)
    ++drives[free_.roads.stretch_of(lead.states[row]).piece()];
  return drives;
}

/// The net without the quiet streets that the lesson has worn out.
SectionNet LessonSearch::unworn(const SectionNet& net, const Lead& lead) const {
  SectionNet left = net;
  const road::Roads& roads = free_.roads;
  const StreetCaps caps(roads, lesson_.wish, lesson_.caps);
  for (const auto& [piece, times] : drives_of(lead)) {
    const bool quiet = (roads.pieces[piece.index()].flags & road::piece_flag::quiet) != 0;
    if (!quiet || times < caps.most(piece)) continue;
    left.open.shut(piece);
    left.costs.shut(piece);
  }
  return left;
}

Section LessonSearch::section_of(const SectionNetOf& section, const Lead& lead,
                                 const Target& target, TimeWindow window, const Own& own) const {
  const road::Roads& roads = free_.roads;
  Section result{section.net.costs, {}, {}, false, false, 0, 0, {}};
  result.from_door = lead.states.empty();
  result.to_door = target.to_door;
  result.starts = free_.starts;
  result.goals = target.goals;
  if (!result.from_door) {
    // It was driven in the section before, which may keep to other roads.
    const StateId last = lead.states.back();
    result.costs.open_as_in(own.free_costs, roads.stretch_of(last));
    result.starts = {{last, 0}};
  }
  result.low_ms = std::max<std::int64_t>(0, window.low_ms);
  result.high_ms = window.high_ms;
  result.driven = drives_of(lead);
  for (const StateId state : target.link) ++result.driven[roads.stretch_of(state).piece()];
  for (const PieceId piece : target.kept) ++result.driven[piece];
  // The state it begins on is driven already, and is a vertex of the section again.
  if (!result.from_door) --result.driven[roads.stretch_of(lead.states.back()).piece()];
  return result;
}

std::optional<LessonSearch::Driven> LessonSearch::drive(const Ground& ground, const Lead& lead,
                                                        bool is_tight) const {
  const Hunt hunt(ground);
  if (hunt.starts.empty() || hunt.goals.empty() || hunt.graph.size() == 0) return std::nullopt;
  Liking liking;
  liking.extra_ms.assign(hunt.graph.size(), 0);
  for (Vertex v = 0; v < hunt.graph.size(); ++v)
    if (ground.section->driven.contains(hunt.graph.stretch(v).piece()))
      liking.extra_ms[v] = 2 * hunt.graph.along_ms(v);
  Builder builder(hunt, work_.improvements);
  std::optional<std::pair<Score, std::vector<Vertex>>> best;
  const auto take = [&](const Plan& plan) {
    std::vector<Vertex> vertices = plan.vertices();
    if (vertices.empty()) return;
    const Score made = score(hunt, vertices);
    if (!made.allowed() || (best && !made.better_than(best->first))) return;
    best.emplace(made, std::move(vertices));
  };
  take(plan_along_walk(hunt, builder, work_of(Effort::quick).walk_rounds, liking));
  const auto enough = [&] {
    if (best) return best->first.good() ? work_.tries_when_good : work_.tries;
    return is_tight ? work_.tries_when_none : work_.tries;
  };
  for (std::uint64_t seed = 1; seed <= enough(); ++seed)
    take(builder.build(seed + 100 * lead.part_first.size(), liking));
  if (!best) return std::nullopt;
  if (counts_worth(ground.wish) && work_.more_worth.most_labels > 0) {
    best->second = MoreWorth(hunt).bettered(std::move(best->second), work_.more_worth);
    best->first = score(hunt, best->second);
  }
  Driven driven;
  driven.drive = hunt.drive_of(best->second);
  driven.score = best->first;
  driven.ms = hunt.drive_ms(best->second) + stops_ms(ground.roads, driven.drive);
  driven.candidates = static_cast<std::int64_t>(hunt.candidates.size());
  return driven;
}

std::optional<LessonSearch::Lead> LessonSearch::extend(const LessonNets& nets, std::size_t k,
                                                       const Lead& lead, const Target& target,
                                                       const Own& own) const {
  const SectionNetOf& section = nets.section(k);
  TimeWindow window = left_for(section.plan, ramp_, lead.ms, lead.part_ms);
  window.low_ms -= target.link_ms, window.high_ms -= target.link_ms;
  if (window.high_ms <= 0 || window.low_ms > window.high_ms) return std::nullopt;
  wish::Wish wish = section.wish;
  wish.start = wish.start.plus_seconds((lead.out_ms + lead.ms) / 1000);
  wish.minutes = static_cast<int>(window.high_ms / 60'000 + 1);
  const Ground ground(lesson_, wish, section_of(section, lead, target, window, own), own.setting);
  if (ground.starts.empty() || ground.goals.empty()) return std::nullopt;
  const std::optional<Driven> driven =
      drive(ground, lead, section.net.keeps_to == wish::RoadsAllowed::quiet);
  if (!driven) return std::nullopt;
  Lead on = lead;
  const std::size_t known = lead.states.empty() ? 0 : 1;  // the state that both share
  const std::size_t offset = lead.states.size() - known;
  const auto& states = driven->drive.states;
  on.states.insert(on.states.end(), states.begin() + static_cast<std::ptrdiff_t>(known),
                   states.end());
  on.states.insert(on.states.end(), target.link.begin(), target.link.end());
  for (PlannedStop stop : driven->drive.stops) {
    stop.at += offset;
    on.stops.push_back(stop);
  }
  on.ms += driven->ms + target.link_ms, on.part_ms += driven->ms + target.link_ms;
  on.candidates += driven->candidates;
  add(on.score, driven->score);
  return on;
}

/// Each of the beam with each of its next sections, in an order that is the same on any machine.
std::vector<LessonSearch::Lead> LessonSearch::extended(const LessonNets& nets, std::size_t k,
                                                       const std::vector<Lead>& beam,
                                                       const LessonEnds& ends) const {
  std::vector<std::pair<Lead, Target>> begun;
  for (const Lead& lead : beam)
    for (const Lead& linked : with_links(nets, k, lead))
      for (const Target& target : targets(nets, k, linked, ends))
        begun.emplace_back(linked, target);
  std::vector<std::optional<Lead>> driven(begun.size());
  const auto drive_share = [&](std::size_t first, const Own& own) {
    for (std::size_t row = first; row < begun.size(); row += threads)
      driven[row] = extend(nets, k, begun[row].first, begun[row].second, own);
  };
  const std::array<Own, threads> own{Own{free_.costs, lesson_.setting},
                                     Own{free_.costs, lesson_.setting}};
  // Where no thread can be begun, the second share is driven after the first.
  constexpr std::launch beside = std::launch::async | std::launch::deferred;
  std::future<void> other = std::async(beside, [&] { drive_share(1, own[1]); });
  drive_share(0, own[0]);
  other.get();
  std::vector<Lead> leads;
  for (std::optional<Lead>& lead : driven)
    if (lead) leads.push_back(std::move(*lead));
  return leads;
}

FoundLesson LessonSearch::finished(const Lead& lead, const LessonEnds& ends) const {
  const road::Roads& roads = free_.roads;
  FoundLesson found;
  found.candidates = lead.candidates;
  Drive& drive = found.drive.drive;
  drive.states = lead.states;
  drive.states.insert(drive.states.end(), ends.back.begin(), ends.back.end());
  drive.stops = lead.stops;
  drive.start_m = free_.home_m(roads.stretch_of(drive.states.front()));
  drive.end_m = free_.end_m(roads.stretch_of(drive.states.back()));
  // The stretch of the place at which the seats are changed is the instructor's.
  const std::size_t last = ends.to_door ? lead.states.size() - 1 : lead.states.size() - 2;
  if (!ends.out.empty() || !ends.to_door) drive.practice = {lead.practice_first, last};
  if (!lesson_.wish.parts.empty())
    for (std::size_t p = 0; p < lead.part_first.size(); ++p)
      found.drive.parts.push_back(
          {lead.part_first[p], p + 1 < lead.part_first.size() ? lead.part_first[p + 1] - 1 : last});
  return found;
}

std::vector<FoundLesson> LessonSearch::run(const LessonEnds& ends,
                                           const std::optional<wish::Ramp>& ramp,
                                           const LessonWork& work) {
  work_ = work;
  ramp_ = ramp.value_or(wish::Ramp{});
  const std::int64_t whole_ms =
      60'000LL * (lesson_.wish.minutes.value_or(0) - lesson_.wish.reserve_minutes);
  const std::int64_t other_ms =
      ends.out_ms + ends.back_ms + 1000 * wish::kept_for_stops_s(lesson_.wish);
  practice_ = {static_cast<std::int64_t>(
                   std::ceil(lesson_.caps.window_share * static_cast<double>(whole_ms))) -
                   other_ms,
               whole_ms - other_ms};
  if (practice_.high_ms <= 0) return {};
  const LessonNets nets(free_, lesson_.wish,
                        sections_of(lesson_.wish, lesson_.caps, practice_, ramp));
  if (!can_end_gently(nets, ends)) {
    furthest_ = nets.size() - 1, stuck_at_ = nets.section(furthest_).plan;
    return {};
  }
  std::vector<Lead> beam = begin(ends);
  for (std::size_t k = 0; k < nets.size(); ++k) {
    std::vector<Lead> next = extended(nets, k, beam, ends);
    if (next.empty()) {
      if (!stuck_at_ || k > furthest_) furthest_ = k, stuck_at_ = nets.section(k).plan;
      return {};
    }
    std::stable_sort(next.begin(), next.end(),
                     [](const Lead& a, const Lead& b) { return a.score.better_than(b.score); });
    if (k + 1 < nets.size()) next.resize(std::min(next.size(), work_.beam_width));
    beam = std::move(next);
  }
  std::vector<FoundLesson> found;
  for (const Lead& lead : beam) found.push_back(finished(lead, ends));
  return found;
}

}  // namespace loopwright::find
