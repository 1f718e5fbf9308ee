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
  int barrels = 0;   ///< probes that must reach the conductor behind a lug
  bool tools = false, switching = false;

  [[nodiscard]] static Candidate volts(std::size_t view, std::size_t red, std::size_t black) {
    Candidate out;
    out.view = view;
    out.red = red;
    out.black = black;
    return out;
  }
  [[nodiscard]] static Candidate amps(std::size_t view, std::size_t branch) {
    Candidate out;
    out.view = view;
    out.clamp = true;
    out.branch = branch;
    return out;
  }
};

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
