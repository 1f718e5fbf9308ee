#pragma once
#include <limits>
#include <string_view>

namespace ohmtrail::cli {

/// One option or positional argument, described once: parser, help and checks come from this record.
struct Option {
  std::string_view name;        ///< "--top"; "-o,--output"; positional: "FILE"
  std::string_view value = {};  ///< what follows it, as the help shows it; words parted by | are the only
                                ///< ones allowed; empty: a switch
  std::string_view sentence;    ///< for the help
  int values = 1;               ///< how many follow
  bool repeats = false;         ///< may be given several times
  bool required = false;
  bool number = false;
  bool whole = false;  ///< a number without a fraction
  double lowest = -std::numeric_limits<double>::infinity();
  double highest = std::numeric_limits<double>::infinity();
  std::string_view excludes = {};  ///< the option it cannot stand beside

  [[nodiscard]] constexpr bool positional() const { return !name.starts_with('-'); }
  [[nodiscard]] constexpr bool is_switch() const { return value.empty() && !positional(); }
  [[nodiscard]] constexpr bool has_choices() const { return value.find('|') != std::string_view::npos; }
};

/// Options that several commands share.
namespace options {

inline constexpr Option file{
    .name = "FILE", .sentence = "the netlist (JSON); - reads standard input", .required = true};
inline constexpr Option json{.name = "--json", .sentence = "the complete result for programs, in SI units"};
inline constexpr Option csv{
    .name = "--csv", .sentence = "the table for a spreadsheet, in SI units", .excludes = "--json"};
inline constexpr Option strict{.name = "--strict", .sentence = "exit 1 when a limit is broken"};
inline constexpr Option in_case{
    .name = "--case", .value = "NAME", .sentence = "this case only (default: every case)"};
inline constexpr Option as_rated{.name = "--as-rated", .sentence = "leave the readings out"};
inline constexpr Option jobs{
    .name = "--jobs",
    .value = "N",
    .sentence = "work on N cases at a time (default: one a processor); the result is the same",
    .number = true,
    .whole = true,
    .lowest = 1,
    .highest = 1000};
inline constexpr Option output{.name = "-o,--output", .value = "OUT", .sentence = "the file to write"};

}  // namespace options
}  // namespace ohmtrail::cli
