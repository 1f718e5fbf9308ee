#include "ohmtrail/diagnose/duty_clock.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace ohmtrail::diagnose {
namespace {

// From the word to the hand on the switch, but never more than half of what the load may run.
constexpr units::Time reaction{3};
// Less than this is too short to read a meter (common practice).
constexpr units::Time too_short{5};
// A load whose rest is not given: one quarter on, three quarters off (common practice: 25 % duty).
constexpr double usual_rest = 3;

units::Time allowed(units::Time on_for) {
  return std::max(on_for - reaction, 0.5 * on_for);
}

std::string in_words(double seconds) {
  const double minutes = std::floor(seconds / 60), rest = seconds - 60 * minutes;
  const auto whole = [](double x) { return std::to_string(static_cast<long>(x)); };
  if (minutes < 1 || seconds <= 90) return whole(seconds) + " s";
  return whole(minutes) + " min" + (rest > 0 ? ' ' + whole(rest) + " s" : "");
}

double step_of(double seconds) {
  return seconds > 90 ? 10 : seconds > 20 ? 5 : 1;
}

}  // namespace

DutyClock::DutyClock(const netlist::System& system) {
  for (const netlist::Load& load : system.loads) {
    if (!load.on_for) continue;
    loads_[load.id] = {*load.on_for, load.rest_for.value_or(usual_rest * *load.on_for), {}, {}, false};
  }
}

DutyClock::Ids DutyClock::short_duty(const netlist::System& system, const netlist::Case& one) const {
  Ids out;
  for (const netlist::Load& load : system.loads) {
    const bool runs = one.all_on || std::find(one.on.begin(), one.on.end(), load.id) != one.on.end();
    if (runs && loads_.contains(load.id)) out.push_back(load.id);
  }
  return out;
}

units::Time DutyClock::used(const Load& load, units::Time now) const {
  return now >= load.rested ? units::Time{} : load.used;
}

units::Time DutyClock::left(const Ids& loads, units::Time now) const {
  units::Time least{std::numeric_limits<double>::infinity()};
  for (const std::string& id : loads) {
    const Load& load = loads_.at(id);
    const bool runs = std::find(running_.begin(), running_.end(), id) != running_.end();
    const units::Time spent = runs ? load.used + (now - since_) : used(load, now);
    least = std::min(least, allowed(load.on_for) - spent);
  }
  return std::max(least, units::Time{});
}

units::Time DutyClock::rest(const Ids& loads, units::Time now) const {
  units::Time longest;
  for (const std::string& id : loads) {
    const Load& load = loads_.at(id);
    if (load.resting) longest = std::max(longest, load.rested - now);
  }
  return longest;
}

units::Time DutyClock::whole_rest(const Ids& loads) const {
  units::Time out;
  for (const std::string& id : loads) out = std::max(out, loads_.at(id).rest_for);
  return out;
}

units::Time DutyClock::whole_run(const Ids& loads) const {
  units::Time out{std::numeric_limits<double>::infinity()};
  for (const std::string& id : loads) out = std::min(out, loads_.at(id).on_for);
  return out;
}

bool DutyClock::has_run(const Ids& loads) const {
  return std::any_of(loads.begin(), loads.end(),
                     [&](const std::string& id) { return loads_.at(id).used > units::Time{}; });
}

void DutyClock::start(const Ids& loads, units::Time now) {
  stop(now);
  for (const std::string& id : loads) {
    Load& load = loads_.at(id);
    load.used = used(load, now);
    load.resting = false;
  }
  running_ = loads;
  since_ = now;
}

void DutyClock::stop(units::Time now) {
  const Ids stopped = std::move(running_);
  running_.clear();
  for (const std::string& id : stopped) {
    Load& load = loads_.at(id);
    load.used += now - since_;
    load.rested = now + load.rest_for;
    load.resting = allowed(load.on_for) - load.used < std::min(too_short, 0.25 * load.on_for);
  }
}

void DutyClock::spend(const Ids& loads, units::Time from, units::Time to) {
  start(loads, std::max(from, to - left(loads, to)));
  stop(to);
}

std::string run_in_words(units::Time left) {
  const double step = step_of(left.si());
  return in_words(step * std::floor(left.si() / step));
}

std::string rest_in_words(units::Time rest) {
  const double step = step_of(rest.si());
  return in_words(step * std::ceil(rest.si() / step));
}

}  // namespace ohmtrail::diagnose
