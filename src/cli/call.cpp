#include "cli/call.hpp"

#include <charconv>
#include <utility>

namespace ohmtrail::cli {

void Call::give(const Option& option, std::vector<std::string> values) {
  given_[std::string(option.name)] = std::move(values);
}

bool Call::has(const Option& option) const {
  return given_.contains(option.name);
}

std::string Call::text(const Option& option, const std::string& otherwise) const {
  const auto found = given_.find(option.name);
  return found == given_.end() || found->second.empty() ? otherwise : found->second.front();
}

std::vector<std::string> Call::texts(const Option& option) const {
  const auto found = given_.find(option.name);
  return found == given_.end() ? std::vector<std::string>{} : found->second;
}

std::optional<double> Call::number(const Option& option) const {
  const std::string value = text(option);
  double number = 0;
  const auto [end, error] = std::from_chars(value.data(), value.data() + value.size(), number);
  if (error != std::errc{} || end != value.data() + value.size()) return std::nullopt;
  return number;
}

}  // namespace ohmtrail::cli
