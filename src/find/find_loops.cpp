// Method:
//   1. Hunt: what can be reached, and the chances that count (hunt.cpp).
//   2. Tries: drives along the best walks of the passage graph, as found and as bounded, and a fixed
//      number of others, each with other dice; the best by Score is the first loop.
//   3. Where as many as fit are wanted, the best of these are driven anew part by part (more_worth.hpp), and with less
//      road twice (less_again.hpp).
//   4. For each alternative, more tries that dislike the roads and places used so far; of all tries
//      the best is taken that shares little enough with every loop chosen before.
//   5. What the best loop leaves unmet is explained (shortfall.cpp).
#include "loopwright/find/find.hpp"

#include <algorithm>
#include <array>
#include <future>
#include <span>
#include <utility>

#include "find/builder.hpp"
#include "find/certify.hpp"
#include "find/counting.hpp"
#include "find/describe.hpp"
#include "find/find_by.hpp"
#include "find/find_work.hpp"
#include "find/independent.hpp"
#include "find/left_out.hpp"
#include "find/less_again.hpp"
#include "find/more_worth.hpp"
#include "find/parts.hpp"
#include "find/pull_ups.hpp"
#include "find/shortfall.hpp"
#include "find/walks.hpp"
#include "find/ways_home.hpp"

namespace loopwright::find {

namespace {

// Ours: tools/bench shows what they cost.
constexpr int alternative_tries = 6;
constexpr int alternative_rounds = 2;
constexpr double most_corners_a_minute = 0.6;  // of a drive that needs no other beside it

struct Try {
  std::vector<Vertex> vertices;
  Score score;
  std::vector<PlaceId> places;
  bool is_driven_less_again = false;
};

/// A shortfall speaks of all loops of an answer, so they must lack the same wants.
bool lacks_the_same(const wish::Loop& a, const wish::Loop& b) {
  return std::equal(a.met.begin(), a.met.end(), b.met.begin(),
                    [](const wish::Met& one, const wish::Met& other) {
                      const int asked = one.want.count.value_or(0);
                      return (one.got < asked) == (other.got < asked);
                    });
}

class LoopSearch {
 public:
  /// bound: known of the wish (Certifier).
  LoopSearch(const Hunt& hunt, Effort effort, const FindWork& work,
             std::optional<std::int64_t> bound)
      : hunt_(hunt),
        effort_(effort),
        work_(work),
        builder_(hunt, work_.improvements),
        certifier_(hunt, bound),
        ways_home_(hunt) {}

  FindResult run() {
    if (!found_best_at_once()) look_on();
    return told();
  }

  /// What the tries met shut, when that leaves none as good: make walls of it and search again.
  [[nodiscard]] const std::vector<lanes::Breach>& breaches() const { return breaches_; }
  [[nodiscard]] std::optional<std::int64_t> bound() const { return certifier_.best_known(); }

 private:
  /// Of counts alone the first walk's drive is often as good as any can be, once no road is driven twice.
  bool found_best_at_once() {
    const wish::Wish& wish = hunt_.ground.wish;
    if (counts_worth(wish) || wish.independent_minutes > 0 || work_.driven_less_again == 0)
      return false;
    try_walks(work_of(Effort::quick));
    drive_less_again(work_);
    return needs_no_other(best().score);
  }

  /// Nothing is worth more, and there isn't much to say on it.
  [[nodiscard]] bool needs_no_other(const Score& score) const {
    return score.as_asked() &&
           score.corners <= most_corners_a_minute * hunt_.ground.wish.minutes.value_or(0) &&
           is_best_possible(score);
  }

  [[nodiscard]] bool is_best_possible(const Score& score) const {
    return score.good() && score.circlings == 0 &&
           certifier_.certificate(score.value).state == "best possible";
  }

  /// More work on other dice may come to less: the usual answer is among those of a thorough look.
  void look_on() {
    if (effort_ == Effort::thorough) look_on(work_of(Effort::usual));
    if (tries_.empty() || !needs_no_other(best().score)) look_on(work_);
  }

  void look_on(const FindWork& work) {
    try_walks(work);
    if (!work.until_good || best_is_as_asked())
      try_more(tries_after_walks(work), {});
    else
      for (int k = 0; k < work.tries_without && !best_is_as_asked(); ++k) try_more(1, {});
    if (best().score.missing > 0 || !best().score.allowed()) try_more(work.tries_when_unmet, {});
    if (hunt_.ground.wish.independent_minutes > 0 && best_with_independent() == nullptr)
      try_more(work.tries_when_unmet, {});
    make_worth_more(work);
    drive_less_again(work);
  }

