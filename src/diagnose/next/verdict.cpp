#include "diagnose/next/verdict.hpp"

#include <algorithm>

#include "diagnose/next/settled.hpp"

namespace ohmtrail::diagnose::next {
namespace {

constexpr double not_in_doubt = 0.30;  // a second repair below this is left to the next survey
constexpr double explained = 1e-4;     // p-value of the fit

bool is_sure(const RepairChance& repair) {
  return repair.probability >= sure_enough;
}

// Nothing but the lead is in doubt, and the readings agree with what is believed.
bool sag_explained(const NextResult& out) {
  const bool others = std::all_of(out.repairs.begin() + 1, out.repairs.end(), [](const RepairChance& r) {
    return r.probability <= not_in_doubt || is_sure(r);
  });
  return others && (out.inference.fit.degrees_of_freedom == 0 || out.inference.fit.p_value > explained);
}

double most_bits(const Weighed& weighed, const NextResult& out) {
  double most = weighed.best_bits;
  for (const NextOption& option : out.options) most = std::max(most, option.gain_bits);
  return most;
}

// What is sure needs no opening any more. A lone suspect that was read across is told as such instead.
bool nothing_worth_taking(const Weighed& weighed, const NextResult& out) {
  const Fit& fit = out.inference.fit;
  const bool fits = fit.degrees_of_freedom > 0 && fit.p_value > explained;
  const bool lone = weighed.opening_done && sag_explained(out);
  return fits && !lone && most_bits(weighed, out) < worth_taking;
}

// What is sure, and whether that was read across.
std::string found_in_words(const std::vector<RepairChance>& repairs) {
  std::string sure;
  bool read = true;
  std::size_t count = 0;
  for (; count < repairs.size() && is_sure(repairs[count]); ++count) {
    sure += (count == 0 ? "" : ", ") + repairs[count].words;
    read = read && repairs[count].read_across;
  }
  if (count > 1)
    return "Sure to be faulty: " + sure + (read ? ". Each was read across." : "; not each was read across.");
  return "It is " + sure +
         (read ? ": read across it, and it explains the sag." : "; it was not read across to confirm it.");
}

std::string suspects(const std::vector<RepairChance>& repairs) {
  std::string out;
  for (std::size_t k = 0; k < std::min<std::size_t>(3, repairs.size()); ++k) {
    if (k == 0 || repairs[k].probability > 0.05) out += (k == 0 ? "" : ", ") + repairs[k].words;
  }
  return out;
}

void stop(NextResult& out, Verdict verdict, std::string text) {
  out.verdict = verdict;
  out.verdict_text = std::move(text);
}

void settle(const Weighed& weighed, NextResult& out) {
  std::string text = settled_in_words(out, most_bits(weighed, out));
  out.options.clear();
  stop(out, sag_explained(out) ? Verdict::found : Verdict::cannot_separate, std::move(text));
}

}  // namespace

void judge(const Weighed& weighed, NextResult& out) {
  if (out.repairs.empty())
    return stop(out, Verdict::sound, "There is nothing in this file that could be faulty.");
  const bool sure = is_sure(out.repairs.front());
  if (sure && !weighed.confirming && nothing_worth_taking(weighed, out)) return settle(weighed, out);
  if (!weighed.opening_done) return;
  if (sure && !weighed.confirming && sag_explained(out))
    return stop(out, Verdict::found, found_in_words(out.repairs));
  if (out.nothing_faulty >= sure_enough)
    return stop(out, Verdict::sound, "Nothing is faulty, as far as these loads can show.");
  if (weighed.best_bits < worth_taking && !weighed.confirming)
    stop(out, Verdict::cannot_separate,
         "This meter cannot tell the remaining suspects apart at this load: " + suspects(out.repairs) +
             ". Load it harder, or take it apart and read each piece.");
}

}  // namespace ohmtrail::diagnose::next
