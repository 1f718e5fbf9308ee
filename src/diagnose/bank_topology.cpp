#include <map>
#include <string>

#include "diagnose/bank_groups.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

/// Points that are joined by anything that conducts.
class JoinedPoints {
 public:
  void join(const std::string& a, const std::string& b) { parent_[at(a)] = at(b); }

  std::size_t at(const std::string& point) {
    const auto [entry, added] = indices_.try_emplace(point, parent_.size());
    if (added) parent_.push_back(entry->second);
    auto root = entry->second;
    while (parent_[root] != root) root = parent_[root] = parent_[parent_[root]];
    return root;
  }

 private:
  std::map<std::string, std::size_t> indices_;
  std::vector<std::size_t> parent_;
};

template <class Elements>
void join_all(JoinedPoints& points, const Elements& elements) {
  for (const auto& element : elements) points.join(element.from, element.to);
}

JoinedPoints join(const netlist::System& system) {
  JoinedPoints points;
  join_all(points, system.runs);
  for (const auto& run : system.runs)
    if (run.return_conductor) points.join(run.return_conductor->from, run.return_conductor->to);
  join_all(points, system.joints);
  join_all(points, system.fuses);
  join_all(points, system.shunts);
  for (const auto& element : system.switches)
    if (element.closed) points.join(element.from, element.to);
  return points;
}

struct Block {
  Step batteries;
  std::size_t plus, minus;
};

/// Batteries across the same two joined points stand side by side.
std::vector<Block> blocks_of(const netlist::System& system, JoinedPoints& points) {
  std::vector<Block> blocks;
  for (std::size_t i = 0; i < system.batteries.size(); ++i) {
    const auto plus = points.at(system.batteries[i].plus), minus = points.at(system.batteries[i].minus);
    Block* same = nullptr;
    for (auto& block : blocks)
      if (block.plus == plus && block.minus == minus) same = &block;
    if (same != nullptr)
      same->batteries.push_back(i);
    else
      blocks.push_back({{i}, plus, minus});
  }
  return blocks;
}

/// The one block whose minus stands on `point` where nothing else of a battery does but the plus below it;
/// −1: none.
int block_above(const std::vector<Block>& blocks, std::size_t point) {
  int above = -1, minuses = 0, pluses = 0;
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    if (blocks[i].minus == point) above = static_cast<int>(i), ++minuses;
    if (blocks[i].plus == point) ++pluses;
  }
  return minuses == 1 && pluses == 1 ? above : -1;
}

bool stands_on_another(const std::vector<Block>& blocks, const Block& block) {
  for (const auto& other : blocks)
    if (other.plus == block.minus && block_above(blocks, block.minus) >= 0) return true;
  return false;
}

String climb(const std::vector<Block>& blocks, std::size_t bottom, std::vector<bool>& taken) {
  String string{{}, blocks[bottom].plus, blocks[bottom].minus};
  for (int at = static_cast<int>(bottom); at >= 0 && !taken[static_cast<std::size_t>(at)];
       at = block_above(blocks, string.plus)) {
    const auto& block = blocks[static_cast<std::size_t>(at)];
    taken[static_cast<std::size_t>(at)] = true;
    string.steps.push_back(block.batteries);
    string.plus = block.plus;
  }
  return string;
}

}  // namespace

std::vector<String> strings_of(const netlist::System& system) {
  auto points = join(system);
  const auto blocks = blocks_of(system, points);
  std::vector<bool> taken(blocks.size(), false);
  std::vector<String> strings;
  for (std::size_t i = 0; i < blocks.size(); ++i)
    if (!taken[i] && !stands_on_another(blocks, blocks[i])) strings.push_back(climb(blocks, i, taken));
  // A closed ring of batteries has no bottom: start anywhere, so that none is lost.
  for (std::size_t i = 0; i < blocks.size(); ++i)
    if (!taken[i]) strings.push_back(climb(blocks, i, taken));
  return strings;
}

}  // namespace ohmtrail::diagnose::bank
