#include "diagnose/infer/describe.hpp"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <limits>

#include "diagnose/infer/forward.hpp"
#include "diagnose/infer/together.hpp"

namespace ohmtrail::diagnose::inference {
namespace {

constexpr double lower_share = 0.05, upper_share = 0.95;
constexpr double not_known = std::numeric_limits<double>::quiet_NaN();

struct Range {
  double value, low, high;
};

// The value is that of the most probable explanation, and not the median: only values of one explanation add
// up to what was read. Where two lugs share the odds of a fault, both medians are sound.
Range range_of(const Posterior& posterior, std::size_t p, double factor) {
  const Parameter& unknown = posterior.model().parameters[p];
  const auto bound = [&](double share) {
    return factor * unknown.value(posterior.marginal[p].quantile(share));
  };
  const double low = bound(lower_share), high = bound(upper_share);
  const double best =
      factor * unknown.value(posterior.components.front().optimum.x[static_cast<Eigen::Index>(p)]);
  return {std::clamp(best, low, high), low, high};
}

std::size_t slot(int index) {
  return static_cast<std::size_t>(index);
}

}  // namespace

std::vector<double> display_factors(const Survey& survey, const Optimum& best) {
  std::vector<double> out(survey.model.parameters.size(), 1.0), heaviest(out.size(), -1.0);
  Forward forward(survey.model);
  const Eigen::VectorXd values = values_at(survey.model, best.x);
  for (std::size_t k = 0; k < survey.model.cases.size(); ++k) {
    if (forward.solved_case(k, values) == nullptr) {
      continue;
    }
    for (const Placement& placement : survey.model.cases[k].placements) {
      const auto branch = slot(placement.branch), p = slot(placement.parameter);
      const double used = forward.solution(k).resistance[branch],
                   current = std::abs(forward.solution(k).current[branch]);
      const bool heats = survey.model.cases[k].circuit.branches[branch].heating.alpha > 0;
      if (!placement.on_size && heats && std::isfinite(used) && current > heaviest[p]) {
        heaviest[p] = current;
        out[p] = used / values[placement.parameter];
      }
    }
  }
  return out;
}

std::vector<InferredElement> describe_elements(const Posterior& posterior) {
  std::vector<InferredElement> out;
  for (const network::Element& element : posterior.survey.networks.front().elements) {
    const auto known = posterior.survey.element_parameter.find(element.id);
    const bool listed = element.role == network::Role::wire || element.role == network::Role::termination ||
                        element.role == network::Role::joint || element.role == network::Role::switchgear ||
                        element.role == network::Role::fuse;
    if (!listed) {
      continue;
    }
    InferredElement row;
    row.id = element.id;
    row.sound_resistance = element.sound ? element.sound->si() : not_known;
    if (known == posterior.survey.element_parameter.end()) {
      row.resistance = row.low = row.high = element.resistance.si();
      row.informed = false;
    } else {
      const std::size_t p = slot(known->second);
      const double factor = posterior.survey.display_factor[p];
      const Range range = range_of(posterior, p, factor);
      row.resistance = range.value;
      row.low = range.low;
      row.high = range.high;
      row.sound_resistance *= factor;
      row.fault_probability = to_a_millionth(posterior.fault[p]);
      row.informed = posterior.informed[p] != 0;
    }
    out.push_back(std::move(row));
  }
  return out;
}

std::vector<InferredBattery> describe_batteries(const Posterior& posterior) {
  std::vector<InferredBattery> out;
  for (const network::Element& element : posterior.survey.networks.front().elements) {
    if (element.role != network::Role::battery) {
      continue;
    }
    const std::size_t r = slot(posterior.survey.element_parameter.at(element.id));
    const std::size_t e = slot(posterior.survey.emf_parameter.at(element.id));
    const Range ohms = range_of(posterior, r, 1);
    const Range volts = range_of(posterior, e, 1);
    InferredBattery row;
    row.id = element.id;
    row.emf = volts.value;
    row.emf_low = volts.low;
    row.emf_high = volts.high;
    row.resistance = ohms.value;
    row.low = ohms.low;
    row.high = ohms.high;
    row.cell_missing_probability = to_a_millionth(posterior.fault[e]);
    // Two ways to fail that hardly ever meet: at least one of them.
    row.fault_probability = to_a_millionth(1 - (1 - posterior.fault[r]) * (1 - posterior.fault[e]));
    row.informed = posterior.informed[r] != 0 || posterior.informed[e] != 0;
    out.push_back(std::move(row));
  }
  return out;
}

std::vector<InferredLoad> describe_loads(const Posterior& posterior) {
  std::vector<InferredLoad> out;
  for (std::size_t p = 0; p < posterior.model().parameters.size(); ++p) {
    const Parameter& unknown = posterior.model().parameters[p];
    if (unknown.kind == Kind::load) {
      const Range range = range_of(posterior, p, 1 / unknown.centre);
      out.push_back({unknown.id, posterior.model().cases[slot(unknown.in_case)].name, range.value, range.low,
                     range.high});
    }
  }
  return out;
}

std::vector<Explanation> describe_explanations(const Posterior& posterior) {
  constexpr std::size_t most = 20;
  std::vector<Explanation> out;
  for (const Posterior::Alternative& alternative : posterior.alternatives) {
    if (out.size() == most) {
      break;
    }
    Explanation row;
    row.probability = alternative.share;
    for (const int p : alternative.hypothesis.faulty) {
      const std::string& id = posterior.model().parameters[slot(p)].id;
      if (row.faulty.empty() || row.faulty.back() != id) {
        row.faulty.push_back(id);
      }
    }
    for (const int o : alternative.hypothesis.wrong) {
      if (posterior.model().observations[slot(o)].reading >= 0) {
        row.wrong.push_back(slot(posterior.model().observations[slot(o)].reading));
      }
    }
    out.push_back(std::move(row));
  }
  return out;
}

Fit describe_fit(const Posterior& posterior) {
  const Optimum& best = posterior.components.front().optimum;
  Fit fit{best.fit.chi_square, best.counted, 1};
  if (best.counted > 0) {
    fit.p_value =
        boost::math::cdf(boost::math::complement(boost::math::chi_squared(best.counted), fit.chi_square));
  }
  return fit;
}

}  // namespace ohmtrail::diagnose::inference
