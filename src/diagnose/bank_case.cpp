#include <fmt/core.h>

#include <cctype>
#include <charconv>
#include <optional>
#include <string_view>

#include "diagnose/bank_evidence.hpp"
#include "ohmtrail/trade/battery_limits.hpp"

namespace ohmtrail::diagnose::bank {
namespace {

/// Years since 0 of "2023", "2023-02" or "2023-02-14"; empty: it is written in another way.
std::optional<double> years_of(std::string_view date) {
  int year = 0, month = 1;
  const auto* end = date.data() + date.size();
  const auto [after_year, bad_year] = std::from_chars(date.data(), end, year);
  if (bad_year != std::errc{} || after_year - date.data() != 4) return std::nullopt;
  if (after_year != end) {
    if (*after_year != '-') return std::nullopt;
    const auto [after_month, bad_month] = std::from_chars(after_year + 1, end, month);
    if (bad_month != std::errc{} || month < 1 || month > 12) return std::nullopt;
  }
  return year + (month - 1) / 12.0;
}

double usual_life(trade::Chemistry chemistry) {
  return chemistry == trade::Chemistry::lfp ? 10 : 5;
}

void judge_age(Evidence& evidence) {
  const auto made = years_of(evidence.battery->made);
  const auto today = years_of(evidence.info->job.date);
  if (!made || !today || *today < *made) return;
  const double age = *today - *made;
  const double life = usual_life(evidence.facts.chemistry);
  if (age < life) return;
  evidence.findings.push_back({"old", Severity::improvement,
                               fmt::format("made {}, {:.1f} years before this job; about {:.0f} is usual",
                                           evidence.battery->made, age, life),
                               common_practice, "Expect its end; do not pair a new battery with it."});
}

void judge_leakage(Evidence& evidence) {
  const auto& leak = evidence.battery->checks.top_leak;
  if (!leak || *leak <= trade::top_leak_limit) return;
  evidence.findings.push_back(
      {"leakage", Severity::soon,
       fmt::format("{:.2f} V from post to the top of the case: a film of acid drains it", leak->si()),
       common_practice,
       "With the caps shut wash the top with baking soda in water, rinse, dry, measure again."});
}

}  // namespace

void judge_case(Evidence& evidence) {
  judge_age(evidence);
  judge_leakage(evidence);
}

}  // namespace ohmtrail::diagnose::bank
