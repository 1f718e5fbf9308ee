#include <algorithm>
#include <cmath>

#include "render/number.hpp"
#include "render/report_parts.hpp"
#include "render/text.hpp"
#include "render/words.hpp"

namespace ohmtrail::render {
namespace {

using diagnose::BenchKind;
using diagnose::BenchReading;
using diagnose::BenchRound;

constexpr std::size_t most_loads_named = 8;
constexpr std::size_t most_readings = 120;  // on the whole sheet: five pages

std::string what_is_read(const netlist::System& system, const BenchReading& reading) {
  switch (reading.kind) {
    case BenchKind::rest:
      return filled(text::bench_at_rest, reading.of);
    case BenchKind::posts:
      return filled(text::bench_posts, reading.of);
    case BenchKind::load:
      return filled(text::bench_load, where(system, reading.of));
    case BenchKind::amps:
      return std::string(text::bench_current);
    case BenchKind::drop:
      break;
  }
  return where(system, reading.of);
}

std::string expected(const BenchReading& reading) {
  switch (reading.kind) {
    case BenchKind::amps:
      return amperes(reading.expected);
    case BenchKind::drop:
      return volts(reading.expected);
    default:
      return standing_volts(reading.expected);
  }
}

std::vector<std::string> row_of(const netlist::System& system, const BenchReading& reading) {
  std::string what = sentence(what_is_read(system, reading));
  if (reading.tools) what = filled(text::bench_tools, what);
  const bool clamp = reading.kind == BenchKind::amps;
  return {what,
          clamp ? filled(text::bench_clamp, where(system, reading.of)) : point_in_words(system, reading.red),
          clamp ? std::string() : point_in_words(system, reading.black), expected(reading), ""};
}

std::string title_of(const BenchRound& round) {
  if (round.in_case.empty()) return std::string(text::bench_rest);
  std::string loads;
  const std::size_t named = std::min(round.loads.size(), most_loads_named);
  for (std::size_t k = 0; k < named; ++k) loads += (k == 0 ? "" : ", ") + round.loads[k];
  if (round.loads.size() > named) loads = filled(text::and_more, loads, round.loads.size() - named);
  return filled(text::bench_case, round.in_case, loads);
}

/// The drop below which readings are left out so that at most `most_readings` stay.
double least_drop(const diagnose::BenchSheet& sheet) {
  std::vector<double> drops;
  std::size_t others = 0;
  for (const BenchRound& round : sheet.rounds)
    for (const BenchReading& reading : round.readings)
      if (reading.kind == BenchKind::drop)
        drops.push_back(reading.expected);
      else
        ++others;
  if (others + drops.size() <= most_readings) return -1;
  const std::size_t keep = most_readings > others ? most_readings - others : 0;
  std::sort(drops.begin(), drops.end(), std::greater<>());
  return keep < drops.size() ? drops[keep] : -1;
}

void tell_round(Document& document, const std::string& title, const Rows& rows) {
  if (rows.empty()) return;
  document.subheading(title);
  document.form({{std::string(text::column_reading), 3},
                 {std::string(text::column_red), 2},
                 {std::string(text::column_black), 2},
                 {std::string(text::column_sound), 0.9, Align::right},
                 {std::string(text::column_found), 1.3}},
                rows);
}

}  // namespace

void tell_bench_sheet(Document& document, const ReportInput& input) {
  if (!input.bench_sheet) return;
  const diagnose::BenchSheet& sheet = *input.bench_sheet;
  document.begin_sheet();
  document.heading(text::heading_bench);
  document.paragraph(text::bench_head);
  document.paragraph(text::bench_how, Tone::small);
  document.paragraph(text::bench_shorts, Tone::small);
  const double least = least_drop(sheet);
  const auto is_left_out = [&](const BenchReading& reading) {
    return reading.kind == BenchKind::drop && reading.expected <= least;
  };
  std::ptrdiff_t left_out = 0;
  for (const BenchRound& round : sheet.rounds)
    left_out += std::count_if(round.readings.begin(), round.readings.end(), is_left_out);
  if (left_out > 0) document.paragraph(filled(text::bench_left_out, left_out), Tone::small);
  for (const BenchRound& round : sheet.rounds) {
    Rows rows;
    for (const BenchReading& reading : round.readings)
      if (!is_left_out(reading)) rows.push_back(row_of(input.system, reading));
    tell_round(document, title_of(round), rows);
  }
  if (sheet.out_of_reach.empty()) return;
  std::string list;
  for (const std::string& id : sheet.out_of_reach)
    list += (list.empty() ? "" : "; ") + where(input.system, id);
  document.paragraph(filled(text::bench_out_of_reach, list), Tone::small);
}

}  // namespace ohmtrail::render
