#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "ohmtrail/units/quantity.hpp"

namespace ohmtrail::cli {

/// The largest file that is read.
inline constexpr std::size_t largest_file = std::size_t{64} << 20;

/// Whether a file that was read in this run may be replaced.
enum class Overwrite { never_an_input, also_an_input };

/// The door to the disk. `read` and `write` return the reason, in words, where they fail.
class Files {
 public:
  virtual ~Files() = default;
  /// The whole content of `path`; "-" is standard input. Refuses more than `largest_file` bytes.
  virtual tl::expected<std::string, std::string> read(const std::string& path) = 0;
  /// How long ago `path` was written; 0 where that is not known.
  [[nodiscard]] virtual units::Time age(const std::string& path) const = 0;
  /// Makes `path` hold exactly `bytes`, or leaves it as it was.
  virtual tl::expected<void, std::string> write(const std::string& path, std::string_view bytes,
                                                Overwrite over = Overwrite::never_an_input) = 0;
};

}  // namespace ohmtrail::cli
