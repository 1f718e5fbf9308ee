#include "ohmtrail/trade/fuse_ladder.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "trade/tables/fuses.hpp"

namespace ohmtrail::trade {
namespace {

using units::Current;
using units::Time;
using Ladder = std::vector<Current>;

Ladder ladder(std::span<const double> amps) {
  Ladder result;
  for (const double a : amps) result.push_back(Current{a});
  return result;
}

Ladder merged_ladders() {
  Ladder result;
  for (const FuseForm form : {FuseForm::blade, FuseForm::bolt_down, FuseForm::cartridge, FuseForm::in_line})
    result.insert(result.end(), fuse_ratings(form).begin(), fuse_ratings(form).end());
  std::sort(result.begin(), result.end());
  result.erase(std::unique(result.begin(), result.end()), result.end());
  return result;
}

/// Straight in logarithms: fuse curves are close to power laws between neighbouring gates.
Time between(Time low, Time high, double share) {
  return low * std::pow(ratio(high, low), share);
}

}  // namespace

const Ladder& fuse_ratings(FuseForm form) {
  static const Ladder blade = ladder(tables::blade_ladder), bolt_down = ladder(tables::bolt_down_ladder),
                      cartridge = ladder(tables::cartridge_ladder), in_line = ladder(tables::in_line_ladder);
  switch (form) {
    case FuseForm::blade:
      return blade;
    case FuseForm::bolt_down:
      return bolt_down;
    case FuseForm::cartridge:
      return cartridge;
    case FuseForm::in_line:
      break;
  }
  return in_line;
}

const Ladder& all_fuse_ratings() {
  static const Ladder all = merged_ladders();
  return all;
}

FuseForm usual_fuse_form(Current rating) {
  if (rating <= Current{40}) return FuseForm::blade;
  return rating <= Current{500} ? FuseForm::bolt_down : FuseForm::cartridge;
}

std::optional<Current> rating_at_least(const Ladder& ladder, Current at_least) {
  const auto found = std::lower_bound(ladder.begin(), ladder.end(), at_least);
  return found == ladder.end() ? std::nullopt : std::optional(*found);
}

std::optional<Current> rating_at_most(const Ladder& ladder, Current at_most) {
  const auto above = std::upper_bound(ladder.begin(), ladder.end(), at_most);
  return above == ladder.begin() ? std::nullopt : std::optional(*(above - 1));
}

FuseLimits usual_fuse_limits(FuseForm form) {
  const tables::FormLimits& row = tables::form_limits[static_cast<std::size_t>(form)];
  return {Current{row.breaks_amps}, units::Voltage{row.volts}, std::string(row.source)};
}

const std::vector<TimeGate>& blade_time_gates() {
  static const std::vector<TimeGate> gates = [] {
    std::vector<TimeGate> result;
    result.reserve(tables::blade_gates.size());
    for (const auto& row : tables::blade_gates)
      result.push_back({row.percent / 100, Time{row.min_seconds},
                        row.max_seconds > 0 ? std::optional(Time{row.max_seconds}) : std::nullopt});
    return result;
  }();
  return gates;
}

std::optional<TimeGate> blade_opening_time(Current rating, Current current) {
  const auto& gates = blade_time_gates();
  const double share = ratio(current, rating);
  if (!(share >= gates.front().share_of_rating)) return std::nullopt;
  if (share >= gates.back().share_of_rating)  // faster still, by how much the table does not say
    return TimeGate{share, Time{0}, gates.back().no_later};
  const auto above = std::upper_bound(gates.begin(), gates.end(), share, [](double s, const TimeGate& gate) {
    return s < gate.share_of_rating;
  });
  const auto below = above - 1;
  const double part =
      std::log(share / below->share_of_rating) / std::log(above->share_of_rating / below->share_of_rating);
  TimeGate gate{share, between(below->no_sooner, above->no_sooner, part), std::nullopt};
  if (below->no_later) gate.no_later = between(*below->no_later, *above->no_later, part);
  return gate;
}

}  // namespace ohmtrail::trade
