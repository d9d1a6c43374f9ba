// 1. Planned places, and of each hard pass the first usable place behind its end, within
//    stop_after_most_s; each place once, in driving order.
// 2. Who drives on from a place at the last moment is home at the end of the minutes: what is then left is
//    the likely rest of the drive and the stops behind it.
#include "find/pull_ups.hpp"

#include <algorithm>
#include <tuple>

#include "find/kerb_places.hpp"
#include "find/plan_pull_ups.hpp"
#include "loopwright/lanes/pull_up.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::find {

namespace {

class PullUpTeller {
 public:
  PullUpTeller(const Ground& ground, const Drive& drive, wish::Loop& loop)
      : ground_(ground), drive_(drive), loop_(loop), kerbs_(ground, drive) {}

  void tell() {
    const auto& places = kerbs_.all();
    std::vector<std::size_t> told;  // rows of places, ascending
    for (std::size_t k = 0; k < places.size(); ++k)
      if (kerbs_.planned_at(places[k]) >= 0) told.push_back(k);
    std::vector<std::pair<std::size_t, std::optional<std::size_t>>> after;
    for (std::size_t p = 0; p < loop_.passes.size(); ++p) {
      if (loop_.passes[p].hardness < wish::hard_pass) continue;
      after.emplace_back(p, next_after(loop_.passes[p]));
      if (after.back().second) told.push_back(*after.back().second);
    }
    std::sort(told.begin(), told.end());
    told.erase(std::unique(told.begin(), told.end()), told.end());
    for (const std::size_t k : told) loop_.pull_ups.push_back(pull_up(places[k]));
    for (const auto& [pass, place] : after)
      loop_.stops_after.push_back(stop_after(pass, place, told));
  }

 private:
  [[nodiscard]] double since_s(const wish::Pass& pass, const KerbPlace& one) const {
    return kerbs_.there_s(one).likely - kerbs_.row_s(wish::end_row(pass));
  }

  /// The next place after a pass; none within the time.
  [[nodiscard]] std::optional<std::size_t> next_after(const wish::Pass& pass) const {
    const auto& places = kerbs_.all();
    const std::size_t from = wish::end_row(pass);
    for (std::size_t k = 0; k < places.size(); ++k) {
      if (places[k].at < from) continue;
      if (since_s(pass, places[k]) > wish::stop_after_most_s) break;
      if (kerbs_.planned_at(places[k]) >= 0 || kerbs_.usable(places[k], wish::offered_stay_s))
        return k;
    }
    return std::nullopt;
  }

  [[nodiscard]] wish::StopAfter stop_after(std::size_t pass, std::optional<std::size_t> place,
                                           const std::vector<std::size_t>& told) const {
    wish::StopAfter after;
    after.pass = pass;
    if (!place) return after;
    after.pull_up =
        static_cast<std::size_t>(std::lower_bound(told.begin(), told.end(), *place) - told.begin());
    after.seconds = since_s(loop_.passes[pass], kerbs_.all()[*place]);
    return after;
  }

  [[nodiscard]] wish::PullUp pull_up(const KerbPlace& one) const {
    const road::PullUp& place = ground_.roads.pull_ups[one.place];
    wish::PullUp told;
    told.stretch = one.at;
    told.at_m = one.at_m;
    told.left = ground_.roads.info().region.side == Side::left;
    told.why = std::string(ground_.roads.text(place.why));
    told.check = lanes::what_to_check(place);
    if (const int row = kerbs_.planned_at(one); row >= 0) {
      const PlannedPullUp& stop = drive_.pull_ups[static_cast<std::size_t>(row)];
      told.purpose = stop.talk ? "talk" : "brief";
      told.seconds = static_cast<double>(stop.stay_ms) / 1000;
    }
    if (const auto& minutes = ground_.wish.minutes) {
      const double away_s = 60.0 * (*minutes - ground_.wish.reserve_minutes);
      const double whole_s = kerbs_.row_s(drive_.states.size());
      told.leave_by_s = kerbs_.there_s(one).likely + told.seconds + away_s - whole_s;
    }
    return told;
  }

  const Ground& ground_;
  const Drive& drive_;
  wish::Loop& loop_;
  KerbPlaces kerbs_;
};

std::string minutes_words(int minutes) {
  return std::to_string(minutes) + (minutes == 1 ? " minute" : " minutes");
}

std::string without_words(const wish::PlannedStops& stops, const WithoutPlace& one) {
  const std::string what = one.talk
                               ? "the talk near the end"
                               : "the brief before the first " + std::string(road::name(one.kind));
  const int minutes = one.talk ? stops.talk_minutes : stops.brief_minutes;
  const double within_s = one.talk ? wish::talk_before_end_most_s : wish::brief_before_most_s;
  return what + " has no place: the map has none to pull up within " +
         minutes_words(static_cast<int>(within_s / 60)) + " before it; " + minutes_words(minutes) +
         " stay free for it";
}

}  // namespace

void add_pull_ups(const Ground& ground, const Drive& drive, wish::Loop& loop) {
  loop.pull_ups.clear(), loop.stops_after.clear();
  PullUpTeller(ground, drive, loop).tell();
}

void tell_without_place(const Ground& ground, const Drive& drive, const wish::Loop& loop,
                        std::optional<wish::Shortfall>& shortfall) {
  if (drive.unplaced == 0) return;
  if (!shortfall) shortfall.emplace().why = "a planned stop has no place to pull up";
  Drive again = drive;
  for (const WithoutPlace& one : plan_pull_ups(ground, again))
    shortfall->stops.push_back("loop " + std::to_string(loop.id) + ": " +
                               without_words(ground.wish.stops, one));
}

}  // namespace loopwright::find
