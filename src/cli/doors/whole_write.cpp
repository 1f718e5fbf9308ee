#include "cli/doors/whole_write.hpp"

#include <sys/stat.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <system_error>

namespace ohmtrail::cli {
namespace {

using Outcome = tl::expected<void, std::string>;

Outcome failed(const char* step) {
  return tl::unexpected(std::string(step) + ": " + std::strerror(errno));
}

/// A file that was created but has not yet taken its place; removed unless it does.
class Temporary {
 public:
  Temporary(Disk& disk, const std::string& folder) : disk_(disk) {
    file_ = disk_.create(folder + "/.ohmtrail-", name_);
  }
  Temporary(const Temporary&) = delete;
  Temporary& operator=(const Temporary&) = delete;
  ~Temporary() {
    const int reason = errno;
    if (file_ >= 0) disk_.close(file_);
    if (created_and_unplaced()) disk_.remove(name_);
    errno = reason;
  }

  [[nodiscard]] bool exists() const { return file_ >= 0; }
  [[nodiscard]] int file() const { return file_; }
  int close() {
    const int result = disk_.close(file_);
    file_ = -1;
    closed_ = true;
    return result;
  }
  int take_place(const std::string& path) {
    const int result = disk_.rename(name_, path);
    placed_ = result == 0;
    return result;
  }

 private:
  [[nodiscard]] bool created_and_unplaced() const { return (file_ >= 0 || closed_) && !placed_; }

  Disk& disk_;
  std::string name_;
  int file_ = -1;
  bool closed_ = false, placed_ = false;
};

int write_all(Disk& disk, int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = disk.write(file, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return -1;
    if (written == 0) {
      errno = EIO;
      return -1;
    }
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

mode_t mode_of_new_files() {
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666 & ~mask;
}

Outcome write_in_place(Disk& disk, const std::string& path, std::string_view bytes) {
  const int file = disk.open_for_writing(path);
  if (file < 0) return failed("cannot be opened");
  const int written = write_all(disk, file, bytes);
  const int reason = errno;
  const int closed = disk.close(file);
  if (written < 0) errno = reason;
  if (written < 0 || closed < 0) return failed("could not be written");
  return {};
}

Outcome replace(Disk& disk, const std::string& path, mode_t mode, std::string_view bytes) {
  const std::string parent = std::filesystem::path(path).parent_path().string();
  const std::string folder = parent.empty() ? "." : parent;
  Temporary temporary(disk, folder);
  if (!temporary.exists()) return failed("no file can be made in its folder");
  if (disk.set_mode(temporary.file(), mode) < 0) return failed("its permissions could not be set");
  if (write_all(disk, temporary.file(), bytes) < 0) return failed("could not be written");
  if (disk.sync(temporary.file()) < 0) return failed("did not reach the disk");
  if (temporary.close() < 0) return failed("did not reach the disk");
  if (temporary.take_place(path) < 0) return failed("could not take its place");
  // Some file systems cannot sync a folder; the file itself is complete there all the same.
  if (disk.sync_folder(folder) < 0 && errno != EINVAL && errno != ENOTSUP)
    return failed("is written, but its folder did not reach the disk");
  return {};
}

}  // namespace

Outcome write_whole(Disk& disk, const std::string& path, std::string_view bytes) {
  struct stat there {};
  if (::stat(path.c_str(), &there) != 0) {
    struct stat link {};
    if (::lstat(path.c_str(), &link) == 0) return tl::unexpected(std::string("is a link that leads nowhere"));
    return replace(disk, path, mode_of_new_files(), bytes);
  }
  if (S_ISDIR(there.st_mode)) return tl::unexpected(std::string("is a folder"));
  if (!S_ISREG(there.st_mode)) return write_in_place(disk, path, bytes);
  std::error_code error;
  const std::string target = std::filesystem::canonical(path, error).string();
  if (error) return tl::unexpected("cannot be resolved: " + error.message());
  return replace(disk, target, there.st_mode & 07777, bytes);
}

}  // namespace ohmtrail::cli
