#include "ohmtrail/trade/sound.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "ohmtrail/trade/gauge.hpp"
#include "trade/tables/contacts.hpp"

namespace ohmtrail::trade {
namespace {

using units::Current;
using units::Resistance;

double limit_ohm(const tables::CrimpRow& row) {
  return row.millivolts * 1e-3 / row.test_amps;
}

/// The crimp limit for any area: a power law between neighbouring sizes, which is about 1/A.
double crimp_limit(const units::Area& area) {
  auto thicker = std::find_if(tables::crimp_rows.begin(), tables::crimp_rows.end(),
                              [&](const auto& row) { return awg_area(row.awg) >= area; });
  thicker = std::clamp(thicker, tables::crimp_rows.begin() + 1, tables::crimp_rows.end() - 1);
  const auto thinner = thicker - 1;
  const double share = std::log(ratio(area, awg_area(thinner->awg))) /
                       std::log(ratio(awg_area(thicker->awg), awg_area(thinner->awg)));
  return limit_ohm(*thinner) * std::pow(limit_ohm(*thicker) / limit_ohm(*thinner), share);
}

const tables::StudRow& stud_for(const Gauge& gauge) {
  const double mm2 = gauge.area.si() * 1e6;
  return *std::find_if(tables::stud_rows.begin(), tables::stud_rows.end(),
                       [mm2](const auto& row) { return mm2 >= row.square_millimetres_from; });
}

Sound by_kind(const tables::KindRow& row, std::optional<Current> rating, double least_ohm = 0) {
  const bool rated = rating && rating->si() > 0 && row.millivolts_at_rated > 0;
  const double ohm = rated ? row.millivolts_at_rated * 1e-3 / rating->si() : row.milliohm * 1e-3;
  return {Resistance{std::max(ohm, least_ohm)}, std::string(row.basis)};
}

double blade_ohm(double rating) {
  auto above = std::find_if(tables::blade_rows.begin(), tables::blade_rows.end(),
                            [rating](const auto& row) { return row.rating >= rating; });
  above = std::clamp(above, tables::blade_rows.begin() + 1, tables::blade_rows.end() - 1);
  const auto below = above - 1;
  const double share = std::log(rating / below->rating) / std::log(above->rating / below->rating);
  return below->milliohm * 1e-3 * std::pow(above->milliohm / below->milliohm, share);
}

}  // namespace

int usual_stud(const Gauge& gauge) {
  return stud_for(gauge).thread_mm;
}

Sound sound_contact(TerminationKind kind, const Gauge& gauge) {
  const tables::StudRow& stud = stud_for(gauge);
  // Bare strands under a bolt touch over less area than a flat lug: taken as twice the lug's contact.
  const bool bare = kind == TerminationKind::bolted_bare;
  return {Resistance{stud.micro_ohm * 1e-6 * (bare ? 2 : 1)},
          fmt::format("bolted contact on M{}: {:g} µΩ{} ({})", stud.thread_mm, stud.micro_ohm,
                      bare ? ", doubled for bare strands" : "", tables::stud_source)};
}

Sound sound_crimp(TerminationKind kind, const Gauge& gauge) {
  if (kind == TerminationKind::bolted_bare) return {Resistance{0}, "no crimp on a bare end"};
  const double ohm = crimp_limit(gauge.area) / 2;
  const bool memory = gauge.area > awg_area(4);
  return {Resistance{ohm},
          fmt::format("half the crimp limit for {:.3g} mm²: {:.3g} µΩ ({}MIL-T-7928{})",
                      gauge.area.si() * 1e6, ohm * 1e6, memory ? "from memory: " : "", memory ? "" : "E")};
}

Sound sound_termination(TerminationKind kind, const Gauge& gauge) {
  const Sound contact = sound_contact(kind, gauge), crimp = sound_crimp(kind, gauge);
  return {contact.value + crimp.value, fmt::format("{}; {}", crimp.basis, contact.basis)};
}

Sound sound_joint(JointKind kind, std::optional<Current> rating) {
  const tables::KindRow& row = tables::joint_rows[static_cast<std::size_t>(kind)];
  const double least = kind == JointKind::stud ? row.milliohm * 1e-3 : 0;
  return by_kind(row, rating, least);
}

Sound sound_switch(SwitchKind kind, std::optional<Current> rating) {
  return by_kind(tables::switch_rows[static_cast<std::size_t>(kind)], rating);
}

Sound sound_fuse(std::optional<FuseForm> form, Current rating) {
  const bool blade = form ? *form == FuseForm::blade : rating.si() <= 40;
  if (blade && rating.si() <= 40)
    return {Resistance{blade_ohm(rating.si())}, std::string(tables::blade_source)};
  return {Resistance{tables::fuse_cold_millivolts * 1e-3 / rating.si()}, std::string(tables::fuse_source)};
}

}  // namespace ohmtrail::trade
