#include "diagnose/infer/reading_error.hpp"

#include <algorithm>
#include <cmath>

#include "ohmtrail/trade/meter.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

netlist::Accuracy plain(const trade::MeterAccuracy& usual) {
  return {usual.percent, usual.counts, usual.last_digit};
}

const netlist::Meter* meter_of(const netlist::System& system, const netlist::Reading& reading) {
  const auto found = std::find_if(system.meters.begin(), system.meters.end(),
                                  [&](const netlist::Meter& meter) { return meter.id == reading.meter; });
  return found == system.meters.end() ? nullptr : &*found;
}

// The meter's own accuracy for this quantity, else that of the usual instrument.
struct AccuracyOf {
  const netlist::Meter* meter;

  netlist::Accuracy operator()(const netlist::VoltsReading& r) const {
    return meter && meter->volts ? *meter->volts : plain(trade::usual_accuracy(r.value));
  }
  netlist::Accuracy operator()(const netlist::AmpsReading& r) const {
    return meter && meter->amps ? *meter->amps : plain(trade::usual_accuracy(r.value));
  }
  netlist::Accuracy operator()(const netlist::OhmsReading& r) const {
    return meter && meter->ohms ? *meter->ohms : plain(trade::usual_accuracy(r.value));
  }
  netlist::Accuracy operator()(const netlist::TemperatureReading& r) const {
    return meter && meter->temperature ? *meter->temperature : plain(trade::usual_accuracy(r.value));
  }
};

struct Value {
  double operator()(const netlist::VoltsReading& r) const { return r.value.si(); }
  double operator()(const netlist::AmpsReading& r) const { return r.value.si(); }
  double operator()(const netlist::OhmsReading& r) const { return r.value.si(); }
  double operator()(const netlist::TemperatureReading& r) const { return r.value.celsius(); }
};

}  // namespace

double measured_value(const netlist::Reading& reading) {
  return std::visit(Value{}, reading.what);
}

ReadingError reading_error(const netlist::System& system, const netlist::Reading& reading) {
  const netlist::Accuracy accuracy = std::visit(AccuracyOf{meter_of(system, reading)}, reading.what);
  const bool clamp = std::holds_alternative<netlist::AmpsReading>(reading.what);
  const double counts = accuracy.counts * accuracy.last_digit / bound_over_sd;
  const double rounding = accuracy.last_digit / std::sqrt(12.0);
  const double jump = reading.spread.value_or(0) / bound_over_sd;
  ReadingError out;
  out.gain = accuracy.percent / 100 / bound_over_sd;
  // A Hall clamp's counts are mostly remanence, alike for all its readings of a survey: half of the variance
  // each.
  out.zero = clamp ? counts * std::sqrt(0.5) : 0;
  const double own = clamp ? out.zero : counts;
  // An error of nothing at all is a netlist that names none; keep a millionth of the value.
  const double least = 1e-6 * std::abs(measured_value(reading)) + 1e-9;
  out.independent = std::max(std::sqrt(own * own + rounding * rounding + jump * jump), least);
  return out;
}

}  // namespace ohmtrail::diagnose::inference
