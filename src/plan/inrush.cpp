#include "plan/inrush.hpp"

#include <cmath>

#include "ohmtrail/trade/fuse_ladder.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

constexpr double kStartSeconds = 0.5;

/// Whether a load is cut off from every battery and charger once the device opens.
bool sole_feed(const network::Network& network, int device, int load) {
  std::vector<bool> reached(network.points.size(), false);
  std::vector<int> open{network.elements[at(load)].from};
  reached[at(open.back())] = true;
  const auto visit = [&](int point) {
    if (!reached[at(point)]) reached[at(point)] = true, open.push_back(point);
  };
  while (!open.empty()) {
    const int point = open.back();
    open.pop_back();
    for (std::size_t e = 0; e < network.elements.size(); ++e) {
      const auto& element = network.elements[e];
      if (!element.active || static_cast<int>(e) == device || element.role == network::Role::load) continue;
      if (element.from != point && element.to != point) continue;
      if (element.role == network::Role::battery || element.role == network::Role::charger) {
        if (element.from == point) return false;
        continue;
      }
      visit(element.from == point ? element.to : element.from);
    }
  }
  return true;
}

void raise(std::vector<FuseChoice>& fuses, const std::string& id, double amperes) {
  for (FuseChoice& fuse : fuses)
    if (fuse.id == id && amperes > fuse.inrush.value_or(0)) fuse.inrush = amperes;
}

bool is_blade(const netlist::System& system, const std::string& id) {
  for (const auto& fuse : system.fuses)
    if (fuse.id == id)
      return fuse.form.value_or(trade::usual_fuse_form(fuse.rating)) == trade::FuseForm::blade;
  return false;
}

}  // namespace

void add_inrush(const Assessment& final, const std::vector<Guards>& guards, std::vector<FuseChoice>& fuses) {
  for (std::size_t c = 0; c < final.cases.size(); ++c) {
    const auto& solved = final.cases[c];
    for (const auto& result : solved.loads) {
      const auto& element = solved.network.elements[at(result.element)];
      if (!result.running || element.origin.section != network::Section::loads) continue;
      const auto& load = final.system.loads[element.origin.index];
      if (!load.inrush) continue;
      const double extra = std::max(0.0, load.inrush->si() - std::abs(result.current));
      for (const Guard& guard : guards[c].devices)
        if (sole_feed(solved.network, guard.element, result.element))
          raise(fuses, solved.network.elements[at(guard.element)].id,
                std::abs(solved.solution.current[at(guard.element)]) + extra);
    }
  }
  for (FuseChoice& fuse : fuses) {
    if (!fuse.inrush || !is_blade(final.system, fuse.id)) continue;
    const auto opens = trade::blade_opening_time(units::Current{fuse.rating}, units::Current{*fuse.inrush});
    if (opens && opens->no_sooner.si() < kStartSeconds) fuse.opens_after = opens->no_sooner.si();
  }
}

}  // namespace ohmtrail::plan
