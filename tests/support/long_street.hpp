// A street that leads away from a door, and a drive out along it and back: for what counts streets.
#pragma once

#include <cstdint>

#include "loopwright/base/point.hpp"
#include "loopwright/road/by_id.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::test {

inline constexpr double street_lat = 54.3;

/// A street of three pieces, 700 m each, that leads away from the door; the middle one is no quiet street.
struct LongStreet {
  LongStreet() {
    for (int n = 0; n < 4; ++n) {
      const Point at =
          point_from_degrees(street_lat, 2.6 + n * 0.01077);  // 700 m of longitude at 54.3 degrees
      road::Node node;
      node.osm_id = 10 - n;
      node.at = at;
      tables.nodes.push_back(node);
      tables.shape.push_back(at);
      if (n < 3) tables.shape.push_back(point_from_degrees(street_lat, 2.6 + (n + 1) * 0.01077));
    }
    for (std::size_t n = 0; n < 3; ++n) {
      road::Piece piece;
      piece.way = 7;
      piece.a = NodeId{n};
      piece.b = NodeId{n + 1};
      piece.shape_first = static_cast<std::uint32_t>(2 * n);
      piece.shape_count = 2;
      piece.flags = n == 1 ? 0 : road::piece_flag::quiet;
      tables.pieces.push_back(piece);
      tables.stretches.resize(tables.stretches.size() + 2);
    }
    road::list_by_id(tables);
  }
  road::Tables tables;
  [[nodiscard]] road::Roads roads() const { return road::view_of(tables, {}); }
};

/// Out along all three pieces and back again, a minute each.
inline wish::Loop out_and_back() {
  wish::Loop loop;
  for (std::size_t n = 0; n < 6; ++n) {
    wish::LoopStretch row;
    row.stretch = StretchId{PieceId{n < 3 ? n : 5 - n}, n >= 3};
    row.arrive_s.likely = 60.0 * static_cast<double>(n);
    loop.stretches.push_back(row);
  }
  loop.seconds.likely = 360;
  for (const std::size_t at : {1U, 4U}) {
    wish::Pass pass;
    pass.kind = road::Kind::zebra;
    pass.first = pass.last = at;
    pass.hardness = 2;
    pass.source = {5, ObjectType::node};
    loop.passes.push_back(pass);
  }
  return loop;
}

inline wish::Wish wish_at_door() {
  wish::Wish wish;
  wish.home = point_from_degrees(street_lat, 2.6);
  return wish;
}

}  // namespace loopwright::test
