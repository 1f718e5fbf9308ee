#include "ohmtrail/plan/rewire.hpp"

#include <algorithm>

namespace ohmtrail::plan {
namespace {

bool same_cable(const netlist::Run& a, const netlist::Run& b) {
  return a.gauge == b.gauge && a.insulation == b.insulation && a.conductor == b.conductor;
}

/// True where the run changed at all.
bool write_run(const netlist::Run& was, const netlist::Run& is, const RunChoice& choice,
               netlist::Document& document) {
  if (was == is) return false;
  if (was.gauge == is.gauge && was.conductor == is.conductor)
    (void)document.renew_cable(was.id);
  else
    (void)document.replace_cable(was.id, choice.gauge);
  if (!same_cable(was, is)) (void)document.set_cable_kind(was.id, is.conductor, is.insulation);
  return true;
}

}  // namespace

void write_rewired(const netlist::System& original, const SizeResult& sized, netlist::Document& document) {
  bool renewed = false;
  for (std::size_t k = 0; k < original.runs.size(); ++k)
    renewed = write_run(original.runs[k], sized.rewired.runs[k], sized.runs[k], document) || renewed;
  for (const FuseChoice& fuse : sized.fuses)
    if (fuse.rating != fuse.was) (void)document.replace_device(fuse.id, units::Current{fuse.rating});
  if (renewed) document.remove_readings();
}

}  // namespace ohmtrail::plan
