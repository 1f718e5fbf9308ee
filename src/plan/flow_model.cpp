#include "plan/flow_model.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "plan/curve.hpp"

namespace ohmtrail::plan {

namespace {

using network::Role;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// The elements of one conductor of a run in scope: in series, from its first point to its last.
struct Conductor {
  int run = -1;
  std::vector<int> elements;
  int from = -1, to = -1;
};

/// One term a column: the library refuses doubles.
std::vector<Term> merged(std::vector<Term> terms) {
  std::stable_sort(terms.begin(), terms.end(),
                   [](const Term& a, const Term& b) { return a.column < b.column; });
  std::vector<Term> found;
  for (const Term& term : terms) {
    if (!found.empty() && found.back().column == term.column)
      found.back().factor += term.factor;
    else
      found.push_back(term);
  }
  std::erase_if(found, [](const Term& term) { return term.factor == 0; });
  return found;
}

}  // namespace

class FlowRows {
 public:
  FlowRows(FlowModel& model, Mip& mip, const DesignSpace& space, const CaseSpace& in_case,
           const Guards& guards, const solve::CaseSolution& probe, const std::vector<std::vector<int>>& taken,
           double share)
      : model_(model),
        mip_(mip),
        space_(space),
        case_(in_case),
        network_(in_case.network),
        guards_(guards),
        probe_(probe),
        taken_(taken),
        share_(share),
        ranges_(current_ranges(in_case.network, probe)) {}

  void add() {
    for (std::size_t p = 0; p < network_.points.size(); ++p)
      volts_.push_back(mip_.add_continuous(-ranges_.most_volts, ranges_.most_volts));
    if (!network_.points.empty()) mip_.fix(volts_[at(network_.reference.value_or(0))], 0);
    current_law_.resize(network_.points.size());
    amperes_.assign(network_.elements.size(), -1);
    add_runs();
    for (std::size_t e = 0; e < network_.elements.size(); ++e)
      if (network_.elements[e].active && amperes_[e] < 0) add_element(static_cast<int>(e));
    for (const auto& terms : current_law_)
      if (!terms.empty()) mip_.add_row(terms, 0, 0);
    add_limits();
    add_devices();
  }

 private:
  [[nodiscard]] std::vector<Term> across(int from, int to, double factor = 1) const {
    return {{volts_[at(from)], factor}, {volts_[at(to)], -factor}};
  }

  void flow(int column, int from, int to) {
    current_law_[at(from)].push_back({column, 1});
    current_law_[at(to)].push_back({column, -1});
  }

  // --- runs in scope
  // -------------------------------------------------------------------------------------------

  [[nodiscard]] std::vector<Conductor> conductors() const {
    const std::vector<int> place = places_in_scope(space_);
    std::vector<Conductor> found;
    for (std::size_t e = 0; e < network_.elements.size(); ++e) {
      const auto& element = network_.elements[e];
      if (element.origin.section != network::Section::runs || place[element.origin.index] < 0 ||
          !element.active)
        continue;
      const int run = place[element.origin.index];
      if (found.empty() || found.back().run != run || found.back().to != element.from)
        found.push_back({run, {}, element.from, element.to});
      found.back().elements.push_back(static_cast<int>(e));
      found.back().to = element.to;
    }
    return found;
  }

  void add_runs() {
    for (const Conductor& conductor : conductors()) {
      const Interval& range = ranges_.amperes[at(conductor.elements.front())];
      const int whole = mip_.add_continuous(range.low, range.high);
      for (const int e : conductor.elements) amperes_[at(e)] = whole;
      flow(whole, conductor.from, conductor.to);
      auto sum = std::vector<Term>{{whole, -1}};
      auto drop = across(conductor.from, conductor.to);
      for (std::size_t c = 0; c < taken_[at(conductor.run)].size(); ++c)
        add_candidate(conductor, c, range, sum, drop);
      mip_.add_row(sum, 0, 0);
      mip_.add_row(drop, 0, 0);
    }
  }