  void make_worth_more(const FindWork& work) {
    if (!counts_worth(hunt_.ground.wish)) return;
    for (const WorthStep& step : work.worth_more)
      if (!is_best_possible(best().score)) make_worth_more(step);
  }

  /// Every other try on a thread of its own: each is bettered by itself, so that the answer is the same on any machine.
  void make_worth_more(const WorthStep& step) {
    const std::size_t count = std::min(step.tries, tries_.size());
    on_two_threads(count, [&](std::size_t first) {
      MoreWorth more(hunt_);
      for (std::size_t k = first; k < count; k += 2) {
        Try& made = tries_[k];
        if (!made.score.allowed()) continue;
        made.vertices = more.bettered(std::move(made.vertices), step.widths);
        made.score = score(hunt_, made.vertices);
        made.places = places_of(made.vertices);
        made.is_driven_less_again = false;
      }
    });
    sort_tries();
  }

  /// share(0) and, of more than one try, share(1) beside it. Where no thread can be begun, after it.
  template <class Share>
  static void on_two_threads(std::size_t tries, const Share& share) {
    std::future<void> other;
    if (tries > 1) other = std::async(std::launch::async | std::launch::deferred, share, 1);
    if (tries > 0) share(0);
    if (other.valid()) other.get();
  }

  /// Of the passes that count for a want.
  [[nodiscard]] std::vector<PlaceId> places_of(std::span<const Vertex> vertices) const {
    const std::vector<PlacePass> passes = passes_on(hunt_, hunt_.drive_of(vertices));
    std::vector<PlaceId> places;
    for (const wish::Want& want : hunt_.ground.wish.wants)
      for (const std::size_t row : counting(hunt_.ground, passes, want))
        places.push_back(passes[row].place);
    return places;
  }

  FindResult told() {
    pass_over_shut();
    FindResult result;
    if (breaches_.empty()) choose(result);
    if (!breaches_.empty()) return result;
    const Try& answer = used_.empty() ? best() : used_.front();
    if (!answer.score.good()) result.shortfall = explain(hunt_.ground, nearest(result));
    for (std::size_t k = 0; k < result.loops.size(); ++k) {
      tell_without_place(hunt_.ground, hunt_.drive_of(used_[k].vertices), result.loops[k],
                         result.shortfall);
      add_independent(hunt_.ground.roads, hunt_.ground.wish, result.loops[k], result.shortfall);
    }
    return result;
  }

  /// Walks are made for what is worth most, not for the least road driven twice. Where the clock shuts streets
  /// one may turn out to meet them shut: more to choose from, unless the first good one will do.
  [[nodiscard]] int tries_after_walks(const FindWork& work) const {
    const bool may_be_shut = !work.until_good && hunt_.ground.walls.some_at_times();
    if (!best().score.good() || may_be_shut) return work.tries_without;
    return counts_worth(hunt_.ground.wish) ? work.tries_for_most : work.tries;
  }

  [[nodiscard]] bool best_is_as_asked() const {
    return best().score.as_asked() && breaches_of(best()).empty();
  }

  /// Streets and turns that the clock may shut when the drive is there.
  [[nodiscard]] std::vector<lanes::Breach> breaches_of(const Try& made) const {
    if (!hunt_.ground.walls.some_at_times()) return {};
    return lanes::breaches_on(hunt_.ground.roads,
                              describe(hunt_.ground, hunt_.drive_of(made.vertices)),
                              hunt_.ground.setting);
  }

  /// So many of the best tries that weren't yet, two at a time, each on a thread of its own, until one needs no
  /// other; then the best is first.
  void drive_less_again(const FindWork& work) {
    std::vector<Try*> next;
    for (Try& made : tries_)
      if (next.size() < work.driven_less_again && made.score.good() && !made.is_driven_less_again)
        next.push_back(&made);
    std::array<LessAgain, 2> less{LessAgain(hunt_), LessAgain(hunt_)};
    for (std::size_t from = 0; from < next.size() && !any_needs_no_other(); from += less.size()) {
      const std::span<Try*> pair =
          std::span(next).subspan(from, std::min(less.size(), next.size() - from));
      on_two_threads(pair.size(),
                     [&](std::size_t k) { drive_less_again(less[k], work, *pair[k]); });
    }
    sort_tries();
  }

