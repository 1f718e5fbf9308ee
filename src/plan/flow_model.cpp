#include "plan/flow_model.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

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

class FlowRows {
 public:
  FlowRows(Mip& mip, const DesignSpace& space, const CaseSpace& in_case, const Guards& guards,
           const solve::CaseSolution& probe, const std::vector<std::vector<int>>& taken)
      : mip_(mip),
        space_(space),
        case_(in_case),
        network_(in_case.network),
        guards_(guards),
        probe_(probe),
        taken_(taken) {
    for (const auto& element : network_.elements) {
      if (element.role == Role::battery || element.role == Role::charger)
        most_volts_ += std::abs(element.voltage.si());
      if (element.active && element.role == Role::load) most_amperes_ += most_current(element);
    }
    most_amperes_ += circulating();
  }

  void add() {
    for (std::size_t p = 0; p < network_.points.size(); ++p)
      volts_.push_back(mip_.add_continuous(-most_volts_, most_volts_));
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
  [[nodiscard]] double most_current(const network::Element& load) const {
    if (const auto* amperes = std::get_if<units::Current>(&*load.takes)) return amperes->si();
    if (const auto* ohms = std::get_if<units::Resistance>(&*load.takes)) return most_volts_ / ohms->si();
    return (std::get<units::Power>(*load.takes).si() / load.efficiency + load.idle.si()) / least_volts(load);
  }

  /// Below half of its nominal voltage a constant-power load has collapsed: no design for use.
  [[nodiscard]] double least_volts(const network::Element& load) const {
    return load.nominal ? load.nominal->si() / 2 : most_volts_ / 10;
  }

  /// What unlike batteries can drive through each other, however thick the wire.
  [[nodiscard]] double circulating() const {
    double amperes = 0;
    for (const auto& element : network_.elements) {
      if (!element.active) continue;
      if (element.role == Role::charger) amperes += element.limit.si();
      if (element.role == Role::battery && element.resistance.si() > 0)
        amperes += 0.1 * element.voltage.si() / element.resistance.si();
    }
    return amperes;
  }

  [[nodiscard]] std::vector<Term> across(int from, int to, double sign = 1) const {
    return {{volts_[at(from)], sign}, {volts_[at(to)], -sign}};
  }

  void flow(int column, int from, int to) {
    current_law_[at(from)].push_back({column, 1});
    current_law_[at(to)].push_back({column, -1});
  }

  // --- runs in scope
  // -------------------------------------------------------------------------------------------

  [[nodiscard]] std::vector<Conductor> conductors() const {
    std::vector<int> place(space_.system.runs.size(), -1);
    for (std::size_t k = 0; k < space_.runs.size(); ++k) place[space_.runs[k].run] = static_cast<int>(k);
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
      const int whole = mip_.add_continuous(-most_amperes_, most_amperes_);
      for (const int e : conductor.elements) amperes_[at(e)] = whole;
      flow(whole, conductor.from, conductor.to);
      auto sum = std::vector<Term>{{whole, -1}};
      auto drop = across(conductor.from, conductor.to);
      for (std::size_t c = 0; c < taken_[at(conductor.run)].size(); ++c)
        add_candidate(conductor, c, sum, drop);
      mip_.add_row(sum, 0, 0);
      mip_.add_row(drop, 0, 0);
    }
  }

  void add_candidate(const Conductor& conductor, std::size_t c, std::vector<Term>& sum,
                     std::vector<Term>& drop) {
    const int taken = taken_[at(conductor.run)][c];
    const double ampacity = std::min(space_.runs[at(conductor.run)].candidates[c].ampacity, most_amperes_);
    double cold = 0, warm = 0;
    for (const ElementValue& value : case_.values[at(conductor.run)][c]) {
      if (std::find(conductor.elements.begin(), conductor.elements.end(), value.element) ==
          conductor.elements.end())
        continue;
      cold += value.at(0);
      warm += value.at(ampacity);
    }
    const int amperes = mip_.add_continuous(-ampacity, ampacity);
    mip_.add_row({{amperes, 1}, {taken, -ampacity}}, -kInfinity, 0);
    mip_.add_row({{amperes, 1}, {taken, ampacity}}, 0, kInfinity);
    sum.push_back({amperes, 1});
    drop.push_back({amperes, -cold});
    if (warm <= cold) return;
    // |r(i) i − cold i| ≤ (warm − cold) · ampacity: the band of a warm wire.
    const double band = (warm - cold) * ampacity;
    const int extra = mip_.add_continuous(-band, band);
    mip_.add_row({{extra, 1}, {taken, -band}}, -kInfinity, 0);
    mip_.add_row({{extra, 1}, {taken, band}}, 0, kInfinity);
    drop.push_back({extra, -1});
  }

