#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "unit/netlist/netlist_text.hpp"

namespace ohmtrail::netlist::test {
namespace {

std::vector<std::filesystem::path> bad_files() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(OHMTRAIL_SOURCE_DIR) + "/tests/bad")) {
    if (entry.path().extension() == ".json") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::string content(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  EXPECT_TRUE(file) << path;
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

TEST(BadFiles, AreGivenTheMistakeTheyAreNamedAfter) {
  const auto files = bad_files();
  ASSERT_GE(files.size(), 60U) << "the folder has moved";
  for (const auto& path : files) {
    const std::string stem = path.stem().string();
    const std::string wanted = stem.substr(0, stem.find("--"));
    const auto found = mistakes(content(path));
    const bool told =
        std::any_of(found.begin(), found.end(), [&](const Problem& p) { return p.name == wanted; });
    EXPECT_TRUE(told) << stem << ": " << testing::PrintToString(named(found));
    for (const Problem& problem : found) {
      EXPECT_GT(problem.line, 0) << stem;
      EXPECT_GT(problem.column, 0) << stem;
      EXPECT_FALSE(problem.expected.empty()) << stem << ": " << problem.text;
      EXPECT_EQ(problem.severity, Problem::Severity::error) << stem;
    }
  }
}

TEST(BadFiles, AreToldAlikeEveryTime) {
  for (const auto& path : bad_files()) EXPECT_EQ(mistakes(content(path)), mistakes(content(path))) << path;
}

}  // namespace
}  // namespace ohmtrail::netlist::test
