#include "county/map_numbers.hpp"

namespace loopwright::county {
namespace {

constexpr std::int64_t border_ids = map_ids::apart - 10;  // the last ids of a county, by side

std::int64_t border_id(std::int64_t county, Side side) {
  return map_ids::first_node - 1 + county * map_ids::apart + border_ids + static_cast<int>(side);
}

}  // namespace

Numbering::Numbering(const Drawing& county, const CountyPlace& place,
                     std::set<std::int64_t>& written)
    : where_(place), written_(written), next_(map_ids::first_node + place.number * map_ids::apart) {
  for (const Line& line : county.lines)
    for (const Spot point : line.points) number(point);
  for (const Area& area : county.areas)
    for (const Spot corner : area.corners) number(corner);
  for (const Lone& lone : county.lone) number(lone.at);
}

void Numbering::number(Spot place) {
  const auto [at, fresh] = numbers_.try_emplace(place, 0);
  if (!fresh) return;
  const auto border = where_.borders.find(place);
  if (border != where_.borders.end()) at->second = on_border(place, border->second);
  if (at->second == 0) own_.emplace(at->second = next_++, place);
}

/// The neighbour's number of a point it has written, or a number the neighbour will know; 0 when
/// there is nobody to share it with.
std::int64_t Numbering::on_border(Spot place, Side side) {
  if (side == Side::east || side == Side::north) {
    const std::int64_t id = border_id(where_.number, side);
    written_.insert(id);
    own_.emplace(id, place);
    return id;
  }
  const auto neighbour = where_.beyond.find(side);
  if (neighbour == where_.beyond.end()) return 0;
  const std::int64_t id =
      border_id(neighbour->second, side == Side::west ? Side::east : Side::north);
  if (!written_.contains(id)) return 0;
  ++shared_;
  return id;
}

}  // namespace loopwright::county