  // --- all other elements
  // --------------------------------------------------------------------------------------

  void add_element(int e) {
    const auto& element = network_.elements[at(e)];
    const bool one_way =
        element.role == Role::charger || element.role == Role::isolator || element.role == Role::load;
    const int amperes = mip_.add_continuous(one_way ? 0 : -most_amperes_, most_amperes_);
    amperes_[at(e)] = amperes;
    switch (element.role) {
      case Role::battery:
        flow(amperes, element.to, element.from);
        add_battery(element, amperes);
        break;
      case Role::charger:
        flow(amperes, element.to, element.from);
        add_charger(element, amperes);
        break;
      case Role::isolator:
        flow(amperes, element.from, element.to);
        add_isolator(element, amperes);
        break;
      case Role::load:
        flow(amperes, element.from, element.to);
        add_load(element, amperes);
        break;
      default:
        flow(amperes, element.from, element.to);
        add_resistor(e, amperes);
    }
  }

  void add_resistor(int e, int amperes) {
    const auto& element = network_.elements[at(e)];
    const ElementValue value = value_of(network_, e);
    const double most = value.rated > 0 ? std::min(3 * value.rated, most_amperes_) : most_amperes_;
    const double cold = value.at(0);
    const double band = (value.at(most) - cold) * most;
    auto row = across(element.from, element.to);
    row.push_back({amperes, -cold});
    mip_.add_row(row, -band, band);
  }

  void add_battery(const network::Element& element, int amperes) {
    auto row = across(element.from, element.to);
    row.push_back({amperes, element.resistance.si()});
    mip_.add_row(row, element.voltage.si(), element.voltage.si());
  }

  /// Delivers nothing, or holds its set point, or delivers its limit.
  void add_charger(const network::Element& element, int amperes) {
    const double limit = element.limit.si(), volts = element.voltage.si(), far = 2 * most_volts_;
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
    const double far = 2 * most_volts_ + most_amperes_ * element.resistance.si();
    const int conducts = mip_.add_binary(0);
    mip_.add_row({{amperes, 1}, {conducts, -most_amperes_}}, -kInfinity, 0);
    auto row = across(element.from, element.to);
    row.push_back({amperes, -element.resistance.si()});
    mip_.add_row(row, -kInfinity, element.voltage.si());
    row.push_back({conducts, -far});
    mip_.add_row(row, element.voltage.si() - far, kInfinity);
  }

  void add_load(const network::Element& element, int amperes) {
    if (const auto* given = std::get_if<units::Current>(&*element.takes); given && element.partner < 0) {
      mip_.fix(amperes, given->si());
    } else if (const auto* ohms = std::get_if<units::Resistance>(&*element.takes);
               ohms && element.partner < 0) {
      auto row = across(element.from, element.to);
      row.push_back({amperes, -ohms->si()});
      mip_.add_row(row, 0, 0);
    } else if (element.partner < 0) {
      add_power(element, amperes,
                std::get<units::Power>(*element.takes).si() / element.efficiency + element.idle.si());
    } else {
      add_converter(element, amperes);
    }
  }

  /// i ≥ tangents of P / V, i ≤ its chord between half the nominal voltage and the highest there is.
  void add_power(const network::Element& element, int amperes, double watts) {
    const double low = least_volts(element), high = most_volts_;
    auto floor_row = across(element.from, element.to);
    mip_.add_row(floor_row, low, kInfinity);
    constexpr int tangents = 16;
    for (int k = 0; k <= tangents; ++k) {
      const double v = low + (high - low) * k / tangents;
      auto row = across(element.from, element.to, watts / (v * v));
      row.push_back({amperes, 1});
      mip_.add_row(row, 2 * watts / v, kInfinity);
    }
    auto chord = across(element.from, element.to, watts / (low * high));
    chord.push_back({amperes, 1});
    mip_.add_row(chord, -kInfinity, watts / low + watts / high);
  }

