#pragma once
#include <algorithm>
#include <cerrno>
#include <csignal>
#include <string>

#include "cli/doors/disk.hpp"

namespace ohmtrail::test {

/// A disk whose n-th step, counted from 0, goes wrong in the way that `strike` says; counts the steps. A step
/// is a creation, a change of mode, a block written, an fsync, a close or a rename.
class FaultyDisk : public cli::Disk {
 public:
  FaultyDisk(int at, std::size_t block) : at_(at), block_(block) {}
  int steps = 0;
  std::string failed_step;

  int create(const std::string& prefix, std::string& name) override {
    return fails("create") ? -1 : Disk::create(prefix, name);
  }
  int open_for_writing(const std::string& path) override {
    return fails("open") ? -1 : Disk::open_for_writing(path);
  }
  int set_mode(int file, mode_t mode) override { return fails("set_mode") ? -1 : Disk::set_mode(file, mode); }
  /// One block at a time, so that a fault comes in the middle.
  ssize_t write(int file, const char* bytes, std::size_t count) override {
    return fails("write") ? -1 : Disk::write(file, bytes, std::min(count, block_));
  }
  int sync(int file) override { return fails("sync") ? -1 : Disk::sync(file); }
  int close(int file) override {
    const int result = Disk::close(file);
    return fails("close") ? -1 : result;
  }
  int rename(const std::string& from, const std::string& to) override {
    return fails("rename") ? -1 : Disk::rename(from, to);
  }
  int sync_folder(const std::string& folder) override {
    return fails("sync_folder") ? -1 : Disk::sync_folder(folder);
  }

 protected:
  virtual void strike() = 0;

 private:
  bool fails(const char* step) {
    if (steps++ != at_) return false;
    failed_step = step;
    strike();
    return true;
  }
  int at_;
  std::size_t block_;
};

/// The step fails, with the reason given.
class FailingDisk : public FaultyDisk {
 public:
  explicit FailingDisk(int at, int reason = ENOSPC, std::size_t block = 3)
      : FaultyDisk(at, block), reason_(reason) {}

 private:
  void strike() override { errno = reason_; }
  int reason_;
};

/// The process is killed at the step, as by a `kill -9` or a battery that gives out.
class DeadlyDisk : public FaultyDisk {
 public:
  using FaultyDisk::FaultyDisk;

 private:
  void strike() override { std::raise(SIGKILL); }
};

}  // namespace ohmtrail::test