  void add_candidate(const Conductor& conductor, std::size_t c, const Interval& range, std::vector<Term>& sum,
                     std::vector<Term>& drop) {
    const int taken = taken_[at(conductor.run)][c];
    Curve curve;
    double duty = 1;
    for (const ElementValue& value : case_.values[at(conductor.run)][c])
      if (std::find(conductor.elements.begin(), conductor.elements.end(), value.element) !=
          conductor.elements.end()) {
        curve.add(value);
        duty = std::min(duty, value.duty);
      }
    const double most = space_.runs[at(conductor.run)].candidates[c].ampacity / std::sqrt(duty);
    const Interval allowed{std::max(range.low, -most), std::min(range.high, most)};
    if (allowed.low > allowed.high) {
      mip_.fix(taken, 0);  // its ampacity is below what any design makes it carry
      return;
    }
    const int amperes = mip_.add_continuous(std::min(allowed.low, 0.0), std::max(allowed.high, 0.0));
    mip_.add_row({{amperes, 1}, {taken, -allowed.high}}, -kInfinity, 0);
    mip_.add_row({{amperes, 1}, {taken, -allowed.low}}, 0, kInfinity);
    sum.push_back({amperes, 1});
    drop.push_back({amperes, -curve.cold});
    if (curve.most > 0)
      drop.push_back({add_warmth(conductor.elements.front(), amperes, taken, curve, allowed), -1});
  }

  /// The column of x = k i³, least ≤ k ≤ most, times taken, over a range turned so that its far end is
  /// positive. A tangent at t lies below the curve for i ≥ −2 t, since (i − t)² (i + 2 t) ≥ 0 there.
  int add_warmth(int element, int amperes, int taken, const Curve& curve, const Interval& range) {
    const double sign = range.high >= -range.low ? 1 : -1;
    const double low = sign > 0 ? range.low : -range.high;
    const double most = sign > 0 ? range.high : -range.low;
    const double band = curve.most * most * most * most;
    const int extra = mip_.add_continuous(-band, band);
    const FlowModel::Warm warm{element, amperes, extra, taken, curve.least, sign, first_tangent(curve, low)};
    for (const double t : {warm.least, (warm.least + most) / 2, most})
      if (t >= warm.least) FlowModel::add_tangent(mip_, warm, t);
    model_.warm_.push_back(warm);
    const double slope = slope_above(curve, low, most);
    const double offset = band - slope * most;
    std::vector<Term> row{{extra, sign}, {amperes, -sign * slope}};
    if (taken >= 0) row.push_back({taken, -offset});
    mip_.add_row(row, -kInfinity, taken >= 0 ? 0 : offset);
    return extra;
  }

  /// From which t on a tangent lies below the curve of every k at i = low, and so everywhere.
  static double first_tangent(const Curve& curve, double low) {
    if (low >= 0) return low;
    if (curve.least == curve.most) return -low / 2;
    return curve.least > 0 ? -low * std::cbrt(curve.most / (2 * curve.least)) : kInfinity;
  }

  /// Of a line through (most, k most³) that no k brings above: the chord of a range without zero, else the
  /// line that touches the curve at −most / 2, else the one through (low, 0).
  static double slope_above(const Curve& curve, double low, double most) {
    if (low >= 0) return curve.most * (low * low + low * most + most * most);
    if (curve.least == curve.most) return curve.most * 0.75 * most * most;
    return curve.most * most * most * most / (most - low);
  }

  // --- all other elements
  // --------------------------------------------------------------------------------------

  void add_element(int e) {
    const auto& element = network_.elements[at(e)];
    const bool one_way = element.role == Role::charger || element.role == Role::isolator;
    Interval range = ranges_.amperes[at(e)];  // along from → to
    if (one_way) range = {0, std::max(range.high, 0.0)};
    if (element.role == Role::battery) range = {-range.high, -range.low};  // delivered
    const int amperes = mip_.add_continuous(range.low, range.high);
    amperes_[at(e)] = amperes;
    const bool source = element.role == Role::battery || element.role == Role::charger;
    flow(amperes, source ? element.to : element.from, source ? element.from : element.to);
    switch (element.role) {
      case Role::battery:
        add_battery(element, amperes);
        break;
      case Role::charger:
        add_charger(element, amperes);
        break;
      case Role::isolator:
        add_isolator(element, amperes);
        break;
      case Role::load:
        add_load(e, amperes);
        break;
      default:
        add_resistor(e, amperes, range);
    }
  }

  void add_resistor(int e, int amperes, const Interval& range) {
    Curve curve;
    curve.add(value_of(network_, e));
    auto row = across(network_.elements[at(e)].from, network_.elements[at(e)].to);
    row.push_back({amperes, -curve.cold});
    if (curve.most > 0) row.push_back({add_warmth(e, amperes, -1, curve, range), -1});
    mip_.add_row(row, 0, 0);
  }

  void add_battery(const network::Element& element, int amperes) {
    auto row = across(element.from, element.to);
    row.push_back({amperes, element.resistance.si()});
    mip_.add_row(row, element.voltage.si(), element.voltage.si());
  }

