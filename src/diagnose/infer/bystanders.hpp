#pragma once
#include "diagnose/infer/screen.hpp"

/// Unknowns and readings whose change explains nothing: each keeps its own chance, as a factor.
namespace ohmtrail::diagnose::inference {

/// Bayes factor above which a change is said to explain something.
inline constexpr double explains = 1.5;

/// ln of the Bayes factor of a move: its odds over the odds before any reading.
[[nodiscard]] double log_bayes_factor(const Model& model, const Screen& screen, const Hypothesis& from,
                                      const Move& move);

/// Whether the coordinate belongs to such a set of unknowns and readings.
[[nodiscard]] bool contains(const Hypothesis& set, const Screen& screen, int coordinate);

/// ln of the odds of a bystander's change. By its name it explains nothing: what a strained screen says
/// beyond that is cut.
[[nodiscard]] double log_bystander_odds(const Model& model, const Screen& screen, const Hypothesis& from,
                                        const Move& move);

/// ln Π (1 + odds) over the coordinates that are neither in the core nor in the hypothesis `from`.
[[nodiscard]] double log_bystanders(const Model& model, const Screen& screen, const Hypothesis& from,
                                    const std::vector<Move>& moves, const Hypothesis& core);

}  // namespace ohmtrail::diagnose::inference
