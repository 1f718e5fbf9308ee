#include <algorithm>
#include <array>
#include <cctype>
#include <sstream>
#include <utility>

#include "diagnose/trace/typed.hpp"
#include "netlist/words.hpp"
#include "ohmtrail/diagnose/trace.hpp"
#include "ohmtrail/trade/gauge.hpp"
#include "ohmtrail/units/parse.hpp"

namespace ohmtrail::diagnose {
namespace {

using Mistake = std::optional<std::string>;

template <class Q>
bool read(const std::string& text, Q& into) {
  const auto parsed = units::parse<Q>(text);
  if (parsed && parsed->si() > 0) into = *parsed;
  return parsed && parsed->si() > 0;
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

std::vector<std::string> parts(std::string_view line) {
  std::vector<std::string> out;
  std::stringstream all{std::string(line)};
  for (std::string part; std::getline(all, part, ',');) out.emplace_back(trimmed(part));
  return out;
}

// "flooded 200 Ah" as "flooded, 200 Ah": a number after a word or a unit begins what comes next.
std::string with_commas(std::string_view line) {
  std::string out;
  bool after_word = false;
  std::stringstream all{std::string(line)};
  for (std::string word; all >> word;) {
    const bool number = std::isdigit(static_cast<unsigned char>(word.front())) != 0;
    if (number && after_word && !out.ends_with(',')) out += ',';
    out += (out.empty() ? "" : " ") + word;
    after_word = !number || std::isalpha(static_cast<unsigned char>(word.back())) != 0;
  }
  return out;
}

// A bare number is in the unit that everybody means.
std::string with_unit(const std::string& text, const char* unit) {
  const bool bare = !text.empty() && text.find_first_not_of("0123456789.") == std::string::npos;
  return bare ? text + ' ' + unit : text;
}

Mistake take_battery(std::string_view line, netlist::Battery& battery) {
  bool sized = false;
  for (const std::string& part : parts(with_commas(line))) {
    const auto known = netlist::words<trade::Chemistry>();
    const auto found =
        std::find_if(known.begin(), known.end(), [&](const auto& one) { return one.first == lower(part); });
    units::Charge capacity;
    units::Current cca;
    if (found != known.end()) {
      battery.chemistry = found->second;
    } else if (read(part, capacity)) {
      battery.capacity = capacity;
      sized = true;
    } else if (read(lower(part).ends_with("cca")
                        ? std::string(trimmed(part.substr(0, part.size() - 3))) + " A"
                        : part,
                    cca)) {
      battery.cca = cca;
      sized = true;
    } else {
      return "\"" + part +
             "\": a kind (flooded, agm, gel, lfp), a capacity (100 Ah) or a cranking rating (700 CCA).";
    }
  }
  return sized ? Mistake() : Mistake("How large? For example: agm, 100 Ah.");
}

Mistake take_between(std::string_view line, bool& has_switch, std::optional<units::Current>& rating,
                     std::optional<units::Current>& fuse) {
  has_switch = false;
  rating.reset();
  fuse.reset();
  for (const std::string& part : parts(line)) {
    units::Current amperes;
    const std::string word = lower(part);
    const bool switched = word.starts_with("switch"), fused = word.starts_with("fuse");
    const std::string rest(trimmed(std::string_view(part).substr(switched ? 6 : fused ? 4 : 0)));
    if (word == "none" || word == "nothing") continue;
    if (switched && rest.empty()) {
      has_switch = true;
    } else if ((switched || fused) && read(with_unit(rest, "A"), amperes)) {
      (switched ? rating : fuse) = amperes;
      has_switch = has_switch || switched;
    } else {
      return "For example: switch, fuse 250 A; or: none. A fuse needs its rating.";
    }
  }
  return {};
}

Mistake take_load(const std::string& line, netlist::Load& load) {
  units::Power watts;
  units::Current amperes;
  if (read(line, watts)) {
    load.takes = watts;
  } else if (read(with_unit(line, "A"), amperes)) {
    load.takes = amperes;
  } else {
    return "For example: 80 A or 1000 W.";
  }
  return {};
}

}  // namespace

std::string StartForm::question() const {
  constexpr std::array questions{"System voltage (12 V)?",
                                 "Battery (agm, 100 Ah)?",
                                 "Cable gauge (2 AWG or 35 mm2)?",
                                 "Cable length, one way (12 ft)?",
                                 "What is between (switch, fuse 250 A; or none)?",
                                 "Load that sags (80 A or 1000 W)?"};
  return std::to_string(step_ + 1) + "/6 " + questions[static_cast<std::size_t>(std::min(step_, 5))];
}

std::optional<std::string> StartForm::answer(std::string_view line) {
  const std::string text(trimmed(line));
  if (lower(text) == "back" && step_ > 0) {
    --step_;
    return {};
  }
  Mistake mistake;
  if (step_ == 0) {
    if (!read(with_unit(text, "V"), system_.info.nominal)) mistake = "For example: 12 V, 24 V, 48 V.";
  } else if (step_ == 1) {
    netlist::Battery battery;
    mistake = take_battery(text, battery);
    if (!mistake) battery_ = battery;
  } else if (step_ == 2) {
    const auto gauge = trade::parse_gauge(text);
    if (gauge)
      run_.gauge = *gauge;
    else
      mistake = gauge.error();
  } else if (step_ == 3) {
    if (!read(text, run_.length)) mistake = "A length with its unit, for example: 12 ft or 4 m.";
  } else if (step_ == 4) {
    mistake = take_between(text, has_switch_, switch_rating_, fuse_);
  } else {
    mistake = take_load(text, load_);
  }
  if (!mistake) ++step_;
  return mistake;
}

// Battery, fuse, switch, cable out, load, cable back: each a thing that can be read across.
netlist::System StartForm::system() const {
  netlist::System out = system_;
  out.info.name = "started beside the meter";
  netlist::Battery battery = battery_;
  battery.id = "battery";
  battery.plus = "battery +";
  battery.minus = "battery -";
  battery.nominal = out.info.nominal;
  out.batteries = {battery};
  std::string at = battery.plus;
  if (fuse_) {
    netlist::Fuse fuse;
    fuse.id = "fuse";
    fuse.from = std::exchange(at, "fuse out");
    fuse.to = at;
    fuse.rating = *fuse_;
    out.fuses = {fuse};
  }
  if (has_switch_) {
    netlist::Switch part;
    part.id = "switch";
    part.from = std::exchange(at, "switch out");
    part.to = at;
    part.kind = trade::SwitchKind::battery_switch;
    part.rating = switch_rating_;
    out.switches = {part};
  }
  netlist::Run run = run_;
  run.id = "cable";
  run.from = at;
  run.to = "load +";
  run.length_estimated = true;
  run.return_conductor = netlist::ReturnConductor{};
  run.return_conductor->from = "load -";
  run.return_conductor->to = battery.minus;
  out.runs = {run};
  netlist::Load load = load_;
  load.id = "load";
  load.plus = "load +";
  load.minus = "load -";
  out.loads = {load};
  netlist::Case on, off;
  on.name = "load on";
  on.on = {"load"};
  off.name = "all off";
  out.cases = {on, off};
  return out;
}

}  // namespace ohmtrail::diagnose
