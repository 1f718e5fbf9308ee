#include "ohmtrail/plan/rewire.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "ohmtrail/netlist/read.hpp"

namespace ohmtrail::plan {
namespace {

constexpr const char* boat = R"({
  "ohmtrail": 1,
  "note": "Invented.",
  "system": {"name": "Invented skiff", "nominal": "12 V"},
  "batteries": [{"id": "bank", "plus": "b+", "minus": "b-", "nominal": "12 V", "emf": "12.7 V", "resistance": "5 mohm"}],
  "runs": [
    {"id": "feed", "from": "f", "to": "l+", "gauge": "18 AWG", "length": "5 m", "note": "behind the locker",
     "ends": {"from": {"kind": "crimped", "resistance": "40 mohm", "seen": ["green-corrosion"]}, "to": "soldered"},
     "return": {"from": "l-", "to": "b-", "resistance": "0.3 ohm"}},
    {"id": "tail", "from": "l+", "to": "m+", "gauge": "16 AWG", "length": "1 m", "sound": "15 mohm", "resistance": "90 mohm",
     "return": {"from": "m-", "to": "l-"}}
  ],
  "fuses": [{"id": "fuse", "from": "b+", "to": "f", "rating": "40 A", "form": "blade", "resistance": "9 mohm"}],
  "loads": [{"id": "lamp", "plus": "l+", "minus": "l-", "takes": "8 A"},
            {"id": "radio", "plus": "m+", "minus": "m-", "takes": "1 A", "class": "critical"}],
  "cable_list": [{"gauge": "16 AWG", "price": 1}, {"gauge": "12 AWG", "price": 2, "insulation": 75},
                 {"gauge": "6", "price": 4, "conductor": "bare-copper"}, {"gauge": "2 AWG", "price": 9}],
  "readings": [{"volts": 11.2, "red": "l+", "black": "l-", "case": "all-on"}]
})";

struct Rewired {
  netlist::System original;
  SizeResult sized;
  std::string text;
};

Rewired rewired(const char* file) {
  auto document = netlist::Document::open(file);
  EXPECT_TRUE(document);
  Rewired result{document->system(), {}, {}};
  auto sized = size(result.original);
  EXPECT_TRUE(sized && sized->found && sized->proved);
  result.sized = std::move(*sized);
  write_rewired(result.original, result.sized, *document);
  result.text = document->text();
  return result;
}

/// Runs as a reader finds them: which ends are opened follows from names elsewhere in the file.
netlist::System closed(netlist::System system) {
  for (auto& run : system.runs) {
    run.end_from.opened = run.end_to.opened = false;
    if (run.return_conductor)
      run.return_conductor->end_from.opened = run.return_conductor->end_to.opened = false;
  }
  return system;
}

TEST(Rewire, TheFileHoldsWhatWasChosen) {
  const auto result = rewired(boat);
  const auto read = netlist::read(result.text);
  ASSERT_TRUE(read) << result.text;
  const auto found = closed(read->system), expected = closed(result.sized.rewired);
  EXPECT_EQ(found.runs, expected.runs) << result.text;
  EXPECT_EQ(found.fuses, expected.fuses);
  EXPECT_TRUE(found.readings.empty()) << "they speak of the old cable";
  EXPECT_EQ(found.loads, expected.loads);
}

TEST(Rewire, OrderNotesAndSpellingStay) {
  const auto text = rewired(boat).text;
  EXPECT_NE(text.find("\"note\": \"behind the locker\""), std::string::npos);
  EXPECT_NE(text.find("\"takes\": \"8 A\""), std::string::npos);
  EXPECT_LT(text.find("\"runs\""), text.find("\"fuses\""));
  EXPECT_EQ(text.find("green-corrosion"), std::string::npos);
}

TEST(Rewire, SolvedAgainEveryLimitIsKept) {
  const auto result = rewired(boat);
  const auto read = netlist::read(result.text);
  ASSERT_TRUE(read);
  for (const auto& in_case : read->system.cases) {
    const auto solved = solve::solve_case(network::build(read->system, in_case));
    ASSERT_TRUE(solved);
    for (const auto& load : solved->loads) EXPECT_TRUE(load.within && load.running);
    for (std::size_t e = 0; e < solved->network.elements.size(); ++e) {
      const auto& heating = solved->network.elements[e].heating;
      const double amperes = std::abs(solved->solution.current[e]);
      EXPECT_LE(amperes, heating ? heating->rated.si() : amperes);
    }
  }
}

/// What is right already is chosen again and the file does not change.
TEST(Rewire, ASecondTimeNothingChanges) {
  const auto once = rewired(boat);
  const auto twice = rewired(once.text.c_str());
  EXPECT_EQ(twice.text, once.text);
  EXPECT_DOUBLE_EQ(twice.sized.cost, once.sized.cost);
}

TEST(Rewire, TheFuseThatProtectsItsWireIsWritten) {
  const auto result = rewired(boat);
  ASSERT_EQ(result.sized.fuses.size(), 1U);
  const double rating = result.sized.fuses[0].rating;
  EXPECT_GE(rating, 1.25 * result.sized.runs[0].current);
  EXPECT_LE(rating, result.sized.runs[0].ampacity);
  EXPECT_EQ(netlist::read(result.text)->system.fuses[0].rating.si(), rating);
}

}  // namespace
}  // namespace ohmtrail::plan
