#include <gtest/gtest.h>

#include <fstream>
#include <regex>

#include "ohmtrail/netlist/schema.hpp"
#include "unit/netlist/netlist_text.hpp"

namespace ohmtrail::netlist::test {
namespace {

using testing::ElementsAre;

const OrderedJson& schema() {
  static const OrderedJson parsed = OrderedJson::parse(json_schema());
  return parsed;
}

std::vector<std::string> keys_of(const OrderedJson& object) {
  std::vector<std::string> keys;
  for (const auto& item : object["properties"].items()) keys.push_back(item.key());
  return keys;
}

TEST(Schema, SaysWhichDialectItIs) {
  EXPECT_EQ(schema()["$schema"], "https://json-schema.org/draft/2020-12/schema");
  EXPECT_EQ(schema()["additionalProperties"], false);
  EXPECT_EQ(schema()["required"], OrderedJson::array({"ohmtrail", "system"}));
}

TEST(Schema, HasTheSectionsOfTheFormat) {
  EXPECT_THAT(keys_of(schema()),
              ElementsAre("ohmtrail", "system", "batteries", "chargers", "runs", "joints", "switches",
                          "fuses", "shunts", "isolators", "loads", "converters", "points", "cases", "meters",
                          "readings", "cable_list", "reference", "stubs", "note"));
}

TEST(Schema, ARunHasTheKeysOfTheFormat) {
  const OrderedJson& run = schema()["properties"]["runs"]["items"];
  EXPECT_THAT(keys_of(run),
              ElementsAre("id", "from", "to", "gauge", "length", "conductor", "length_from", "insulation",
                          "in", "bundle", "ends", "sound", "resistance", "seen", "return", "note"));
  EXPECT_EQ(run["required"], OrderedJson::array({"id", "from", "to", "gauge", "length"}));
}

/// Every reference must lead somewhere, every pattern must be one.
void check(const OrderedJson& node, int& references, int& patterns) {
  if (node.is_object() && node.contains("$ref")) {
    const std::string target = node["$ref"];
    ASSERT_EQ(target.substr(0, 8), "#/$defs/");
    EXPECT_TRUE(schema()["$defs"].contains(target.substr(8))) << target;
    ++references;
  }
  if (node.is_object() && node.contains("pattern") && node["pattern"].is_string()) ++patterns;
  if (node.is_structured()) {
    for (const auto& child : node) check(child, references, patterns);
  }
}

TEST(Schema, EveryReferenceLeadsSomewhere) {
  int references = 0, patterns = 0;
  check(schema(), references, patterns);
  EXPECT_GT(references, 80);
  EXPECT_GT(patterns, 10);
}

TEST(Schema, SaysWhatARangeIs) {
  const OrderedJson& run = schema()["properties"]["runs"]["items"]["properties"];
  EXPECT_EQ(run["length"]["exclusiveMinimum"], 0);
  EXPECT_EQ(run["sound"]["minimum"], 0);
  EXPECT_TRUE(std::regex_search("-6 ft", std::regex(run["length"]["not"]["pattern"].get<std::string>())));
  const OrderedJson& battery = schema()["properties"]["batteries"]["items"]["properties"];
  EXPECT_EQ(battery["soc"]["maximum"], 100);
  EXPECT_EQ(battery["checks"]["properties"]["cells"]["items"]["properties"]["sg"]["maximum"], 1.4);
}

TEST(Schema, QuantityPatternsTakeWhatTheReaderTakes) {
  const auto takes = [](const char* kind, const std::string& text) {
    return std::regex_search(text,
                             std::regex(schema()["$defs"][kind]["anyOf"][1]["pattern"].get<std::string>()));
  };
  for (const char* text : {"6 ft", "6ft", "-1.5e2 mm", ".5 m", "4 in"})
    EXPECT_TRUE(takes("length", text)) << text;
  for (const char* text : {"6", "6 V", "ft", "6,5 ft", "nan ft", ""})
    EXPECT_FALSE(takes("length", text)) << text;
  EXPECT_TRUE(takes("resistance", "0.35 mΩ"));
  EXPECT_TRUE(takes("percent", "3 %"));
  EXPECT_FALSE(takes("voltage", "12 Ah"));
}

}  // namespace
}  // namespace ohmtrail::netlist::test
