#include <algorithm>
#include <cmath>
#include <utility>

#include "loopwright/reach/reach.hpp"

namespace loopwright::reach {

Costs::Costs(const road::Roads& roads)
    : roads_(&roads), stretch_ms_(roads.stretch_count(), unknown), banned_(roads.turns.size(), 0) {}

Costs Costs::by_length(const road::Roads& roads, double turn_round_m) {
  Costs costs(roads);
  costs.control_ms_[static_cast<std::size_t>(road::Control::turn_round)] =
      static_cast<std::int32_t>(std::llround(1000 * turn_round_m));
  return costs;
}

Costs::Costs(const road::Roads& roads, const pace::Pace& pace) : Costs(roads) {
  pace_ = pace;
  for (std::size_t c = 0; c < road::control_count; ++c)
    control_ms_[c] = static_cast<std::int32_t>(pace.at(static_cast<road::Control>(c)).likely_ms);
}

std::int32_t Costs::price(StretchId stretch) const {
  const bool may = roads_->drivable(stretch) && (!keeps_ || keeps_(stretch));
  std::int32_t ms = -1;
  if (may && pace_)
    ms = static_cast<std::int32_t>(pace_->along(stretch).likely_ms);
  else if (may)
    ms = static_cast<std::int32_t>(std::llround(1000 * roads_->piece(stretch).length_m));
  stretch_ms_.at(stretch.index()) = ms;
  return ms;
}

bool Costs::is_turning_banned(std::size_t turn) const {
  const road::Turn& row = roads_->turns[turn];
  if (row.control != road::Control::turn_round) return false;
  const road::RoadClass back = roads_->piece(roads_->stretch_of(row.to)).road_class;
  const bool is_street =
      back >= road::RoadClass::unclassified && back <= road::RoadClass::living_street;
  return turning_ == TurningRound::nowhere || !is_street;
}

void Costs::shut(PieceId piece) {
  for (const bool against : {false, true}) shut(StretchId(piece, against));
}

void Costs::keep_to(std::function<bool(StretchId)> keeps) {
  keeps_ = std::move(keeps);
  stretch_ms_.each([this](std::size_t row, std::int32_t& ms) {
    if (ms >= 0 && !keeps_(StretchId{row})) ms = -1;
  });
}

}  // namespace loopwright::reach
