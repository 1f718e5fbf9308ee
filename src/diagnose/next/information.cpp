#include "diagnose/next/information.hpp"

#include <Eigen/Core>
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <span>

namespace ohmtrail::diagnose::next {
namespace {

struct Node {
  double at, weight;
};

// Gauss–Hermite for the standard normal: nodes √2 x_k, weights w_k / √π of Abramowitz & Stegun, table 25.10.
constexpr std::array<Node, 2> two{{{-1, 0.5}, {1, 0.5}}};
constexpr std::array<Node, 3> three{
    {{-1.7320508075688772, 1.0 / 6}, {0, 2.0 / 3}, {1.7320508075688772, 1.0 / 6}}};
constexpr std::array<Node, 7> seven{{{-3.750439717725742, 0.000548268855972218},
                                     {-2.366759410734541, 0.030757123967586497},
                                     {-1.154405394739968, 0.24012317860501272},
                                     {0, 0.45714285714285713},
                                     {1.154405394739968, 0.24012317860501272},
                                     {2.366759410734541, 0.030757123967586497},
                                     {3.750439717725742, 0.000548268855972218}}};

std::span<const Node> nodes_of(int count) {
  if (count <= 2) return two;
  return count == 3 ? std::span<const Node>(three) : std::span<const Node>(seven);
}

// The mixture in columns, so that its density is summed by vector instructions.
struct Columns {
  Eigen::ArrayXf mean, inverse_sd, height, label_share;
  Eigen::ArrayXi label;
  std::vector<float> share;  // per dense label

  explicit Columns(const std::vector<Forecast>& all) {
    const auto n = static_cast<Eigen::Index>(all.size());
    mean.resize(n), inverse_sd.resize(n), height.resize(n), label.resize(n);
    std::map<int, int> dense;
    double total = 0;
    for (const Forecast& one : all) total += one.weight;
    const double shift = all.empty() ? 0 : all.front().mean;  // floats: keep what differs
    for (Eigen::Index k = 0; k < n; ++k) {
      const Forecast& one = all[static_cast<std::size_t>(k)];
      mean[k] = static_cast<float>(one.mean - shift);
      inverse_sd[k] = static_cast<float>(1 / one.sd);
      height[k] = static_cast<float>(one.weight / total / one.sd);
      label[k] = dense.emplace(one.label, static_cast<int>(dense.size())).first->second;
      share.resize(dense.size());
      share[static_cast<std::size_t>(label[k])] += static_cast<float>(one.weight / total);
    }
  }
};

// Both as one normal of the same mean and variance.
Forecast joined(const Forecast& a, const Forecast& b) {
  Forecast out = a;
  out.weight = a.weight + b.weight;
  const double share = b.weight / out.weight, apart = b.mean - a.mean;
  out.mean = a.mean + share * apart;
  out.sd = std::sqrt((1 - share) * a.sd * a.sd + share * b.sd * b.sd + share * (1 - share) * apart * apart);
  return out;
}

}  // namespace

std::vector<Forecast> condensed(const std::vector<Forecast>& forecasts) {
  constexpr double close = 0.5;
  std::vector<Forecast> out;
  std::vector<int> latest;  // per label, its last part; −1: none yet
  for (const Forecast& one : forecasts) {
    const auto label = static_cast<std::size_t>(one.label);
    if (label >= latest.size()) latest.resize(label + 1, -1);
    Forecast* part = latest[label] < 0 ? nullptr : &out[static_cast<std::size_t>(latest[label])];
    if (part != nullptr && std::abs(one.mean - part->mean) < close * std::min(one.sd, part->sd)) {
      *part = joined(*part, one);
      continue;
    }
    latest[label] = static_cast<int>(out.size());
    out.push_back(one);
  }
  return out;
}

double information(const std::vector<Forecast>& forecasts, int nodes) {
  const Columns c(forecasts);
  if (c.share.size() < 2) return 0;
  Eigen::ArrayXf density;
  double bits = 0;
  for (Eigen::Index k = 0; k < c.mean.size(); ++k) {
    const float weight = c.height[k] / c.inverse_sd[k];
    for (const Node& node : nodes_of(nodes)) {
      const float y = c.mean[k] + static_cast<float>(node.at) / c.inverse_sd[k];
      density = c.height * (-0.5F * ((y - c.mean) * c.inverse_sd).square()).exp();
      const float all = density.sum();
      const float own = (c.label == c.label[k]).select(density, 0.0F).sum();
      const float share = c.share[static_cast<std::size_t>(c.label[k])];
      if (own > 0)
        bits +=
            node.weight * static_cast<double>(weight) * static_cast<double>(std::log2(own / (all * share)));
    }
  }
  return std::max(0.0, bits);
}

double entropy(const std::vector<Forecast>& forecasts) {
  const Columns c(forecasts);
  double bits = 0;
  for (const float share : c.share) {
    bits -= share > 0 ? static_cast<double>(share * std::log2(share)) : 0;
  }
  return std::max(0.0, bits);
}

double parting(std::vector<Forecast> forecasts) {
  std::stable_sort(forecasts.begin(), forecasts.end(),
                   [](const Forecast& a, const Forecast& b) { return a.mean < b.mean; });
  double total = 0, below = 0, best = -1, at = forecasts.empty() ? 0 : forecasts.front().mean;
  for (const Forecast& one : forecasts) total += one.weight;
  for (std::size_t k = 0; k + 1 < forecasts.size(); ++k) {
    const Forecast &low = forecasts[k], &high = forecasts[k + 1];
    below += low.weight / total;
    const double share = std::clamp(below, 1e-12, 1 - 1e-12);
    const double classes = -share * std::log2(share) - (1 - share) * std::log2(1 - share);
    const double apart = (high.mean - low.mean) / (low.sd + high.sd);
    const double clear = classes * (1 - std::exp(-0.5 * apart * apart));
    if (clear > best) {
      best = clear;
      at = (low.mean * high.sd + high.mean * low.sd) / (low.sd + high.sd);
    }
  }
  return at;
}

}  // namespace ohmtrail::diagnose::next
