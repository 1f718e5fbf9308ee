#include "diagnose/next/case_view.hpp"

#include <cmath>

#include "diagnose/infer/reading_error.hpp"

namespace ohmtrail::diagnose::next {
namespace {

Eigen::Index at(std::size_t k) {
  return static_cast<Eigen::Index>(k);
}

class Viewer {
 public:
  Viewer(const Outlook& outlook, inference::Forward& forward, CaseView& view)
      : outlook_(outlook), forward_(forward), view_(view) {}

  bool run() {
    auto sound = look(outlook_.sound);
    if (!sound) return false;
    view_.sound = *sound;
    auto first = look(outlook_.states.front().x);
    if (!first) return false;
    view_.typical = forward_.solution(view_.in_case);
    differentiate();
    add(0, std::move(*first));
    for (std::size_t k = 1; k < outlook_.states.size(); ++k) {
      if (auto mean = look(outlook_.states[k].x)) add(k, std::move(*mean));
    }
    return true;
  }

 private:
  std::optional<Eigen::VectorXd> look(const Eigen::VectorXd& x) {
    solver_ = forward_.solved_case(view_.in_case, inference::values_at(forward_.model(), x));
    if (solver_ == nullptr) return std::nullopt;
    const solve::Solution& solution = forward_.solution(view_.in_case);
    Eigen::VectorXd out(at(view_.points.size() + view_.branches.size()));
    Eigen::Index row = 0;
    for (const int p : view_.points) out[row++] = solution.voltage[static_cast<std::size_t>(p)];
    for (const int b : view_.branches) out[row++] = solution.current[static_cast<std::size_t>(b)];
    put_through_meter(x, out);
    return out;
  }

  // As far as the readings taken so far tell how the meter errs: a forecast is of what it will show.
  void put_through_meter(const Eigen::VectorXd& x, Eigen::VectorXd& shown) const {
    const Eigen::Index points = at(view_.points.size()), branches = shown.size() - points;
    if (outlook_.volts_gain >= 0) shown.head(points) *= 1 + x[outlook_.volts_gain];
    if (outlook_.amps_gain >= 0) shown.tail(branches) *= 1 + x[outlook_.amps_gain];
    if (outlook_.amps_zero >= 0) shown.tail(branches).array() += x[outlook_.amps_zero];
  }

  // At the likeliest state only: what a resistance does to a voltage is the current through it, which the
  // states hardly differ in.
  void differentiate() {
    gradient_.resize(at(view_.points.size() + view_.branches.size()), outlook_.sound.size());
    Eigen::Index row = 0;
    for (const int p : view_.points) {
      gradient_.row(row++) =
          forward_.by_parameter(view_.in_case, solver_->gradient_of_voltage(p, view_.points.front()))
              .transpose();
    }
    for (const int b : view_.branches) {
      gradient_.row(row++) =
          forward_.by_parameter(view_.in_case, solver_->gradient_of_current(b)).transpose();
    }
  }

  void add(std::size_t k, Eigen::VectorXd mean) {
    const State& state = outlook_.states[k];
    Eigen::MatrixXd scaled = gradient_;
    const Eigen::Index points = at(view_.points.size());
    // The meter's own unknowns: its gain on what it reads, the clamp's zero.
    const double reference = mean[0];
    if (outlook_.volts_gain >= 0)
      scaled.col(outlook_.volts_gain).head(points) = mean.head(points).array() - reference;
    if (outlook_.amps_gain >= 0)
      scaled.col(outlook_.amps_gain).tail(mean.size() - points) = mean.tail(mean.size() - points);
    if (outlook_.amps_zero >= 0) scaled.col(outlook_.amps_zero).tail(mean.size() - points).setOnes();
    scaled = scaled * state.scale.asDiagonal();
    const Eigen::MatrixXd explained = scaled * state.explained;
    view_.covariance.push_back(scaled * scaled.transpose() - explained * explained.transpose());
    view_.mean.push_back(std::move(mean));
    view_.states.push_back(k);
  }

  const Outlook& outlook_;
  inference::Forward& forward_;
  CaseView& view_;
  const solve::Solver* solver_ = nullptr;
  Eigen::MatrixXd gradient_;
};

double own_error(const Outlook& outlook, const netlist::Reading& reading) {
  return inference::reading_error(outlook.system, reading).independent;
}

}  // namespace

std::optional<CaseView> view_case(const Outlook& outlook, inference::Forward& forward, std::size_t in_case,
                                  const std::vector<int>& points, const std::vector<int>& branches) {
  CaseView out;
  out.in_case = in_case;
  out.points = points;
  out.branches = branches;
  if (!Viewer(outlook, forward, out).run()) return std::nullopt;
  return out;
}

std::vector<Forecast> forecast_volts(const Outlook& outlook, const CaseView& view, std::size_t red,
                                     std::size_t black) {
  const Eigen::Index r = at(red), b = at(black);
  netlist::Reading reading;
  reading.meter = outlook.meter;
  reading.what = netlist::VoltsReading{units::Voltage{view.mean.front()[r] - view.mean.front()[b]}, {}, {}};
  const double error = own_error(outlook, reading);
  std::vector<Forecast> out;
  for (std::size_t k = 0; k < view.states.size(); ++k) {
    const State& state = outlook.states[view.states[k]];
    const Eigen::MatrixXd& c = view.covariance[k];
    const double variance = std::max(0.0, c(r, r) + c(b, b) - 2 * c(r, b));
    out.push_back(
        {view.mean[k][r] - view.mean[k][b], std::sqrt(variance + error * error), state.weight, state.label});
  }
  return out;
}

std::vector<Forecast> forecast_amps(const Outlook& outlook, const CaseView& view, std::size_t branch) {
  const Eigen::Index b = at(view.points.size() + branch);
  netlist::Reading reading;
  reading.meter = outlook.meter;
  reading.what = netlist::AmpsReading{units::Current{view.mean.front()[b]}, {}};
  const double error = own_error(outlook, reading);
  std::vector<Forecast> out;
  for (std::size_t k = 0; k < view.states.size(); ++k) {
    const State& state = outlook.states[view.states[k]];
    const double variance = std::max(0.0, view.covariance[k](b, b));
    out.push_back({view.mean[k][b], std::sqrt(variance + error * error), state.weight, state.label});
  }
  return out;
}

}  // namespace ohmtrail::diagnose::next
