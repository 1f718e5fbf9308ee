#include <string>
#include <vector>

#include "cli/doors/disk_files.hpp"
#include "cli/doors/heap.hpp"
#include "cli/doors/posix_terminal.hpp"
#include "cli/run.hpp"

int main(int argc, char** argv) {
  using namespace ohmtrail::cli;
  keep_freed_memory();
  have_large_pages();
  const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
  Disk disk;
  DiskFiles files(disk);
  PosixTerminal terminal;
  return run(arguments, {files, terminal});
}
