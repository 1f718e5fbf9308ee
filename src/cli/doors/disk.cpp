#include "cli/doors/disk.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>

namespace ohmtrail::cli {

int Disk::create(const std::string& prefix, std::string& name) {
  name = prefix + "XXXXXX";
  return ::mkostemp(name.data(), O_CLOEXEC);
}

int Disk::open_for_writing(const std::string& path) {
  return ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
}

int Disk::set_mode(int file, mode_t mode) {
  return ::fchmod(file, mode);
}

ssize_t Disk::write(int file, const char* bytes, std::size_t count) {
  return ::write(file, bytes, count);
}

int Disk::sync(int file) {
  return ::fsync(file);
}

int Disk::close(int file) {
  return ::close(file);
}

int Disk::rename(const std::string& from, const std::string& to) {
  return std::rename(from.c_str(), to.c_str());
}

int Disk::remove(const std::string& path) {
  return ::unlink(path.c_str());
}

int Disk::sync_folder(const std::string& folder) {
  const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (handle < 0) return -1;
  const int result = ::fsync(handle);
  ::close(handle);
  return result;
}

}  // namespace ohmtrail::cli
