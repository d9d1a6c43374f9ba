// The moments of a drive at which something is to be said, in driving order.
#pragma once

#include <optional>
#include <vector>

#include "loopwright/say/say.hpp"
#include "say/drive.hpp"
#include "say/junction.hpp"

namespace loopwright::say {

struct Moment {
  RowKind kind = RowKind::junction;
  std::size_t entry = 0;  ///< due at the end of this stretch
  std::size_t exit = 0;   ///< the stretch one leaves by; entry + 1 but for places with an inside
  const wish::Pass* pass = nullptr;  ///< of the loop, when the place makes one
  Junction junction = {};            ///< for lights, crossroads and other junctions
  bool goes_without_saying = false;  ///< only while they are looked for
};

/// The joint of the way taken: where its stretch begins.
inline std::size_t end_joint(const Moment& m) {
  return m.exit == 0 ? 0 : m.exit - 1;
}

std::vector<Moment> moments_of(const Drive& drive);

}  // namespace loopwright::say
