#include <gtest/gtest.h>

#include <random>

#include "ohmtrail/netlist/write.hpp"
#include "support/property.hpp"
#include "support/random_cases.hpp"
#include "unit/netlist/netlist_text.hpp"
#include "unit/netlist/random_system.hpp"

namespace ohmtrail::netlist::test {
namespace {

TEST(RoundTrip, WhatIsWrittenReadsBackEqual) {
  ohmtrail::test::holds(
      [] {
        const System system = RandomSystem::make();
        const std::string text = to_json(system);
        const auto back = read(text);
        if (!back) RC_FAIL(format(back.error().front(), "test") + "\n" + text);
        if (!(back->system == system)) RC_FAIL(text + "\n" + to_json(back->system));
        RC_ASSERT(to_json(back->system) == text);
      },
      1000);
}

/// Ampere-hours and hours are written in those units, of which not every double of the SI unit is a multiple.
TEST(RoundTrip, AnyDoubleComesBackToTheBit) {
  std::mt19937_64 engine(71);
  const auto any = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine);
  };
  System system = system_of(sound_netlist().dump());
  Battery& battery = system.batteries[0];
  battery.checks.rest.emplace().volts = Voltage{12.6};
  for (int turn = 0; turn < ohmtrail::test::random_cases(300); ++turn) {
    battery.capacity = Charge{any(1, 1e6)};
    battery.checks.rest->rested = Time{any(1, 1e5)};
    battery.resistance = Resistance{any(1e-3, 1e-2)};
    system.cases[0].per_day = Time{any(1, 86400)};
    system.runs[0].length = Length{any(0.01, 90)};
    system.info.ambient = Temperature{any(-40, 85)};
    const std::string text = to_json(system);
    const auto back = read(text);
    ASSERT_TRUE(back) << format(back.error().front(), "test");
    EXPECT_EQ(back->system, system) << text;
  }
}

TEST(RoundTrip, AnyPercentageComesBackButForItsLastBit) {
  System system = system_of(sound_netlist().dump());
  std::mt19937_64 engine(72);
  for (int turn = 0; turn < ohmtrail::test::random_cases(300); ++turn) {
    const double share = std::uniform_real_distribution<double>(0.02, 1)(engine);
    system.batteries[0].state_of_charge = Fraction{share};
    const auto back = read(to_json(system));
    ASSERT_TRUE(back);
    EXPECT_NEAR(back->system.batteries[0].state_of_charge->of_one() / share, 1, 3e-16);
  }
}

TEST(RoundTrip, ADocumentKeepsEveryByte) {
  ohmtrail::test::holds(
      [] {
        const std::string text = to_json(RandomSystem::make());
        const auto document = Document::open(text);
        RC_ASSERT(document.has_value());
        RC_ASSERT(document->text() == text);
      },
      200);
}

TEST(RoundTrip, ResistancesSetOnEveryElementReadBack) {
  ohmtrail::test::holds(
      [] {
        const System system = RandomSystem::make();
        auto document = Document::open(to_json(system));
        RC_ASSERT(document.has_value());
        for (const netlist::Run& run : system.runs) {
          for (const char* part : {"/from", "/wire", "/to"})
            RC_ASSERT(document->set_resistance(run.id + part, Resistance{0.0123}));
          if (run.end_from.opened)
            RC_ASSERT(document->set_resistance(run.id + "/from-crimp", Resistance{0.5}));
          if (run.return_conductor)
            RC_ASSERT(document->set_resistance(run.id + "/return-to", Resistance{0.0456}));
        }
        const auto back = read(document->text());
        if (!back) RC_FAIL(format(back.error().front(), "test") + "\n" + document->text());
        for (std::size_t i = 0; i < system.runs.size(); ++i) {
          netlist::Run expected = system.runs[i];
          expected.wire.as_found = expected.end_from.resistances.as_found =
              expected.end_to.resistances.as_found = Resistance{0.0123};
          if (expected.end_from.opened && !expected.end_from.crimp) expected.end_from.crimp.emplace();
          if (expected.end_from.opened) expected.end_from.crimp->as_found = Resistance{0.5};
          if (expected.return_conductor)
            expected.return_conductor->end_to.resistances.as_found = Resistance{0.0456};
          RC_ASSERT(back->system.runs[i] == expected);
        }
      },
      200);
}

/// One wild change to a text: a byte, a cut, a doubled piece, or a value in the place of another.
std::string mutated(std::string text) {
  static const std::vector<std::string> wild = {"null",
                                                "{}",
                                                "[]",
                                                "-1",
                                                "0",
                                                "1e308",
                                                "1e-320",
                                                "\"\"",
                                                "\"/\"",
                                                "\"@\"",
                                                "true",
                                                "\"nan V\"",
                                                "\"-1 ohm\"",
                                                "\"all\"",
                                                "[[]]",
                                                "\"\\u0000\"",
                                                "99999999999999999999"};
  const auto place = [&] {
    return static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(text.size())));
  };
  const auto from = place();
  switch (*rc::gen::inRange(0, 5)) {
    case 0:
      text[from] = static_cast<char>(*rc::gen::inRange(0, 256));
      break;
    case 1:
      text.erase(from, static_cast<std::size_t>(*rc::gen::inRange(1, 30)));
      break;
    case 2:
      text.insert(place(), text.substr(from, static_cast<std::size_t>(*rc::gen::inRange(1, 60))));
      break;
    default: {
      const auto colon = text.find(": ", from);
      const auto end = colon == std::string::npos ? colon : text.find_first_of(",}]\n", colon);
      if (end != std::string::npos) {
        text.replace(colon + 2, end - colon - 2,
                     wild[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(wild.size())))]);
      }
    }
  }
  return text;
}

TEST(Mutations, GiveLocatedMistakesOrARightSystem) {
  static int wrong = 0, right = 0;
  ohmtrail::test::holds(
      [] {
        std::string text = to_json(RandomSystem::make());
        for (int i = *rc::gen::inRange(1, 4); i > 0; --i) text = mutated(std::move(text));
        const auto result = read(text);
        if (result) {
          ++right;
          const auto again = read(to_json(result->system));
          if (!again) RC_FAIL(format(again.error().front(), "test") + "\n" + text);
          RC_ASSERT(again->system == result->system);
          return;
        }
        ++wrong;
        RC_ASSERT(!result.error().empty());
        for (const Problem& problem : result.error()) {
          RC_ASSERT(problem.name == "and-more" || (problem.line > 0 && problem.column > 0));
          RC_ASSERT(!problem.text.empty());
          RC_ASSERT(!format_with_line(problem, "test", text).empty());
        }
      },
      4000);
  EXPECT_GT(wrong, right) << "most mutations should hurt";
  EXPECT_GT(right, 0);
}

}  // namespace
}  // namespace ohmtrail::netlist::test
