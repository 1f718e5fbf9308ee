#include "render/teller.hpp"

#include <fmt/format.h>

#include <cmath>
#include <variant>

#include "render/number.hpp"
#include "render/text.hpp"
#include "render/words.hpp"
#include "units/index.hpp"

namespace ohmtrail::render {
namespace {

using network::Role;
using network::Section;

std::string length_name(units::Length length) {
  return fmt::format("{}\u202Fm", plain(length.si()));
}

struct Takes {
  std::string operator()(units::Power p) const { return watts(p.si()); }
  std::string operator()(units::Current c) const { return amperes(c.si()); }
  std::string operator()(units::Resistance r) const { return ohms(r.si()); }
};

}  // namespace

std::string gauge_name(const trade::Gauge& gauge) {
  if (gauge.system == trade::GaugeSystem::metric) return fmt::format("{:g}\u202Fmm²", gauge.area.si() * 1e6);
  const std::string number =
      gauge.number > 0 ? fmt::format("{}", gauge.number) : fmt::format("{}/0", 1 - gauge.number);
  return number + (gauge.system == trade::GaugeSystem::awg ? "\u202FAWG" : "\u202FSAE");
}

Teller::Teller(const netlist::System& system, const solve::CaseSolution& solved,
               const std::vector<diagnose::HotSpot>& hot_spots, Show show)
    : system_(system), solved_(solved), show_(show) {
  std::map<std::string, const diagnose::HotSpot*> by_id;
  for (const diagnose::HotSpot& spot : hot_spots) by_id.emplace(spot.id, &spot);
  for (int i = 0; i < static_cast<int>(solved.network.elements.size()); ++i)
    if (const auto found = by_id.find(element(i).id); found != by_id.end()) hot_.emplace(i, found->second);
}

const network::Element& Teller::element(int i) const {
  return solved_.network.elements[at(i)];
}

const diagnose::HotSpot* Teller::hot_spot(int element) const {
  const auto found = hot_.find(element);
  return found == hot_.end() ? nullptr : found->second;
}

int Teller::main_element(const Piece& piece) const {
  for (const int i : piece.elements)
    if (element(i).role == Role::wire) return i;
  return piece.elements.front();
}

double Teller::copper(const Piece& piece) const {
  return piece.is_run ? system_.runs[element(piece.elements.front()).origin.index].gauge.area.si() : 0;
}

bool Teller::open(const Piece& piece) const {
  return !element(main_element(piece)).active;
}

double Teller::current(const Piece& piece) const {
  const double forward = solved_.solution.current[at(piece.elements.front())];
  return piece.reversed ? -forward : forward;
}

double Teller::drop(const Piece& piece) const {
  double sum = 0;
  for (const int i : piece.elements) sum += solved_.solution.drop[at(i)];
  return std::fabs(sum);
}

double Teller::heat(const Piece& piece) const {
  double sum = 0;
  for (const int i : piece.elements) sum += solved_.solution.heat[at(i)];
  return sum;
}

double Teller::hottest(const Piece& piece) const {
  double hottest = std::nan("");
  for (const int i : piece.elements) {
    double here = solved_.solution.temperature[at(i)];
    if (const auto* spot = hot_spot(i); spot && spot->temperature) here = *spot->temperature;
    hottest = std::fmax(hottest, here);
  }
  return hottest;
}

std::string Teller::name(const Piece& piece) const {
  const network::Element& e = element(piece.elements.front());
  if (!piece.is_run) return e.id;
  const bool back = e.origin.part >= network::Part::return_from && e.origin.part <= network::Part::return_to;
  const std::string& run = system_.runs[e.origin.index].id;
  return back ? filled(text::return_name, run) : run;
}

std::string Teller::rating(const Piece& piece) const {
  const network::Origin& origin = element(piece.elements.front()).origin;
  const auto amps = [](const auto& rating) { return rating ? amperes(rating->si()) : std::string(); };
  switch (origin.section) {
    case Section::runs: {
      const netlist::Run& run = system_.runs[origin.index];
      return fmt::format("{} · {}", gauge_name(run.gauge), length_name(run.length));
    }
    case Section::joints:
      return amps(system_.joints[origin.index].rating);
    case Section::switches:
      return amps(system_.switches[origin.index].rating);
    case Section::fuses:
      return amperes(system_.fuses[origin.index].rating.si());
    case Section::shunts:
      return amperes(system_.shunts[origin.index].rating.si());
    case Section::isolators:
      return amps(system_.isolators[origin.index].rating);
    default:
      return {};
  }
}

std::string Teller::value(const Piece& piece) const {
  if (show_ == Show::gauge) return rating(piece);
  if (open(piece)) return std::string(text::open);
  const double amps = current(piece);
  if (!std::isfinite(amps) || std::fabs(amps) < 1e-9) return {};
  switch (show_) {
    case Show::amps:
      return amperes(std::fabs(amps));
    case Show::heat: {
      const double degrees = hottest(piece);
      return std::isfinite(degrees) ? fmt::format("{} · {}", watts(heat(piece)), celsius(degrees))
                                    : watts(heat(piece));
    }
    default:
      return volts(drop(piece));
  }
}

std::string Teller::title(const Piece& piece) const {
  const std::string id = name(piece);
  const double amps = std::fabs(current(piece));
  if (!(amps >= 1e-9)) return filled(text::idle_title, id);
  if (!piece.is_run)
    return filled(text::device_title, id, volts(drop(piece)), amperes(amps), watts(heat(piece)));
  const netlist::Run& run = system_.runs[element(piece.elements.front()).origin.index];
  return filled(text::run_title, id, gauge_name(run.gauge), length_name(run.length), volts(drop(piece)),
                amperes(amps), watts(heat(piece)));
}

std::string Teller::name(const Item& item, std::size_t part) const {
  const network::Origin& origin = element(item.elements[part]).origin;
  if (origin.section == Section::converters) return system_.converters[origin.index].id;
  return element(item.elements[part]).id;
}

std::string Teller::rating(const Item& item, std::size_t part) const {
  const network::Element& e = element(item.elements[part]);
  switch (item.kind) {
    case ItemKind::supply: {
      const netlist::Battery& battery = system_.batteries[e.origin.index];
      std::string nominal = fmt::format("{:g}\u202FV", battery.nominal.si());
      if (!battery.capacity) return nominal;
      return fmt::format("{} · {:.0f}\u202FAh", nominal, battery.capacity->si() / 3600);
    }
    case ItemKind::charger:
      return fmt::format("{} · {}", standing_volts(e.voltage.si()), amperes(e.limit.si()));
    case ItemKind::converter: {
      const netlist::Converter& converter = system_.converters[e.origin.index];
      return fmt::format("{} · {}", standing_volts(converter.setpoint.si()), amperes(converter.limit.si()));
    }
    case ItemKind::load:
      break;
  }
  return e.takes ? std::visit(Takes{}, *e.takes) : std::string();
}

std::string Teller::state(const Item& item, int i) const {
  const auto& s = solved_.solution;
  if (!element(i).active) return std::string(text::off);
  if (item.kind == ItemKind::load && !s.running[at(i)]) return std::string(text::stopped);
  switch (show_) {
    case Show::volts:
      return standing_volts(std::fabs(s.drop[at(i)]));
    case Show::amps:
      return amperes(std::fabs(s.current[at(i)]));
    case Show::heat:
      return watts(std::fabs(s.heat[at(i)]));
    case Show::gauge:
      break;
  }
  return {};
}

std::vector<std::string> Teller::values(const Item& item, std::size_t part) const {
  std::vector<std::string> lines;
  if (auto line = rating(item, part); !line.empty()) lines.push_back(std::move(line));
  const int shown = item.kind == ItemKind::converter ? item.elements.back() : item.elements[part];
  if (auto line = state(item, shown); !line.empty()) lines.push_back(std::move(line));
  return lines;
}

std::string Teller::title(const Item& item, std::size_t part) const {
  const int i = item.elements[part];
  const auto& s = solved_.solution;
  const std::string id = name(item, part);
  const std::string stands = standing_volts(std::fabs(s.drop[at(i)]));
  const std::string flows = amperes(std::fabs(s.current[at(i)]));
  if (!element(i).active) return filled(text::idle_title, id);
  switch (item.kind) {
    case ItemKind::supply:
      return filled(s.current[at(i)] > 0 ? text::supply_taking_title : text::supply_title, id, stands, flows);
    case ItemKind::charger:
      return filled(text::charger_title, id, stands, flows);
    case ItemKind::converter:
      return filled(text::converter_title, id);
    case ItemKind::load:
      break;
  }
  return filled(text::load_title, id, stands, flows, watts(std::fabs(s.heat[at(i)])));
}

std::string Teller::name(const Bar& bar) const {
  return solved_.network.points[at(bar.point)];
}

std::string Teller::title(const Bar& bar) const {
  const std::string volts_here = value(bar);
  return volts_here.empty() ? name(bar) : filled(text::bar_title, name(bar), volts_here);
}

std::string Teller::value(const Bar& bar) const {
  const double here = solved_.solution.voltage[at(bar.point)];
  return show_ == Show::volts && std::isfinite(here) ? standing_volts(here) : std::string();
}

}  // namespace ohmtrail::render
