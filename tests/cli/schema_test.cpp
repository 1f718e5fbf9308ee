#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "support/process.hpp"

// What `schema` prints describes what the shipped netlists hold.
namespace {

using namespace ohmtrail::test;
using nlohmann::json;

TEST(Schema, IsOfTheDraftThatEditorsKnow) {
  const Ended ended = run_shell("ohmtrail schema", "/");
  EXPECT_EQ(ended.exit, 0);
  EXPECT_EQ(ended.err, "");
  EXPECT_EQ(json::parse(ended.out)["$schema"], "https://json-schema.org/draft/2020-12/schema");
}

TEST(Schema, KnowsEverySectionOfEveryShippedNetlist) {
  const json schema = json::parse(run_shell("ohmtrail schema", "/").out);
  int sections = 0;
  for (const auto& entry : std::filesystem::directory_iterator(OHMTRAIL_SOURCE_DIR "/netlists")) {
    if (entry.path().extension() != ".json") continue;
    const json netlist = json::parse(file_content(entry.path().string()));
    for (const auto& [key, value] : netlist.items()) {
      EXPECT_TRUE(schema["properties"].contains(key)) << key;
      ++sections;
    }
  }
  EXPECT_GE(sections, 20);
}

TEST(Schema, TakesNoFile) {
  EXPECT_EQ(run_shell("ohmtrail schema boat.json", "/").exit, 2);
}

}  // namespace
