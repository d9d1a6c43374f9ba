// Method:
//   1. From place to place the way is the chain's: on along the stretch, or the shortest way by legal turns.
//      Where the chain went by the plan, while nothing was recorded, it is the plan's.
//   2. A place behind one that was reached before is noise: the car stood.
#include "trace/legs.hpp"

#include <algorithm>
#include <cassert>

namespace loopwright::trace {
namespace {

class WayMaker {
 public:
  WayMaker(Router& router, const Noise& noise, std::span<const Telling> fixes)
      : router_(router), roads_(router.roads()), noise_(noise), fixes_(fixes) {}

  Way make(std::span<const Chosen> chosen) {
    start(chosen.front());
    for (std::size_t k = 1; k < chosen.size(); ++k) {
      if (chosen[k].turned_round)
        turn_round(chosen[k]);
      else
        go(chosen[k - 1], chosen[k]);
      reach(chosen[k].fix);
    }
    return std::move(way_);
  }

 private:
  [[nodiscard]] double length_m(StateId state) const {
    return roads_.piece(roads_.stretch_of(state)).length_m;
  }
  Leg& last() { return way_.legs.back(); }

  void reach(std::size_t fix) {
    way_.reached.push_back({fix, way_.begins_m.back() + last().to_m - last().from_m});
  }

  void start(const Chosen& at) {
    way_.legs.push_back({at.state, at.along_m, at.along_m});
    way_.begins_m.push_back(0);
    reach(at.fix);
  }

  void add_leg(const Leg& leg) {
    way_.begins_m.push_back(way_.begins_m.back() + last().to_m - last().from_m);
    way_.legs.push_back(leg);
  }

  void turn_round(const Chosen& at) {
    const double from_m = std::max(length_m(at.state) - last().to_m, 0.0);
    Leg leg{at.state, from_m, from_m};
    leg.turned_round = true;
    add_leg(leg);
  }

  void go(const Chosen& from, const Chosen& to) {
    const bool seen = fixes_[to.fix].silent_s <= unseen_after_s;
    const double back_m = most_back_m(noise_);
    const bool on = to.state == from.state && to.along_m >= from.along_m - back_m;
    std::vector<StateId> way = to.by_plan;
    if (!on && way.empty()) way = shortest(from, to);
    if (way.empty()) {
      last().to_m = std::max(last().to_m, to.along_m);
      return;
    }
    last().to_m = length_m(last().state);
    for (const StateId state : way) {
      Leg leg{state, 0, length_m(state)};
      leg.seen = seen;
      add_leg(leg);
    }
    last().to_m = to.along_m;
    last().seen = true;
  }

  /// The stretches behind that of `from`, that of `to` the last.
  std::vector<StateId> shortest(const Chosen& from, const Chosen& to) {
    const double most_m = most_way_m(noise_, fixes_[from.fix], fixes_[to.fix]) + length_m(to.state);
    router_.run_after(from.state, most_m, std::span(&to.state, 1));
    assert(router_.metres_to(to.state));
    return router_.way_to(to.state);
  }

  Router& router_;
  const road::Roads& roads_;
  const Noise& noise_;
  std::span<const Telling> fixes_;
  Way way_;
};

}  // namespace

Way way_of(Router& router, const Noise& noise, std::span<const Telling> fixes,
           std::span<const Chosen> chosen) {
  assert(!chosen.empty());
  return WayMaker(router, noise, fixes).make(chosen);
}

std::vector<Point> line_of(const road::Roads& roads, std::span<const Leg> legs) {
  std::vector<Point> line;
  for (const Leg& leg : legs) {
    const StretchId stretch = roads.stretch_of(leg.state);
    const auto shape = roads.shape_of(stretch.piece());
    std::vector<Point> whole(shape.begin(), shape.end());
    if (stretch.against()) std::reverse(whole.begin(), whole.end());
    const auto add = [&line](Point at) {
      if (line.empty() || line.back() != at) line.push_back(at);
    };
    add(point_along(whole, leg.from_m));
    double at_m = 0;
    for (std::size_t i = 1; i < whole.size(); ++i) {
      at_m += distance_m(whole[i - 1], whole[i]);
      if (at_m > leg.from_m && at_m < leg.to_m) add(whole[i]);
    }
    add(point_along(whole, leg.to_m));
  }
  return line;
}

}  // namespace loopwright::trace
