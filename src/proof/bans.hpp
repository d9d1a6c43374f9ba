// Turn restrictions by the stretch they begin on.
#pragma once

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::proof {

class Bans {
 public:
  using Entry = std::pair<StretchId, std::uint32_t>;  ///< first stretch, row of turn_rules

  explicit Bans(const road::Roads& roads);
  /// Rules whose path begins with this stretch.
  [[nodiscard]] std::span<const Entry> from(StretchId first) const;

 private:
  std::vector<Entry> by_first_;
};

}  // namespace loopwright::proof
