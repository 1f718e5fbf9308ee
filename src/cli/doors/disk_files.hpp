#pragma once
#include <sys/types.h>

#include <string>
#include <utility>
#include <vector>

#include "cli/doors/disk.hpp"
#include "cli/doors/files.hpp"

namespace ohmtrail::cli {

/// The real disk. Remembers which files were read, whatever name or link led to them.
class DiskFiles : public Files {
 public:
  explicit DiskFiles(Disk& disk) : disk_(disk) {}
  tl::expected<std::string, std::string> read(const std::string& path) override;
  tl::expected<void, std::string> write(const std::string& path, std::string_view bytes,
                                        Overwrite over) override;
  [[nodiscard]] units::Time age(const std::string& path) const override;

 private:
  [[nodiscard]] bool was_read(const std::string& path) const;

  Disk& disk_;
  std::vector<std::pair<dev_t, ino_t>> inputs_;
};

}  // namespace ohmtrail::cli
