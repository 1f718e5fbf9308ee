#include "cli/text/notes.hpp"

#include <gmock/gmock.h>

// What a result rests on, at the foot of every text.
namespace {

using namespace ohmtrail;
using network::Assumed;
using network::Assumption;
using testing::HasSubstr;
using testing::Not;

std::string shown(const std::vector<Assumption>& all) {
  cli::Sheet sheet(false);
  cli::show_assumptions(sheet, all);
  return sheet.text();
}

/// One assumption as it stands behind its dash, on one line.
std::string line_of(const std::string& id, const std::string& text, std::optional<double> value,
                    Assumed quantity = Assumed::other) {
  const std::string all = shown({{id, text, value, quantity}});
  const auto begin = all.find("  - ") + 4;
  std::string line = all.substr(begin, all.rfind('\n') - begin);
  for (std::size_t at; (at = line.find("\n    ")) != std::string::npos;) line.replace(at, 5, " ");
  return line;
}

TEST(Assumptions, ShowTheirValueInTheUnitOfTheirQuantity) {
  EXPECT_EQ(line_of("system", "ambient temperature in case day", 25, Assumed::ambient),
            "system: 25 °C, ambient temperature");
  EXPECT_EQ(line_of("bank", "open-circuit voltage: rest voltage after 7 h", 12.12, Assumed::voltage),
            "bank: 12.12 V, open-circuit voltage: rest voltage after 7 h");
  EXPECT_EQ(
      line_of("bank", "internal resistance: rated 700 CCA (3/CCA Ω for 12 V)", 0.00698, Assumed::resistance),
      "bank: 6.98 mΩ, internal resistance: rated 700 CCA (3/CCA Ω for 12 V)");
  EXPECT_EQ(line_of("bank", "resistance: 100 Ah", 0.008, Assumed::resistance),
            "bank: 8 mΩ, resistance: 100 Ah");
  EXPECT_EQ(
      line_of("pump", "takes its current although its voltage is not above 0 V", -0.5, Assumed::voltage),
      "pump: -500 mV, takes its current although its voltage is not above 0 V");
  EXPECT_EQ(line_of("system", "chance that a reading is simply wrong", 0.005, Assumed::chance),
            "system: 0.5 %, chance that a reading is simply wrong");
}

TEST(Assumptions, WhatSaysItsValueItselfIsNotGivenASecondOne) {
  EXPECT_EQ(line_of("bank", "state of charge not given, taken as 100 %", 1.0),
            "bank: state of charge not given, taken as 100 %");
  EXPECT_EQ(line_of("system", "point r is taken as 0 V", 0.0), "system: point r is taken as 0 V");
  EXPECT_EQ(line_of("system", "point low voltage is taken as 0 V", 0.0),
            "system: point low voltage is taken as 0 V")
      << "a name is no quantity";
}

TEST(Assumptions, WithoutAValueTheTextStandsAlone) {
  EXPECT_EQ(line_of("bank", "as of a typical 100 Ah battery", std::nullopt),
            "bank: as of a typical 100 Ah battery");
}

TEST(Assumptions, OfSeveralCasesAreToldOnce) {
  const std::string text = shown({{"system", "ambient temperature in case day", 25.0, Assumed::ambient},
                                  {"system", "ambient temperature in case night", 25.0, Assumed::ambient},
                                  {"system", "ambient temperature in case frost", -10.0, Assumed::ambient}});
  EXPECT_EQ(text,
            "\nTaken as given or assumed\n  - system: 25 °C, ambient temperature\n"
            "  - system: -10 °C, ambient temperature\n");
}

TEST(Assumptions, FromTheTablesAreCountedNotListed) {
  const Assumption wire{"feed/wire", "sound resistance: 6 AWG of 2 m", 0.003, Assumed::sound_resistance};
  EXPECT_THAT(shown({wire}), HasSubstr("what 1 part would have"));
  const std::string both =
      shown({wire, {"feed/from", "sound resistance: a crimped lug", 0.0001, Assumed::sound_resistance}});
  EXPECT_THAT(both, HasSubstr("what 2 parts would have"));
  EXPECT_THAT(both, Not(HasSubstr("feed")));
}

TEST(Assumptions, WhereThereAreNoneNothingIsSaid) {
  EXPECT_EQ(shown({}), "");
}

TEST(Cautions, TellOfGasSparksAndWhoDecides) {
  cli::Sheet sheet(false);
  cli::show_cautions(sheet);
  for (const char* word : {"gas", "rings and watch", "prove it dead", "licensed electrician"})
    EXPECT_THAT(sheet.text(), HasSubstr(word));
}

}  // namespace
