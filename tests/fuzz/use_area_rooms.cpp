// In a build without the commands: the rooms that read areas, asked as commands ask them.
#include "loopwright/pace/pace.hpp"
#include "loopwright/place/place.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/store/area.hpp"
#include "trial.hpp"
#include "use_area.hpp"

namespace loopwright::fuzz {
namespace {

void reach_from(const road::Roads& roads, Point home) {
  const Instant saturday_afternoon{1'795'878'000, 0};
  const pace::Pace pace(roads, {.level = 3}, saturday_afternoon);
  const auto snap = reach::snap_home(roads, home);
  if (!snap) return;
  constexpr std::int64_t ten_minutes_ms = 600'000;
  reach::Sweep sweep(roads);
  sweep.run(reach::leaving(roads, pace, *snap), reach::costs_of(roads, pace), ten_minutes_ms);
  for (const std::uint32_t state : sweep.settled()) require(sweep.reached(StateId{state}));
}

}  // namespace

void use_area(const std::filesystem::path& file) {
  const store::Area area = store::open_area(file);
  const road::Roads& roads = area.roads();
  reach_from(roads, point_from_degrees(54.2954, 2.6015));
  refused([&] {
    const place::Finder finder(roads);
    require(finder.find("Mill Orchard").meant <= roads.pieces.size());
  });
}

}  // namespace loopwright::fuzz
