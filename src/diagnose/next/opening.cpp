#include "diagnose/next/opening.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace ohmtrail::diagnose::next {
namespace {

using network::Role;

double delivered(const network::Network& network, const solve::Solution& solution) {
  double out = 0;
  for (std::size_t k = 0; k < network.elements.size(); ++k) {
    if (network.elements[k].role == Role::battery) out += std::max(0.0, -solution.current[k]);
  }
  return out;
}

// The element of one role that carries most current.
std::optional<std::size_t> strongest(const network::Network& network, const solve::Solution& solution,
                                     Role role) {
  std::optional<std::size_t> best;
  for (std::size_t k = 0; k < network.elements.size(); ++k) {
    if (network.elements[k].role != role || !(std::abs(solution.current[k]) > 0)) continue;
    if (!best || std::abs(solution.current[k]) > std::abs(solution.current[*best]) * (1 + 1e-9)) best = k;
  }
  return best;
}

bool spans(const netlist::VoltsReading& volts, const std::string& plus, const std::string& minus) {
  return (volts.red == plus && volts.black == minus) || (volts.red == minus && volts.black == plus);
}

// Whether something was read across one of these, in a case with current.
template <class Items>
bool read_across(const netlist::System& system, const std::string& in_case, const Items& items) {
  return std::any_of(system.readings.begin(), system.readings.end(), [&](const netlist::Reading& reading) {
    const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what);
    return volts != nullptr && reading.in_case == in_case &&
           std::any_of(items.begin(), items.end(),
                       [&](const auto& item) { return spans(*volts, item.plus, item.minus); });
  });
}

bool clamped(const netlist::System& system, const std::string& in_case) {
  return std::any_of(system.readings.begin(), system.readings.end(), [&](const netlist::Reading& reading) {
    return std::holds_alternative<netlist::AmpsReading>(reading.what) && reading.in_case == in_case;
  });
}

class Opening {
 public:
  Opening(const netlist::System& system, const Outlook& outlook, const std::vector<CaseView>& views,
          const std::string& in_case)
      : system_(system), views_(views), view_(heaviest(outlook, views)) {
    for (std::size_t v = 0; v < views.size(); ++v) {
      if (outlook.survey.networks[views[v].in_case].case_name == in_case) view_ = v;
    }
    network_ = &outlook.survey.networks[views[view_].in_case];
  }

  std::vector<Candidate> missing() {
    const std::string& in_case = network_->case_name;
    if (!clamped(system_, in_case)) clamp();
    if (!read_across(system_, in_case, system_.batteries)) across(Role::battery);
    if (!read_across(system_, in_case, system_.loads)) across(Role::load);
    return std::move(out_);
  }

 private:
  [[nodiscard]] const CaseView& view() const { return views_[view_]; }

  void clamp() {
    std::optional<std::size_t> best;
    for (std::size_t b = 0; b < view().branches.size(); ++b) {
      if (!best || amperes(b) > amperes(*best) * (1 + 1e-9)) best = b;
    }
    if (best) out_.push_back(Candidate::amps(view_, *best));
  }

  [[nodiscard]] double amperes(std::size_t b) const {
    return std::abs(view().typical.current[static_cast<std::size_t>(view().branches[b])]);
  }

  void across(Role role) {
    const auto element = strongest(*network_, view().typical, role);
    if (!element) return;
    const auto place = [&](int point) {
      return std::find(view().points.begin(), view().points.end(), point) - view().points.begin();
    };
    const auto red = static_cast<std::size_t>(place(network_->elements[*element].from));
    const auto black = static_cast<std::size_t>(place(network_->elements[*element].to));
    if (std::max(red, black) >= view().points.size()) return;
    out_.push_back(Candidate::volts(view_, red, black));
  }

  const netlist::System& system_;
  const std::vector<CaseView>& views_;
  std::size_t view_;
  const network::Network* network_ = nullptr;
  std::vector<Candidate> out_;
};

}  // namespace

std::size_t heaviest(const Outlook& outlook, const std::vector<CaseView>& views) {
  std::size_t best = 0;
  double most = -1;
  for (std::size_t v = 0; v < views.size(); ++v) {
    const double amperes = delivered(outlook.survey.networks[views[v].in_case], views[v].typical);
    if (amperes > most * (1 + 1e-9) || most < 0) {
      most = amperes;
      best = v;
    }
  }
  return best;
}

std::vector<Candidate> missing_opening(const netlist::System& system, const Outlook& outlook,
                                       const std::vector<CaseView>& views, const std::string& in_case) {
  return Opening(system, outlook, views, in_case).missing();
}

}  // namespace ohmtrail::diagnose::next
