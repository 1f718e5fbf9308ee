#include "render/stairs.hpp"

#include <cmath>
#include <utility>

#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

constexpr double no_loss = 1e-9;  // V: a charger that holds its set point loses nothing

/// "M" and whether it is the return, of "M/return-from"; empty for what is no part of a run.
std::pair<std::string, bool> run_of(const diagnose::Step& step) {
  const std::size_t slash = step.element.rfind('/');
  const bool converter = step.role == network::Role::load || step.role == network::Role::charger;
  if (slash == std::string::npos || converter) return {};
  return {step.element.substr(0, slash), step.element.compare(slash + 1, 6, "return") == 0};
}

std::string name_of(const netlist::System& system, const diagnose::Step& step) {
  if (step.role == network::Role::battery) return filled(text::stair_supply, step.element);
  if (step.role == network::Role::charger)
    return filled(text::stair_charger, source_in_words(system, step.element));
  return where(system, step.element);
}

bool worth_a_row(const diagnose::Step& step, double sag) {
  const double lost = std::fabs(step.lost);
  return lost > 0.01 * sag && lost > 1.5 * std::fabs(step.lost_as_rated);
}

class Gathering {
 public:
  Gathering(const netlist::System& system, double sag) : system_(system), sag_(sag) {}

  void add(const diagnose::Step& step) {
    const auto run = run_of(step);
    const bool alone = run.first.empty() || worth_a_row(step, sag_);
    const std::string whole = run.first + (run.second ? "/return-wire" : "/wire");
    const std::string name = alone ? name_of(system_, step) : where(system_, whole);
    // Sound ends before or after a wire that stands alone have its name.
    const bool joins =
        !run.first.empty() && !stairs.empty() && (stairs.back().name == name || (!alone && run == open_));
    open_ = alone ? std::pair<std::string, bool>{} : run;
    if (!joins) stairs.push_back({name, step.element, step.role});
    stairs.back().lost += std::fabs(step.lost);
    stairs.back().rated += std::fabs(step.lost_as_rated);
  }

  std::vector<Stair> stairs;

 private:
  const netlist::System& system_;
  double sag_;
  std::pair<std::string, bool> open_;
};

}  // namespace

std::vector<Stair> stairs_of(const netlist::System& system, const diagnose::Staircase& staircase) {
  double sag = 0;
  for (const diagnose::Step& step : staircase.steps)
    if (step.role != network::Role::load) sag += std::fabs(step.lost);
  Gathering gathering(system, sag);
  for (const diagnose::Step& step : staircase.steps)
    if (step.role != network::Role::charger || std::fabs(step.lost) >= no_loss) gathering.add(step);
  return std::move(gathering.stairs);
}

}  // namespace ohmtrail::render
