#pragma once
#include <sys/types.h>

#include <cstddef>
#include <string>

namespace ohmtrail::cli {

/// The system calls by which a file comes to be, one function a step, so that a test can make any of them
/// fail. Each returns what the call returns and leaves the reason in errno.
class Disk {
 public:
  virtual ~Disk() = default;
  /// A new, empty file whose name starts with `prefix`; `name` receives it.
  virtual int create(const std::string& prefix, std::string& name);
  virtual int open_for_writing(const std::string& path);
  virtual int set_mode(int file, mode_t mode);
  virtual ssize_t write(int file, const char* bytes, std::size_t count);
  virtual int sync(int file);
  virtual int close(int file);
  virtual int rename(const std::string& from, const std::string& to);
  virtual int remove(const std::string& path);
  virtual int sync_folder(const std::string& folder);
};

}  // namespace ohmtrail::cli
