// Roads of one name, as the streets people mean by it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "place/index.hpp"

namespace loopwright::place {

/// Pieces that bear one name and hang together, or lie within 500 m of each other.
struct Street {
  std::string name;             ///< as the map writes it
  std::vector<PieceId> pieces;  ///< ascending
};

/// The streets of a name, in order of their first piece.
std::vector<Street> streets_of(const road::Roads& roads, const Name& name);

/// A point on the street, the one nearest to its centre of length; on a part one may drive when
/// there is one.
Point middle_of(const road::Roads& roads, const Street& street);

/// Every point that gives it its shape.
std::vector<Point> shape_of(const road::Roads& roads, const Street& street);

/// Its nodes, ascending, each once.
std::vector<NodeId> nodes_of(const road::Roads& roads, const Street& street);

/// True when the point is nearer than this to the street.
bool is_near(const road::Roads& roads, const Street& street, Point at, double within_m);

/// Names of other streets that meet it, in order of its nodes, each once.
std::vector<std::string> streets_meeting(const road::Roads& roads, const Street& street);

}  // namespace loopwright::place
