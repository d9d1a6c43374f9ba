#include "made_problems.hpp"

#include <algorithm>
#include <bitset>
#include <cmath>
#include <random>

namespace made {

using loopwright::circuit::Evaluation;
using loopwright::circuit::no_way;
using loopwright::circuit::Pass;
using loopwright::circuit::Problem;
using loopwright::circuit::Walk;

namespace {

/// The same everywhere, unlike the library's distributions.
struct Dice {
  explicit Dice(std::uint64_t seed) : engine(seed) {}
  std::int64_t from(std::int64_t low, std::int64_t high) {
    return low + static_cast<std::int64_t>(engine() % static_cast<std::uint64_t>(high - low + 1));
  }
  double fraction() { return static_cast<double>(engine() % 1'000'000) / 1e6; }
  std::mt19937_64 engine;
};

struct Trial {
  const Problem& p;
  Walk walk;
  std::vector<std::int64_t> next_ms;  ///< by goal
  Best best;

  void from(std::uint32_t exit, std::int64_t ms) {
    if (ms + p.leg(exit, p.end()) <= p.most_ms) {
      const Evaluation e = evaluate(p, walk);
      if (e.missing == 0) best = {true, best.possible ? std::max(best.value, e.value) : e.value};
    }
    for (std::uint32_t row = 0; row < p.passes.size(); ++row) {
      const Pass& pass = p.passes[row];
      const std::int64_t there = ms + p.leg(exit, pass.entry);
      std::vector<std::int64_t> waits = {0};
      for (const std::uint32_t group : pass.groups) {
        const std::int64_t least = next_ms[p.groups[group].goal] - ms;
        if (least <= p.leg(exit, pass.entry)) continue;
        const std::int64_t longer = p.longer_leg(exit, pass.entry, least);
        if (longer < no_way) waits.push_back(longer - p.leg(exit, pass.entry));
      }
      for (const std::int64_t wait : waits) begin(row, there + wait, wait);
    }
  }

  void begin(std::uint32_t row, std::int64_t ms, std::int64_t wait) {
    const Pass& pass = p.passes[row];
    if (ms + pass.inner_ms + p.leg(pass.exit, p.end()) > p.most_ms) return;
    const auto before = next_ms;
    const auto worth_before = worth;
    const auto of_cap_before = of_cap;
    for (const std::uint32_t g : pass.groups) {
      const auto& group = p.groups[g];
      if (ms < next_ms[group.goal] || worth[g] >= group.worths.size()) continue;
      if (group.cap != loopwright::circuit::no_cap && of_cap[group.cap]++ >= p.caps[group.cap])
        continue;
      ++worth[g];
      next_ms[group.goal] = ms + p.goals[group.goal].spacing_ms;
    }
    walk.passes.push_back(row);
    walk.wait_ms.push_back(wait);
    from(pass.exit, ms + pass.inner_ms);
    walk.passes.pop_back();
    walk.wait_ms.pop_back();
    next_ms = before;
    worth = worth_before;
    of_cap = of_cap_before;
  }