  /// Delivers nothing, or holds its set point, or delivers its limit.
  void add_charger(const network::Element& element, int amperes) {
    const double limit = element.limit.si(), volts = element.voltage.si(), far = 2 * ranges_.most_volts;
    const int on = mip_.add_binary(0), full = mip_.add_binary(0);
    mip_.add_row({{amperes, 1}, {on, -limit}}, -kInfinity, 0);
    mip_.add_row({{amperes, 1}, {full, -limit}}, 0, kInfinity);
    auto below = across(element.from, element.to);
    below.push_back({on, far});
    mip_.add_row(below, -kInfinity, volts + far);
    auto above = across(element.from, element.to);
    above.push_back({full, far});
    mip_.add_row(above, volts, kInfinity);
  }

  void add_isolator(const network::Element& element, int amperes) {
    const double far = 2 * ranges_.most_volts + ranges_.most_amperes * element.resistance.si();
    const int conducts = mip_.add_binary(0);
    mip_.add_row({{amperes, 1}, {conducts, -ranges_.most_amperes}}, -kInfinity, 0);
    auto row = across(element.from, element.to);
    row.push_back({amperes, -element.resistance.si()});
    mip_.add_row(row, -kInfinity, element.voltage.si());
    row.push_back({conducts, -far});
    mip_.add_row(row, element.voltage.si() - far, kInfinity);
  }

  void add_load(int e, int amperes) {
    const auto& element = network_.elements[at(e)];
    if (element.partner >= 0 || !ranges_.known[at(e)]) return;  // its range is all that is known
    if (const auto* given = std::get_if<units::Current>(&*element.takes)) {
      mip_.fix(amperes, given->si());
    } else if (const auto* ohms = std::get_if<units::Resistance>(&*element.takes)) {
      auto row = across(element.from, element.to);
      row.push_back({amperes, -ohms->si()});
      mip_.add_row(row, 0, 0);
    } else {
      add_power(e, amperes,
                std::get<units::Power>(*element.takes).si() / element.efficiency + element.idle.si());
    }
  }

  void add_power(int e, int amperes, double watts) {
    const auto& element = network_.elements[at(e)];
    const Interval& volts = ranges_.load_volts[at(e)];
    mip_.add_row(across(element.from, element.to), volts.low, volts.high);
    const FlowModel::PowerDraw draw{e, amperes, volts_[at(element.from)], volts_[at(element.to)], watts};
    constexpr int tangents = 4;
    for (int k = 0; k <= tangents; ++k)
      FlowModel::add_tangent(mip_, draw, volts.low + (volts.high - volts.low) * k / tangents);
    model_.draws_.push_back(draw);
    auto chord = across(element.from, element.to, watts / (volts.low * volts.high));
    chord.push_back({amperes, 1});
    mip_.add_row(chord, -kInfinity, watts / volts.low + watts / volts.high);
  }

  // --- limits
  // --------------------------------------------------------------------------------------------------

  void add_limits() {
    for (const solve::LoadResult& result : probe_.loads) {
      const auto& load = network_.elements[at(result.element)];
      if (!load.active || !load.drop_limit || !load.nominal || result.supply < 0) continue;
      std::vector<std::size_t> possible;
      for (std::size_t k = 0; k < probe_.supplies.size(); ++k)
        if (probe_.supplies[k].island == island_of(result.supply)) possible.push_back(k);
      add_limit(load, share_ * load.drop_limit->of_one() * load.nominal->si(), possible);
    }
  }

  [[nodiscard]] int island_of(int first_element) const {
    for (const auto& supply : probe_.supplies)
      if (supply.elements.front() == first_element) return supply.island;
    return -1;
  }

  void add_limit(const network::Element& load, double limit, const std::vector<std::size_t>& supplies) {
    const double far = 2 * ranges_.most_volts;
    std::vector<Term> one_of;
    for (const std::size_t supply : supplies) {
      auto row = across(load.from, load.to);
      for (const int s : probe_.supplies[supply].elements) {
        const auto terms = across(network_.elements[at(s)].from, network_.elements[at(s)].to, -1);
        row.insert(row.end(), terms.begin(), terms.end());
      }
      row = merged(std::move(row));
      if (supplies.size() == 1) {
        mip_.add_row(row, -limit, kInfinity);
        return;
      }
      const int chosen = leader(supply, supplies);
      one_of.push_back({chosen, 1});
      row.push_back({chosen, -far});
      mip_.add_row(row, -limit - far, kInfinity);
    }
    if (!one_of.empty()) mip_.add_row(one_of, 1, 1);
  }

