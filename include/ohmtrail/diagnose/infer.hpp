#pragma once
#include <memory>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "ohmtrail/netlist/system.hpp"
#include "ohmtrail/network/network.hpp"

/// True resistances and fault odds from a few noisy readings.
///
/// What "90 %" means: the truth lies inside in 90 of 100 systems whose resistances, faults and meters behave
/// as the priors say. It does not hold for a system that differs from its netlist (a cable that is not in it,
/// a wrong gauge).
namespace ohmtrail::diagnose {

/// A passive element. The resistances of all elements belong to one explanation, so that together they give
/// what was read; the intervals are over all explanations. In Ω at the temperature it had when it was read;
/// NaN where not known.
struct InferredElement {
  std::string id;
  double resistance = 0;     ///< by the most probable explanation, within the interval
  double low = 0, high = 0;  ///< 90 %
  double sound_resistance = 0;
  double fault_probability = 0;
  bool informed = true;  ///< some reading says something of it; otherwise this is the prior
};

/// A conductor of a run with its terminations, from stud to stud: what a cable and its lugs have together.
/// Often it is known where none of its parts is.
struct InferredConductor {
  std::string id;                  ///< of the run, or `RUN/return`
  std::vector<std::string> parts;  ///< element ids, in series
  double resistance = 0;           ///< Ω, median
  double low = 0, high = 0;        ///< Ω, 90 %
  double sound_resistance = 0;     ///< Ω
  double fault_probability = 0;    ///< at least one part faulty
  bool informed = true;
};

/// `the cable "M" with its lugs`, of a conductor's id.
[[nodiscard]] std::string conductor_in_words(const std::string& id);

struct InferredBattery {
  std::string id;
  double emf = 0, emf_low = 0, emf_high = 0;  ///< V, by the most probable explanation, and 90 %
  double resistance = 0, low = 0, high = 0;   ///< Ω, the same
  double fault_probability = 0;               ///< either kind of fault
  double cell_missing_probability = 0;        ///< one cell's voltage missing
  bool informed = true;
};

/// How large a load was in one case, as the readings tell.
struct InferredLoad {
  std::string id, in_case;
  double share = 1, low = 1,
         high = 1;  ///< of what the netlist says it takes: by the most probable explanation, and 90 %
};

/// What a doubtful reading may be instead.
enum class Slip { none, swapped_probes, wrong_unit, load_off, wrong_case };

struct InferredReading {
  std::size_t index = 0;  ///< in the netlist
  double predicted = 0;   ///< by the most probable hypothesis, in the reading's SI unit
  double measured = 0;
  double sigma = 0;       ///< standard deviation of the meter's error, all parts of it
  double residual = 0;    ///< measured − predicted
  double normalised = 0;  ///< residual over its own standard deviation when all other readings are believed
  double redundancy = 0;  ///< 0: nothing else checks it; 1: all others together know it better than it does
  bool critical = false;  ///< no test can find an error in it
  double wrong_probability = 0;
  bool suspect = false;
  double would_be = 0;  ///< what it would have to be, going by all others
  double would_be_sigma = 0;
  Slip slip = Slip::none;
  std::string slip_case;  ///< wrong_case: the one it fits
};

/// Elements that the readings know only together: the sum is sure, the split is not.
struct UnresolvedGroup {
  std::vector<std::string> ids;
  double sum = 0, low = 0,
         high = 0;               ///< Ω in series, median and 90 %; NaN where they are not simply in series
  double fault_probability = 0;  ///< at least one of them faulty
  std::vector<std::pair<std::string, std::string>>
      separate_at;  ///< pairs of points, a reading across each splits the group
};

struct Fit {
  double chi_square = 0;
  int degrees_of_freedom = 0;
  double p_value = 1;
};

/// One explanation of the readings.
struct Explanation {
  std::vector<std::string> faulty;  ///< ids; batteries once, whichever way they are faulty
  std::vector<std::size_t> wrong;   ///< readings
  double probability = 0;
};

struct InferResult {
  std::vector<InferredElement> elements;  ///< file order
  std::vector<InferredBattery> batteries;
  std::vector<InferredConductor> conductors;  ///< file order
  std::vector<InferredLoad> loads;
  std::vector<InferredReading> readings;
  std::vector<UnresolvedGroup> unresolved;
  std::vector<std::string> suspects;      ///< every element and battery, by falling fault probability
  std::vector<Explanation> explanations;  ///< most probable first
  Fit fit;
  /// At most this share of the probability is in explanations that were not weighed. It is found by
  /// experiment, not proved: those are at least two changes away from every one whose neighbours were
  /// weighed, a further change is taken to be as probable there as it was at the likeliest of those, and a
  /// thousandth is added for what no single change leads to. Against every subset of 240 small systems (seven
  /// possible faults, four readings) and searches of 1500 steps in 166 systems of 20 to 200 elements it was
  /// never exceeded.
  double left_out = 0;
  std::vector<network::Assumption> assumptions;  ///< what shaped it without being in the file

  /// The whole posterior, for what is computed from it next.
  std::shared_ptr<const struct Posterior> posterior;
};

/// Why nothing could be inferred.
struct InferFailure {
  std::string text, remedy;
};

struct InferOptions {
  bool faults = true;   ///< false: everything is taken as sound and every reading as right
  int expansions = 32;  ///< hypotheses whose neighbours are weighed
  int optimised = 8;    ///< hypotheses that get their own optimum through the real network
  /// Hypotheses that get their own optimum through the linearised network; empty: as many as take a few
  /// milliseconds.
  std::optional<int> own_optima = {};
};

/// Infers from the readings of `system`, which must have passed validation.
[[nodiscard]] tl::expected<InferResult, InferFailure> infer(const netlist::System& system,
                                                            const InferOptions& options = {});

}  // namespace ohmtrail::diagnose
