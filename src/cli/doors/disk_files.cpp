#include "cli/doors/disk_files.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <ctime>

#include "cli/doors/whole_write.hpp"

namespace ohmtrail::cli {
namespace {

using Content = tl::expected<std::string, std::string>;

tl::unexpected<std::string> unreadable() {
  return tl::unexpected(std::string("cannot be read: ") + std::strerror(errno));
}

std::string too_large(const std::string& size) {
  return fmt::format("has {}; at most {} MiB are read", size, largest_file >> 20);
}

/// Reads to the end, or to one byte more than is allowed.
Content read_all(int file) {
  std::string content;
  std::array<char, 1 << 16> block;
  for (;;) {
    const ssize_t got = ::read(file, block.data(), block.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return unreadable();
    if (got == 0) return content;
    content.append(block.data(), static_cast<std::size_t>(got));
    if (content.size() > largest_file) return tl::unexpected(too_large("more than that"));
  }
}

Content read_checked(int file, const struct stat& what) {
  if (S_ISDIR(what.st_mode)) return tl::unexpected(std::string("is a folder, not a file"));
  if (S_ISREG(what.st_mode) && what.st_size > static_cast<off_t>(largest_file))
    return tl::unexpected(
        too_large(fmt::format("{:.1f} MiB", static_cast<double>(what.st_size) / (1 << 20))));
  return read_all(file);
}

}  // namespace

Content DiskFiles::read(const std::string& path) {
  const bool standard_input = path == "-";
  const int file = standard_input ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return unreadable();
  struct stat what {};
  Content content = ::fstat(file, &what) == 0 ? read_checked(file, what) : Content(unreadable());
  if (S_ISREG(what.st_mode)) inputs_.emplace_back(what.st_dev, what.st_ino);
  if (!standard_input) ::close(file);
  return content;
}

units::Time DiskFiles::age(const std::string& path) const {
  struct stat there {};
  if (::stat(path.c_str(), &there) != 0) return {};
  return units::Time{std::max(0.0, std::difftime(std::time(nullptr), there.st_mtime))};
}

bool DiskFiles::was_read(const std::string& path) const {
  struct stat there {};
  if (::stat(path.c_str(), &there) != 0) return false;
  return std::find(inputs_.begin(), inputs_.end(), std::pair(there.st_dev, there.st_ino)) != inputs_.end();
}

tl::expected<void, std::string> DiskFiles::write(const std::string& path, std::string_view bytes,
                                                 Overwrite over) {
  if (over == Overwrite::never_an_input && was_read(path))
    return tl::unexpected(std::string("is the file that was read; choose another name"));
  return write_whole(disk_, path, bytes);
}

}  // namespace ohmtrail::cli
