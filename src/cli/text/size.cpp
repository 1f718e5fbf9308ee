#include "cli/text/size.hpp"
#include "cli/text/check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "cli/text/check.hpp"
#include "cli/text/notes.hpp"
#include "ohmtrail/plan/protection.hpp"
#include "ohmtrail/units/print.hpp"

namespace ohmtrail::cli {
namespace {

using plan::LoadChange;
using plan::RunChoice;
using plan::SizeResult;
using Align = Column::Align;
namespace u = units;

constexpr u::Format aligned{.significant = 3, .keep_zeros = true};

template <class Q>
std::string shown(std::optional<double> si) {
  return si && std::isfinite(*si) ? u::print(Q{*si}, aligned) : "–";
}

std::string amount(const SizeResult& sized, double cost) {
  return sized.priced ? fmt::format("a price of {:.2f}", cost)
                      : fmt::format("{} of conductor", u::print(u::Mass{cost}));
}

std::string runs_in_words(std::size_t count) {
  return count == 1 ? "1 run" : fmt::format("{} runs", count);
}

std::string verdict(const SizeResult& sized) {
  const auto renewed = static_cast<std::size_t>(
      std::count_if(sized.runs.begin(), sized.runs.end(), [](const RunChoice& run) { return run.renewed; }));
  const bool all_within =
      std::all_of(sized.loads.begin(), sized.loads.end(), [](const auto& load) { return load.within; });
  const std::string what =
      renewed == 0
          ? "No cable has to change"
          : fmt::format("New cable in {} of {} keeps every limit {}", renewed,
                        runs_in_words(sized.runs.size()),
                        all_within ? "in every case" : "that these runs can keep; OVER marks the others");
  const std::string costs =
      fmt::format("all the runs that were to choose take {}", amount(sized, sized.cost));
  if (sized.proved)
    return fmt::format("{}: {}, and no cheaper choice from the list would do (proved).", what, costs);
  return fmt::format(
      "{}: {}. The time ended before it was proved the cheapest; none can be below {} ({:.2g} % less).", what,
      costs, amount(sized, sized.bound), 100 * (sized.cost - sized.bound) / sized.cost);
}

void show_verdict(Sheet& sheet, const SizeResult& sized) {
  if (sized.found) {
    sheet.paragraph(verdict(sized), sized.proved ? Ink::good : Ink::warning);
    return;
  }
  if (sized.shortfalls.empty()) {
    sheet.paragraph(
        "The time ended before any choice was found that keeps every limit; whether there is one is "
        "not known. A larger --time-limit may find it.",
        Ink::bad);
    return;
  }
  sheet.paragraph("Nothing on the list suffices: even the thickest cable everywhere breaks a limit.",
                  Ink::bad);
  for (const plan::Shortfall& one : sized.shortfalls) {
    const std::string in_case = one.in_case.empty() ? "" : fmt::format(" (case \"{}\")", one.in_case);
    sheet.item("  - ", fmt::format("{}{}: {}", one.subject, in_case, one.text));
    sheet.item("    ", "Would help: " + one.remedy + ".", Ink::faint);
  }
}

/// Why this gauge and no cheaper one.
std::string why(const RunChoice& run) {
  using enum plan::Reason;
  if (!run.chosen) return "stays";
  switch (run.reason) {
    case cheapest:
      return "the cheapest";
    case drop:
      return "volts lost";
    case ampacity:
      return "ampacity";
    case fuse:
      return "its fuse";
    case kept:
      break;
  }
  return "stays";
}

std::string taken(const RunChoice& run) {
  return run.renewed && run.gauge == run.was ? run.gauge + ", new" : run.gauge;
}

Table run_table(const SizeResult& sized) {
  std::vector<Column> columns{{"run", Align::left, Narrow::cuts},
                              {"was", Align::right},
                              {"take", Align::right},
                              {"because of", Align::left},
                              {"carries", Align::right},
                              {"may carry", Align::right},
                              {"fuse", Align::right},
                              {"mass", Align::right}};
  if (sized.priced) columns.push_back({"price", Align::right});
  Table table(columns);
  for (const RunChoice& run : sized.runs) {
    std::vector<Cell> cells{
        Cell(run.id, run.renewed ? Ink::strong : Ink::plain),
        run.was,
        Cell(taken(run), run.renewed ? Ink::strong : Ink::plain),
        why(run),
        shown<u::Current>(run.current),
        Cell(shown<u::Current>(run.ampacity), run.steady > run.ampacity * (1 + 1e-9) ? Ink::bad : Ink::plain),
        run.fuse ? Cell(u::print(u::Current{*run.fuse})) : Cell("none", Ink::warning),
        shown<u::Mass>(run.mass)};
    if (sized.priced) cells.emplace_back(run.chosen ? fmt::format("{:.2f}", run.cost) : "–");
    table.row(std::move(cells));
  }
  return table;
}

/// Where a run carries more than would warm it as it becomes: what its gauge has to bear.
void show_short_duty(Sheet& sheet, const SizeResult& sized) {
  bool told = false;
  for (const RunChoice& run : sized.runs) {
    if (!run.chosen || run.steady >= 0.9 * run.current) continue;
    if (!std::exchange(told, true)) sheet.line();
    sheet.item("  ",
               fmt::format("{} carries {} in short turns, which warm it as a steady {} would: its ampacity "
                           "has to bear that.",
                           run.id, u::print(u::Current{run.current}), u::print(u::Current{run.steady})));
  }
}

Cell state_of(const LoadChange& load) {
  if (!load.running) return Cell("CUT OUT", Ink::bad);
  if (!load.limit_fraction) return Cell("no limit", Ink::faint);
  return load.within ? Cell("ok", Ink::good) : Cell("OVER", Ink::bad);
}

Table load_table(const SizeResult& sized) {
  Table table({{"load", Align::left, Narrow::cuts},
               {"case", Align::left, Narrow::cuts},
               {"before", Align::right},
               {"after", Align::right},
               {"lost", Align::right},
               {"of rated", Align::right},
               {"limit", Align::right},
               {"", Align::left}});
  for (const LoadChange& load : sized.loads)
    table.row({load.id, load.in_case, shown<u::Voltage>(load.volts_before),
               shown<u::Voltage>(load.volts_after), load.running ? shown<u::Voltage>(load.drop) : "–",
               load.running ? shown<u::Fraction>(load.drop_fraction) : "–",
               shown<u::Fraction>(load.limit_fraction), state_of(load)});
  return table;
}

std::string opening(double seconds) {
  return seconds < 0.01 ? "at once" : fmt::format("after {}", u::print(u::Time{seconds}));
}

void show_fuses(Sheet& sheet, const SizeResult& sized) {
  bool told = false;
  const auto item = [&](const std::string& text, Ink ink) {
    if (!told) sheet.line(), sheet.line("Fuses and breakers", Ink::strong);
    told = true;
    sheet.item("  - ", text, ink);
  };
  for (const plan::FuseChoice& fuse : sized.fuses) {
    if (fuse.rating != fuse.was)
      item(fmt::format("{}: {} instead of {}", fuse.id, u::print(u::Current{fuse.rating}),
                       u::print(u::Current{fuse.was})),
           Ink::plain);
    if (fuse.inrush && fuse.opens_after)
      item(
          fmt::format("{}: a start draws {}, at which it may open {}. Fit a slower one of the same rating; a "
                      "larger one would not protect the cable.",
                      fuse.id, u::print(u::Current{*fuse.inrush}), opening(*fuse.opens_after)),
          Ink::warning);
  }
  const auto bare =
      std::count_if(sized.runs.begin(), sized.runs.end(), [](const RunChoice& run) { return !run.fuse; });
  if (bare > 0)
    item(fmt::format("{} without a fuse or breaker of {} own: ohmtrail check says which need one",
                     runs_in_words(static_cast<std::size_t>(bare)), bare == 1 ? "its" : "their"),
         Ink::faint);
}

void show_choice(Sheet& sheet, const SizeResult& sized) {
  sheet.line();
  sheet.table(run_table(sized));
  show_short_duty(sheet, sized);
  if (!sized.loads.empty()) {
    sheet.line();
    sheet.table(load_table(sized));
  }
  show_fuses(sheet, sized);
}

}  // namespace

void show_sizing(Sheet& sheet, const netlist::System& system, const SizeResult& sized,
                 const std::vector<diagnose::Finding>& raised) {
  sheet.line(system.info.name, Ink::strong);
  show_verdict(sheet, sized);
  if (sized.found) show_choice(sheet, sized);
  if (!raised.empty()) {
    sheet.line();
    sheet.paragraph(
        "Before you buy: every limit is kept, yet with this cable check finds what it does not find today",
        Ink::strong);
    show_findings(sheet, raised);
  }
  show_unused_readings(sheet, system);
  show_assumptions(sheet, sized.assumptions);
  show_cautions(sheet);
  sheet.line();
  sheet.paragraph(plan::advice_line, Ink::faint);
}

}  // namespace ohmtrail::cli
