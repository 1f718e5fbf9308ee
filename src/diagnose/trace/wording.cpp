#include "diagnose/trace/wording.hpp"

namespace ohmtrail::diagnose {

std::string loads_in_words(const DutyClock::Ids& loads) {
  std::string out;
  for (std::size_t k = 0; k < loads.size(); ++k) {
    out += (k == 0 ? "" : k + 1 == loads.size() ? " and " : ", ") + ('"' + loads[k] + '"');
  }
  return out;
}

std::string switched_on_in_words(const netlist::System& system, const netlist::Case& one) {
  if (one.all_on || (!system.loads.empty() && one.on.size() == system.loads.size())) return "everything on";
  std::string out;
  for (const std::string& load : one.on) out += (out.empty() ? "" : ", ") + load;
  return out.empty() ? "nothing on" : out;
}

std::string which_case(const netlist::System& system) {
  std::string out = "What is switched on?";
  for (std::size_t k = 0; k < system.cases.size(); ++k) {
    const netlist::Case& one = system.cases[k];
    out += ' ' + std::to_string(k + 1) + " = " + one.name + " (" + switched_on_in_words(system, one) + ")";
  }
  return out;
}

ReadingPlace place_of(const NextOption& option) {
  return {option.in_case, option.in, option.red, option.black};
}

std::string unit_asked(const NextOption& asked) {
  return asked.in.empty() ? "volts" : "amperes";
}

std::string before_running(const DutyClock& clock, const DutyClock::Ids& loads, units::Time now) {
  const std::string names = loads_in_words(loads);
  if (const units::Time rest = clock.rest(loads, now); rest > units::Time{}) {
    return names + " must rest " + rest_in_words(rest) + " more. Set the probes meanwhile.";
  }
  if (clock.has_run(loads)) return "";
  return names + " may run " + run_in_words(clock.left(loads, now)) + ", then rests " +
         rest_in_words(clock.whole_rest(loads)) +
         ". Swimmers clear, anchor secured, wheels chocked, hands away.";
}

std::string after_running(const DutyClock& clock, const DutyClock::Ids& loads, units::Time now) {
  if (const units::Time rest = clock.rest(loads, now); rest > units::Time{}) {
    return "It must rest " + rest_in_words(rest) + '.';
  }
  return "It may run " + run_in_words(clock.left(loads, now)) + " more.";
}

}  // namespace ohmtrail::diagnose
