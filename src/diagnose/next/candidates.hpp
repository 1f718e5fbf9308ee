#pragma once
#include <vector>

#include "diagnose/next/case_view.hpp"
#include "ohmtrail/diagnose/next.hpp"

namespace ohmtrail::diagnose::next {

/// One reading that could be taken.
struct Candidate {
  std::size_t view = 0;  ///< index of its case's view
  bool clamp = false;
  std::size_t red = 0, black = 0;  ///< places in the view's points
  std::size_t branch = 0;          ///< place in the view's branches
  double bits = 0;
  double score = 0;
  double leads = 0;  ///< m
  bool tools = false, switching = false;
};

/// The points and branches that are looked at in one case, and whether some had to be left out.
struct Places {
  std::vector<int> points, branches;
  bool coarse = false;
};

/// Touchable points, the ends of suspects first where there are more than `most`; one wire of every stretch
/// without a branch for the clamp.
[[nodiscard]] Places places_to_touch(const netlist::System& system, const Posterior& posterior,
                                     const network::Network& network, std::size_t most);

/// Every reading of these views with its information and what it costs, best first. `present` is the case
/// that is switched on now (−1: none).
[[nodiscard]] std::vector<Candidate> weigh(const Outlook& outlook, const std::vector<CaseView>& views,
                                           int present);

[[nodiscard]] bool was_passed_over(const Outlook& outlook, const CaseView& view, const Candidate& candidate);

/// Whether the file holds this very reading already, or it was passed over.
[[nodiscard]] bool was_taken(const Outlook& outlook, const std::vector<CaseView>& views,
                             const Candidate& candidate);

/// Where the candidate is read, by names.
[[nodiscard]] ReadingPlace place_of(const Outlook& outlook, const CaseView& view, const Candidate& candidate);

[[nodiscard]] std::vector<Forecast> forecast(const Outlook& outlook, const std::vector<CaseView>& views,
                                             const Candidate& candidate);

}  // namespace ohmtrail::diagnose::next
