// The area's tiles as the notes of this moment make the roads for a lesson.
//
//   GET /tiles/ZOOM/COLUMN/ROW?at=2026-11-28T15:00&minutes=60   a tile (page/tiles.hpp) for a lesson of so many minutes
//
// Rules: any thread may ask. 422: the notes can't be read, and roads drawn without them would mislead.
#pragma once

#include <cstddef>
#include <deque>
#include <memory>
#include <mutex>

#include "loopwright/page/page.hpp"
#include "loopwright/page/tiles.hpp"
#include "page/request.hpp"

namespace loopwright::page {

class NotedTiles {
 public:
  /// Rules: the area outlives this.
  explicit NotedTiles(const OpenArea& area) : area_(area) {}
  /// Rules: the address begins with /tiles/.
  Reply answer(const Address& address, const hours::SchoolTerms& terms);

 private:
  /// Tiles, and the roads they are cut from.
  struct Laid {
    Laid(std::shared_ptr<const road::Roads> on, const road::Roads& map)
        : roads(std::move(on)), tiles(*roads, map) {}
    std::shared_ptr<const road::Roads> roads;
    Tiles tiles;
  };
  std::shared_ptr<const Laid> of(const Instant& start, int minutes);

  const OpenArea& area_;
  std::mutex mutex_;
  std::deque<std::shared_ptr<const Laid>> kept_;
};

}  // namespace loopwright::page
