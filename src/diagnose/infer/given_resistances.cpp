#include "diagnose/infer/given_resistances.hpp"

#include <algorithm>
#include <optional>
#include <string_view>

#include "diagnose/infer/priors.hpp"
#include "diagnose/infer/reading_error.hpp"
#include "ohmtrail/trade/meter.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

class GivenResistances {
 public:
  GivenResistances(const netlist::System& system, Survey& survey) : system_(system), survey_(survey) {}

  void add() {
    add_elements();
    add_batteries();
  }

 private:
  // The end of a run that a termination is, or is half of.
  [[nodiscard]] const netlist::RunEnd& end_of(const network::Element& termination) const {
    using network::Part;
    const netlist::Run& run = system_.runs[termination.origin.index];
    switch (termination.origin.part) {
      case Part::from:
      case Part::from_crimp:
        return run.end_from;
      case Part::to:
      case Part::to_crimp:
        return run.end_to;
      case Part::return_from:
      case Part::return_from_crimp:
        return run.return_conductor->end_from;
      default:
        return run.return_conductor->end_to;
    }
  }

  // The crimp of an opened end whose one `resistance` was shared half and half between its two elements.
  [[nodiscard]] std::optional<int> other_half(const network::Element& element) const {
    if (element.role != network::Role::termination) {
      return std::nullopt;
    }
    const netlist::RunEnd& end = end_of(element);
    const auto crimp = survey_.element_parameter.find(element.id + "-crimp");
    const bool shared = !end.crimp || !end.crimp->as_found;
    return shared && crimp != survey_.element_parameter.end() ? std::optional(crimp->second) : std::nullopt;
  }

  [[nodiscard]] bool told_by_its_other_half(const network::Element& element) const {
    constexpr std::string_view crimp = "-crimp";
    if (element.role != network::Role::termination || !element.id.ends_with(crimp)) {
      return false;
    }
    const netlist::RunEnd& end = end_of(element);
    return !end.crimp || !end.crimp->as_found;
  }

  // `resistance` of an element is one more four-wire reading; that of an opened end is one of both halves.
  void add_elements() {
    for (const network::Element& element : survey_.networks.front().elements) {
      const auto known = survey_.element_parameter.find(element.id);
      if (!element.as_found_given || known == survey_.element_parameter.end() ||
          element.role == network::Role::battery || told_by_its_other_half(element)) {
        continue;
      }
      Observation out;
      out.sight = Sight::resistance;
      out.wrong_log_odds = log_odds(wrong_resistance_chance);
      out.parameter = known->second;
      out.measured = element.resistance.si();
      if (const auto other = other_half(element)) {
        out.also = *other;
        out.measured *= 2;
      }
      const units::Resistance whole{out.measured};
      out.sigma = std::max(trade::usual_accuracy(whole).bound(out.measured) / bound_over_sd, 1e-9);
      survey_.model.observations.push_back(std::move(out));
    }
  }

  void add_batteries() {
    for (const network::Element& element : survey_.networks.front().elements) {
      if (element.role != network::Role::battery || !element.sound ||
          !resistance_was_tested(system_.batteries[element.origin.index])) {
        continue;
      }
      Observation out;
      out.sight = Sight::resistance;
      out.parameter = survey_.element_parameter.at(element.id);
      out.measured = element.resistance.si();
      out.sigma = tested_resistance_ln_sd * out.measured;
      survey_.model.observations.push_back(std::move(out));
    }
  }

  const netlist::System& system_;
  Survey& survey_;
};

}  // namespace

void add_given_resistances(const netlist::System& system, Survey& survey) {
  GivenResistances(system, survey).add();
}

}  // namespace ohmtrail::diagnose::inference
