// Four roads made by hand, for tests of what reads the road graph and nothing else. East is right.
//
//   1 --way 10-- 2 --way 10-- 3      way 11 leaves 2 northwards, then bends east to 4
//                |                   way 12 is a closed loop at 4
//                +--- 4              way 13 runs 3, 5, 3, 5: the same two nodes three times
//
//   const SmallArea area;   area.roads().find_node(3);
//
// Rules: no turns, places or chances; node ids are those drawn, the rest is at rows in file order.
#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include "loopwright/road/by_id.hpp"

namespace loopwright::test {

class SmallArea {
 public:
  SmallArea() {
    for (const auto& [id, at] : std::vector<std::pair<std::int64_t, Point>>{
             {1, at(0, 0)}, {2, at(0, 2)}, {3, at(0, 4)}, {4, at(2, 3)}, {5, at(0, 6)}}) {
      road::Node node;
      node.osm_id = id;
      node.at = at;
      tables.nodes.push_back(node);
    }
    add_piece(10, {0, 1}, {0, 2}, {at(0, 0), at(0, 1), at(0, 2)});
    add_piece(10, {1, 2}, {2, 3}, {at(0, 2), at(0, 4)});
    add_piece(11, {1, 3}, {0, 2}, {at(0, 2), at(2, 2), at(2, 3)});
    add_piece(12, {3, 3}, {0, 3}, {at(2, 3), at(3, 3), at(3, 4), at(2, 3)});
    add_piece(13, {2, 4}, {0, 1}, {at(0, 4), at(0, 6)});
    add_piece(13, {4, 2}, {1, 2}, {at(0, 6), at(0, 4)});
    add_piece(13, {2, 4}, {2, 3}, {at(0, 4), at(0, 6)});
    tables.text_first = {0, 0};
    road::list_by_id(tables);
    list_leaving();
  }

  [[nodiscard]] road::Roads roads() const {
    road::AreaInfo info;
    info.id = "small";
    info.region = find_region("GB-ENG").value();
    return road::view_of(tables, info);
  }

  road::Tables tables;

 private:
  struct Ends {
    std::size_t a, b;
  };

  /// Steps of 0.001 degree to the north and to the east.
  static Point at(double north, double east) {
    return point_from_degrees(54.30 + north / 1000, 2.60 + east / 1000);
  }

  void list_leaving() {
    for (std::size_t n = 0; n < tables.nodes.size(); ++n) {
      tables.node_first.push_back(static_cast<std::uint32_t>(tables.node_out.size()));
      for (std::size_t s = 0; s < tables.stretches.size(); ++s) {
        const StretchId stretch{s};
        const road::Piece& piece = tables.pieces[stretch.piece().index()];
        if ((stretch.against() ? piece.b : piece.a).index() == n)
          tables.node_out.push_back(stretch);
      }
    }
    tables.node_first.push_back(static_cast<std::uint32_t>(tables.node_out.size()));
  }

  void add_piece(std::int64_t way, Ends nodes, Ends positions, const std::vector<Point>& shape) {
    road::Piece piece;
    piece.way = way;
    piece.a = NodeId{nodes.a}, piece.b = NodeId{nodes.b};
    piece.from_index = static_cast<std::uint32_t>(positions.a);
    piece.to_index = static_cast<std::uint32_t>(positions.b);
    piece.shape_first = static_cast<std::uint32_t>(tables.shape.size());
    piece.shape_count = static_cast<std::uint32_t>(shape.size());
    piece.length_m = length_m(shape);
    tables.shape.insert(tables.shape.end(), shape.begin(), shape.end());
    for (const std::uint64_t cell : road::grid_cells_of(shape)) {
      tables.grid.push_back({cell, PieceId{tables.pieces.size()}, 0});
    }
    tables.pieces.push_back(piece);
    tables.stretches.resize(2 * tables.pieces.size());
    std::sort(tables.grid.begin(), tables.grid.end(), [](const auto& x, const auto& y) {
      return std::pair(x.cell, x.piece) < std::pair(y.cell, y.piece);
    });
  }
};

}  // namespace loopwright::test
