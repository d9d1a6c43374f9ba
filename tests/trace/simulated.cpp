#include "trace/simulated.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <optional>
#include <tuple>

#include "loopwright/base/dice.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/trace/passes.hpp"

namespace loopwright::test {
namespace {

double normal(Dice& dice) {
  const double u = 1 - dice.share(), v = dice.share();
  return std::sqrt(-2 * std::log(u)) * std::cos(2 * std::numbers::pi * v);
}

Point moved(Point at, double north_m, double east_m) {
  constexpr double metres_per_degree = 111'320;  // good enough for noise
  const double lat = at.lat() + north_m / metres_per_degree;
  const double lon =
      at.lon() + east_m / (metres_per_degree * std::cos(at.lat() * std::numbers::pi / 180));
  return point_from_degrees(lat, lon);
}

/// The way of a drive, as states that follow each other.
class WayFinder {
 public:
  WayFinder(const road::Roads& roads, const pace::Pace& pace, Dice& dice)
      : roads_(roads), pace_(pace), dice_(dice), sweep_(roads) {}

  std::vector<StateId> way(double minutes) {
    for (;;) {  // some roads lead nowhere without turning round
      std::vector<StateId> states{some_state()};
      const auto rest = way_from(states.back(), minutes);
      states.insert(states.end(), rest.begin(), rest.end());
      if (lasts_ms(states) >= minutes * 60'000) return states;
    }
  }

  /// On from a state, which isn't included.
  std::vector<StateId> way_from(StateId from, double minutes) {
    std::vector<StateId> states;
    while (lasts_ms(states) < minutes * 60'000) {
      std::vector<StateId> leg;
      for (int tries = 0; leg.empty() && tries < 5; ++tries)
        leg = leg_from(states.empty() ? from : states.back());
      if (leg.empty()) break;
      states.insert(states.end(), leg.begin(), leg.end());
    }
    return states;
  }

 private:
  /// Likely, with three seconds for each junction.
  [[nodiscard]] double lasts_ms(const std::vector<StateId>& states) const {
    double ms = 0;
    for (const StateId state : states)
      ms += static_cast<double>(pace_.along(roads_.stretch_of(state)).likely_ms) + 3000;
    return ms;
  }

  StateId some_state() {
    for (;;) {
      const StretchId stretch{dice_.below(roads_.stretch_count())};
      const auto rank = road::rank(roads_.piece(stretch).road_class);
      const StateId state{stretch.index()};
      if (roads_.drivable(stretch) && rank < 7 && leads_on(state)) return state;
    }
  }

  /// A way to somewhere 400 to 1800 m away, `from` not included; empty when there is none.
  std::vector<StateId> leg_from(StateId from) {
    reach::Costs costs(roads_, pace_);
    for (std::size_t turn = 0; turn < roads_.turns.size(); ++turn)
      if (roads_.turns[turn].control == road::Control::turn_round) costs.ban(turn);
    for (std::size_t k = 0; k < roads_.pieces.size(); ++k) {
      const bool small = road::rank(roads_.pieces[k].road_class) >= 4;
      if (small && dice_.below(6) == 0 && PieceId{k} != roads_.stretch_of(from).piece())
        costs.shut(PieceId{k});
    }
    const reach::Seed seed{from, 0};
    sweep_.run({&seed, 1}, costs, std::int64_t{400'000});
    const Point here = roads_.nodes[roads_.to_node(roads_.stretch_of(from)).index()].at;
    std::vector<StateId> goals;
    for (const std::uint32_t v : sweep_.settled()) {
      const StretchId stretch = roads_.stretch_of(StateId{v});
      const double far_m = distance_m(here, roads_.nodes[roads_.to_node(stretch).index()].at);
      if (far_m > 400 && far_m < 1800 && leads_on(StateId{v})) goals.emplace_back(v);
    }
    if (goals.empty()) return {};
    auto path = sweep_.path(goals[dice_.below(goals.size())]);
    path.erase(path.begin());
    return path;
  }

  /// Not a dead end.
  [[nodiscard]] bool leads_on(StateId state) const {
    const auto turns = roads_.turns_from(state);
    return std::any_of(turns.begin(), turns.end(), [](const road::Turn& turn) {
      return turn.control != road::Control::turn_round;
    });
  }

  const road::Roads& roads_;
  const pace::Pace& pace_;
  Dice& dice_;
  reach::Sweep sweep_;
};

constexpr double step_s = 0.5, up = 1.2, down = 1.5;

/// Speed at which a corner is taken.
double corner_mps(int angle_deg) {
  const int angle = std::abs(angle_deg);
  return angle > 150 ? 1.5 : angle > 60 ? 4.5 : angle > 25 ? 8 : 40;
}

class Driver {
 public:
  Driver(const road::Roads& roads, const pace::Pace& pace, Dice& dice, double start_s)
      : roads_(roads), pace_(pace), dice_(dice), now_s_(start_s) {}

  void drive(const trace::Leg& leg, const road::Turn* next) {
    const StretchId stretch = roads_.stretch_of(leg.state);
    const auto piece = roads_.shape_of(stretch.piece());
    std::vector<Point> line(piece.begin(), piece.end());
    if (stretch.against()) std::reverse(line.begin(), line.end());
    const double own_mps = pace_.speed_mps(stretch) * (0.85 + 0.3 * dice_.share());
    const double wait_s = next == nullptr ? 0 : wait_at(*next);
    const double end_mps = next == nullptr || wait_s > 0 ? 0 : corner_mps(next->angle_deg);
    trace::Leg driven = leg;
    driven.enter_s = now_s_;
    double at_m = leg.from_m;
    while (at_m < leg.to_m) {
      const double brake = std::sqrt(end_mps * end_mps + 2 * down * (leg.to_m - at_m));
      mps_ = std::clamp(std::min({mps_ + up * step_s, own_mps, brake}), 0.5,
                        std::max(mps_ + up * step_s, 0.5));
      at_m += mps_ * step_s;
      tick(point_along(line, std::min(at_m, leg.to_m)));
    }
    if (wait_s > 0) stand(wait_s, line, leg.to_m);
    driven.leave_s = now_s_;
    drive_.legs.push_back(driven);
  }

  /// Stands at the kerb, where the drive begins or ends: at the end of the last leg driven, else where the first begins.
  void park(const trace::Leg& leg) {
    constexpr double parked_s = 20;
    const auto shape = roads_.shape_of(roads_.stretch_of(leg.state).piece());
    std::vector<Point> line(shape.begin(), shape.end());
    if (roads_.stretch_of(leg.state).against()) std::reverse(line.begin(), line.end());
    stand(parked_s, line, drive_.legs.empty() ? leg.from_m : leg.to_m);
    if (!drive_.legs.empty()) drive_.legs.back().leave_s = now_s_;
  }

  /// Stands there.
  void stand(double seconds, const std::vector<Point>& line, double at_m) {
    const double from_s = now_s_;
    for (double s = 0; s < seconds; s += step_s) tick(point_along(line, at_m));
    if (seconds >= 10)
      drive_.stops.push_back({from_s, now_s_, drive_.legs.size(), at_m, point_along(line, at_m)});
    mps_ = 0;
  }

  SimulatedDrive drive_;

 private:
  void tick(Point at) {
    drive_.path.push_back({at, now_s_});
    now_s_ += step_s;
  }

  double wait_at(const road::Turn& turn) {
    const double likely_s = static_cast<double>(pace_.at(turn.control).likely_ms) / 1000;
    if (likely_s <= 0 || dice_.below(2) == 0) return 0;
    return std::min(-likely_s * std::log(1 - dice_.share()), 120.0);
  }

  const road::Roads& roads_;
  const pace::Pace& pace_;
  Dice& dice_;
  double now_s_;
  double mps_ = 0;
};

const road::Turn* turn_between(const road::Roads& roads, StateId from, StateId to) {
  for (const road::Turn& turn : roads.turns_from(from))
    if (turn.to == to) return &turn;
  return nullptr;
}

/// Where a drive could turn round in the road: the middle row that is quiet and long; the last when none is.
std::size_t row_to_turn_in(const road::Roads& roads, const std::vector<StateId>& states) {
  for (std::size_t k = states.size() / 2; k + 1 < states.size(); ++k) {
    const StretchId stretch = roads.stretch_of(states[k]);
    const road::Piece& piece = roads.piece(stretch);
    if (roads.drivable(stretch.back()) && piece.length_m > 120 && road::rank(piece.road_class) >= 5)
      return k;
  }
  return states.size() - 1;
}

using PassKey = std::tuple<road::Kind, road::Movement, int, OsmObject>;

std::map<PassKey, int> passes_in(const road::Roads& roads, std::span<const trace::Run> runs) {
  std::map<PassKey, int> passes;
  for (const trace::Run& run : runs)
    for (const trace::TracedPass& one : trace::passes_of(roads, run))
      ++passes[{one.pass.kind, one.pass.movement, one.pass.exit, one.pass.source}];
  return passes;
}

std::map<StretchId, double> metres_in(const road::Roads& roads, std::span<const trace::Run> runs) {
  std::map<StretchId, double> metres;
  for (const trace::Run& run : runs)
    for (const trace::Leg& leg : run.legs)
      metres[roads.stretch_of(leg.state)] += leg.to_m - leg.from_m;
  return metres;
}

}  // namespace

SimulatedDrive simulated(const road::Roads& roads, const SimulationAsk& ask) {
  Dice dice(ask.seed);
  const pace::Pace pace(roads, {.level = 4}, {static_cast<std::int64_t>(ask.start_s), 0});
  std::vector<StateId> states = WayFinder(roads, pace, dice).way(ask.minutes);
  std::vector<trace::Leg> legs;
  const std::size_t turns_in = ask.turn_round ? row_to_turn_in(roads, states) : states.size();
  for (std::size_t k = 0; k < std::min(states.size(), turns_in + 1); ++k)
    legs.push_back({states[k], 0, roads.piece(roads.stretch_of(states[k])).length_m});
  legs.front().from_m = legs.front().to_m / 3;
  if (turns_in < states.size()) {
    // Half way along it, and back along the way it came by.
    legs.back().to_m /= 2;
    const StretchId back = roads.stretch_of(states[turns_in]).back();
    trace::Leg leg{StateId{back.index()}, legs.back().to_m, 2 * legs.back().to_m};
    leg.turned_round = true;
    legs.push_back(leg);
    Dice more(ask.seed + 1);
    WayFinder finder(roads, pace, more);
    for (const StateId state : finder.way_from(StateId{back.index()}, ask.minutes / 2))
      legs.push_back({state, 0, roads.piece(roads.stretch_of(state)).length_m});
  }
  legs.back().to_m = std::max(legs.back().from_m, legs.back().to_m / 2);
  Driver driver(roads, pace, dice, ask.start_s);
  driver.park(legs.front());
  for (std::size_t k = 0; k < legs.size(); ++k)
    driver.drive(legs[k], k + 1 < legs.size()
                              ? turn_between(roads, legs[k].state, legs[k + 1].state)
                              : nullptr);
  driver.park(legs.back());
  return std::move(driver.drive_);
}

std::vector<trace::Fix> recorded(const SimulatedDrive& drive, const RecorderAsk& ask) {
  constexpr double time_constant_s = 30, correlated = 0.75;
  Dice dice(ask.seed);
  const double slow_m = ask.sigma_m * std::sqrt(correlated),
               white_m = ask.sigma_m * std::sqrt(1 - correlated);
  double north = slow_m * normal(dice), east = slow_m * normal(dice);
  const double keep = std::exp(-ask.every_s / time_constant_s);
  const double fresh = slow_m * std::sqrt(1 - keep * keep);
  const double begin_s = drive.path.front().unix_s;
  // Where in each span the recorder is silent.
  const double silent_after_s = ask.dropout_every_s * (0.2 + 0.5 * dice.share());
  std::vector<trace::Fix> fixes;
  double next_s = begin_s;
  for (const trace::Fix& at : drive.path) {
    if (at.unix_s < next_s) continue;
    next_s += ask.every_s;
    north = keep * north + fresh * normal(dice), east = keep * east + fresh * normal(dice);
    const Point seen = moved(at.at, north + white_m * normal(dice), east + white_m * normal(dice));
    const double in_span_s =
        ask.dropout_every_s > 0 ? std::fmod(at.unix_s - begin_s, ask.dropout_every_s) : 0;
    const bool silent =
        ask.dropout_every_s > 0 && in_span_s >= silent_after_s && in_span_s < silent_after_s + 60;
    if (!silent) fixes.push_back({seen, at.unix_s});
  }
  return fixes;
}

Compared& Compared::operator+=(const Compared& more) {
  driven_m += more.driven_m, added_m += more.added_m, missed_m += more.missed_m;
  passes += more.passes, found += more.found, invented += more.invented;
  return *this;
}

Compared compared_with(const road::Roads& roads, const SimulatedDrive& drive,
                       const trace::Match& match) {
  trace::Run truth;
  truth.legs = drive.legs;
  Compared result;
  auto matched = metres_in(roads, match.runs);
  for (const auto& [stretch, metres] : metres_in(roads, {&truth, 1})) {
    result.driven_m += metres;
    result.missed_m += std::max(metres - matched[stretch], 0.0);
    matched[stretch] = std::max(matched[stretch] - metres, 0.0);
  }
  for (const auto& [stretch, metres] : matched) result.added_m += metres;
  auto told = passes_in(roads, match.runs);
  for (const auto& [key, count] : passes_in(roads, {&truth, 1})) {
    result.passes += count;
    const int both = std::min(count, told[key]);
    result.found += both;
    told[key] -= both;
  }
  for (const auto& [key, count] : told) result.invented += count;
  return result;
}

}  // namespace loopwright::test
