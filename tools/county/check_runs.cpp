// 1. Metres of each kind by way and direction, as found; metres that may be driven, and that are left
//    out because nothing leads in or out.
// 2. Each `must` is compared with them, direction by direction.
// 3. A way and direction with a kind that no row has is false.
// Lanes for buses are compared one by one, with their direction and hours.
#include <algorithm>
#include <cmath>
#include <set>

#include "county/check.hpp"

namespace loopwright::county {
namespace {

using road::Kind;
constexpr double slack_m = 5, slack_share = 0.03;

struct Key {
  std::int64_t way = 0;
  bool against = false;
  friend auto operator<=>(const Key&, const Key&) = default;
};
struct Ground {
  double drivable = 0, left_out = 0;
  bool motorway = false;
};

bool is_motorway(road::RoadClass road_class) {
  return road_class == road::RoadClass::motorway || road_class == road::RoadClass::motorway_link;
}

std::string on(const Key& key) {
  return "way " + std::to_string(key.way) + (key.against ? " against" : " along");
}

class Runs {
 public:
  Runs(const Truth& truth, const road::Roads& roads, Verdict& verdict)
      : truth_(truth), roads_(roads), verdict_(verdict) {
    for (std::size_t s = 0; s < roads.stretches.size(); ++s) {
      const StretchId id{s};
      const road::Piece& piece = roads.piece(id);
      Ground& ground = ground_[{piece.way, id.against()}];
      ground.drivable += roads.drivable(id) ? piece.length_m : 0;
      ground.motorway = is_motorway(piece.road_class);
      ground.left_out +=
          (roads.stretch(id).flags & road::stretch_flag::cut_off) != 0 ? piece.length_m : 0;
    }
    for (const road::RunFact& fact : roads.run_facts)
      found_[{fact.kind, key_of(fact.stretch)}] += roads.piece(fact.stretch).length_m;
  }
  void compare() {
    for (const TrueRun& run : truth_.runs) {
      for (const bool against : {false, true}) {
        if (run.course == (against ? Course::along : Course::against)) continue;
        const Key key{run.way, against};
        for (const Kind kind : road::all_kinds())
          if ((run.kinds & road::bit(kind)) != 0) allowed_.insert({kind, key});
        if (run.duty != Duty::must) continue;
        if (run.kinds == road::bit(Kind::bus_lane))
          needed_.insert({Kind::bus_lane, key});
        else
          must(run, key);
      }
    }
    for (const auto& [what, metres] : found_) tell_found(what.first, what.second, metres);
  }

 private:
  [[nodiscard]] Key key_of(StretchId s) const { return {roads_.piece(s).way, s.against()}; }
  void must(const TrueRun& run, const Key& key);
  void tell_found(Kind kind, const Key& key, double metres);

  const Truth& truth_;
  const road::Roads& roads_;
  Verdict& verdict_;
  std::map<Key, Ground> ground_;
  std::map<std::pair<Kind, Key>, double> found_;
  std::set<std::pair<Kind, Key>> allowed_, needed_;
};

void Runs::must(const TrueRun& run, const Key& key) {
  for (const Kind kind : road::all_kinds()) {
    if (run.kinds != road::bit(kind) || (kind == Kind::motorway && !roads_.info().motorways))
      continue;
    Tally& tally = verdict_.of(kind);
    const Ground ground = ground_[key];
    if (ground.motorway && !roads_.info().motorways) continue;
    if (ground.left_out > 0 && ground.drivable < slack_m) {
      ++verdict_.cut_off;
      continue;
    }
    ++tally.planted;
    needed_.insert({kind, key});
    const auto found = found_.find({kind, key});
    const double metres = found == found_.end() ? 0 : found->second;
    const double wanted = run.metres - ground.left_out - slack_m - slack_share * run.metres;
    if (metres > 0 && metres >= wanted) {
      ++tally.found;
    } else {
      ++tally.missed;
      tally.examples.push_back("missed on " + on(key) + ": " + std::to_string(std::lround(metres)) +
                               " of " + std::to_string(std::lround(run.metres)) + " m");
    }
  }
}

void Runs::tell_found(Kind kind, const Key& key, double metres) {
  Tally& tally = verdict_.of(kind);
  if (!allowed_.contains({kind, key})) {
    ++tally.wrong;
    tally.examples.push_back("false on " + on(key) + ", " + std::to_string(std::lround(metres)) +
                             " m");
  } else if (!needed_.contains({kind, key})) {
    ++tally.by_rule;
  }
}

Course course_of(road::LaneDirection direction) {
  return direction == road::LaneDirection::along     ? Course::along
         : direction == road::LaneDirection::against ? Course::against
                                                     : Course::any;
}

}  // namespace

void check_runs(const Truth& truth, const road::Roads& roads, Verdict& verdict) {
  Runs(truth, roads, verdict).compare();
}

void check_bus_lanes(const Truth& truth, const road::Roads& roads, Verdict& verdict) {
  Tally& tally = verdict.of(Kind::bus_lane);
  std::set<std::pair<std::int64_t, Course>> planted;
  for (const TrueRun& run : truth.runs) {
    if (run.duty != Duty::must || run.kinds != road::bit(Kind::bus_lane)) continue;
    planted.insert({run.way, run.course});
    ++tally.planted;
    std::string why = "no lane of that direction";
    bool met = false;
    for (const road::BusLane& lane : roads.bus_lanes) {
      if (roads.pieces[lane.piece.index()].way != run.way ||
          course_of(lane.direction) != run.course)
        continue;
      const std::string hours = "hours=" + std::string(roads.text(lane.hours));
      met = met || run.says.empty() || hours == run.says;
      if (hours != run.says) why = "wanted " + run.says + ", found " + hours;
    }
    if (met)
      ++tally.found;
    else
      ++tally.missed,
          tally.examples.push_back("missed on way " + std::to_string(run.way) + ": " + why);
  }
  std::set<std::pair<std::int64_t, Course>> wrong;
  for (const road::BusLane& lane : roads.bus_lanes) {
    const std::pair key{roads.pieces[lane.piece.index()].way, course_of(lane.direction)};
    if (planted.contains(key) || !wrong.insert(key).second) continue;
    ++tally.wrong;
    tally.examples.push_back("false on way " + std::to_string(key.first));
  }
}

}  // namespace loopwright::county
