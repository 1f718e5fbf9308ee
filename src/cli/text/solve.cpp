#include "cli/text/solve.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cli/text/collapse.hpp"
#include "cli/text/feeding.hpp"
#include "cli/text/notes.hpp"
#include "cli/text/supplies.hpp"
#include "cli/text/words.hpp"
#include "ohmtrail/diagnose/temperature_in_words.hpp"
#include "ohmtrail/netlist/names.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using solve::CaseSolution;
using Align = Column::Align;
namespace u = units;

constexpr std::size_t worst_shown = 6;
/// What loses less than this share of what the worst one loses is not worth a line.
constexpr double least_share = 0.02;
constexpr u::Format aligned{.significant = 3, .keep_zeros = true};

template <class Q>
std::string shown(double si) {
  return std::isfinite(si) ? u::print(Q{si}, aligned) : "–";
}

/// Rounding noise of the solver is not a voltage.
std::string volts(double si) {
  return std::abs(si) < 1e-9 ? "0 V" : shown<u::Voltage>(si);
}

/// What stands at a point: hundredths of a volt, as a meter shows them.
std::string level(double si) {
  if (!std::isfinite(si)) return "–";
  return u::print(u::Voltage{si}, {.significant = std::abs(si) >= 10 ? 4 : 3, .keep_zeros = true});
}

std::string residual(double value) {
  return value == 0 ? "0" : fmt::format("{:.0e}", value);
}

Cell verdict(const solve::LoadResult& load) {
  if (!load.running) return Cell("off", Ink::faint);
  if (std::isnan(load.limit_fraction)) return Cell("no limit", Ink::faint);
  return load.within ? Cell("ok", Ink::good) : Cell("OVER", Ink::bad);
}

bool dropped_out(const CaseSolution& solved, const solve::LoadResult& load) {
  const network::Element& element = solved.network.elements[static_cast<std::size_t>(load.element)];
  return element.active && !load.running;
}

Table load_table(const CaseSolution& solved) {
  Table table({{"load", Align::left, Narrow::cuts},
               {"gets", Align::right},
               {"takes", Align::right},
               {"power", Align::right},
               {"lost", Align::right},
               {"of rated", Align::right},
               {"limit", Align::right},
               {"", Align::left}});
  for (const solve::LoadResult& load : solved.loads) {
    const std::string& id = solved.network.elements[static_cast<std::size_t>(load.element)].id;
    if (!load.running) {
      table.row({id, level(load.volts), "–", "–", "–", "–", "–",
                 dropped_out(solved, load) ? Cell("CUT OUT", Ink::bad) : Cell("off", Ink::faint)});
      continue;
    }
    table.row({id, level(load.volts), shown<u::Current>(load.current), shown<u::Power>(load.power),
               volts(load.drop), shown<u::Fraction>(load.drop_fraction),
               shown<u::Fraction>(load.limit_fraction), verdict(load)});
  }
  return table;
}

/// Indices of the elements between source and load that lose most volts, largest first.
std::vector<std::size_t> worst_elements(const CaseSolution& solved) {
  std::vector<std::size_t> order;
  for (std::size_t k = 0; k < solved.network.elements.size(); ++k) {
    const network::Role role = solved.network.elements[k].role;
    const bool passive =
        role != network::Role::load && role != network::Role::battery && role != network::Role::charger;
    if (passive && std::abs(solved.solution.drop[k] * solved.solution.current[k]) > 0) order.push_back(k);
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::abs(solved.solution.drop[a]) > std::abs(solved.solution.drop[b]);
  });
  const auto worth_a_line = [&](std::size_t k) {
    return std::abs(solved.solution.drop[k]) >= least_share * std::abs(solved.solution.drop[order.front()]);
  };
  while (order.size() > worst_shown || (!order.empty() && !worth_a_line(order.back()))) order.pop_back();
  return order;
}

Table element_table(const CaseSolution& solved) {
  Table table({{"loses most", Align::left, Narrow::cuts},
               {"what", Align::left},
               {"carries", Align::right},
               {"loses", Align::right},
               {"resistance", Align::right},
               {"heat", Align::right},
               {"temp.", Align::right}});
  const solve::Solution& s = solved.solution;
  for (const std::size_t k : worst_elements(solved)) {
    const network::Element& element = solved.network.elements[k];
    table.row({element.id, role_in_words(element.role), shown<u::Current>(std::abs(s.current[k])),
               volts(std::abs(s.drop[k])), shown<u::Resistance>(s.resistance[k]), shown<u::Power>(s.heat[k]),
               std::isfinite(s.temperature[k]) ? diagnose::temperature_in_short(s.temperature[k]) : "–"});
  }
  return table;
}

void show_supplies(Sheet& sheet, const CaseSolution& solved) {
  for (const solve::Supply& supply : solved.supplies) {
    if (supply.elements.empty()) continue;
    const network::Element& first =
        solved.network.elements[static_cast<std::size_t>(supply.elements.front())];
    const std::string name =
        first.partner >= 0
            ? fmt::format("converter \"{}\"", netlist::split_element_name(first.id).owner)
            : fmt::format("{} \"{}\"", role_in_words(first.role), supply_in_words(solved, first.id));
    const std::string power = shown<u::Power>(std::abs(supply.power));
    sheet.item(
        "  ", fmt::format("{}: {} at its posts, {} without load, {} {}", name, level(supply.terminal),
                          level(supply.open_circuit), supply.power < 0 ? "is charged with" : "gives", power));
  }
}

void show_case(Sheet& sheet, const CaseSolution& solved) {
  sheet.line();
  sheet.line(fmt::format("Case \"{}\"", solved.network.case_name), Ink::strong);
  show_collapse(sheet, solved);
  show_supplies(sheet, solved);
  if (!solved.loads.empty()) {
    sheet.line();
    sheet.table(load_table(solved));
  }
  show_feeding(sheet, solved);
  if (const Table table = element_table(solved); !table.empty()) {
    sheet.line();
    sheet.table(table);
  }
  sheet.line();
  sheet.item(
      "  ",
      fmt::format("Proof: the currents at every point add up to within {} of the largest, power in "
                  "equals power out to within {} (limit 1e-09).",
                  residual(solved.solution.current_residual), residual(solved.solution.power_residual)),
      Ink::faint);
}

}  // namespace

void show_solved(Sheet& sheet, const netlist::System& system, const std::vector<CaseSolution>& solved) {
  sheet.line(system.info.name, Ink::strong);
  for (const CaseSolution& one : solved) show_case(sheet, one);
  show_unused_readings(sheet, system);
  show_assumptions(sheet, solved);
}

}  // namespace ohmtrail::cli
