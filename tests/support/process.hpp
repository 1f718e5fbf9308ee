#pragma once
#include <sys/wait.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

#include "support/temporary_folder.hpp"

namespace ohmtrail::test {

/// What a process left behind.
struct Ended {
  int exit = -1;
  std::string out, err;
};

inline std::string file_content(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path);
  std::stringstream all;
  all << file.rdbuf();
  return all.str();
}

inline void put_file(const std::string& path, const std::string& content) {
  std::ofstream file(path, std::ios::binary);
  file << content;
  file.close();
  if (!file) throw std::runtime_error("cannot write " + path);
}

/// Runs `command` in the shell, in `folder`, where `ohmtrail` is the program that was just built.
inline Ended run_shell(const std::string& command, const std::string& folder) {
  const TemporaryFolder own;
  std::filesystem::create_directory(own / "bin");
  std::filesystem::create_symlink(OHMTRAIL_PROGRAM, own / "bin/ohmtrail");
  put_file(own / "script",
           "cd '" + folder + "' || exit 99\nPATH='" + own.path() + "/bin':\"$PATH\"\n" + command + "\n");
  const std::string line =
      "sh '" + (own / "script") + "' >'" + (own / "out") + "' 2>'" + (own / "err") + "' </dev/null";
  const int status = std::system(line.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, file_content(own / "out"), file_content(own / "err")};
}

}  // namespace ohmtrail::test
