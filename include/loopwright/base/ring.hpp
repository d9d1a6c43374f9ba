// A closed line on the ground that takes in what lies inside it, or takes it out.
//
//   Ring square{{a, b, c, d}};   Ring hole{{e, f, g}, Ring::Role::hole};
//
// Rules: whether the last point repeats the first doesn't matter.
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

#include "loopwright/base/point.hpp"

namespace loopwright {

struct Ring {
  enum class Role : std::uint8_t {
    area,  ///< what lies inside is meant
    hole   ///< what lies inside is not, as far as one ring of an area goes
  };
  Ring() = default;
  Ring(std::vector<Point> line, Role its_role = Role::area)
      : points(std::move(line)), role(its_role) {}

  std::vector<Point> points;  ///< three different ones or more
  Role role = Role::area;
  friend bool operator==(const Ring&, const Ring&) = default;
};

}  // namespace loopwright