  std::vector<std::size_t> worth = std::vector<std::size_t>(p.groups.size(), 0);
  std::vector<int> of_cap = std::vector<int>(p.caps.size(), 0);
};

struct Place {
  double x = 0, y = 0;
  std::vector<double> arms = {};  ///< bearings
  std::uint32_t first = 0;        ///< entry and exit of its first arm
};

std::vector<Place> scatter(Dice& dice, const Towns& plan) {
  constexpr double across = 3000;  // m
  std::vector<Place> centres, places;
  for (int t = 0; t < plan.towns; ++t)
    centres.push_back({dice.fraction() * 7000, dice.fraction() * 4000});
  for (int r = 0; r < plan.roundabouts; ++r) {
    const Place& c = centres[static_cast<std::size_t>(dice.from(0, plan.towns - 1))];
    Place place{c.x + (dice.fraction() + dice.fraction() - 1) * across,
                c.y + (dice.fraction() + dice.fraction() - 1) * across};
    const std::int64_t arms = dice.from(3, 4);
    const double north = dice.fraction() * 6.28;
    for (std::int64_t arm = 0; arm < arms; ++arm)
      place.arms.push_back(north + 6.28 * (static_cast<double>(arm) + 0.4 * dice.fraction()) /
                                       static_cast<double>(arms));
    places.push_back(place);
  }
  return places;
}

/// Metres more to drive when a road begins in `bearing` and what is sought lies that way.
double aside(double bearing, double dx, double dy) {
  return 250 * (1 - std::cos(bearing - std::atan2(dy, dx)));
}

/// By place, metres to the fifth nearest: itself is the first.
std::vector<double> to_fifth(const std::vector<Place>& places) {
  std::vector<double> result;
  for (const Place& a : places) {
    std::vector<double> far;
    for (const Place& b : places) far.push_back(std::hypot(b.x - a.x, b.y - a.y));
    std::sort(far.begin(), far.end());
    result.push_back(far[std::min<std::size_t>(4, far.size() - 1)]);
  }
  return result;
}

std::int64_t drive_ms(double metres) {
  return static_cast<std::int64_t>(metres / 10.5 * 1000);
}

/// Most groups of the last goal share a cap of a pass or two.
void cap_some(Dice& dice, Problem& p) {
  p.caps.push_back(static_cast<int>(dice.from(1, 2)));
  for (auto& group : p.groups)
    if (group.goal + 1 == p.goals.size() && dice.from(0, 3) > 0)
      group.cap = static_cast<std::uint32_t>(p.caps.size() - 1);
}

}  // namespace

void close_legs(Problem& p) {
  for (const Pass& pass : p.passes)
    for (std::uint32_t x = 0; x <= p.exit_count; ++x) {
      const std::int64_t first = p.leg(x, pass.entry) + pass.inner_ms;
      if (first >= no_way) continue;
      for (std::uint32_t e = 0; e <= p.entry_count; ++e) {
        std::int64_t& leg = p.legs[static_cast<std::size_t>(x) * (p.entry_count + 1) + e];
        leg = std::min(leg, first + p.leg(pass.exit, e));
      }
    }
}

namespace {

/// By exit and entry, which multiples of ten seconds a leg may take; closed under driving passes between.
class Steps {
 public:
  explicit Steps(const Problem& p) : p_(p), may_(std::size_t{p.exit_count} * p.entry_count) {
    for (std::uint32_t x = 0; x < p.exit_count; ++x)
      for (std::uint32_t e = 0; e < p.entry_count; ++e)
        if (p.leg(x, e) < no_way) of(x, e)[static_cast<std::size_t>(p.leg(x, e) / step_ms)] = true;
  }

  void add_some(Dice& dice) {
    for (auto& leg : may_)
      for (std::int64_t n = dice.from(0, 3); n > 0; --n)
        if (leg.any()) leg[static_cast<std::size_t>(dice.from(20, most - 1))] = true;
  }

  void close() {
    for (bool more = true; more;) {
      more = false;
      for (const Pass& pass : p_.passes)
        for (std::uint32_t x = 0; x < p_.exit_count; ++x)
          for (std::uint32_t e = 0; e < p_.entry_count; ++e)
            more = join(of(x, pass.entry), pass.inner_ms, of(pass.exit, e), of(x, e)) || more;
    }
  }

  [[nodiscard]] loopwright::circuit::LongerLegs longer() const {
    loopwright::circuit::LongerLegs result;
    for (const auto& leg : may_) {
      result.first.push_back(static_cast<std::uint32_t>(result.spans.size()));
      for (std::size_t k = 0; k < most; ++k) {
        const auto ms = static_cast<std::int32_t>(k) * step_ms;
        if (leg[k]) result.spans.push_back({ms, ms});
      }
    }
    result.first.push_back(static_cast<std::uint32_t>(result.spans.size()));
    return result;
  }

 private:
  static constexpr std::int32_t step_ms = 10'000;
  static constexpr std::size_t most = 60;
  using Times = std::bitset<most>;

  Times& of(std::uint32_t exit, std::uint32_t entry) {
    return may_[std::size_t{exit} * p_.entry_count + entry];
  }
  static bool join(const Times& first, std::int64_t inner_ms, const Times& second, Times& whole) {
    const Times before = whole;
    for (std::size_t k = 0; k < most; ++k)
      if (first[k]) whole |= second << (k + static_cast<std::size_t>(inner_ms / step_ms));
    return whole != before;
  }

