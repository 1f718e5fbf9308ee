#include "ohmtrail/network/topology.hpp"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/biconnected_components.hpp>
#include <boost/graph/connected_components.hpp>

namespace ohmtrail::network {

namespace {

struct Edge {
  std::size_t element = 0;
  std::size_t block = 0;  ///< its biconnected component
};

using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, boost::no_property, Edge>;

Graph graph_of(const Network& network) {
  Graph graph(network.points.size());
  for (std::size_t k = 0; k < network.elements.size(); ++k) {
    const Element& element = network.elements[k];
    if (!element.active || element.from == element.to) continue;
    boost::add_edge(static_cast<std::size_t>(element.from), static_cast<std::size_t>(element.to), Edge{k, 0},
                    graph);
  }
  return graph;
}

/// A bridge is a biconnected component of one edge.
void find_bridges(Graph& graph, Topology& topology) {
  const std::size_t blocks = boost::biconnected_components(graph, boost::get(&Edge::block, graph));
  std::vector<int> edges_in(blocks, 0);
  for (auto [edge, end] = boost::edges(graph); edge != end; ++edge) ++edges_in[graph[*edge].block];
  for (auto [edge, end] = boost::edges(graph); edge != end; ++edge) {
    topology.bridge[graph[*edge].element] = edges_in[graph[*edge].block] == 1;
  }
}

}  // namespace

Topology topology_of(const Network& network) {
  Graph graph = graph_of(network);
  Topology topology;
  topology.island.resize(network.points.size());
  topology.bridge.resize(network.elements.size());
  topology.islands = boost::connected_components(graph, topology.island.data());
  topology.rings = static_cast<int>(boost::num_edges(graph)) - static_cast<int>(boost::num_vertices(graph)) +
                   topology.islands;
  find_bridges(graph, topology);
  return topology;
}

}  // namespace ohmtrail::network