  [[nodiscard]] bool any_needs_no_other() const {
    return std::ranges::any_of(tries_, [&](const Try& made) { return needs_no_other(made.score); });
  }

  void drive_less_again(LessAgain& less, const FindWork& work, Try& made) const {
    made.vertices =
        less.with_fewer_corners(less.bettered(std::move(made.vertices), work.less_again_searches),
                                work.less_again_searches);
    made.score = score(hunt_, made.vertices);
    made.is_driven_less_again = true;
  }

  /// Drops the tries that meet a street or turn when the clock may shut it; when none is left within
  /// the window, what they met is in breaches_.
  void pass_over_shut() {
    if (!hunt_.ground.walls.some_at_times()) return;
    std::vector<lanes::Breach> met;
    const auto is_shut = [&](const Try& made) {
      if (!made.score.allowed()) return false;
      const std::vector<lanes::Breach> found = breaches_of(made);
      met.insert(met.end(), found.begin(), found.end());
      return !found.empty();
    };
    const bool any_good = best().score.good(), any_allowed = best().score.allowed();
    std::erase_if(tries_, is_shut);
    const bool worse = tries_.empty() || (any_good && !best().score.good()) ||
                       (any_allowed && !best().score.allowed());
    if (worse && !met.empty()) breaches_ = std::move(met);
  }

  void try_walks(const FindWork& work) {
    for (const Plan& plan : plans_along_walks(hunt_, builder_, certifier_, work)) add_try(plan);
    sort_tries();
  }

  void try_more(int count, const Liking& liking) {
    for (int k = 0; k < count; ++k) add_try(builder_.build(++seed_, liking));
    sort_tries();
  }

  void add_try(const Plan& plan) {
    Try made{plan.vertices(), score(hunt_, plan), {}, false};
    for (const Stop& stop : plan.stops)
      if (stop.candidate >= 0)
        made.places.push_back(hunt_.candidates[static_cast<std::size_t>(stop.candidate)].place);
    tries_.push_back(std::move(made));
  }

  void sort_tries() {
    std::stable_sort(tries_.begin(), tries_.end(),
                     [](const Try& a, const Try& b) { return a.score.better_than(b.score); });
  }

  [[nodiscard]] const Try& best() const { return tries_.front(); }

  /// Of the tries that miss as little the best that has the independent stretch asked for; null when none
  /// has, or none is asked for.
  [[nodiscard]] const Try* best_with_independent() const {
    const int minutes = hunt_.ground.wish.independent_minutes;
    for (const Try& made : tries_) {
      if (minutes == 0) break;
      if (!made.score.allowed() || made.score.missing > best().score.missing) continue;
      const Drive drive = hunt_.drive_of(made.vertices);
      wish::Loop loop = describe(hunt_.ground, drive);
      add_pull_ups(hunt_.ground, drive, loop);
      const auto found = independent_on(hunt_.ground.roads, loop, minutes);
      if (found && found->whole) return &made;
    }
    return nullptr;
  }

  void choose(FindResult& result) {
    if (!best().score.allowed()) return;
    const int wanted = hunt_.ground.wish.alternatives;
    begin_with_best(result);
    for (int round = 0; static_cast<int>(result.loops.size()) < wanted;) {
      if (add_alternative(result)) continue;
      if (round++ == alternative_rounds) break;
      try_more(alternative_tries, liking());
      std::vector<lanes::Breach> kept = std::move(breaches_);
      pass_over_shut();
      breaches_ = std::move(kept);
      if (!tries_.empty() && best().score.missing < used_.front().score.missing)
        begin_with_best(result);
    }
    if (static_cast<int>(result.loops.size()) < wanted)
      result.fewer_because = "further loops share 40 % or more of their road with these";
  }

  /// Instead of those chosen so far, should one that misses less have come up while others were looked for.
  void begin_with_best(FindResult& result) {
    result.loops.clear();
    used_.clear();
    const Try* chosen = best_with_independent();
    add(result, chosen != nullptr ? *chosen : best());
  }

  void add(FindResult& result, const Try& chosen) {
    const Drive drive = hunt_.drive_of(chosen.vertices);
    wish::Loop loop = describe(hunt_.ground, drive);
    loop.id = static_cast<int>(result.loops.size()) + 1;
    add_pull_ups(hunt_.ground, drive, loop);
    ways_home_.add_to(drive, loop);
    loop.certificate = certifier_.certificate(chosen.score.value);
    if (result.loops.empty()) left_out_ = left_out_of(hunt_);
    loop.certificate.reasons = left_out_;
    result.loops.push_back(std::move(loop));
    used_.push_back(chosen);
  }

