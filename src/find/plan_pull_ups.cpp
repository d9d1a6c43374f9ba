// 1. The new kinds are gone through in the order of their first passes. Each brief makes all behind it
//    later, so a place is asked for the time at which the drive comes to it by then.
// 2. The places before a pass are tried from the last one back.
#include "find/plan_pull_ups.hpp"

#include <algorithm>

#include "find/kerb_places.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::find {

namespace {

struct NewKind {
  road::Kind kind = road::Kind::roundabout;
  std::size_t begins = 0;  ///< row at whose beginning its first pass does
};

class PullUpPlanner {
 public:
  PullUpPlanner(const Ground& ground, Drive& drive)
      : ground_(ground), drive_(drive), kerbs_(ground, drive) {}

  std::vector<WithoutPlace> plan() {
    const wish::PlannedStops& stops = ground_.wish.stops;
    if (stops.brief_minutes > 0)
      for (const NewKind& one : new_kinds())
        if (!plan_brief(one.begins)) without_.push_back({one.kind, false});
    if (stops.talk_minutes > 0 && !plan_talk()) without_.push_back({{}, true});
    drive_.unplaced = static_cast<int>(without_.size());
    return std::move(without_);
  }

 private:
  /// Those the drive passes, by their first passes.
  [[nodiscard]] std::vector<NewKind> new_kinds() const {
    std::vector<wish::Pass> passes;
    for (const PlacePass& found : passes_of(ground_.roads, drive_))
      if (is_practised(found.pass)) passes.push_back(found.pass);
    std::vector<NewKind> kinds;
    for (const road::Kind kind : ground_.wish.stops.new_kinds)
      if (const wish::Pass* first = wish::first_pass_of(passes, kind))
        kinds.push_back({kind, wish::begin_row(*first)});
    std::stable_sort(kinds.begin(), kinds.end(),
                     [](const NewKind& a, const NewKind& b) { return a.begins < b.begins; });
    return kinds;
  }

  [[nodiscard]] bool is_practised(const wish::Pass& pass) const {
    return !drive_.practice ||
           (pass.first >= (*drive_.practice)[0] && pass.last <= (*drive_.practice)[1]);
  }

  [[nodiscard]] double driving_s(const pace::Spell& from, std::size_t to_row) const {
    return static_cast<double>(kerbs_.before()[to_row].likely_ms - from.likely_ms) / 1000;
  }

  [[nodiscard]] bool holds_door(const KerbPlace& one) const {
    return one.at == 0 || one.at + 1 == drive_.states.size();
  }

  bool plan_brief(std::size_t begins) {
    const std::int64_t brief_ms = 60000LL * ground_.wish.stops.brief_minutes;
    const auto& places = kerbs_.all();
    for (std::size_t k = places.size(); k-- > 0;) {
      const KerbPlace& one = places[k];
      if (one.at >= begins || holds_door(one)) continue;
      if (driving_s(one.driven, begins) > wish::brief_before_most_s) return false;
      const int planned = kerbs_.planned_at(one);
      if (planned >= 0) return lengthen(one, drive_.pull_ups[static_cast<std::size_t>(planned)]);
      if (stay(one, brief_ms, false)) return true;
    }
    return false;
  }

  /// One brief for two kinds, one after the other.
  bool lengthen(const KerbPlace& one, PlannedPullUp& stop) {
    const std::int64_t stay_ms = stop.stay_ms + 60000LL * ground_.wish.stops.brief_minutes;
    if (!kerbs_.usable(one, static_cast<double>(stay_ms) / 1000)) return false;
    stop.stay_ms = stay_ms;
    return true;
  }

  bool plan_talk() {
    const std::int64_t talk_ms = 60000LL * ground_.wish.stops.talk_minutes;
    const auto& places = kerbs_.all();
    for (std::size_t k = places.size(); k-- > 0;) {
      const KerbPlace& one = places[k];
      if (driving_s(one.driven, drive_.states.size()) > wish::talk_before_end_most_s) return false;
      if (holds_door(one)) continue;
      if (kerbs_.planned_at(one) >= 0) return false;
      if (stay(one, talk_ms, true)) return true;
    }
    return false;
  }

  /// Plans a stop behind all others. False when one may not stay there so long.
  bool stay(const KerbPlace& one, std::int64_t stay_ms, bool talk) {
    if (!kerbs_.usable(one, static_cast<double>(stay_ms) / 1000)) return false;
    drive_.pull_ups.push_back({one.at, one.place, stay_ms, talk});
    return true;
  }

  const Ground& ground_;
  Drive& drive_;
  KerbPlaces kerbs_;
  std::vector<WithoutPlace> without_;
};

}  // namespace

std::vector<WithoutPlace> plan_pull_ups(const Ground& ground, Drive& drive) {
  drive.pull_ups.clear();
  return PullUpPlanner(ground, drive).plan();
}

}  // namespace loopwright::find