  /// The binary that says that a supply delivers most power of its island: its current is positive, and at
  /// the highest voltage it can have it delivers at least what each other does at the lowest.
  int leader(std::size_t supply, const std::vector<std::size_t>& supplies) {
    if (leaders_.empty()) leaders_.assign(probe_.supplies.size(), -1);
    if (leaders_[supply] >= 0) return leaders_[supply];
    const int chosen = leaders_[supply] = mip_.add_binary(0);
    const int own = amperes_[at(probe_.supplies[supply].elements.front())];
    const double high = ranges_.terminal[supply].high;
    mip_.add_row({{own, 1}, {chosen, -ranges_.most_amperes}}, -ranges_.most_amperes, kInfinity);
    for (const std::size_t other : supplies) {
      const int theirs = amperes_[at(probe_.supplies[other].elements.front())];
      if (other == supply || theirs < 0) continue;
      const double far = 2 * high * ranges_.most_amperes;
      mip_.add_row({{own, high}, {theirs, -ranges_.terminal[other].low}, {chosen, -far}}, -far, kInfinity);
    }
    return chosen;
  }

  void add_devices() {
    const std::vector<int> place = places_in_scope(space_);
    for (const Guard& guard : guards_.devices) {
      const int amperes = amperes_[at(guard.element)];
      if (amperes < 0) continue;
      const auto ladder = device_ladder(space_.system, network_.elements[at(guard.element)]);
      int last = -1;
      for (const int e : guard.elements) {
        const auto& origin = network_.elements[at(e)].origin;
        if (origin.section != network::Section::runs || place[origin.index] < 0 ||
            place[origin.index] == last)
          continue;
        last = place[origin.index];
        add_device(amperes, at(last), ladder);
      }
    }
  }

  void add_device(int amperes, std::size_t run, const std::vector<double>& ladder) {
    for (const double sign : {1.0, -1.0}) {
      std::vector<Term> row{{amperes, sign}};
      for (std::size_t c = 0; c < taken_[run].size(); ++c) {
        const double ampacity = space_.runs[run].candidates[c].ampacity * (1 + 1e-9);
        const auto above = std::upper_bound(ladder.begin(), ladder.end(), ampacity);
        const double most = above == ladder.begin() ? 0 : *std::prev(above) / 1.25;
        row.push_back({taken_[run][c], -most});
      }
      mip_.add_row(row, -kInfinity, 0);
    }
  }

  FlowModel& model_;
  Mip& mip_;
  const DesignSpace& space_;
  const CaseSpace& case_;
  const network::Network& network_;
  const Guards& guards_;
  const solve::CaseSolution& probe_;
  const std::vector<std::vector<int>>& taken_;
  double share_;
  CurrentRanges ranges_;
  std::vector<int> volts_, amperes_;
  std::vector<int> leaders_;  ///< column per supply; −1: not needed yet
  std::vector<std::vector<Term>> current_law_;
};

FlowModel::FlowModel(Mip& mip, const DesignSpace& space, const CaseSpace& in_case, const Guards& guards,
                     const solve::CaseSolution& probe, const std::vector<std::vector<int>>& taken,
                     double share) {
  FlowRows(*this, mip, space, in_case, guards, probe, taken, share).add();
}

void FlowModel::add_tangent(Mip& mip, const Warm& warm, double t) {
  std::vector<Term> row{{warm.extra, warm.sign}};
  if (t != 0) row.push_back({warm.amperes, -warm.sign * 3 * warm.k * t * t});
  const double offset = 2 * warm.k * t * t * t;
  if (warm.taken >= 0 && offset != 0) row.push_back({warm.taken, offset});
  mip.add_row(row, warm.taken >= 0 ? 0 : -offset, kInfinity);
}

void FlowModel::add_tangent(Mip& mip, const PowerDraw& draw, double volts) {
  const double slope = draw.watts / (volts * volts);
  mip.add_row({{draw.amperes, 1}, {draw.plus, slope}, {draw.minus, -slope}}, 2 * draw.watts / volts,
              kInfinity);
}

void FlowModel::refine(Mip& mip, const solve::CaseSolution& solved, const std::vector<double>& value) const {
  for (const Warm& warm : warm_) {
    if (warm.taken >= 0 && value[at(warm.taken)] < 0.5) continue;
    const double amperes = warm.sign * solved.solution.current[at(warm.element)];
    if (std::isfinite(amperes) && amperes > warm.least) add_tangent(mip, warm, amperes);
  }
  for (const PowerDraw& draw : draws_) {
    const double volts = solved.solution.drop[at(draw.element)];
    if (std::isfinite(volts) && volts > 0) add_tangent(mip, draw, volts);
  }
}

}  // namespace ohmtrail::plan
