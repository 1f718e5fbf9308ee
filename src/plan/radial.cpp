#include "plan/radial.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>

#include "plan/arm_duty.hpp"
#include "plan/bank_strings.hpp"
#include "units/index.hpp"

namespace ohmtrail::plan {

namespace {

using network::Role;

RadialLoad load_of(const network::Network& network, int index) {
  const auto& element = network.elements[at(index)];
  RadialLoad load;
  load.element = index;
  load.limit = element.drop_limit && element.nominal ? element.drop_limit->of_one() * element.nominal->si()
                                                     : std::numeric_limits<double>::infinity();
  if (const auto* watts = std::get_if<units::Power>(&*element.takes)) {
    load.draw = Draw::power;
    load.size = watts->si() / element.efficiency + element.idle.si();
  } else if (const auto* amperes = std::get_if<units::Current>(&*element.takes)) {
    load.size = amperes->si();
  } else {
    load.draw = Draw::resistance;
    load.size = std::get<units::Resistance>(*element.takes).si();
  }
  return load;
}

bool is_plain(const network::Element& element) {
  if (!element.active) return true;
  if (element.role == Role::charger || element.role == Role::isolator || element.partner >= 0) return false;
  const bool plain_draw = element.efficiency == 1 && element.idle.si() == 0;
  return element.role != Role::load || plain_draw || std::holds_alternative<units::Power>(*element.takes);
}

void add_element(const DesignSpace& space, const CaseSpace& in_case, int element, Arm& arm) {
  if (arm.run < 0) return arm.choices.front().add(value_of(in_case.network, element));
  for (std::size_t c = 0; c < arm.choices.size(); ++c)
    for (const ElementValue& value : in_case.values[at(arm.run)][c]) {
      if (value.element != element) continue;
      arm.choices[c].add(value);
      const double ampacity = space.runs[at(arm.run)].candidates[c].ampacity;
      // Ends have no duty of their own: the wire's stands.
      if (value.rated > 0)
        arm.most_amperes[c] = std::min(arm.most_amperes[c], ampacity / std::sqrt(value.duty));
    }
}

Arm empty_arm(const DesignSpace& space, int run, std::vector<int> loads, int string) {
  const std::size_t count = run < 0 ? 1 : space.runs[at(run)].candidates.size();
  return {run, std::vector<Curve>(count), std::vector<double>(count, std::numeric_limits<double>::infinity()),
          std::move(loads), string};
}

int device_of(const RadialCase& radial, int element) {
  for (std::size_t d = 0; d < radial.devices.size(); ++d)
    if (radial.devices[d].element == element) return static_cast<int>(d);
  return -1;
}

/// The arm of a device has at least its least resistance.
void take_as_device(int index, int arm, RadialCase& radial) {
  Device& device = radial.devices[at(index)];
  device.arm = arm;
  double least = device.found_ohms;
  for (const double ohms : device.ohms) least = std::min(least, ohms);
  radial.arms[at(arm)].choices.front().cold = least;
}

/// Gathers elements into arms: those of one run, or fixed ones, that carry the same current.
void gather_arms(const DesignSpace& space, const CaseSpace& in_case, const BankWiring& bank,
                 RadialCase& radial) {
  const auto& network = in_case.network;
  const std::vector<int> place = places_in_scope(space);
  std::map<std::tuple<int, int, int, std::vector<int>>, int> arms;
  for (std::size_t e = 0; e < network.elements.size(); ++e) {
    const int string = bank.string_of[e];
    if (bank.fed[e].empty() && string < 0) continue;
    const auto& origin = network.elements[e].origin;
    const int run = origin.section == network::Section::runs ? place[origin.index] : -1;
    const int device = device_of(radial, static_cast<int>(e));
    const auto [entry, fresh] =
        arms.try_emplace({run, string, device, bank.fed[e]}, static_cast<int>(radial.arms.size()));
    if (fresh) radial.arms.push_back(empty_arm(space, run, bank.fed[e], string));
    if (device >= 0) take_as_device(device, entry->second, radial);
    if (fresh && string >= 0) radial.strings[at(string)].arms.push_back(entry->second);
    if (device < 0) add_element(space, in_case, static_cast<int>(e), radial.arms[at(entry->second)]);
  }
  // Without current they are no matter of this case.
  std::erase_if(radial.devices, [](const Device& device) { return device.arm < 0; });
  for (std::size_t d = 0; d < radial.devices.size(); ++d)
    radial.arms[at(radial.devices[d].arm)].device = static_cast<int>(d);
}

std::vector<int> running_loads(const network::Network& network) {
  std::vector<int> loads;
  for (std::size_t e = 0; e < network.elements.size(); ++e)
    if (network.elements[e].role == Role::load && network.elements[e].active)
      loads.push_back(static_cast<int>(e));
  return loads;
}

/// The links of an only string carry what all loads take.
void feed_all_by_links(std::size_t loads, BankWiring& bank) {
  if (bank.strings.size() != 1) return;
  for (std::size_t e = 0; e < bank.string_of.size(); ++e) {
    if (bank.string_of[e] < 0) continue;
    bank.string_of[e] = -1;
    for (std::size_t l = 0; l < loads; ++l) bank.fed[e].push_back(static_cast<int>(l));
  }
}

BankString string_of(const network::Network& network, const BankWiring::String& string) {
  BankString found;
  for (const int battery : string.batteries) {
    found.emf += network.elements[at(battery)].voltage.si();
    found.ohms += network.elements[at(battery)].resistance.si();
  }
  return found;
}

}  // namespace

double RadialCase::highest_emf() const {
  double most = 0;
  for (const BankString& string : strings) most = std::max(most, string.emf);
  return most;
}

std::optional<RadialCase> radial_case(const DesignSpace& space, const CaseSpace& in_case,
                                      const Guards& guards) {
  const auto& network = in_case.network;
  if (!std::all_of(network.elements.begin(), network.elements.end(), is_plain)) return std::nullopt;
  const WiringForest forest(network);
  if (forest.has_ring()) return std::nullopt;
  const std::vector<int> loads = running_loads(network);
  auto bank = bank_wiring(network, forest, loads);
  if (!bank) return std::nullopt;
  feed_all_by_links(loads.size(), *bank);

  RadialCase radial;
  for (const auto& string : bank->strings) radial.strings.push_back(string_of(network, string));
  // Strings without resistance share a current in no way that the bounds know.
  for (const BankString& string : radial.strings)
    if (radial.strings.size() > 1 && string.ohms <= 0) return std::nullopt;
  radial.devices = devices_of(space, network, guards);
  gather_arms(space, in_case, *bank, radial);
  for (const int load : loads) radial.loads.push_back(load_of(network, load));
  for (std::size_t a = 0; a < radial.arms.size(); ++a)
    for (const int l : radial.arms[a].loads) radial.loads[at(l)].path.push_back(static_cast<int>(a));
  narrow_by_duty(network, radial);
  return radial;
}

}  // namespace ohmtrail::plan
