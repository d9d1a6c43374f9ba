// Method: a screen asks for a dozen tiles of one lesson: of the last few roads that the area handed out the tiles are kept.
#include "page/noted_tiles.hpp"

namespace loopwright::page {
namespace {

// As many as the area keeps for its notes, and the map alone.
constexpr std::size_t most_kept = 5;

}  // namespace

std::shared_ptr<const NotedTiles::Laid> NotedTiles::of(const Instant& start, int minutes) {
  std::shared_ptr<const road::Roads> roads = area_.noted(start, minutes);
  const std::lock_guard lock(mutex_);
  for (const auto& each : kept_)
    if (each->roads == roads) return each;
  kept_.push_front(std::make_shared<const Laid>(std::move(roads), area_.map()));
  if (kept_.size() > most_kept) kept_.pop_back();
  return kept_.front();
}

}  // namespace loopwright::page
