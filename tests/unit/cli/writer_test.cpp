#include "cli/json/writer.hpp"

#include <gtest/gtest.h>

#include <bit>
#include <cstring>
#include <limits>
#include <nlohmann/json.hpp>
#include <random>

#include "support/random_cases.hpp"

namespace {

using namespace ohmtrail::cli;

std::string written(const Value& value) {
  JsonWriter json;
  json.value(value);
  return json.finish();
}

TEST(JsonWriter, WritesEveryKindOfValue) {
  EXPECT_EQ(written({}), "null\n");
  EXPECT_EQ(written(true), "true\n");
  EXPECT_EQ(written(std::int64_t{7}), "7\n");
  EXPECT_EQ(written(std::string("a\"b\\c")), "\"a\\\"b\\\\c\"\n");
  EXPECT_EQ(written(Row{{"a", number(1.5)}, {"b", {}}}), "{\"a\": 1.5, \"b\": null}\n");
  EXPECT_EQ(written(std::vector<std::string>{"x", "y"}), "[\"x\", \"y\"]\n");
}

TEST(JsonWriter, WhatDoesNotExistIsNull) {
  EXPECT_EQ(written(number(std::numeric_limits<double>::quiet_NaN())), "null\n");
  EXPECT_EQ(written(number(std::numeric_limits<double>::infinity())), "null\n");
  EXPECT_EQ(written(number(std::optional<double>{})), "null\n");
  EXPECT_EQ(written(text_or_null("")), "null\n");
}

TEST(JsonWriter, NestsObjectsAndArrays) {
  JsonWriter json;
  json.open_object();
  json.field("a", number(1));
  json.rows("rows", {Row{{"x", number(2)}}, Row{{"x", number(3)}}});
  json.rows("none", {});
  json.close();
  EXPECT_EQ(json.finish(),
            "{\n  \"a\": 1,\n  \"rows\": [\n    {\"x\": 2},\n    {\"x\": 3}\n  ],\n  \"none\": []\n}\n");
}

TEST(JsonWriter, NumbersReadBackToTheSameDouble) {
  std::mt19937_64 random(20261125);
  for (int i = 0; i < ohmtrail::test::random_cases(20000); ++i) {
    const auto value = std::bit_cast<double>(random());
    if (!std::isfinite(value)) continue;
    EXPECT_EQ(nlohmann::json::parse(written(number(value))).get<double>(), value);
  }
  for (const double value : {0.1, 1e-300, 5e-324, 1.7976931348623157e308, 123456789.123456789, -2.5e-7})
    EXPECT_EQ(nlohmann::json::parse(written(number(value))).get<double>(), value);
  EXPECT_EQ(written(number(-0.0)), "0\n");
}

TEST(JsonWriter, HostileTextStaysTextAndStaysItself) {
  const std::string hostile = "\x1b[2J \xC2\x9B\x7f\u202E\u2028 \"'</script>\n\t=1+1";
  const std::string json = written(hostile);
  EXPECT_EQ(json.find('\x1b'), std::string::npos);
  EXPECT_EQ(json.find("\xC2\x9B"), std::string::npos);
  EXPECT_EQ(json.find('\x7f'), std::string::npos);
  EXPECT_EQ(json.find("\u202E"), std::string::npos);
  EXPECT_EQ(nlohmann::json::parse(json).get<std::string>(), hostile);
}

TEST(JsonWriter, BytesThatAreNotUtf8StillGiveValidJson) {
  EXPECT_EQ(nlohmann::json::parse(written(std::string("a\xff"
                                                      "b")))
                .get<std::string>(),
            "a�b");
}

}  // namespace
