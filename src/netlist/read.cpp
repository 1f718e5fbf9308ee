#include "ohmtrail/netlist/read.hpp"

#include <fmt/format.h>

#include "netlist/parse.hpp"
#include "netlist/sections.hpp"
#include "netlist/validate.hpp"

namespace ohmtrail::netlist {

namespace {

Problem located(const SyntaxError& error, std::string_view text) {
  const LineColumn place = line_column(text, error.offset);
  return {Problem::Severity::error, error.name, error.pointer, place.line, place.column, error.text,
          error.expected,           error.hint};
}

}  // namespace

Problem too_large(std::size_t bytes) {
  return {Problem::Severity::error,
          "file-too-large",
          "",
          1,
          1,
          fmt::format("the file has {} bytes", bytes),
          fmt::format("at most {} (64 MiB)", largest_file_bytes),
          ""};
}

tl::expected<ReadSystem, std::vector<Problem>> read(std::string_view json) {
  if (json.size() > largest_file_bytes) return tl::unexpected(std::vector{too_large(json.size())});
  const auto tree = parse(json);
  if (!tree) return tl::unexpected(std::vector{located(tree.error(), json)});

  Problems problems(*tree);
  Reader reader{*tree, problems};
  ReadSystem result;
  Object<System>::read(reader, tree->root(), result.system);
  if (tree->root().is(Kind::object)) validate(reader, tree->root(), result.system);
  if (problems.any_error()) return tl::unexpected(problems.errors());
  result.warnings = problems.warnings();
  return result;
}

}  // namespace ohmtrail::netlist