  const Problem& p_;
  std::vector<Times> may_;
};

/// All times whole tens of seconds, legs only some of them.
void step_legs(Dice& dice, Problem& p) {
  for (std::int64_t& leg : p.legs)
    if (leg < no_way) leg = leg / 10'000 * 10'000;
  for (Pass& pass : p.passes) pass.inner_ms = dice.from(1, 3) * 10'000;
  close_legs(p);
  Steps steps(p);
  steps.add_some(dice);
  steps.close();
  p.longer = steps.longer();
}

}  // namespace

Problem small(std::uint64_t seed, Small kind) {
  Dice dice(seed);
  Problem p;
  p.entry_count = static_cast<std::uint32_t>(dice.from(1, 4));
  p.exit_count = static_cast<std::uint32_t>(dice.from(1, 4));
  for (std::uint32_t i = 0; i < (p.exit_count + 1) * (p.entry_count + 1); ++i)
    p.legs.push_back(dice.from(0, 9) == 0 ? no_way : dice.from(20, 200) * 1000);
  const std::int64_t goals = kind.several_goals ? dice.from(2, 3) : 1;
  for (std::int64_t g = 0; g < goals; ++g) {
    p.goals.push_back({kind.least ? static_cast<int>(dice.from(0, 3)) : 0,
                       kind.spacing ? dice.from(60, 200) * 1000 : 0});
    for (std::int64_t k = dice.from(1, 3); k > 0; --k) {
      loopwright::circuit::Group group;
      group.goal = static_cast<std::uint32_t>(g);
      std::int64_t worth = dice.from(1, 10) * 100;
      for (std::int64_t n = dice.from(kind.least ? 0 : 1, 3); n > 0; --n) {
        group.worths.push_back(worth);
        worth = std::max<std::int64_t>(1, worth * 7 / 1000) * 100;
      }
      if (dice.from(0, 1) == 0) group.most_counted = static_cast<int>(dice.from(1, 3));
      p.groups.push_back(group);
    }
    if (kind.caps) cap_some(dice, p);
  }
  for (std::int64_t n = dice.from(1, 5); n > 0; --n) {
    Pass pass;
    pass.entry = static_cast<std::uint32_t>(dice.from(0, p.entry_count - 1));
    pass.exit = static_cast<std::uint32_t>(dice.from(0, p.exit_count - 1));
    pass.inner_ms = dice.from(5, 30) * 1000;
    for (std::uint32_t goal = 0; goal < p.goals.size(); ++goal) {
      std::vector<std::uint32_t> of_goal;
      for (std::uint32_t g = 0; g < p.groups.size(); ++g)
        if (p.groups[g].goal == goal) of_goal.push_back(g);
      if (dice.from(0, 2) > 0)
        pass.groups.push_back(of_goal[static_cast<std::size_t>(
            dice.from(0, static_cast<std::int64_t>(of_goal.size()) - 1))]);
    }
    p.passes.push_back(pass);
  }
  p.most_ms = dice.from(150, 480) * 1000;
  close_legs(p);
  if (kind.steps) step_legs(dice, p);
  return p;
}

Best by_trying_all(const Problem& problem) {
  Trial trial{problem, {}, std::vector<std::int64_t>(problem.goals.size(), 0), {}};
  trial.from(problem.home(), 0);
  return trial.best;
}

Problem towns(std::uint64_t seed, const Towns& plan) {
  Dice dice(seed);
  std::vector<Place> places = scatter(dice, plan);
  Problem p;
  for (Place& place : places) {
    place.first = p.entry_count;
    p.entry_count += static_cast<std::uint32_t>(place.arms.size());
  }
  p.exit_count = p.entry_count;
  p.legs.assign(static_cast<std::size_t>(p.exit_count + 1) * (p.entry_count + 1), no_way);
  const auto leg = [&](std::uint32_t exit, std::uint32_t entry) -> std::int64_t& {
    return p.legs[static_cast<std::size_t>(exit) * (p.entry_count + 1) + entry];
  };
  p.goals = {{0, plan.spacing_ms}};
  p.most_ms = plan.most_ms;
  const std::vector<double> reach = to_fifth(places);
  const double home_x = places[0].x + 300, home_y = places[0].y + 200;
  for (const Place& a : places) {
    const auto arms = static_cast<std::uint32_t>(a.arms.size());
    for (const Place& b : places) {
      const double dx = b.x - a.x, dy = b.y - a.y, metres = std::hypot(dx, dy);
      if (metres > 1500 && metres > reach[&a - places.data()]) continue;  // over places between
      const double bend = 1.1 + 0.4 * dice.fraction();
      for (std::uint32_t i = 0; i < arms; ++i)
        for (std::uint32_t j = 0; j < b.arms.size(); ++j)
          leg(a.first + i, b.first + j) =
              &a == &b
                  ? drive_ms(300 + 400 * dice.fraction())
                  : drive_ms(metres * bend + aside(a.arms[i], dx, dy) + aside(b.arms[j], -dx, -dy));
    }
    const double way = std::hypot(a.x - home_x, a.y - home_y) * 1.3 + 100;
    for (std::uint32_t i = 0; i < arms; ++i) {
      leg(p.home(), a.first + i) = drive_ms(way + aside(a.arms[i], home_x - a.x, home_y - a.y));
      leg(a.first + i, p.end()) = drive_ms(way + aside(a.arms[i], home_x - a.x, home_y - a.y));
    }
    const auto groups = static_cast<std::uint32_t>(p.groups.size());
    for (std::uint32_t turn = 1; turn < arms; ++turn) {
      p.groups.push_back({0, plan.worths});
      for (std::uint32_t i = 0; i < arms; ++i)
        p.passes.push_back({a.first + i,
                            a.first + (i + turn) % arms,
                            6000 + 4000 * turn + dice.from(0, 3000),
                            {groups + turn - 1}});
    }
  }
  leg(p.home(), p.end()) = 0;
  close_legs(p);
  return p;
}

}  // namespace made
