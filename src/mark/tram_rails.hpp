// Where the rails of trams lie, against the roads that share their points.
//
//   const TramRails rails(raw);
//   if (rails.join(10, 11)) …   // a tram runs from map node 10 to 11
//
// Rules: private to mark; raw must outlive it.
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

class TramRails {
 public:
  explicit TramRails(const RawMap& raw);
  [[nodiscard]] bool none() const { return joints_.empty(); }
  [[nodiscard]] bool touch(std::int64_t node) const;
  /// The tram that runs between two points that follow each other; null when none does.
  [[nodiscard]] const RawWay* join(std::int64_t a, std::int64_t b) const;

 private:
  struct Joint {
    std::int64_t low = 0, high = 0;
    const RawWay* tram = nullptr;
  };
  static std::pair<std::int64_t, std::int64_t> ends_of(const Joint& joint) {
    return {joint.low, joint.high};
  }
  std::vector<Joint> joints_;        // by both ends, low <= high
  std::vector<std::int64_t> nodes_;  // ascending
};

}  // namespace loopwright::mark
