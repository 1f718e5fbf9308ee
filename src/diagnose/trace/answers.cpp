#include <algorithm>
#include <cmath>
#include <utility>

#include "diagnose/trace/typed.hpp"
#include "diagnose/trace/wording.hpp"
#include "ohmtrail/diagnose/trace.hpp"
#include "ohmtrail/units/parse.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::diagnose {
namespace {

constexpr double most_amperes = 20000;

netlist::Reading reading_of(const NextOption& option, double value, const netlist::System& system) {
  netlist::Reading out;
  out.in_case = option.in_case;
  if (option.in.empty()) {
    out.what = netlist::VoltsReading{units::Voltage{value}, option.red, option.black};
  } else {
    out.what = netlist::AmpsReading{units::Current{value}, option.in};
  }
  for (const netlist::Meter& meter : system.meters) {
    if (out.meter.empty() && (option.in.empty() ? meter.volts : meter.amps)) out.meter = meter.id;
  }
  for (const netlist::Reading& reading : system.readings) {
    if (reading.what.index() == out.what.index()) out.meter = reading.meter;
  }
  return out;
}

}  // namespace

Answered Trace::answer(std::string_view line, units::Time now) {
  const std::string_view text = trimmed(line);
  if (text == "done" || text == "quit" || text == "exit") {
    Answered out;
    switch_off(now, out);
    end("Stopped. What was read is saved; the same command goes on from here.");
    return out;
  }
  if (text == "help" || text == "?") return {{}, {help_in_words()}, {}};
  if (home_.empty()) return choose_case(text, now);
  if (text.empty() || text == "on" || text == "ready") return ready(now);
  if (text == "why") return why();
  if (text == "skip") return skip(now);
  if (text == "back") return take_back(now);
  if (text.starts_with("seen")) return take_seen(text.substr(4), now);
  return take_reading(text, now);
}

// Enter: for a load of short duty the probes are in place, else nothing was typed.
Answered Trace::ready(units::Time now) {
  const DutyClock::Ids loads = short_duty();
  if (loads.empty() || !clock_.running().empty()) return {{}, {help_in_words()}, {}};
  if (std::exchange(over_, false)) return {};
  if (clock_.rest(loads, now) > units::Time{}) return {{}, {"Not yet."}, {}};
  clock_.start(loads, now);
  return {{}, {"Switch " + loads_in_words(loads) + " on, read, and switch it off."}, {}};
}

void Trace::switch_off(units::Time now, Answered& out) {
  const DutyClock::Ids loads = clock_.running();
  if (loads.empty()) return;
  clock_.stop(now);
  out.at_once.push_back("Switch " + loads_in_words(loads) + " off. " + after_running(clock_, loads, now));
}

Answered Trace::choose_case(std::string_view word, units::Time now) {
  if (word.empty()) return {{}, {help_in_words()}, {}};
  for (std::size_t k = 0; k < system_.cases.size(); ++k) {
    const netlist::Case& one = system_.cases[k];
    if (word != one.name && word != std::to_string(k + 1)) continue;
    home_ = on_ = one.name;
    Answered out;
    if (const DutyClock::Ids loads = clock_.short_duty(system_, one); !loads.empty()) {
      out.say.push_back("Leave " + loads_in_words(loads) + " off until it is asked for: it may run " +
                        run_in_words(clock_.whole_run(loads)) + " at a time.");
    }
    look(now);
    return out;
  }
  return {{}, {"\"" + std::string(word) + "\" is none of these; type its number or its name."}, {}};
}

Answered Trace::take_reading(std::string_view text, units::Time now) {
  const bool volts = asked_->in.empty();
  const auto value = units::parse_reading_si(text, volts ? units::Kind::voltage : units::Kind::current);
  if (!value) return {{}, {"That is no reading: " + value.error() + ". " + help_in_words()}, {}};
  const double most = volts ? 3 * system_.info.nominal.si() + 10 : most_amperes;
  if (std::abs(*value) > most) {
    return {{},
            {"That cannot be in this system: more than " +
             (volts ? units::print(units::Voltage{most}) : units::print(units::Current{most})) +
             ". Millivolts are typed as \"142 mV\" or \"142m\"."},
            {}};
  }
  Answered out;
  const DutyClock::Ids loads = short_duty();
  if (!loads.empty() && clock_.running().empty() && !over_) {
    if (const units::Time rest = clock_.rest(loads, now); rest > units::Time{}) {
      return {{}, {loads_in_words(loads) + " should be resting: no reading with it counts before."}, {}};
    }
    clock_.spend(loads, asked_since_, now);
    out.at_once.push_back("Switch " + loads_in_words(loads) + " off. " + after_running(clock_, loads, now));
  }
  switch_off(now, out);
  netlist::Reading reading = reading_of(*asked_, *value, system_);
  reading.minutes = minutes_before_ + std::floor((now - begun_).si() / 60);
  out.change = std::move(reading);
  return out;
}

Answered Trace::take_back(units::Time now) {
  if (system_.readings.empty()) return {{}, {"There is no reading to take back."}, {}};
  Answered out{{}, {"Taken back: the last reading."}, TakeBack{}};
  switch_off(now, out);
  return out;
}

// On what is being read, else on the leading suspect, unless it is said where.
Answered Trace::take_seen(std::string_view words, units::Time now) {
  std::string element;
  if (const std::size_t at = words.find(" at "); at != std::string_view::npos) {
    element = std::string(trimmed(words.substr(at + 4)));
    words = words.substr(0, at);
  }
  const auto seen = observations(words);
  if (!seen) return {{}, {seen.error()}, {}};
  if (element.empty() && next_ && !next_->repairs.empty()) {
    const auto& bad = asked_ && asked_->bad.size() == 1 ? asked_->bad.front() : next_->repairs.front().id;
    const auto repair = std::find_if(next_->repairs.begin(), next_->repairs.end(),
                                     [&](const auto& r) { return r.id == bad; });
    element = likeliest(next_->inference, repair->ids);
  }
  Answered out{
      {}, {"Noted on \"" + element + "\". For another place: seen WORD at ELEMENT."}, SeenOn{element, *seen}};
  switch_off(now, out);
  return out;
}

Answered Trace::why() const {
  if (!asked_) return {{}, {"Nothing is asked."}, {}};
  Answered out{{}, {asked_->why}, {}};
  if (asked_->purpose != Purpose::opening) {
    out.say.push_back("It is worth " + units::print_number(asked_->gain_bits, {.significant = 2}) +
                      " bits; one bit halves the suspects.");
  }
  return out;
}

Answered Trace::skip(units::Time now) {
  Answered out{{}, {"Skipped."}, {}};
  switch_off(now, out);
  (again_ ? skipped_checks_ : skipped_).push_back(place_of(*asked_));
  look(now);
  return out;
}

}  // namespace ohmtrail::diagnose
