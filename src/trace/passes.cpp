// Method: a run is cut where the car turned round, since no pass goes over that; each part is a drive to room find.
#include "loopwright/trace/passes.hpp"

#include <algorithm>
#include <tuple>

#include "loopwright/find/passes.hpp"

namespace loopwright::trace {
namespace {

/// A planned manoeuvre counts as done by a stop of so many seconds so near its place. Ours: even a quick one takes that
/// long, and neither the place nor the fixes are better than that.
constexpr double manoeuvre_s = 20, manoeuvre_m = 60;

void add_passes(const road::Roads& roads, const Run& run, std::size_t first, std::size_t end,
                std::vector<TracedPass>& passes) {
  find::Drive drive;
  for (std::size_t k = first; k < end; ++k) drive.states.push_back(run.legs[k].state);
  drive.start_m = run.legs[first].from_m, drive.end_m = run.legs[end - 1].to_m;
  for (find::PlacePass& found : find::passes_of(roads, drive)) {
    TracedPass one{std::move(found.pass)};
    one.pass.first += first, one.pass.last += first;
    one.from_s = run.legs[one.pass.first].enter_s;
    one.to_s = run.legs[one.pass.last].enter_s;
    for (std::size_t k = one.pass.first; k <= one.pass.last; ++k)
      one.seen = one.seen && run.legs[k].seen;
    passes.push_back(std::move(one));
  }
}

/// Where the map has a manoeuvre of a plan; none when this area doesn't.
const road::Chance* spot_of(const road::Roads& roads, StretchId stretch,
                            const wish::Pass& planned) {
  for (const road::Chance& chance : roads.chances_from(stretch))
    if (chance.kind == planned.kind && chance.source == planned.source) return &chance;
  return nullptr;
}

/// On which leg a planned manoeuvre was done; as many as there are when it wasn't.
std::size_t done_on(const road::Roads& roads, const Run& run, const wish::Pass& planned,
                    double& from_s) {
  for (std::size_t k = 0; k < run.legs.size(); ++k) {
    const road::Chance* spot = spot_of(roads, roads.stretch_of(run.legs[k].state), planned);
    if (spot == nullptr) continue;
    const Point place = roads.places[spot->place.index()].at;
    for (const Stop& stop : run.stops)
      if (stop.to_s - stop.from_s >= manoeuvre_s && distance_m(stop.at, place) <= manoeuvre_m) {
        from_s = stop.from_s;
        return k;
      }
    if (planned.kind == road::Kind::turn_in_road && k + 1 < run.legs.size() &&
        run.legs[k + 1].turned_round) {
      from_s = run.legs[k + 1].enter_s;
      return k;
    }
  }
  return run.legs.size();
}

}  // namespace

std::vector<TracedPass> passes_of(const road::Roads& roads, const Run& run,
                                  std::span<const wish::Pass> planned) {
  std::vector<TracedPass> passes;
  for (std::size_t first = 0; first < run.legs.size();) {
    std::size_t end = first + 1;
    while (end < run.legs.size() && !run.legs[end].turned_round) ++end;
    add_passes(roads, run, first, end, passes);
    first = end;
  }
  for (const wish::Pass& pass : planned) {
    if (road::form_of(pass.kind) != road::KindForm::manoeuvre) continue;
    TracedPass one{pass};
    const std::size_t leg = done_on(roads, run, pass, one.from_s);
    if (leg == run.legs.size()) continue;
    one.pass.first = one.pass.last = leg;
    one.to_s = one.from_s;
    passes.push_back(std::move(one));
  }
  std::stable_sort(passes.begin(), passes.end(), [](const TracedPass& a, const TracedPass& b) {
    return std::tuple(a.pass.first, a.pass.last, a.pass.kind) <
           std::tuple(b.pass.first, b.pass.last, b.pass.kind);
  });
  return passes;
}

}  // namespace loopwright::trace
