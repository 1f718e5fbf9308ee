#pragma once
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "cli/doors/disk.hpp"

namespace ohmtrail::cli {

/// Makes `path` hold exactly `bytes`, or leaves it as it was and returns the reason in words.
/// Regular files: a temporary file in the same folder, fsync, rename; an existing file keeps its permissions,
/// a symbolic link stays one and its target is replaced. Devices and pipes are written to as they are.
[[nodiscard]] tl::expected<void, std::string> write_whole(Disk& disk, const std::string& path,
                                                          std::string_view bytes);

}  // namespace ohmtrail::cli
