#include "ohmtrail/diagnose/trace.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "diagnose/trace/checks.hpp"
#include "diagnose/trace/doubts.hpp"
#include "diagnose/trace/wording.hpp"

namespace ohmtrail::diagnose {
namespace {

constexpr std::size_t options_kept = 5;

const netlist::Case* case_named(const netlist::System& system, const std::string& name) {
  const auto found = std::find_if(system.cases.begin(), system.cases.end(),
                                  [&](const netlist::Case& one) { return one.name == name; });
  return found == system.cases.end() ? nullptr : &*found;
}

// The first minute of this search on the clock of the file. A file whose last reading names no minute has
// none.
double minutes_passed(const netlist::System& system, units::Time idle) {
  double out = 0;
  for (const netlist::Reading& reading : system.readings) out = std::max(out, reading.minutes.value_or(0));
  const bool timed = !system.readings.empty() && system.readings.back().minutes.has_value();
  return timed ? out + std::floor(idle.si() / 60) : out;
}

std::string capitalised(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  return text;
}

}  // namespace

std::vector<std::string> Trace::cautions() {
  return {"Batteries give off gas that explodes and hold acid: air it, no sparks, eyes covered.",
          "A short circuit passes thousands of amperes: rings and watch straps off, tools insulated, meter "
          "fused.",
          "Before undoing anything: chargers, solar and shore power off, then prove it dead.",
          "Before a thruster, windlass or drive runs: swimmers clear, anchor secured, wheels chocked.",
          "Stop and call a licensed electrician where local code asks for one."};
}

Trace::Trace(netlist::System system, units::Time now, units::Time idle)
    : system_(std::move(system)),
      clock_(system_),
      begun_(now),
      minutes_before_(minutes_passed(system_, idle)) {
  for (const netlist::Reading& reading : system_.readings) {
    if (home_.empty()) home_ = reading.in_case;
    if (!reading.in_case.empty()) on_ = reading.in_case;
  }
  if (home_.empty() && system_.cases.size() == 1) home_ = on_ = system_.cases.front().name;
  look(now);
  if (next_) static_cast<void>(doubts_in_words(system_, next_->inference, doubted_));
}

void Trace::update(netlist::System system, units::Time now) {
  const bool grown = system.readings.size() > system_.readings.size();
  if (grown && !system.readings.back().in_case.empty()) on_ = system.readings.back().in_case;
  system_ = std::move(system);
  skipped_checks_.clear();
  look(now);
  doubts_ = next_ ? doubts_in_words(system_, next_->inference, doubted_) : std::vector<std::string>();
}

const NextResult* Trace::standing() const {
  return next_ && system_.readings.size() >= opening_readings ? &*next_ : nullptr;
}

void Trace::end(std::string why) {
  ended_ = true;
  ending_ = std::move(why);
  asked_.reset();
}

void Trace::look(units::Time now) {
  asked_.reset();
  next_.reset();
  if (home_.empty()) return;
  NextOptions options;
  options.present = home_;
  options.most = options_kept;
  options.passed_over = skipped_;
  auto result = next_reading(system_, options);
  if (!result)
    return end("Nothing can be inferred: " + result.error().text + "; " + result.error().remedy + ".");
  next_ = std::move(*result);
  choose(now);
}

void Trace::choose(units::Time now) {
  asked_.reset();
  again_ = over_ = false;
  asked_since_ = now;
  if (next_->verdict != Verdict::go_on) return end(next_->verdict_text);
  if (auto check = check_due(system_, home_);
      check && std::count(skipped_checks_.begin(), skipped_checks_.end(), place_of(*check)) == 0) {
    asked_ = std::move(check);
    again_ = true;
  } else if (next_->options.empty()) {
    end("Every reading that would help was skipped. Start again when you can reach one of them.");
  } else {
    asked_ = next_->options.front();
  }
}

DutyClock::Ids Trace::short_duty() const {
  const netlist::Case* one = asked_ ? case_named(system_, asked_->in_case) : nullptr;
  return one == nullptr ? DutyClock::Ids() : clock_.short_duty(system_, *one);
}

std::vector<std::string> Trace::remarks(units::Time now) const {
  std::vector<std::string> out;
  if (ended_ || !asked_) return out;
  if (const netlist::Case* one = case_named(system_, asked_->in_case); one != nullptr && one->name != on_) {
    out.push_back("Switch over to \"" + one->name + "\": " + switched_on_in_words(system_, *one) + '.');
  }
  if (again_) out.emplace_back("Once more, to be sure that nothing has drifted:");
  const DutyClock::Ids loads = short_duty();
  if (!loads.empty() && clock_.running().empty() && !over_) {
    std::string needed = before_running(clock_, loads, now);
    if (!needed.empty()) out.push_back(std::move(needed));
  }
  return out;
}

std::string Trace::question(units::Time now) const {
  if (home_.empty()) return which_case(system_);
  if (!asked_) return "";
  const std::string number = std::to_string(system_.readings.size() + 1) + ". ";
  const std::string where = capitalised(asked_->where), unit = unit_asked(*asked_);
  const DutyClock::Ids loads = short_duty();
  if (loads.empty()) return number + where + ": " + unit + '?';
  if (over_) return number + capitalised(unit) + " if you have them; else press Enter.";
  if (!clock_.running().empty()) {
    return number + capitalised(unit) + ", within " + run_in_words(clock_.left(loads, now)) + '?';
  }
  return number + loads_in_words(loads) + " still off: " + asked_->where + "; then press Enter.";
}

std::optional<units::Time> Trace::patience(units::Time now) const {
  if (!clock_.running().empty()) return clock_.left(clock_.running(), now);
  const units::Time rest = ended_ || over_ ? units::Time{} : clock_.rest(short_duty(), now);
  return rest > units::Time{} ? std::optional(rest) : std::nullopt;
}

std::vector<std::string> Trace::lapse(units::Time now) {
  const DutyClock::Ids loads = clock_.running();
  if (loads.empty()) return {loads_in_words(short_duty()) + " has rested."};
  clock_.stop(now);
  over_ = true;
  return {"Time is up: switch " + loads_in_words(loads) + " OFF now. " + after_running(clock_, loads, now)};
}

}  // namespace ohmtrail::diagnose
