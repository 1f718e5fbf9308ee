#include "plan/ground.hpp"

#include <algorithm>
#include <boost/pending/disjoint_sets.hpp>
#include <optional>

#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

using network::Role;

bool is_source(const network::Element& element) {
  return element.role == Role::battery || element.role == Role::charger;
}

class Finder {
 public:
  Finder(const netlist::System& system, const network::Network& network)
      : system_(system),
        network_(network),
        passive_(network.points.size()),
        islands_(network.points.size()),
        of_island_(network.points.size()) {
    for (const auto& element : network.elements) {
      if (is_passive(element)) passive_.union_set(at(element.from), at(element.to));
      if (is_passive(element) || is_source(element)) islands_.union_set(at(element.from), at(element.to));
      if (element.role == Role::battery) batteries_.push_back({element.from, element.to});
    }
  }

  Ground find() {
    // Without one in the file the reference is where volts are counted from: that says nothing of grounding.
    if (network_.reference && !system_.reference.empty()) set(*network_.reference);
    for (const auto role : {Role::battery, Role::charger})
      for (const auto& element : network_.elements)
        if (element.role == role && !is_set(element.to)) set(end_of_string(element.to));
    for (int p = 0; p < static_cast<int>(network_.points.size()); ++p)
      out_.points.push_back(passive_.find_set(at(p)) == of_island_[islands_.find_set(at(p))]);
    return std::move(out_);
  }

 private:
  bool is_set(int point) { return of_island_[islands_.find_set(at(point))].has_value(); }

  void set(int point) {
    of_island_[islands_.find_set(at(point))] = passive_.find_set(at(point));
    if (out_.point < 0) out_.point = point;
  }

  /// From the minus of a battery through whatever batteries are in series below it.
  int end_of_string(int minus) {
    for (std::size_t below = 0; below < batteries_.size(); ++below) {
      const auto next = std::find_if(batteries_.begin(), batteries_.end(), [&](const auto& posts) {
        return joined(posts.plus, minus) && !joined(posts.minus, minus);
      });
      if (next == batteries_.end()) break;
      minus = next->minus;
    }
    return minus;
  }

  bool joined(int a, int b) { return passive_.find_set(at(a)) == passive_.find_set(at(b)); }

  struct Posts {
    int plus, minus;
  };

  const netlist::System& system_;
  const network::Network& network_;
  boost::disjoint_sets_with_storage<> passive_, islands_;
  std::vector<Posts> batteries_;
  std::vector<std::optional<std::size_t>> of_island_;  ///< per root of an island: its ground's root
  Ground out_;
};

}  // namespace

bool is_passive(const network::Element& element) {
  return !is_source(element) && element.role != Role::load;
}

Ground find_ground(const netlist::System& system, const network::Network& network) {
  return Finder(system, network).find();
}

}  // namespace ohmtrail::plan
