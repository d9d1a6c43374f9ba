// Streets and junctions that every loop of a wish must take (DEVELOPERS.md, "Keeping off, and taking").
//
//   hunt.takes = takes_of(ground, graph);   if (!is_taken(hunt.takes[0], vertices)) …
#pragma once

#include <span>
#include <string>
#include <vector>

#include "loopwright/reach/local_graph.hpp"

namespace loopwright::find {

struct Ground;

/// One of them, as what can be driven for it within the minutes.
struct Take {
  std::string name;  ///< as it was asked for
  /// Stretches of the street; of a junction those that leave it. Ascending; empty: none can be driven.
  std::vector<reach::LocalGraph::Vertex> vertices;
  bool junction = false;  ///< then the first stretch of a drive, on which it begins, doesn't count
};

/// In the wish's order; none of a section of a lesson.
std::vector<Take> takes_of(const Ground& ground, const reach::LocalGraph& graph);

/// Rules: vertices of a whole drive.
bool is_taken(const Take& take, std::span<const reach::LocalGraph::Vertex> vertices);

/// How many a drive doesn't take.
int not_taken(const std::vector<Take>& takes, std::span<const reach::LocalGraph::Vertex> vertices);

}  // namespace loopwright::find
