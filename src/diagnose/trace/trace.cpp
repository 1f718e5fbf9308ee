#include "ohmtrail/diagnose/trace.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "diagnose/next/reach.hpp"
#include "diagnose/next/repairs.hpp"
#include "diagnose/trace/typed.hpp"
#include "ohmtrail/units/parse.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::diagnose {
namespace {

constexpr std::size_t opening_readings = 3;
constexpr std::size_t between_checks = 5;
constexpr std::size_t checks = 2;
constexpr std::size_t options_kept = 12;
constexpr double most_amperes = 20000;

std::string key_of(const NextOption& option) {
  return option.in_case + '\n' + option.in + '\n' + option.red + '\n' + option.black;
}

std::string loads_of(const netlist::System& system, const netlist::Case& one) {
  std::string out;
  for (const std::string& load : one.on) out += (out.empty() ? "" : ", ") + load;
  if (one.all_on || (!system.loads.empty() && one.on.size() == system.loads.size())) return "everything on";
  return out.empty() ? "nothing on" : out;
}

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

std::vector<std::string> Trace::cautions() {
  return {"Batteries give off gas that explodes and hold acid: air it, no sparks, eyes covered.",
          "A short circuit passes thousands of amperes: rings and watch straps off, tools insulated, meter "
          "fused.",
          "Before undoing anything: chargers, solar and shore power off, then prove it dead.",
          "Before a thruster, windlass or drive runs: swimmers clear, anchor secured, wheels chocked.",
          "Stop and call a licensed electrician where local code asks for one."};
}

Trace::Trace(netlist::System system) : system_(std::move(system)) {
  for (const netlist::Reading& reading : system_.readings) {
    if (!reading.in_case.empty()) on_ = reading.in_case;
  }
  if (on_.empty() && system_.cases.size() == 1) on_ = system_.cases.front().name;
  look();
}

void Trace::update(netlist::System system) {
  system_ = std::move(system);
  look();
}

const NextResult* Trace::standing() const {
  return next_ && system_.readings.size() >= opening_readings ? &*next_ : nullptr;
}

const netlist::Case* Trace::on() const {
  const auto found = std::find_if(system_.cases.begin(), system_.cases.end(),
                                  [&](const netlist::Case& one) { return one.name == on_; });
  return found == system_.cases.end() ? nullptr : &*found;
}

void Trace::end(std::string why) {
  ended_ = true;
  ending_ = std::move(why);
  asked_.reset();
}

void Trace::look() {
  asked_.reset();
  next_.reset();
  if (on_.empty()) return;
  NextOptions options;
  options.present = on_;
  options.most = options_kept;
  auto result = next_reading(system_, options);
  if (!result)
    return end("Nothing can be inferred: " + result.error().text + "; " + result.error().remedy + ".");
  next_ = std::move(*result);
  choose();
}

void Trace::choose() {
  asked_.reset();
  again_ = false;
  if (next_->verdict != Verdict::go_on) return end(next_->verdict_text);
  if (auto check = check_again(); check && !passed_over(*check)) {
    asked_ = std::move(check);
    again_ = true;
    return;
  }
  const auto& options = next_->options;
  const auto first =
      std::find_if(options.begin(), options.end(), [&](const auto& o) { return !passed_over(o); });
  if (first == options.end()) {
    return end("Every reading that would help was skipped. Start again when you can reach one of them.");
  }
  asked_ = *first;
}

bool Trace::passed_over(const NextOption& option) const {
  return skipped_.contains(key_of(option));
}

// After the opening, five readings and then current and battery voltage again: told by how many readings the
// file holds, so that an interrupted search goes on at the same place.
std::optional<NextOption> Trace::check_again() const {
  if (system_.readings.size() <= opening_readings) return std::nullopt;
  const std::size_t place = (system_.readings.size() - opening_readings) % (between_checks + checks);
  if (place < between_checks) return std::nullopt;
  NextOption out;
  out.purpose = Purpose::opening;
  out.in_case = on_;
  out.why = "The battery sinks and the load changes while you work: this keeps the later readings honest.";
  for (const netlist::Reading& reading : system_.readings) {
    if (reading.in_case != on_) continue;
    const auto* amps = std::get_if<netlist::AmpsReading>(&reading.what);
    const auto* volts = std::get_if<netlist::VoltsReading>(&reading.what);
    if (place == between_checks && amps != nullptr) {
      out.in = amps->in;
      out.where = "clamp round \"" + amps->in + '"';
      return out;
    }
    const bool posts = volts != nullptr &&
                       std::any_of(system_.batteries.begin(), system_.batteries.end(), [&](const auto& b) {
                         return volts->red == b.plus && volts->black == b.minus;
                       });
    if (place > between_checks && posts) {
      out.red = volts->red;
      out.black = volts->black;
      out.where = "red on " + next::point_in_words(system_, out.red) + ", black on " +
                  next::point_in_words(system_, out.black);
      return out;
    }
  }
  return std::nullopt;
}

std::vector<std::string> Trace::remarks() const {
  std::vector<std::string> out;
  if (ended_ || !asked_) return out;
  if (asked_->in_case != on_) {
    const auto found = std::find_if(system_.cases.begin(), system_.cases.end(),
                                    [&](const netlist::Case& one) { return one.name == asked_->in_case; });
    out.push_back("Switch over to \"" + asked_->in_case +
                  "\": " + (found == system_.cases.end() ? "" : loads_of(system_, *found)) + '.');
  }
  for (const netlist::Case& one : system_.cases) {
    if (one.name != asked_->in_case) continue;
    for (const netlist::Load& load : system_.loads) {
      const bool runs = one.all_on || std::find(one.on.begin(), one.on.end(), load.id) != one.on.end();
      if (!runs || !load.on_for) continue;
      out.push_back("\"" + load.id + "\" runs " + units::print(*load.on_for) +
                    " at most: probes first, then on, read, off again" +
                    (load.rest_for ? "; let it rest " + units::print(*load.rest_for) : "") + '.');
    }
  }
  if (again_) out.emplace_back("Once more, to be sure that nothing has drifted:");
  return out;
}

std::string Trace::question() const {
  if (on_.empty()) {
    std::string out = "What is switched on?";
    for (std::size_t k = 0; k < system_.cases.size(); ++k) {
      out += ' ' + std::to_string(k + 1) + " = " + system_.cases[k].name + " (" +
             loads_of(system_, system_.cases[k]) + ")";
    }
    return out;
  }
  if (!asked_) return "";
  std::string where = asked_->where;
  where[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(where[0])));
  return std::to_string(system_.readings.size() + 1) + ". " + where +
         (asked_->in.empty() ? ": volts?" : ": amperes?");
}

