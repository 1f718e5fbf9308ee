#include "ohmtrail/network/topology.hpp"

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/biconnected_components.hpp>
#include <boost/graph/connected_components.hpp>
#include <map>
#include <utility>

namespace ohmtrail::network {

namespace {

struct Edge {
  std::vector<std::size_t> elements;  ///< all that join the same two points
  std::size_t block = 0;              ///< its biconnected component
};

using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, boost::no_property, Edge>;

bool joins(const Element& element) {
  return element.active && element.from != element.to;
}

/// One edge for all elements side by side: Boost's biconnected components overlook a second way back to the
/// point that the search came from.
Graph graph_of(const Network& network) {
  std::map<std::pair<int, int>, std::vector<std::size_t>> between;
  for (std::size_t k = 0; k < network.elements.size(); ++k) {
    const Element& element = network.elements[k];
    if (joins(element)) between[std::minmax({element.from, element.to})].push_back(k);
  }
  Graph graph(network.points.size());
  for (auto& [ends, elements] : between) {
    boost::add_edge(static_cast<std::size_t>(ends.first), static_cast<std::size_t>(ends.second),
                    Edge{std::move(elements), 0}, graph);
  }
  return graph;
}

/// A bridge is an element alone between its points, and a biconnected component of its own.
void find_bridges(Graph& graph, Topology& topology) {
  const std::size_t blocks = boost::biconnected_components(graph, boost::get(&Edge::block, graph));
  std::vector<int> elements_in(blocks, 0);
  for (auto [edge, end] = boost::edges(graph); edge != end; ++edge) {
    elements_in[graph[*edge].block] += static_cast<int>(graph[*edge].elements.size());
  }
  for (auto [edge, end] = boost::edges(graph); edge != end; ++edge) {
    const Edge& found = graph[*edge];
    for (const std::size_t element : found.elements) topology.bridge[element] = elements_in[found.block] == 1;
  }
}

}  // namespace

Topology topology_of(const Network& network) {
  Graph graph = graph_of(network);
  Topology topology;
  topology.island.resize(network.points.size());
  topology.bridge.resize(network.elements.size());
  topology.islands = boost::connected_components(graph, topology.island.data());
  const auto edges = std::count_if(network.elements.begin(), network.elements.end(), joins);
  topology.rings = static_cast<int>(edges) - static_cast<int>(network.points.size()) + topology.islands;
  find_bridges(graph, topology);
  return topology;
}

}  // namespace ohmtrail::network
