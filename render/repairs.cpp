#include "render/repairs.hpp"

#include <algorithm>

#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

/// "M" of "M/return-wire"; empty for what is no part of a run.
std::string run_of(const diagnose::HotSpot& spot) {
  const std::size_t slash = spot.id.rfind('/');
  return slash == std::string::npos ? std::string() : spot.id.substr(0, slash);
}

std::string read_on(const netlist::System& system, const Repair& repair) {
  constexpr std::size_t most = 4;
  const std::vector<std::string>& rivals = repair.first().rivals;
  return rivals.empty() ? std::string(text::read_on)
                        : filled(text::read_on_among, listed(system, rivals, most));
}

bool same_job(const diagnose::HotSpot& a, const diagnose::HotSpot& b) {
  if (a.unparted && b.unparted) return a.unparted->conductor == b.unparted->conductor;
  return a.role == network::Role::wire && b.role == network::Role::wire && a.cause == b.cause &&
         a.fix == b.fix && !run_of(a).empty() && run_of(a) == run_of(b);
}

}  // namespace

std::vector<Repair> repairs(const std::vector<diagnose::HotSpot>& spots) {
  std::vector<Repair> list;
  for (const diagnose::HotSpot& spot : spots) {
    const auto same =
        std::find_if(list.begin(), list.end(), [&](const Repair& r) { return same_job(r.first(), spot); });
    if (same == list.end())
      list.push_back(Repair{{&spot}});
    else
      same->parts.push_back(&spot);
  }
  return list;
}

std::string where(const netlist::System& system, const Repair& repair) {
  if (repair.unparted()) return where_conductor(repair.first().unparted->conductor);
  if (repair.parts.size() > 1) return filled(text::where_both, run_of(repair.first()));
  return where(system, repair.first().id);
}

std::string_view what_it_is(const Repair& repair) {
  if (repair.in_doubt()) return text::cause_in_doubt;
  return repair.unparted() ? text::cause_somewhere : what_it_is(repair.first().cause);
}

std::string what_to_do(const netlist::System& system, const Repair& repair) {
  if (repair.in_doubt()) return read_on(system, repair);
  return repair.unparted() ? filled(text::read_parts_first, repair.first().fix) : repair.first().fix;
}

std::string ranks(const Repair& repair) {
  std::string list;
  for (const diagnose::HotSpot* part : repair.parts)
    list += (list.empty() ? "" : ", ") + std::to_string(part->rank);
  return list;
}

}  // namespace ohmtrail::render
