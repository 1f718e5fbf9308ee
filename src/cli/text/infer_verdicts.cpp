#include "cli/text/infer_verdicts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "cli/text/infer_words.hpp"
#include "cli/text/words.hpp"
#include "ohmtrail/diagnose/infer_apply.hpp"

namespace ohmtrail::cli {
namespace {

using namespace diagnose;

std::string element_verdict(const netlist::System& system, const network::Network& network,
                            const InferredElement& e) {
  return fmt::format("{}: about {} where {} is sound; {}.", capitalised(where_is(system, network, e.id)),
                     print_ohms(e.resistance), print_ohms(e.sound_resistance),
                     percent_sure(e.fault_probability));
}

std::string battery_verdict(const InferredBattery& b) {
  if (b.cell_missing_probability > 0.5 * b.fault_probability)
    return fmt::format("The battery \"{}\": one cell seems to be missing, {} open-circuit; {}.", b.id,
                       print_volts(b.emf), percent_sure(b.fault_probability));
  return fmt::format("The battery \"{}\": about {} inside; {}.", b.id, print_ohms(b.resistance),
                     percent_sure(b.fault_probability));
}

// Somewhere in this cable, where its parts share the odds.
std::string conductor_verdict(const netlist::System& system, const network::Network& network,
                              const InferResult& result, const std::string& id) {
  const auto conductor = std::find_if(result.conductors.begin(), result.conductors.end(),
                                      [&](const InferredConductor& one) { return one.id == id; });
  std::vector<std::string> parts;
  for (const InferredElement& e : result.elements)
    if (std::count(conductor->parts.begin(), conductor->parts.end(), e.id) > 0 &&
        e.fault_probability >= worth_a_row)
      parts.push_back(
          fmt::format("{} {}", where_is(system, network, e.id), percent_sure(e.fault_probability)));
  return fmt::format(
      "Somewhere in {}: about {} from stud to stud where {} is sound; {}. The readings do not tell which "
      "part: {}.",
      conductor_in_words(id), print_ohms(conductor->resistance), print_ohms(conductor->sound_resistance),
      percent_sure(conductor->fault_probability), listed(parts));
}

/// Who has been named: elements and batteries one by one, conductors as a whole.
class Verdicts {
 public:
  Verdicts(Sheet& sheet, const netlist::System& system, const network::Network& network,
           const InferResult& result)
      : sheet_(sheet), system_(system), network_(network), result_(result), unparted_(unparted(result)) {}

  /// False where there is nothing to name.
  bool show() {
    for (const std::string& id : result_.suspects) name(id);
    for (const UnresolvedGroup& group : result_.unresolved) name_group(group);
    return !named_.empty();
  }

 private:
  void say(const std::string& id, const std::string& text) {
    if (named_.insert(id).second) sheet_.paragraph(text, Ink::bad);
  }

  void name(const std::string& id) {
    if (const auto shared = unparted_.find(id); shared != unparted_.end()) {
      const std::string& conductor = shared->second.conductor;
      say(conductor, conductor_verdict(system_, network_, result_, conductor));
      return;
    }
    for (const InferredElement& e : result_.elements)
      if (e.id == id && e.fault_probability >= worth_a_verdict)
        say(id, element_verdict(system_, network_, e));
    for (const InferredBattery& b : result_.batteries)
      if (b.id == id && b.fault_probability >= worth_a_verdict) say(id, battery_verdict(b));
  }

  // "Somewhere in this group" where the group is surely faulty, but nothing in it was named.
  void name_group(const UnresolvedGroup& group) {
    const bool one_is_named = std::any_of(group.ids.begin(), group.ids.end(), [&](const std::string& id) {
      return named_.contains(id) || unparted_.contains(id);
    });
    if (group.fault_probability < worth_a_verdict || one_is_named) return;
    const std::string sum = std::isnan(group.sum) ? "" : print_ohms(group.sum) + " together; ";
    say(group.ids.front(),
        fmt::format("Somewhere among {}: {}{}.", where_are(system_, network_, result_, group.ids), sum,
                    percent_sure(group.fault_probability)));
  }

  Sheet& sheet_;
  const netlist::System& system_;
  const network::Network& network_;
  const InferResult& result_;
  std::map<std::string, Unparted> unparted_;
  std::set<std::string> named_;
};

}  // namespace

void show_verdicts(Sheet& sheet, const netlist::System& system, const network::Network& network,
                   const InferResult& result) {
  if (Verdicts(sheet, system, network, result).show()) return;
  sheet.paragraph(result.readings.empty()
                      ? "Nothing was read: this is what is usual for such a system, no more."
                      : "No single thing is more likely faulty than sound.",
                  Ink::good);
}

}  // namespace ohmtrail::cli