Answered Trace::answer(std::string_view line) {
  const std::string_view text = trimmed(line);
  if (text.empty()) return {{help_in_words()}, std::nullopt};
  if (text == "done" || text == "quit" || text == "exit") {
    end("Stopped. What was read is saved; the same command goes on from here.");
    return {};
  }
  if (text == "help" || text == "?") return {{help_in_words()}, std::nullopt};
  if (on_.empty()) return choose_case(text);
  if (text == "why") return why();
  if (text == "skip") return skip();
  if (text == "back") {
    if (system_.readings.empty()) return {{"There is no reading to take back."}, std::nullopt};
    return {{"Taken back: the last reading."}, TakeBack{}};
  }
  if (text.starts_with("seen")) return take_seen(text.substr(4));
  return take_reading(text);
}

Answered Trace::choose_case(std::string_view word) {
  for (std::size_t k = 0; k < system_.cases.size(); ++k) {
    if (word == system_.cases[k].name || word == std::to_string(k + 1)) {
      on_ = system_.cases[k].name;
      look();
      return {};
    }
  }
  return {{"\"" + std::string(word) + "\" is none of these; type its number or its name."}, std::nullopt};
}

Answered Trace::take_reading(std::string_view text) {
  const bool volts = asked_->in.empty();
  const auto value = units::parse_reading_si(text, volts ? units::Kind::voltage : units::Kind::current);
  if (!value) return {{"That is no reading: " + value.error() + ". " + help_in_words()}, std::nullopt};
  const double most = volts ? 3 * system_.info.nominal.si() + 10 : most_amperes;
  if (std::abs(*value) > most) {
    return {{"That cannot be in this system: more than " +
             (volts ? units::print(units::Voltage{most}) : units::print(units::Current{most})) +
             ". Millivolts are typed as \"142 mV\" or \"142m\"."},
            std::nullopt};
  }
  return {{}, reading_of(*asked_, *value, system_)};
}

// On what is being read, else on the leading suspect, unless it is said where.
Answered Trace::take_seen(std::string_view words) {
  std::string element;
  if (const std::size_t at = words.find(" at "); at != std::string_view::npos) {
    element = std::string(trimmed(words.substr(at + 4)));
    words = words.substr(0, at);
  }
  const auto seen = observations(words);
  if (!seen) return {{seen.error()}, std::nullopt};
  if (element.empty() && next_ && !next_->repairs.empty()) {
    const auto& bad = asked_ && asked_->bad.size() == 1 ? asked_->bad.front() : next_->repairs.front().id;
    const auto repair = std::find_if(next_->repairs.begin(), next_->repairs.end(),
                                     [&](const auto& r) { return r.id == bad; });
    element = likeliest(next_->inference, repair->ids);
  }
  return {{"Noted on \"" + element + "\". For another place: seen WORD at ELEMENT."}, SeenOn{element, *seen}};
}

Answered Trace::why() const {
  if (!asked_) return {{"Nothing is asked."}, std::nullopt};
  Answered out{{asked_->why}, std::nullopt};
  if (asked_->purpose != Purpose::opening) {
    out.say.push_back("It is worth " + units::print_number(asked_->gain_bits, {.significant = 2}) +
                      " bits; one bit halves the suspects.");
  }
  return out;
}

Answered Trace::skip() {
  skipped_.insert(key_of(*asked_));
  choose();
  return {{"Skipped."}, std::nullopt};
}

}  // namespace ohmtrail::diagnose
