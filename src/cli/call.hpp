#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cli/option.hpp"

namespace ohmtrail::cli {

/// What was given for each option of one command, already checked against its record.
class Call {
 public:
  void give(const Option& option, std::vector<std::string> values);

  [[nodiscard]] bool has(const Option& option) const;
  /// The value given, or the first of several; `otherwise` when the option was not given.
  [[nodiscard]] std::string text(const Option& option, const std::string& otherwise = "") const;
  [[nodiscard]] std::vector<std::string> texts(const Option& option) const;
  [[nodiscard]] std::optional<double> number(const Option& option) const;

 private:
  std::map<std::string, std::vector<std::string>, std::less<>> given_;
};

}  // namespace ohmtrail::cli