  /// The input of a converter: at least its idle power, at most what its output can pass.
  void add_converter(const network::Element& element, int amperes) {
    const auto& output = network_.elements[at(element.partner)];
    const double most = output.voltage.si() * output.limit.si() / element.efficiency + element.idle.si();
    mip_.add_row({{amperes, 1}}, element.idle.si() / most_volts_, most / least_volts(element));
  }

  // --- limits
  // --------------------------------------------------------------------------------------------------

  void add_limits() {
    for (const solve::LoadResult& result : probe_.loads) {
      const auto& load = network_.elements[at(result.element)];
      if (!load.active || !load.drop_limit || !load.nominal || result.supply < 0) continue;
      std::vector<const std::vector<int>*> possible;
      for (const auto& supply : probe_.supplies)
        if (supply.island == island_of(result.supply)) possible.push_back(&supply.elements);
      add_limit(load, load.drop_limit->of_one() * load.nominal->si(), possible);
    }
  }

  [[nodiscard]] int island_of(int first_element) const {
    for (const auto& supply : probe_.supplies)
      if (supply.elements.front() == first_element) return supply.island;
    return -1;
  }

  void add_limit(const network::Element& load, double limit,
                 const std::vector<const std::vector<int>*>& supplies) {
    std::vector<Term> one_of;
    for (const auto* supply : supplies) {
      auto row = across(load.from, load.to);
      for (const int s : *supply) {
        const auto terms = across(network_.elements[at(s)].from, network_.elements[at(s)].to, -1);
        row.insert(row.end(), terms.begin(), terms.end());
      }
      merge(row);
      const double far = 2 * most_volts_;
      if (supplies.size() > 1) {
        const int chosen = mip_.add_binary(0);
        one_of.push_back({chosen, 1});
        row.push_back({chosen, -far});
        mip_.add_row(row, -limit - far, kInfinity);
      } else {
        mip_.add_row(row, -limit, kInfinity);
      }
    }
    if (!one_of.empty()) mip_.add_row(one_of, 1, 1);
  }

  /// One term a column: the library refuses doubles.
  static void merge(std::vector<Term>& terms) {
    std::stable_sort(terms.begin(), terms.end(),
                     [](const Term& a, const Term& b) { return a.column < b.column; });
    std::vector<Term> merged;
    for (const Term& term : terms) {
      if (!merged.empty() && merged.back().column == term.column)
        merged.back().factor += term.factor;
      else
        merged.push_back(term);
    }
    std::erase_if(merged, [](const Term& t) { return t.factor == 0; });
    terms = std::move(merged);
  }

  void add_devices() {
    std::vector<int> place(space_.system.runs.size(), -1);
    for (std::size_t k = 0; k < space_.runs.size(); ++k) place[space_.runs[k].run] = static_cast<int>(k);
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
        const auto above = std::upper_bound(ladder.begin(), ladder.end(),
                                            space_.runs[run].candidates[c].ampacity * (1 + 1e-9));
        const double most = above == ladder.begin() ? 0 : *std::prev(above) / 1.25;
        row.push_back({taken_[run][c], -most});
      }
      mip_.add_row(row, -kInfinity, 0);
    }
  }

  Mip& mip_;
  const DesignSpace& space_;
  const CaseSpace& case_;
  const network::Network& network_;
  const Guards& guards_;
  const solve::CaseSolution& probe_;
  const std::vector<std::vector<int>>& taken_;
  double most_volts_ = 0, most_amperes_ = 0;
  std::vector<int> volts_, amperes_;
  std::vector<std::vector<Term>> current_law_;
};

}  // namespace

void add_flow_rows(Mip& mip, const DesignSpace& space, const CaseSpace& in_case, const Guards& guards,
                   const solve::CaseSolution& probe, const std::vector<std::vector<int>>& taken) {
  FlowRows(mip, space, in_case, guards, probe, taken).add();
}

}  // namespace ohmtrail::plan
