#include "loopwright/reach/strong_parts.hpp"

#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/strong_components.hpp>
#include <utility>

namespace loopwright::reach {

std::vector<std::uint32_t> strong_parts(const LocalGraph& graph) {
  using Vertex = LocalGraph::Vertex;
  std::vector<std::pair<Vertex, Vertex>> arcs;
  for (Vertex v = 0; v < graph.size(); ++v)
    for (const LocalGraph::Arc& arc : graph.out(v)) arcs.emplace_back(v, arc.to);
  using Plain = boost::compressed_sparse_row_graph<boost::directedS, boost::no_property,
                                                   boost::no_property, boost::no_property, Vertex>;
  const Plain plain(boost::edges_are_sorted, arcs.begin(), arcs.end(),
                    static_cast<Vertex>(graph.size()));
  std::vector<std::uint32_t> part(graph.size());
  boost::strong_components(
      plain, boost::make_iterator_property_map(part.begin(), get(boost::vertex_index, plain)));
  return part;
}

}  // namespace loopwright::reach
