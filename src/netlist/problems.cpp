#include "netlist/problems.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace ohmtrail::netlist {

void Problems::missing(Value object, std::string_view key, Remark remark) {
  add(Problem::Severity::error, object, Spot::missing_key, std::move(remark), key);
}

void Problems::add(Problem::Severity severity, Value at, Spot spot, Remark remark,
                   std::string_view missing_key) {
  const bool is_error = severity == Problem::Severity::error;
  ++(is_error ? errors_ : warnings_);
  if (!listing()) return;
  found_.push_back({severity, at, spot, std::string(missing_key), std::move(remark)});
}

std::vector<Problem> Problems::listed(Problem::Severity severity) const {
  std::vector<const Found*> chosen;
  for (const Found& found : found_) {
    if (found.severity == severity) chosen.push_back(&found);
  }
  std::stable_sort(chosen.begin(), chosen.end(),
                   [](const Found* a, const Found* b) { return a->offset() < b->offset(); });
  if (chosen.size() > most_listed) chosen.resize(most_listed);

  std::vector<Problem> problems;
  LineCounter lines(tree_.text());
  for (const Found* found : chosen) {
    problems.push_back(placed(*found));
    const LineColumn place = lines.at(found->offset());
    problems.back().line = place.line;
    problems.back().column = place.column;
  }
  const std::size_t total = severity == Problem::Severity::error ? errors_ : warnings_;
  if (total > problems.size()) {
    const std::string rest = fmt::format("and {} more", total - problems.size());
    problems.push_back({severity, "and-more", "", 0, 0, rest, "", "mend these first"});
  }
  return problems;
}

Problem Problems::placed(const Found& found) const {
  std::string pointer = found.at.pointer();
  if (found.spot == Spot::missing_key) pointer += "/" + pointer_step(found.missing_key);
  const Remark& remark = found.remark;
  return {found.severity, std::string(remark.name), std::move(pointer), 0, 0,
          remark.text,    remark.expected,          remark.hint};
}

LineColumn LineCounter::at(std::uint32_t offset) {
  const std::size_t end = std::min<std::size_t>(offset, text_.size());
  for (; counted_to_ < end; ++counted_to_) {
    const auto c = static_cast<unsigned char>(text_[counted_to_]);
    if (c == '\n') {
      ++place_.line;
      place_.column = 1;
    } else if ((c & 0xC0U) != 0x80U) {
      ++place_.column;
    }
  }
  return place_;
}

LineColumn line_column(std::string_view text, std::uint32_t offset) {
  return LineCounter(text).at(offset);
}

std::string shown(std::string_view text) {
  constexpr std::size_t longest = 40;
  std::string cut;
  std::size_t characters = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    if ((c & 0xC0U) != 0x80U && ++characters > longest) {
      cut += "…";
      return cut;
    }
    cut += c < 0x20 || c == 0x7f ? ' ' : text[i];
  }
  return cut;
}

std::string shown(Value value) {
  if (value.is(Kind::object)) return value.count() == 0 ? "{}" : "an object {…}";
  if (value.is(Kind::array)) return value.count() == 0 ? "[]" : "a list […]";
  return shown(value.source());
}

}  // namespace ohmtrail::netlist
