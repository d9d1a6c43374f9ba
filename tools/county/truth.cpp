#include "county/truth.hpp"

#include <algorithm>
#include <tuple>

#include "county/truth_parts.hpp"

namespace loopwright::county {

void Rows::must_at(road::Kind kind, Spot at, double within_m, std::string says) {
  truth_.places.push_back({Duty::must, road::bit(kind), net_.point(at), within_m, std::move(says)});
}

void Rows::may_at(std::uint64_t kinds, Spot at, double within_m) {
  truth_.places.push_back({Duty::may, kinds, net_.point(at), within_m, ""});
}

void Rows::must_along(road::Kind kind, const Road& road, Course course, double metres) {
  // A run shorter than a pass needs may be too short with all that hangs together with it.
  const Duty duty =
      road.length > road::least_run_m(kind) + 5 || metres == 0 ? Duty::must : Duty::may;
  truth_.runs.push_back({duty, road::bit(kind), course, "", road.way, metres});
}

void Rows::may_along(std::uint64_t kinds, const Road& road, Course course) {
  truth_.runs.push_back({Duty::may, kinds, course, "", road.way, 0});
}

Truth truth_of(const Drawing& county) {
  const Net net(county);
  Rows rows(net);
  tell_rings(net, rows);
  tell_signs(net, rows);
  tell_streets(net, rows);
  tell_shape(net, rows);
  tell_lanes(net, rows);
  tell_junctions(net, rows);
  tell_besides(net, rows);
  tell_spots(net, rows);
  Truth truth = rows.take();
  std::ranges::sort(truth.places, {}, [](const TruePlace& p) {
    return std::tuple(p.duty, p.kinds, p.at, p.within_m, p.says);
  });
  std::ranges::sort(truth.runs, {}, [](const TrueRun& r) {
    return std::tuple(r.duty, r.kinds, r.course, r.says, r.way, r.metres);
  });
  return truth;
}

std::vector<Trap> traps_of(const Plan& plan) {
  const Projection flat(plan.origin_lat, plan.origin_lon);
  std::vector<Trap> traps;
  for (const PlanTrap& trap : plan.traps)
    traps.push_back(
        {trap.trap, point_from_degrees(flat.lat(trap.at.y()), flat.lon(trap.at.x())), trap.what});
  return traps;
}

}  // namespace loopwright::county