  [[nodiscard]] bool takes_the_same(const Try& a, const Try& b) const {
    return std::ranges::all_of(hunt_.takes, [&](const Take& take) {
      return is_taken(take, a.vertices) == is_taken(take, b.vertices);
    });
  }

  bool add_alternative(FindResult& result) {
    const Caps& caps = hunt_.ground.caps;
    for (const Try& made : tries_) {
      if (!made.score.allowed() || made.score.missing > best().score.missing) continue;
      const wish::Loop loop = describe(hunt_.ground, hunt_.drive_of(made.vertices));
      if (!lacks_the_same(loop, result.loops.front()) || !takes_the_same(made, used_.front()))
        continue;
      const bool differs =
          std::all_of(result.loops.begin(), result.loops.end(), [&](const wish::Loop& chosen) {
            return shared_part(chosen, loop, caps.overlap_exempt_m) < caps.overlap_share;
          });
      if (!differs) continue;
      add(result, made);
      return true;
    }
    return false;
  }

  /// Roads and places of the loops chosen so far count as slower.
  [[nodiscard]] Liking liking() const {
    Liking liking;
    liking.extra_ms.assign(hunt_.graph.size(), 0);
    for (const Try& chosen : used_) {
      for (const Vertex v : chosen.vertices) liking.extra_ms[v] = 2 * hunt_.graph.along_ms(v);
      liking.used_places.insert(liking.used_places.end(), chosen.places.begin(),
                                chosen.places.end());
    }
    std::sort(liking.used_places.begin(), liking.used_places.end());
    return liking;
  }

  Nearest nearest(const FindResult& result) {
    Nearest nearest;
    for (std::size_t w = 0; w < hunt_.ground.wish.wants.size(); ++w)
      nearest.got.push_back(result.loops.empty() ? 0 : result.loops.front().met[w].got);
    for (const Take& take : hunt_.takes)
      if (!is_taken(take, best().vertices)) nearest.not_taken.push_back(take.name);
    nearest.longest_minutes = static_cast<double>(best().score.ms) / 60000;
    nearest.wears_out_streets = best().score.over_caps > 0;
    const Plan shortest = builder_.build_shortest(1);
    const Score reached = score(hunt_, shortest);
    if (reached.missing > 0 || reached.ms <= 0) return nearest;
    nearest.least_minutes = static_cast<double>(reached.ms) / 60000;
    nearest.lacks_room =
        result.loops.empty() && reached.over_caps == 0 && reached.ms < hunt_.low_ms;
    return nearest;
  }

  const Hunt& hunt_;
  const Effort effort_;
  const FindWork work_;
  Builder builder_;
  Certifier certifier_;
  WaysHome ways_home_;
  std::vector<Try> tries_;
  std::vector<Try> used_;
  std::vector<lanes::Breach> breaches_;
  std::vector<wish::LeftOut> left_out_;
  std::uint64_t seed_ = 0;
};

}  // namespace

FindResult find_loops(const road::Roads& roads, const wish::Wish& wish,
                      const hours::Setting& setting, Effort effort) {
  return find_loops_by(roads, wish, setting, effort, work_of(effort));
}

FindResult find_loops_by(const road::Roads& roads, const wish::Wish& wish,
                         const hours::Setting& setting, Effort effort, const FindWork& work) {
  assert(wish.minutes && wish.through.empty());
  if (wish::is_in_parts(wish)) return find_lessons(roads, wish, setting, effort);
  ClockWalls walls(roads, wish, setting);
  std::optional<std::int64_t> bound;
  for (;;) {
    const Ground ground(roads, wish, setting, walls);
    if (ground.starts.empty() || ground.goals.empty()) return {{}, explain_shut_in(ground), {}};
    const Hunt hunt(ground, work.picked);
    if (hunt.starts.empty() || hunt.goals.empty()) return {{}, explain_out_of_reach(ground), {}};
    LoopSearch search(hunt, effort, work, bound);
    FindResult result = search.run();
    if (search.breaches().empty()) return result;
    if (walls.is_last_round()) return {{}, explain_shut(search.breaches().front()), {}};
    walls.learn(search.breaches());
    bound = search.bound();
  }
}

}  // namespace loopwright::find
