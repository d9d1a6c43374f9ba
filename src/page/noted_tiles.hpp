// The area's tiles as the notes of this moment make the roads for a lesson.
//
//   noted_tiles.of(start, 60)->tiles.tile(address, when, setting);
//
// Rules: any thread may ask. Throws InputError when the notes can't be read.
#pragma once

#include <cstddef>
#include <deque>
#include <memory>
#include <mutex>

#include "loopwright/page/page.hpp"
#include "loopwright/page/tiles.hpp"

namespace loopwright::page {

class NotedTiles {
 public:
  /// Rules: the area outlives this.
  explicit NotedTiles(const OpenArea& area) : area_(area) {}

  /// Tiles, and the roads they are cut from.
  struct Laid {
    Laid(std::shared_ptr<const road::Roads> on, const road::Roads& map)
        : roads(std::move(on)), tiles(*roads, map) {}
    std::shared_ptr<const road::Roads> roads;
    Tiles tiles;
  };
  std::shared_ptr<const Laid> of(const Instant& start, int minutes);

 private:
  const OpenArea& area_;
  std::mutex mutex_;
  std::deque<std::shared_ptr<const Laid>> kept_;
};

}  // namespace loopwright::page
