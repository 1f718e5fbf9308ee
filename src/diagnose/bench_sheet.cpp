#include "ohmtrail/diagnose/bench_sheet.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "index.hpp"
#include "next/reach.hpp"
#include "ohmtrail/diagnose/staircase.hpp"
#include "ohmtrail/trade/battery_charge.hpp"
#include "ohmtrail/trade/battery_facts.hpp"

namespace ohmtrail::diagnose {
namespace {

using network::Role;

constexpr units::Temperature bench{25};

/// "M/wire" of "M/from", "M/return-wire" of "M/return-to": one lug to the other is one reading.
std::string conductor_of(const Step& step) {
  const std::size_t slash = step.element.rfind('/');
  if (slash == std::string::npos) return step.element;
  const bool back = step.element.compare(slash + 1, 6, "return") == 0;
  return step.element.substr(0, slash) + (back ? "/return-wire" : "/wire");
}

bool is_read_across(const Step& step) {
  return step.role != Role::battery && step.role != Role::charger && step.role != Role::load;
}

class Writer {
 public:
  explicit Writer(const netlist::System& system) : system_(system) {}

  void at_rest() {
    BenchRound round;
    for (const netlist::Battery& battery : system_.batteries) {
      const double cells = trade::cells_in(battery.chemistry, battery.nominal);
      const double full = cells * trade::rested_cell(battery.chemistry, units::Fraction{1}, bench).si();
      add(round, {BenchKind::rest, battery.id, battery.plus, battery.minus, full, false});
    }
    sheet_.rounds.push_back(std::move(round));
  }

  void in_case(const solve::CaseSolution& sound) {
    BenchRound round;
    round.in_case = sound.network.case_name;
    clamp(sound, round);
    across(sound, Role::battery, BenchKind::posts, round);
    across(sound, Role::load, BenchKind::load, round);
    for (const BenchReading& reading : round.readings)
      if (reading.kind == BenchKind::load && is_switched(reading.of)) round.loads.push_back(reading.of);
    if (round.loads.empty()) return;
    sheet_.rounds.push_back(std::move(round));
    drops(sound, sheet_.rounds.size() - 1);
  }

  BenchSheet finish() {
    for (const std::string& id : order_) {
      const Found& found = drops_.at(id);
      add(sheet_.rounds[found.round], found.reading);
    }
    // A round in which no part drops most would only repeat others.
    std::erase_if(sheet_.rounds,
                  [](const BenchRound& round) { return !round.in_case.empty() && !has_drop(round); });
    return std::move(sheet_);
  }

 private:
  /// A converter's input is no load of the file: it is switched on by what hangs on its output.
  [[nodiscard]] bool is_switched(const std::string& load) const {
    return std::any_of(system_.loads.begin(), system_.loads.end(),
                       [&](const netlist::Load& one) { return one.id == load; });
  }

  static bool has_drop(const BenchRound& round) {
    return std::any_of(round.readings.begin(), round.readings.end(),
                       [](const BenchReading& reading) { return reading.kind == BenchKind::drop; });
  }

  struct Found {
    std::size_t round = 0;
    BenchReading reading;
  };

  void add(BenchRound& round, BenchReading reading) {
    const auto red = next::reach_of(system_, reading.red), black = next::reach_of(system_, reading.black);
    if (red == netlist::Reach::no || black == netlist::Reach::no) {
      if (unreachable_.insert(reading.of).second) sheet_.out_of_reach.push_back(reading.of);
      return;
    }
    reading.tools = red == netlist::Reach::tools || black == netlist::Reach::tools;
    round.readings.push_back(std::move(reading));
  }

  static void clamp(const solve::CaseSolution& sound, BenchRound& round) {
    int most = -1;
    for (int k = 0; k < static_cast<int>(sound.network.elements.size()); ++k)
      if (at(sound.network.elements, k).role == Role::wire &&
          (most < 0 || std::fabs(at(sound.solution.current, k)) >
                           std::fabs(at(sound.solution.current, most)) * (1 + 1e-9)))
        most = k;
    if (most >= 0)
      round.readings.push_back({BenchKind::amps, at(sound.network.elements, most).id, "", "",
                                std::fabs(at(sound.solution.current, most)), false});
  }

  void across(const solve::CaseSolution& sound, Role role, BenchKind kind, BenchRound& round) {
    for (int k = 0; k < static_cast<int>(sound.network.elements.size()); ++k) {
      const network::Element& e = at(sound.network.elements, k);
      const bool counts = e.role == role && e.active &&
                          (role == Role::battery || sound.solution.running[static_cast<std::size_t>(k)]);
      if (counts)
        add(round, {kind, e.id, at(sound.network.points, e.from), at(sound.network.points, e.to),
                    at(sound.solution.drop, k), false});
    }
  }

  void drops(const solve::CaseSolution& sound, std::size_t round) {
    for (const solve::LoadResult& load : sound.loads)
      if (const auto stairs = load.running ? staircase(sound, nullptr, load.element) : std::nullopt)
        for (const BenchReading& reading : along(*stairs)) keep(reading, round);
  }

  /// One reading a conductor or device of the way, lug to lug.
  static std::vector<BenchReading> along(const Staircase& stairs) {
    std::vector<BenchReading> list;
    for (const Step& step : stairs.steps) {
      if (!is_read_across(step)) continue;
      const std::string id = conductor_of(step);
      if (!list.empty() && list.back().of == id) {
        list.back().black = step.to;
        list.back().expected += step.lost;
      } else {
        list.push_back({BenchKind::drop, id, step.from, step.to, step.lost, false});
      }
    }
    return list;
  }

  void keep(const BenchReading& reading, std::size_t round) {
    const auto [known, fresh] = drops_.try_emplace(reading.of, Found{round, reading});
    if (fresh)
      order_.push_back(reading.of);
    else if (reading.expected > known->second.reading.expected * (1 + 1e-9))
      known->second = {round, reading};
  }

  const netlist::System& system_;
  BenchSheet sheet_;
  std::map<std::string, Found> drops_;
  std::vector<std::string> order_;  ///< as the current first meets them
  std::set<std::string> unreachable_;
};

}  // namespace

BenchSheet bench_sheet(const netlist::System& system, const std::vector<solve::CaseSolution>& solved) {
  Writer writer(system);
  writer.at_rest();
  for (const solve::CaseSolution& one : solved)
    if (const auto sound = solve::solve_case(as_rated(system, one.network))) writer.in_case(*sound);
  return writer.finish();
}

}  // namespace ohmtrail::diagnose
