#pragma once
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "cli/doors/doors.hpp"
#include "cli/exit.hpp"
#include "ohmtrail/diagnose/trace.hpp"

namespace ohmtrail::cli {

/// The file that a guided search keeps its readings in: always whole, never ahead of what was saved.
class TraceFile {
 public:
  /// Reads `path`; readings go there, or to `output` where it is named, which is gone on with where it
  /// exists.
  [[nodiscard]] static tl::expected<TraceFile, Exit> open(const std::string& path, const std::string& output,
                                                          const Doors& doors);
  /// Writes a new file.
  [[nodiscard]] static tl::expected<TraceFile, Exit> create(const std::string& path, std::string text,
                                                            const Doors& doors);

  [[nodiscard]] const netlist::System& system() const { return system_; }
  [[nodiscard]] const std::string& path() const { return path_; }
  /// How long ago the file was written when it was opened; 0 for a new one.
  [[nodiscard]] units::Time idle() const { return idle_; }
  /// Saves the change, or leaves file and system as they were and says why.
  [[nodiscard]] tl::expected<void, std::string> apply(const diagnose::TraceChange& change);

 private:
  TraceFile(std::string path, std::string text, netlist::System system, const Doors& doors)
      : path_(std::move(path)), text_(std::move(text)), system_(std::move(system)), doors_(&doors) {}
  [[nodiscard]] tl::expected<void, std::string> keep(std::string text);

  std::string path_, text_;
  netlist::System system_;
  units::Time idle_;
  const Doors* doors_;
};

}  // namespace ohmtrail::cli
